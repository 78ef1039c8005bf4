"""What the converted looms save a month by what was measured, beside what was claimed, and in how many months it has paid
(MODEL.md 5.5). The two are never mixed."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tracker.commissioning.worth.plain import Estimated
from tracker.commissioning.worth.stepped import Stepped
from tracker.domain.mill import LoomKey

MONTH_DAYS = 365.25 / 12


@dataclass(frozen=True, slots=True)
class Converted:
    """A converted loom that has figures since."""

    key: LoomKey
    picks_per_month: float
    claimed_per_day: float | None
    """As the loom list has it."""
    cost: float
    """Of its conversion: parts, labour and the hours that it stood, in the currency."""
    weft_tex: float | None = None
    weft_price_per_kg: float | None = None
    contribution_per_h: float | None = None
    leno_kg_per_month: float | None = None
    """Used by the leno edges of both sides now. What was used before is not recorded, so that it is no saving."""


@dataclass(frozen=True, slots=True)
class Savings:
    """Of all converted looms together, a month each; None where it cannot be worked out. Less is saved where an amount is
    negative."""

    looms: int
    picks_per_month: float
    stops: Estimated | None
    hours: Estimated | None
    """That the looms stand less."""
    hours_money: Estimated | None
    weft_kg: Estimated | None
    weft_money: Estimated | None
    money: Estimated | None
    """Both together, their errors taken as independent."""
    leno_kg: float | None
    claimed: float
    """What the loom list says of the same looms."""
    unclaimed: int
    """Looms of which it says nothing."""
    cost: float
    payback: Estimated | None
    """Months; the far end is infinite where nothing may be saved at all. None where the middle saves nothing."""

    @property
    def share(self) -> float | None:
        """Measured ÷ claimed."""
        return self.money.estimate / self.claimed if self.money and self.claimed else None


def savings(
    looms: Sequence[Converted], stops: Stepped | None, width: Stepped | None, minutes_per_stop: float
) -> Savings | None:
    """`stops` of all causes, `width` in mm of both sides; None where their verdict cannot be told. None without looms."""
    if not looms:
        return None
    picks = sum(loom.picks_per_month for loom in looms)
    fewer = _fewer_stops(stops, picks) if stops else None
    hours = _times(fewer, minutes_per_stop / 60)
    narrower = Estimated(-width.told.estimate, -width.told.high, -width.told.low) if width else None
    hours_money = _times(hours, _weighted(looms, "contribution_per_h"))
    weft_kg = _times(narrower, _weft(looms, priced=False))
    weft_money = _times(narrower, _weft(looms, priced=True))
    money = _together([one for one in (hours_money, weft_money) if one])
    cost, leno = sum(loom.cost for loom in looms), [loom.leno_kg_per_month for loom in looms]
    return Savings(
        len(looms), picks, fewer, hours, hours_money, weft_kg, weft_money, money,
        None if None in leno else sum(kg or 0.0 for kg in leno),
        sum(loom.claimed_per_day or 0.0 for loom in looms) * MONTH_DAYS,
        sum(loom.claimed_per_day is None for loom in looms), cost, payback(cost, money),
    )  # fmt: skip


def payback(cost: float, money: Estimated | None) -> Estimated | None:
    """Months until `cost` has come in by `money` a month."""
    if money is None or money.estimate <= 0:
        return None
    return Estimated(cost / money.estimate, cost / money.high, cost / money.low if money.low > 0 else np.inf)


def _fewer_stops(stops: Stepped, picks: float) -> Estimated:
    """Stops expected a month at those picks, less those seen."""
    expected, told = stops.expected / stops.picks * picks, stops.told
    return Estimated(*(expected * (1 - ratio) for ratio in (told.estimate, told.high, told.low)))


def _weft(looms: Sequence[Converted], priced: bool) -> float | None:
    """Kilograms (or their price) a month for a millimetre of waste width: picks × m × tex / 10⁶."""
    if any(loom.weft_tex is None or (priced and loom.weft_price_per_kg is None) for loom in looms):
        return None
    price = [(loom.weft_price_per_kg or 0.0) if priced else 1.0 for loom in looms]
    return sum(o.picks_per_month * 1e-3 * (o.weft_tex or 0.0) / 1e6 * p for o, p in zip(looms, price, strict=True))


def _weighted(looms: Sequence[Converted], name: str) -> float | None:
    """The mean over the picks that the looms weave; None where a loom lacks it."""
    values = [getattr(loom, name) for loom in looms]
    if None in values:
        return None
    return float(np.average(values, weights=[max(loom.picks_per_month, 1e-9) for loom in looms]))


def _times(amount: Estimated | None, factor: float | None) -> Estimated | None:
    if amount is None or factor is None:
        return None
    return Estimated(amount.estimate * factor, amount.low * factor, amount.high * factor)


def _together(parts: Sequence[Estimated]) -> Estimated | None:
    if not parts:
        return None
    middle = sum(one.estimate for one in parts)
    below = float(np.hypot.reduce([one.estimate - one.low for one in parts]))
    above = float(np.hypot.reduce([one.high - one.estimate for one in parts]))
    return Estimated(middle, middle - below, middle + above)
