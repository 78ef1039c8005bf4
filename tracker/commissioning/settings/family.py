"""Looms that are set alike, and who is out of the family (MODEL.md 3.3)."""

from collections import defaultdict
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from tracker.commissioning.settings.angles import circular_mean, deviation
from tracker.commissioning.settings.noise import cut_sd
from tracker.commissioning.settings.series import Series
from tracker.domain.words import fold

FEWEST_LOOMS = 5
_DRAWS = 2_000_000


class Kin(NamedTuple):
    """Where a series stands in its family."""

    series: int
    """Index in the series given."""
    median: float
    looms: int
    deviation: float
    """Units: the last value less the median, the shorter way round for an angle."""


def kinship(series: Sequence[Series]) -> dict[tuple[str, str], list[Kin]]:
    """Setting and side → its series that have a family of five looms or more, family by family. Looms with another setpoint are
    meant to be set otherwise, so they are no family."""
    families: dict[tuple, list[int]] = defaultdict(list)
    for i, one in enumerate(series):
        if one.family and not isinstance(one.now.value, str):
            side = fold(one.side or "")
            families[fold(one.setting), side, fold(one.machine_type), fold(one.family), str(one.limits)].append(i)
    found: dict[tuple[str, str], list[Kin]] = defaultdict(list)
    for (setting, side, *_), members in sorted(families.items()):
        if len(members) >= FEWEST_LOOMS:
            found[setting, side] += _family([series[i] for i in members], members)
    return found


def _family(series: Sequence[Series], members: Sequence[int]) -> list[Kin]:
    last = np.array([one.now.value for one in series], dtype=float)
    if series[0].is_angle:
        middle = circular_mean(last)
        apart = deviation(last, middle)
        median = float(np.median(apart))
        return [
            Kin(i, (middle + median) % 360, len(members), float(d - median))
            for i, d in zip(members, apart, strict=True)
        ]
    median = float(np.median(last))
    return [Kin(i, median, len(members), float(x - median)) for i, x in zip(members, last, strict=True)]


def chances(kin: Sequence[Kin], least_sd: float, step: float, seed: int = 1) -> np.ndarray:
    """For each of one setting and side the chance of lying as far off in a hall where all are set alike.

    All deviations share one scale, the standard deviation without the largest 5 %, not below that of one reading
    (`least_sd`); a rounding step is taken off each. The chance is the share of `2,000,000` drawn normal deviations, in
    families of the same sizes and over the same scale, that lie farther.
    """
    apart = np.array([one.deviation for one in kin])
    scale = max(float(cut_sd(apart)), least_sd)
    if not scale:
        return np.ones(len(kin))
    far = np.maximum(0.0, np.abs(apart) - step) / scale
    sizes = np.array([one.looms for one in kin])
    found = np.empty(len(kin))
    for size, drawn in _null(_sizes(kin), seed).items():
        asked = sizes == size
        found[asked] = (1 + len(drawn) - np.searchsorted(drawn, far[asked].astype(drawn.dtype))) / (1 + len(drawn))
    return found


def _sizes(kin: Sequence[Kin]) -> tuple[int, ...]:
    """How many looms each family has, biggest first."""
    many: dict[int, int] = defaultdict(int)
    for one in kin:
        many[one.looms] += 1
    return tuple(size for size in sorted(many, reverse=True) for _ in range(many[size] // size))


@lru_cache(maxsize=64)
def _null(sizes: tuple[int, ...], seed: int) -> dict[int, np.ndarray]:
    """Family size → sorted |deviation| ÷ scale of drawn halls."""
    halls = max(200, _DRAWS // sum(sizes))
    rng = np.random.default_rng(seed)
    parts = []
    for size in sizes:
        drawn = rng.standard_normal((halls, size), dtype=np.float32)
        parts.append(drawn - np.median(drawn, axis=1, keepdims=True))
    scale = cut_sd(np.concatenate(parts, axis=1))[:, None]
    found: dict[int, list[np.ndarray]] = defaultdict(list)
    for size, part in zip(sizes, parts, strict=True):
        found[size].append(np.abs(part / scale).ravel())
    return {size: np.sort(np.concatenate(many)) for size, many in found.items()}
