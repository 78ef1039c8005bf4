"""The heading dictionary and the other words of a sheet, read once from the data files in `languages/`."""

import re
import tomllib
from collections import defaultdict
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from typing import NamedTuple

from tracker.domain.tables import TABLES
from tracker.domain.words import fold

LANGUAGES = ("en", "de", "fr", "it", "es", "pt", "tr", "zh")
WEIGHTS = {"^": 0.9, "~": 0.75, "?": 0.6}
"""Certainty of a phrase marked as a general, weaker or weak synonym."""
OURS = "="
"""Marks the word by which our own templates and exports in that language call a field or a sheet."""

_TOKEN = re.compile(r"[^\W_]+|[%‰#Ø]")
_CJK = re.compile(r"[\u3400-\u9fff]")

Tokens = tuple[str, ...]


class HeadingEntry(NamedTuple):
    """One meaning of a phrase."""

    table: str
    """Name of the table, `` where the field means the same in every table that has it."""
    field: str
    weight: float
    language: str


@dataclass(slots=True)
class Vocabulary:
    phrases: dict[Tokens, list[HeadingEntry]] = field(default_factory=lambda: defaultdict(list))
    """Full phrase, number words as `#` → its meanings."""
    short: dict[Tokens, list[HeadingEntry]] = field(default_factory=lambda: defaultdict(list))
    """The same without fill words, for phrases without a number word."""
    by_letter: dict[str, list[Tokens]] = field(default_factory=lambda: defaultdict(list))
    """First letter → short phrases in Latin letters, for abbreviations."""
    words: dict[str, frozenset[str]] = field(default_factory=dict)
    """Class of word (total, hall, yes, …) → folded words of all languages."""
    sheets: dict[str, frozenset[str]] = field(default_factory=dict)
    """Table → folded sheet names that it often has."""
    own: dict[str, dict[tuple[str, str], str]] = field(default_factory=dict)
    """Language → (table, field), (`fields`, field) or (`sheets`, table) → our own word for it, where we write that language."""
    terms: dict[str, str] = field(default_factory=dict)
    """Folded name of a term in another language, without its unit → field of the terms, or `pilot`."""
    options: dict[str, dict[str, str]] = field(default_factory=dict)
    """Word of a column (repeat, crimp, …): folded spelling → the word."""
    months: dict[str, int] = field(default_factory=dict)
    weekdays: dict[str, int] = field(default_factory=dict)
    number_words: frozenset[str] = frozenset()
    fillers: frozenset[str] = frozenset()
    contexts: frozenset[str] = frozenset()


def tokens(text: str) -> Tokens:
    """Folded words of a text; `%`, `#` and `Ø` count as words: `'Rdt. (%)'` → `('rdt', '%')`."""
    return tuple(_TOKEN.findall(fold(text)))


def is_cjk(text: str) -> bool:
    return bool(_CJK.search(text))


def read_data(name: str) -> dict:
    """One data file of the dictionary."""
    return tomllib.loads(
        (files("tracker.intake.vocabulary") / "languages" / f"{name}.toml").read_text(encoding="utf-8")
    )


@cache
def vocabulary() -> Vocabulary:
    """The dictionary of all languages, indexed."""
    raw = {language: read_data(language) for language in LANGUAGES}
    found = Vocabulary()
    found.words = _word_classes(raw)
    found.number_words = frozenset(found.words["number"])
    found.fillers = frozenset(found.words["filler"])
    found.contexts = frozenset(found.words["context"])
    for language, data in raw.items():
        _add_phrases(found, language, data)
        _add_calendar(found, data["words"])
    _add_canonical(found)
    for phrase in found.short:
        if phrase and not is_cjk(phrase[0]):
            found.by_letter[phrase[0][0]].append(phrase)
    found.sheets = {
        table: frozenset(fold(name.lstrip(OURS)) for data in raw.values() for name in data["sheets"].get(table, ()))
        | {fold(TABLES[table].sheet)}
        for table in TABLES
    }
    named = (
        (fold(name), term)
        for data in raw.values()
        for term, names in data.get("term_names", {}).items()
        for name in names
    )
    found.terms = dict(named)
    found.options = _options(raw)
    found.own = {language: own for language, data in raw.items() if (own := _own(data))}
    return found


def _own(data: dict) -> dict[tuple[str, str], str]:
    return {
        (section, name): " ".join(tokens(phrase))
        for section in ("fields", "sheets", *TABLES)
        for name, phrases in data.get(section, {}).items()
        for phrase in phrases
        if phrase.startswith(OURS)
    }


def _word_classes(raw: dict) -> dict[str, frozenset[str]]:
    classes: dict[str, set[str]] = defaultdict(set)
    for data in raw.values():
        for name, words in data["words"].items():
            classes[name].update(" ".join(tokens(word)) or fold(word) for word in words if word)
    return {name: frozenset(words) for name, words in classes.items()}


def _add_phrases(found: Vocabulary, language: str, data: dict) -> None:
    known = {"fields", *TABLES}
    for section, fields in data.items():
        if section not in known:
            continue
        table = "" if section == "fields" else section
        for name, phrases in fields.items():
            for phrase in phrases:
                weight = WEIGHTS.get(phrase[0], 1.0)
                _add(found, phrase.lstrip(f"^~?{OURS}"), HeadingEntry(table, name, weight, language))


def _add_canonical(found: Vocabulary) -> None:
    for table in TABLES.values():
        for column in table.columns:
            _add(found, column.heading, HeadingEntry(table.name, column.field, 1.0, "en"))


def _add(found: Vocabulary, phrase: str, entry: HeadingEntry) -> None:
    full = numbered(found, tokens(phrase))
    if full == ("#",):
        entry = entry._replace(weight=WEIGHTS["?"])
    found.phrases[full].append(entry)
    if "#" not in full:
        found.short[shortened(found, full)].append(entry)


def numbered(vocab: Vocabulary, words: Tokens) -> Tokens:
    """Number words (`no`, `nr`, `code` …) become `#`."""
    return tuple("#" if word in vocab.number_words else word for word in words)


def shortened(vocab: Vocabulary, words: Tokens) -> Tokens:
    """Without fill words and number words, where anything is left."""
    left = tuple(word for word in words if word != "#" and word not in vocab.fillers)
    return left or words


def _add_calendar(found: Vocabulary, words: dict) -> None:
    for name, target, size in (("months", found.months, 12), ("weekdays", found.weekdays, 7)):
        for suffix in ("", "_short", "_shorter", "_other"):
            for i, word in enumerate(words.get(name + suffix, ())[:size]):
                if word:
                    target.setdefault(fold(word), i + 1 if size == 12 else i)


def _options(raw: dict) -> dict[str, dict[str, str]]:
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for data in raw.values():
        for word, spellings in data["options"].items():
            for spelling in (word, *spellings):
                found[word][fold(spelling)] = word
    return dict(found)
