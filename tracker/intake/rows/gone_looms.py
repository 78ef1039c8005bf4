"""Rows that say that their loom is no longer in the mill, in the place of its machine type or in words of their own."""

from collections.abc import Sequence

from tracker.domain.addresses import ranges
from tracker.domain.findings import Severity
from tracker.domain.tables import Kind
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report
from tracker.intake.vocabulary.gone import says_gone

_MOST = 60
"""Different texts of a column of states; one with more names something else."""


def tell_gone(lists: Sequence[TableReading], report: Report) -> None:
    """Refuse the rows whose machine type says that the loom is gone; note those of which another text says so."""
    for reading in lists:
        for column, pool in reading.pools.items():
            if pool.column is None or pool.column.kind is Kind.TEXT:
                _tell(reading, column, report)


def _tell(reading: TableReading, column: int, report: Report) -> None:
    block = reading.block
    texts = {value for value in reading.values.get(column, ()) if isinstance(value, str)}
    gone = {text for text in texts if says_gone(text)} if len(texts) <= _MOST else set()
    rows = [i for i, value in enumerate(reading.values[column]) if value in gone] if gone else []
    if column == reading.column_of("machine_type"):
        for i in rows:
            reading.refuse(i, column)
            report.cell(Severity.REFUSED, "type-says-gone", block.sheet, reading.rows[i].row, column,
                        heading=block.headings[column], raw=reading.values[column][i])  # fmt: skip
    elif rows:
        cells = ranges(block.sheet.place(reading.rows[i].row, column) for i in rows)
        report.whole(Severity.NOTE, "says-gone", block.sheet, cells, heading=block.headings[column],
                     raw=reading.values[column][rows[0]], rows=len(rows))  # fmt: skip
