"""What the reader understands of the sample workbooks is what the script put into them, cell for cell."""

from collections.abc import Iterable
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from sample_data.make import HERE, rows_of
from sample_data.mill import sample_mill
from tracker.domain.findings import Severity
from tracker.domain.mill import Mill
from tracker.domain.record_tables import RECORDS
from tracker.domain.rows import ReadResult, TypedRow
from tracker.domain.tables import METHOD_TABLES, TABLES, Column, Kind, Table
from tracker.domain.words import fold
from tracker.intake.reader import read_files

PLAIN = [name for name in TABLES if name != "terms" and name not in (*METHOD_TABLES, *RECORDS)]


@pytest.fixture(scope="module")
def mill() -> Mill:
    return sample_mill()


@pytest.fixture(scope="module")
def read() -> ReadResult:
    return read_files(sorted(HERE.glob("*.xlsx")), {}, {}, date(2027, 1, 4))


def test_it_reads_without_doubt_or_refusal(read: ReadResult) -> None:
    assert [f.line() for f in read.findings if f.severity is not Severity.NOTE] == []
    assert sum(read.refused.values()) == 0


def rows(read: ReadResult, table: str) -> list[TypedRow]:
    return [row for row in read.rows if row.table == table]


def plain(column: Column, value: Any, zone: ZoneInfo) -> Any:
    """A value as a reader gives it: a moment in the mill's local time, what an empty cell means left empty."""
    if column.field in ("learns", "waivable"):
        return None if value is None or value else "no"
    if column.kind is Kind.YES_NO:
        return value or None
    return value.astimezone(zone).replace(tzinfo=None) if isinstance(value, datetime) and value.tzinfo else value


def expected(table: Table, row: Any, mill: Mill) -> dict[str, Any]:
    return {column.field: plain(column, getattr(row, column.field), mill.terms.zone) for column in table.columns}


def said(table: Table, row: TypedRow, mill: Mill) -> dict[str, Any]:
    return {column.field: plain(column, row.values.get(column.field), mill.terms.zone) for column in table.columns}


def keyed(table: Table, dicts: Iterable[dict[str, Any]]) -> dict[tuple, dict[str, Any]]:
    return {tuple(values[field] for field in table.key): values for values in dicts}


@pytest.mark.parametrize("name", PLAIN)
def test_each_row_of_a_plain_table(read: ReadResult, mill: Mill, name: str) -> None:
    table = TABLES[name]
    understood = keyed(table, (said(table, row, mill) for row in rows(read, name)))
    assert understood == keyed(table, (expected(table, row, mill) for row in rows_of(mill, name)))


@pytest.mark.parametrize("name", METHOD_TABLES)
def test_each_row_of_the_method_and_its_conditions(read: ReadResult, mill: Mill, name: str) -> None:
    table = TABLES[name]
    written = [(expected(table, row, mill), dict(row.conditions)) for row in rows_of(mill, name)]
    understood = [
        (said(table, row, mill), {h: str(cell) for h, cell in row.kept.items() if cell is not None})
        for row in rows(read, name)
    ]
    assert understood == written


def test_attributes_of_the_looms(read: ReadResult, mill: Mill) -> None:
    understood = {
        (row.values["hall"], row.values["loom"]): {fold(h): value for h, value in row.kept.items()}
        for row in rows(read, "looms")
    }
    assert understood == {tuple(key): dict(loom.attributes) for key, loom in mill.looms.items()}
