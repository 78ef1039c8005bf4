"""Records that are told by a command or a screen, by the same way as those of a file."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.columns import Column, Kind, Table
from tracker.domain.mill import LoomKey
from tracker.domain.rows import ReadResult, SourceColumn, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.errors import UsageError
from tracker.intake.columns.simple_columns import yes_or_no
from tracker.intake.rows.pairs import contradiction, fits
from tracker.services.context import Context
from tracker.services.loading.load import Also, enter
from tracker.services.loading.load_report import LoadReport
from tracker.services.looms import find_loom
from tracker.services.people.permissions import May

NOT_FROM_A_FILE = "record"
"""Where the rows stand, as a finding names it."""


@dataclass(frozen=True, slots=True)
class HowTold:
    correct: str | None = None
    """The reason for which it replaces what was recorded."""
    also: Also | None = None
    """Writes what belongs to it."""


ONCE = HowTold()


def enter_records(
    context: Context,
    loom: str,
    hall: str | None,
    rows: Mapping[str, Sequence[Mapping[str, Any]]],
    told: Mapping[str, Any],
    how: HowTold = ONCE,
) -> LoadReport:
    """Write records of one loom as one load: table → rows by field. `told` holds what all rows have in common (who, at, side,
    article, a waiver, a period) and goes where the table has a column for it; moments in UTC, `at` is now where none is said.

    UsageError for a value that a column cannot hold, or a missing one that it needs.
    """
    context.require(May.RECORD)
    with context.reading() as uow:
        mill = uow.mill()
    key, zone = find_loom(mill, loom, hall), mill.terms.zone
    now = context.now()
    common = dict(told) | {"at": told.get("at") or now}
    if common.get("waived_because"):
        common["waived_at"] = common["at"]
    local = {n: v.astimezone(zone).replace(tzinfo=None) if isinstance(v, datetime) else v for n, v in common.items()}
    sources = tuple(SourceTable("", NOT_FROM_A_FILE, name, 0, _columns(TABLES[name])) for name in rows)
    typed = [
        TypedRow(name, _values(TABLES[name], {**local, **row}, key), {}, source, number)
        for source, (name, of) in enumerate(rows.items())
        for number, row in enumerate(of, 1)
    ]
    return enter(context, ReadResult(sources, tuple(typed), ()), how.correct, also=how.also)


def _columns(table: Table) -> tuple[SourceColumn, ...]:
    """In no cell, so that a finding names the heading of its field."""
    return tuple(SourceColumn(column.heading, "", column.field) for column in table.columns)


def _values(table: Table, given: Mapping[str, Any], key: LoomKey) -> dict[str, Any]:
    values = dict(_read(table, {**given, "loom": key.loom, "hall": key.hall}))
    for column in table.columns:
        if column.needed and values[column.field] in (None, "") and not (column.unless and values.get(column.unless)):
            raise UsageError("record-lacks", table=table.named, field=column.named)
    for pair in table.pairs:
        first, second, one, other = (
            table.column(pair.first),
            table.column(pair.second),
            values[pair.first],
            values[pair.second],
        )
        if not fits(pair, one, other):
            said = contradiction((first.named, second.named), one, other, first.unit or "")
            raise UsageError(said.code, **said.params)
    return values


def _read(table: Table, given: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    for column in table.columns:
        value = given.get(column.field)
        yield column.field, value if value is None else _fitting(table, column, value)


def _fitting(table: Table, column: Column, value: Any) -> Any:
    if column.kind is Kind.ANY and isinstance(value, str):
        return _reading(column, value)
    low, high = (
        limit if limit is not None else default for limit, default in ((column.low, -1e300), (column.high, 1e300))
    )
    if isinstance(value, float | int) and not low <= value <= high:
        raise UsageError("record-beyond", table=table.named, field=column.named, value=value, possible=column.possible)
    return value


def _reading(column: Column, text: str) -> Any:
    """A setting's value or a check's result: a number where it is one; a result else yes or no."""
    number = _number(text)
    if number is not None or column.field != "result":
        return text if number is None else number
    answer = yes_or_no(text)
    if answer is None:
        raise UsageError("not-yes-no-number", text=text)
    return answer


def _number(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        return None
