"""Bookings with the names of their crews, and with when each needs another trade or a tool."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from datetime import timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CrewTurn, Need, Plan
from tracker.domain.words import fold
from tracker.domain.work import StepLoad
from tracker.planning.checks.case import SLOT, Case, Hold
from tracker.planning.checks.shared import held_by_slot
from tracker.planning.naming.jobs import jobs_of, people_of
from tracker.planning.naming.turns import share_out
from tracker.planning.problem import PlanningProblem

ONE_TURN = timedelta(hours=4)
"""A pause no longer than this is a break within one turn of a crew."""


def with_names(plan: Plan, problem: PlanningProblem) -> Plan:
    """The plan with `crews` and `needs` of every booking, and how often a booking changes its crew within a shift."""
    case = Case(plan, problem)
    jobs = jobs_of(case)
    named = share_out(jobs, people_of(case, (case.horizon_end - case.origin) // SLOT))
    crews: dict[LoomKey, dict[int, str]] = defaultdict(dict)
    for job, by_slot in zip(jobs, named.crew, strict=True):
        crews[job.key] |= by_slot
    holds = {hold.key: hold for hold in case.holds}
    bookings = tuple(_named(case, booking, holds[booking.key], crews[booking.key]) for booking in plan.bookings)
    return replace(plan, bookings=bookings, crew_changes=named.within_shift)


def _named(case: Case, booking: Booking, hold: Hold, crews: Mapping[int, str]) -> Booking:
    return replace(booking, crews=tuple(_turns(case, hold, crews)), needs=tuple(needs_of(case, hold)))


def _turns(case: Case, hold: Hold, crews: Mapping[int, str]) -> Iterator[CrewTurn]:
    turn: CrewTurn | None = None
    for slot in hold.slots:
        begin, crew = case.begin(slot), crews.get(slot, "")
        goes_on = hold.pause is None or begin != hold.pause[1]
        if turn and turn.crew == crew and begin - turn.end <= ONE_TURN and goes_on:
            turn = replace(turn, end=begin + SLOT)
            continue
        if turn:
            yield turn
        turn = CrewTurn(crew, begin, begin + SLOT) if crew else None
    if turn:
        yield turn


def needs_of(case: Case, hold: Hold) -> Iterator[Need]:
    """Other trades, then tools, each from when to when, as the slots are held for them."""
    if hold.needs is not None:
        yield from hold.needs
        return
    lead = fold(case.terms.lead_trade)

    def trades(step: StepLoad) -> Mapping[str, int]:
        return {trade: heads for trade, heads in step.heads.items() if fold(trade) != lead}

    yield from sorted(_spans(case, hold, trades, "trade"), key=lambda need: (need.start, need.what))
    yield from sorted(_spans(case, hold, lambda step: step.tools, "tool"), key=lambda need: (need.start, need.what))


def _spans(case: Case, hold: Hold, of_step: Callable[[StepLoad], Mapping[str, int]], kind: str) -> Iterator[Need]:
    for what, amounts in held_by_slot(hold.content, of_step, hold.pause is not None).items():
        need: Need | None = None
        for i, slot in enumerate(hold.slots, hold.skipped):
            begin, amount = case.begin(slot), amounts.get(i, 0)
            if need and amount == need.amount and begin == need.end:
                need = replace(need, end=begin + SLOT)
                continue
            if need:
                yield need
            need = Need(what, kind, amount, begin, begin + SLOT) if amount else None
        if need:
            yield need
