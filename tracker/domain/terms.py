"""The terms of a programme: its name, time zone, horizon, limits and prices. Defaults are the trade's usual figures."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace
from datetime import date
from difflib import get_close_matches
from functools import cache
from zoneinfo import ZoneInfo, available_timezones

from tracker.domain.words import fold


@dataclass(frozen=True, slots=True)
class Care:
    """What plans do so that they survive the hall: the terms of that name; by default nothing."""

    room: float = 0
    no_second_chance: float = 0
    usual_absence: float = 0
    receipts_later_days: int = 0
    pilots_for_type: bool = False
    patience_h: float | None = None
    """None = as the mill has it."""


NO_CARE = Care()


@dataclass(frozen=True, slots=True)
class Terms:
    programme: str = "Conversion programme"
    time_zone: str = "UTC"
    """IANA name; the mill's local time."""
    currency: str = "EUR"
    start: date | None = None
    horizon_days: int = 84
    target_finish: date | None = None
    firm_h: float = 72
    """Running hours ahead within which a booking is firm."""
    patience_h: float = 2
    """Hours a crew waits for a late beam-out before the rest of the warp is cut."""
    allowance: float = 0.15
    """Share added to observed work."""
    learning_rate: float = 0.9
    """Unit curve: each doubling of conversions takes this share of the time."""
    learning_floor: float = 0.6
    """The learning factor never falls below this."""
    left_over_penalty: float = 5000
    move_cost: float = 60
    soak_days: float = 7
    """Days between a pilot's end and the next of its type; 0 = no pilots."""
    lead_trade: str = "fitter"
    pilot_trade: str = "electrician"
    """One of them stays with a pilot from its start to its end, where the work asks for that trade at all."""
    looms_stopped_at_once: int | None = None
    """Per hall; None = no limit."""
    day_to_day_variation: float = 0.04
    """Coefficient of variation of the warp used from day to day."""
    days_to_order: int = 1
    """Days from planning to the placing of an order."""
    lead_time_none_given_days: int = 28
    """Calendar days for parts without a lead time; 0 = they cannot be ordered."""
    plan_with_orders: bool = True
    """Whether looms may wait for orders that are not placed yet."""
    open_over_closed_days: bool = False
    """Whether a loom may stand open over a day on which nobody converts in its hall."""
    watch_h: float = 0
    """Hours after a restart during which its people must be at work."""
    stopped_per_section: int | None = None
    """Per weaver's section; None = no limit."""
    reference_plan: int | None = None
    """Number of the published plan that the programme is measured by; None = the first."""
    language_of_cards: str = "en"
    """ISO 639-1, one of `CARD_LANGUAGES`."""
    address_of_screens: str | None = None
    """`http://planning-office:8501`; None where nobody has said."""
    leno_yarn_tex: float | None = None
    leno_yarn_price_per_kg: float = 0
    minutes_per_stop: float = 2
    worth_knowing: float = 0.10
    """The smallest change of a rate that matters, as a share."""
    settling_days: float = 3
    """After a conversion, not counted before and after."""
    visits_days: str = "1, 7, 30"
    """Days after sign-off on which the settings are read again."""
    order_decided: date | None = None
    """The day on which the order of the looms was decided; None = that of the first published plan."""
    room: float = 0
    """How many times the spread of its work and wait a crew is kept free after a conversion; 0 = no room."""
    no_second_chance: float = 0
    """How many times what a loom would cost left over × the chance that it misses this and every later chance before the
    horizon a booking is charged in planning; 0 = nothing."""
    usual_absence: float = 0
    """Share of the crews' hours of a week in which nothing is planned."""
    receipts_later_days: int = 0
    """Calendar days by which the plan reckons deliveries later than promised."""
    pilots_for_type: bool = False
    """Whether the first pilots are planned by what their whole type costs, not by their own cost alone."""
    share_of_saving: float = 1
    """Of the saving per day that the loom list claims, what is counted on; another than 1 once a measured one was taken over."""
    pilots: Mapping[str, str] = field(default_factory=dict)
    """Machine type → loom number that the mill names as its pilot."""

    @property
    def care(self) -> "Care":
        return Care(
            self.room, self.no_second_chance, self.usual_absence, self.receipts_later_days, self.pilots_for_type
        )

    def with_care(self, care: "Care") -> "Terms":
        """The same, but for what plans do so that they survive."""
        return replace(self, **{name: value for name, value in asdict(care).items() if value is not None})

    @property
    def zone(self) -> ZoneInfo:
        return ZoneInfo(self.time_zone)


@cache
def zones() -> frozenset[str]:
    """The IANA names that there are."""
    return frozenset(available_timezones())


def nearest_zone(name: str) -> str:
    """The zone whose name is spelt nearest, `` where none is near: `europe-vienna` → `Europe/Vienna`."""
    places = sorted(zone for zone in zones() if "/" in zone)
    folded = {fold(zone.rpartition("/")[2]): zone for zone in places} | {fold(zone): zone for zone in places}
    near = get_close_matches(fold(name), folded, n=1, cutoff=0.75)
    return folded[near[0]] if near else ""
