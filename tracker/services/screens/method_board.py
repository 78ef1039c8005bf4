"""The method in force as the mill wrote it, what its review finds by the mill of today, and which versions there were."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.columns import Column, Kind, word_named
from tracker.domain.findings import Finding
from tracker.domain.tables import METHOD_TABLES, TABLES
from tracker.errors import Message, message
from tracker.office.writing.values import workbook_value
from tracker.scope.review import review
from tracker.services.context import Context
from tracker.services.loading.export import export_file


@dataclass(frozen=True, slots=True)
class MethodPart:
    name: str
    """Of the table."""
    named: Message
    """The name of its sheet."""
    headings: tuple[Message, ...]
    """Those under which a row has something."""
    rows: tuple[tuple[Any, ...], ...]
    """In the order of the sheet, values as it has them, its own words as messages."""


@dataclass(frozen=True, slots=True)
class MethodBoard:
    version: int
    """0 = none is loaded."""
    versions: tuple[tuple[int, datetime], ...]
    """Each with the moment from which it was in force, the newest first."""
    sheets: tuple[MethodPart, ...]
    findings: tuple[Finding, ...]
    """Of the review by the looms, parts, tools and crews of today."""
    zone: ZoneInfo


def method_board(context: Context) -> MethodBoard:
    with context.reading() as uow:
        mill, versions = uow.mill(), uow.method_versions()
        sheets = tuple(_sheet(name, uow.rows(name)) for name in METHOD_TABLES)
    method = mill.method
    found = review(method, mill.looms, mill.parts, mill.tools, mill.crews, mill.terms) if method.version else ()
    return MethodBoard(method.version, tuple(reversed(versions)), sheets, tuple(found), mill.terms.zone)


def method_file(context: Context) -> bytes:
    """The sheets of the method as a workbook that loads back, for a download."""
    return export_file(context, METHOD_TABLES, FILE)


FILE = "method.xlsx"


def _sheet(name: str, stored: Mapping[Any, Mapping[str, Any]]) -> MethodPart:
    columns, rows = {column.field: column for column in TABLES[name].columns}, list(stored.values())
    fields = list(dict.fromkeys(field for row in rows for field in row))
    filled = [field for field in fields if any(row.get(field) not in (None, "") for row in rows)]
    headings = tuple(columns[field].titled if field in columns else message("just", value=field) for field in filled)
    cells = tuple(tuple(_cell(columns.get(field), row.get(field)) for field in filled) for row in rows)
    return MethodPart(name, TABLES[name].named, headings, cells)


def _cell(column: Column | None, value: Any) -> Any:
    if column is None or column.kind is Kind.YES_NO:
        return value
    return word_named(value) if value in column.words else workbook_value(column.kind, value)
