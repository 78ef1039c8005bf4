"""What is not loaded, or easily overlooked, is said: columns without a heading or a place in the table, hidden rows, what is struck
through."""

from collections.abc import Sequence

from tracker.domain.addresses import ranges
from tracker.domain.findings import Severity
from tracker.domain.own_sheets import remarks_among
from tracker.intake.columns.pool import ColumnPart
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.report import Report

_BESIDE = 3
"""Columns beyond the last heading in which stray cells count to the table."""


def note_leftovers(reading: TableReading, report: Report) -> None:
    """Note stray columns, columns that the table has no room for, hidden rows, and what is struck through."""
    _note_headless(reading, report)
    _note_unread(reading, report)
    _note_hidden(reading, report)
    _note_struck(reading, report)


def _note_headless(reading: TableReading, report: Report) -> None:
    block = reading.block
    first, last = block.columns[0], block.columns[-1]
    others = {c for c in range(first, last + 1 + _BESIDE) if c not in block.headings}
    for c in sorted(others - _headed_elsewhere(reading)):
        rows = [body.row for body in reading.rows if block.sheet.value(body.row, c) is not None]
        if rows:
            cells = ranges(block.sheet.place(row, c) for row in rows)
            report.whole(Severity.NOTE, "no-heading", block.sheet, cells, raw=block.sheet.value(rows[0], c))


def _cells_beside(blocks: Sequence[TableBlock], block: TableBlock) -> str:
    """The range that stands beside the first of the tables of a heading line and belongs to none, `` where there is none."""
    if any(other.top == block.top and other.columns[0] < block.columns[0] for other in blocks):
        return ""
    sheet, taken = block.sheet, {c for other in blocks for c in other.columns}
    headed = [
        c for c in range(sheet.width)
        if c not in taken and any(sheet.value(r, c) is not None for r in range(block.top, block.bottom + 1))
    ]  # fmt: skip
    filled = [r for r in range(block.bottom + 1, block.end) if any(sheet.value(r, c) is not None for c in headed)]
    if not filled:
        return ""
    return f"{sheet.name_of(block.top, headed[0])}:{sheet.name_of(filled[-1], headed[-1])}"


def note_beside(blocks: Sequence[TableBlock], report: Report) -> None:
    """Note what stands beside the tables of a sheet, headed in the same lines, and is none of them."""
    for block in blocks:
        if cells := _cells_beside(blocks, block):
            report.whole(Severity.NOTE, "beside-the-table", block.sheet, cells, table=block.recognised.table.sheet)


def _headed_elsewhere(reading: TableReading) -> set[int]:
    """Columns with something in the heading line: another table beside this one."""
    block = reading.block
    return {
        c
        for c in range(block.sheet.width)
        for r in range(block.top, block.bottom + 1)
        if block.sheet.value(r, c) is not None
    }


def _note_unread(reading: TableReading, report: Report) -> None:
    block = reading.block
    remarks = remarks_among(reading.table.name, block.headings)
    for c in block.columns if not reading.table.open_columns else ():
        if c not in block.recognised.meanings and c not in remarks:
            report.whole(
                Severity.NOTE, "column-not-loaded", block.sheet, ColumnPart(block, c, []).heading_cell,
                heading=block.headings[c], table=reading.table.named,
            )  # fmt: skip


def _note_hidden(reading: TableReading, report: Report) -> None:
    block = reading.block
    shown = block.sheet.extras
    numbers = [block.sheet.line_number(body.row) for body in reading.rows]
    hidden = [n for n in numbers if n in (shown.hidden_columns if block.sheet.transposed else shown.hidden_rows)]
    if hidden:
        report.whole(
            Severity.NOTE,
            "hidden-rows",
            block.sheet,
            "",
            hidden=len(hidden),
            rows=len(numbers),
            filter=shown.filtered or None,
        )
    beside = shown.hidden_rows if block.sheet.transposed else shown.hidden_columns
    out_of_sight = [c for c in block.columns if (block.sheet.place(0, c)[0 if block.sheet.transposed else 1]) in beside]
    if out_of_sight:
        parts = [ColumnPart(block, c, []) for c in out_of_sight]
        report.whole(
            Severity.NOTE, "hidden-columns", block.sheet, ", ".join(part.heading_cell for part in parts),
            headings=[part.heading for part in parts],
        )  # fmt: skip


def _note_struck(reading: TableReading, report: Report) -> None:
    block = reading.block
    struck = block.sheet.extras.struck
    rows = [body.row for body in reading.rows] if struck else []
    cells = {row: [at for c in block.columns if (at := block.sheet.place(row, c)) in struck] for row in rows}
    count = sum(map(bool, cells.values()))
    if count:
        where = ranges(at for found in cells.values() for at in found)
        report.whole(Severity.NOTE, "struck-through", block.sheet, where, struck=count, rows=len(rows))
