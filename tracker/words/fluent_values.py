"""The values of sentences that the catalogue's library does not know: money, quantities, moments, figures of the mill's own."""

from collections.abc import Callable
from datetime import date, datetime, tzinfo
from typing import Any

from babel import Locale
from fluent.runtime.types import FluentNone, FluentType

from tracker.words.values import day, exact, moment, number, own


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


def _quantity(amount: object, unit: object = "", signed: object = "") -> FluentType:
    """`{ QUANTITY($quantity, $unit) }` → `2.5 m`; `{ QUANTITY($change, signed: "yes") }` → `+2.5`."""
    if not isinstance(amount, int | float):
        return FluentNone("quantity")
    return Quantity(float(amount), "" if unit == "none" else str(unit), bool(signed))


class FixedWord(FluentType):
    """A fixed word in the reader's language, by which a sentence may choose as it is named in the code: `[in-work]`, `[yes]`."""

    def __init__(self, text: str, name: str):
        self.text, self.names = text, {name, name.replace(" ", "-")}

    def format(self, locale: Locale) -> str:
        return self.text

    def __eq__(self, other: object) -> bool:
        return other in self.names

    __hash__ = None  # type: ignore[assignment]


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
