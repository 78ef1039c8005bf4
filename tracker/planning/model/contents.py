"""Work contents as arrays: how long, what they hold slot by slot, which parts they need, what they cost."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor

from tracker.domain.words import fold
from tracker.domain.work import StepLoad, WorkContent

SLOT_MIN = 30
_DUST = 1e-6
"""Minutes that are taken for a rounding error, not for work in a further slot."""


@dataclass(frozen=True, slots=True)
class HeldSlots:
    """An amount of something held in the working slots `first` ≤ i < `past` after the start."""

    what: str
    """Folded trade or tool."""
    first: int
    past: int
    amount: int


@dataclass(frozen=True, slots=True)
class Profile:
    """What a conversion holds besides its crew; conversions alike in it share one."""

    slots: int
    """Working slots, ≥ 1; a crew of the lead trade is held in all of them."""
    trades: tuple[HeldSlots, ...]
    tools: tuple[HeldSlots, ...]
    first: int = 0
    """Of these, the slots of the first part, before the ordinary change; 0 = in one piece."""
    room: int = 0
    """Working slots after the last in which a crew is kept free."""

    def tail(self, slots: int) -> "Profile":
        """The last so many slots of it."""
        cut = max(0, self.slots - slots)
        return Profile(slots, _cut(self.trades, cut), _cut(self.tools, cut), max(0, self.first - cut))


def profile(content: WorkContent, lead_trade: str, parted: bool = False, room: int = 0) -> Profile:
    """Slots and holds of a content: its steps one after the other, minutes with allowance and learning in them. Where it is
    `parted` by the ordinary change, the second part begins with a slot of its own.

    A trade or tool is held in every slot that one of its steps touches, as many as the largest of those steps asks for.
    """
    lead = fold(lead_trade)
    cut = content.first_part if parted else 0
    before, after = (sum(step.minutes for step in steps) for steps in (content.steps[:cut], content.steps[cut:]))
    one = _slots(before) if cut else 0
    slots = one + _slots(after) if cut else _slots(content.on_loom_min)
    trades: dict[str, list[int]] = {}
    tools: dict[str, list[int]] = {}
    minute = 0.0
    for i, step in enumerate(content.steps):
        minute = float(one * SLOT_MIN) if cut and i == cut else minute
        first, past = _touched(minute, minute + step.minutes)
        _hold(trades, step.heads, first, past, slots)
        _hold(tools, step.tools, first, past, slots)
        minute += step.minutes
    trades.pop(lead, None)
    return Profile(slots, _runs(trades), _runs(tools), one, room)


def trades_and_tools(contents: Sequence[WorkContent], lead_trade: str) -> tuple[list[str], list[str]]:
    """Folded names of what the steps hold beside the lead trade, in order."""
    steps = [step for content in contents for step in content.steps if step.minutes > _DUST]
    trades = {trade for step in steps for trade, heads in step.heads.items() if heads}
    tools = {tool for step in steps for tool, amount in step.tools.items() if amount}
    return sorted({fold(trade) for trade in trades} - {fold(lead_trade)}), sorted({fold(tool) for tool in tools})


def _slots(minutes: float) -> int:
    return max(1, ceil((minutes - _DUST) / SLOT_MIN))


def holds_of(steps: Sequence[StepLoad]) -> tuple[HeldSlots, ...]:
    """Heads of every trade held by steps one after the other, in half hours from the first."""
    slots = ceil(max(0.0, sum(step.minutes for step in steps) - _DUST) / SLOT_MIN)
    held: dict[str, list[int]] = {}
    minute = 0.0
    for step in steps:
        first, past = _touched(minute, minute + step.minutes)
        _hold(held, step.heads, first, past, slots)
        minute += step.minutes
    return _runs(held)


def rateless(contents: Sequence[WorkContent], rates: Mapping[str, float]) -> list[str]:
    """Trades that work but have no crew, as the method writes them."""
    found = {fold(trade): trade for content in contents for trade, minutes in content.labour_min.items() if minutes > 0}
    return [trade for folded, trade in sorted(found.items()) if folded not in rates]


def _touched(start_min: float, end_min: float) -> tuple[int, int]:
    if end_min - start_min <= _DUST:
        return 0, 0
    return floor((start_min + _DUST) / SLOT_MIN), ceil((end_min - _DUST) / SLOT_MIN)


def _hold(held: dict[str, list[int]], amounts: Mapping[str, int], first: int, past: int, slots: int) -> None:
    for name, amount in amounts.items():
        by_slot = held.setdefault(fold(name), [0] * slots)
        for i in range(first, min(past, slots)):
            if by_slot[i] < amount:
                by_slot[i] = amount


def _runs(held: Mapping[str, list[int]]) -> tuple[HeldSlots, ...]:
    """Runs of equal amounts, none for 0."""
    runs: list[HeldSlots] = []
    for what, by_slot in sorted(held.items()):
        first = 0
        for i in range(1, len(by_slot) + 1):
            if i == len(by_slot) or by_slot[i] != by_slot[first]:
                if by_slot[first]:
                    runs.append(HeldSlots(what, first, i, by_slot[first]))
                first = i
    return tuple(runs)


def _cut(holds: tuple[HeldSlots, ...], cut: int) -> tuple[HeldSlots, ...]:
    return tuple(
        HeldSlots(hold.what, max(0, hold.first - cut), hold.past - cut, hold.amount)
        for hold in holds
        if hold.past > cut
    )
