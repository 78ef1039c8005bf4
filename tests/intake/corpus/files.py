"""Write the files of a list: .xlsx, .ods and delimited text in any code page."""

import csv
import io
import zipfile
from datetime import date
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

import openpyxl

from .sheets import ODD, File, Sheet

_SPACES = " ".join(
    f'xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for short, name in (("office", "office"), ("table", "table"), ("text", "text"))
)


def write(file: File, folder: Path) -> Path:
    """Write the file into the folder; its ending says how."""
    path = folder / file.name
    {".xlsx": _xlsx, ".ods": _ods}.get(path.suffix, _text)(file, path)
    return path


def _xlsx(file: File, path: Path) -> None:
    book = openpyxl.Workbook()
    book.remove(book.active)  # type: ignore[arg-type]
    for sheet in file.sheets:
        page = book.create_sheet(sheet.name)
        page.sheet_state = "hidden" if sheet.hidden else "visible"
        for r, row in enumerate(sheet.rows, 1):
            for c, cell in enumerate(row, 1):
                if cell is not None and cell.value is not None:
                    written = page.cell(r, c, cell.value)
                    if isinstance(cell.value, str) and cell.value.startswith("="):
                        written.data_type = "s"
                    if cell.code:
                        written.number_format = cell.code
        for r1, c1, r2, c2 in sheet.merged:
            page.merge_cells(start_row=r1 + 1, start_column=c1 + 1, end_row=r2 + 1, end_column=c2 + 1)
        for r in sheet.hidden_rows:
            page.row_dimensions[r + 1].hidden = True
    book.save(path)


def _ods(file: File, path: Path) -> None:
    tables = "".join(_table(sheet) for sheet in file.sheets)
    content = (
        f'<office:document-content {_SPACES} office:version="1.3"><office:body><office:spreadsheet>{tables}'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet", zipfile.ZIP_STORED)
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", "<manifest/>")


def _table(sheet: Sheet) -> str:
    spans = {(r1, c1): (r2 - r1 + 1, c2 - c1 + 1) for r1, c1, r2, c2 in sheet.merged}
    covered = {
        (r, c) for r1, c1, r2, c2 in sheet.merged for r in range(r1, r2 + 1) for c in range(c1, c2 + 1)
    } - set(spans)  # fmt: skip
    width = max(map(len, sheet.rows))
    lines = []
    for r, row in enumerate(sheet.rows):
        hidden = ' table:visibility="collapse"' if r in sheet.hidden_rows else ""
        cells = "".join(
            "<table:covered-table-cell/>"
            if (r, c) in covered
            else _ods_cell(row[c].value if c < len(row) and row[c] is not None else None, spans.get((r, c)))  # type: ignore[union-attr]
            for c in range(width)
        )
        lines.append(f"<table:table-row{hidden}>{cells}</table:table-row>")
    return f'<table:table table:name="{escape(sheet.name)}">{"".join(lines)}</table:table>'


def _ods_cell(value: Any, span: tuple[int, int] | None) -> str:
    tag = "table:table-cell"
    over = f' table:number-rows-spanned="{span[0]}" table:number-columns-spanned="{span[1]}"' if span else ""
    if value is None:
        return f"<{tag}{over}/>"
    if isinstance(value, int | float):
        kind = f' office:value-type="float" office:value="{value!r}"'
    elif isinstance(value, date):
        kind = f' office:value-type="date" office:date-value="{value.isoformat()}"'
    else:
        kind = ' office:value-type="string"'
    return f"<{tag}{over}{kind}><text:p>{escape(str(value))}</text:p></{tag}>"


def can_be_written(file: File) -> bool:
    """Has the code page of a text file all its letters?"""
    try:
        _bytes_of(file)
    except UnicodeEncodeError:
        return False
    return True


def _text(file: File, path: Path) -> None:
    path.write_bytes(_bytes_of(file))


def _bytes_of(file: File) -> bytes:
    out = io.StringIO(newline="")
    rows = [["" if cell is None else as_text(cell.value) for cell in row] for row in file.sheets[0].rows]
    csv.writer(out, delimiter=file.delimiter, lineterminator="\r\n").writerows(rows)
    parts = out.getvalue().split(ODD)
    return file.odd_byte.join(part.encode(file.encoding) for part in parts)


def as_text(value: Any) -> str:
    """A typed value as a program writes it into a text file."""
    if isinstance(value, float) and value == int(value):
        value = int(value)
    return value.isoformat() if isinstance(value, date) else str(value)
