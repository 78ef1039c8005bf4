"""Contents, windows and bookings of the last plan as numbered tables of arrays."""

from dataclasses import dataclass
from enum import IntEnum

import numpy as np

from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import Choices, WorkContent
from tracker.planning.model.grid import Bools, Floats, Ints

KINDS = tuple(WindowKind)
BEAM_OUTS = (WindowKind.REPEAT, WindowKind.STYLE)


class From(IntEnum):
    """From where the positions of a hold are counted."""

    START = 0
    SECOND_PART = 1
    WHOLE = 2
    """From the start to the end, the pause included; `first` and `past` say nothing."""


@dataclass(frozen=True)
class PoolHold:
    """An amount of pool `pool` held in positions start + first ≤ i < start + past (second part: from where it begins)."""

    pool: int
    first: int
    past: int
    amount: int
    begins: From = From.START


@dataclass(frozen=True)
class ContentTable:
    """One entry per content (and, where parts were issued already, per loom). All arrays of shape (contents,)."""

    items: list[WorkContent]
    labour: Floats
    neighbours_stand_h: Floats
    """Hours during which the looms beside it stand."""
    parts: Floats
    needs: Ints
    """Row of `Instance.needs`."""
    choices: Ints
    """Index into `choice_sets`."""
    choice_sets: list[Choices]
    attended: Ints
    """The entry of the same work when it is a pilot's, with whoever stays there throughout; itself where that is the same."""


@dataclass(frozen=True)
class Menus:
    """Which contents a loom has in a kind of window; looms with equal scopes share their menu."""

    flat: Ints
    """Content numbers, menu after menu."""
    first: Ints
    """Where each menu begins in `flat`; shape (menus + 1,)."""


@dataclass(frozen=True)
class WindowTable:
    """Windows of the looms to plan, by loom and number; hours from the grid's origin. Arrays of shape (windows,)."""

    items: list[Window]
    loom: Ints
    kind: Ints
    """Index into `KINDS`."""
    menu: Ints
    mean_h: Floats
    starts_h: Floats
    ends_h: Floats
    spread_h: Floats
    mean_running_h: Floats
    warp_rate: Floats
    warp_value: Floats
    warp_in_h: Floats
    """Standing without a warp: when it would be in; else the end."""
    change_h: Floats
    """What the ordinary change takes on the running calendar."""
    meanwhile_h: Floats
    change: Ints
    """Index into `Shapes.changes` of the change that parts its conversions; -1 = they are done in one piece."""
    contribution: Floats
    """Currency per running hour; 0 where the mill says that the capacity is unsold."""

    @property
    def beam_out(self) -> Bools:
        return np.isin(self.kind, [KINDS.index(kind) for kind in BEAM_OUTS])


@dataclass(frozen=True)
class Previous:
    """The last published plan by loom, arrays of shape (looms,)."""

    slot: Ints
    """Start of the loom's booking, in slots; far below 0 where it has none."""
    choices: Ints
    """Index into `ContentTable.choice_sets`; -1 where no content has them any more."""
    booked: Bools
    kind: Ints
    """Kind of its window, index into `KINDS`; -1 where it has no booking."""
    move_cost: Floats
    """What moving its booking costs, currency."""
