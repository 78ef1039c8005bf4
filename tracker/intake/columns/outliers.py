"""Values a tenth or ten times, or 1/2.54 or 2.54 times, those of their column, or single ones far from all others: a slip or
inches among cm; asked, not judged.

READING.md, section 5.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import READINGS, Kind
from tracker.domain.units import CM_PER_INCH
from tracker.errors import message
from tracker.intake.answers import AS_WRITTEN
from tracker.intake.columns.number_columns import NumberPlan
from tracker.intake.columns.pool import ColumnPool
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import raw_text

FACTORS = {
    "reed_width_cm": (CM_PER_INCH, 10.0), "pick_density_per_cm": (CM_PER_INCH, 10.0), "speed_ppm": (10.0,), "efficiency": (10.0,),
}  # fmt: skip
"""Field → by how much a slip of the unit or of a figure is off."""
_FEWEST = 4
"""Other values that must be there to compare with."""
_GAP = 1.6
"""How far, as a factor, such values stand from the others."""
_ROOM = 1.3
"""How far beyond the others a value may come that is set right."""
_RARE = 0.25
"""Share of a column that slips may be; more than that is how the mill's looms are."""
_REED_WIDTHS_CM = (100.0, 400.0)
"""Widths below are inches where others are cm, however many they are; from above on, cm among inches may stand."""
_FAR = 4.0
"""How far, as a factor, a single value stands from the others that cannot be one of them, whatever the slip was."""
_SAME = 0.005
"""How near a width between these must come to one of the others."""


@dataclass(frozen=True, slots=True)
class _Value:
    reading: TableReading
    row: int
    column: int
    number: float

    @property
    def cell(self) -> str:
        return self.reading.block.sheet.name_of(self.reading.rows[self.row].row, self.column)

    @property
    def raw(self) -> Any:
        return self.reading.block.sheet.value(self.reading.rows[self.row].row, self.column)

    @property
    def who(self) -> str:
        """The loom, article … of the row."""
        key = self.reading.column_of(self.reading.table.key[0])
        return str(self.reading.values[key][self.row]) if key is not None else ""


def ask_outliers(pool: ColumnPool, readings: Iterable[TableReading]) -> None:
    """Ask once about the values of a column that are out by one of its factors, unless they were confirmed, or the unit
    of the widths was."""
    field = pool.column.field if pool.column else ""
    if field not in FACTORS:
        return
    said = field == "reed_width_cm" and pool.answers.unit(pool.called, "width") is not None
    values = list(_values_of(pool, readings))
    ordered = sorted(values, key=lambda one: one.number)
    slips = _outliers(ordered, field)
    far = [] if slips or pool.table is READINGS else _far(ordered)
    found = [
        (value, factor)
        for value, factor in (*slips, *((one, 0.0) for one in far))
        if not said
        and not pool.answers.as_written(pool.called, [value.cell], f"{field}|{value.who}|{value.number:.6g}")
    ]
    if found:
        _ask(pool, [value for value, _ in found], found[0][1], values)


def _values_of(pool: ColumnPool, readings: Iterable[TableReading]) -> Iterable[_Value]:
    for reading in readings:
        for c, own in reading.pools.items():
            plan = reading.plans.get(c)
            if own is pool and isinstance(plan, NumberPlan) and not plan.asked:
                for i, number in enumerate(reading.values[c]):
                    if isinstance(number, float | int) and number > 0:
                        yield _Value(reading, i, c, number)


def _outliers(values: Sequence[_Value], field: str) -> list[tuple[_Value, float]]:
    """(value, factor that sets it right) of those that stand apart from the others and would stand among them."""
    found: list[tuple[_Value, float]] = []
    numbers = [one.number for one in values]
    for i, (below, above) in enumerate(pairwise(numbers), 1):
        if above < _GAP * below:
            continue
        for few, many, up in ((values[:i], numbers[i:], True), (values[i:], numbers[:i], False)):
            if _FEWEST <= len(many) > len(few):
                factors = (factor if up else 1 / factor for factor in FACTORS[field])
                fitting = [one for one in factors if _sets_right([v.number for v in few], many, one, field)]
                found += [(one, fitting[0]) for one in few if fitting]
    return found


def _far(values: Sequence[_Value]) -> list[_Value]:
    """The lowest or highest value, where it stands further from all others than they do among themselves."""
    if len(values) <= _FEWEST:
        return []
    lowest, second, last, highest = (values[i].number for i in (0, 1, -2, -1))
    low = second > _FAR * lowest and second * second > highest * lowest
    high = highest > _FAR * last and highest * lowest > last * last
    return [values[0]] * low + [values[-1]] * high


def _sets_right(few: Sequence[float], many: Sequence[float], factor: float, field: str) -> bool:
    """Would the few stand among the others, and are they so few, or so unlike such values, that they may be slips?"""
    right = [number * factor for number in few]
    among = all(min(many) / _ROOM <= number <= max(many) * _ROOM for number in right)
    rare = len(few) <= max(1, _RARE * (len(few) + len(many)))
    if field == "reed_width_cm" and factor in (CM_PER_INCH, 1 / CM_PER_INCH):
        low, high = _REED_WIDTHS_CM
        if all(number < low for number in few):
            return among
        same = all(any(abs(number - one) <= _SAME * one for one in many) for number in right)
        return same and rare and (factor > 1 or all(number > high for number in few))
    told_apart = _GAP * max(many) < max(factor, 1 / factor) * min(
        many
    )  # where the others differ as much, it tells nothing
    return among and rare and told_apart


def _how(factor: float) -> str:
    """By which slip a value is off; 0: by none of them."""
    if not factor:
        return "far"
    return "inch" if round(max(factor, 1 / factor), 2) == CM_PER_INCH else "tenth" if factor > 1 else "ten"


def _ask(pool: ColumnPool, found: Sequence[_Value], factor: float, values: Sequence[_Value]) -> None:
    cells = [one.cell for one in found]
    others = [one.number for one in values if one not in found]
    share = pool.column is not None and pool.column.kind is Kind.FRACTION
    low, high = (float(f"{number * (100 if share else 1):.6g}") for number in (min(others), max(others)))
    unit = "%" if share else pool.column.unit if pool.column else None
    how = _how(factor)
    pool.report.whole(
        Severity.DOUBT, "odd-value", found[0].reading.block.sheet, ", ".join(cells), heading=pool.heading,
        raw=", ".join(raw_text(one.raw) for one in found), field=pool.name, who=[one.who for one in found if one.who] or None,
        low=message("with-unit", number=low, unit=None), high=message("with-unit", number=high, unit=unit), how=how,
        choices=[Choice(cells[0] if len(cells) == 1 else pool.heading, AS_WRITTEN)],
    )  # fmt: skip
