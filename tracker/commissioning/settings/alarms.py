"""One review of all series as of one moment: what lies outside, has changed, is out of its family, is unsteady.

MODEL.md 3 says what each kind means and what is held of false alarms.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

import numpy as np

from tracker.commissioning.settings import changed, family, ranks
from tracker.commissioning.settings.angles import circular_mean, deviation, is_within
from tracker.commissioning.settings.changed import Behaviour, SeriesChange
from tracker.commissioning.settings.charts import BASELINE, chart, unsteady
from tracker.commissioning.settings.discovery import RATE, reported
from tracker.commissioning.settings.family import Kin
from tracker.commissioning.settings.noise import reading_sd, resolution
from tracker.commissioning.settings.series import AS_SET, Series, Value, numbers, on_a_line
from tracker.domain.mill import LoomKey
from tracker.domain.words import fold

_DAY_S = 86_400.0


class AlarmKind(StrEnum):
    OUTSIDE = "outside"
    MOVED = "moved"
    DRIFTING = "drifting"
    READ_AGAIN = "read again"
    RISING_OR_FALLING = "rising or falling"
    """Where no repeatability is known."""
    OUT_OF_FAMILY = "out of family"
    UNSTEADY = "family unsteady"


@dataclass(frozen=True, slots=True)
class Alarm:
    kind: AlarmKind
    series: Series
    """For an unsteady family the one that completed the rule."""
    value: Value
    figures: dict[str, float | int | str | None] = field(default_factory=dict)
    """What the words need, in the setting's unit: see each kind's function below."""
    chance: float | None = None
    """p of kinds that are tested; None for a fact."""


@dataclass(frozen=True, slots=True)
class Review:
    alarms: tuple[Alarm, ...]
    series: int
    """How many were looked at."""
    tests: int
    """How many chances the rate is held over."""
    rate: float = RATE


class _Precision(NamedTuple):
    """Of one setting in the whole hall."""

    sd: float
    step: float


class _Stretch(NamedTuple):
    """The numbers of a series since it was set."""

    series: Series
    now: tuple[Value, ...]
    plain: np.ndarray
    line: np.ndarray
    """As `on_a_line`."""


def review(series: Sequence[Series], rate: float = RATE) -> Review:
    """All alarms as of now, the values given; facts first, then by chance. Series of words are only compared with their
    target."""
    stretches = [stretch for one in series if (stretch := _stretch(one))]
    precision = _precision(stretches)
    tested = [*_changed(stretches, precision), *_out_of_family(stretches, precision)]
    shown = reported([1.0 if alarm.chance is None else alarm.chance for alarm in tested], rate)
    told = sorted((a for a, on in zip(tested, shown, strict=True) if on), key=lambda a: a.chance or 0.0)
    alarms = (*_outside(series), *told, *_unsteady([stretch.series for stretch in stretches]))
    return Review(alarms, len(series), len(tested), rate)


def _stretch(one: Series) -> _Stretch | None:
    now = one.since_set
    plain = numbers(now)
    return None if plain is None else _Stretch(one, now, plain, on_a_line(one, plain))


def _outside(series: Sequence[Series]) -> Iterable[Alarm]:
    """Figures: value, target, low, high."""
    for one in series:
        value, limits = one.now.value, one.limits
        if isinstance(value, str) or isinstance(limits.target, str):
            out = limits.target is not None and fold(str(value)) != fold(str(limits.target))
        else:
            out = not _inside(one, value)
        if out:
            figures = {"value": value, "target": limits.target, "low": limits.low, "high": limits.high}
            yield Alarm(AlarmKind.OUTSIDE, one, one.now, figures)


def _inside(one: Series, value: float) -> bool:
    low, high = one.limits.low, one.limits.high
    if one.is_angle and low is not None and high is not None:
        return is_within(value, low, high)
    return (low is None or value >= low) and (high is None or value <= high)


def _precision(stretches: Sequence[_Stretch]) -> dict[str, _Precision]:
    """Folded setting → how finely it is read, over both sides and all looms."""
    by_setting: dict[str, list[_Stretch]] = defaultdict(list)
    for stretch in stretches:
        by_setting[fold(stretch.series.setting)].append(stretch)
    return {name: _precision_of(many) for name, many in by_setting.items()}


def _precision_of(many: Sequence[_Stretch]) -> _Precision:
    step = resolution(np.concatenate([stretch.plain for stretch in many]))
    known = max(filter(None, (stretch.series.repeatability for stretch in many)), default=None)
    successive = np.concatenate([stretch.line[1:] - stretch.line[:-1] for stretch in many])
    return _Precision(reading_sd(known, step, successive), step)


def _changed(stretches: Sequence[_Stretch], precision: dict[str, _Precision]) -> Iterable[Alarm]:
    """One chance per series whose repeatability is known, and one per loom for all its other series together."""
    by_length: dict[int, list[_Stretch]] = defaultdict(list)
    unknown: dict[LoomKey, list[_Stretch]] = defaultdict(list)
    for stretch in stretches:
        if len(stretch.now) > 1 and stretch.series.repeatability:
            by_length[len(stretch.now)].append(stretch)
        elif len(stretch.now) > 1:
            unknown[stretch.series.key].append(stretch)
    for many in by_length.values():
        sd = np.array([precision[fold(stretch.series.setting)].sd for stretch in many])
        least = np.array([stretch.series.repeatability or 0.0 for stretch in many])
        found = changed.changes(np.array([stretch.line for stretch in many]), _days(many), sd, least)
        yield from (_change_alarm(stretch, change) for stretch, change in zip(many, found, strict=True))
    yield from (_rank_alarm(many) for many in unknown.values())


def _days(many: Sequence[_Stretch]) -> np.ndarray:
    seconds = np.array([[value.at.timestamp() for value in stretch.now] for stretch in many])
    return (seconds - seconds[:, :1]) / _DAY_S


def _change_alarm(stretch: _Stretch, change: SeriesChange) -> Alarm:
    """Figures: size (units), repeatability; moved: since (ISO moment); drifting: per_day and days until a limit is met,
    None where none is ahead."""
    one, now = stretch.series, stretch.now
    figures: dict = {
        "size": change.size,
        "repeatability": one.repeatability,
        "readings": len(now),
        "value": now[-1].value,
    }
    if change.course is Behaviour.MOVED:
        figures["since"] = now[change.at].at.isoformat()
    if change.course is Behaviour.DRIFTING:
        figures |= {"per_day": change.slope_per_day, "days_to_limit": _days_to_limit(one, change.slope_per_day)}
    kind = AlarmKind.MOVED if change.course is Behaviour.STEADY else AlarmKind(change.course.value)
    return Alarm(kind, one, now[-1], figures, change.p)


def _days_to_limit(one: Series, per_day: float) -> float | None:
    limit = one.limits.high if per_day > 0 else one.limits.low
    value = one.now.value
    if limit is None or isinstance(value, str):
        return None
    gap = float(deviation(limit, value)) if one.is_angle else limit - value
    return max(0.0, gap / per_day)


def _rank_alarm(many: Sequence[_Stretch]) -> Alarm:
    """A loom's series of unknown repeatability as one chance. Figures: readings, value, size (last less first)."""
    chances = [float(ranks.chances(stretch.line[None, :])[0]) for stretch in many]
    smallest = min(chances)
    one, now, _, line = many[chances.index(smallest)]
    figures = {"readings": len(now), "value": now[-1].value, "size": float(line[-1] - line[0])}
    return Alarm(AlarmKind.RISING_OR_FALLING, one, now[-1], figures, ranks.of_several(smallest, len(many)))


def _out_of_family(stretches: Sequence[_Stretch], precision: dict[str, _Precision]) -> Iterable[Alarm]:
    """Figures: value, median, looms, size (value less median)."""
    series = [stretch.series for stretch in stretches]
    for (setting, _), kin in family.kinship(series).items():
        fine = precision[setting]
        for one, chance in zip(kin, family.chances(kin, fine.sd, fine.step), strict=True):
            yield _family_alarm(series[one.series], one, float(chance))


def _family_alarm(one: Series, kin: Kin, chance: float) -> Alarm:
    enough = abs(kin.deviation) >= (one.repeatability or 0.0)
    figures = {"value": one.now.value, "median": kin.median, "looms": kin.looms, "size": kin.deviation}
    return Alarm(AlarmKind.OUT_OF_FAMILY, one, one.now, figures, chance if enough else 1.0)


def _unsteady(series: Sequence[Series]) -> Iterable[Alarm]:
    """Outside the rate. Figures: rule (Western Electric 1 to 4), centre, low, high, values."""
    for kin in _as_set(series):
        if len(kin) < BASELINE:
            continue
        values = _on_a_line(kin)
        limits = chart(values[:BASELINE])
        if limits is None:
            continue
        for broken in unsteady(values, limits):
            one, value = kin[broken.at]
            figures = {
                "rule": broken.rule, "centre": limits.centre, "low": limits.low, "high": limits.high, "values": len(kin),
            }  # fmt: skip
            yield Alarm(AlarmKind.UNSTEADY, one, value, figures)


def _as_set(series: Sequence[Series]) -> Iterable[list[tuple[Series, Value]]]:
    """Family by family what was set, in order of time."""
    families: dict[tuple, list[tuple[Series, Value]]] = defaultdict(list)
    for one in series:
        if one.family:
            key = fold(one.setting), fold(one.side or ""), fold(one.machine_type), fold(one.family)
            families[key] += [
                (one, value) for value in one.values if value.why in AS_SET and not isinstance(value.value, str)
            ]
    for _, kin in sorted(families.items()):
        yield sorted(kin, key=lambda entry: entry[1].at)


def _on_a_line(kin: Sequence[tuple[Series, Value]]) -> np.ndarray:
    """Values of a family so that neighbours on the circle are neighbours: angles about their circular mean."""
    plain = np.array([value.value for _, value in kin], dtype=float)
    if not kin[0][0].is_angle:
        return plain
    middle = circular_mean(plain)
    return middle + deviation(plain, middle)
