"""The method: what a conversion consists of, as data that the mill edits. Nothing here knows about leno devices."""

from collections.abc import Mapping
from dataclasses import dataclass, field

Conditions = Mapping[str, str]
"""Heading of the condition column (an attribute, `window`, or a choice) → the cell's unary test as written.
Empty cells are left out."""

PLACES = {
    "bench before": "card-bench", "on loom": "card-on-loom", "after restart": "card-after", "bench after": "card-bench-after",
}  # fmt: skip
"""In the order in which a conversion goes through them; the code of each, as a card is headed."""


@dataclass(frozen=True, slots=True)
class Row:
    """Where a method row was read: the sheet and the row number as a spreadsheet shows it (0 = unknown)."""

    sheet: str = ""
    number: int = 0
    columns: Mapping[str, str] = field(default_factory=dict)
    """Heading or field → column letter, so that a finding can name the cell."""


@dataclass(frozen=True, slots=True)
class Operation:
    step: int
    """Rows with the same step are done side by side."""
    operation: str
    minutes: float
    """Elapsed normal minutes (likely value)."""
    trade: str
    heads: int
    tool: str | None = None
    place: str = "on loom"
    caution: str | None = None
    torque_nm: float | None = None
    minutes_low: float | None = None
    minutes_high: float | None = None
    """Optional three-point estimate."""
    conditions: Conditions = field(default_factory=dict)
    row: Row = Row()
    warp: str | None = None
    """`out`: needs the old warp out and the new one not in; `in`: needs the warp in; None = either."""
    learns: bool = True
    """False = keeps its minutes: neither the learning factor nor the three-point spread touches it."""
    stops_neighbours: bool = False
    """The looms beside it must stand meanwhile."""
    waivable: bool | None = None
    """None = yes."""


@dataclass(frozen=True, slots=True)
class KitLine:
    part: str
    quantity: float
    comes_back: bool = False
    conditions: Conditions = field(default_factory=dict)
    row: Row = Row()


@dataclass(frozen=True, slots=True)
class Alternative:
    """One alternative of a choice that the planner may take where its conditions hold."""

    choice: str
    alternative: str
    conditions: Conditions = field(default_factory=dict)
    row: Row = Row()


@dataclass(frozen=True, slots=True)
class Setpoint:
    setting: str
    side: str | None = None
    unit: str | None = None
    target: float | str | None = None
    low: float | None = None
    high: float | None = None
    conditions: Conditions = field(default_factory=dict)
    row: Row = Row()
    repeatability: float | None = None
    """Two readings of one thing differ by less in 95 % of cases, in `unit`."""


@dataclass(frozen=True, slots=True)
class Check:
    check: str
    side: str | None = None
    kind: str = "yes/no"
    """`yes/no` or `number`."""
    low: float | None = None
    high: float | None = None
    conditions: Conditions = field(default_factory=dict)
    row: Row = Row()
    safety: bool = False
    waivable: bool | None = None
    """None = no where `safety`, else yes."""


@dataclass(frozen=True, slots=True)
class Method:
    version: int = 0
    """0 = none loaded."""
    operations: tuple[Operation, ...] = ()
    kit_lines: tuple[KitLine, ...] = ()
    alternatives: tuple[Alternative, ...] = ()
    setpoints: tuple[Setpoint, ...] = ()
    checks: tuple[Check, ...] = ()
