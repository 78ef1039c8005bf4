"""What a plan takes for granted, in sentences that say what to mend."""

from collections.abc import Iterator, Mapping, Sequence

from tracker.domain.clock import horizon_end
from tracker.domain.formats import count, day, listed, moment
from tracker.domain.ordering import as_expected
from tracker.domain.shifts import crews_of, lead_heads, short_of_heads
from tracker.domain.words import fold, natural_key
from tracker.domain.work import WorkContent
from tracker.planning.model.contents import rateless
from tracker.planning.problem import PlanningProblem


def notes(
    problem: PlanningProblem, contents: Sequence[WorkContent], rates: Mapping[str, float], short: Sequence[str]
) -> Iterator[str]:
    """`rates`: folded trade → currency per head and hour; `short`: parts of which the looms need more than there is."""
    yield from _not_recorded(problem)
    yield from _overlapping(problem)
    yield from _short_crews(problem)
    yield from _without_rate(problem, contents, rates)
    yield from _without_price(problem, contents)
    yield from _lead_times(problem, short)
    yield from _overdue(problem)


def _not_recorded(problem: PlanningProblem) -> Iterator[str]:
    """Published bookings that were to start before as of, of looms of which nothing is recorded."""
    to_plan, zone = set(problem.planned), problem.mill.terms.zone
    passed = [
        f"{b.key} on {moment(b.start, zone)}"
        for b in problem.previous_bookings
        if b.key in to_plan and b.start < problem.as_of
    ]
    if passed:
        yield (
            f"Booked, past and not recorded: {listed(passed)}. Record what was done (in work, run-in, signed off); here "
            "they are planned anew."
        )


def _overlapping(problem: PlanningProblem) -> Iterator[str]:
    """Crews whose rows overlap; `problem` refuses those that would be in two halls at once."""
    for one, other, at in problem.overlaps:
        hall = one.hall or other.hall
        yield (
            f"Crew {one.crew} stands in two rows whose hours overlap, first on {moment(at, problem.mill.terms.zone)}; it counts "
            f"as one crew there{f', in {hall}' if hall else ''}."
        )


def _short_crews(problem: PlanningProblem) -> Iterator[str]:
    """Crews of the lead trade that are at work with fewer heads than a conversion needs."""
    mill, zone = problem.mill, problem.mill.terms.zone
    first, last = (at.astimezone(zone).date() for at in (problem.as_of, horizon_end(mill.terms, problem.as_of)))
    for crew in crews_of(mill, mill.terms.lead_trade):
        if days := short_of_heads(mill, crew, first, last):
            yield (
                f"Crew {crew.crew} has fewer than the {count(lead_heads(mill), 'head')} that the method asks for on "
                f"{listed(map(day, days))}; it takes no conversion then."
            )


def _without_rate(
    problem: PlanningProblem, contents: Sequence[WorkContent], rates: Mapping[str, float]
) -> Iterator[str]:
    for trade in rateless(contents, rates):
        yield (
            f"No crew of the trade '{trade}' is listed: its hours cost nothing here, and what needs it on the loom "
            "cannot be booked."
        )
    works = {fold(trade) for content in contents for trade in content.labour_min}
    free = {
        crew.crew
        for crew in problem.mill.crews
        if fold(crew.trade) in works and crew.heads and not crew.rate_per_head_h
    }
    if free:
        yield f"No rate is given for {listed(sorted(free, key=natural_key))}: their hours cost nothing here."


def _without_price(problem: PlanningProblem, contents: Sequence[WorkContent]) -> Iterator[str]:
    needed = {part for content in contents for part in content.parts}
    free = sorted((part for part in needed if not problem.mill.parts[part].price), key=natural_key)
    if free:
        yield f"No price is given for {listed([f'part {part}' for part in free])}: what is used of them costs nothing here."


def _overdue(problem: PlanningProblem) -> Iterator[str]:
    mill = problem.mill
    today = problem.as_of.astimezone(mill.terms.zone).date()
    expected = {receipt.order: receipt.due for receipt in as_expected(mill, problem.as_of).receipts}
    for receipt in mill.receipts:
        if receipt.due < today:
            comes = expected.get(receipt.order)
            counts = f"count like an order placed today, due on {day(comes)}" if comes else "count on no day"
            yield (
                f"Order {receipt.order}: {receipt.quantity:g} of {receipt.part} were due on {day(receipt.due)} and have not come; "
                f"they {counts}. Receive them, or give the receipt its new date."
            )


def _lead_times(problem: PlanningProblem, short: Sequence[str]) -> Iterator[str]:
    terms, parts = problem.mill.terms, problem.mill.parts
    without = sorted((part for part in short if parts[part].lead_time_days is None), key=natural_key)
    if not without or not terms.plan_with_orders:
        return
    named, days = listed([f"part {part}" for part in without]), terms.lead_time_none_given_days
    if days:
        yield f"No lead time is given for {named}: {count(days, 'day')} are taken (term 'lead time where none is given')."
    else:
        yield f"No lead time is given for {named}: by the term 'lead time where none is given' they cannot be ordered."
