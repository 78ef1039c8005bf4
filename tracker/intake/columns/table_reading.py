"""A table on its way to typed rows, and the questions about its columns."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import LOOMS, Table
from tracker.intake.answers import FIELD, HALL, Answers, bare
from tracker.intake.columns.pool import ColumnPart, ColumnPool
from tracker.intake.columns.section_lines import settled
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort, body_rows
from tracker.intake.layout.second_lines import with_second_lines
from tracker.intake.layout.sums_below import without_sums
from tracker.intake.layout.type_lines import titled, with_types
from tracker.intake.layout.types_in_cells import with_types_in_cells
from tracker.intake.report import Report, answers_for
from tracker.intake.vocabulary.type_codes import named_type


class ColumnPlan(Protocol):
    """How the cells of a column are read."""

    def read(self, value: Any, code: str) -> Any: ...


@dataclass(slots=True)
class TableReading:
    """A block on its way to typed rows."""

    block: TableBlock
    rows: list[BodyRow]
    others: list[BodyRow]
    """Lines below the heading that are no rows of the table: totals, notes, repeated headings …"""
    pools: dict[int, ColumnPool] = field(default_factory=dict)
    """Column → its pool; columns that are left out have none."""
    parts: dict[int, ColumnPart] = field(default_factory=dict)
    plans: dict[int, ColumnPlan] = field(default_factory=dict)
    values: dict[int, list[Any]] = field(default_factory=dict)
    """Column → value of each row."""
    refused: set[int] = field(default_factory=set)
    """Indexes into `rows`."""
    empties: set[tuple[int, int]] = field(default_factory=set)
    """(index into `rows`, column) of the filled cells that say that there is nothing."""
    several: dict[int, Sequence[str]] = field(default_factory=dict)
    """Index into `rows` → the looms of each of which the row holds, as answered."""
    unfilled: set[int] = field(default_factory=set)
    """Indexes into `rows`: lines of a form that nobody filled in."""
    faults: set[tuple[int, int]] = field(default_factory=set)
    """(index into `rows`, column) of the cells that cannot be read."""

    @property
    def table(self) -> Table:
        return self.block.recognised.table

    @property
    def ignored(self) -> int:
        return sum(body.sort is not Sort.EMPTY for body in self.others) + len(self.unfilled)

    def refuse(self, i: int, column: int) -> None:
        """A row is refused for a cell."""
        self.refused.add(i)
        self.faults.add((i, column))

    def column_of(self, name: str) -> int | None:
        return self.block.recognised.column_of(name)


def _looms_of(block: TableBlock, answers: Answers, report: Report) -> list[BodyRow]:
    rows = with_second_lines(block, without_sums(block, with_types(block, titled(block, list(body_rows(block))))))
    return settled(block, with_types_in_cells(block, rows), answers, report)


def reading_of(block: TableBlock, answers: Answers, report: Report) -> TableReading:
    """The rows of a block, each line passed over noted, or asked about."""
    rows, others = [], []
    for body in _looms_of(block, answers, report) if block.recognised.table is LOOMS else body_rows(block):
        if body.sort is Sort.DATA:
            rows.append(body)
        else:
            others.append(body)
            if body.sort in (Sort.NOTE, Sort.TOTAL):
                cells = block.sheet.row_range(body.row, block.columns)
                how = "total" if body.sort is Sort.TOTAL else "note"
                names = [HALL, "row", "section"] if body.heads_rows else []
                report.whole(Severity.NOTE, "row-passed-over", block.sheet, cells, raw=body.text,
                             how="heads" if names else how, choices=answers_for(body.text, *names))  # fmt: skip
            elif body.sort is Sort.SECTION and body.machine_type and named_type(body.text) == body.machine_type:
                cell = block.sheet.row_range(body.row, block.columns[:1])
                report.whole(
                    Severity.NOTE, "type-from-line", block.sheet, cell, raw=body.text, understood=body.machine_type
                )
    return TableReading(block, rows, others)


def ask_columns(reading: TableReading, answers: Answers, report: Report, type_asked: bool = False) -> None:
    """Two columns that may be the same field: ask which, unless they say the same in every row; and no machine type.

    `type_asked`: it is asked already whether the sheet's name is the type.
    """
    block = reading.block
    for name, columns in block.recognised.rivals.items():
        open_ones = [c for c in columns if answers.field(block.called(c)) in (None, name)]
        chosen = [c for c in open_ones if answers.field(block.called(c)) == name]
        if len(open_ones) < 2 or len(chosen) == 1 or _all_same(reading, columns):
            continue
        texts = [block.headings[c] for c in open_ones]
        heading = reading.table.column(name).heading
        cells = [ColumnPart(block, c, []).heading_cell for c in open_ones]
        about = texts if len({bare(text) for text in texts}) == len(texts) else cells
        report.ask(
            FIELD, block.sheet, texts[0], ", ".join(cells), [Choice(one, heading.lower()) for one in about],
            raw=" | ".join(texts), code="which-column", field=heading, headings=texts,
        )  # fmt: skip
    typed = reading.column_of("machine_type") is not None or all(body.machine_type for body in reading.rows)
    if (
        reading.table is LOOMS
        and not typed
        and not type_asked
        and not block.joins
        and not report.has("section-lines", block.sheet)
    ):
        first = ColumnPart(block, block.columns[0], [])
        free = [text for c, text in block.headings.items() if c not in block.recognised.meanings]
        report.ask(
            FIELD, block.sheet, first.heading, first.heading_cell, [Choice(text, "machine type") for text in free],
            code="no-machine-type",
        )  # fmt: skip


def _all_same(reading: TableReading, columns: list[int]) -> bool:
    sheet = reading.block.sheet
    return all(len({str(sheet.value(body.row, c)) for c in columns}) == 1 for body in reading.rows)
