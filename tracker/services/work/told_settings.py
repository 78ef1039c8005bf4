"""Each alarm of a setting with its figures, as a message."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from tracker.commissioning.settings.alarms import Alarm, AlarmKind
from tracker.commissioning.settings.quiet import QuietAlarm
from tracker.errors import Message, message

_CODES = {
    AlarmKind.MOVED: "setting-moved", AlarmKind.DRIFTING: "setting-drifting", AlarmKind.READ_AGAIN: "setting-read-again",
    AlarmKind.RISING_OR_FALLING: "setting-rising-or-falling", AlarmKind.OUT_OF_FAMILY: "setting-out-of-family",
    AlarmKind.UNSTEADY: "setting-unsteady",
}  # fmt: skip
_DECIMALS = 2
"""Of figures that are worked out; values that were read are told as they are."""


def alarm_message(alarm: Alarm) -> Message:
    """Parameters: loom, setting, side, unit and the kind's own figures."""
    one = alarm.series
    where: dict[str, Any] = {"loom": str(one.key), "setting": one.setting, "side": one.side, "unit": one.unit}
    if alarm.kind is AlarmKind.OUTSIDE:
        return _outside(where, alarm.figures)
    figures = {name: _rounded(name, figure) for name, figure in alarm.figures.items()}
    return message(_CODES[alarm.kind], **where, **figures)


def quiet_message(quiet: QuietAlarm) -> Message:
    """Parameters: alarm (a message), at, who, why."""
    seen = quiet.seen
    return message("alarm-seen", alarm=alarm_message(quiet.alarm), at=seen.at, who=seen.who, why=seen.why)


def _outside(where: Mapping[str, Any], figures: Mapping[str, Any]) -> Message:
    value, target, low, high = (figures[name] for name in ("value", "target", "low", "high"))
    if isinstance(value, str) or isinstance(target, str):
        return message("setting-not-target", **where, value=value, target=target)
    return message("setting-outside", **where, value=value, limits=_limits(low, high, where["unit"]))


def _limits(low: float | None, high: float | None, unit: str | None) -> Message:
    if high is None:
        return message("limits-least", low=low, unit=unit)
    if low is None:
        return message("limits-most", high=high, unit=unit)
    return message("limits-between", low=low, high=high, unit=unit)


def _rounded(name: str, figure: Any) -> Any:
    if name == "since":
        return datetime.fromisoformat(figure)
    if name == "days_to_limit" and figure is not None:
        return round(figure)
    return round(figure, _DECIMALS) if isinstance(figure, float) and name != "value" else figure
