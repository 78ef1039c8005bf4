"""Every table of ours reads back from a workbook in our own headings exactly as it was written."""

from datetime import date, datetime, time
from pathlib import Path

from mill_sheets import workbook

from tracker.domain.tables import TABLES, Kind
from tracker.export.workbook import write_export, write_template
from tracker.intake.reader import read_files
from tracker.intake.rows.compare import compare

TODAY = date(2026, 11, 25)


def example(column):
    """The example that the template shows, as the domain has it."""
    text = column.example
    if not text:
        return None
    readers = {
        Kind.NUMBER: float, Kind.INTEGER: int, Kind.FRACTION: lambda t: int(t) / 100, Kind.YES_NO: lambda t: t == "yes",
        Kind.DATE: date.fromisoformat, Kind.MOMENT: datetime.fromisoformat, Kind.TIME: time.fromisoformat,
        Kind.WEEKDAYS: {"Mon-Fri": frozenset(range(5)), "Mon-Sat": frozenset(range(6))}.get,
        Kind.ANY: lambda t: True if t == "yes" else int(t),
    }  # fmt: skip
    return readers.get(column.kind, str)(text)


def sample_rows():
    rows = {table.name: [{c.field: example(c) for c in table.columns}] for table in TABLES.values()}
    rows["looms"][0] |= {"Rail": "undrilled", "Cards": 12, "Fitter says": "=1+1"}
    rows["operations"][0] |= {
        "operation": "lift the rail",
        "Rail": "undrilled",
        "Window": "not(mid-warp)",
        "Cards": "<= 12",
    }
    rows["checks"][0] |= {"check": "guard closed"}
    rows["terms"] = [
        {"term": "horizon (days)", "value": 84}, {"term": "start", "value": date(2027, 1, 4)},
        {"term": "currency", "value": "EUR"}, {"term": "pilot of AJ-190", "value": "007"},
    ]  # fmt: skip
    return rows


def test_every_table_reads_back(tmp_path: Path):
    rows = sample_rows()
    write_export(tmp_path / "mill.xlsx", rows)
    result = read_files([tmp_path / "mill.xlsx"], {}, {}, TODAY)
    assert [source.table for source in result.tables] == list(TABLES)
    assert result.findings == ()
    for name, wanted in rows.items():
        got = [{**row.values, **row.kept} for row in result.rows if row.table == name]
        assert got == wanted, name


def test_the_same_again_changes_nothing(tmp_path: Path):
    write_export(tmp_path / "mill.xlsx", sample_rows())
    result = read_files([tmp_path / "mill.xlsx"], {}, {}, TODAY)
    first = compare(result, {})
    assert sum(counts.added for counts in first.counts) == len(result.rows) == 30  # one row of 26 tables, four terms
    current: dict = {}
    for row in result.rows:
        stored = current.setdefault(row.table, {})
        key = tuple(row.values[field] for field in TABLES[row.table].key) or (len(stored) + 1,)
        stored[key] = {**row.values, **row.kept}
    again = compare(result, current)
    assert again.changes == [] and not again.method_changed and again.missing == {}
    assert sum(counts.unchanged for counts in again.counts) == 30


def test_an_empty_template_has_every_table_and_no_row(tmp_path: Path):
    write_template(tmp_path / "empty.xlsx")
    result = read_files([tmp_path / "empty.xlsx"], {}, {}, TODAY)
    assert [source.table for source in result.tables] == list(TABLES) and result.rows == ()


def test_a_language_is_named_by_its_code_or_in_any_language(tmp_path):
    rows = [["Crew", "Trade", "Heads", "Language"], ["F1", "fitter", 2, "Türkçe"], ["F2", "fitter", 2, "zh"],
            ["F3", "fitter", 2, "Deutsch"], ["F4", "fitter", 2, "Latin"]]  # fmt: skip
    got = read_files([workbook(tmp_path / "a.xlsx", {"Crews": rows})], {}, {}, TODAY)
    assert [row.values.get("language") for row in got.rows] == ["tr", "zh", "de"]
    assert [(f.cell, f.code) for f in got.findings if f.severity == "refused"] == [("D5", "unknown-word")]


def test_the_terms_of_cards(tmp_path):
    rows = [["Term", "Value"], ["language of cards", "Turkish"], ["address of the screens", "http://office:8501"]]
    got = read_files([workbook(tmp_path / "a.xlsx", {"Terms": rows})], {}, {}, TODAY)
    assert [row.values["value"] for row in got.rows] == ["tr", "http://office:8501"]
