"""A setting over time: one series per loom, side and setting, only ever added to."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

import numpy as np

from tracker.commissioning.settings.angles import circular_mean, deviation, is_angle
from tracker.domain.mill import LoomKey


class Occasion(StrEnum):
    """Why a value was read."""

    FOUND = "found"
    SET = "set"
    ADJUSTED = "adjusted"
    VISIT = "visit"
    READ_OUT = "read out"


AS_SET = (Occasion.SET, Occasion.ADJUSTED)
"""Somebody turned it, so that the series starts again with this value."""


@dataclass(frozen=True, slots=True)
class Value:
    value: float | str
    """A number in the setting's unit, or a word: `clockwise`, a checksum."""
    at: datetime
    why: Occasion = Occasion.READ_OUT
    article: str | None = None
    """What was woven; None = not said, which counts as the article before."""


@dataclass(frozen=True, slots=True)
class Limits:
    """The setpoint in force for a loom's method version and article."""

    target: float | str | None = None
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class Series:
    """`values` in order of time, at least one; `repeatability` in the setting's unit, above 0: two readings of one thing
    differ by less in 95 % of cases (ISO 5725); None where nobody knows."""

    key: LoomKey
    setting: str
    side: str | None
    values: tuple[Value, ...]
    unit: str | None = None
    limits: Limits = Limits()
    repeatability: float | None = None
    machine_type: str = ""
    family: str | None = None
    """Group of articles that are set alike; None = not known."""

    @property
    def is_angle(self) -> bool:
        return is_angle(self.unit)

    @property
    def now(self) -> Value:
        return self.values[-1]

    @property
    def found(self) -> Value | None:
        return next((value for value in self.values if value.why is Occasion.FOUND), None)

    def set_at(self, moment: datetime | None) -> Value | None:
        """The last value that somebody set up to a moment (sign-off); None = the last of all."""
        past = (v for v in reversed(self.values) if v.why in AS_SET and (moment is None or v.at <= moment))
        return next(past, None)

    @property
    def since_set(self) -> tuple[Value, ...]:
        """The values since somebody last turned it or another article came, with that one."""
        start, article, before = 0, None, None
        for i, value in enumerate(self.values):
            if value.why in AS_SET or before is Occasion.FOUND or None is not article != value.article is not None:
                start = i  # what was found before the conversion is another device
            before, article = value.why, value.article or article
        return self.values[start:]


def numbers(values: Iterable[Value]) -> np.ndarray | None:
    """The values as an array; None where one of them is a word."""
    plain = np.array([value.value for value in values])
    return plain.astype(float) if plain.dtype.kind in "fi" else None


def on_a_line(series: Series, plain: np.ndarray) -> np.ndarray:
    """Values as differences that can be added: an angle from its target, else from the circular mean; others as they are."""
    if not series.is_angle:
        return plain
    target = series.limits.target
    return deviation(plain, target if isinstance(target, (int, float)) else circular_mean(plain))
