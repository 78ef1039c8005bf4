"""A column of one or several tables with the same heading: its cells, and the questions it raises."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from typing import Any

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import Column, Table
from tracker.errors import Message
from tracker.intake.answers import Answers, Called
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow
from tracker.intake.report import Report
from tracker.intake.vocabulary.headings import Match, match_heading
from tracker.intake.vocabulary.placeholders import emptiness, is_ditto
from tracker.office.sheet import Mark, Sheet


@dataclass
class ColumnPart:
    """The cells of a column below one heading."""

    block: TableBlock
    column: int
    rows: list[BodyRow]
    """Rows of the table, in order."""

    @property
    def sheet(self) -> Sheet:
        return self.block.sheet

    @property
    def heading(self) -> str:
        return self.block.headings[self.column]

    @property
    def heading_cell(self) -> str:
        return self.sheet.name_of(self.block.heading_rows.get(self.column, self.block.bottom), self.column)

    def value(self, row: int) -> Any:
        return self.sheet.value(row, self.column)

    @cached_property
    def values(self) -> list[Any]:
        """The cell of each row."""
        rows, column = self.sheet.rows, self.column
        return [cells[column] if column < len(cells := rows[body.row]) else None for body in self.rows]

    def forget(self) -> None:
        """Give back the memory of `values`; they are found again where they are asked for."""
        self.__dict__.pop("values", None)

    def code(self, row: int) -> str:
        """Number format of a cell where it matters."""
        if self.column not in self.sheet.coded_columns:
            return ""
        return self.sheet.extras.codes.get(self.sheet.place(row, self.column), "")


def _is_text(value: Any) -> bool:
    return type(value) is str


@dataclass
class ColumnPool:
    """All parts of a file that share table, field and heading: decided together, asked once."""

    table: Table
    column: Column | None
    """The field; None for a column of the mill's own."""
    parts: list[ColumnPart]
    answers: Answers
    report: Report
    today: date
    language: str = "en"
    sheet_decimals: str = ""
    """Convention that other columns of the file prove."""

    @property
    def heading(self) -> str:
        return self.parts[0].heading

    @cached_property
    def called(self) -> Called:
        """By what an answer may call the column: also by the cells of its heading in each table."""
        parts = [part.block.called(part.column) for part in self.parts]
        return replace(parts[0], cells=tuple(dict.fromkeys(cell for one in parts for cell in one.cells)))

    @property
    def match(self) -> Match:
        return match_heading(self.heading)

    @property
    def name(self) -> str:
        """What the column is called in a message."""
        return self.column.heading if self.column else self.heading

    def cells(self) -> Iterator[tuple[ColumnPart, int, Any]]:
        """(part, row, value) of the cells that say something: no marks, no placeholders."""
        for part in self.parts:
            silent = {v for v in set(filter(_is_text, part.values)) if emptiness(v) or is_ditto(v)}
            for body, value in zip(part.rows, part.values, strict=True):
                if value is not None and type(value) is not Mark and (type(value) is not str or value not in silent):
                    yield part, body.row, value

    @cached_property
    def distinct(self) -> Counter[tuple[type, Any]]:
        """(type, value) of the cells that say something → how often."""
        return Counter((type(value), value) for _, _, value in self.cells())

    @cached_property
    def texts(self) -> set[str]:
        return {value for kind, value in self.distinct if kind is str}

    def forget(self) -> None:
        """Give back the memory of what only planning needs: each different cell of the column."""
        self.__dict__.pop("distinct", None)
        self.__dict__.pop("texts", None)

    def ask(self, kind: str, choices: Sequence[Choice], *, raw: Any = "", **params: Any) -> None:
        """Ask once about the column; `params` are those of the code `<kind>-doubt`."""
        first = self.parts[0]
        self.report.ask(
            kind, first.sheet, self.heading, first.heading_cell, choices, raw=raw, field=self.name, **params
        )

    def note(self, code: str, *, understood: str | Message = "", raw: Any = "", **params: Any) -> None:
        """Say once, at the heading, how the column was read."""
        first = self.parts[0]
        self.report.whole(
            Severity.NOTE, code, first.sheet, first.heading_cell, heading=self.heading, understood=understood, raw=raw,
            field=self.name, **params,
        )  # fmt: skip


class CellProblem(Exception):
    """A cell that cannot be read; its row is refused."""

    def __init__(self, code: str, /, understood: str | Message = "", **params: Any):
        super().__init__(code)
        self.code, self.understood, self.params = code, understood, params
