"""What varies in a hall, and how much (MODEL.md, section 1)."""

from dataclasses import dataclass, fields, replace
from enum import StrEnum

from tracker.domain.work import USUAL_VARIATION
from tracker.errors import DataError


class Source(StrEnum):
    BEAM_OUTS = "beam-outs"
    WORK = "work"
    PEOPLE = "people"
    RECEIPTS = "receipts"
    FAILURES = "failures"
    ORDERS = "orders"


@dataclass(frozen=True, slots=True)
class Spreads:
    """How much each source varies. Shares are 0 to 1, days and rates ≥ 0; DataError beyond. Defaults are the trade's usual
    figures."""

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

    def __post_init__(self) -> None:
        for each in fields(self):
            if each.name in ("off", "never_away"):
                continue
            value, most = getattr(self, each.name), 1.0 if each.name.endswith(("share", "error")) else 1000.0
            least = 1.0 if each.name == "away_days" else 0.0
            if not least <= value <= most or (each.name == "away_share" and value > 0.9):
                named = each.name.replace("_", " ")
                raise DataError("spread-out-of-range", name=named, value=value, least=least, most=most)

    def without(self, *sources: Source) -> "Spreads":
        return replace(self, off=self.off | set(sources))

    def with_stand_in(self, crew: str) -> "Spreads":
        return replace(self, never_away=self.never_away | {crew})


def is_share(name: str) -> bool:
    """Whether a figure of `Spreads` is a part of a whole, 0 to 1, else a number of days or looms."""
    return name.endswith(("share", "error", "cv"))


OF_SOURCE = {
    "work_cv": Source.WORK, "away_share": Source.PEOPLE, "away_days": Source.PEOPLE, "late_share": Source.RECEIPTS,
    "late_days": Source.RECEIPTS, "short_share": Source.RECEIPTS, "fail_share": Source.FAILURES,
    "protected_per_week": Source.ORDERS, "protected_days": Source.ORDERS, "reading_error": Source.BEAM_OUTS,
}  # fmt: skip
"""Figure of `Spreads` → the source of which it says how much it varies."""

STILL = Spreads(off=frozenset(Source))
"""Nothing varies."""
