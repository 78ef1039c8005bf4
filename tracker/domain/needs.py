"""What the kits need: net needs by week, order proposals, kit states, pick lists, and what a change makes fall."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime

from tracker.domain.mill import LoomKey
from tracker.domain.work import Choices

Quantities = Mapping[str, float]
"""Part → quantity, in the part's unit."""
LoomQuantities = Mapping[LoomKey, Quantities]


@dataclass(frozen=True, slots=True)
class StillOut:
    """A part that comes back after use and is still with a loom that the plan does not book."""

    key: LoomKey
    part: str
    quantity: float
    due: date
    """The mill's local day on which the loom's last booking ended, or on which the part was issued where it had none."""


@dataclass(frozen=True, slots=True)
class Touched:
    """A loom whose kit a late order cannot reach in time."""

    key: LoomKey
    needed_on: date
    """The mill's local day on which the conversion starts (a left-over loom: the day set for it)."""
    days: int
    """Calendar days from `needed_on` to the first day on which the part could be used if it were ordered today."""


@dataclass(frozen=True, slots=True)
class PartWeek:
    """Net needs of one part in one ISO week. Quantities in the part's unit; days are the mill's local days."""

    part: str
    week: str
    """ISO week, `2027-W05`."""
    gross: float
    """Needed by the bookings that start in the week, less what has been issued to them."""
    gross_left_over: float
    """Needed by the looms that the plan leaves over, on the day set for them; not part of `gross`."""
    receipts: float
    """Open order lines due in the week, and recovered parts that come back in it."""
    on_hand_end: float
    """Projected stock at the end of the week, the proposed orders of this and earlier weeks taken as received."""
    net: float
    """What lacks, both kinds of gross together, to stay at or above the safety stock at every need of the week, less what is on
    order and comes as soon as an order placed now would."""
    order_quantity: float
    """The net in whole lots and at least the minimum order; 0 = nothing to order for this week."""
    due: date | None = None
    """Day on which the order must be in: a working day before the first need that lacks it."""
    order_by: date | None = None
    """Last working day on which it can be ordered."""
    late: bool = False
    """The order-by day is past."""
    days_late: int = 0
    """Calendar days from the order-by day to today; 0 where not late."""
    touched: tuple[Touched, ...] = ()
    """Looms that a late order cannot reach in time; empty where only the safety stock is touched."""
    falls: tuple[LoomKey, ...] = ()
    """Booked looms that lack the part at their start where this order is not placed, though the others are."""


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line of the order list to a supplier.

    The order workbook has a sheet of the shape of Receipts, so that the copy that the supplier fills in can be loaded:
    Order, Part and Supplier are filled; Quantity and Due are left empty for the confirmed ones, beside `quantity` and
    `due` that were asked for. A confirmed quantity of 0 says that nothing will come.
    """

    order: str
    """Number of the line: need week and part, `2027W05-RAIL-190`, with `-2`, `-3` … where that is taken. The same need
    keeps its number, so an answer loaded twice changes nothing."""
    supplier: str
    """`` where the part has none."""
    part: str
    description: str
    unit: str
    quantity: float
    order_by: date
    due: date
    """Day on which it must be in; today where that is past."""
    expected: date
    """`due`, or for a late line the day on which it comes if ordered today."""
    price: float
    """Currency per unit."""
    late: bool
    days_late: int
    touched: tuple[Touched, ...] = ()
    """Looms that a late order cannot reach in time."""
    falls: tuple[LoomKey, ...] = ()
    """Booked looms that rely on it: they lack the part at their start where it is not placed."""

    @property
    def amount(self) -> float:
        """quantity × price."""
        return self.quantity * self.price

    @property
    def looms(self) -> tuple[LoomKey, ...]:
        """The looms touched, in order of their need."""
        return tuple(touched.key for touched in self.touched)


@dataclass(frozen=True, slots=True)
class MonthCash:
    """Money that falls due in a month, taken at the day of delivery; terms of payment are not known here."""

    month: str
    """`2027-03`."""
    proposed: float
    """Order proposals."""
    on_order: float
    """Open order lines at the part's price."""

    @property
    def total(self) -> float:
        return self.proposed + self.on_order


@dataclass(frozen=True, slots=True)
class Cash:
    months: tuple[MonthCash, ...]
    """From the first to the last month with money, none left out."""

    @property
    def total(self) -> float:
        return sum(month.total for month in self.months)

    @property
    def peak(self) -> MonthCash | None:
        """The dearest month, the earliest of equals; None where there is none."""
        return max(self.months, key=lambda month: month.total, default=None)


@dataclass(frozen=True, slots=True)
class KitState:
    """One booked loom's kit. Parts with quantity 0 are left out of the mappings."""

    key: LoomKey
    start: datetime
    """Of the booking, UTC."""
    needed: Quantities
    reserved: Quantities
    issued: Quantities
    """Less what was returned."""
    short: Quantities
    """Needed, neither reserved nor issued."""
    expected: Mapping[str, date]
    """Short parts that receipts not claimed by an earlier booking cover before the start → the day the last is due."""

    @property
    def complete(self) -> bool:
        """Every part is reserved or issued."""
        return not self.short

    @property
    def state(self) -> str:
        """`issued`, `complete`, `reserved` (what lacks is on order and due in time) or `short`."""
        if self.short:
            return "reserved" if self.short.keys() == self.expected.keys() else "short"
        return "complete" if self.reserved or not self.needed else "issued"


@dataclass(frozen=True, slots=True)
class PickLine:
    """One part to be picked for one kit."""

    day: date
    """The mill's local day on which the conversion starts."""
    key: LoomKey
    start: datetime
    location: str
    """`` where the part has none."""
    part: str
    description: str
    unit: str
    quantity: float
    """To be picked: reserved and not yet issued."""
    short: float
    """Needed beside it and not there."""


@dataclass(frozen=True, slots=True)
class Fallen:
    """A booking whose whole kit cannot be there when it starts."""

    key: LoomKey
    start: datetime
    lacks: Quantities
    """What is missing at the start."""
    usable_on: date | None
    """First day on which stock and receipts would make the kit whole; None where they never do."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What if an order line comes `days` later (earlier where negative)?"""

    order: str
    days: int


@dataclass(frozen=True, slots=True)
class ShortDelivery:
    """What if only `quantity` of an order line comes?"""

    order: str
    quantity: float


@dataclass(frozen=True, slots=True)
class Scrap:
    """What if `quantity` of a part on hand is lost?"""

    part: str
    quantity: float


StockChange = Slip | ShortDelivery | Scrap


@dataclass(frozen=True, slots=True)
class ChoicePrice:
    """What the plan took where the method gives a choice, and what another alternative would have cost."""

    key: LoomKey
    taken: Choices
    other: Choices
    parts: float
    """Cost of the other's parts less that of the one taken; likewise the next two. Currency, + = dearer."""
    labour: float
    on_loom_min: float
    """Minutes on the loom."""
    extra_cost: float | None
    """What the loom's cheapest option with the other choices, at whatever date, costs beyond its booking, by the planner;
    None where the plan lists no such option."""
