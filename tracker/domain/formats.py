"""Days, moments and numbers as a person reads them, the same in the command and on the screens."""

from collections.abc import Iterable
from datetime import date, datetime, time
from zoneinfo import ZoneInfo


def day(on: date | None) -> str:
    """`Mon 4 Jan 2027`; empty for None."""
    return "" if on is None else f"{on:%a} {on.day} {on:%b %Y}"


def moment(at: datetime | None, zone: ZoneInfo) -> str:
    """`Mon 4 Jan 2027 06:00` in the mill's local time; empty for None."""
    if at is None:
        return ""
    local = at.astimezone(zone)
    return f"{day(local.date())} {local:%H:%M}"


def number(value: float | None, unit: str = "", digits: int = 0) -> str:
    """`12,345 m`; at most `digits` decimals, trailing zeros left out; empty for None."""
    if value is None:
        return ""
    text = f"{value:,.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    text = "0" if text == "-0" else text
    return f"{text} {unit}".rstrip()


def money(amount: float | None, currency: str = "") -> str:
    """`12,345 EUR`, no cents; empty for None."""
    return number(amount, currency)


def shown(value: object) -> str:
    """A value of the mill's own as it would write it: `190`, `0.5`, `yes`, `Mon 4 Jan 2027`, `Mon 4 Jan 2027 06:00`; empty for
    None."""
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case float():
            return f"{value:.10g}"
        case datetime():
            return f"{day(value.date())} {value:%H:%M}"
        case date():
            return day(value)
        case time():
            return f"{value:%H:%M}"
    return str(value)


def span(start: datetime, end: datetime, zone: ZoneInfo) -> str:
    """`Mon 4 Jan 2027 06:00 to 14:30`, the second day written only where it is another."""
    first, last = start.astimezone(zone), end.astimezone(zone)
    if first.date() == last.date():
        return f"{moment(start, zone)} to {last:%H:%M}"
    return f"{moment(start, zone)} to {moment(end, zone)}"


def count(how_many: int, word: str, plural: str = "") -> str:
    """`1 loom`, `1,204 looms`."""
    return f"{how_many:,} {word if how_many == 1 else plural or word + 's'}"


def listed(names: Iterable[object], most: int = 10) -> str:
    """`001, 002 and 3 more`: at most `most` of them by name."""
    texts = [str(name) for name in names]
    return ", ".join(texts[:most]) + (f" and {len(texts) - most:,} more" if len(texts) > most else "")
