"""The hours of a conversion, as a record and as a workbook."""

from dataclasses import asdict
from pathlib import Path
from typing import Any

from tracker.export.hours_sheets import HoursOf, hours_sheets
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet, write_tables
from tracker.services.context import Context
from tracker.services.work.scope import ScopeReport, scope


def hours_records(context: Context) -> list[dict[str, Any]]:
    """As `--json` writes it: a row per machine type, variant and set of window kinds; variant `` = all of the type."""
    return [asdict(row) | {"kinds": [kind.value for kind in row.kinds]} for row in scope(context).hours]


def write_hours(context: Context, target: Path) -> int:
    """Write the hours workbook (.xlsx); gives the number of rows."""
    sheets = sheets_of(scope(context), Wording(context.language))
    write_tables(target, sheets)
    return sum(len(sheet.rows) for sheet in sheets)


def sheets_of(report: ScopeReport, write: Wording) -> list[TidySheet]:
    """The sheets of the hours of all looms."""
    of = HoursOf(report.programme, report.currency, len(report.scopes), report.method_version)
    return hours_sheets(report.hours, of, write)
