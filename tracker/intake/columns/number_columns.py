"""The cells of a column of numbers, read by a plan: which decimal mark, which unit, within which bounds."""

import re
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import Kind
from tracker.domain.units import fraction
from tracker.domain.words import fold
from tracker.errors import Message, message
from tracker.intake.columns.pool import CellProblem, ColumnPool
from tracker.intake.columns.shown import shown_literal, shows_percent
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.numbers import NumberInText, quantity
from tracker.intake.vocabulary.units import FACTORS, WORDS, is_unit, unit_named

USUAL: dict[str, dict[str, tuple[float, float]]] = {
    "width": {"cm": (80, 560), "inch": (40, 165), "mm": (800, 6000), "m": (0.8, 6)},
    "pick_density": {"per_cm": (4, 80), "per_inch": (10, 200), "per_10cm": (80, 800)},
}
"""Dimension → unit → the values that occur in a mill (reed widths 130 to 540 cm; 10 to 45 picks/cm, with room)."""
EACH = "each"
"""Every text that either convention fits is plausible in one only."""
_MONEY = re.compile(
    r"[€$£¥₺₹]|[A-Z]{3}|R\$|Fr\.?|fr\.?|Rs\.?|TL|元|圆|(?:[A-Z]{3}|[€$£¥₺₹])?\s?/\s?\S+|,-|.-|,–", re.IGNORECASE
)


_CURRENCY = re.compile(r"R\$|[€$£¥₺₹]|(?<![A-Za-z])[A-Z]{3}(?![A-Za-z])")
_SIGNS = {"€": "EUR", "$": "USD", "£": "GBP", "₺": "TRY", "₹": "INR", "R$": "BRL"}
_NAMED = re.compile(r"([^\W\d][^\d=:]*?)\s*[=:]\s*([+\-]?[\d.,].*)")
"""`n=620`, `Drehzahl: 620`."""
_FORMULA_SIGNS = {"speed": ("n",), "width": ("b", "w"), "fraction": ("η",)}
_REMARK = re.compile(r"(.*\d.*?)\s*[(\[（【]([^\d()\[\]（）【】]*[^\W\d_]{2}[^\d()\[\]（）【】]*)[)\]）】]")


@dataclass(slots=True)
class NumberPlan:
    """How to read each cell of a pool."""

    pool: ColumnPool
    dimension: str | None
    decimals: str = ""
    """Convention for texts that either fits; `` where none is ambiguous."""
    unit: str = ""
    """Unit of the cells that name none."""
    unit_words: str = ""
    """Unit as reported."""
    currency: str = ""
    """That of most cells that name one, of sums of money."""
    asked: bool = False
    """A question about the column is open, so its values cannot be judged yet."""

    def read(self, value: Any, code: str) -> float:
        """The value in the table's unit; CellProblem where it cannot be read or lies out of bounds."""
        number, unit = self._number(value, code)
        return self._checked(self._converted(number, unit), value)

    def _number(self, value: Any, code: str) -> tuple[float, str]:
        if isinstance(value, bool) or not isinstance(value, float | int | str):
            raise self._unreadable(value)
        if not isinstance(value, str):
            return float(value), unit_of_code(self.dimension, code) or self.unit
        found = quantity(self.without_words(value)[0])
        if found is None:
            raise self._unreadable(value)
        return self._reading(found, value), self._own_unit(found, value) or self.unit

    def without_words(self, text: str) -> tuple[str, str]:
        """`190 (new reed)` → `190` and `new reed`; `n=620` → `620` and `n=`: the text without a remark or the name of what it
        is, and that."""
        hit = _NAMED.fullmatch(text)
        if hit and self._is_its_name(hit[1].strip()):
            return hit[2], text[: hit.start(2)].strip()
        return without_remark(text)

    def _is_its_name(self, word: str) -> bool:
        """Is a word before a number the sign of the dimension in formulas, or a heading of the field?"""
        column, folded = self.pool.column, fold(word)
        if folded in _FORMULA_SIGNS.get(self.dimension or "", ()) or folded == fold(self.pool.heading):
            return True
        return column is not None and any(
            e.field == column.field and e.weight >= 0.75 for e in match_heading(word).candidates
        )

    def _reading(self, found: NumberInText, value: str) -> float:
        certain = found.certain
        if certain is not None:
            return certain
        if self.decimals in found.readings:
            return found.readings[self.decimals]
        likely = [mark for mark in found.readings if plausible(self, found, mark)]
        if len(likely) == 1:
            return found.readings[likely[0]]
        raise self._unreadable(value)

    def _own_unit(self, found: NumberInText, value: str) -> str:
        text = found.unit.strip(" .")
        if not text:
            return ""
        unit = unit_named(self.dimension, text) or unit_named(self.dimension, text.strip("()[]"))
        if self.currency and currency_of(text) not in ("", self.currency):
            raise CellProblem("other-currency", most=self.currency)
        if self._is_its_name(text) or (self.dimension == "speed" and fold(text) in ("u", "转", "纬")):
            return ""
        if unit or (self.dimension is None and _MONEY.fullmatch(text)):
            return unit or ""
        if (
            self.dimension is None
            and re.fullmatch(r"\D{1,12}", text)
            and self.pool.column
            and self.pool.column.unit is None
        ):
            return ""
        units = [WORDS[unit] for unit in FACTORS.get(self.dimension or "", {}) if WORDS[unit]]
        raise CellProblem("unit-unknown", unit=found.unit, units=units or None)

    def _converted(self, number: float, unit: str) -> float:
        if self.dimension == "fraction":
            if unit == "fraction" or (unit == "mixed" and number <= 1):
                return float(f"{number:.12g}")  # 0.8 + 0.02 is 0.82
            return fraction(number) if unit != "permille" else number / 1000
        factor = FACTORS[self.dimension][unit] if self.dimension and unit else 1
        return number if factor == 1 else float(f"{number * factor:.10g}")

    def _checked(self, value: float, raw: Any) -> float:
        column = self.pool.column
        if column is None or self.asked:
            return value
        low, high = column.low, column.high
        if (low is not None and value < low) or (high is not None and value > high):
            below = low is not None and value < low
            shown = self._shown(value)
            raise CellProblem(
                "impossible-value", shown, how="below" if below else "above", limit=self._shown(low if below else high),
                meant="" if _says_so(raw, shown) else message("in-brackets", what=shown),
            )  # fmt: skip
        if column.kind is Kind.INTEGER and value != int(value):
            raise CellProblem("not-whole")
        return int(value) if column.kind is Kind.INTEGER else value

    def _shown(self, value: float | None) -> Message:
        """A value of the column with its unit."""
        column = self.pool.column
        assert column is not None and value is not None
        share = column.kind is Kind.FRACTION
        number = float(f"{value * 100 if share else value:.6g}")
        return message("with-unit", number=number, unit="%" if share else column.unit or None)

    def _unreadable(self, value: Any) -> CellProblem:
        return CellProblem("not-a-number")


def currency_of(text: str) -> str:
    """The currency that a unit names (`€`, `EUR/day`), `` where it names none."""
    hit = _CURRENCY.search(text)
    return _SIGNS.get(hit[0], hit[0]) if hit else ""


def without_remark(text: str) -> tuple[str, str]:
    """`190 (new reed)` → `190` and `new reed`; words in brackets behind a number that are no unit and hold no figure."""
    hit = _REMARK.fullmatch(text)
    inside = hit[2].strip() if hit else ""
    return (hit[1], inside) if hit and inside and not is_unit(inside) else (text, "")


def _says_so(raw: Any, shown: Message) -> bool:
    """Does the cell itself say the value with its unit?"""
    text = raw if isinstance(raw, str) else f"{raw:g}"
    return text.replace(" ", "") == f"{shown.params['number']:g}{shown.params['unit'] or ''}".replace(" ", "")


def unit_of_code(dimension: str | None, code: str) -> str:
    """The unit that a number format shows: a cell formatted `0%` holds a fraction, `0" mm"` millimetres."""
    if not code:
        return ""
    if shows_percent(code):
        return "fraction" if dimension == "fraction" else ""
    literal = shown_literal(code)
    return (unit_named(dimension, literal) or "") if literal else ""


def plausible(plan: NumberPlan, found: NumberInText, mark: str) -> bool:
    """Does a reading lie within the column's bounds in some unit that it may have?"""
    pool, column = plan.pool, plan.pool.column
    value = found.readings.get(mark)
    if column is None or value is None:
        return False
    if column.kind is Kind.INTEGER and value != int(value):
        return False
    named = unit_named(plan.dimension, found.unit.strip(" .")) or heading_unit(pool, plan.dimension)
    if plan.dimension in USUAL:
        ranges = USUAL[plan.dimension]
        return any(low <= value <= high for unit, (low, high) in ranges.items() if named in ("", None, unit))
    if plan.dimension == "fraction":
        return value <= 100
    low = 60 if column.unit == "picks/min" else column.low if column.low is not None else -1e18
    return low <= value <= (column.high if column.high is not None else 1e18)


def heading_unit(pool: ColumnPool, dimension: str | None) -> str:
    """The unit that a heading names in a dimension, `` where it names none."""
    return next((u for text in pool.match.units if (u := unit_named(dimension, text))), "")
