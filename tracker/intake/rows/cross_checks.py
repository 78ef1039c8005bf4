"""What of a load does not fit the rest of the mill: articles and halls that there are not, pilots that cannot be one, days
out of order, absences that do not fit their crew. Judged against what the load brings and what the database holds."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date, datetime
from typing import Any

from rapidfuzz import process

from tracker.domain.faults import Fault, placed
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import SourceTable, TypedRow
from tracker.domain.words import natural_key
from tracker.errors import message
from tracker.intake.rows.around import Around, Stored, around
from tracker.intake.rows.crew_checks import breaks, heads_away, known_crew, overlapping, within_its_dates


def cross_findings(
    rows: Sequence[TypedRow], tables: Sequence[SourceTable], stored: Stored, today: date
) -> tuple[Finding, ...]:
    """Refusals of warps whose article there is not, and notes; each with its cell. `stored`: the tables of `around.NEEDS`."""
    mill = around(rows, stored, today)
    found = [
        placed(fault, row, tables[row.source])
        for row in rows
        for check in _CHECKS.get(row.table, ())
        for fault in check(row, mill)
    ]
    return tuple(found) + tuple(_readings_to_come(rows, tables, mill))


def _article(row: TypedRow, around: Around) -> Iterator[Fault]:
    article = row.values["article"]
    if around.articles and article not in around.articles:
        near = process.extractOne(article, sorted(around.articles), score_cutoff=60)
        said = message("unknown-article", article=article, near=near[0] if near else None)
        yield Fault(said, "article", Severity.REFUSED)


def _hall(row: TypedRow, around: Around) -> Iterator[Fault]:
    hall = row.values.get("hall")
    if hall and around.halls and hall not in around.halls:
        yield Fault(message("hall-without-looms", hall=hall, halls=_listed(around.halls)), "hall")


def _pilot(row: TypedRow, around: Around) -> Iterator[Fault]:
    term, loom = row.values["term"], str(row.values["value"])
    if not term.startswith("pilot of ") or not around.types:
        return
    kind = term.removeprefix("pilot of ")
    has = around.types.get(loom)
    all_kinds = frozenset().union(*around.types.values())
    if kind not in all_kinds:
        yield Fault(message("pilot-of-no-type", term=term, type=kind, types=_listed(all_kinds)), "term")
    elif has is None:
        yield Fault(message("pilot-unknown", term=term, loom=loom), "value")
    elif kind not in has:
        yield Fault(message("pilot-of-other-type", term=term, loom=loom, types=_listed(has), type=kind), "value")


def _finish(row: TypedRow, around: Around) -> Iterator[Fault]:
    start, finish = _day(around.terms.get("start")), _day(around.terms.get("target finish"))
    if row.values["term"] in ("start", "target finish") and start and finish and finish < start:
        yield Fault(message("finish-before-start", finish=finish, start=start), "value")


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
        said = message(
            "reading-to-come", loom=row.values["loom"], at=row.values["read_at"], others=len(found) - 1, day=latest
        )
        yield placed(Fault(said, "read_at"), row, tables[source])


def _listed(names: Iterable[str]) -> list[str]:
    return sorted(names, key=natural_key)
