"""Breaks of a shift, as a text: `10:00-10:15, 12:00-12:30`."""

import re
from datetime import datetime, time, timedelta

Break = tuple[time, time]
_SPAN = re.compile(r"(\d{1,2})[:.](\d{2})\s*[-–—]\s*(\d{1,2})[:.](\d{2})")
_DAY = timedelta(days=1)


def read_breaks(text: str | None) -> tuple[Break, ...]:
    """The breaks in order; empty for None. ValueError with the piece that cannot be read."""
    pieces = [piece.strip() for piece in re.split(r"[,;/&+\n]", text or "") if piece.strip()]
    return tuple(_break(piece) for piece in pieces)


def outside_shift(breaks: tuple[Break, ...], shift_start: time, shift_end: time) -> Break | None:
    """The first break that does not lie inside the shift, ends before it begins, or None. Shifts may pass midnight."""
    length = _since(shift_start, shift_end) or _DAY
    for start, end in breaks:
        begins, ends = _since(shift_start, start), _since(shift_start, end) or _DAY
        if not begins < ends <= length:
            return start, end
    return None


def next_day(at: time, shift_start: time) -> bool:
    """Whether a time of a shift lies after the midnight that the shift passes."""
    return at < shift_start


def _break(piece: str) -> Break:
    found = _SPAN.fullmatch(piece)
    if not found or int(found[1]) > 23 or int(found[3]) > 24:
        raise ValueError(piece)
    hours = [int(found[1]), int(found[3]) % 24]
    minutes = [int(found[2]), int(found[4])]
    if max(minutes) > 59 or (int(found[3]) == 24 and minutes[1]):
        raise ValueError(piece)
    return time(hours[0], minutes[0]), time(hours[1], minutes[1])


def _since(start: time, at: time) -> timedelta:
    """From a time of day to the next such time; 0 where they are the same."""
    day = datetime(2000, 1, 1)
    return (datetime.combine(day, at) - datetime.combine(day, start)) % _DAY
