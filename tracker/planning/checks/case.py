"""A plan laid beside the data it was made from."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Mapping
from copy import copy
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from functools import cached_property
from math import ceil, floor, sqrt

from tracker.domain.calendars import Calendar
from tracker.domain.clock import horizon_end, start_of_day
from tracker.domain.days import Days
from tracker.domain.mill import Crew, LoomKey
from tracker.domain.plan import Booking, Need, Plan
from tracker.domain.shifts import converting_calendar, crew_heads, crews_of, lead_heads, running_calendar
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold
from tracker.domain.work import USUAL_VARIATION, WorkContent
from tracker.planning.problem import InWork, PlanningProblem

SLOT = timedelta(minutes=30)
SLOT_MIN = 30
_MARGIN = timedelta(days=120)
"""Running calendars reach this far back and past the horizon: late beam-outs have long tails."""
DUST = 1e-6
"""Minutes or hours below which a difference is a rounding error."""


Pause = tuple[datetime, datetime] | None
ROUNDING = timedelta(milliseconds=4)
"""A slot that begins by so little before the warp is in begins with it."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Where a conversion lies."""

    slots: int
    """Working slots."""
    pause: Pause
    """Between its two parts; None = in one piece."""
    end: datetime


@dataclass(frozen=True, slots=True)
class Hold:
    """A conversion that holds people and tools: a booking, or one that is in work already."""

    key: LoomKey
    slots: tuple[int, ...]
    """Working slots from start to end, counted from `Case.origin`."""
    start: datetime
    end: datetime
    content: WorkContent | None
    skipped: int
    """Slots of the content that lie before the first of `slots`: done before `as_of`."""
    fixed: bool
    """True where the planner had no say: firm or in work."""
    needs: tuple[Need, ...] | None = None
    """Other trades and tools as they were published; None = what the content asks for."""
    pause: tuple[datetime, datetime] | None = None
    """Between its two parts; none of its slots lies in it."""


class Case:
    """What the checks ask for, each worked out once from the data."""

    def __init__(self, plan: Plan, problem: PlanningProblem):
        self.plan, self.problem, self.mill, self.terms = plan, problem, problem.mill, problem.mill.terms
        self.today = problem.as_of.astimezone(self.terms.zone).date()
        self.origin = start_of_day(self.today, self.terms)
        self.horizon_end = horizon_end(self.terms, problem.as_of)
        self.start = start_of_day(self.terms.start or self.today, self.terms)
        self._work: dict[str, list[int]] = {}
        self._running: dict[str, Calendar] = {}
        self._working_days: dict[str, frozenset[date]] = {}
        self._shift: dict[tuple[str, int, str], frozenset[int]] = {}
        self._there: dict[tuple[int, str], Mapping[int, int]] = {}
        self._converting: dict[tuple[int, str], frozenset[int]] = {}
        self._then: dict[LoomKey, WorkContent] = {}
        self._doubted: LoomKey | None = None

    def doubting(self, plan: Plan, key: LoomKey) -> "Case":
        """Another plan beside the same data, in which the firm booking of a loom counts as if it could have been moved."""
        other = copy(self)
        other.plan, other._doubted = plan, key
        vars(other).pop("holds", None)
        return other

    @cached_property
    def days(self) -> Days:
        return Days(self.mill)

    def at(self, moment: datetime) -> datetime:
        """A moment in the mill's local time, as it is to be said."""
        return moment.astimezone(self.terms.zone)

    # ---- clocks

    def slot_of(self, moment: datetime) -> int:
        """The half-hour slot that holds a moment."""
        return (moment - self.origin) // SLOT

    def begin(self, slot: int) -> datetime:
        return self.origin + slot * SLOT

    def heads_in(self, crew: Crew, hall: str) -> Mapping[int, int]:
        """Slot before the horizon → heads of a crew row that work through it from beginning to end in a hall."""
        name = (id(crew), hall)
        if name not in self._there:
            last = (self.horizon_end - SLOT).astimezone(self.terms.zone).date()
            levels = crew_heads(self.mill, crew, hall, self.today, last)
            self._there[name] = {
                slot: heads for heads, calendar in levels for slot in self._whole(calendar) if slot >= 0
            }
        return self._there[name]

    def crew_slots(self, crew: Crew, hall: str) -> frozenset[int]:
        """The slots before the horizon in which a crew row of the lead trade can work at a conversion in a hall."""
        name = (id(crew), hall)
        if name not in self._converting:
            there, need = self.heads_in(crew, hall), self._lead_heads
            self._converting[name] = frozenset(slot for slot, heads in there.items() if heads >= need)
        return self._converting[name]

    @cached_property
    def _lead_heads(self) -> int:
        return lead_heads(self.mill)

    def missing_after(self, hall: str, end: datetime, content: WorkContent) -> str:
        """A trade that is not at work in a hall when a conversion that ends then needs it after the restart; empty where all
        are. Past the horizon nothing is known."""
        lead, last = self.terms.lead_trade, (self.horizon_end - self.origin) // SLOT
        first, minute = self.slot_of(end), 0.0
        watch = range(first, first + ceil(self.terms.watch_h * 60 / SLOT_MIN - DUST))
        asked = [(lead, 1, watch)]
        for step in content.after_steps:
            if step.minutes > DUST:
                touched = floor((minute + DUST) / SLOT_MIN), ceil((minute + step.minutes - DUST) / SLOT_MIN)
                slots = range(first + touched[0], first + touched[1])
                asked += [(trade, heads, slots) for trade, heads in step.heads.items() if heads]
            minute += step.minutes
        for trade, heads, slots in asked:
            if any(slot < last and not self._in_shift(trade, heads, hall, slot) for slot in slots):
                return trade
        return ""

    def _in_shift(self, trade: str, heads: int, hall: str, slot: int) -> bool:
        """Whether so many heads of a trade (of the lead trade a crew) are at work, or have a break of up to an hour."""
        name = (fold(trade), heads, hall)
        if name not in self._shift:
            self._shift[name] = self.at_work(trade, heads, hall)
        there = self._shift[name]
        before = next((i for i in range(3) if slot - i in there), None)
        after = next((i for i in range(3) if slot + i in there), None)
        return before == 0 or (before is not None and after is not None and before + after <= 3)

    def at_work(self, trade: str, heads: int, hall: str) -> frozenset[int]:
        """The slots in which so many heads of a trade (of the lead trade a crew) are at work in a hall."""
        crews = [crew for crew in crews_of(self.mill, trade) if crew.hall in (None, hall)]
        if fold(trade) == fold(self.terms.lead_trade):
            return frozenset().union(*(self.crew_slots(crew, hall) for crew in crews))
        counted: Counter[int] = Counter()
        for crew in crews:
            counted.update(self.heads_in(crew, hall))
        return frozenset(slot for slot, there in counted.items() if there >= heads)

    def _whole(self, calendar: Calendar) -> Iterator[int]:
        for a, b in calendar.spans:
            yield from range(-((self.origin - a) // SLOT), (b - self.origin) // SLOT)

    def worked_since(self, hall: str, moment: datetime) -> int:
        """The hall's working slots from a moment up to today; 0 where it is not past."""
        if moment >= self.origin:
            return 0
        first, last = moment.astimezone(self.terms.zone).date(), self.today - timedelta(days=1)
        crews = crews_of(self.mill, self.terms.lead_trade)
        calendars = [converting_calendar(self.mill, crew, hall, first, last) for crew in crews]
        worked = {slot for calendar in calendars for slot in self._whole(calendar)}
        return sum(-((self.origin - moment) // SLOT) <= slot < 0 for slot in worked)

    def work(self, hall: str) -> list[int]:
        """The hall's working slots in order: those with at least one crew of the lead trade."""
        if hall not in self._work:
            crews = crews_of(self.mill, self.terms.lead_trade)
            self._work[hall] = sorted(frozenset().union(*(self.crew_slots(crew, hall) for crew in crews)))
        return self._work[hall]

    def working_days(self, hall: str) -> frozenset[date]:
        """The local days on which somebody converts in a hall."""
        if hall not in self._working_days:
            days = (self.begin(slot).astimezone(self.terms.zone).date() for slot in self.work(hall))
            self._working_days[hall] = frozenset(days)
        return self._working_days[hall]

    def position(self, hall: str, start: datetime) -> int | None:
        """Which of the hall's working slots begins at a moment; None where none does."""
        work, first = self.work(hall), self.slot_of(start)
        i = bisect_left(work, first)
        return i if i < len(work) and work[i] == first else None

    def end_of(self, hall: str, start: datetime, slots: int, pause: Pause = None) -> datetime | None:
        """The end of so many of the hall's working slots from a start, those of a pause left out; None where there are not
        as many."""
        i = self.position(hall, start)
        work = self.work(hall)[i:] if i is not None else []
        if pause:
            work = [slot for slot in work if not pause[0] <= self.begin(slot) < pause[1]]
        return self.begin(work[slots - 1] + 1) if slots <= len(work) else None

    def course(self, start: datetime, content: WorkContent, window: Window | None, hall: str) -> Stretch | None:
        """Where a conversion with this start lies in the hall's working slots; None where there are too few."""
        parts, work, i = parts_needed(content, window), self.work(hall), self.position(hall, start)
        if i is None or i + parts[0] > len(work):
            return None
        end = self.begin(work[i + parts[0] - 1] + 1)
        if len(parts) == 1 or window is None:
            return Stretch(parts[0], None, end)
        again = self.position_from(hall, self.warp_in(hall, start, end, window))
        if again + parts[1] > len(work):
            return None
        return Stretch(sum(parts), (end, self.begin(work[again])), self.begin(work[again + parts[1] - 1] + 1))

    def warp_in(self, hall: str, start: datetime, out: datetime, window: Window) -> datetime:
        """When the ordinary change is done after a first part from `start` to `out`: its hours of the running calendar, less
        what others did of it in the meantime."""
        running = self.running(hall)
        done_h = min(window.meanwhile_h, running.hours_between(start, out))
        left_h = window.ordinary_change_h - done_h
        warp_in = running.after(out, left_h) if left_h > DUST else out
        return max(warp_in, window.warp_in_at) if window.warp_in_at else warp_in

    def works_from(self, hall: str, at: datetime) -> datetime:
        """The first working slot that begins at or after a moment; the horizon where there is none."""
        i = self.position_from(hall, at)
        return self.begin(self.work(hall)[i]) if i < len(self.work(hall)) else self.horizon_end

    def position_from(self, hall: str, at: datetime) -> int:
        """The position of the first working slot that begins at or after a moment, but for a rounding error."""
        return bisect_left(self.work(hall), -((self.origin - at + ROUNDING) // SLOT))

    def running(self, hall: str) -> Calendar:
        if hall not in self._running:
            zone = self.terms.zone
            first, last = (self.origin - _MARGIN).astimezone(zone), (self.horizon_end + _MARGIN).astimezone(zone)
            self._running[hall] = running_calendar(self.mill, hall, first.date(), last.date())
        return self._running[hall]

    # ---- what a booking refers to

    @cached_property
    def _windows(self) -> dict[tuple[LoomKey, int], Window]:
        return {(w.key, w.number): w for windows in self.problem.windows.values() for w in windows}

    def window(self, booking: Booking) -> Window | None:
        found = self._windows.get((booking.key, booking.window))
        return found if found and found.kind == booking.kind else None

    def content(self, booking: Booking) -> WorkContent | None:
        contents = self.problem.contents.get(booking.key, {}).get(booking.kind, ())
        found = next((content for content in contents if content.choices == booking.choices), None)
        return self.problem.attended(found) if found and booking.attended else found

    # ---- what the planner had no say in

    @cached_property
    def firm(self) -> dict[LoomKey, Booking]:
        """Bookings of the last published plan that must stay: they start from now on, at most the firm hours of
        running time ahead, on looms that are still to be planned and not released."""
        problem = self.problem
        if problem.previous is None or not problem.hold_firm:
            return {}
        to_plan = set(problem.planned) - problem.released
        return {old.key: old for old in problem.previous.bookings if old.key in to_plan and self._is_firm(old)}

    def _is_firm(self, old: Booking) -> bool:
        as_of = self.problem.as_of
        return old.start >= as_of and self.running(old.key.hall).hours_between(as_of, old.start) <= self.terms.firm_h

    def given(self, booking: Booking) -> bool:
        """Whether a booking is a firm one that stayed."""
        old = self.firm.get(booking.key)
        return old is not None and (old.start, old.choices) == (booking.start, booking.choices)

    def fixed(self, booking: Booking) -> bool:
        """Whether the planner had no say in a booking."""
        return self.given(booking) and booking.key != self._doubted

    def kept(self, old: Booking) -> Booking:
        """A firm booking as it stays: as published, longer where its work is by now, to the end of its working slots."""
        content = self.content(old)
        slots = max(old.slots, slots_needed(content, old.pause is not None)) if content else old.slots
        end = self.end_of(old.key.hall, old.start, slots, old.pause)
        return replace(old, firm=True, slots=slots, end=end or old.end)

    def _as_published(self, booking: Booking) -> WorkContent | None:
        """The work of a firm booking, at the times at which it was published to need whom and what."""
        content = self.content(booking)
        if content and booking.key not in self._then:
            self._then[booking.key] = self.firm[booking.key].as_booked(content)
        return self._then.get(booking.key)

    # ---- who holds what

    @cached_property
    def holds(self) -> tuple[Hold, ...]:
        """All conversions that hold people, tools or a place among the stopped looms before the horizon."""
        return (*self._in_work(), *(self.booked(booking) for booking in self.plan.bookings))

    def booked(self, booking: Booking) -> Hold:
        """What a booking holds."""
        slots = tuple(self._worked(booking))
        given = self.given(booking)
        content = self._as_published(booking) if given else self.content(booking)
        needs = self._needs_as_published(booking.key) if given else None
        fixed = self.fixed(booking)
        return Hold(booking.key, slots, booking.start, booking.end, content, 0, fixed, needs, booking.pause)

    def _worked(self, booking: Booking) -> list[int]:
        """The hall's working slots from start to end, those of the pause left out."""
        work, pause = self.work(booking.key.hall), booking.pause
        first, past = self.slot_of(booking.start), -((self.origin - booking.end) // SLOT)
        slots = work[bisect_left(work, first) : bisect_left(work, past)]
        return [slot for slot in slots if not (pause and pause[0] <= self.begin(slot) < pause[1])]

    def _needs_as_published(self, key: LoomKey) -> tuple[Need, ...] | None:
        """What a firm booking holds besides its crew, where its working slots are still those in which it was booked, or
        nothing else is known."""
        old = self.firm[key]
        slots = len(self._worked(old))
        return old.needs if not self.content(old) or (old.crews and slots == old.slots) else None

    def _in_work(self) -> Iterator[Hold]:
        for item in self.problem.in_work:
            work, pause = self.work(item.key.hall), item.pause
            first = bisect_left(work, -((self.origin - self.problem.as_of) // SLOT))
            ahead = [slot for slot in work[first:] if not (pause and pause[0] <= self.begin(slot) < pause[1])]
            slots = tuple(ahead[: item.remaining_slots])
            if slots:
                needed = slots_needed(item.content, pause is not None) if item.content else 0
                skipped = max(0, needed - item.remaining_slots)
                end = self.begin(slots[-1] + 1)
                yield Hold(item.key, slots, self.problem.as_of, end, item.content, skipped, True, pause=pause)

    def room_after(self, hold: Hold) -> int:
        """Working slots in which a crew is to be left after a conversion; none where it stays as it was published, held or in
        work."""
        if hold.fixed or hold.key in self.problem.held or hold.content is None:
            return 0
        content, terms = hold.content, self.terms
        wide = [op.minutes_high - op.minutes_low for op in content.operations
                if op.minutes_low is not None and op.minutes_high is not None]  # fmt: skip
        work_min = sqrt(sum((each / 6) ** 2 for each in wide)) if wide else USUAL_VARIATION * content.on_loom_min
        beam = content.kind in (WindowKind.REPEAT, WindowKind.STYLE)
        wait_min = terms.patience_h * 60 / sqrt(12) if beam else 0.0
        return floor(terms.room * sqrt(work_min**2 + wait_min**2) / SLOT_MIN + 0.5)

    def in_work_end(self, item: InWork) -> datetime:
        """When a conversion in work will end."""
        return next((hold.end for hold in self.holds if hold.key == item.key), self.problem.as_of)


def slots_needed(content: WorkContent, parted: bool = False) -> int:
    """D of MODEL.md, section 3: on-loom minutes rounded up to the grid, in two parts each for itself."""
    return sum(_in_parts(content)) if parted and content.first_part else _slots(content.on_loom_min)


def parts_needed(content: WorkContent, window: Window | None) -> tuple[int, ...]:
    """Slots of each part of a conversion in a window: one part, or two where the warp comes in between."""
    if window and window.brings_warp and content.first_part:
        return _in_parts(content)
    return (_slots(content.on_loom_min),)


def _in_parts(content: WorkContent) -> tuple[int, int]:
    cut = content.first_part
    before, after = (sum(step.minutes for step in steps) for steps in (content.steps[:cut], content.steps[cut:]))
    return _slots(before), _slots(after)


def _slots(minutes: float) -> int:
    return max(1, ceil((minutes - DUST) / SLOT_MIN))
