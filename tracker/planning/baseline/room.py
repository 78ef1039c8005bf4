"""What is still free slot by slot, day by day, while conversions are booked one after the other."""

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import timedelta

import numpy as np
from numpy.typing import NDArray

from tracker.domain.mill import Crew, LoomKey
from tracker.domain.shifts import crews_of
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.planning.checks.case import Case, Hold, parts_needed, slots_needed
from tracker.planning.checks.parts import order_comes, receipts_of
from tracker.planning.checks.shared import Count, held_by_slot, one_crew, other_trades, tools_of

Bools = NDArray[np.bool_]
Ints = NDArray[np.int64]
Floats = NDArray[np.float64]
_CREW = "crew", "lead trade"
_TOLERANCE = 1e-6


@dataclass(frozen=True)
class _Pool:
    """How many there are and how many are used; what a hall lacks of its own it takes from the shared ones."""

    own: Ints
    """Shape (halls, slots)."""
    shared: Ints
    """Shape (slots,)."""
    used: Ints
    """Shape (halls, slots)."""

    def free(self, hall: int, slots: Ints) -> Ints:
        """What a hall could still take in each of the slots."""
        left = self.own[:, slots] - self.used[:, slots]
        lent = np.maximum(0, -left)
        return left[hall] + np.maximum(0, self.shared[slots] - (lent.sum(axis=0) - lent[hall]))


class Room:
    """Free crews, heads, tools, places among the stopped looms, and parts."""

    def __init__(self, case: Case):
        self.case = case
        self.halls = list(dict.fromkeys(key.hall for key in case.mill.looms))
        self.slots = (case.horizon_end - case.origin) // timedelta(minutes=30)
        self.work = [np.array(case.work(hall), dtype=np.int64) for hall in self.halls]
        local = [case.begin(slot).astimezone(case.terms.zone) for slot in range(self.slots)]
        self.day_of = np.array([(at.date() - case.today).days for at in local], dtype=np.int64)
        """Local days from today to each slot."""
        self.full_hour = np.array([at.minute == 0 for at in local], dtype=bool)
        self.stopped: dict[tuple[str, str | None], Ints] = {}
        """(hall, its section or None for all of it) → looms stopped in each slot."""
        self._pools: dict[tuple[str, str], _Pool] = {}
        self._needs: dict[tuple[int, bool], dict[tuple[str, str], Ints]] = {}
        self._seconds: dict[tuple, int] = {}
        self._missing: dict[tuple[str, int, int], str] = {}
        self.parts = {part: i for i, part in enumerate(sorted(case.mill.parts))}
        self._supply = self._supplied()
        self.slack = self._supply.copy()

    def clear(self) -> None:
        """Give everything back."""
        self.stopped.clear()
        self.slack = self._supply.copy()
        for pool in self._pools.values():
            pool.used[:] = 0

    # ---- people, tools, stopped looms

    def fits(self, window: Window, content: WorkContent, first: int, past: int) -> Bools:
        """Whether a loom's conversion could start at each position first ≤ i < past of its hall's working slots, as far as
        it would end before the horizon."""
        key, hall = window.key, self.halls.index(window.key.hall)
        work, held = self.work[hall], self._held(window, content, first, past)
        if not held.size:
            return np.zeros(0, dtype=bool)
        begins, last = work[held[:, 0]], work[held[:, -1]]
        ok = self._unstopped(key, begins, last + 1)
        ok &= self._not_over_closed_days(hall, content, begins, last)
        ok &= [not self._missing_after(key.hall, content, int(slot)) for slot in last]
        slots = work[held[0, 0] : held[-1, -1] + 1]
        for name, amounts in self._need(content, len(parts_needed(content, window)) > 1).items():
            if not ok.any():
                break
            free = self._pool(name).free(hall, slots)
            ok &= (free[held - held[0, 0]] >= amounts).all(axis=1)
        return ok

    def _missing_after(self, hall: str, content: WorkContent, last: int) -> str:
        sign = hall, id(content), last
        if sign not in self._missing:
            self._missing[sign] = self.case.missing_after(hall, self.case.begin(last + 1), content)
        return self._missing[sign]

    def _held(self, window: Window, content: WorkContent, first: int, past: int) -> Ints:
        """The positions that a conversion holds, by start first ≤ i < past, as far as it ends before the horizon; shape
        (starts, slots)."""
        parts, size = parts_needed(content, window), self.work[self.halls.index(window.key.hall)].size
        starts = np.arange(first, max(first, min(past, size - sum(parts) + 1)))
        if len(parts) == 1:
            return starts[:, None] + np.arange(parts[0])
        second = np.array([self._second(window, content, int(start)) for start in starts], dtype=np.int64)
        starts, second = starts[second >= 0], second[second >= 0]
        return np.hstack([starts[:, None] + np.arange(parts[0]), second[:, None] + np.arange(parts[1])])

    def _second(self, window: Window, content: WorkContent, start: int) -> int:
        """The position at which the second part begins; -1 where it would not end before the horizon."""
        hall = window.key.hall
        of_change = window.ordinary_change_h, window.meanwhile_h, window.warp_in_at
        sign = hall, start, parts_needed(content, window), of_change
        if sign not in self._seconds:
            course = self.case.course(self.case.begin(self.case.work(hall)[start]), content, window, hall)
            again = course.pause[1] if course and course.pause else None
            self._seconds[sign] = bisect_left(self.case.work(hall), self.case.slot_of(again)) if again else -1
        return self._seconds[sign]

    def take(self, hold: Hold) -> None:
        """Take what a conversion holds out of what is free."""
        hall = self.halls.index(hold.key.hall)
        inside = [slot for slot in hold.slots if 0 <= slot < self.slots]
        begin, end = max(0, self.case.slot_of(hold.start)), -((self.case.origin - hold.end) // timedelta(minutes=30))
        for name, _ in self._limits(hold.key):
            self.stopped.setdefault(name, np.zeros(self.slots, dtype=np.int64))[begin:end] += 1
        self._pool(_CREW).used[hall, inside] += 1
        for name, amounts in self._need(hold.content, hold.pause is not None).items() if hold.content else ():
            if name != _CREW:  # held also where a firm booking goes on past its published work
                left = amounts[hold.skipped : hold.skipped + len(inside)]
                self._pool(name).used[hall, inside[: len(left)]] += left

    def _unstopped(self, key: LoomKey, start: Ints, end: Ints) -> Bools:
        ok = np.ones(start.size, dtype=bool)
        for name, limit in self._limits(key):
            if limit is not None and name in self.stopped:
                full = np.concatenate([[0], np.cumsum(self.stopped[name] >= limit)])
                ok &= full[end] == full[start]
        return ok

    def _not_over_closed_days(self, hall: int, content: WorkContent, first: Ints, last: Ints) -> Bools:
        """Where no day without a working slot lies between the first and the last slot, or may."""
        if self.case.terms.open_over_closed_days or content.kind is WindowKind.STANDING:
            return np.ones(first.size, dtype=bool)
        worked = np.zeros(int(self.day_of.max()) + 2, dtype=np.int64)
        worked[self.day_of[self.work[hall]] + 1] = 1
        so_far = np.cumsum(worked)
        days = self.day_of[last] - self.day_of[first]
        return so_far[self.day_of[last] + 1] - so_far[self.day_of[first] + 1] == days

    def _limits(self, key: LoomKey) -> Iterator[tuple[tuple[str, str | None], int | None]]:
        """Where a loom counts among those stopped, and how many may be."""
        yield (key.hall, None), self.case.terms.looms_stopped_at_once
        if section := self.case.mill.looms[key].section:
            yield (key.hall, section), self.case.terms.stopped_per_section

    def _need(self, content: WorkContent, parted: bool) -> dict[tuple[str, str], Ints]:
        """What a content holds in each of its slots."""
        if (id(content), parted) not in self._needs:
            d = slots_needed(content, parted)
            heads = held_by_slot(content, lambda step: other_trades(self.case, step), parted)
            need = {_CREW: np.ones(d, dtype=np.int64)}
            need |= self._amounts("heads", heads, d)
            need |= self._amounts("tool", held_by_slot(content, tools_of, parted), d)
            self._needs[id(content), parted] = need
        return self._needs[id(content), parted]

    def _amounts(self, kind: str, held: Mapping[str, Mapping[int, int]], d: int) -> dict[tuple[str, str], Ints]:
        return {(kind, what): np.array([by_slot.get(i, 0) for i in range(d)]) for what, by_slot in held.items()}

    def _pool(self, name: tuple[str, str]) -> _Pool:
        if name not in self._pools:
            self._pools[name] = self._make_pool(*name)
        return self._pools[name]

    def _make_pool(self, kind: str, what: str) -> _Pool:
        if kind == "tool":
            there = {fold(name): tool.how_many for name, tool in self.case.mill.tools.items()}
            nothing = np.zeros((len(self.halls), self.slots), dtype=np.int64)
            return _Pool(nothing, np.full(self.slots, there.get(what, 0)), nothing.copy())
        trade = self.case.terms.lead_trade if kind == "crew" else what
        crews = crews_of(self.case.mill, trade)
        return self._people(crews, one_crew if kind == "crew" else Case.heads_in)

    def _people(self, crews: Iterable[Crew], count: Count) -> _Pool:
        own = np.zeros((len(self.halls), self.slots), dtype=np.int64)
        shared = np.zeros(self.slots, dtype=np.int64)
        for crew in crews:
            there = [self._there(count(self.case, crew, hall)) for hall in self.halls]
            if crew.hall is None:
                shared += np.max(there, axis=0)
            else:
                own += np.array(there)
        return _Pool(own, shared, np.zeros_like(own))

    def _there(self, amounts: Mapping[int, int]) -> Ints:
        """Amounts by slot, shape (slots,)."""
        there = np.zeros(self.slots, dtype=np.int64)
        inside = [slot for slot in amounts if slot < self.slots]
        there[inside] = [amounts[slot] for slot in inside]
        return there

    # ---- parts

    def _supplied(self) -> Floats:
        """Usable quantity of each part by day from today on, without limit once it can be had to order; less than what is
        taken must never lie there later."""
        case, mill = self.case, self.case.mill
        days = (case.horizon_end - case.origin) // timedelta(days=1) + 2
        supply = np.zeros((len(self.parts), days))
        for part, i in self.parts.items():
            stock = mill.parts[part]
            supply[i] += stock.on_hand - stock.safety_stock - case.problem.taken.get(part, 0.0)
            for due, line in receipts_of(case, part):
                supply[i, (due - case.today).days + 1 :] += line.quantity
            if comes := order_comes(case, stock):
                supply[i, (comes - case.today).days + 1 :] = np.inf
        return supply

    def kit_from(self, needs: Mapping[str, float]) -> int:
        """The first day from which stock and receipts carry these needs beside all that is taken; past the last day
        where they never do."""
        rows = [self.parts[part] for part in needs]
        wanted = np.array(list(needs.values()))[:, None]
        ok = (self.slack[rows] >= wanted - _TOLERANCE).all(axis=0)
        short = np.flatnonzero(~ok)
        return int(short[-1]) + 1 if short.size else 0

    def take_parts(self, needs: Mapping[str, float], day: int) -> None:
        for part, quantity in needs.items():
            self.slack[self.parts[part], max(0, day) :] -= quantity
