"""Units: their spellings (a data file) and the factors to the unit that a table keeps."""

import re
from functools import cache

from tracker.domain.tables import Column, Kind
from tracker.domain.units import CM_PER_INCH, M_PER_YARD
from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import read_data

FACTORS: dict[str, dict[str, float]] = {
    "width": {"cm": 1, "mm": 0.1, "m": 100, "inch": CM_PER_INCH},
    "length": {"m": 1, "km": 1000, "yard": M_PER_YARD, "ft": M_PER_YARD / 3},
    "speed": {"ppm": 1},
    "fraction": {"percent": 0.01, "permille": 0.001, "fraction": 1},
    "pick_density": {"per_cm": 1, "per_inch": 1 / CM_PER_INCH, "per_10cm": 0.1, "per_m": 0.01},
    "hours": {"h": 1, "min": 1 / 60},
    "minutes": {"min": 1, "h": 60, "s": 1 / 60},
    "days": {"days": 1, "weeks": 7, "months": 30},
    "torque": {"nm": 1, "lbft": 1.3558179483, "kgm": 9.80665},
    "narrow": {"mm": 1, "cm": 10, "inch": CM_PER_INCH * 10},
    "mass": {"g": 1, "kg": 1000},
    "yarn": {"tex": 1, "dtex": 0.1},
    "count": {"piece": 1},
    "year": {"year": 1},
}
"""Dimension → unit → factor to the unit in `Column.unit` (fractions for percent)."""

WORDS = {
    "cm": "cm", "mm": "mm", "m": "m", "inch": "inch", "yard": "yards", "km": "km", "ft": "feet", "ppm": "picks/min",
    "percent": "percent", "permille": "per mille", "fraction": "fraction", "per_cm": "per cm", "per_inch": "per inch",
    "per_10cm": "per 10 cm", "per_m": "per m", "h": "h", "min": "min", "s": "s", "days": "days", "weeks": "weeks",
    "months": "months", "nm": "N·m", "lbft": "lb·ft", "kgm": "kg·m", "piece": "", "year": "",
    "g": "g", "kg": "kg", "tex": "tex", "dtex": "dtex",
}  # fmt: skip
"""Unit → the words in which it is asked for, answered and reported."""

_DIMENSIONS = {"cm": "width", "m": "length", "picks/min": "speed", "picks/cm": "pick_density", "h": "hours",
               "min": "minutes", "days": "days", "N·m": "torque", "mm": "narrow", "g": "mass",
               "tex": "yarn"}  # fmt: skip
_COUNTED = frozenset(
    {"frames", "heads", "on_hand", "quantity", "lot_size", "minimum_order", "safety_stock", "how_many"}
)


def dimension_of(column: Column) -> str | None:
    """What a column measures, None where it has no unit (or any, as a price has)."""
    if column.kind is Kind.FRACTION:
        return "fraction"
    if column.field == "year":
        return "year"
    if column.field in _COUNTED:
        return "count"
    return _DIMENSIONS.get(column.unit or "")


def squeezed(text: str) -> str:
    """A unit's spelling for comparison: folded, without blanks and dots."""
    return re.sub(r"[\s.]+", "", fold(text).replace("⁻", "-").replace("∕", "/").replace("·", "*"))


@cache
def _spellings() -> dict[str, dict[str, str]]:
    return {
        dimension: {squeezed(s): unit for unit, spellings in units.items() for s in spellings}
        for dimension, units in read_data("units").items()
    }


def unit_named(dimension: str | None, text: str) -> str | None:
    """The unit that a text names in a dimension, None where it names none: `('width', '"')` → `inch`."""
    return _spellings().get(dimension or "", {}).get(squeezed(text)) if text else None


@cache
def is_unit(text: str) -> bool:
    """Does the text name a unit of any dimension?"""
    key = squeezed(text)
    return bool(key) and any(key in spellings for spellings in _spellings().values())
