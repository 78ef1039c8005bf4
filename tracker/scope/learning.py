"""The unit learning curve, with a floor, and its fit to recorded conversions.

Crawford's unit curve: the n-th conversion takes n^b of the first one's time, b = log2(rate), so that each doubling takes
`rate` of the time. (Wright's curve says the same of the average of the first n; the two are never mixed here.)
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, log2
from statistics import fmean

FEWEST_TO_FIT = 5
"""Recorded conversions of a machine type below which its curve is not fitted."""


@dataclass(frozen=True, slots=True)
class Curve:
    rate: float
    """0 to 1: each doubling takes this share of the time."""
    floor: float = 0.0
    """0 to 1: the curve never falls below this share of the first."""
    level: float = 1.0
    """The first conversion's time as a share of the method's minutes; 1 where it is not fitted."""
    fitted: bool = False

    @property
    def source(self) -> str:
        return "fitted" if self.fitted else "standard"

    def unit(self, n: int) -> float:
        """Time of the n-th conversion (n ≥ 1) as a share of the first."""
        return max(self.floor, n ** log2(self.rate))

    def factor(self, n: int) -> float:
        """Time of the n-th conversion (n ≥ 1) as a share of the method's minutes."""
        return self.level * self.unit(n)

    def total(self, n: int) -> float:
        """Time of the first n conversions together, as a multiple of the first."""
        return sum(self.unit(i) for i in range(1, n + 1))


def fit_curve(standard: Curve, numbers: Sequence[int], ratios: Sequence[float]) -> Curve:
    """The curve of recorded conversions: least squares of ln(ratio) on ln(n).

    `numbers`: which conversion of its crew and type each was (n ≥ 1); `ratios`: recorded time ÷ the method's minutes,
    above 0. The standard curve stays where there are fewer than five. Where all have the same n there is nothing to fit
    the rate to: the standard rate stays and the level alone is fitted. A rising line counts as no learning (rate 1).
    """
    if len(numbers) < FEWEST_TO_FIT:
        return standard
    x, y = [log(n) for n in numbers], [log(ratio) for ratio in ratios]
    middle = fmean(x)
    spread = sum((value - middle) ** 2 for value in x)
    if spread == 0:
        level = exp(fmean(y) - log(standard.unit(numbers[0])))
        return Curve(standard.rate, standard.floor, level, fitted=True)
    slope = min(0.0, sum((a - middle) * b for a, b in zip(x, y, strict=True)) / spread)
    return Curve(2**slope, standard.floor, exp(fmean(y) - slope * middle), fitted=True)
