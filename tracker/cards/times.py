"""Minutes of a conversion from the few times that a crew writes down, shared over its operations."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from tracker.domain.calendars import Calendar
from tracker.domain.method import Operation
from tracker.domain.words import fold

ON_LOOM = "on loom"


@dataclass(frozen=True, slots=True)
class Times:
    """When a conversion began and was over (UTC), and for how long the loom was meanwhile in other hands."""

    started_at: datetime
    over_at: datetime
    """At speed, else the first pick, else the end."""
    pause_h: float = 0.0
    """The ordinary change between its two parts, as booked, in hours of the crew."""


def worked_min(times: Times, crew: Calendar) -> float:
    """Minutes on the loom: the hours that the crew worked between start and end, less the pause; where it was not at work by
    its calendar, all of the time."""
    span_h = crew.hours_between(times.started_at, times.over_at)
    if span_h <= 0:
        span_h = (times.over_at - times.started_at).total_seconds() / 3600
    return max(0.0, span_h - times.pause_h) * 60


def shared(
    total_min: float, operations: Iterable[Operation], expected_min: Mapping[str, float], taken: Mapping[str, float]
) -> dict[str, float]:
    """Operation on the loom → its minutes out of `total_min`, for those without minutes of their own in `taken`.

    What was taken stands; of the rest an operation that does not learn gets what the method expects (`expected_min` by folded
    name), and those that learn share what is left by the method's minutes. Rows side by side pass together: a step counts with
    its longest row. Where too little is left for that, all share it alike.
    """
    steps = _steps(row for row in operations if row.place == ON_LOOM)
    told = {fold(name): minutes for name, minutes in taken.items()}
    open_steps = [rows for rows in steps if not any(fold(row.operation) in told for row in rows)]
    left = total_min - sum(max(told.get(fold(row.operation), 0.0) for row in rows) for rows in steps)
    if left <= 0 or not open_steps:
        return {}
    fixed = {
        i: _longest(rows, expected_min)
        for i, rows in enumerate(open_steps)
        if not _longest_row(rows, expected_min).learns
    }
    learning = [i for i in range(len(open_steps)) if i not in fixed]
    to_learning = left - sum(fixed.values())
    if to_learning <= 0 or not learning:
        fixed, learning, to_learning = {}, list(range(len(open_steps))), left
    weights = {i: _longest(open_steps[i], expected_min) for i in learning}
    all_of_them = sum(weights.values())
    minutes = fixed | {i: to_learning * weights[i] / all_of_them if all_of_them else 0.0 for i in learning}
    return {
        row.operation: minutes[i] * expected_min[fold(row.operation)] / longest
        for i, rows in enumerate(open_steps)
        if (longest := _longest(rows, expected_min)) > 0
        for row in rows
    }


def _steps(operations: Iterable[Operation]) -> list[list[Operation]]:
    steps: dict[int, list[Operation]] = {}
    for row in operations:
        steps.setdefault(row.step, []).append(row)
    return [steps[step] for step in sorted(steps)]


def _longest_row(rows: list[Operation], expected_min: Mapping[str, float]) -> Operation:
    return max(rows, key=lambda row: expected_min[fold(row.operation)])


def _longest(rows: list[Operation], expected_min: Mapping[str, float]) -> float:
    return expected_min[fold(_longest_row(rows, expected_min).operation)]
