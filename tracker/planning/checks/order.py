"""What comes first: pilots before their type, firm bookings as published (MODEL.md, sections 6 and 7)."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, timedelta

from tracker.domain.plan import Booking
from tracker.errors import Message, message
from tracker.planning.checks.case import Case
from tracker.planning.checks.staying import cannot_stay


def pilots_first(case: Case) -> Iterator[Message]:
    """One pilot per machine type; the others start once it has run for the soak time."""
    if not case.terms.soak_days:
        return
    soak = timedelta(days=case.terms.soak_days)
    by_type: dict[str, list[Booking]] = defaultdict(list)
    for booking in case.plan.bookings:
        if booking.key in case.mill.looms:
            by_type[case.mill.looms[booking.key].machine_type].append(booking)
    for machine_type, bookings in sorted(by_type.items()):
        pilots = [booking for booking in bookings if booking.pilot]
        ended = pilot_end(case, machine_type)
        if ended is None:
            yield from _pilot_faults(case, machine_type, pilots, bookings)
            ended = pilots[0].end if pilots else None
        if ended is None:
            continue
        for booking in bookings:
            if not booking.pilot and not case.given(booking) and booking.start < ended + soak:
                yield message(
                    "before-pilot", loom=booking.key, start=case.at(booking.start), type=machine_type,
                    days=case.terms.soak_days, until=case.at(ended + soak),
                )  # fmt: skip


def _pilot_faults(case: Case, machine_type: str, pilots: list[Booking], bookings: list[Booking]) -> Iterator[Message]:
    if len(pilots) != 1 and not all(case.given(booking) for booking in bookings):
        yield message("pilots-booked", type=machine_type, pilots=len(pilots), bookings=len(bookings))
    named = case.terms.pilots.get(machine_type)
    booked = {booking.key.loom for booking in bookings}
    if named in booked and pilots and pilots[0].key.loom != named:
        yield message("other-pilot", type=machine_type, pilot=pilots[0].key, named=named)


def pilots_attended(case: Case) -> Iterator[Message]:
    """Whoever is to stay with a pilot throughout does, or the plan says that they cannot; a firm or held one is as published.
    Nothing is asked of what a mill does without a plan."""
    if any(reason.code == "taken-as-they-come" for reason in case.plan.reasons):
        return
    told = {reason.params.get("loom") for reason in case.plan.reasons if reason.code == "pilot-unattended"}
    for booking in case.plan.bookings:
        content = case.content(booking)
        if content is None or not booking.pilot or booking.attended or not case.terms.soak_days:
            continue
        asked = case.problem.attended(content) is not content
        if asked and booking.key not in told and not case.given(booking) and booking.key not in case.problem.held:
            yield message("pilot-alone", loom=booking.key, trade=case.terms.pilot_trade)


def pilot_end(case: Case, machine_type: str) -> datetime | None:
    """The earliest end of a conversion of the type that is done or in work; far back where one is signed off."""
    problem = case.problem
    of_type = {key for key, loom in case.mill.looms.items() if loom.machine_type == machine_type}
    if of_type & problem.signed_off:
        return problem.as_of - timedelta(days=case.terms.soak_days)
    ends = [at for key, at in problem.converted.items() if key in of_type]
    ends += [case.in_work_end(item) for item in problem.in_work if item.key in of_type]
    return min(ends, default=None)


def firm_bookings_stay(case: Case) -> Iterator[Message]:
    """Bookings of the last published plan that start within the firm period keep start, choices and shape, as far as the
    data of today let them."""
    now = {booking.key: booking for booking in case.plan.bookings}
    for key, old in case.firm.items():
        new = now.get(key)
        if new and case.given(new):
            yield from _shape(case, case.kept(old), new)
        elif not cannot_stay(case, old):
            now_at = case.at(new.start) if new else None
            yield message("firm-moved", loom=key, start=case.at(old.start), now=now_at)


def held_bookings_stay(case: Case) -> Iterator[Message]:
    """What was to be held has the start and the choices that it had."""
    now = {booking.key: booking for booking in case.plan.bookings}
    for key, old in case.problem.held_bookings.items():
        new = now.get(key)
        if new is None or (new.start, new.choices) != (old.start, old.choices):
            yield message(
                "held-moved", loom=key, start=case.at(old.start), now=case.at(new.start) if new else None,
                choices=new is not None and new.choices != old.choices,
            )  # fmt: skip


def moves_as_stated(case: Case) -> Iterator[Message]:
    """A plan that was to keep bookings moves as many as it says, and no more than it was to."""
    keeping = case.plan.keeping
    if keeping is None:
        if case.problem.keeps:
            yield message("moves-not-stated")
        return
    now = {booking.key: booking for booking in case.plan.bookings}
    old = {booking.key: booking for booking in case.problem.previous_bookings}
    moves = 0
    for key in case.problem.planned:
        if key in old:
            new = now.get(key)
            moves += new is None or (new.start, new.choices) != (old[key].start, old[key].choices)
    if moves != keeping.moves or (keeping.fewest is not None and moves < keeping.fewest):
        yield message("moves-otherwise", moves=moves, stated=keeping.moves, fewest=keeping.fewest)
    if case.problem.calm is not None and (keeping.most is None or moves > keeping.most):
        yield message("too-many-moves", moves=moves, most=keeping.most, more=case.problem.calm)


def _shape(case: Case, due: Booking, new: Booking) -> Iterator[Message]:
    if new.slots != due.slots:
        yield message("firm-length", loom=new.key, slots=new.slots, due=due.slots)
    if abs(new.labour_h - due.labour_h) > 0.01:
        yield message("firm-labour", loom=new.key, booked=new.labour_h, due=due.labour_h)
    if new.end != due.end:
        yield message("firm-end", loom=new.key, end=case.at(new.end), due=case.at(due.end))
