"""Make the workbooks of the sample mill: `python -m sample_data.make [DIR]`."""

import sys
from collections.abc import Iterable
from itertools import chain
from pathlib import Path
from typing import Any

from openpyxl import Workbook

from sample_data.book import add_sheet, add_table, new_book, save, term_rows
from sample_data.loom_list import loom_list
from sample_data.mill import sample_mill
from tracker.domain.mill import Mill
from tracker.domain.tables import TABLES, TERM_HEADINGS

HERE = Path(__file__).parent


def make(folder: Path, mill: Mill | None = None) -> list[Path]:
    """Write the six workbooks into `folder` (made if missing), replacing those of the same name."""
    mill = mill or sample_mill()
    folder.mkdir(parents=True, exist_ok=True)
    books = {
        "loom_list.xlsx": loom_list(mill.looms.values()),
        "weaving.xlsx": _book("Weaving", mill, "articles", "warps", "readings", "changes", "standing", "running",
                              "closures"),
        "stores.xlsx": _book("Stores", mill, "parts", "receipts"),
        "people_and_tools.xlsx": _book("People and tools", mill, "crews", "tools", "absences", "overtime"),
        "method.xlsx": _book("Method", mill, "operations", "kit_lines", "choices", "setpoints", "checks"),
        "terms.xlsx": _terms(mill),
    }  # fmt: skip
    return [save(book, folder / name) for name, book in books.items()]


def _book(title: str, mill: Mill, *tables: str) -> Workbook:
    book = new_book(title)
    for name in tables:
        add_table(book, TABLES[name], rows_of(mill, name), mill.terms.zone)
    return book


def rows_of(mill: Mill, table: str) -> Iterable[Any]:
    """The domain objects that the rows of a table are written from, in the order of the sheet."""
    if table == "choices":
        return mill.method.alternatives
    rows = getattr(mill.method, table) if TABLES[table].whole else getattr(mill, table)
    if not isinstance(rows, dict):
        return rows
    return chain.from_iterable(value if isinstance(value, tuple) else (value,) for value in rows.values())


def _terms(mill: Mill) -> Workbook:
    book = new_book("Terms")
    add_sheet(book, "Terms", ("Term", "Value"), term_rows(TERM_HEADINGS, mill.terms))
    return book


if __name__ == "__main__":
    for written in make(Path(sys.argv[1]) if len(sys.argv) > 1 else HERE):
        print(written)
