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
            yield found("three-point-incomplete", Severity.REFUSED, row, field, step=row.step, operation=row.operation)
        elif _numeric(low) and _numeric(likely) and _numeric(high) and not low <= likely <= high:
            yield found("three-point-order", Severity.REFUSED, row, "minutes_low", low, step=row.step,
                        operation=row.operation, low=low, likely=likely, high=high)  # fmt: skip


def limits(subject: Subject) -> Iterator[Finding]:
    for row in (*subject.method.setpoints, *subject.method.checks):
        name = getattr(row, "setting", None) or getattr(row, "check", "")
        target = getattr(row, "target", None)
        if _numeric(row.low) and _numeric(row.high) and row.low > row.high:
            yield found("low-above-high", Severity.REFUSED, row, "low", row.low, name=name, low=row.low, high=row.high)
        elif _numeric(target) and (
            (_numeric(row.low) and target < row.low) or (_numeric(row.high) and target > row.high)
        ):
            yield found("target-outside-limits", Severity.REFUSED, row, "target", target, name=name, target=target,
                        low=row.low, high=row.high)  # fmt: skip


def _number(row: AnyRow, field: str, needed: bool, above: bool = False) -> Iterator[Finding]:
    value = getattr(row, field)
    if value is None and not needed:
        return
    if not _numeric(value) or value < 0 or (above and value == 0):
        yield found("impossible-figure", Severity.REFUSED, row, field, value, field=field.replace("_", " "),
                    value=repr(value), how="above" if above else "least")  # fmt: skip


def _numeric(value: Any) -> TypeGuard[float]:
    return isinstance(value, int | float) and not isinstance(value, bool) and isfinite(value)
