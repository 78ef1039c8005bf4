"""What signed-off looms taught: the values that were set on them, beside the method's setpoint, never instead of it."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from tracker.commissioning.settings.angles import circular_mean, deviation
from tracker.commissioning.settings.noise import cut_sd, resolution
from tracker.commissioning.settings.series import Series
from tracker.domain.mill import LoomKey
from tracker.domain.words import fold

FEWEST_LOOMS = 5


@dataclass(frozen=True, slots=True)
class Taught:
    """Of one setting and side, machine type, article family (None = unknown) and setpoint."""

    setting: str
    side: str | None
    unit: str | None
    machine_type: str
    family: str | None
    looms: int
    median: float
    spread: float
    """Standard deviation about the median without the largest 5 %."""
    target: float | None
    """The method's."""
    proposed: float | None
    """The median, rounded as the values are, where five looms or more differ from the target by more than the
    repeatability; else None."""


def taught(series: Iterable[Series], signed_off: Mapping[LoomKey, datetime]) -> list[Taught]:
    """From the last value set on each signed-off loom up to its sign-off."""
    kin: dict[tuple, list[tuple[Series, float]]] = defaultdict(list)
    for one in series:
        at_sign_off = one.set_at(signed_off[one.key]) if one.key in signed_off else None
        if at_sign_off and not isinstance(at_sign_off.value, str):
            key = fold(one.setting), fold(one.side or ""), fold(one.machine_type), fold(one.family or ""), one.limits
            kin[key].append((one, at_sign_off.value))
    return [_taught(many) for many in kin.values()]


def _taught(kin: Sequence[tuple[Series, float]]) -> Taught:
    one = kin[0][0]
    values = np.array([value for _, value in kin])
    middle = circular_mean(values) if one.is_angle else 0.0
    apart = deviation(values, middle) if one.is_angle else values
    median = float(np.median(apart))
    spread = float(cut_sd(apart - median))
    median = (middle + median) % 360 if one.is_angle else median
    target = one.limits.target if isinstance(one.limits.target, (int, float)) else None
    return Taught(
        one.setting, one.side, one.unit, one.machine_type, one.family, len(kin), median, spread, target,
        _proposed(one, len(kin), median, target, resolution(values)),
    )  # fmt: skip


def _proposed(one: Series, looms: int, median: float, target: float | None, step: float) -> float | None:
    if target is None or looms < FEWEST_LOOMS or one.repeatability is None:
        return None
    off = float(deviation(median, target)) if one.is_angle else median - target
    if abs(off) <= one.repeatability:
        return None
    return round(round(median / step) * step, 6) if step else median
