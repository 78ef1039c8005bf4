"""Lines between the rows of a loom list of which no word says what they name: `North side`, `Weaving 2` (READING.md, 4).

They are asked about where numbers start again below them, or where no column is the machine type; else they are passed over.
"""

from collections.abc import Sequence
from dataclasses import replace

from tracker.domain.findings import Choice
from tracker.intake.answers import HALL, IGNORE, SECTION, Answers, Called
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort
from tracker.intake.layout.type_lines import lines_between
from tracker.intake.report import Report, raw_text

_FIELDS = {HALL: "hall", "machine type": "machine_type", "row": "hall_row"}
"""Answer → what of the rows below a line it names."""


def settled(block: TableBlock, rows: Sequence[BodyRow], answers: Answers, report: Report) -> list[BodyRow]:
    """The rows of a loom list, those below such lines with what the answers say that they name; or a question."""
    lines = lines_between(block, rows)
    if not lines or (len(lines) > 1 and len(set(lines.values())) == 1):  # the title of each page
        return list(rows)
    said = {i: answers.section(Called(text, block.sheet.name, (_cell(block, rows[i]),))) for i, text in lines.items()}
    told = next((answer for answer in said.values() if answer), "")
    if told:
        return _filled_down(rows, lines, {i: answer or told for i, answer in said.items()})
    untyped = block.recognised.column_of("machine_type") is None and not all(
        row.machine_type for row in rows if row.sort is Sort.DATA
    )
    if untyped or _start_again(block, rows, lines):
        first = min(lines)
        kinds = [HALL, "machine type"] if untyped else [HALL, IGNORE]
        report.ask(
            SECTION, block.sheet, lines[first], ", ".join(_cell(block, rows[i]) for i in lines),
            [Choice(lines[first], kind) for kind in kinds], raw=" | ".join(lines.values()), code="section-lines",
            how="untyped" if untyped else "again",
        )  # fmt: skip
        return [replace(row, sort=Sort.SECTION) if i in lines else row for i, row in enumerate(rows)]
    return list(rows)


def _cell(block: TableBlock, row: BodyRow) -> str:
    column = next(c for c in block.columns if block.sheet.value(row.row, c) is not None)
    return block.sheet.name_of(row.row, column)


def _filled_down(rows: Sequence[BodyRow], lines: dict[int, str], said: dict[int, str]) -> list[BodyRow]:
    found, below = [], {}
    for i, row in enumerate(rows):
        if i in lines:
            name = _FIELDS.get(said[i])
            below = below | {name: lines[i]} if name else below
            found.append(replace(row, sort=Sort.SECTION if name else Sort.NOTE, text=lines[i]))
            continue
        if row.sort is Sort.SECTION and row.hall and not row.machine_type:
            below.pop("hall", None)  # a line that names the hall itself
        found.append(replace(row, **below) if row.sort is Sort.DATA else row)
    return found


def _start_again(block: TableBlock, rows: Sequence[BodyRow], lines: dict[int, str]) -> bool:
    """Does a loom number stand below two of the lines, in the same hall?"""
    loom, hall = (block.recognised.column_of(name) for name in ("loom", "hall"))
    seen: dict[tuple[str, str], int] = {}
    section = -1
    for i, row in enumerate(rows):
        section = i if i in lines else section
        value = block.sheet.value(row.row, loom) if loom is not None and row.sort is Sort.DATA else None
        if value is None or i in lines:
            continue
        place = raw_text(block.sheet.value(row.row, hall)) if hall is not None else row.hall or ""
        if seen.setdefault((raw_text(value), place), section) != section:
            return True
    return False
