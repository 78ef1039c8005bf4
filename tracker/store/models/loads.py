"""Loads, what they found, what they changed, and the answers that were given."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class LoadRow(AppendOnly, Base):
    __tablename__ = "loads"
    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    who: Mapped[str]
    files: Mapped[list[Any]]


class FindingRow(AppendOnly, Base):
    """What a load found, in the words that its user saw."""

    __tablename__ = "findings"
    id: Mapped[int] = mapped_column(primary_key=True)
    load_id: Mapped[int] = mapped_column(ForeignKey("loads.id"), index=True)
    code: Mapped[str]
    severity: Mapped[str]
    file: Mapped[str]
    sheet: Mapped[str]
    cell: Mapped[str]
    heading: Mapped[str]
    raw: Mapped[str]
    understood: Mapped[str]
    message: Mapped[str]
    hint: Mapped[str]


class SourceTableRow(AppendOnly, Base):
    """A table recognised in a file; `columns` says for each field or kept heading in which column it stood."""

    __tablename__ = "source_tables"
    id: Mapped[int] = mapped_column(primary_key=True)
    load_id: Mapped[int] = mapped_column(ForeignKey("loads.id"), index=True)
    file: Mapped[str]
    sheet: Mapped[str]
    table: Mapped[str]
    transposed: Mapped[bool]
    columns: Mapped[dict[str, Any]]


class RowChangeRow(AppendOnly, Base):
    """The log of who changed what when: one entry a row and event, `values` = {field: [old, new]}.

    `source_table_id` and `number` say where a loaded row stood; both are None for what a command or screen changed.
    """

    __tablename__ = "row_changes"
    __table_args__ = (Index("ix_row_changes_table_key", "table", "key"),)
    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    who: Mapped[str]
    table: Mapped[str]
    key: Mapped[str]
    kind: Mapped[str]
    values: Mapped[dict[str, Any]]
    load_id: Mapped[int | None] = mapped_column(ForeignKey("loads.id"))
    source_table_id: Mapped[int | None] = mapped_column(ForeignKey("source_tables.id"))
    number: Mapped[int | None]


class AnswerRow(AppendOnly, Base):
    """An answer to a doubt; the newest for a question is the one in force."""

    __tablename__ = "answers"
    id: Mapped[int] = mapped_column(primary_key=True)
    question: Mapped[str] = mapped_column(index=True)
    answer: Mapped[str]
    at: Mapped[datetime]
    who: Mapped[str]
