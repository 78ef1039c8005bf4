"""What a mill does without a plan: take each beam-out as it comes, by the best fixed limit on waiting.

It obeys every limit that a plan obeys, so that the difference in cost is what planning is worth.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from tracker.domain.clock import start_of_day
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, LeftOver, Plan, PlanStatus
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import WorkContent
from tracker.errors import Message, message
from tracker.planning.baseline.room import Room
from tracker.planning.checks.case import SLOT, Case
from tracker.planning.checks.costs import Prices
from tracker.planning.checks.order import pilot_end
from tracker.planning.checks.times import FAR, window_closes
from tracker.planning.problem import PlanningProblem

LIMITS_H = (0.0, 2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 48.0, 72.0, 120.0)
"""Waiting limits that are tried: clock hours from the beam-out to the start."""

WAITING_LIMIT = "waiting limit (hours)"
"""Under this name the terms of a baseline say which limit it kept."""


def baseline(problem: PlanningProblem, limits_h: Sequence[float] = LIMITS_H) -> Plan:
    """The cheapest of the plans that take each beam-out (or standing loom) in order of time, one for each limit.

    A loom whose crew, electrician, tools and kit are free within the limit after its expected beam-out is converted at
    the first such moment, by the cheapest choices that can start then; else it weaves on to its next beam-out. Firm
    bookings stay, pilots come first, mid-warp stops are never made. Costs are those of MODEL.md, section 5; status
    feasible, bound 0, since nothing is proven.
    """
    walk = _Walk(problem)
    plans = [walk.plan(limit) for limit in limits_h]
    return min(plans, key=lambda plan: plan.objective)


class _Walk:
    """The looms, their chances in order of time and what is free; walked through once for each limit."""

    def __init__(self, problem: PlanningProblem):
        nothing = Plan(PlanStatus.FEASIBLE, 0, 0, 0, problem.mill.terms.currency, problem.as_of, problem.as_of)
        self.problem, self.case = problem, Case(nothing, problem)
        self.looms = set(problem.planned) - problem.unplannable.keys()
        self.chances = sorted(self._chances(), key=lambda window: (self._out_at(window), window.key.sort_key))
        self.prices = Prices(self.case, self.chances)
        self.room = Room(self.case)
        self.booked: dict[LoomKey, Booking] = {}
        self.opens: dict[str, datetime | None] = {}
        """When looms of each machine type may start; None = its pilot is still to come."""

    def _chances(self) -> Iterator[Window]:
        for key in self.looms:
            for window in self.problem.windows.get(key, ()):
                if window.kind is not WindowKind.MID_WARP and self.problem.contents[key].get(window.kind):
                    yield window

    def _out_at(self, window: Window) -> datetime:
        """When the loom is expected to be free to work on; one that should have been is now."""
        return max(window.mean_at, self.problem.as_of, self.case.start)

    def plan(self, limit_h: float) -> Plan:
        """What comes of one limit."""
        self._start_again()
        for booking in self.case.firm.values():
            self._book(self.case.kept(booking))
        for window in self.chances:
            if window.key not in self.booked and (booking := self._booking(window, limit_h)):
                self._book(booking)
        return self._finished(limit_h)

    def _start_again(self) -> None:
        self.booked = {}
        self.room.clear()
        for hold in self.case.holds:
            self.room.take(hold)
        types = {loom.machine_type for loom in self.problem.mill.looms.values()}
        self.opens = {machine_type: self._type_opens(machine_type) for machine_type in types}

    def _type_opens(self, machine_type: str) -> datetime | None:
        soak = timedelta(days=self.case.terms.soak_days)
        if not soak:
            return self.problem.as_of
        ended = pilot_end(self.case, machine_type)
        return ended + soak if ended else None

    def _booking(self, window: Window, limit_h: float) -> Booking | None:
        """At the first start within the limit for which everything is free; None where there is none, or where leaving
        the loom over is cheaper. A pilot has its electrician throughout where that is possible."""
        contents = sorted(self.problem.contents[window.key][window.kind], key=self._work_cost)
        span = self._span(window, limit_h)
        if span is None:
            return None
        attended = list(map(self.problem.attended, contents)) if self._is_pilot(window) else []
        booking = self._first_of(window, attended, *span) or self._first_of(window, contents, *span)
        return booking if booking and booking.cost.total <= self.prices.of_left_over(window.key) else None

    def _first_of(self, window: Window, contents: Sequence[WorkContent], first: int, past: int) -> Booking | None:
        """The first start at which one of these contents finds everything free; of several at once the first."""
        found = [
            (start, i)
            for i, content in enumerate(contents)
            if (start := self._first_start(window, content, first, past)) is not None
        ]
        if not found:
            return None
        start, i = min(found)
        return self._priced(window, contents[i], start)

    def _is_pilot(self, window: Window) -> bool:
        return self.opens[self.problem.mill.looms[window.key].machine_type] is None

    def _work_cost(self, content: WorkContent) -> float:
        return self.prices.labour(content) + self.prices.parts(content)

    def _first_start(self, window: Window, content: WorkContent, first: int, past: int) -> int | None:
        """The first of the hall's working slots (positions) from which everything is free."""
        room, hall = self.room, self.room.halls.index(window.key.hall)
        ok = room.fits(window, content, first, past)
        slots = room.work[hall][first : first + ok.size]
        ok &= room.day_of[slots] >= room.kit_from(self._needs(window.key, content))
        if window.mean_at > self.problem.as_of + FAR:
            ok &= room.full_hour[slots]
        return first + int(np.argmax(ok)) if ok.any() else None

    def _span(self, window: Window, limit_h: float) -> tuple[int, int] | None:
        """First and past the last start (positions) that window, limit, machine type and protection allow."""
        work, out_at = self.case.work(window.key.hall), self._out_at(window)
        opens = self._open_for(window.key)
        if opens is None:
            return None
        first = self._position(work, max(out_at, opens, self._unprotected(window.key)))
        if window.ends_at:
            past = self._position(work, window.ends_at)
        else:
            in_time = bisect_right(work, self.case.slot_of(out_at + timedelta(hours=limit_h)))
            past = min(in_time, window_closes(self.case, window.key.hall, window.mean_at))
        return (first, past) if past > first else None

    def _position(self, work: list[int], at: datetime) -> int:
        """The first working slot that begins at or after a moment."""
        return bisect_left(work, -((self.case.origin - at) // SLOT))

    def _open_for(self, key: LoomKey) -> datetime | None:
        """From when a loom may start by its type; None where another loom is its pilot, still to come."""
        machine_type = self.problem.mill.looms[key].machine_type
        opens = self.opens[machine_type]
        if opens is not None:
            return opens
        named = self.case.terms.pilots.get(machine_type)
        pilots = {k for k in self.looms if k.loom == named and self.problem.mill.looms[k].machine_type == machine_type}
        return self.problem.as_of if key in pilots or not pilots else None

    def _unprotected(self, key: LoomKey) -> datetime:
        until = self.problem.mill.looms[key].protected_until
        return start_of_day(until + timedelta(days=1), self.case.terms) if until else self.problem.as_of

    def _needs(self, key: LoomKey, content: WorkContent) -> Mapping[str, float]:
        """What a loom still takes out of stock."""
        issued = self.problem.issued.get(key)
        if not issued:
            return content.parts
        return {part: max(0.0, quantity - issued.get(part, 0.0)) for part, quantity in content.parts.items()}

    def _priced(self, window: Window, content: WorkContent, position: int) -> Booking:
        start = self.case.begin(self.case.work(window.key.hall)[position])
        course = self.case.course(start, content, window, window.key.hall)
        assert course  # room was found for it
        pilot = self._is_pilot(window)
        booking = Booking(
            key=window.key,
            window=window.number,
            kind=window.kind,
            choices=content.choices,
            start=start,
            end=course.end,
            beam_out_p50=None if window.ends_at else window.p50_at,
            slots=course.slots,
            labour_h=content.labour_h,
            parts=content.parts,
            cost=CostTerms(),
            pilot=pilot,
            attended=pilot and content.holds_throughout(self.case.terms.pilot_trade),
            pause=course.pause,
        )
        return replace(booking, cost=self.prices.of_booking(booking, window, content))

    def _book(self, booking: Booking) -> None:
        self.booked[booking.key] = booking
        hold = self.case.booked(booking)
        self.room.take(hold)
        if hold.content:
            day = self.room.day_of[self.case.slot_of(booking.start)]
            self.room.take_parts(self._needs(booking.key, hold.content), int(day))
        if booking.pilot:
            machine_type = self.problem.mill.looms[booking.key].machine_type
            self.opens[machine_type] = booking.end + timedelta(days=self.case.terms.soak_days)

    def _finished(self, limit_h: float) -> Plan:
        why: dict[LoomKey, Message] = dict.fromkeys(self.problem.planned, message("left-no-beam-out"))
        why |= {**self.problem.unplannable, **self.problem.put_off}
        left = tuple(
            LeftOver(key, why[key], self.prices.of_left_over(key))
            for key in (*self.problem.planned, *self.problem.put_off)
            if key not in self.booked
        )
        bookings = tuple(sorted(self.booked.values(), key=lambda b: (b.start, b.key.sort_key)))
        return Plan(
            status=PlanStatus.FEASIBLE,
            objective=sum(b.cost.total for b in bookings) + sum(item.cost for item in left),
            bound=0.0,
            seconds=0.0,
            currency=self.case.terms.currency,
            as_of=self.problem.as_of,
            horizon_end=self.case.horizon_end,
            bookings=bookings,
            left_over=left,
            reasons=(message("taken-as-they-come", limit_h=limit_h),),
            start=self.case.terms.start,
            terms={WAITING_LIMIT: limit_h},
        )
