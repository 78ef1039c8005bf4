"""Who is away: an absence in one line, with the checks that a load makes."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.mill import Absence, Mill
from tracker.domain.rows import ReadResult, SourceTable, TypedRow
from tracker.domain.shifts import crews_of, short_of_heads
from tracker.errors import DataError, Message, UsageError, message
from tracker.intake.rows.around import NEEDS
from tracker.intake.rows.compare import compare
from tracker.intake.rows.cross_checks import cross_findings
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store.unit_of_work import UnitOfWork

SOURCE = SourceTable("", "", "absences", 0)


@dataclass(frozen=True, slots=True)
class AbsenceRecorded:
    absence: Absence
    ended: bool
    """Whether the last day of one that was known already was changed."""
    short: tuple[str, ...]
    """Crews of the lead trade that take no conversion on some of its days because fewer are left than one needs."""

    @property
    def message(self) -> Message:
        """One line for a person."""
        a, how = self.absence, "ended" if self.ended else "begun"
        how = "taken-back" if self.absence.heads == 0 else how
        short = message("crew-takes-none") if self.short else None
        return message(
            "absence-recorded", how=how, crew=a.crew, heads=a.heads, first=a.from_on, last=a.to_on, short=short
        )

    def record(self) -> dict[str, Any]:
        a = self.absence
        return {
            "crew": a.crew, "from": a.from_on.isoformat(), "to": a.to_on.isoformat(), "heads": a.heads, "reason": a.reason,
            "ended": self.ended, "taken_back": a.heads == 0, "takes_no_conversion": bool(self.short),
        }  # fmt: skip


@dataclass(frozen=True, slots=True)
class WhoIsAway:
    """Who can be away, and who is."""

    crews: tuple[str, ...]
    absences: tuple[Absence, ...]
    """Those that have not ended and were not taken back, by their first day."""


def crews_and_absences(context: Context) -> WhoIsAway:
    with context.reading() as uow:
        mill = uow.mill()
    today = context.now().astimezone(mill.terms.zone).date()
    known = sorted((a for a in mill.absences if a.to_on >= today and a.heads != 0), key=lambda a: (a.from_on, a.crew))
    return WhoIsAway(tuple(dict.fromkeys(crew.crew for crew in mill.crews)), tuple(known))


def record_absence(
    context: Context, crew: str, first: date, last: date, heads: int | None = None, reason: str | None = None
) -> AbsenceRecorded:
    """Append an absence, both days included. DataError where it does not fit the crew or overlaps another; nothing is
    written then."""
    if last < first:
        raise UsageError("absence-ends-first", first=first, last=last)
    with context.unit_of_work(May.PLAN) as uow:
        known = uow.rows("absences").get((crew, first))
        if known and known["heads"] != 0:
            raise DataError("absent-already", crew=crew, first=first, last=known["to_on"])
        _write(uow, Absence(crew, first, last, heads, (reason or "").strip() or None), context.now().date())
        mill = uow.mill()
        uow.commit()
    return _recorded(mill, Absence(crew, first, last, heads, reason), ended=False)


def end_absence(context: Context, crew: str, back_on: date) -> AbsenceRecorded:
    """The crew is back on a day: its absence ends on the day before. Where that day is its first, it never was away: the
    absence stays in the list with no heads, so that its history tells of it."""
    with context.unit_of_work(May.PLAN) as uow:
        mine = (a for a in uow.mill().absences if a.crew == crew and a.heads != 0)
        away = next((a for a in mine if a.from_on <= back_on <= a.to_on), None)
        if away is None:
            raise DataError("not-absent", crew=crew, on=back_on)
        taken_back = away.from_on == back_on
        ended = replace(away, heads=0) if taken_back else replace(away, to_on=back_on - timedelta(days=1))
        _write(uow, ended, context.now().date())
        mill = uow.mill()
        uow.commit()
    return _recorded(mill, ended, ended=True)


def _write(uow: UnitOfWork, absence: Absence, today: date) -> None:
    """As a row of the sheet Absences would be loaded."""
    values = {field: getattr(absence, field) for field in ("crew", "from_on", "to_on", "heads", "reason")}
    row = TypedRow("absences", values)
    refused = [
        finding
        for finding in cross_findings([row], [SOURCE], {name: uow.rows(name) for name in NEEDS}, today)
        if finding.severity is Severity.REFUSED
    ]
    if refused:
        raise DataError(refused[0].code, **refused[0].params)
    changes = compare(ReadResult((SOURCE,), (row,), ()), {"absences": uow.rows("absences")}).changes
    writer = uow.load_writer()
    writer.begin([], ())
    writer.write(changes, {})


def _recorded(mill: Mill, absence: Absence, ended: bool) -> AbsenceRecorded:
    rows = (row for row in crews_of(mill, mill.terms.lead_trade) if row.crew == absence.crew)
    short = tuple(row.crew for row in rows if short_of_heads(mill, row, absence.from_on, absence.to_on))
    return AbsenceRecorded(absence, ended, short)
