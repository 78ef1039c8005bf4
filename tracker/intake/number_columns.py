"""How a column of numbers is to be read: decimal mark, unit, percent or fraction, each decided from all its values."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.tables import Kind
from tracker.domain.units import fraction
from tracker.intake.columns import CellProblem, Pool
from tracker.intake.numbers import COMMA, POINT, Quantity, quantity
from tracker.intake.shown import plain_number, shown_literal, shows_percent
from tracker.intake.units import FACTORS, WORDS, dimension_of, unit_named

USUAL: dict[str, dict[str, tuple[float, float]]] = {
    "width": {"cm": (80, 560), "inch": (40, 165), "mm": (800, 6000), "m": (0.8, 6)},
    "pick_density": {"per_cm": (4, 80), "per_inch": (10, 200), "per_10cm": (80, 800)},
}
"""Dimension → unit → the values that occur in a mill (reed widths 130 to 540 cm; 10 to 45 picks/cm, with room)."""
EACH = "each"
"""Every text that either convention fits is plausible in one only."""
_USUAL_WIDTH_CM = (100, 560)
_MONEY = re.compile(
    r"[€$£¥₺₹]|[A-Z]{3}|R\$|Fr\.?|fr\.?|Rs\.?|TL|元|圆|(?:[A-Z]{3}|[€$£¥₺₹])?\s?/\s?\S+|,-|.-|,–", re.IGNORECASE
)


@dataclass(slots=True)
class NumberPlan:
    """How to read each cell of a pool."""

    pool: Pool
    dimension: str | None
    decimals: str = ""
    """Convention for texts that either fits; `` where none is ambiguous."""
    unit: str = ""
    """Unit of the cells that name none."""
    unit_words: str = ""
    """Unit as reported."""
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
        found = quantity(value)
        if found is None:
            raise self._unreadable(value)
        return self._reading(found, value), self._own_unit(found, value) or self.unit

    def _reading(self, found: Quantity, value: str) -> float:
        certain = found.certain
        if certain is not None:
            return certain
        if self.decimals in found.readings:
            return found.readings[self.decimals]
        likely = [mark for mark in found.readings if plausible(self, found, mark)]
        if len(likely) == 1:
            return found.readings[likely[0]]
        raise self._unreadable(value)

    def _own_unit(self, found: Quantity, value: str) -> str:
        text = found.unit.strip(" .")
        if not text:
            return ""
        unit = unit_named(self.dimension, text) or unit_named(self.dimension, text.strip("()[]"))
        if unit or (self.dimension is None and _MONEY.fullmatch(text)):
            return unit or ""
        if (
            self.dimension is None
            and re.fullmatch(r"\D{1,12}", text)
            and self.pool.column
            and self.pool.column.unit is None
        ):
            return ""
        raise CellProblem(
            "unit-unknown",
            f"{self.pool.name} {value!r}: {found.unit!r} is no unit of it",
            f"Write the number alone, or with one of: {', '.join(_words(self.dimension))}.",
        )

    def _converted(self, number: float, unit: str) -> float:
        if self.dimension == "fraction":
            if unit == "fraction" or (unit == "mixed" and number <= 1):
                return number
            return fraction(number) if unit != "permille" else number / 1000
        factor = FACTORS[self.dimension][unit] if self.dimension and unit else 1
        return number if factor == 1 else float(f"{number * factor:.10g}")

    def _checked(self, value: float, raw: Any) -> float:
        column = self.pool.column
        if column is None or self.asked:
            return value
        low, high = column.low, column.high
        if (low is not None and value < low) or (high is not None and value > high):
            raise CellProblem(
                "impossible-value",
                self._out_of_bounds(value, raw),
                "Correct the cell or leave it empty.",
                self._shown(value),
            )
        if column.kind is Kind.INTEGER and value != int(value):
            raise CellProblem(
                "not-whole", f"{column.heading} {raw!r} is no whole number", "Correct the cell or leave it empty."
            )
        return int(value) if column.kind is Kind.INTEGER else value

    def _out_of_bounds(self, value: float, raw: Any) -> str:
        column = self.pool.column
        assert column is not None
        below = column.low is not None and value < column.low
        limit = column.low if below else column.high
        assert limit is not None
        said = raw if isinstance(raw, str) else plain_number(raw)
        side = "below the lowest" if below else "above the highest"
        return f"{column.heading} {said} ({self._shown(value)}) is {side} possible, {self._shown(limit)}"

    def _shown(self, value: float) -> str:
        column = self.pool.column
        if column is not None and column.kind is Kind.FRACTION:
            return f"{value * 100:.6g} %"
        unit = column.unit if column is not None else ""
        return f"{value:,.6g} {unit}".strip() if unit else f"{value:,.6g}"

    def _unreadable(self, value: Any) -> CellProblem:
        return CellProblem(
            "not-a-number",
            f"{self.pool.name} {str(value)!r} cannot be read as a number",
            "Correct the cell or leave it empty.",
        )


def plan_numbers(pool: Pool) -> NumberPlan:
    """Decide decimal mark and unit for a column of numbers, asking where two readings stand."""
    assert pool.column is not None
    dimension = dimension_of(pool.column)
    plan = NumberPlan(pool, dimension)
    seen = _survey(pool, dimension)
    plan.decimals = _decimals(pool, plan, seen)
    if dimension == "fraction":
        plan.unit = _percent_or_fraction(pool, plan, seen)
    elif dimension in USUAL or dimension == "length":
        plan.unit = _unit(pool, plan, seen)
    elif dimension:
        plan.unit = _heading_unit(pool, dimension) or next(iter(FACTORS[dimension]))
    plan.unit_words = WORDS.get(plan.unit, plan.unit)
    return plan


@dataclass(slots=True)
class _Seen:
    """What stands in a column."""

    typed: list[tuple[float, str]] = field(default_factory=list)
    """Numbers and the unit that their format names."""
    texts: list[tuple[str, Quantity, str]] = field(default_factory=list)
    """Texts with a number, and the unit that they name (`?` for an unknown one)."""


def _survey(pool: Pool, dimension: str | None) -> _Seen:
    seen = _Seen()
    has_codes = any(part.sheet.extras.format.codes for part in pool.parts)
    for part, row, value in pool.cells():
        if type(value) is float or type(value) is int:
            seen.typed.append((float(value), unit_of_code(dimension, part.code(row)) if has_codes else ""))
    for (kind, value), count in pool.distinct.items():
        found = quantity(value) if kind is str else None
        if found is not None:
            unit = (unit_named(dimension, found.unit.strip(" .()[]")) or "?") if found.unit.strip(" .") else ""
            seen.texts += [(value, found, unit)] * count
    return seen


def unit_of_code(dimension: str | None, code: str) -> str:
    """The unit that a number format shows: a cell formatted `0%` holds a fraction, `0" mm"` millimetres."""
    if not code:
        return ""
    if shows_percent(code):
        return "fraction" if dimension == "fraction" else ""
    literal = shown_literal(code)
    return (unit_named(dimension, literal) or "") if literal else ""


def proven_decimals(pool: Pool) -> set[str]:
    """The conventions that the texts of a column prove by themselves."""
    found: set[str] = set()
    for value in pool.texts:
        if "," in value or "." in value:
            one = quantity(value)
            if one and len(one.readings) == 1 and len(set(one.readings.values())) == 1:
                found.update(one.readings)
    return found


def _decimals(pool: Pool, plan: NumberPlan, seen: _Seen) -> str:
    open_texts = [(text, found) for text, found, _ in seen.texts if found.certain is None]
    if not open_texts:
        return ""
    if answer := pool.answers.decimals(pool.heading):
        return answer
    proven = {next(iter(f.readings)) for _, f, _ in seen.texts if len(f.readings) == 1}
    if len(proven) == 1:
        return proven.pop()
    likely = [mark for mark in (POINT, COMMA) if all(plausible(plan, f, mark) for _, f in open_texts)]
    if len(likely) == 1:
        return likely[0]
    if pool.sheet_decimals and not proven:
        return pool.sheet_decimals
    if all(sum(plausible(plan, f, mark) for mark in f.readings) == 1 for _, f in open_texts):
        return EACH
    text, found = open_texts[0]
    values = " or ".join(f"{v:,.6g}" for v in found.readings.values())
    pool.ask("decimals", f"{pool.name} {text!r} can be {values}.",
             f'Answer --answer "{pool.heading}=decimal comma" or "{pool.heading}=decimal point".', raw=text)  # fmt: skip
    plan.asked = True
    return POINT


def plausible(plan: NumberPlan, found: Quantity, mark: str) -> bool:
    """Does a reading lie within the column's bounds in some unit that it may have?"""
    pool, column = plan.pool, plan.pool.column
    value = found.readings.get(mark)
    if column is None or value is None:
        return False
    if column.kind is Kind.INTEGER and value != int(value):
        return False
    named = unit_named(plan.dimension, found.unit.strip(" .")) or _heading_unit(pool, plan.dimension)
    if plan.dimension in USUAL:
        ranges = USUAL[plan.dimension]
        return any(low <= value <= high for unit, (low, high) in ranges.items() if named in ("", None, unit))
    if plan.dimension == "fraction":
        return value <= 100
    low = 60 if column.unit == "picks/min" else column.low if column.low is not None else -1e18
    return low <= value <= (column.high if column.high is not None else 1e18)


def _heading_unit(pool: Pool, dimension: str | None) -> str:
    return next((u for text in pool.match.units if (u := unit_named(dimension, text))), "")


def _bare(seen: _Seen, plan: NumberPlan) -> list[float]:
    """Numbers that name no unit themselves."""
    texts = [(found, unit) for _, found, unit in seen.texts]
    read = [
        found.certain
        if found.certain is not None
        else found.readings.get(plan.decimals, next(iter(found.readings.values())))
        for found, unit in texts
        if not unit
    ]
    return [value for value, unit in seen.typed if not unit] + read


def _unit(pool: Pool, plan: NumberPlan, seen: _Seen) -> str:
    dimension = plan.dimension or ""
    default = next(iter(FACTORS[dimension]))
    answer = pool.answers.unit(pool.heading, dimension)
    bare = _bare(seen, plan)
    heading = _heading_unit(pool, dimension)
    if answer or not bare:
        return answer or heading or default
    if heading:
        return heading if not _contradicted(pool, dimension, heading, bare) else _ask_unit(plan, [heading], bare)
    if dimension == "length":
        return _length_unit(plan, bare)
    if dimension == "width" and (unit := _unit_by_type(pool)):
        words = f"{pool.name} has no unit; read in {WORDS[unit]}, because the machine types say the same width."
        pool.note("unit-understood", words, understood=WORDS[unit])
        return unit
    shares = {unit: _share(bare, bounds) for unit, bounds in USUAL[dimension].items()}
    best = max(shares, key=lambda unit: shares[unit])
    if shares[best] >= 0.95 and all(share < 0.5 for unit, share in shares.items() if unit != best):
        words = f"{pool.name} has no unit; read in {WORDS[best]}, because of the values {_span(bare)}."
        pool.note("unit-understood", words, understood=WORDS[best])
        return best
    likely = [unit for unit, share in shares.items() if share >= 0.2]
    return _ask_unit(plan, likely if len(likely) > 1 else list(shares), bare)


def _share(values: list[float], bounds: tuple[float, float]) -> float:
    return sum(bounds[0] <= v <= bounds[1] for v in values) / len(values) if values else 1.0


def _contradicted(pool: Pool, dimension: str, unit: str, bare: list[float]) -> bool:
    """Does the unit of the heading fit next to none of the values, and another one nearly all?"""
    if dimension != "width":
        return False
    factor = FACTORS["width"][unit]
    if _share([v * factor for v in bare], _USUAL_WIDTH_CM) >= 0.1:
        return False
    return any(_share(bare, bounds) >= 0.9 for other, bounds in USUAL["width"].items() if other != unit)


def _span(values: list[float]) -> str:
    low, high = min(values), max(values)
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"


def _ask_unit(plan: NumberPlan, units: list[str], bare: list[float]) -> str:
    """Ask which of the units it is; one unit alone is that of a heading which the values contradict."""
    pool, plan.asked, span = plan.pool, True, _span(bare)
    what = f"{pool.name} has no unit, and {span} can be {' or '.join(WORDS[u] for u in units)}"
    if len(units) == 1:
        what = f"{pool.name} is headed {WORDS[units[0]]}, yet {span} would be unusual"
        units = units + [u for u, bounds in USUAL["width"].items() if u != units[0] and _share(bare, bounds) >= 0.9]
    hint = "Answer " + " or ".join(f'--answer "{pool.heading}={WORDS[u]}"' for u in units[:3]) + "."
    pool.ask("unit", what + ".", hint, raw=span)
    return units[0]


def _length_unit(plan: NumberPlan, bare: list[float]) -> str:
    """Metres, unless the sheet is English: then yards are as likely."""
    if plan.pool.language == "en":
        return _ask_unit(plan, ["m", "yard"], bare)
    plan.pool.note("unit-understood", f"{plan.pool.name} has no unit; read in m.", understood="m")
    return "m"


def _unit_by_type(pool: Pool) -> str:
    """The unit in which the widths are those that the machine types name (`AJ-190`: 190 cm), `` where they name none."""
    pairs: list[tuple[float, float]] = []
    for part in pool.parts:
        column = part.block.recognised.column_of("machine_type")
        for body in part.rows if column is not None else ():
            value, kind = part.value(body.row), part.sheet.value(body.row, column or 0)
            hits = re.findall(r"(?<!\d)([1-5]\d\d)(?!\d)", str(kind or ""))
            if type(value) in (float, int) and len(hits) == 1:
                pairs.append((float(value), float(hits[0])))
            elif type(value) is str and hits and (found := quantity(value)) and found.certain and not found.unit:
                pairs.append((found.certain, float(hits[0])))
    if len(pairs) < 3:
        return ""
    for unit, factor in FACTORS["width"].items():
        if sum(abs(v * factor - cm) <= 0.03 * cm for v, cm in pairs) >= 0.8 * len(pairs):
            return unit
    return ""


def ask_pick_density(pool: Pool) -> None:
    """Ask for the unit of a pick density that is kept as the mill has it, where neither heading nor values tell."""
    if _heading_unit(pool, "pick_density") or pool.answers.unit(pool.heading, "pick_density"):
        return
    bare = [
        q.certain
        for _, _, v in pool.cells()
        if (q := quantity(plain_number(v) if type(v) is not str else v)) and q.certain
    ]
    fitting = [unit for unit, bounds in USUAL["pick_density"].items() if bare and _share(bare, bounds) >= 0.6]
    if len(fitting) > 1:
        _ask_unit(NumberPlan(pool, "pick_density"), fitting, bare)


def _percent_or_fraction(pool: Pool, plan: NumberPlan, seen: _Seen) -> str:
    bare = _bare(seen, plan)
    if not bare:
        return "percent"
    small = [v for v in bare if 0 < v <= 1]
    if answer := pool.answers.value(pool.heading):
        return (
            "mixed"
            if answer == "fraction" and len(small) < len(bare)
            else "fraction"
            if answer == "fraction"
            else "percent"
        )
    marked = sum(bool(unit) for _, _, unit in seen.texts) + sum(bool(unit) for _, unit in seen.typed)
    if not small:
        return "percent"
    large = len(bare) - len(small)
    if not large and (not marked or len(small) >= 3 or max(small) <= 1):
        return _fractions(pool, small)
    if len(small) >= 3 or len(small) >= 0.1 * len(bare):
        pool.note("percent-mixed", f"{pool.name} stands as percent and as fraction: values up to 1 read as fraction.",
                  understood="fraction up to 1, percent above")  # fmt: skip
        return "mixed"
    plan.asked, low = True, f"{small[0]:g}"
    pool.ask("value", f"{pool.name} {low} stands among percent: it can be {small[0] * 100:g} % or {low} %.",
             f'Answer --answer "{pool.heading}=fraction" for {small[0] * 100:g} %, "{pool.heading}=percent" for {low} %.',
             raw=low)  # fmt: skip
    return "mixed"


def _fractions(pool: Pool, small: Iterable[float]) -> str:
    if "%" in pool.heading:
        span = _span(list(small))
        pool.note("percent-understood", f"{pool.name} is headed %, yet {span} are fractions: 0.88 is 88 %.",
                  understood="fraction")  # fmt: skip
    return "fraction"


def _words(dimension: str | None) -> list[str]:
    return [WORDS[unit] for unit in FACTORS.get(dimension or "", {}) if WORDS[unit]] or ["no unit"]
