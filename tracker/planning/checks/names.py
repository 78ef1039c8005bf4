"""Who does what and when, as a plan names it: at work, one loom at a time, changes as stated, other trades and tools when the
work asks for them (MODEL.md, section 3)."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, Need
from tracker.domain.shifts import crews_of
from tracker.domain.words import fold
from tracker.errors import Message, message
from tracker.planning.checks.case import SLOT, Case, Hold
from tracker.planning.checks.shared import as_asked, other_trades, tools_of

By = Mapping[int, str]
"""Slot → name of the crew."""
Held = Counter[tuple[datetime, str]]
"""(begin of a half hour, folded trade or tool) → heads, or how many."""


class _AtWork:
    """When each crew of the lead trade can work at a conversion in a hall."""

    def __init__(self, case: Case):
        self._slots: dict[tuple[str, str], frozenset[int]] = {}
        for hall in {key.hall for key in case.mill.looms}:
            for row in crews_of(case.mill, case.terms.lead_trade):
                before = self._slots.get((row.crew, hall), frozenset())
                self._slots[row.crew, hall] = before | case.crew_slots(row, hall)

    def __call__(self, crew: str, hall: str, slot: int) -> bool:
        return slot in self._slots.get((crew, hall), ())


def named_as_stated(case: Case) -> Iterator[Message]:
    """Nothing is asked of a plan that names nobody."""
    if case.plan.crew_changes is None:
        return
    holds = {hold.key: hold for hold in case.holds}
    named = {b.key: dict(_by_slot(case, b, holds[b.key])) for b in case.plan.bookings}
    yield from _one_loom_at_a_time(case, named)
    changes, there = 0, _AtWork(case)
    for booking in case.plan.bookings:
        hold, by = holds[booking.key], named[booking.key]
        yield from _somebody(case, hold, by)
        yield from _within(case, booking)
        yield from _at_work(case, there, booking.key, by)
        yield from _keeps(case, there, booking, by)
        changes += _changes(case, there, hold, by)
    if changes != case.plan.crew_changes:
        yield message("crew-changes-stated", changes=changes, stated=case.plan.crew_changes)
    if changes and not _may_change(case):
        yield message("crew-changes-needless", changes=changes)


def _by_slot(case: Case, booking: Booking, hold: Hold) -> Iterator[tuple[int, str]]:
    for slot in hold.slots:
        begin = case.begin(slot)
        crew = next((turn.crew for turn in booking.crews if turn.start <= begin < turn.end), None)
        if crew is not None:
            yield slot, crew


def _somebody(case: Case, hold: Hold, by: By) -> Iterator[Message]:
    """Every slot has a crew; a firm booking that overruns may find none."""
    bare = [slot for slot in hold.slots if slot not in by]
    if bare and not hold.fixed:
        yield message("nobody-named", loom=hold.key, at=case.at(case.begin(bare[0])))


def _within(case: Case, booking: Booking) -> Iterator[Message]:
    """A crew is there from the start of the booking to its end at most, one crew after the other."""
    before = booking.start
    for turn in booking.crews:
        if not before <= turn.start < turn.end <= booking.end:
            yield message(
                "turn-outside", loom=booking.key, crew=turn.crew, start=case.at(turn.start), end=case.at(turn.end)
            )
        before = max(before, turn.end)


def _at_work(case: Case, there: _AtWork, key: LoomKey, by: By) -> Iterator[Message]:
    for slot, crew in by.items():
        if not there(crew, key.hall, slot):
            yield message("crew-not-at-work", loom=key, crew=crew, at=case.at(case.begin(slot)))
            return


def _one_loom_at_a_time(case: Case, named: Mapping[LoomKey, By]) -> Iterator[Message]:
    looms: dict[tuple[int, str], list[LoomKey]] = defaultdict(list)
    for key, by in named.items():
        for slot, crew in by.items():
            looms[slot, crew].append(key)
    said: set[tuple[LoomKey, ...]] = set()
    for (slot, crew), keys in sorted(looms.items()):
        if len(keys) > 1 and tuple(keys) not in said:
            said.add(tuple(keys))
            yield message("crew-on-several-looms", crew=crew, looms=keys, at=case.at(case.begin(slot)))


def _keeps(case: Case, there: _AtWork, booking: Booking, by: By) -> Iterator[Message]:
    """A firm booking keeps its published crew while that crew is at work, where crews may stay with their looms."""
    old = case.firm.get(booking.key)
    if old is None or not case.given(booking) or _mixed(case):
        return
    busy = {item.crew for item in case.problem.in_work}
    for slot, crew in by.items():
        begin = case.begin(slot)
        then = next((turn.crew for turn in old.crews if turn.start <= begin < turn.end), crew)
        if then != crew and then not in busy and there(then, booking.key.hall, slot):
            yield message("other-crew", loom=booking.key, published=then, at=case.at(begin), crew=crew)
            return


def _changes(case: Case, there: _AtWork, hold: Hold, by: By) -> int:
    """How often another crew follows while the earlier one is still at work."""
    found, before = 0, ""
    for slot in hold.slots:
        if hold.pause and case.begin(slot) == hold.pause[1]:
            before = ""  # the second part may be another crew's
        crew = by.get(slot, "")
        if before and crew and crew != before:
            found += there(before, hold.key.hall, slot)
        before = crew or before
    return found


def _mixed(case: Case) -> bool:
    """Crews of a hall of their own stand beside crews for any hall."""
    return len({row.hall is None for row in crews_of(case.mill, case.terms.lead_trade)}) > 1


def _may_change(case: Case) -> bool:
    """Crews that are bound already may press others: by halls, by firm bookings, by conversions in work; and a crew that
    takes another loom while one hall is shut may not be free when it opens."""
    shut = any(closure.hall and closure.stops != "weaving" for closure in case.mill.closures)
    return _mixed(case) or shut or bool(case.firm) or bool(case.problem.in_work)


def needs_as_stated(case: Case) -> Iterator[Message]:
    """Every booking lists each other trade and each tool in the half hours in which its work holds them, a firm one as it was
    published; nothing is asked of a plan that names nobody."""
    if case.plan.crew_changes is None:
        return
    holds = {hold.key: hold for hold in case.holds}
    for booking in case.plan.bookings:
        hold = holds[booking.key]
        listed, held = _listed(booking.needs), _held(case, hold) if hold.needs is None else _listed(hold.needs)
        other = sorted(of for of in {*listed, *held} if listed[of] != held[of])
        if other:
            at, what = other[0]
            yield message(
                "needs-otherwise",
                loom=hold.key,
                listed=listed[at, what],
                what=what,
                at=case.at(at),
                held=held[at, what],
            )


def _listed(needs: Iterable[Need]) -> Held:
    listed: Held = Counter()
    for need in needs:
        begin = need.start
        while begin < need.end:
            listed[begin, fold(need.what)] += need.amount
            begin += SLOT
    return listed


def _held(case: Case, hold: Hold) -> Held:
    held: Held = Counter()
    for of_step in (lambda step: other_trades(case, step), tools_of):
        for what, slot, amount in as_asked(hold, of_step):
            held[case.begin(slot), what] += amount
    return held
