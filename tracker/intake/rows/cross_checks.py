"""What of a load does not fit the rest of the mill: articles and halls that there are not, pilots that cannot be one, days
out of order, absences that do not fit their crew. Judged against what the load brings and what the database holds."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date, datetime
from typing import Any

from rapidfuzz import process

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import SourceTable, TypedRow
from tracker.domain.words import natural_key
from tracker.intake.rows.around import Around, Fault, Stored, around
from tracker.intake.rows.crew_checks import breaks, heads_away, known_crew, overlapping, within_its_dates


def cross_findings(
    rows: Sequence[TypedRow], tables: Sequence[SourceTable], stored: Stored, today: date
) -> tuple[Finding, ...]:
    """Refusals of warps whose article there is not, and notes; each with its cell. `stored`: the tables of `around.NEEDS`."""
    mill = around(rows, stored, today)
    found = [
        _placed(fault, row, tables[row.source])
        for row in rows
        for check in _CHECKS.get(row.table, ())
        for fault in check(row, mill)
    ]
    return tuple(found) + tuple(_readings_to_come(rows, tables, mill))


def _article(row: TypedRow, around: Around) -> Iterator[Fault]:
    article = row.values["article"]
    if around.articles and article not in around.articles:
        near = process.extractOne(article, sorted(around.articles), score_cutoff=60)
        nearest = f"; the nearest is {near[0]}" if near else ""
        yield Fault("unknown-article", "article", f"Article {article} is not in the list of articles{nearest}.",
                     "Correct the cell, or load the sheet Articles with it.", Severity.REFUSED)  # fmt: skip


def _hall(row: TypedRow, around: Around) -> Iterator[Fault]:
    hall = row.values.get("hall")
    if hall and around.halls and hall not in around.halls:
        yield Fault("hall-without-looms", "hall", f"No loom stands in {hall}; the halls with looms are "
                     f"{_listed(around.halls)}. The row changes nothing.", "Correct the hall if it is a slip.")  # fmt: skip


def _pilot(row: TypedRow, around: Around) -> Iterator[Fault]:
    term, loom = row.values["term"], str(row.values["value"])
    if not term.startswith("pilot of ") or not around.types:
        return
    kind = term.removeprefix("pilot of ")
    has = around.types.get(loom)
    all_kinds = frozenset().union(*around.types.values())
    hint = "Correct it, or the pilot is chosen by cost alone."
    if kind not in all_kinds:
        yield Fault("pilot-of-no-type", "term", f"{term}: no loom has the machine type {kind}; there are "
                     f"{_listed(all_kinds)}.", hint)  # fmt: skip
    elif has is None:
        yield Fault("pilot-unknown", "value", f"{term}: loom {loom} is not in the loom list.", hint)
    elif kind not in has:
        yield Fault(
            "pilot-of-other-type",
            "value",
            f"{term}: loom {loom} has the machine type {_listed(has)}, not {kind}.",
            hint,
        )


def _finish(row: TypedRow, around: Around) -> Iterator[Fault]:
    start, finish = _day(around.terms.get("start")), _day(around.terms.get("target finish"))
    if row.values["term"] in ("start", "target finish") and start and finish and finish < start:
        yield Fault("finish-before-start", "value", f"The target finish {finish} is before the start {start}; no loom can "
                     "be done by then.", "Correct one of the two.")  # fmt: skip


def _day(value: Any) -> date | None:
    """A term's day, which the database keeps as text."""
    return date.fromisoformat(value) if isinstance(value, str) else value


Check = Callable[[TypedRow, Around], Iterator[Fault]]
_CHECKS: dict[str, tuple[Check, ...]] = {
    "warps": (_article,), "crews": (_hall, breaks), "running": (_hall,), "closures": (_hall,), "terms": (_pilot, _finish),
    "absences": (known_crew, within_its_dates, heads_away, overlapping), "overtime": (known_crew, within_its_dates),
}  # fmt: skip


def _readings_to_come(rows: Iterable[TypedRow], tables: Sequence[SourceTable], around: Around) -> Iterator[Finding]:
    """One note for each table with readings of days to come. A programme that lies ahead is counted from its start."""
    latest = max(around.today, _day(around.terms.get("start")) or around.today)
    late: dict[int, list[TypedRow]] = {}
    for row in rows:
        if isinstance(at := row.values.get("read_at"), datetime) and at.date() > latest:
            late.setdefault(row.source, []).append(row)
    for source, found in late.items():
        row = max(found, key=lambda one: one.values["read_at"])
        others = f", and {len(found) - 1} more of this sheet" if found[1:] else ""
        said = (f"Loom {row.values['loom']}: the warp was read at {row.values['read_at']:%Y-%m-%d %H:%M}{others}, later than "
                f"{latest}.")  # fmt: skip
        fault = Fault("reading-to-come", "read_at", said, "Correct the day if it is a slip.")
        yield _placed(fault, row, tables[source])


def _listed(names: Iterable[str]) -> str:
    return ", ".join(sorted(names, key=natural_key))


def _placed(fault: Fault, row: TypedRow, table: SourceTable) -> Finding:
    heading = next((column.heading for column in table.columns if column.field == fault.field), "")
    value = str(row.values.get(fault.field, ""))
    cell = table.cell_of(fault.field, row.number)
    return Finding(
        fault.code, fault.severity, fault.message, fault.hint, table.file, table.sheet, cell, heading, value, value
    )
