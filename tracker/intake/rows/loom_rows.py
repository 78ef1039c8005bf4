"""Loom rows beyond their cells: the hall that they stand in, and letters that look like figures."""

import re
from collections import Counter
from dataclasses import dataclass
from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.tables import LOOMS, Kind
from tracker.domain.words import fold
from tracker.intake.answers import HALL, IGNORE, SHEET, Answers
from tracker.intake.layout.type_lines import fine_shape
from tracker.intake.report import Report, answers_for
from tracker.intake.vocabulary.halls import hall_in

_LETTERS = {
    "А": "A", "В": "B", "С": "C", "Е": "E", "Н": "H", "К": "K", "М": "M", "О": "O", "Р": "P", "Т": "T", "Х": "X",
    "а": "a", "е": "e", "о": "o", "р": "p", "с": "c", "х": "x", "у": "y", "У": "Y", "І": "I", "і": "i",
    "Α": "A", "Β": "B", "Ε": "E", "Ζ": "Z", "Η": "H", "Ι": "I", "Κ": "K", "Μ": "M", "Ν": "N", "Ο": "O", "Ρ": "P",
    "Τ": "T", "Χ": "X", "Υ": "Y", "ο": "o", "ν": "v",
} | {chr(wide): chr(wide - 0xFEE0) for wide in range(0xFF01, 0xFF5F)}  # fmt: skip
"""Letters of other scripts, and wide ones, that look like a Latin letter or a figure."""
_FIGURES = {
    "O": "0",
    "o": "0",
    "Q": "0",
    "I": "1",
    "l": "1",
    "ı": "1",
    "|": "1",
    "İ": "1",
    "S": "5",
    "B": "8",
    "Z": "2",
}
_AS_FIGURES = str.maketrans(_FIGURES | {letter: _FIGURES.get(like, like) for letter, like in _LETTERS.items()})
_AS_LETTERS = str.maketrans(_LETTERS | {"ı": "i", "İ": "I"})
_SUSPECT = frozenset(_FIGURES) | frozenset(_LETTERS)
_FOREIGN = re.compile(r"[\u0370-\u03ff\u0400-\u04ff\uff01-\uff5e]")


@dataclass(slots=True)
class LoomRows:
    readings: list[Any]
    answers: Answers
    report: Report


def add_halls(looms: LoomRows) -> dict[tuple[int, int], str]:
    """(reading, row index) → hall: from its column, the line above the rows, the title, or the sheet's name."""
    found: dict[tuple[int, int], str] = {}
    bare: list[Any] = []
    for reading in looms.readings:
        halls = _halls_of(reading, looms)
        found.update({(id(reading), i): hall for i, hall in enumerate(halls)})
        if not any(halls):
            bare.append(reading)
    _ask_sheets(bare, looms, found)
    return _one_spelling(found, looms)


def _halls_of(reading: Any, looms: LoomRows) -> list[str]:
    column = reading.column_of("hall")
    own = reading.values[column] if column is not None else [None] * len(reading.rows)
    sections = [body.hall for body in reading.rows]
    if column is not None and any(own):
        return _from_column(reading, column, own, sections, looms.report)
    if any(sections):
        return [hall or "" for hall in sections]
    sheet = reading.block.sheet
    if beside := _halls_beside(reading, looms.report):
        return beside
    name = " ".join(sheet.name.replace("_", " ").split())
    hall = name if looms.answers.sheet(sheet.name) == HALL else hall_in(name, alone=True)
    if hall:
        looms.report.whole(Severity.NOTE, "hall-from-sheet", sheet, "", understood=hall)
    return [hall or ""] * len(reading.rows)


def _halls_beside(reading: Any, report: Report) -> list[str]:
    """Halls in a column without a heading, as side labels merged over their looms are."""
    block = reading.block
    free = [c for c in range(max(0, block.columns[0] - 2), block.columns[-1] + 3) if c not in block.headings]
    for c in free:
        values = [block.sheet.value(body.row, c) for body in reading.rows]
        if values and all(isinstance(v, str) and hall_in(v) for v in values):
            report.whole(
                Severity.NOTE, "hall-beside", block.sheet, block.sheet.name_of(reading.rows[0].row, c), raw=values[0],
                understood=values[0],
            )  # fmt: skip
            return values
    return []


def _from_column(reading: Any, column: int, own: list[Any], sections: list[str | None], report: Report) -> list[str]:
    """Blank hall cells: the section's hall; below a hall written once for a group, that hall; else the row is refused."""
    halls, last = [], ""
    blank = sum(not hall for hall in own)
    grouped = bool(own and own[0]) and blank >= 0.5 * len(own)
    for i, (hall, section) in enumerate(zip(own, sections, strict=True)):
        if hall:
            last = str(hall)
            halls.append(last)
            continue
        row = reading.rows[i].row
        if section or grouped:
            halls.append(section or last)
            report.cell(Severity.NOTE, "hall-from-above", reading.block.sheet, row, column,
                        heading=reading.block.headings[column], understood=section or last)  # fmt: skip
            continue
        halls.append("")
        if i in reading.refused:
            continue
        reading.refused.add(i)
        report.cell(Severity.REFUSED, "missing-value", reading.block.sheet, row, column,
                    heading=reading.block.headings[column], field=LOOMS.column("hall").heading.lower(),
                    line=reading.block.sheet.row_range(row, reading.block.columns))  # fmt: skip
    return halls


def _ask_sheets(bare: list[Any], looms: LoomRows, found: dict[tuple[int, int], str]) -> None:
    """Loom lists without a hall: one is a mill with one hall; several that use the same numbers may be one per hall."""
    by_sheet: dict[tuple[str, str], set[str]] = {}
    for reading in bare:
        sheet, column = reading.block.sheet, reading.column_of("loom")
        numbers = {str(v) for v in reading.values.get(column, ()) if v is not None}
        by_sheet.setdefault((sheet.file, sheet.name), set()).update(numbers)
    names = list(by_sheet)
    clash = any(by_sheet[a] & by_sheet[b] for i, a in enumerate(names) for b in names[i + 1 :])
    said: set[int] = set()
    halled = {_place_of(reading) for reading in looms.readings if reading not in bare}
    for reading in bare:
        sheet = reading.block.sheet
        if _place_of(reading) in halled:
            _refuse_hallless(reading, looms.report)
            continue
        clash = clash or any(file == sheet.file for file, _ in halled)
        if clash and looms.answers.sheet(sheet.name) is None:
            looms.report.ask(SHEET, sheet, sheet.name, "", answers_for(sheet.name, HALL, IGNORE), code="sheet-is-hall")
        elif reading.rows and id(sheet) not in said:
            said.add(id(sheet))
            looms.report.whole(Severity.NOTE, "no-hall", sheet, "")


def _place_of(reading: Any) -> tuple[str, str]:
    return reading.block.sheet.file, reading.block.sheet.name


def _refuse_hallless(reading: Any, report: Report) -> None:
    """Refuse the rows of a list without halls on a sheet on which others have theirs."""
    sheet, columns, loom = reading.block.sheet, reading.block.columns, reading.column_of("loom")
    for i, body in enumerate(reading.rows):
        if i not in reading.refused:
            reading.refused.add(i)
            report.cell(Severity.REFUSED, "missing-value", sheet, body.row, loom if loom is not None else columns[0],
                        raw=sheet.value(body.row, loom or columns[0]) or "", line=sheet.row_range(body.row, columns),
                        field=LOOMS.column("hall").heading.lower())  # fmt: skip


def _one_spelling(found: dict[tuple[int, int], str], looms: LoomRows) -> dict[tuple[int, int], str]:
    """Halls that differ only in case or blanks are one, in the spelling that occurs most."""
    counts = Counter(found.values())
    best: dict[str, str] = {}
    for hall, _ in sorted(counts.items(), key=lambda item: -item[1]):
        best.setdefault(fold(hall), hall)
    for hall in counts:
        if best[fold(hall)] != hall and looms.readings:
            sheet = looms.readings[0].block.sheet
            looms.report.whole(Severity.NOTE, "hall-spelling", sheet, "", raw=hall, understood=best[fold(hall)])
    return {key: best[fold(hall)] for key, hall in found.items()}


def figures_for_letters(text: str) -> list[str]:
    """The text with one letter, or every letter, that looks like a figure replaced by it: `A-O9` → `A-09`."""
    plain = text.translate(_AS_LETTERS)
    places = [i for i, letter in enumerate(text) if letter.translate(_AS_FIGURES).isdigit() and not letter.isdigit()]
    one_each = [plain[:i] + text[i].translate(_AS_FIGURES) + plain[i + 1 :] for i in places]
    return list(dict.fromkeys([*one_each, text.translate(_AS_FIGURES), plain]))


def note_lookalikes(readings: list[Any], answers: Answers, report: Report) -> None:
    """Report identifiers in which a letter stands where the others have a figure (or a letter of another script)."""
    for reading in readings:
        for c, pool in reading.pools.items():
            column = pool.column
            wanted = column is not None and (column.kind is Kind.IDENTIFIER or column.field == "machine_type")
            if wanted and c in reading.values:
                _note_column(reading, c, answers, report)


def _note_column(reading: Any, c: int, answers: Answers, report: Report) -> None:
    texts = Counter(v for v in reading.values[c] if isinstance(v, str))
    shapes: Counter[str] = Counter()
    for text, count in texts.items():
        shapes[fine_shape(text)] += count
    strange = {text: like for text in texts if (like := _meant(text, texts, shapes))}
    sheet, heading = reading.block.sheet, reading.block.headings[c]
    for i, value in enumerate(reading.values[c] if strange else ()):
        if value in strange:
            like = strange[value]
            report.cell(Severity.NOTE, "look-alike", sheet, reading.rows[i].row, c, heading=heading, raw=value,
                        understood=value, like=like, how="listed" if like in texts else "meant")  # fmt: skip


def _meant(text: str, texts: Counter[str], shapes: Counter[str]) -> str:
    """What was perhaps meant: a text that is in the list, or has the shape of the others; `` where nothing is strange."""
    if (text.isascii() and text.isdigit()) or not any(letter in _SUSPECT for letter in text):
        return ""
    likes = [like for like in figures_for_letters(text) if like != text]
    twin = next((like for like in likes if like in texts), "")
    own = shapes[fine_shape(text)]
    rare = [like for like in likes if own <= 5 and shapes[fine_shape(like)] >= 3 * own]
    return twin or (rare[0] if rare else "") or (likes[-1] if _FOREIGN.search(text) and likes else "")
