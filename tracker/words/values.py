"""Numbers, money, days and moments as a person of some language reads them. The library that knows languages is imported with the
first of them: a command or a worker process that says nothing need not wait for it."""

from collections.abc import Iterable
from datetime import date, datetime, time, tzinfo
from functools import lru_cache
from math import isfinite

DAY, DAY_IN = "EEE d MMM y", {"de": "EEE d. MMM y"}
"""The day of the week always stands there: it is what a hall goes by."""
MOST_LISTED = 10
KEPT = 8192
"""Texts of each kind that are kept: the library of languages takes a tenth of a millisecond for one, and a screen has thousands."""
BEYOND = 1e15
"""From here on a float has no exact last figure."""


@lru_cache(KEPT)
def day(on: date, language: str = "en") -> str:
    """`Mon 4 Jan 2027`."""
    from babel.dates import format_date

    return format_date(on, DAY_IN.get(language, DAY), locale=language)


@lru_cache(KEPT)
def month(first: date, language: str = "en") -> str:
    """`Jan 2027`."""
    from babel.dates import format_date

    return format_date(first, "MMM y", locale=language)


def moment(at: datetime, zone: tzinfo | None = None, language: str = "en") -> str:
    """`Mon 4 Jan 2027 06:00`, in `zone`; without one as it stands."""
    local = at.astimezone(zone) if zone and at.tzinfo else at
    return f"{day(local.date(), language)} {clock(local.time(), language)}"


@lru_cache(KEPT)
def clock(at: time, language: str = "en") -> str:
    """`06:00`; twenty-four hours in every language."""
    from babel.dates import format_time

    return format_time(at.replace(tzinfo=None), "HH:mm", locale=language)


@lru_cache(KEPT)
def number(value: float, digits: int = 0, language: str = "en") -> str:
    """`12,345.5`: at most `digits` decimals, trailing zeros left out, never minus zero."""
    from babel.numbers import format_decimal

    pattern = "#,##0." + "#" * digits if digits else "#,##0"
    return format_decimal(round(value, digits) + 0.0, pattern, locale=language)


def decimal(value: float, digits: int, language: str = "en") -> str:
    """`12,345.50`: exactly so many decimals."""
    from babel.numbers import format_decimal

    return format_decimal(round(value, digits) + 0.0, "#,##0." + "0" * digits, locale=language)


def listed(
    texts: Iterable[str], more: str, most: int = MOST_LISTED, language: str = "en", of: int | None = None
) -> str:
    """`001, 002 and 3 more`: at most `most` by name; `more` is the language's `and {n} more`. `of`: how many there are, where
    `texts` has only those that are named."""
    names = list(texts)
    left = (len(names) if of is None else of) - most
    return ", ".join(names[:most]) + (f" {more.format(n=number(left, language=language))}" if left > 0 else "")


def exact(value: float, language: str = "en") -> str:
    """`12,345.0004`: up to six decimals; beyond what anybody counts, as `1e+308`, `inf`."""
    if not isfinite(value) or abs(value) >= BEYOND or 0 < abs(value) < 1e-6:
        return f"{value:g}"
    return number(value, 6, language)


@lru_cache(KEPT)
def own(value: float, language: str = "en") -> str:
    """A figure of the mill's own, as it would write it: `1998`, `0.5`; up to ten figures, no groups."""
    from babel.numbers import format_decimal

    if not isfinite(value) or abs(value) >= BEYOND or 0 < abs(value) < 1e-6:
        return f"{value:g}"
    return format_decimal(
        float(f"{value:.10g}") if isinstance(value, float) else value, "0.##########", locale=language
    )


def signs_of_numbers(language: str) -> tuple[str, str]:
    """The decimal mark and the sign between thousands: `(".", ",")`."""
    from babel.numbers import get_decimal_symbol, get_group_symbol

    return get_decimal_symbol(language), get_group_symbol(language)


def weekday(on: date, language: str = "en") -> str:
    """`Tue`, `Di`"""
    return names_of_days(language)["shortDays"][on.isoweekday() % 7]


@lru_cache(KEPT)
def names_of_days(language: str) -> dict[str, list[str]]:
    """`days`, `shortDays` from Sunday on, `months`, `shortMonths` from January on."""
    from babel import Locale

    days, months = Locale(language).days["stand-alone"], Locale(language).months["stand-alone"]
    sunday_first = [6, *range(6)]
    return {
        "days": [days["wide"][i] for i in sunday_first], "shortDays": [days["abbreviated"][i] for i in sunday_first],
        "months": [months["wide"][i] for i in range(1, 13)], "shortMonths": [months["abbreviated"][i] for i in range(1, 13)],
    }  # fmt: skip
