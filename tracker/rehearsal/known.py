"""What people know of a hall at a moment of a run, as the planner's problem (MODEL.md, section 7)."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta
from functools import cached_property
from math import ceil, inf
from typing import Protocol

from tracker.domain.mill import Absence, LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Plan
from tracker.domain.windows import Window
from tracker.planning.problem import InWork, PlanningProblem
from tracker.rehearsal.course import Done
from tracker.rehearsal.drawing import World
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.loom import PlayedLoom, Work
from tracker.rehearsal.outset import Arrival
from tracker.rehearsal.readings import Readings
from tracker.rehearsal.sources import Spreads


class RunSoFar(Protocol):
    """How far a run is."""

    waiting: list[PlayedLoom]
    going: list[Work]
    done: list[Done]
    never: list[PlayedLoom]
    stock: dict[str, float]
    arrivals: list[Arrival]
    protected: dict[LoomKey, int]
    pilots: dict[str, LoomKey]


class KnownByThen:
    """Nothing that is still to come but what is told: rosters, promises, readings, notes of who is ill."""

    def __init__(self, hall: Hall, world: World, spreads: Spreads):
        self.hall, self.world, self.spreads = hall, world, spreads
        self.readings = Readings(hall, world)

    def problem(self, run: RunSoFar, t: int, previous: Plan) -> PlanningProblem:
        """As people have it before slot `t` is worked."""
        of_outset, now = self.hall.problem, self.hall.case.begin(t)
        held = [loom for loom in run.waiting if loom.is_held]
        return replace(
            of_outset,
            mill=self._mill(run, t, held),
            windows=self._windows(run, now),
            as_of=now,
            previous=previous,
            ruled_out=self.hall.plan.asked.ruled_out,
            in_work=(*(self._goes_on(work, t) for work in run.going), *map(self._begins, held)),
            converted={**of_outset.converted, **{done.key: self.hall.case.begin(done.end) for done in run.done}},
            issued={**of_outset.issued, **{loom.key: loom.content.parts for loom in _open(run) if loom.kit}},
        )

    # ---- looms

    def _windows(self, run: RunSoFar, now: datetime) -> dict[LoomKey, tuple[Window, ...]]:
        """Looms that are converted or in work keep theirs: of them nothing is planned."""
        found = dict(self.hall.problem.windows)
        open_, waiting = {loom.key: loom for loom in _open(run)}, {loom.key for loom in run.waiting}
        settled = {done.key for done in run.done} | {work.key for work in run.going}
        for key in found.keys() - settled:
            loom = open_.get(key)
            stands = (
                loom.window.number if loom and key in waiting and loom.stands_at(self.hall.case.slot_of(now)) else None
            )
            found[key] = self.readings.windows(key, now, loom.later_h if loom else 0.0, stands)
        return found

    def _goes_on(self, work: Work, t: int) -> InWork:
        """What is left of a conversion, as long as it was planned to take."""
        slots = max(1, len(work.planned.needs) - work.done)
        given = next((item for item in self.hall.problem.in_work if item.key == work.key), None)
        content = work.loom.content if work.loom else given.content if given else None
        return InWork(work.key, slots, content, None, self._pause(work, t))

    def _pause(self, work: Work, t: int) -> tuple[datetime, datetime] | None:
        """Between its two parts, where that is still to come or goes on."""
        begin = self.hall.case.begin
        if work.resume > t:
            return begin(t), begin(work.resume)
        first = work.planned.parts[0]
        if work.window is None or len(work.planned.parts) == 1 or work.done >= first:
            return None
        lies = [slot for slot in self.hall.work[work.hall] if slot >= t][: first - work.done]
        past = lies[-1] + 1 if lies else t
        return begin(past), begin(self.hall.warp_in(work.window, work.start, past))

    def _begins(self, loom: PlayedLoom) -> InWork:
        """A loom at which a crew waits, or whose warp is cut: its conversion counts as begun."""
        return InWork(loom.key, len(self.hall.shape(loom.content, loom.window).needs), loom.content)

    # ---- the mill

    def _mill(self, run: RunSoFar, t: int, held: list[PlayedLoom]) -> Mill:
        mill, looms = self.hall.case.mill, dict(self.hall.case.mill.looms)
        for key, free in run.protected.items():
            if free > t:
                until, listed = self._date(self.hall.day[min(free, self.hall.slots) - 1]), looms[key].protected_until
                looms[key] = replace(looms[key], protected_until=max(until, listed) if listed else until)
        return replace(
            mill, looms=looms, parts=self._parts(run, held), receipts=tuple(self._receipts(run, t)),
            absences=(*mill.absences, *self._absences(self.hall.day[t])),
        )  # fmt: skip

    def _parts(self, run: RunSoFar, held: list[PlayedLoom]) -> dict[str, Part]:
        """The stock as counted, without what is promised to looms at which a crew waits."""
        promised: dict[str, float] = {}
        for loom in (loom for loom in held if not loom.kit):
            for part, quantity in self.hall.needs_of(loom.key, loom.content).items():
                promised[part] = promised.get(part, 0.0) + quantity
        taken, parts = self.hall.problem.taken, self.hall.case.mill.parts
        there = {name: min(run.stock.get(name, 0.0), self._plenty) - promised.get(name, 0.0) for name in parts}
        return {
            name: replace(part, on_hand=there[name] + part.safety_stock + taken.get(name, 0.0))
            for name, part in parts.items()
        }

    @cached_property
    def _plenty(self) -> float:
        """More than anybody needs of a part: where it can be had to order, and has come."""
        most = (max((q for c in by_kind for q in c.parts.values()), default=0.0)
                for kinds in self.hall.problem.contents.values() for by_kind in kinds.values())  # fmt: skip
        return 1.0 + ceil(sum(most))

    def promises(self, run: RunSoFar, t: int) -> Iterator[tuple[int, str, float]]:
        """(days from today, part, quantity) of what is promised. A line that did not come on its day is reckoned with after the
        usual lateness, from today on: lateness that is exponential is as long for who has waited already."""
        today = self.hall.day[t]
        for line in run.arrivals:
            if line.known <= t:
                quantity = self._plenty if line.promised == inf else line.promised
                usual = max(1, ceil(self.spreads.usual_lateness(line.supplier)))
                yield line.day if line.day >= today else today + usual, line.part, quantity

    def _receipts(self, run: RunSoFar, t: int) -> Iterator[Receipt]:
        for i, (day, part, quantity) in enumerate(self.promises(run, t)):
            yield Receipt(f"{part} {i}", part, quantity, self._date(day))

    def _absences(self, today: int) -> Iterator[Absence]:
        """Who is away today, to the end of it: a note from the doctor says how long."""
        for (crew, head), days in self.world.away.items():
            if today in days:
                last = next(day for day in range(today, max(days) + 1) if day + 1 not in days)
                yield Absence(crew, self._date(today), self._date(last), None if head < 0 else 1)

    def _date(self, day: int) -> date:
        return self.hall.case.today + timedelta(days=day)


def _open(run: RunSoFar) -> list[PlayedLoom]:
    """Looms that are still to be converted."""
    return [*run.waiting, *run.never]
