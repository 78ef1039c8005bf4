"""Exact unit factors, and shares as percent."""

from decimal import Decimal

CM_PER_INCH = 2.54
M_PER_YARD = 0.9144


def percent(share: float) -> float:
    """A fraction as percent, the decimal point moved by two places: 0.88 → 88, 0.07 → 7, no float dust.

    `fraction` gives exactly the share back where it has at most 15 significant digits, else to its last digit.
    """
    return float(Decimal(repr(float(share))).scaleb(2))


def fraction(of_percent: float) -> float:
    """Percent as a fraction, the decimal point moved by two places: 88 → 0.88, 28.7 → 0.287."""
    return float(Decimal(repr(float(of_percent))).scaleb(-2))
