"""Plans made on the way: each Monday, and on a day on which a firm booking is broken (MODEL.md, section 7)."""

from collections.abc import Callable, Iterator, Mapping

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, Plan
from tracker.domain.windows import Window
from tracker.errors import DataError
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.drawing import World
from tracker.rehearsal.known import KnownByThen, RunSoFar
from tracker.rehearsal.loom import PlayedLoom
from tracker.rehearsal.outset import Outset, machine_type
from tracker.rehearsal.reckoning import lost_by_standing
from tracker.rehearsal.sources import Spreads

Planner = Callable[[PlanningProblem], Plan]
"""Makes a plan of what is known, from the last one."""
NOBODY_WORKS = "no-crew-in-horizon"
"""Why there may be no plan any more: the rest of the horizon is over for everybody. The last one stands."""
TOLERANCE = 1e-6


class Mondays:
    """The plan in force, and when it is made anew."""

    def __init__(self, outset: Outset, world: World, spreads: Spreads, planner: Planner):
        self.hall, self.outset, self.world, self.planner = outset.hall, outset, world, planner
        self.plan = self.hall.plan
        self.known = KnownByThen(self.hall, world, spreads)
        self.day = self.hall.day[self.hall.first]
        """That was looked at last."""
        self.week = self._week(self.hall.first)

    def look(self, run: RunSoFar, t: int) -> bool:
        """In the first slot of each day: whether a plan was made before anybody goes to work."""
        day, week = self.hall.day[t], self._week(t)
        if day == self.day:
            return False
        self.day = day
        if week == self.week and not any(self._broken(run, t)):
            return False
        self.week = week
        return self._renew(run, t)

    def _week(self, t: int) -> tuple[int, int]:
        return self.hall.case.at(self.hall.case.begin(t)).isocalendar()[:2]

    # ---- whether a firm booking is broken

    def _broken(self, run: RunSoFar, t: int) -> Iterator[bool]:
        """Of each firm booking, whether its crew is away, its loom protected, or its kit short, as far as people know."""
        firm = [loom for loom in run.waiting if loom.booking and self._is_firm(loom, t)]
        yield from (self.hall.day[loom.due] in self._away(loom.booking, t) for loom in firm)
        yield from (run.protected.get(loom.key, 0) > loom.due for loom in firm)
        yield from self._short(run, t, firm)

    def _is_firm(self, loom: PlayedLoom, t: int) -> bool:
        now, start = self.hall.case.begin(t), self.hall.case.begin(loom.due)
        return (
            loom.due >= t and self.hall.case.running(loom.key.hall).hours_between(now, start) <= self.hall.terms.firm_h
        )

    def _away(self, booking: Booking | None, t: int) -> set[int]:
        """Days on which a crew that it names is away, as far as that has begun."""
        crews, today = {turn.crew for turn in booking.crews} if booking else set(), self.hall.day[t]
        found: set[int] = set()
        for (crew, head), days in self.world.away.items():
            if crew in crews and head < 0 and today in days:
                found |= {day for day in days if all(each in days for each in range(today, day + 1))}
        return found

    def _short(self, run: RunSoFar, t: int, firm: list[PlayedLoom]) -> Iterator[bool]:
        """Of each in their order, whether what is there and what is promised by then makes its kit."""
        there = dict(run.stock)
        coming = sorted(self.known.promises(run, t))
        for loom in firm:
            while coming and coming[0][0] < self.hall.day[loom.due]:
                _, part, quantity = coming.pop(0)
                there[part] = there.get(part, 0.0) + quantity
            needs = {} if loom.kit else self.hall.needs_of(loom.key, loom.content)
            yield any(there.get(part, 0.0) < quantity - TOLERANCE for part, quantity in needs.items())
            for part, quantity in needs.items():
                there[part] = there.get(part, 0.0) - quantity

    # ---- a plan, and who follows it

    def _renew(self, run: RunSoFar, t: int) -> bool:
        problem = self.known.problem(run, t, self.plan)
        try:
            self.plan = self.planner(problem)
        except DataError as error:
            if error.message.code != NOBODY_WORKS:
                raise
            return False
        self._follow(run, t, problem.windows)
        return True

    def _follow(self, run: RunSoFar, t: int, windows: Mapping[LoomKey, tuple[Window, ...]]) -> None:
        """Looms go by the new plan, but those at which a crew waits already. One that the plan leaves over keeps its turn: a plan
        asks for a crew in every slot on end, and the hall fits in what the plan cannot."""
        waiting = {loom.key for loom in run.waiting}
        free = {loom.key: loom for loom in (*run.waiting, *run.never) if not loom.is_held}
        booked = [loom for loom in run.waiting if loom.is_held]
        for booking in self.plan.bookings:
            loom = free.pop(booking.key, None)
            booked.append(self._turned(loom, booking, windows, t, booking.key in waiting))
        booked += (loom for loom in free.values() if loom.key in waiting)
        run.waiting[:] = sorted(booked, key=lambda loom: loom.order)
        run.never[:] = [loom for loom in free.values() if loom.key not in waiting]
        run.pilots.update({machine_type(self.hall, b.key): b.key for b in self.plan.bookings if b.pilot})

    def _turned(
        self,
        loom: PlayedLoom | None,
        booking: Booking,
        windows: Mapping[LoomKey, tuple[Window, ...]],
        t: int,
        waits: bool,
    ) -> PlayedLoom:
        """A loom that goes by this booking; one that stays where it was keeps what has become of it."""
        window = _window(booking, windows[booking.key])
        content = self.hall.booked_content(window, booking)
        assert content  # it was booked in such a window
        if loom is None:
            return self.outset.taken_up(booking, window, content, t)
        if waits and loom.booking and _same(loom.booking, booking) and loom.window.number == window.number:
            loom.booking, loom.window = booking, window
            return loom
        if waits and loom.window.number != window.number:
            self._goes_by(loom, t)
        self.outset.follow(loom, booking, window, content, t)
        return loom

    def _goes_by(self, loom: PlayedLoom, t: int) -> None:
        """A loom that stands weaves on until another chance."""
        if loom.stands_at(t):
            loom.lost += lost_by_standing(self.hall, loom, t)


def _window(booking: Booking, windows: tuple[Window, ...]) -> Window:
    """That of a booking, as it is seen now."""
    same = (window for window in windows if (window.number, window.kind) == (booking.window, booking.kind))
    found = next(same, None) or booking.nearest(windows)
    assert found  # it was booked in one of them
    return found


def _same(one: Booking, other: Booking) -> bool:
    return (one.start, one.choices) == (other.start, other.choices)
