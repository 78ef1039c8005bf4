"""Numbers kept as text: decimal comma or point, thousands in every spelling, units before or behind."""

import re
from functools import lru_cache
from typing import NamedTuple

POINT, COMMA = "point", "comma"
"""The two conventions: which mark the decimals stand behind."""

_QUANTITY = re.compile(
    r"(?P<before>[^\d+\-−,(]*?)\s*(?P<number>\(?[+\-−]?\s?\d[\d.,'’` ]*|\(?[+\-−]?[.,]\d+)(?P<after>.*)", re.DOTALL
)
_FRACTION = re.compile(
    r"(?P<whole>\d{1,4})(?:\s*(?P<sign>[½¼¾⅛⅜⅝⅞⅓⅔])|[\s\-–]\s?(?P<over>[1-9]|1[0-5])\s?[/⁄](?P<under>2|4|8|16))"
    r"(?P<unit>\s*[^\d/⁄]*)"
)
_SIGNS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875, "⅓": 1 / 3, "⅔": 2 / 3}
_ABOUT = re.compile(r"(?:ca|circa|env|environ|approx|about|etwa|ungefähr|aprox|yaklaşık|约|ø)\.?|[~≈]", re.IGNORECASE)
_GROUPED = {mark: re.compile(rf"\d{{1,3}}(?:{re.escape(mark)}\d{{3}})+") for mark in (" ", "'", ".", ",")}
_INDIAN = re.compile(r"\d{1,2}(?:,\d{2})+,\d{3}")


_FULL_WIDTH = str.maketrans("．，％－＋（）", ".,%-+()")
"""Of the figures themselves the patterns know every script."""


class NumberInText(NamedTuple):
    """A text that begins with a number."""

    readings: dict[str, float]
    """Convention → value; both where the text does not say which."""
    unit: str
    """What stands before or behind the number."""
    about: bool = False
    """`ca.`, `~`: not exact."""

    @property
    def certain(self) -> float | None:
        """The value where both conventions agree or only one fits."""
        values = set(self.readings.values())
        return values.pop() if len(values) == 1 else None


@lru_cache(maxsize=50_000)
def quantity(text: str) -> NumberInText | None:
    """Split `1.234,5 m` into number and unit; None where the text is no single number with a unit."""
    text = text.translate(_FULL_WIDTH)
    if fraction := _FRACTION.fullmatch(text.strip()):
        return _with_fraction(fraction)
    hit = _QUANTITY.fullmatch(text.strip())
    if not hit:
        return None
    number, after = hit["number"].rstrip(" "), hit["after"]
    if hit["before"][-1:].isalpha() and number[0] in "-−" and hit.start("number") == hit.end("before"):
        return None  # `A-07` is a code
    trailing = len(number) - len(number.rstrip(".,'’`"))
    if trailing:
        number, after = number[:-trailing], number[-trailing:] + after
    number, after = _cut(number, after)
    before = hit["before"].strip()
    about = bool(_ABOUT.fullmatch(before))
    unit = f"{'' if about else before} {after.strip()}".strip()
    if any(c.isdigit() for c in unit) and not re.fullmatch(r"\D*(?:1\s*/|/?\s*10|\D[-^⁻]?\s*1|1')\D*", unit):
        return None
    negative, unit = _sign(number, unit)
    readings = {convention: -value if negative else value for convention, value in _read(number).items()}
    return NumberInText(readings, unit, about) if readings else None


def _with_fraction(hit: re.Match[str]) -> NumberInText:
    """`75 3/4"`, `75½"`: 75.75 and 75.5 with the unit behind."""
    part = _SIGNS[hit["sign"]] if hit["sign"] else int(hit["over"]) / int(hit["under"])
    value = int(hit["whole"]) + part
    return NumberInText({POINT: value, COMMA: value}, hit["unit"].strip())


def _cut(number: str, after: str) -> tuple[str, str]:
    """`500 1/min` is a number and a unit that begins with a figure, not a number with a blank in it."""
    if " " in number and after.strip() and not _read(number):
        first, _, rest = number.partition(" ")
        return first, rest + after
    return number, after


def _sign(number: str, unit: str) -> tuple[bool, str]:
    """(negative, unit without the sign): `-3`, `−3`, `(3)`, `3-`."""
    if number.startswith("(") and unit.startswith(")"):
        return True, unit[1:].strip()
    if unit in ("-", "−"):
        return True, ""
    return number.lstrip("( ").startswith(("-", "−")), unit


def _read(number: str) -> dict[str, float]:
    """Convention → absolute value of a bare number; empty where its marks fit neither."""
    digits = number.strip("()+-− ").replace("’", "'").replace("`", "'")
    for mark in (" ", "'"):
        if mark in digits:
            whole, point, rest = _split_decimals(digits)
            if not _GROUPED[mark].fullmatch(whole):
                return {}
            digits = whole.replace(mark, "") + point + rest
    points, commas = digits.count("."), digits.count(",")
    if not points and not commas:
        return {POINT: float(digits), COMMA: float(digits)}
    if points and commas:
        return _both_marks(digits)
    mark, decimal, grouping = (".", POINT, COMMA) if points else (",", COMMA, POINT)
    found: dict[str, float] = {}
    if max(points, commas) == 1:
        found[decimal] = float(digits.replace(mark, "."))
    if (_GROUPED[mark].fullmatch(digits) and not digits.startswith("0")) or (mark == "," and _INDIAN.fullmatch(digits)):
        found[grouping] = float(digits.replace(mark, ""))
    return found


def _split_decimals(digits: str) -> tuple[str, str, str]:
    at = max(digits.rfind("."), digits.rfind(","))
    return (digits, "", "") if at < 0 else (digits[:at], digits[at], digits[at + 1 :])


def _both_marks(digits: str) -> dict[str, float]:
    decimal = "." if digits.rfind(".") > digits.rfind(",") else ","
    grouping = "," if decimal == "." else "."
    whole, _, rest = digits.rpartition(decimal)
    fits = _GROUPED[grouping].fullmatch(whole) or (grouping == "," and _INDIAN.fullmatch(whole))
    if not fits or not rest.isdigit():
        return {}
    return {POINT if decimal == "." else COMMA: float(whole.replace(grouping, "") + "." + rest)}
