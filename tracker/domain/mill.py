"""The mill and everything that the planner knows of it at one moment."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time
from typing import Any, NamedTuple

from tracker.domain.method import Method
from tracker.domain.terms import Terms
from tracker.domain.words import fold, natural_key


class LoomKey(NamedTuple):
    """A loom is hall + number; the number is a text: `007`, `3/12`, `H2R4-15`."""

    hall: str
    loom: str

    def __str__(self) -> str:
        return f"{self.loom} ({self.hall})"

    @property
    def sort_key(self) -> tuple:
        return natural_key(self.hall), natural_key(self.loom)


@dataclass(frozen=True, slots=True)
class Loom:
    """One loom of the list. Empty cells are None; columns that are no field stand in `attributes` by their heading."""

    hall: str
    loom: str
    machine_type: str
    row: str | None = None
    place: str | None = None
    insertion: str | None = None
    year: int | None = None
    reed_width_cm: float | None = None
    frames: int | None = None
    speed_ppm: float | None = None
    """Picks a minute, above 0."""
    efficiency: float | None = None
    """Fraction, 0 to 1."""
    saving_per_day: float | None = None
    """Currency a day that the converted loom saves."""
    capacity_unsold: bool = False
    """True where a stopped hour costs no contribution."""
    protected_until: date | None = None
    notes: str | None = None
    attributes: Mapping[str, Any] = field(default_factory=dict)
    section: str | None = None
    """The looms that one weaver minds."""

    @property
    def key(self) -> LoomKey:
        return LoomKey(self.hall, self.loom)

    def known(self) -> dict[str, Any]:
        """Folded attribute name → value, for conditions: the kept attributes and the core columns by their headings."""
        core = {
            "hall": self.hall, "loom": self.loom, "machine type": self.machine_type, "row": self.row,
            "place": self.place, "section": self.section,
            "insertion": self.insertion, "year": self.year, "reed width": self.reed_width_cm,
            "frames": self.frames, "speed": self.speed_ppm, "efficiency": self.efficiency,
        }  # fmt: skip
        return {fold(name): value for name, value in self.attributes.items()} | core


@dataclass(frozen=True, slots=True)
class Article:
    """What is woven."""

    article: str
    pick_density_per_cm: float
    take_up: float
    """Fraction, on the basis that `take_up_basis` names."""
    take_up_basis: str = "crimp"
    """`crimp`: (warp − cloth)/cloth; `contraction`: (warp − cloth)/warp."""
    contribution_per_m: float | None = None
    warp_value_per_m: float | None = None
    family: str | None = None
    """Articles whose settings are compared with each other."""
    weft_tex: float | None = None
    weft_price_per_kg: float | None = None


@dataclass(frozen=True, slots=True)
class Warp:
    """A warp of a loom: sequence 0 is on the loom now, 1, 2 … follow."""

    hall: str
    loom: str
    sequence: int
    article: str
    set_length_m: float | None = None
    warp_left_m: float | None = None
    read_at: datetime | None = None
    """UTC."""
    tail_m: float | None = None
    change: str | None = None
    """How this warp comes in: `repeat` or `style`."""
    speed_ppm: float | None = None
    efficiency: float | None = None
    ready_on: date | None = None

    @property
    def key(self) -> LoomKey:
        return LoomKey(self.hall, self.loom)


@dataclass(frozen=True, slots=True)
class Reading:
    """Warp left on a loom at a moment (UTC)."""

    hall: str
    loom: str
    read_at: datetime
    warp_left_m: float | None = None
    speed_ppm: float | None = None
    efficiency: float | None = None
    picks: float | None = None

    @property
    def key(self) -> LoomKey:
        return LoomKey(self.hall, self.loom)


@dataclass(frozen=True, slots=True)
class OrdinaryChange:
    """Hours that an ordinary beam change of a kind (`repeat`, `style`) stops the loom.

    `machine_type` None = every type without a row of its own.
    """

    kind: str
    hours_h: float
    machine_type: str | None = None
    meanwhile_h: float = 0
    """Of these hours, what others do while a conversion goes on; at most `hours_h`."""
    trade: str | None = None
    heads: int | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """A span (UTC, half-open) in which a loom waits anyway."""

    hall: str
    loom: str
    from_at: datetime
    to_at: datetime
    reason: str | None = None

    @property
    def key(self) -> LoomKey:
        return LoomKey(self.hall, self.loom)


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the kits. `on_hand` here is the sum of the stock ledger, in `unit`."""

    part: str
    on_hand: float
    description: str | None = None
    unit: str | None = None
    safety_stock: float = 0
    lead_time_days: float | None = None
    """Calendar days from order to receipt; None = as the terms say."""
    lot_size: float | None = None
    minimum_order: float | None = None
    price: float = 0
    """Currency per unit."""
    supplier: str | None = None
    location: str | None = None
    """Where in the stockroom."""


@dataclass(frozen=True, slots=True)
class Receipt:
    """An open order line: `quantity` of `part` due on a day; usable from the next working day."""

    order: str
    part: str
    quantity: float
    due: date
    supplier: str | None = None
    unit: str | None = None
    """As the order line has it; the part's own unit where it is given."""


@dataclass(frozen=True, slots=True)
class Crew:
    """People of one trade who work together. Weekdays: 0 = Monday … 6 = Sunday. A shift may run past midnight."""

    crew: str
    trade: str
    heads: int
    weekdays: frozenset[int] = frozenset(range(5))
    shift_start: time = time(6)
    shift_end: time = time(14)
    rate_per_head_h: float = 0
    hall: str | None = None
    """None = works in any hall."""
    from_on: date | None = None
    to_on: date | None = None
    """Last day, included."""
    breaks: str | None = None
    """Inside the shift, as `tracker.domain.breaks` reads them: `10:00-10:15, 12:00-12:30`."""
    language: str | None = None
    """Of its cards, ISO 639-1; None = as the terms say."""


@dataclass(frozen=True, slots=True)
class Absence:
    """Whole days, both included, on which a crew is not there, or only some of it."""

    crew: str
    from_on: date
    to_on: date
    heads: int | None = None
    """How many are away; None = all, 0 = the absence was taken back."""
    reason: str | None = None


@dataclass(frozen=True, slots=True)
class Overtime:
    """Hours that a crew works beside its shifts; an end at or before the start is on the next day."""

    crew: str
    on: date
    start: time
    end: time


@dataclass(frozen=True, slots=True)
class Running:
    """When a hall weaves; a hall without rows weaves always. start = end = None: the whole day."""

    hall: str
    weekdays: frozenset[int]
    start: time | None = None
    end: time | None = None


@dataclass(frozen=True, slots=True)
class Closure:
    """A day, or hours of it, in which a hall (None = all) does not weave, does not convert, or both."""

    on: date
    stops: str = "both"
    """`weaving`, `work` or `both`."""
    hall: str | None = None
    reason: str | None = None
    start: time | None = None
    end: time | None = None
    """None = midnight; an end at or before the start is on the next day."""

    @property
    def whole_day(self) -> bool:
        return (self.start or time(0)) == time(0) == (self.end or time(0))


@dataclass(frozen=True, slots=True)
class Tool:
    tool: str
    how_many: int


@dataclass(frozen=True, slots=True)
class Mill:
    """All that a plan is made from, read in one go."""

    looms: Mapping[LoomKey, Loom] = field(default_factory=dict)
    warps: Mapping[LoomKey, tuple[Warp, ...]] = field(default_factory=dict)
    """By sequence."""
    readings: Mapping[LoomKey, tuple[Reading, ...]] = field(default_factory=dict)
    """By time."""
    articles: Mapping[str, Article] = field(default_factory=dict)
    changes: tuple[OrdinaryChange, ...] = ()
    standing: Mapping[LoomKey, tuple[Standing, ...]] = field(default_factory=dict)
    parts: Mapping[str, Part] = field(default_factory=dict)
    receipts: tuple[Receipt, ...] = ()
    crews: tuple[Crew, ...] = ()
    absences: tuple[Absence, ...] = ()
    overtime: tuple[Overtime, ...] = ()
    running: tuple[Running, ...] = ()
    closures: tuple[Closure, ...] = ()
    tools: Mapping[str, Tool] = field(default_factory=dict)
    method: Method = field(default_factory=Method)
    terms: Terms = field(default_factory=Terms)
    left_done: Mapping[LoomKey, frozenset[str]] = field(default_factory=dict)
    """Operations, folded, that a stopped conversion left done at a loom."""

    def saving_per_day(self, key: LoomKey) -> float:
        """Currency a day that a converted loom saves: what the list claims, or the share of it that is counted on since a
        measured saving was taken over."""
        return (self.looms[key].saving_per_day or 0.0) * self.terms.share_of_saving
