"""The two workbooks that the mill loads in its seventh week."""

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from openpyxl import Workbook

from sample_data.book import add_table
from sample_data.six_weeks import card_rows, figures
from sample_data.six_weeks.hall_then import warps_then
from sample_data.six_weeks.jobs import ILL, Job
from tracker.domain.columns import Kind
from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.plan import Booking
from tracker.domain.tables import TABLES
from tracker.domain.windows import Window

Windows = Mapping[LoomKey, tuple[Window, ...]]
BOOKS = ("six_weeks_on.xlsx", "work_done.xlsx")


def hall_book(
    path: Path, mill: Mill, windows: Windows, bookings: Iterable[Booking], ordered: Sequence[Receipt]
) -> None:
    """Warps, who was away and the orders placed meanwhile."""
    book = Workbook()
    book.remove(book.worksheets[0])
    for name, rows in (("warps", warps_then(mill, windows, bookings)), ("absences", (ILL,)), ("receipts", ordered)):
        add_table(book, TABLES[name], rows, mill.terms.zone)
    book.save(path)


def records_book(path: Path, mill: Mill, windows: Windows, jobs: Sequence[Job]) -> None:
    """What was done and read: the sheets of records."""
    book = Workbook(write_only=True)
    rows: dict[str, Iterable[card_rows.Row]] = {
        "work_done": card_rows.work_done(jobs), "set_values": card_rows.set_values(jobs),
        "check_results": card_rows.check_results(jobs), "parts_used": card_rows.parts_used(jobs),
        "stops": figures.stops(mill, jobs, windows), "waste": figures.waste(mill, jobs), "bobbins": card_rows.bobbins(jobs),
    }  # fmt: skip
    for name, of in rows.items():
        _sheet(book, name, list(of))
    book.save(path)


def _sheet(book: Workbook, name: str, rows: Sequence[card_rows.Row]) -> None:
    columns = [c for c in TABLES[name].columns if c.needed or any(row.get(c.field) is not None for row in rows)]
    sheet = book.create_sheet(TABLES[name].sheet)
    sheet.freeze_panes = "A2"
    for i, column in enumerate(columns):
        sheet.column_dimensions["ABCDEFGHIJKLMNOPQRSTUVWXYZ"[i]].width = max(len(column.title), 14) + 2
    sheet.append([column.title for column in columns])
    for row in rows:
        sheet.append([_cell(column.kind, row.get(column.field)) for column in columns])


def _cell(kind: Kind, value: Any) -> Any:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return round(value * 100, 6) if kind is Kind.FRACTION and value is not None else value
