"""Numbers, money, days and moments as a person of some language reads them."""

from collections.abc import Callable, Iterable
from datetime import date, datetime, time, tzinfo
from math import isfinite
from typing import Any

from babel import Locale
from babel.dates import format_date, format_time
from babel.numbers import format_decimal
from fluent.runtime.types import FluentNone, FluentType

DAY = "EEE d MMM y"
"""The day of the week always stands there: it is what a hall goes by."""
MOST_LISTED = 10
BEYOND = 1e15
"""From here on a float has no exact last figure."""


def day(on: date, language: str = "en") -> str:
    """`Mon 4 Jan 2027`."""
    return format_date(on, DAY, locale=language)


def moment(at: datetime, zone: tzinfo | None = None, language: str = "en") -> str:
    """`Mon 4 Jan 2027 06:00`, in `zone`; without one as it stands."""
    local = at.astimezone(zone) if zone and at.tzinfo else at
    return f"{day(local.date(), language)} {clock(local.time(), language)}"


def clock(at: time, language: str = "en") -> str:
    """`06:00`; twenty-four hours in every language."""
    return format_time(at.replace(tzinfo=None), "HH:mm", locale=language)


def number(value: float, digits: int = 0, language: str = "en") -> str:
    """`12,345.5`: at most `digits` decimals, trailing zeros left out, never minus zero."""
    pattern = "#,##0." + "#" * digits if digits else "#,##0"
    return format_decimal(round(value, digits) + 0.0, pattern, locale=language)


def listed(texts: Iterable[str], more: str, most: int = MOST_LISTED) -> str:
    """`001, 002 and 3 more`: at most `most` by name; `more` is the language's `and {n} more`."""
    names = list(texts)
    return ", ".join(names[:most]) + (f" {more.format(n=len(names) - most)}" if len(names) > most else "")


class Money(FluentType):
    """An amount without cents, and its currency where it is known."""

    def __init__(self, amount: float, currency: str = ""):
        self.amount, self.currency = amount, currency

    def format(self, locale: Locale) -> str:
        return f"{number(self.amount, language=str(locale))} {self.currency}".rstrip()


class Moment(FluentType):
    """A day, or a moment in the mill's zone."""

    def __init__(self, at: date, zone: tzinfo | None = None):
        self.at, self.zone = at, zone

    def format(self, locale: Locale) -> str:
        at, language = self.at, str(locale)
        return moment(at, self.zone, language) if isinstance(at, datetime) else day(at, language)


def _money(amount: object, currency: object = "") -> FluentType:
    """`{ MONEY($amount, $currency) }` → `12,345 EUR`."""
    if not isinstance(amount, int | float):
        return FluentNone("amount")
    return Money(float(amount), "" if currency == "none" else str(currency))


class Quantity(FluentType):
    """A quantity to the last of its decimals, with its unit where it has one: nothing is rounded away."""

    def __init__(self, amount: float, unit: str = "", signed: bool = False):
        self.amount, self.unit, self.signed = amount, unit, signed

    def format(self, locale: Locale) -> str:
        sign = "+" if self.signed and self.amount > 0 else ""
        return f"{sign}{exact(self.amount, str(locale))} {self.unit}".rstrip()


def exact(value: float, language: str = "en") -> str:
    """`12,345.0004`: up to six decimals; beyond what anybody counts, as `1e+308`, `inf`."""
    if not isfinite(value) or abs(value) >= BEYOND or 0 < abs(value) < 1e-6:
        return f"{value:g}"
    return number(value, 6, language)


def _quantity(amount: object, unit: object = "", signed: object = "") -> FluentType:
    """`{ QUANTITY($quantity, $unit) }` → `2.5 m`; `{ QUANTITY($change, signed: "yes") }` → `+2.5`."""
    if not isinstance(amount, int | float):
        return FluentNone("quantity")
    return Quantity(float(amount), "" if unit == "none" else str(unit), bool(signed))


def own(value: float, language: str = "en") -> str:
    """A figure of the mill's own, as it would write it: `1998`, `0.5`; up to ten figures, no groups."""
    if not isfinite(value) or abs(value) >= BEYOND or 0 < abs(value) < 1e-6:
        return f"{value:g}"
    return format_decimal(
        float(f"{value:.10g}") if isinstance(value, float) else value, "0.##########", locale=language
    )


class Own(FluentType):
    """A figure of the mill's own."""

    def __init__(self, value: float):
        self.value = value

    def format(self, locale: Locale) -> str:
        return own(self.value, str(locale))


def _own(value: Any) -> Any:
    """`{ OWN($value) }` → a figure as the mill would write it, any other value as it is."""
    return Own(value) if isinstance(value, int | float) else value


FUNCTIONS: dict[str, Callable[..., Any]] = {"MONEY": _money, "QUANTITY": _quantity, "OWN": _own}
