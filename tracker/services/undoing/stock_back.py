"""The stockroom's book: a counter entry for each entry, and what was held by hand as it was before."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping

from tracker.domain.mill import LoomKey
from tracker.domain.quantities import tidy
from tracker.domain.stock import BACK, TOLERANCE, Movement, MovementKind
from tracker.errors import message
from tracker.services.moved import Moved, Tie
from tracker.services.parts.stock_entry import Entry
from tracker.store import UnitOfWork
from tracker.store.rows import key_text, stock_on_hand
from tracker.store.stock import at_loom
from tracker.store.undoing import ChangedBy, RowStory, Written, entries_by, entries_since

COUNTED = (MovementKind.COUNT, MovementKind.OPENING)
AT_THE_LOOM = (MovementKind.ISSUE, *BACK)
"""Kinds that tell what a loom has."""


class StockBack:
    """Looked at once; `apply` books what is left of it. `looms`: those of which the same load or record told the parts used."""

    def __init__(self, uow: UnitOfWork, written: Written, looms: Collection[LoomKey]):
        self.uow, self.looms = uow, looms
        self.entries = entries_by(uow.session, written)
        self.since = entries_since(uow.session, written) if self.entries else []
        self.moved = [*self._counted(), *self._short()]

    def _tie(self, entry: Movement) -> Tie:
        return ("loom", entry.key) if entry.key and entry.key in self.looms else ("part", entry.part)

    def _counted(self) -> Iterator[Moved]:
        """Parts that somebody counted since: what is there is known anew."""
        on_hand = stock_on_hand(self.uow.session) if self.entries else {}
        counts = {one.part: one for one in self.since if one.kind in COUNTED}
        for tie, part in {(self._tie(entry), entry.part) for entry in self.entries}:
            if count := counts.get(part):
                then = on_hand.get(part, 0.0) - sum(one.quantity for one in self.since if one.part == part)
                yield _moved(count, part, tidy(then), on_hand.get(part, 0.0), tie)

    def _short(self) -> Iterator[Moved]:
        """Parts of which so many are not there any more, in the stockroom or at the loom."""
        on_hand = stock_on_hand(self.uow.session) if self.entries else {}
        came: dict[tuple[Tie, str], float] = defaultdict(float)
        given: dict[tuple[LoomKey, str], float] = defaultdict(float)
        for entry in self.entries:
            came[self._tie(entry), entry.part] += entry.quantity
            if entry.key and entry.kind in AT_THE_LOOM:
                given[entry.key, entry.part] -= entry.quantity
        for (tie, part), quantity in came.items():
            if quantity > on_hand.get(part, 0.0) + TOLERANCE:
                taken = next((one for one in reversed(self.since) if one.part == part and one.quantity < 0), None)
                yield _moved(taken, part, tidy(quantity), on_hand.get(part, 0.0), tie)
        for (key, part), quantity in given.items():
            if quantity > (has := at_loom(self.uow.session, key, part)) + TOLERANCE:
                back = next((one for one in reversed(self.since) if (one.key, one.part) == (key, part)), None)
                tie: Tie = ("loom", key) if key in self.looms else ("part", part)
                yield _moved(back, part, tidy(quantity), has, tie)

    def leave(self, ties: frozenset[Tie]) -> None:
        self.entries = [entry for entry in self.entries if self._tie(entry) not in ties]

    @property
    def parts(self) -> set[str]:
        return {entry.part for entry in self.entries}

    def apply(self, entry: Entry, why: str) -> None:
        for one in reversed(self.entries):
            entry.move(_counter(one), {one.part: -one.quantity}, why, one.key, one.order)


def _counter(entry: Movement) -> MovementKind:
    """As what an entry is taken back: what a loom has is as before, all else is an adjustment."""
    if entry.kind is MovementKind.ISSUE:
        return MovementKind.RETURN
    return MovementKind.ISSUE if entry.kind in BACK else MovementKind.ADJUSTMENT


def _moved(by: Movement | None, part: str, then: float, now: float, tie: Tie) -> Moved:
    at = (by.entered_at or by.at) if by else None
    return Moved(message("undo-stock", part=part), by.who if by else None, at, then, now, tie)


class HeldBack:
    """Parts held for looms by hand, as they were held before."""

    def __init__(self, uow: UnitOfWork, stories: Mapping[str, RowStory]):
        self.hold: dict[tuple[LoomKey, str], float] = {}
        self.moved: list[Moved] = []
        if not stories:
            return
        looms = {key_text(key): key for key in uow.mill().looms}
        held = {(r.key, r.part): r.quantity for r in uow.reservations()}
        for text, story in stories.items():
            for part, after in (story.after or {}).items():
                before, now = (story.before or {}).get(part), held.get((looms[text], part))
                self._one((looms[text], part), before or 0.0, (after or 0.0, now or 0.0), story.since.get(part))

    def _one(
        self, which: tuple[LoomKey, str], before: float, then_now: tuple[float, float], by: ChangedBy | None
    ) -> None:
        then, now = then_now
        if abs(then - before) <= TOLERANCE or abs(now - before) <= TOLERANCE:
            return
        if abs(now - then) > TOLERANCE:
            what = message("undo-held", part=which[1], loom=which[0])
            self.moved.append(Moved(what, by.who if by else None, by.at if by else None, then, now))
        else:
            self.hold[which] = before

    def apply(self, entry: Entry, why: str) -> None:
        if self.hold:
            entry.hold(self.hold, why)
