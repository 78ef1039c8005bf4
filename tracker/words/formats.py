"""Days, moments and numbers in the cells of tables and on the screens: as `values` writes them, empty for None."""

from collections.abc import Iterable
from datetime import date, datetime, time
from zoneinfo import ZoneInfo

from tracker.domain.plan import Booking
from tracker.errors import Message
from tracker.words import Speaker, values


def day(on: date | None, language: str = "en") -> str:
    """`Mon 4 Jan 2027`; empty for None."""
    return "" if on is None else values.day(on, language)


def month(named: str, language: str = "en") -> str:
    """`Jan 2027` of `2027-01`."""
    return values.month(date.fromisoformat(f"{named}-01"), language)


def moment(at: datetime | None, zone: ZoneInfo, language: str = "en") -> str:
    """`Mon 4 Jan 2027 06:00` in the mill's local time; empty for None."""
    return "" if at is None else values.moment(at, zone, language)


def number(value: float | None, unit: str = "", digits: int = 0, language: str = "en") -> str:
    """`12,345 m`; at most `digits` decimals, trailing zeros left out; empty for None."""
    return "" if value is None else f"{values.number(value, digits, language)} {unit}".rstrip()


def decimal(value: float, digits: int, language: str = "en") -> str:
    """`12,345.50`: exactly so many decimals."""
    return values.decimal(value, digits, language)


def money(amount: float | None, currency: str = "", language: str = "en") -> str:
    """`12,345 EUR`, no cents; empty for None."""
    return number(amount, currency, language=language)


def share(fraction: float | None, language: str = "en") -> str:
    """`87 %` of 0.87; empty for None."""
    return "" if fraction is None else number(100 * fraction, "%", language=language)


def shown(value: object, language: str = "en") -> str:
    """A value of the mill's own as it would write it: `190`, `0.5`, `yes`, `Mon 4 Jan 2027`, `Mon 4 Jan 2027 06:00`; empty for
    None."""
    match value:
        case None:
            return ""
        case bool():
            return _said("word-yes" if value else "word-no", language)
        case float():
            return values.own(value, language)
        case datetime():
            return values.moment(value, None, language)
        case date():
            return values.day(value, language)
        case time():
            return values.clock(value, language)
    return str(value)


def span(start: datetime, end: datetime, zone: ZoneInfo, language: str = "en") -> str:
    """`Mon 4 Jan 2027 06:00 to 14:30`, the second day written only where it is another."""
    last = end.astimezone(zone)
    same = start.astimezone(zone).date() == last.date()
    until = values.clock(last.time(), language) if same else moment(end, zone, language)
    return _said("from-to", language, start=moment(start, zone, language), end=until)


def who_and_when(booking: Booking, zone: ZoneInfo, language: str = "en") -> str:
    """`Fitters 1 07:00-12:30, Tue 06:00-06:30; electrician 08:30-12:30; 2 × hoist 07:00-07:30`: crews, then other trades and
    tools, with the day of the week where it is another than that of the start. Empty where nobody is named."""
    spans: dict[str, list[str]] = {}
    turns = [(turn.crew, 1, turn.start, turn.end) for turn in booking.crews]
    for who, amount, start, end in [
        *turns,
        *((need.what, need.amount, need.start, need.end) for need in booking.needs),
    ]:
        begin, finish = start.astimezone(zone), end.astimezone(zone)
        other = begin.date() != booking.start.astimezone(zone).date()
        weekday = f"{values.weekday(begin.date(), language)} " if other else ""
        hours = f"{weekday}{values.clock(begin.time(), language)}-{values.clock(finish.time(), language)}"
        spans.setdefault(f"{amount} × {who}" if amount > 1 else who, []).append(hours)
    return "; ".join(f"{who} {', '.join(hours)}" for who, hours in spans.items())


def count(how_many: int, code: str, language: str = "en") -> str:
    """`1 loom`, `1,204 looms`: by a code of `counts.ftl`, whose language knows its plurals."""
    return _said(code, language, n=how_many)


def listed(names: Iterable[object], most: int = 10, language: str = "en") -> str:
    """`001, 002 and 3 more`: at most `most` of them by name."""
    return values.listed(map(str, names), _said("and-more", language), most, language)


def _said(code: str, language: str, **params: object) -> str:
    return Speaker(language).say(Message(code, params))
