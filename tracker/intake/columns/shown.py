"""What a cell shows for a number or date under its number format, where that is what the mill means: loom 7 as 007."""

import re
from datetime import date, datetime, time

_PIECE = re.compile(r'"([^"]*)"|\\(.)|\[[^\]]*\]|[_*].|([0#?.,]+)|(E[+-]|%|@|General)|(.)', re.IGNORECASE | re.DOTALL)


def plain_number(value: float | int) -> str:
    """190.0 → `190`, 1.1 → `1.1`."""
    if isinstance(value, float) and value == int(value) and abs(value) < 1e15:
        return str(int(value))
    return repr(value) if isinstance(value, float) else str(value)


def is_scientific(code: str) -> bool:
    return bool(re.search(r"0E[+-]", re.sub(r'"[^"]*"', "", code), re.IGNORECASE))


def shown_number(value: float | int, code: str) -> str:
    """The number as its format shows it, as far as formats of identifiers go: padding, literals, digits in groups."""
    section = code.split(";")[0] if code else ""
    pieces = _PIECE.findall(section)
    slots = sum(len(re.sub(r"[.,]", "", digits)) for _, _, digits, _, _ in pieces)
    if not slots or value < 0 or any(special for _, _, _, special, _ in pieces):
        return plain_number(value)
    decimals = next((len(d.rpartition(".")[2]) for _, _, d, _, _ in pieces if "." in d), 0)
    if not decimals and value != int(value):
        return plain_number(value)
    digits = f"{value:.{decimals}f}".replace(".", "")
    fixed = sum(re.sub(r"[.,#?]", "", d).count("0") for _, _, d, _, _ in pieces)
    digits = digits.rjust(max(fixed, 1), "0")
    return _filled(pieces, digits, slots)


def _filled(pieces: list[tuple[str, str, str, str, str]], digits: str, slots: int) -> str:
    """The literals with the digits in their places; digits to spare stand at the first place."""
    spare = max(0, len(digits) - slots)
    empty = max(0, slots - len(digits))
    out, first = [], True
    rest = iter(digits)
    for quoted, escaped, places, _, literal in pieces:
        if not places:
            out.append(quoted or escaped or literal)
            continue
        for place in places:
            if place == ".":
                out.append(".")
            elif place != ",":
                if first:
                    out.extend(next(rest) for _ in range(spare))
                    first = False
                if empty:
                    empty -= 1
                else:
                    out.append(next(rest, ""))
    return "".join(out).strip()


def shown_literal(code: str) -> str:
    """The words of a number format: `0.0" cm"` → `cm`, `0"%"` → `%` (which leaves the number as it is)."""
    section = code.split(";")[0]
    words = [quoted or escaped for quoted, escaped, _, _, _ in _PIECE.findall(section) if quoted or escaped]
    return " ".join("".join(words).split())


def shows_percent(code: str) -> bool:
    """Does the format multiply by 100 (`0%`)?"""
    return any(special == "%" for _, _, _, special, _ in _PIECE.findall(code.split(";")[0]))


def month_and_year(code: str) -> bool:
    """Does a date format show month and year only (`mmm-yy`)? A spreadsheet makes 3/32 into such a date."""
    bare = re.sub(r'"[^"]*"|\[[^\]]*\]', "", code).lower()
    return "y" in bare and "m" in bare and "d" not in bare


def turned_into_date(value: date | datetime, code: str, month_first: bool, mark: str, padded: bool) -> str:
    """The number that a spreadsheet turned into a date, put back: 12 March → `3/12` (month first) or `12/3`."""
    if month_and_year(code):
        first, second = value.month, value.year % 100
    else:
        first, second = (value.month, value.day) if month_first else (value.day, value.month)
    width = 2 if padded else 1
    return f"{first:0{width}d}{mark}{second:0{width}d}"


def turned_into_time(value: time, code: str) -> str:
    """A number such as 3:10 that a spreadsheet turned into a time of day, as its cell shows it."""
    hour = f"{value.hour:02d}" if "hh" in code.lower() else str(value.hour)
    return f"{hour}:{value.minute:02d}" + (f":{value.second:02d}" if value.second else "")
