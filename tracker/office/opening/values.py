"""The bare values of a workbook, sheet by sheet, as its cells hold them."""

from pathlib import Path
from typing import Any

from python_calamine import CalamineWorkbook


def sheet_values(path: Path) -> dict[str, list[list[Any]]]:
    """Sheet → rows from row 1, column A on, of an xls, xlsx or ods that has been read before; empty cells are ``."""
    with CalamineWorkbook.from_path(str(path)) as book:
        return {name: book.get_sheet_by_name(name).to_python(skip_empty_area=False) for name in book.sheet_names}
