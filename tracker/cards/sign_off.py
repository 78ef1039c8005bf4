"""What stands against signing a conversion off: hold points, checks and settings that are open and not waived."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.cards import is_held
from tracker.domain.method import Check, Operation, Setpoint
from tracker.domain.words import fold
from tracker.errors import Message, message

Row = Mapping[str, Any]
"""A row of a table of records: field → value."""
AS_SET = ("set", "adjusted", None, "visit", "read out")
"""What says how a setting stands; `found` says how it stood before."""
Named = tuple[str, str]
"""Setting or check, and side, folded."""


@dataclass(frozen=True, slots=True)
class Recorded:
    """What was written down of a conversion, the oldest first."""

    work: Sequence[Row] = ()
    values: Sequence[Row] = ()
    results: Sequence[Row] = ()
    until: datetime = datetime.max
    """The moment of the sign-off: what was read later tells only of what nobody had read by then."""

    def since(self, begun: datetime) -> "Recorded":
        """Settings and checks that were read since the conversion began (a moment as the rows have them)."""
        values, results = ([row for row in rows if row["at"] >= begun] for rows in (self.values, self.results))
        return Recorded(self.work, values, results, self.until)


def open_points(
    operations: Iterable[Operation], setpoints: Iterable[Setpoint], checks: Iterable[Check], told: Recorded
) -> tuple[Message, ...]:
    """Every point that is open, one message each; hold points first, then checks, then settings."""
    values = _at_sign_off((row for row in told.values if row["why"] in AS_SET), "setting", told.until)
    results = _at_sign_off(told.results, "check", told.until)
    return (
        *_open_operations(operations, told.work),
        *_open_checks(checks, results),
        *_open_settings(setpoints, values),
    )


def _at_sign_off(rows: Iterable[Row], name: str, until: datetime) -> dict[Named, Row]:
    """Of each the last that was read by then; of what nobody had read yet the first after it."""
    found: dict[Named, Row] = {}
    for row in sorted(rows, key=lambda row: row["at"]):
        place = fold(row[name]), fold(row["side"] or "")
        if row["at"] <= until or place not in found:
            found[place] = row
    return found


def _open_operations(operations: Iterable[Operation], work: Iterable[Row]) -> Iterator[Message]:
    """A hold point is done once somebody put a name to it; nothing waives it, nor the card of a conversion that was stopped."""
    rows = list(work)
    given_up = {row["card"] for row in rows if row["card"] and not row["operation"] and row["stage"] == "stopped"}
    done = {
        fold(row["operation"]) for row in rows if row["operation"] and row["done_by"] and row["card"] not in given_up
    }
    for row in operations:
        if row.waivable is False and fold(row.operation) not in done:
            yield message("open-hold-point", operation=row.operation)


def _open_checks(checks: Iterable[Check], results: Mapping[Named, Row]) -> Iterator[Message]:
    for check in checks:
        row = results.get((fold(check.check), fold(check.side or "")))
        result = row["result"] if row else None
        if result is not None and passes(check, result):
            continue
        if row is None or is_held(check) or not is_waived(row):
            yield message(
                "open-check", check=check.check, side=check.side, result=_said(result), held=_yes(is_held(check))
            )


def passes(check: Check, result: Any) -> bool:
    return result is True if check.kind == "yes/no" else _within(result, check.low, check.high)


def _open_settings(setpoints: Iterable[Setpoint], values: Mapping[Named, Row]) -> Iterator[Message]:
    for point in setpoints:
        row = values.get((fold(point.setting), fold(point.side or "")))
        value = row["value"] if row else None
        if (value is not None and meets(point, value)) or (row is not None and is_waived(row)):
            continue
        yield message("open-setting", setting=point.setting, side=point.side, value=_said(value), target=_said(point.target),
                      low=point.low, high=point.high, unit=point.unit)  # fmt: skip


def meets(point: Setpoint, value: Any) -> bool:
    """Whether a value lies within the limits of its setpoint; those of an angle may run through 0. Without limits it must be
    the target."""
    if point.low is None and point.high is None:
        return (
            point.target is None
            or fold(str(value)) == fold(str(point.target))
            or _within(value, point.target, point.target)
        )
    if fold(point.unit or "") == "deg" and point.low is not None and point.high is not None:
        return is_number(value) and (value - point.low) % 360 <= (point.high - point.low) % 360
    return _within(value, point.low, point.high)


def _within(value: Any, low: Any, high: Any) -> bool:
    bounds = all(limit is None or is_number(limit) for limit in (low, high))
    return is_number(value) and bounds and (low is None or value >= low) and (high is None or value <= high)


def is_number(value: Any) -> bool:
    return isinstance(value, float | int) and not isinstance(value, bool)


def is_waived(row: Row) -> bool:
    """A waiver has a reason, a person and a moment."""
    return all(row.get(name) for name in ("waived_because", "waived_by", "waived_at"))


def _said(value: Any) -> object:
    if isinstance(value, bool):
        return message("word-yes" if value else "word-no")
    return f"{value:g}" if isinstance(value, float) else None if value is None else str(value)


def _yes(is_so: bool) -> str:
    return "yes" if is_so else "no"
