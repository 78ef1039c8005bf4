"""How a column of numbers is to be read: decimal mark, unit, percent or fraction, each decided from all its values.

READING.md, section 5.
"""

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from tracker.domain.findings import Choice
from tracker.errors import Message, message
from tracker.intake.columns.number_columns import (
    EACH,
    USUAL,
    NumberPlan,
    currency_of,
    heading_unit,
    plausible,
    unit_of_code,
)
from tracker.intake.columns.pool import ColumnPool
from tracker.intake.columns.shown import plain_number
from tracker.intake.report import answers_for
from tracker.intake.vocabulary.numbers import COMMA, POINT, NumberInText, quantity
from tracker.intake.vocabulary.units import FACTORS, WORDS, dimension_of, unit_named

_USUAL_WIDTH_CM = (100, 560)


def plan_numbers(pool: ColumnPool) -> NumberPlan:
    """Decide decimal mark and unit for a column of numbers, asking where two readings stand."""
    assert pool.column is not None
    dimension = dimension_of(pool.column)
    plan = NumberPlan(pool, dimension)
    seen = _survey(plan)
    plan.decimals = _decimals(pool, plan, seen)
    if dimension is None:
        named = Counter(filter(None, (currency_of(found.unit) for _, found, _ in seen.texts)))
        plan.currency = max(named, key=lambda one: named[one], default="")
    if dimension == "fraction":
        plan.unit = _percent_or_fraction(pool, plan, seen)
    elif dimension in USUAL or dimension == "length":
        plan.unit = _unit(pool, plan, seen)
    elif dimension:
        plan.unit = heading_unit(pool, dimension) or next(iter(FACTORS[dimension]))
    plan.unit_words = WORDS.get(plan.unit, plan.unit)
    return plan


@dataclass(slots=True)
class _Seen:
    """What stands in a column."""

    typed: list[tuple[float, str]] = field(default_factory=list)
    """Numbers and the unit that their format names."""
    texts: list[tuple[str, NumberInText, str]] = field(default_factory=list)
    """Texts with a number, and the unit that they name (`?` for an unknown one)."""


def _survey(plan: NumberPlan) -> _Seen:
    seen, pool, dimension = _Seen(), plan.pool, plan.dimension
    has_codes = any(part.sheet.extras.codes for part in pool.parts)
    for part, row, value in pool.cells():
        if type(value) is float or type(value) is int:
            seen.typed.append((float(value), unit_of_code(dimension, part.code(row)) if has_codes else ""))
    for (kind, value), count in pool.distinct.items():
        found = quantity(plan.without_words(value)[0]) if kind is str else None
        if found is not None:
            unit = (unit_named(dimension, found.unit.strip(" .()[]")) or "?") if found.unit.strip(" .") else ""
            seen.texts += [(value, found, unit)] * count
    return seen


def proven_decimals(pool: ColumnPool) -> set[str]:
    """The conventions that the texts of a column prove by themselves."""
    found: set[str] = set()
    for value in pool.texts:
        if "," in value or "." in value:
            one = quantity(value)
            if one and len(one.readings) == 1 and len(set(one.readings.values())) == 1:
                found.update(one.readings)
    return found


def _decimals(pool: ColumnPool, plan: NumberPlan, seen: _Seen) -> str:
    open_texts = [(text, found) for text, found, _ in seen.texts if found.certain is None]
    if not open_texts:
        return ""
    if answer := pool.answers.decimals(pool.called):
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
    choices = [
        Choice(pool.heading, mark, _with_unit(found.readings[mark]))
        for mark in (COMMA, POINT)
        if mark in found.readings
    ]
    pool.ask("decimals", choices, raw=text)
    plan.asked = True
    return POINT


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


def _unit(pool: ColumnPool, plan: NumberPlan, seen: _Seen) -> str:
    dimension = plan.dimension or ""
    default = next(iter(FACTORS[dimension]))
    answer = pool.answers.unit(pool.called, dimension)
    bare = _bare(seen, plan)
    heading = heading_unit(pool, dimension)
    if answer or not bare:
        return answer or heading or default
    if heading:
        return heading if not _contradicted(pool, dimension, heading, bare) else _ask_unit(plan, [heading], bare)
    if dimension == "length":
        return _length_unit(plan, bare)
    if dimension == "width" and (unit := _unit_by_type(pool)):
        pool.note("unit-understood", understood=WORDS[unit], how="types")
        return unit
    shares = {unit: _share(bare, bounds) for unit, bounds in USUAL[dimension].items()}
    best = max(shares, key=lambda unit: shares[unit])
    if shares[best] >= 0.95 and all(share < 0.5 for unit, share in shares.items() if unit != best):
        pool.note("unit-understood", understood=WORDS[best], how="values", span=_span(bare))
        return best
    likely = [unit for unit, share in shares.items() if share >= 0.2]
    return _ask_unit(plan, likely if len(likely) > 1 else list(shares), bare)


def _share(values: list[float], bounds: tuple[float, float]) -> float:
    return sum(bounds[0] <= v <= bounds[1] for v in values) / len(values) if values else 1.0


def _contradicted(pool: ColumnPool, dimension: str, unit: str, bare: list[float]) -> bool:
    """Does the unit of the heading fit next to none of the values, and another one nearly all?"""
    if dimension != "width":
        return False
    factor = FACTORS["width"][unit]
    if _share([v * factor for v in bare], _USUAL_WIDTH_CM) >= 0.1:
        return False
    return any(_share(bare, bounds) >= 0.9 for other, bounds in USUAL["width"].items() if other != unit)


def _span(values: list[float]) -> str:
    low, high = min(values), max(values)
    return f"{low:g}" if low == high else f"{low:g}–{high:g}"


def _with_unit(value: float, unit: str | None = None) -> Message:
    return message("with-unit", number=float(f"{value:.6g}"), unit=unit)


def _ask_unit(plan: NumberPlan, units: list[str], bare: list[float]) -> str:
    """Ask which of the units it is; one unit alone is that of a heading which the values contradict."""
    pool, plan.asked, span = plan.pool, True, _span(bare)
    headed = WORDS[units[0]] if len(units) == 1 else None
    if headed:
        units = units + [u for u, bounds in USUAL["width"].items() if u != units[0] and _share(bare, bounds) >= 0.9]
    pool.ask("unit", answers_for(pool.heading, *(WORDS[u] for u in units[:3])), raw=span, headed=headed)
    return units[0]


def _length_unit(plan: NumberPlan, bare: list[float]) -> str:
    """Metres, unless the sheet is English: then yards are as likely."""
    if plan.pool.language == "en":
        return _ask_unit(plan, ["m", "yard"], bare)
    plan.pool.note("unit-understood", understood="m", how="usual")
    return "m"


def _unit_by_type(pool: ColumnPool) -> str:
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


def ask_pick_density(pool: ColumnPool) -> None:
    """Ask for the unit of a pick density that is kept as the mill has it, where neither heading nor values tell."""
    if heading_unit(pool, "pick_density") or pool.answers.unit(pool.called, "pick_density"):
        return
    bare = [
        q.certain
        for _, _, v in pool.cells()
        if (q := quantity(plain_number(v) if type(v) is not str else v)) and q.certain
    ]
    fitting = [unit for unit, bounds in USUAL["pick_density"].items() if bare and _share(bare, bounds) >= 0.6]
    if len(fitting) > 1:
        _ask_unit(NumberPlan(pool, "pick_density"), fitting, bare)


def _percent_or_fraction(pool: ColumnPool, plan: NumberPlan, seen: _Seen) -> str:
    bare = _bare(seen, plan)
    if not bare:
        return "percent"
    if heading_unit(pool, "fraction") == "permille":
        return "permille"
    small = [v for v in bare if 0 < v <= 1]
    answer = pool.answers.value(pool.called)
    if answer == "fraction":
        return "mixed" if len(small) < len(bare) else "fraction"
    if answer:
        return "percent"
    marked = sum(bool(unit) for _, _, unit in seen.texts) + sum(bool(unit) for _, unit in seen.typed)
    if not small:
        return "percent"
    large = len(bare) - len(small)
    if not large and (not marked or len(small) >= 3 or max(small) <= 1):
        return _fractions(pool, small)
    if len(small) >= 3 or len(small) >= 0.1 * len(bare):
        pool.note("percent-mixed", understood=message("understood-mixed"))
        return "mixed"
    plan.asked, low = True, f"{small[0]:g}"
    meant = {"fraction": small[0] * 100, "percent": small[0]}
    pool.ask(
        "value", [Choice(pool.heading, answer, _with_unit(share, "%")) for answer, share in meant.items()], raw=low
    )
    return "mixed"


def _fractions(pool: ColumnPool, small: Iterable[float]) -> str:
    if "%" in pool.heading:
        pool.note("percent-understood", understood="fraction", span=_span(list(small)))
    return "fraction"
