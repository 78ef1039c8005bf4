"""Three-point estimates (PERT): expectation, variance and range of work from low, likely and high.

Malcolm, Roseboom, Clark and Fazar (1959): expectation (a + 4m + b) / 6, variance ((b − a) / 6)². Work done one after
the other adds expectations and variances; the sum is taken as normal.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt
from statistics import NormalDist

from tracker.domain.method import Operation


@dataclass(frozen=True, slots=True)
class Estimate:
    """Expected value and variance of a time (any unit, and its square)."""

    expected: float
    variance: float = 0.0

    def __add__(self, other: "Estimate") -> "Estimate":
        return Estimate(self.expected + other.expected, self.variance + other.variance)

    def __mul__(self, factor: float) -> "Estimate":
        return Estimate(self.expected * factor, self.variance * factor**2)

    def quantile(self, share: float) -> float:
        """The time not exceeded with probability `share` (0 to 1, ends excluded); never below 0."""
        if self.variance == 0:
            return self.expected
        return max(0.0, NormalDist(self.expected, sqrt(self.variance)).inv_cdf(share))

    def within(self, limit: float) -> float:
        """Probability that the time is at most `limit`."""
        if self.variance == 0:
            return float(self.expected <= limit)
        return NormalDist(self.expected, sqrt(self.variance)).cdf(limit)


def three_point(low: float, likely: float, high: float) -> Estimate:
    """The estimate of three figures in the same unit, low ≤ likely ≤ high."""
    return Estimate((low + 4 * likely + high) / 6, ((high - low) / 6) ** 2)


def total(estimates: Iterable[Estimate]) -> Estimate:
    return sum(estimates, Estimate(0.0))


def operation_minutes(operation: Operation) -> Estimate:
    """Elapsed normal minutes of an operation: the three-point estimate where the method gives low and high and the
    operation learns; one that does not takes what it takes."""
    if not operation.learns or operation.minutes_low is None or operation.minutes_high is None:
        return Estimate(operation.minutes)
    return three_point(operation.minutes_low, operation.minutes, operation.minutes_high)
