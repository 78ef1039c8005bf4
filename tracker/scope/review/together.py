"""Trades that a conversion needs on the loom and that are never at work together with a crew of the lead trade."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from tracker.domain.calendars import Calendar, union
from tracker.domain.findings import Finding, Severity
from tracker.domain.mill import Mill
from tracker.domain.shifts import crew_calendar, crews_of
from tracker.domain.words import fold
from tracker.scope.review.subject import Subject, found

FIRST, LAST = date(2001, 1, 1), date(2001, 1, 14)
"""Any two weeks: rows are compared by weekday and shift, without their dates."""


def never_at_work(subject: Subject) -> Iterator[Finding]:
    """One finding a trade, at its first step on the loom."""
    lead, said = fold(subject.terms.lead_trade), set()
    there = {fold(crew.trade): _at_work(subject, crew.trade) for crew in subject.crews if crew.heads > 0}
    for row in subject.method.operations:
        trade = fold(row.trade)
        if row.place != "on loom" or trade == lead or trade in said or lead not in there or trade not in there:
            continue
        if not _both(there[lead], there[trade]).spans:
            said.add(trade)
            yield found("trade-never-together", Severity.REFUSED, row, "trade", row.trade, step=row.step,
                        operation=row.operation, lead=subject.terms.lead_trade)  # fmt: skip


def _at_work(subject: Subject, trade: str) -> Calendar:
    undated = tuple(replace(crew, from_on=None, to_on=None) for crew in subject.crews)
    mill = Mill(crews=undated, terms=subject.terms)
    return union(crew_calendar(mill, crew, crew.hall or "", FIRST, LAST) for crew in crews_of(mill, trade))


def _both(one: Calendar, other: Calendar) -> Calendar:
    return one.less(one.less(other))
