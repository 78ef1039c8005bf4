"""What a plan takes for granted, said with what to mend."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from tracker.domain.clock import horizon_end
from tracker.domain.ordering import as_expected
from tracker.domain.shifts import crews_of, lead_heads, short_of_heads
from tracker.domain.words import fold, natural_key
from tracker.domain.work import WorkContent
from tracker.errors import Message, message
from tracker.planning.model.contents import rateless
from tracker.planning.problem import PlanningProblem


def notes(
    problem: PlanningProblem, contents: Sequence[WorkContent], rates: Mapping[str, float], short: Sequence[str]
) -> Iterator[Message]:
    """`rates`: folded trade → currency per head and hour; `short`: parts of which the looms need more than there is."""
    yield from _not_recorded(problem)
    yield from _overlapping(problem)
    yield from _short_crews(problem)
    yield from _without_rate(problem, contents, rates)
    yield from _without_price(problem, contents)
    yield from _lead_times(problem, short)
    yield from _overdue(problem)


def _not_recorded(problem: PlanningProblem) -> Iterator[Message]:
    """Published bookings that were to start before as of, of looms of which nothing is recorded."""
    to_plan, zone = set(problem.planned) - problem.stopped, problem.mill.terms.zone
    passed = [
        message("loom-on-moment", loom=b.key, at=b.start.astimezone(zone))
        for b in problem.previous_bookings
        if b.key in to_plan and b.start < problem.as_of
    ]
    if passed:
        yield message("passed-unrecorded", looms=tuple(passed))


def _overlapping(problem: PlanningProblem) -> Iterator[Message]:
    """Crews whose rows overlap; `problem` refuses those that would be in two halls at once."""
    for one, other, at in problem.overlaps:
        local = at.astimezone(problem.mill.terms.zone)
        yield message("crew-rows-overlap", crew=one.crew, at=local, hall=one.hall or other.hall or None)


def _short_crews(problem: PlanningProblem) -> Iterator[Message]:
    """Crews of the lead trade that are at work with fewer heads than a conversion needs."""
    mill, zone = problem.mill, problem.mill.terms.zone
    first, last = (at.astimezone(zone).date() for at in (problem.as_of, horizon_end(mill.terms, problem.as_of)))
    for crew in crews_of(mill, mill.terms.lead_trade):
        if days := short_of_heads(mill, crew, first, last):
            yield message("crew-short-of-heads", crew=crew.crew, heads=lead_heads(mill), days=tuple(days))


def _without_rate(
    problem: PlanningProblem, contents: Sequence[WorkContent], rates: Mapping[str, float]
) -> Iterator[Message]:
    for trade in rateless(contents, rates):
        yield message("rateless-trade", trade=trade)
    works = {fold(trade) for content in contents for trade in content.labour_min}
    free = {
        crew.crew
        for crew in problem.mill.crews
        if fold(crew.trade) in works and crew.heads and not crew.rate_per_head_h
    }
    if free:
        yield message("rates-missing", crews=tuple(sorted(free, key=natural_key)))


def _without_price(problem: PlanningProblem, contents: Sequence[WorkContent]) -> Iterator[Message]:
    needed = {part for content in contents for part in content.parts}
    free = sorted((part for part in needed if not problem.mill.parts[part].price), key=natural_key)
    if free:
        yield message("prices-missing", parts=_named(free))


def _overdue(problem: PlanningProblem) -> Iterator[Message]:
    mill = problem.mill
    today = problem.as_of.astimezone(mill.terms.zone).date()
    expected = {receipt.order: receipt.due for receipt in as_expected(mill, problem.as_of).receipts}
    for receipt in mill.receipts:
        if receipt.due < today:
            yield message("order-overdue", order=receipt.order, quantity=receipt.quantity, part=receipt.part,
                          due=receipt.due, comes=expected.get(receipt.order))  # fmt: skip


def _lead_times(problem: PlanningProblem, short: Sequence[str]) -> Iterator[Message]:
    terms, parts = problem.mill.terms, problem.mill.parts
    without = sorted((part for part in short if parts[part].lead_time_days is None), key=natural_key)
    if not without or not terms.plan_with_orders:
        return
    if days := terms.lead_time_none_given_days:
        yield message("lead-times-taken", parts=_named(without), days=days)
    else:
        yield message("lead-times-none", parts=_named(without))


def _named(parts: Iterable[str]) -> tuple[Message, ...]:
    return tuple(message("named-part", part=part) for part in parts)
