"""How well the values of a column fit a field: what headings leave open, the cells may tell."""

import re
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from tracker.domain.tables import Kind, Table
from tracker.domain.words import fold
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.vocabulary.dates import date_text, from_serial, time_text, year_of
from tracker.intake.vocabulary.dictionary import numbered, tokens, vocabulary
from tracker.intake.vocabulary.numbers import quantity
from tracker.intake.vocabulary.phrases import look_up
from tracker.intake.vocabulary.placeholders import emptiness
from tracker.intake.vocabulary.spans import is_part_of_date, span_text, without_until
from tracker.office.sheet import Mark

_SAMPLE = 300
_LONG_RUN = 8
"""Rows; types, speeds and widths of a list stand twice sooner."""
_YARN = re.compile(r"\W*ne\W*", re.IGNORECASE)
"""A heading that is the efficiency in German and the yarn count in English."""
_SERIAL = re.compile(r"[2-7]\d{4}(?:[.,]\d+)?")
"""A day as spreadsheets count days."""
_SHORT_YEAR = re.compile(r"['’]?\d{1,2}(?:\.0)?")
"""98, '04, and 5.0 as grids give whole numbers: a year without its century."""
USUAL_NUMBERS = {
    "year": (1950, 2100), "frames": (1, 40), "speed_ppm": (60, 2500), "efficiency": (0.2, 100), "reed_width_cm": (1, 6000),
}  # fmt: skip


def evidence_of(block: TableBlock) -> Callable[[int, str, Table], float]:
    """For `recognise`: (column, field, table) → factor on the certainty of the heading, 0.3 to 1.05."""
    samples: dict[int, dict[int, Any]] = {}
    halls = [c for c in block.columns if ("looms", "hall") in look_up(block.headings[c])]

    def sample(column: int) -> dict[int, Any]:
        if column not in samples:
            samples[column] = _sample(block, column)
        return samples[column]

    def factor(column: int, name: str, table: Table) -> float:
        values = list(sample(column).values())
        if name == "efficiency" and _YARN.fullmatch(block.headings[column]) and _are_yarn_counts(values):
            return 0.5
        if name in ("loom", "row", "place") and _count_rows(values):
            return 0.75
        if name == "row" and "#" in numbered(vocabulary(), tokens(block.headings[column])) and _numbers_rows(values):
            return 0.5  # `Sıra no` is the row of a hall, or counts the rows of the list: no hall has one loom to a row
        if values and name == "loom" and table.name == "looms":
            return _fit_of_names(sample(column), [sample(c) for c in halls if c != column])
        return _fit(values, name, table)

    return factor


def _fit_of_names(names: dict[int, Any], halls: list[dict[int, Any]]) -> float:
    """Of what a column has for the looms' names, by row: few are the same, but for those that begin again hall after hall."""
    told = [[*names.values()], *([(value, hall.get(row)) for row, value in names.items()] for hall in halls)]
    distinct = max(_distinct(values) for values in told)
    if distinct > 0.9 and _distinct(told[0]) > 0.9:
        return 1.0
    return 0.95 if distinct > 0.3 or len(names) < 6 or _begins_again(told[0]) else 0.5


def _begins_again(values: list[Any]) -> bool:
    """Long runs in which nothing stands twice: numbers hall after hall, the halls in lines above them."""
    runs, seen = 1, set()
    for value in map(str, values):
        if value in seen:
            runs, seen = runs + 1, set()
        seen.add(value)
    return len(values) / runs >= _LONG_RUN


def _sample(block: TableBlock, column: int) -> dict[int, Any]:
    """Row → value, of rows that fill at least a third of the columns."""
    found = {}
    sheet, columns = block.sheet, block.columns
    for row in range(block.bottom + 1, block.end):
        value = sheet.value(row, column)
        if value is None or type(value) is Mark or (isinstance(value, str) and emptiness(value)):
            continue
        if sum(sheet.value(row, c) is not None for c in columns) * 3 >= len(columns):
            found[row] = value
            if len(found) >= _SAMPLE:
                break
    return found


def _fit(values: list[Any], name: str, table: Table) -> float:
    if not values:
        return 0.97
    if name == "machine_type":
        if (_distinct(values) > 0.9 and len(values) >= 8) or _known_insertion(values) > 0.5:
            return 0.6
        return _share(values, lambda v: not _in(v, (1950, 2100)), 0.5)
    if name == "insertion":
        return 1.05 if _known_insertion(values) > 0.5 else 0.95
    if name == "hall":
        return 0.6 if _distinct(values) > 0.7 and len(values) >= 8 else 1.0
    if name == "year":
        return _share(
            values,
            lambda v: _in(v, USUAL_NUMBERS[name]) or _says_year(v) or _SHORT_YEAR.fullmatch(str(v)) is not None,
            0.45,
        )
    if name in USUAL_NUMBERS:
        numbers = _share(values, lambda v: _number(v) is not None, 0.45)
        return min(numbers, _share(values, lambda v: _in(v, USUAL_NUMBERS[name]), 0.75))
    kind = next((column.kind for column in table.columns if column.field == name), Kind.TEXT)
    tests: dict[Kind, Callable[[Any], bool]] = {
        Kind.NUMBER: _is_number, Kind.INTEGER: _is_number, Kind.FRACTION: _is_number, Kind.DATE: _is_date,
        Kind.MOMENT: _is_date, Kind.TIME: _is_time, Kind.YES_NO: _says_yes_or_no,
    }  # fmt: skip
    return _share(values, tests[kind], 0.45) if kind in tests else 1.0


def _distinct(values: list[Any]) -> float:
    """How many are different, as a share."""
    return len({str(v) for v in values}) / len(values)


def _count_rows(values: list[Any]) -> bool:
    """1, 2, 3 … through the whole list: a running number, if another column may be the field as well."""
    return len(values) >= 8 and _counts_up(values)


def _numbers_rows(values: list[Any]) -> bool:
    return len(values) > 2 and _counts_up(values)


def _counts_up(values: list[Any]) -> bool:
    numbers = [int(v) if isinstance(v, float) and v == int(v) else v for v in values]
    count = range(1, len(values) + 1)
    return numbers in (list(count), [f"{n}" for n in count])


def _are_yarn_counts(values: list[Any]) -> bool:
    """Whole numbers that are too low for an efficiency in percent."""
    numbers = sorted(n for v in values if (n := _number(v)) is not None)
    return len(numbers) > 2 and all(n == int(n) and n >= 2 for n in numbers) and numbers[len(numbers) // 2] <= 60


def _known_insertion(values: list[Any]) -> float:
    words = vocabulary().words
    known = words["air_jet"] | words["rapier"] | words["other_insertion"]
    return sum(" ".join(tokens(str(v))) in known for v in values) / len(values)


def _share(values: list[Any], test: Callable[[Any], bool], low: float) -> float:
    """1 where most values pass the test, down to `low` where few do."""
    share = sum(map(test, values)) / len(values)
    return 1.0 if share >= 0.6 else low + (1 - low) * share


def is_usual(name: str, value: Any) -> bool:
    """Does a number lie where those of the field do, in one of the ways in which its decimals may be read?"""
    low, high = USUAL_NUMBERS[name]
    found = quantity(value) if isinstance(value, str) else None
    return any(low <= n <= high for n in found.readings.values()) if found else _in(value, (low, high))


def _number(value: Any) -> float | None:
    if isinstance(value, bool):
        return None
    if isinstance(value, float | int):
        return float(value)
    if isinstance(value, datetime | date):
        return float(year_of(value))
    found = quantity(value) if isinstance(value, str) else None
    if found is None:
        return None
    return found.certain if found.certain is not None else max(found.readings.values())


def _in(value: Any, bounds: tuple[float, float]) -> bool:
    number = _number(value)
    return number is not None and bounds[0] <= number <= bounds[1]


def _says_year(value: Any) -> bool:
    """`06/1998`, `06/98`, `März 1998`, a whole date."""
    return isinstance(value, str) and bool(span_text(value) or date_text(value) or is_part_of_date(value))


def _is_number(value: Any) -> bool:
    return not isinstance(value, datetime | date) and _number(value) is not None


def _is_date(value: Any) -> bool:
    if isinstance(value, datetime | date):
        return True
    if isinstance(value, str):
        text = without_until(value)
        return bool(date_text(text) or span_text(text) or _SERIAL.fullmatch(text) or is_part_of_date(text))
    return isinstance(value, float | int) and from_serial(float(value)) is not None


def _says_yes_or_no(value: Any) -> bool:
    words = vocabulary().words
    said = f"{value:g}" if isinstance(value, float) else fold(value)
    return said in ("true", "false") or any(said in map(fold, words[name]) for name in ("yes", "no"))


def _is_time(value: Any) -> bool:
    if isinstance(value, str):
        return time_text(value) is not None
    return not isinstance(value, bool)
