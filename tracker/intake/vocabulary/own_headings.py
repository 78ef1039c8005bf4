"""Is a sheet headed as our own templates and exports head it, in whichever language we write them?"""

from collections.abc import Mapping
from functools import cache

from tracker.domain.tables import TABLES, Table
from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import tokens, vocabulary


def own_fields(table: Table, headings: Mapping[int, str]) -> dict[int, str]:
    """Column → field, of those headed as one language heads them in our templates; of the language that heads most."""
    languages = ("", *vocabulary().own)
    found = [
        {c: titles[name] for c, text in headings.items() if (name := _name(text, language)) in titles}
        for language in languages
        for titles in (_titles(table.name, language),)
    ]
    return max(found, key=len)


def is_own_name(table: Table, sheet: str) -> bool:
    """Is the sheet called as ours is?"""
    return sheet == table.sheet or any(
        own.get(("sheets", table.name)) == _bare(sheet) for own in vocabulary().own.values()
    )


def _name(text: str, language: str) -> str:
    return _bare(text.partition(" (")[0]) if language else fold(text)


def _bare(text: str) -> str:
    return " ".join(tokens(text))


@cache
def _titles(table: str, language: str) -> dict[str, str]:
    """Heading → field; in English with its unit."""
    columns = TABLES[table].columns
    if not language:
        return {fold(column.title): column.field for column in columns}
    own = vocabulary().own[language]
    named = {column.field: own.get((table, column.field)) or own.get(("fields", column.field)) for column in columns}
    return {name: field for field, name in named.items() if name}
