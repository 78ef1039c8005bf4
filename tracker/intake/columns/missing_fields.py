"""A loom list without speed, efficiency or reed width, while a column of the mill's own looks like one: is it? (READING.md, 3)"""

import re
from collections.abc import Iterator
from typing import Any

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import LOOMS
from tracker.intake.answers import FIELD, OWN_COLUMN, Answers
from tracker.intake.columns.number_columns import USUAL
from tracker.intake.columns.pool import ColumnPart
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report
from tracker.intake.vocabulary.dictionary import numbered, tokens, vocabulary
from tracker.intake.vocabulary.heading_forms import QUALIFIERS, forms
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.like_a_field import is_kind_of
from tracker.intake.vocabulary.numbers import quantity
from tracker.intake.vocabulary.placeholders import emptiness
from tracker.intake.vocabulary.units import is_unit, unit_named
from tracker.office.sheet import Mark

_DIMENSIONS = {"speed_ppm": "speed", "efficiency": "fraction", "reed_width_cm": "width"}
_LIKELY: dict[str, tuple[tuple[float, float], ...]] = {
    "speed_ppm": ((150, 1400),), "efficiency": ((50, 100), (0.5, 1)), "reed_width_cm": (USUAL["width"]["cm"],),
}  # fmt: skip
"""Field → what its values are in nearly every mill, where nothing else speaks for it."""
_POSSIBLE: dict[str, tuple[tuple[float, float], ...]] = {
    "speed_ppm": ((60, 2500),), "efficiency": ((0.2, 100),), "reed_width_cm": tuple(USUAL["width"].values()),
}  # fmt: skip
"""Field → what its values may be, where a unit or a word speaks for it."""
_NUMBERS = re.compile(r"\d+(?:[.,]\d+)?")
_NAME = re.compile(r"[^\W\d_]+\d")
"""`C601` is no 601."""
_MOST = 0.9
_FEWEST = 3


def ask_missing(reading: TableReading, answers: Answers, report: Report) -> None:
    """Ask of each column that looks like a field which the list lacks, once for a heading."""
    block = reading.block
    if reading.table is not LOOMS or block.joins:
        return
    rivals = {c for columns in block.recognised.rivals.values() for c in columns}
    lacking = [name for name in _DIMENSIONS if block.recognised.column_of(name) is None]
    for c in block.columns if lacking else ():
        called = block.called(c)
        if c in block.recognised.meanings or c in rivals or answers.field(called) is not None:
            continue
        likely = [LOOMS.column(name).heading.lower() for name in lacking if _looks_like(reading, c, name)]
        if likely:
            part = ColumnPart(block, c, [])
            options = [Choice(part.heading, answer) for answer in (*likely, OWN_COLUMN)]
            report.ask(FIELD, block.sheet, part.heading, part.heading_cell, options, code="may-be-field", fields=likely)
        elif held := [LOOMS.column(name).heading.lower() for name in lacking if _holds_with_others(reading, c, name)]:
            report.whole(Severity.NOTE, "several-in-one-cell", block.sheet, ColumnPart(block, c, []).heading_cell,
                         heading=block.headings[c], fields=held)  # fmt: skip


def _holds_with_others(reading: TableReading, column: int, name: str) -> bool:
    """Does the heading name the field, while nearly every cell holds more than one number (`640 / 86.5 %`)?"""
    if not is_kind_of(reading.block.headings[column], name):
        return False
    several = [isinstance(value, str) and len(_NUMBERS.findall(value)) > 1 for value in _values(reading, column)]
    return len(several) >= _FEWEST and sum(several) >= _MOST * len(several)


def _looks_like(reading: TableReading, column: int, name: str) -> bool:
    heading = reading.block.headings[column]
    units = [unit for _, unit in forms(heading) if unit]
    speaks = any(unit_named(_DIMENSIONS[name], unit) for unit in units) or is_kind_of(heading, name)
    if not speaks and (units or not _says_nothing(heading)):
        return False
    return _lie_in(
        list(_values(reading, column)), _POSSIBLE[name] if speaks else _LIKELY[name], 1 if speaks else _FEWEST
    )


def _says_nothing(heading: str) -> bool:
    """Is the heading none of those we know, and no number, date or mark of something?"""
    match, vocab = match_heading(heading), vocabulary()
    qualifying = {word for name, _ in QUALIFIERS for word in vocab.words[name]}
    words = tuple(word for word in tokens(heading) if word not in qualifying)
    if words == ("n",):  # `n soll` is no number, but the speed as formulas write it
        return True
    return not match.candidates and not match.serial and "#" not in numbered(vocab, words) and not is_unit(heading)


def _values(reading: TableReading, column: int) -> Iterator[Any]:
    for body in reading.rows:
        value = reading.block.sheet.value(body.row, column)
        if value is not None and type(value) is not Mark and not (isinstance(value, str) and emptiness(value)):
            yield value


def _lie_in(values: list[Any], spans: tuple[tuple[float, float], ...], fewest: int) -> bool:
    """Are nearly all of the values, and so many at least, numbers within one of the spans?"""
    numbers = [number for value in values if (number := _number(value)) is not None]
    if len(numbers) < max(fewest, _MOST * len(values)):
        return False
    return any(sum(low <= n <= high for n in numbers) >= _MOST * len(numbers) for low, high in spans)


def _number(value: Any) -> float | None:
    if isinstance(value, bool):
        return None
    if isinstance(value, float | int):
        return float(value)
    found = quantity(value) if isinstance(value, str) else None
    return found.certain if found and not _NAME.match(str(value)) else None
