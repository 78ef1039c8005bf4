"""Exact unit factors and the yarn counts of the trade."""

from decimal import Decimal

CM_PER_INCH = 2.54
M_PER_YARD = 0.9144
TEX_NE = 590.5412  # tex × Ne: 840 yd hanks to the pound


def tex_from_ne(ne: float) -> float:
    """Linear density in tex of an English cotton count (tex = 590.54 / Ne); `ne` > 0."""
    return TEX_NE / ne


def tex_from_nm(nm: float) -> float:
    """Linear density in tex of a metric count (tex = 1000 / Nm); `nm` > 0."""
    return 1000 / nm


def tex_from_denier(denier: float) -> float:
    """Linear density in tex of a denier count (tex = den / 9)."""
    return denier / 9


def yarn_length_m(grams: float, tex: float) -> float:
    """Metres of yarn on a bobbin: grams × 1000 / tex (1,000 m of 20 tex weigh 20 g)."""
    return grams * 1000 / tex


def percent(share: float) -> float:
    """A fraction as percent, the decimal point moved by two places: 0.88 → 88, 0.07 → 7, no float dust.

    `fraction` gives exactly the share back where it has at most 15 significant digits, else to its last digit.
    """
    return float(Decimal(repr(float(share))).scaleb(2))


def fraction(of_percent: float) -> float:
    """Percent as a fraction, the decimal point moved by two places: 88 → 0.88, 28.7 → 0.287."""
    return float(Decimal(repr(float(of_percent))).scaleb(-2))
