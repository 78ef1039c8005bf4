"""Figures of a row that cannot be: minutes, heads, quantities, three-point estimates, limits."""

from collections.abc import Iterator
from math import isfinite
from typing import Any, TypeGuard

from tracker.domain.findings import Finding, Severity
from tracker.scope.review.subject import AnyRow, Subject, found


def impossible(subject: Subject) -> Iterator[Finding]:
    """Minutes, heads and quantities that are no number, below 0, or (a quantity) nothing."""
    for row in subject.method.operations:
        for field in ("minutes", "minutes_low", "minutes_high"):
            yield from _number(row, field, needed=field == "minutes")
        yield from _number(row, "heads", needed=True)
    for line in subject.method.kit_lines:
        yield from _number(line, "quantity", needed=True, above=True)


def three_points(subject: Subject) -> Iterator[Finding]:
    for row in subject.method.operations:
        low, likely, high = row.minutes_low, row.minutes, row.minutes_high
        if (low is None) != (high is None):
            field = "minutes_high" if high is None else "minutes_low"
            yield found("three-point-incomplete", Severity.REFUSED, row, field,
                        f"Step {row.step} {row.operation}: a three-point estimate needs both low and high.",
                        "Fill in the other one, or empty both.")  # fmt: skip
        elif _numeric(low) and _numeric(likely) and _numeric(high) and not low <= likely <= high:
            yield found("three-point-order", Severity.REFUSED, row, "minutes_low",
                        f"Step {row.step} {row.operation}: low {low:g}, likely {likely:g}, high {high:g} min.",
                        "They must rise.", low)  # fmt: skip


def limits(subject: Subject) -> Iterator[Finding]:
    for row in (*subject.method.setpoints, *subject.method.checks):
        name = getattr(row, "setting", None) or getattr(row, "check", "")
        target = getattr(row, "target", None)
        if _numeric(row.low) and _numeric(row.high) and row.low > row.high:
            yield found("low-above-high", Severity.REFUSED, row, "low", f"{name}: low {row.low:g} is above high {row.high:g}.",
                        "Exchange them.", row.low)  # fmt: skip
        elif _numeric(target) and (
            (_numeric(row.low) and target < row.low) or (_numeric(row.high) and target > row.high)
        ):
            yield found("target-outside-limits", Severity.REFUSED, row, "target",
                        f"{name}: the target {target:g} lies outside {_span(row.low, row.high)}.",
                        "Change the target or the limits.", target)  # fmt: skip


def _number(row: AnyRow, field: str, needed: bool, above: bool = False) -> Iterator[Finding]:
    value = getattr(row, field)
    if value is None and not needed:
        return
    if not _numeric(value) or value < 0 or (above and value == 0):
        least = "a number above 0" if above else "a number, 0 or more"
        yield found("impossible-figure", Severity.REFUSED, row, field, f"{field.replace('_', ' ')} is {value!r}.",
                    f"It must be {least}.", value)  # fmt: skip


def _numeric(value: Any) -> TypeGuard[float]:
    return isinstance(value, int | float) and not isinstance(value, bool) and isfinite(value)


def _span(low: float | None, high: float | None) -> str:
    return f"{'…' if low is None else f'{low:g}'} to {'…' if high is None else f'{high:g}'}"
