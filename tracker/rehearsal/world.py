"""The hall played slot by slot in one world (MODEL.md, section 3)."""

from bisect import bisect_left, insort
from collections import Counter
from datetime import timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind
from tracker.domain.work import WorkContent
from tracker.rehearsal.beams import Beams
from tracker.rehearsal.course import Course, Done, Lost
from tracker.rehearsal.drawing import World, lognormal
from tracker.rehearsal.hall import CREW, Hall, Shape
from tracker.rehearsal.loom import FAR, PlayedLoom, Work
from tracker.rehearsal.mondays import Mondays, Planner
from tracker.rehearsal.outset import Outset, machine_type
from tracker.rehearsal.people import People
from tracker.rehearsal.policies import HELD_SLOTS, Policy
from tracker.rehearsal.reckoning import cost_of, lost_by_failing, lost_by_standing
from tracker.rehearsal.sources import MILL, Spreads

TOLERANCE = 1e-6


def play(hall: Hall, world: World, policy: Policy, spreads: Spreads, planner: Planner | None = None) -> Course:
    """Play one world by one policy; `planner` makes the plans of one that plans anew."""
    return Play(hall, world, policy, spreads, planner).run()


class Play:
    """One run."""

    def __init__(self, hall: Hall, world: World, policy: Policy, spreads: Spreads, planner: Planner | None = None):
        self.hall, self.case, self.world, self.policy, self.spreads = hall, hall.case, world, policy, spreads
        self.outset = Outset(hall, world)
        self.opens = self.outset.types()
        self.pilots = {machine_type(hall, b.key): b.key for b in hall.plan.bookings if b.pilot and policy.follows_plan}
        self.stock, self.arrivals = dict(hall.usable), self.outset.arrivals()
        self.notices = list(reversed(world.protected))
        self.protected_days = round(spreads.of("protected_days", MILL))
        self.protected: dict[LoomKey, int] = {}
        """Loom → the slot from which it is free again."""
        looms = self.outset.booked() if policy.follows_plan else self.outset.unbooked()
        self.waiting: list[PlayedLoom] = sorted(looms, key=lambda loom: loom.order)
        self.going: list[Work] = list(self.outset.in_work())
        self.done: list[Done] = []
        self.never: list[PlayedLoom] = []
        self.people = People(hall, world, self.going)
        self.beams = Beams(hall, policy, self.people)
        self.mondays = Mondays(self.outset, world, spreads, planner) if policy.replanned and planner else None
        self.busy: Counter[int] = Counter()
        """Slot → crews at work or waiting."""

    def run(self) -> Course:
        for t in self.hall.active:
            if not self.waiting and not self.going and not (self.mondays and self.never):
                break
            self.step(t)
        return self.course()

    def step(self, t: int) -> None:
        """Play one slot: news first, then who goes on, then who begins."""
        self._news(t)
        if self.mondays:
            self.mondays.look(self, t)
        self.people.begin()
        for work in list(self.going):
            if t >= work.resume:
                self._advance(work, t)
        for loom in list(self.waiting):
            if loom.due > t:
                break  # they stand in the order of their due slots
            if self.beams.is_out(loom, t):
                if cause := self._keeps(loom, t):
                    self._stands(loom, t, cause)
                else:
                    self._start(loom, t)
        self.busy[t] = sum(self.people.used[CREW])

    def _news(self, t: int) -> None:
        """What has come in, and who was protected."""
        while self.arrivals and self.arrivals[-1].slot <= t:
            came = self.arrivals.pop()
            self.stock[came.part] = self.stock.get(came.part, 0.0) + came.quantity
        while self.notices and self.notices[-1][0] <= self.hall.day[t]:
            day, key = self.notices.pop()
            self.protected[key] = self.hall.midnight(day + self.protected_days)

    # ---- who goes on

    def _advance(self, work: Work, t: int) -> None:
        """One slot of a conversion, where its people are there."""
        needs = work.shape.needs[work.done] if work.done < len(work.shape.needs) else ()
        if lacks := self.people.lacks(work.hall, t, needs):
            if work.loom:
                work.loom.hold_up(lacks)
            return
        self.people.use(work.hall, needs)
        work.done += 1
        if work.done >= work.total:
            self._finish(work, t + 1)
        elif work.window and len(work.shape.parts) > 1 and work.done == work.shape.parts[0]:
            work.resume = max(t + 1, self.hall.warp_in(work.window, work.start, t + 1))

    def _finish(self, work: Work, end: int) -> None:
        self.going.remove(work)
        self._opens_its_type(work, end)
        loom = work.loom
        if loom is None:
            return
        if not work.fails:
            self.done.append(
                Done(loom.key, loom.begun_at(work), end, cost_of(self.hall, loom, work, end), loom.main_cause)
            )
            return
        loom.failed = True
        loom.labour += work.shape.labour * work.done / len(work.shape.needs)
        loom.lost += lost_by_failing(self.hall, loom, work, end)
        self._next_chance(loom, end)

    def _opens_its_type(self, work: Work, end: int) -> None:
        of_type = machine_type(self.hall, work.key)
        if work.fails:
            self._no_pilot(work.key)
        elif work.pilot or work.loom is None:
            opens = self.hall.slot(self.case.begin(end) + timedelta(days=self.case.terms.soak_days))
            self.opens[of_type] = min(self.opens[of_type], opens)

    def _no_pilot(self, key: LoomKey) -> None:
        """Where a loom was to be its type's pilot, another may be."""
        of_type = machine_type(self.hall, key)
        if self.pilots.get(of_type) == key:
            del self.pilots[of_type]

    # ---- who begins

    def _keeps(self, loom: PlayedLoom, t: int) -> str:
        """What keeps a loom whose beam is out from beginning; empty where nothing does."""
        if self.protected.get(loom.key, 0) > t or self.hall.is_protected(loom.key, t):
            return "protected"
        if loom.booking is None:
            self._choose(loom)
        planned = self.hall.shape(loom.content, loom.window)
        if lacks := self.people.lacks(loom.hall, t, planned.needs[0] if self.policy.looks_ahead else ()):
            return lacks
        if not self._is_open(loom, t):
            return "pilot"
        if not loom.kit and not self._kit_is_there(loom, loom.content):
            return "parts"
        if self._too_many_stopped(loom):
            return "looms-stopped"
        return self._unfit(loom, planned, t) if self.policy.looks_ahead else ""

    def _is_open(self, loom: PlayedLoom, t: int) -> bool:
        of_type = machine_type(self.hall, loom.key)
        opens = self.opens[of_type]
        return opens <= t if opens < FAR else self.pilots.get(of_type, loom.key) == loom.key

    def _choose(self, loom: PlayedLoom) -> None:
        """Without a plan: the cheapest choices whose kit is there."""
        if not loom.kit:
            choices = self.hall.choices(loom.window)
            loom.content = next((c for c in choices if self._kit_is_there(loom, c)), choices[0])

    def _kit_is_there(self, loom: PlayedLoom, content: WorkContent) -> bool:
        needs = self.hall.needs_of(loom.key, content)
        return all(self.stock.get(part, 0.0) >= quantity - TOLERANCE for part, quantity in needs.items())

    def _too_many_stopped(self, loom: PlayedLoom) -> bool:
        terms, looms = self.case.terms, self.case.mill.looms
        here = [work for work in self.going if work.hall == loom.hall]
        if terms.looms_stopped_at_once is not None and len(here) >= terms.looms_stopped_at_once:
            return True
        section = looms[loom.key].section
        if terms.stopped_per_section is None or not section:
            return False
        return sum(looms[work.key].section == section for work in here) >= terms.stopped_per_section

    def _unfit(self, loom: PlayedLoom, planned: Shape, t: int) -> str:
        """What speaks against a start by the roster and the work in hand: it would stand open over a closed day, restart
        where nobody watches, run past the horizon; or a loom that weaves until it is stopped would stand for want of
        people."""
        course = self.hall.course(loom.content, loom.window, t)
        if course is None:
            return "horizon"
        slots, _, by_rules = course
        lacks = self.people.who_lacks(loom, planned, slots, t)
        if not lacks:
            return "" if by_rules else "hours"
        if loom.window.kind is WindowKind.MID_WARP:
            return lacks
        end = self.people.expected_end(loom, planned, t)
        if end is None:
            return "horizon"
        return "" if self.hall.by_rules(loom.content, loom.window, t, end) else lacks

    def _start(self, loom: PlayedLoom, t: int) -> None:
        self.waiting.remove(loom)
        if not loom.kit:
            for part, quantity in self.hall.needs_of(loom.key, loom.content).items():
                self.stock[part] -= quantity
            loom.kit = True
        work = self._work(loom, t)
        self.going.append(work)
        self.people.changed()
        self._advance(work, t)

    def _work(self, loom: PlayedLoom, t: int) -> Work:
        planned = self.hall.shape(loom.content, loom.window)
        shape = self.hall.shape(loom.content, loom.window, self._factor(loom))
        fails = loom.tries < len(drawn := self.world.fails.get(loom.key, ())) and drawn[loom.tries]
        total = max(1, len(shape.needs) // 2) if fails else len(shape.needs)
        of_type = machine_type(self.hall, loom.key)
        pilot = self.opens[of_type] >= FAR
        if pilot:
            self.pilots[of_type] = loom.key
        loom.tries += 1
        loom.first_start = t if loom.first_start is None else loom.first_start
        return Work(loom, loom.key, loom.hall, loom.window, shape, planned, t, total, fails, pilot=pilot)

    def _factor(self, loom: PlayedLoom) -> float:
        """How much longer the minutes that vary take, in whole hundredths, so that shapes are worked out once."""
        drawn = self.world.work.get(loom.key)
        if not drawn:
            return 1.0
        cv = self.hall.spread_of_work(loom.key, loom.content, self.spreads)
        return max(0.05, round(lognormal(drawn[loom.tries % len(drawn)], cv), 2))

    # ---- who stands

    def _stands(self, loom: PlayedLoom, t: int, cause: str) -> None:
        """Until its crew comes, or production goes on with it."""
        loom.hold_up(cause)
        if loom.closes == FAR:
            loom.closes = self._closes(loom)
        if t >= loom.closes or cause == "protected":
            self.waiting.remove(loom)
            loom.lost += lost_by_standing(self.hall, loom, t)
            self._no_pilot(loom.key)
            self._next_chance(loom, t)

    def _closes(self, loom: PlayedLoom) -> int:
        """The slot from which production does not wait any longer."""
        if loom.window.ends_at:
            return self.hall.slot(loom.window.ends_at)
        since = max(loom.due, loom.out)
        if self.policy.limit_h is not None:
            return since + round(self.policy.limit_h * 2)
        work = self.hall.work[loom.hall]
        place = bisect_left(work, since) + HELD_SLOTS
        return work[place] if place < len(work) else FAR

    def _next_chance(self, loom: PlayedLoom, t: int) -> None:
        if self.outset.next_chance(loom, t):
            insort(self.waiting, loom, key=lambda one: one.order)
        else:
            self.never.append(loom)

    # ---- how it ends

    def course(self) -> Course:
        """What it came to; conversions that go on at the horizon count as done there."""
        hall = self.hall
        for work in self.going:
            if work.loom and not work.fails:
                loom, end = work.loom, hall.slots
                self.done.append(
                    Done(loom.key, loom.begun_at(work), end, cost_of(hall, loom, work, end), loom.main_cause)
                )
        never = [*self.never, *self.waiting, *(work.loom for work in self.going if work.loom and work.fails)]
        lost = tuple(Lost(one.key, hall.left_over(one.key) + one.spent, one.main_cause) for one in never)
        finish = max((done.end for done in self.done), default=None)
        tried = {one.key for one in (*self.done, *lost)}
        return Course(tuple(self.done), lost, hall.left_beside(tried), self.beams.waited_h, self._idle_h(finish), finish,
                      self.stock)  # fmt: skip

    def _idle_h(self, finish: int | None) -> float:
        there = self.people.crews_there
        return sum(max(0, there[t] - self.busy[t]) for t in self.hall.active if finish and t < finish) / 2
