"""What varies in a hall, and how much (MODEL.md, section 1)."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from datetime import date
from enum import StrEnum
from math import log
from typing import NamedTuple

from tracker.domain.work import USUAL_VARIATION
from tracker.errors import DataError


class Source(StrEnum):
    BEAM_OUTS = "beam-outs"
    WORK = "work"
    PEOPLE = "people"
    RECEIPTS = "receipts"
    FAILURES = "failures"
    ORDERS = "orders"


class Whose(NamedTuple):
    """Of whom or what a figure is."""

    kind: str
    """`type` of machine, `supplier` or `suppliers`, `crew`, `crews` of the lead trade, `others`: people of other trades, `mill`."""
    name: str = ""
    """Empty = all of them together."""


SUPPLIERS, CREWS, OTHERS, MILL = Whose("suppliers"), Whose("crews"), Whose("others"), Whose("mill")


@dataclass(frozen=True, slots=True)
class Figure:
    """What the mill's own records say."""

    value: float
    count: int
    """How many of them it comes from."""
    since: date
    """The day of the first."""


@dataclass(frozen=True, slots=True)
class Spreads:
    """How much each source varies. Shares are 0 to 1, days and rates ≥ 0; DataError beyond. Defaults are the trade's usual
    figures; where `own` has one of the mill's it is taken instead, unless the figure was `asked` for."""

    work_cv: float = USUAL_VARIATION
    """Coefficient of variation of a conversion's time, where nothing is recorded and the method gives no low and high."""
    away_share: float = 0.04
    """Share of days on which a crew of the lead trade (of other trades: a head) is away unforeseen."""
    away_days: float = 3.0
    """Mean length of such an absence, calendar days, at least 1."""
    late_share: float = 0.2
    """Share of deliveries that come late."""
    late_days: float = 5.0
    """Mean lateness of those, calendar days."""
    short_share: float = 0.02
    """Share of deliveries that come short."""
    fail_share: float = 0.01
    """Share of conversions that fail half way."""
    protected_per_week: float = 1.0
    """Looms a week that are protected at short notice."""
    protected_days: float = 14.0
    """For how long, calendar days."""
    reading_error: float = 0.02
    """Coefficient of variation of the metres left as they are read; a share."""
    off: frozenset[Source] = frozenset()
    """Sources that do not vary."""
    never_away: frozenset[str] = frozenset()
    """Crews for whom somebody stands in."""
    own: Mapping[str, Mapping[Whose, Figure]] = field(default_factory=dict)
    """Name of a figure → whose → what the records say (`recorded.py`)."""
    asked: frozenset[str] = frozenset()
    """Names of the figures that were asked for."""

    def __post_init__(self) -> None:
        for each in fields(self):
            if each.name not in OF_SOURCE:
                continue
            value, most = getattr(self, each.name), 1.0 if each.name.endswith(("share", "error")) else 1000.0
            least = 1.0 if each.name == "away_days" else 0.0
            if not least <= value <= most or (each.name == "away_share" and value > 0.9):
                named = each.name.replace("_", " ")
                raise DataError("spread-out-of-range", name=named, value=value, least=least, most=most)

    def recorded(self, name: str, *whose: Whose) -> Figure | None:
        """What the records say of the first of these of whom they say enough; None where that is nobody, or the figure was asked
        for."""
        own = {} if name in self.asked else self.own.get(name, {})
        return next((own[each] for each in whose if each in own), None)

    def of(self, name: str, *whose: Whose) -> float:
        """A figure as the records have it, else as it was asked for or is usual."""
        figure = self.recorded(name, *whose)
        return getattr(self, name) if figure is None else figure.value

    def usual_lateness(self, supplier: str | None) -> float:
        """Mean of the exponential time, calendar days, by which a supplier's late deliveries come later, before it is rounded up
        to whole days."""
        figure = self.recorded("late_days", *of_supplier(supplier))
        return self.late_days if figure is None else before_rounding(figure.value)

    def without(self, *sources: Source) -> "Spreads":
        return replace(self, off=self.off | set(sources))

    def with_stand_in(self, crew: str) -> "Spreads":
        return replace(self, never_away=self.never_away | {crew})


def of_supplier(supplier: str | None) -> tuple[Whose, ...]:
    """Where a figure of a supplier's deliveries is looked for."""
    return (Whose("supplier", supplier), SUPPLIERS) if supplier else (SUPPLIERS,)


def of_crew(crew: str, lead: bool) -> tuple[Whose, ...]:
    """Where a figure of a crew's absences is looked for."""
    return Whose("crew", crew), CREWS if lead else OTHERS


SHORTEST = 0.1
"""Days: of all late by one day the exponential time is taken for as short as this."""


def before_rounding(whole_days: float) -> float:
    """Mean m of an exponential time that, rounded up to whole days, has this mean: 1 ÷ (1 − e^(−1/m)), as of a geometric time."""
    return max(SHORTEST, -1 / log(1 - 1 / whole_days)) if whole_days > 1 else SHORTEST


def is_share(name: str) -> bool:
    """Whether a figure of `Spreads` is a part of a whole, 0 to 1, else a number of days or looms."""
    return name.endswith(("share", "error", "cv", "variation"))


OF_SOURCE = {
    "work_cv": Source.WORK, "away_share": Source.PEOPLE, "away_days": Source.PEOPLE, "late_share": Source.RECEIPTS,
    "late_days": Source.RECEIPTS, "short_share": Source.RECEIPTS, "fail_share": Source.FAILURES,
    "protected_per_week": Source.ORDERS, "protected_days": Source.ORDERS, "reading_error": Source.BEAM_OUTS,
}  # fmt: skip
"""Figure of `Spreads` → the source of which it says how much it varies."""

STILL = Spreads(off=frozenset(Source))
"""Nothing varies."""
