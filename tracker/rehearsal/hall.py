"""The hall before anything is played: what stays the same from run to run, each worked out once."""

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tracker.domain.calendars import days_between
from tracker.domain.mill import Crew, LoomKey
from tracker.domain.plan import Booking, Plan
from tracker.domain.shifts import crews_of
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices, WorkContent, time_variation
from tracker.planning.checks.case import ROUNDING, SLOT, Case, parts_needed
from tracker.planning.checks.costs import Prices
from tracker.planning.checks.parts import order_comes, receipts_of
from tracker.planning.checks.shared import held_by_slot, other_trades, tools_of
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.drawing import BEAM_OUTS, Drawing, World
from tracker.rehearsal.sources import Spreads, Whose

CREW = 0
"""The pool of crews of the lead trade; other trades and tools are numbered after it."""
Needs = tuple[tuple[tuple[int, int], ...], ...]
"""Slot of a conversion → (pool, how many) that it holds beside its crew."""


@dataclass(frozen=True, slots=True)
class Roster:
    """When the people of one crew row are there."""

    crew: str
    pool: int
    hall: int | None
    """None = any."""
    heads: NDArray[np.int64]
    """Shape (halls, slots): people of another trade, or 1 where a crew of the lead trade can convert."""
    whole: bool
    """Whether it is away as a whole."""


@dataclass(frozen=True, slots=True)
class Shape:
    """How a conversion lies in its slots."""

    parts: tuple[int, ...]
    needs: Needs
    labour: float
    """Currency."""


@dataclass(frozen=True, slots=True)
class Delivery:
    """What comes in of a part."""

    line: str
    part: str
    quantity: float
    """Infinite for what can be had to order from then on."""
    day: int
    """Days from today to the day on which it is due."""
    lead_days: float
    """Calendar days to a new order."""
    supplier: str | None = None


class Hall:
    """A problem and a plan, in whole half hours from the midnight before today (slot 0)."""

    def __init__(self, problem: PlanningProblem, plan: Plan):
        self.problem = replace(problem, previous=None)
        self.plan = plan
        self.case = case = Case(plan, self.problem)
        self.terms = case.terms
        booked = {(b.key, b.window, b.kind) for b in plan.bookings}
        chances = [w for ws in problem.windows.values() for w in ws if (w.key, w.number, w.kind) in booked]
        self.prices = Prices(case, chances)
        self.slots = (case.horizon_end - case.origin) // SLOT
        self.first = max(0, -((case.origin - max(problem.as_of, case.start)) // SLOT))
        self.halls = list(dict.fromkeys(key.hall for key in case.mill.looms))
        self.place = {hall: i for i, hall in enumerate(self.halls)}
        self.work = [case.work(hall) for hall in self.halls]
        self.active = [t for t in sorted(set().union(*self.work)) if t >= self.first]
        local = [case.begin(slot).astimezone(case.terms.zone) for slot in range(self.slots)]
        self.day = [(at.date() - case.today).days for at in local]
        self.trades = list(dict.fromkeys(fold(c.trade) for c in case.mill.crews))
        lead = fold(case.terms.lead_trade)
        self.trades = [trade for trade in self.trades if trade != lead]
        self.tools = {fold(name): tool.how_many for name, tool in case.mill.tools.items()}
        self.pools = {name: i for i, name in enumerate([("crew", lead), *(("trade", t) for t in self.trades),
                                                        *(("tool", t) for t in self.tools)])}  # fmt: skip
        self.rosters = [self._roster(crew) for crew in case.mill.crews if crew.heads > 0]
        self._choices: dict[tuple[LoomKey, WindowKind], tuple[WorkContent, ...]] = {}
        self._left: dict[LoomKey, float] = {}
        self._shapes: dict[tuple, Shape] = {}
        self._courses: dict[tuple, tuple[tuple[int, ...], int, bool] | None] = {}

    # ---- who is there

    def _roster(self, crew: Crew) -> Roster:
        lead = fold(crew.trade) == fold(self.terms.lead_trade)
        heads = np.zeros((len(self.halls), self.slots), dtype=np.int64)
        for i, hall in enumerate(self.halls):
            there = dict.fromkeys(self.case.crew_slots(crew, hall), 1) if lead else self.case.heads_in(crew, hall)
            for slot, many in there.items():
                if slot < self.slots:
                    heads[i, slot] = many
        kind = ("crew" if lead else "trade", fold(crew.trade))
        return Roster(crew.crew, self.pools[kind], None if crew.hall is None else self.place[crew.hall], heads, lead)

    def people(self, away: Mapping[tuple[str, int], frozenset[int]]) -> tuple[list[list[list[int]]], list[list[int]]]:
        """By pool: what each hall has of its own by slot, and what all share; with these absences."""
        halls, slots = len(self.halls), self.slots
        own = np.zeros((len(self.pools), halls, slots), dtype=np.int64)
        shared = np.zeros((len(self.pools), slots), dtype=np.int64)
        gone: dict[str, NDArray[np.int64]] = {}
        for (crew, _), days in away.items():
            lost = np.isin(np.asarray(self.day), list(days)).astype(np.int64)
            gone[crew] = gone.get(crew, 0) + lost
        for roster in self.rosters:
            there = roster.heads
            if roster.crew in gone:
                lost = gone[roster.crew]
                there = there * (lost == 0) if roster.whole else np.maximum(0, there - lost)
            if roster.hall is None:
                shared[roster.pool] += there.max(axis=0)
            else:
                own[roster.pool] += there
        for tool, many in self.tools.items():
            shared[self.pools["tool", tool]] = many
        return own.tolist(), shared.tolist()

    @cached_property
    def by_roster(self) -> tuple[list[list[list[int]]], list[list[int]]]:
        """As `people`, nobody away but whom the mill knows of."""
        return self.people({})

    # ---- clocks

    def slot(self, at: datetime) -> int:
        """The first slot that begins at or after a moment, but for a rounding error."""
        return -((self.case.origin - at + ROUNDING) // SLOT)

    def midnight(self, day: int) -> int:
        """The first slot of a local day, days from today; past the last where it lies beyond."""
        return bisect_left(self.day, day)

    def warp_in(self, window: Window, start: int, past: int) -> int:
        """The first slot of the second part of a conversion whose first lies from `start` to `past`."""
        case = self.case
        return self.slot(case.warp_in(window.key.hall, case.begin(start), case.begin(past), window))

    # ---- what work takes

    def choices(self, window: Window) -> tuple[WorkContent, ...]:
        """What can be done at a loom in a window, the cheapest first; empty where nothing can."""
        sign = window.key, window.kind
        if sign not in self._choices:
            found = self.problem.contents.get(window.key, {}).get(window.kind, ())
            self._choices[sign] = tuple(sorted(found, key=lambda c: self.prices.labour(c) + self.prices.parts(c)))
        return self._choices[sign]

    def content_of(self, window: Window, wanted: Choices | None) -> WorkContent | None:
        """The content with these choices, else the cheapest; None where it cannot be converted in such a window."""
        found = self.choices(window)
        same = (content for content in found if content.choices == wanted)
        return next(same, found[0] if found else None)

    def booked_content(self, window: Window, booking: Booking | None) -> WorkContent | None:
        """The content with a booking's choices, and with whoever stays with it throughout."""
        found = self.content_of(window, booking.choices if booking else None)
        return self.problem.attended(found) if found and booking and booking.attended else found

    def shape(self, content: WorkContent, window: Window, factor: float = 1.0) -> Shape:
        """Slots, needs and price of its work when the minutes that vary take `factor` times as long."""
        sign = id(content), window.brings_warp, factor
        if sign not in self._shapes:
            self._shapes[sign] = self._shaped(content if factor == 1 else content.scaled(factor), window)
        return self._shapes[sign]

    def _shaped(self, content: WorkContent, window: Window) -> Shape:
        parts = parts_needed(content, window)
        needs: list[dict[int, int]] = [{} for _ in range(sum(parts))]
        for kind, of_step in (("trade", lambda step: other_trades(self.case, step)), ("tool", tools_of)):
            for what, by_slot in held_by_slot(content, of_step, len(parts) > 1).items():
                for slot, many in by_slot.items():
                    if slot < len(needs) and many:
                        needs[slot][self.pools.get((kind, what), -1)] = many
        return Shape(parts, tuple(tuple(need.items()) for need in needs), self.prices.labour(content))

    def course(self, content: WorkContent, window: Window, start: int) -> tuple[tuple[int, ...], int, bool] | None:
        """The slots of a conversion from this slot on if all goes well, the slot past its last, and whether the rules of
        the hall let it lie so (not open over a closed day, watched after its restart); None where it would not be done
        before the horizon."""
        sign = id(content), window.key.hall, start, window.brings_warp, window.ordinary_change_h, window.warp_in_at
        if sign not in self._courses:
            self._courses[sign] = self._course(content, window, start)
        return self._courses[sign]

    def _course(self, content: WorkContent, window: Window, start: int) -> tuple[tuple[int, ...], int, bool] | None:
        case, hall = self.case, window.key.hall
        found = case.course(case.begin(start), content, window, hall)
        if found is None:
            return None
        end = case.slot_of(found.end)
        work = self.work[self.place[hall]]
        lies = work[bisect_left(work, start) : bisect_left(work, end)]
        if found.pause:
            past, again = case.slot_of(found.pause[0]), case.slot_of(found.pause[1])
            lies = [slot for slot in lies if not past <= slot < again]
        return tuple(lies), end, self.by_rules(content, window, start, end)

    def by_rules(self, content: WorkContent, window: Window, start: int, end: int) -> bool:
        """Whether a conversion in these slots does not stand open over a closed day and is watched after its restart."""
        case, hall = self.case, window.key.hall
        if case.missing_after(hall, case.begin(end), content):
            return False
        if window.kind is WindowKind.STANDING or self.terms.open_over_closed_days:
            return True
        first, last = (case.begin(slot).astimezone(self.terms.zone).date() for slot in (start, end - 1))
        return all(day in case.working_days(hall) for day in days_between(first, last)[1:-1])

    def spread_of_work(self, key: LoomKey, content: WorkContent, spreads: Spreads) -> float:
        """Coefficient of variation of the minutes that vary: as asked for, else by what was recorded of the loom's type, else by
        the method's low and high, else the default."""
        figure = spreads.recorded("work_cv", Whose("type", self.case.mill.looms[key].machine_type))
        if figure or "work_cv" in spreads.asked:
            return figure.value if figure else spreads.work_cv
        return time_variation(content, spreads.work_cv)

    def left_over(self, key: LoomKey) -> float:
        """What a loom costs that is not converted, currency."""
        if key not in self._left:
            self._left[key] = self.prices.of_left_over(key)
        return self._left[key]

    def left_beside(self, tried: set[LoomKey]) -> float:
        """What the looms cost that nobody has tried to convert: those that the plan leaves over, and those that it does not
        know."""
        told = {item.key: item.cost for item in self.plan.left_over}
        to_plan = {*self.problem.planned, *self.problem.put_off} - tried
        return sum(told.get(key) or self.left_over(key) for key in sorted(to_plan))

    def saving(self, key: LoomKey) -> float:
        """Currency a day."""
        return self.case.mill.saving_per_day(key)

    def earns(self, window: Window) -> float:
        """Currency in a running hour, of the loom of a window."""
        return 0.0 if self.case.mill.looms[window.key].capacity_unsold else window.contribution_per_h

    def is_protected(self, key: LoomKey, t: int) -> bool:
        """By the loom list."""
        until = self.case.mill.looms[key].protected_until
        return until is not None and self.day[t] <= (until - self.case.today).days

    # ---- chances and supplies

    @cached_property
    def chances(self) -> dict[LoomKey, tuple[Window, ...]]:
        """The beam-outs and standing spans in which each loom can be converted, by time."""
        return {
            key: tuple(sorted(
                (w for w in self.problem.windows.get(key, ()) if w.kind is not WindowKind.MID_WARP and self.choices(w)),
                key=lambda w: w.mean_at,
            ))
            for key in self.problem.planned
        }  # fmt: skip

    @cached_property
    def beam_outs(self) -> dict[LoomKey, tuple[Window, ...]]:
        """The beam-outs of each loom in their order, as they are seen at the outset."""
        return {
            key: tuple(sorted((w for w in windows if w.kind in BEAM_OUTS), key=lambda w: w.mean_running_h))
            for key, windows in self.problem.windows.items()
        }

    @cached_property
    def _at_outset(self) -> dict[tuple[LoomKey, int, WindowKind], Window]:
        return {(w.key, w.number, w.kind): w for windows in self.problem.windows.values() for w in windows}

    def at_outset(self, window: Window) -> Window:
        """The same window as it is seen at the outset; itself where there was none yet."""
        return self._at_outset.get((window.key, window.number, window.kind), window)

    def beam_out(self, window: Window, world: World, later_h: float) -> datetime:
        """When the beam of a window is out in a world; `later_h`: running hours that its loom has stood for nothing."""
        hours, mean_at = world.warps.get((window.key, window.number), 0.0) + later_h, self.at_outset(window).mean_at
        return self.case.running(window.key.hall).after(mean_at, hours) if hours else mean_at

    def window_of(self, booking: Booking) -> Window | None:
        """Its window as today's forecast sees it: the same number, else the nearest of its kind."""
        return self.case.window(booking) or booking.nearest(self.problem.windows.get(booking.key, ()))

    @cached_property
    def supplies(self) -> tuple[Delivery, ...]:
        """Order lines, and from when each part can be had to order."""
        case, found = self.case, []
        for name in sorted(case.mill.parts):
            part = case.mill.parts[name]
            lead = part.lead_time_days
            lead = float(case.terms.lead_time_none_given_days) if lead is None else lead
            for i, (due, line) in enumerate(receipts_of(case, name)):
                supplier = line.supplier or part.supplier
                found.append(Delivery(f"{name} {i}", name, line.quantity, (due - case.today).days, lead, supplier))
            if comes := order_comes(case, part):
                found.append(Delivery(name, name, float("inf"), (comes - case.today).days, lead, part.supplier))
        return tuple(found)

    @cached_property
    def usable(self) -> dict[str, float]:
        """Part → what is in stock to be used."""
        taken, parts = self.problem.taken, self.case.mill.parts
        return {name: p.on_hand - p.safety_stock - taken.get(name, 0.0) for name, p in parts.items()}

    def needs_of(self, key: LoomKey, content: WorkContent) -> Mapping[str, float]:
        """Part → what a loom still takes out of stock."""
        issued = self.problem.issued.get(key)
        if not issued:
            return content.parts
        return {part: q - issued.get(part, 0.0) for part, q in content.parts.items() if q > issued.get(part, 0.0)}

    # ---- worlds

    def drawing(self, spreads: Spreads) -> Drawing:
        """Draws the worlds of this hall."""
        problem, elapsed = self.problem, {}
        for key, windows in problem.windows.items():
            outs = [w for w in windows if w.kind in BEAM_OUTS]
            if outs:
                running = self.case.running(key.hall)
                elapsed[key] = max(0.0, running.hours_between(outs[0].reading_at, problem.as_of))
        lead = crews_of(self.case.mill, self.terms.lead_trade)
        crews = [(crew, crew in lead) for crew in self.case.mill.crews if crew.heads > 0]
        lines = {supply.line: supply.supplier for supply in self.supplies}
        return Drawing(problem.windows, elapsed, crews, lines, self.slots // 48 + 1, spreads)
