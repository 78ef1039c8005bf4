"""Write what the database holds: canonical records for programs, workbooks of the same shape that is loaded."""

from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tracker.domain.tables import TABLES
from tracker.domain.words import natural_key
from tracker.errors import UsageError
from tracker.export.workbook import write_export, write_template
from tracker.services.context import Context
from tracker.store import UnitOfWork
from tracker.store.rows import plain

CANONICAL = ("loom", "hall", "row", "place", "machine_type", "insertion", "year", "reed_width_cm", "frames", "speed_ppm",
             "efficiency", "protected_until", "notes")  # fmt: skip
"""Fields of a canonical loom record, besides `attributes`."""


TEMPLATE, EXPORT = "template.xlsx", "mill.xlsx"
"""Under these names they are offered."""
REPORTS = ("hours", "plan", "rehearsal")
"""What can be exported beside the tables; these do not load back."""


def tables_named(what: Sequence[str]) -> list[str]:
    """Names of the tables asked for (all where none is); UsageError for an unknown one, and for a report among others."""
    for name in what:
        if name in REPORTS:
            raise UsageError("report-alone", name=name)
        if name not in TABLES:
            raise UsageError("table-unknown", name=name, tables=", ".join(TABLES), reports=list(REPORTS))
    return list(dict.fromkeys(what)) or list(TABLES)


def export_workbook(context: Context, target: Path, what: Sequence[str] = ()) -> dict[str, int]:
    """Write the tables to a workbook (or one table to a .csv); gives rows per table."""
    names = tables_named(what)
    with context.reading() as uow:
        rows = {name: _ordered(uow, name) for name in names}
    write_export(target, rows, context.language)
    return {name: len(rows[name]) for name in names}


def export_records(
    context: Context, what: Sequence[str] = ("looms",)
) -> list[dict[str, Any]] | dict[str, list[dict[str, Any]]]:
    """Records as JSON can hold them: the canonical loom records where only looms are asked for, else rows by table."""
    names = tables_named(what)
    with context.reading() as uow:
        if names == ["looms"]:
            return [_canonical(loom) for loom in _ordered(uow, "looms")]
        return {name: [plain(row) for row in _ordered(uow, name)] for name in names}


def template(target: Path, language: str = "en") -> None:
    """Write the empty workbook with every sheet."""
    write_template(target, language)


def template_file(language: str = "en") -> bytes:
    """The same, for a download."""
    with TemporaryDirectory() as folder:
        template(target := Path(folder) / TEMPLATE, language)
        return target.read_bytes()


def export_file(context: Context, what: Sequence[str] = (), name: str = "") -> bytes:
    """The tables as a workbook, for a download; `name` is that of the file."""
    with TemporaryDirectory() as folder:
        export_workbook(context, target := Path(folder) / (name or EXPORT), what)
        return target.read_bytes()


def _ordered(uow: UnitOfWork, name: str) -> list[dict[str, Any]]:
    rows = uow.rows(name)
    return [rows[key] for key in sorted(rows, key=lambda key: tuple(natural_key("" if k is None else k) for k in key))]


def _canonical(loom: dict[str, Any]) -> dict[str, Any]:
    fields = {column.field for column in TABLES["looms"].columns}
    record = {field: plain(loom[field]) for field in CANONICAL}
    return record | {"attributes": {heading: value for heading, value in loom.items() if heading not in fields}}
