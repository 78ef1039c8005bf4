"""Every table under the first words that each language has for its columns, with the examples of the template."""

from pathlib import Path

import pytest
from mill_sheets import TODAY, workbook
from test_reader_tables import example

from tracker.domain.tables import TABLES, Kind
from tracker.domain.units import percent
from tracker.intake.reader import read_files
from tracker.intake.vocabulary.dictionary import LANGUAGES, read_data

WORD_ROWS = {"operations": {"operation": "lift the rail"}, "checks": {"check": "guard closed"}}
LOOM = [["Loom", "Hall", "Machine type", "Frames", "Speed"], ["007", "Hall 1", "AJ-190", 8, 600]]


def heading(language, table, column):
    """The first phrase of a language for a column, with the unit where the column has one."""
    data = read_data(language)
    phrase = (data.get(table.name, {}).get(column.field) or data["fields"][column.field])[0]
    unit = "%" if column.kind is Kind.FRACTION else column.unit
    return phrase.lstrip("=~?").replace("#", "no.") + (f" ({unit})" if unit else "")


def cell(column, value):
    if value is None or isinstance(value, frozenset):
        return None if value is None else column.example
    return (
        percent(value)
        if column.kind is Kind.FRACTION
        else "yes"
        if value is True
        else "no"
        if value is False
        else value
    )


def pairs():
    """Each table with each language: by default with every fourth one, each language with every fourth table."""
    for i, table in enumerate(name for name in TABLES if name != "terms"):
        for j, language in enumerate(LANGUAGES):
            yield pytest.param(table, language, marks=() if (i + j) % 4 == 0 else pytest.mark.long)


@pytest.mark.parametrize(("table", "language"), [*pairs()])
def test_read_in_the_words_of_a_language(tmp_path: Path, table, language):
    columns = TABLES[table].columns
    values = {c.field: example(c) for c in columns} | WORD_ROWS.get(table, {})
    head = [heading(language, TABLES[table], c) for c in columns]
    name = read_data(language)["sheets"][table][0].lstrip("=")
    sheets = {name: [head, [cell(c, values[c.field]) for c in columns]]}
    if table != "looms":
        sheets["A"] = LOOM
    result = read_files([workbook(tmp_path / "a.xlsx", sheets)], {}, {}, TODAY)
    rows = [dict(row.values) for row in result.rows if row.table == table]
    assert rows == [values], [f.line() for f in result.findings]
