"""Number formats, hidden rows and sheets, and merged cells of an OpenDocument spreadsheet.

Element and attribute names: OASIS OpenDocument 1.3 part 3 (schema), from memory.
"""

import zipfile
from dataclasses import dataclass, field

from tracker.office.addresses import Area, Cell
from tracker.office.walking.format_codes import matters
from tracker.office.walking.parts import SheetFormat, scan

_DATA_STYLES = ("number-style", "percentage-style", "currency-style", "date-style", "time-style", "boolean-style")
_PARTS = {
    "day": ("d", "dd"), "year": ("yy", "yyyy"), "hours": ("h", "hh"), "minutes": ("mm", "mm"), "seconds": ("ss", "ss"),
    "am-pm": ("AM/PM", "AM/PM"), "day-of-week": ("ddd", "dddd"),
}  # fmt: skip
_BARE = set(" .,/-:%()")


def ods_formats(archive: zipfile.ZipFile) -> dict[str, SheetFormat]:
    """Sheet → its formats."""
    reader = _Reader()
    for part in ("styles.xml", "content.xml"):
        if part in archive.namelist():
            scan(archive.read(part), reader.start, reader.end, reader.text)
    return {sheet.name: sheet.finished() for sheet in reader.sheets}


@dataclass(slots=True)
class _Styles:
    codes: dict[str, str] = field(default_factory=dict)
    """Data style → code."""
    data_of: dict[str, str] = field(default_factory=dict)
    """Cell style → data style."""
    parent: dict[str, str] = field(default_factory=dict)
    hidden_tables: set[str] = field(default_factory=set)

    def code(self, style: str) -> str:
        """Code of a cell style if it matters, else ``; a style without a format has its parent's."""
        for _ in range(20):
            if style in self.data_of or not style:
                break
            style = self.parent.get(style, "")
        code = self.codes.get(self.data_of.get(style, ""), "")
        return code if matters(code) else ""


@dataclass(slots=True)
class _Sheet:
    name: str
    hidden: bool
    codes: dict[Cell, str] = field(default_factory=dict)
    merged: list[Area] = field(default_factory=list)
    columns: list[tuple[int, int, str, bool]] = field(default_factory=list)
    """First, last, default cell style, hidden."""
    hidden_rows: list[tuple[int, int]] = field(default_factory=list)
    last_row: int = 0
    last_column: int = 0

    def column_style(self, column: int) -> str:
        return next((style for first, last, style, _ in self.columns if first <= column <= last), "")

    def finished(self) -> SheetFormat:
        rows = {r for first, last in self.hidden_rows for r in range(first, min(last, self.last_row) + 1)}
        columns = {
            column
            for first, last, _, hidden in self.columns
            if hidden
            for column in range(first, min(last, self.last_column) + 1)
        }
        return SheetFormat(
            self.name, self.hidden, self.codes, frozenset(rows), frozenset(columns), tuple(self.merged)
        )  # fmt: skip


class _Reader:
    """Follows the elements of styles.xml and then content.xml."""

    def __init__(self) -> None:
        self.styles = _Styles()
        self.sheets: list[_Sheet] = []
        self._style = self._data_style = ""
        self._pieces: list[str] = []
        self._in_text = False
        self._row = self._row_repeat = self._column = self._next_column = 0
        self._row_style = ""

    def start(self, tag: str, at: dict[str, str]) -> None:
        if tag in _DATA_STYLES:
            self._data_style, self._pieces = at.get("style:name", ""), []
        elif self._data_style:
            self._format_piece(tag, at)
        elif tag == "style":
            self._style = at.get("style:name", "")
            self.styles.parent[self._style] = at.get("style:parent-style-name", "")
            if "style:data-style-name" in at:
                self.styles.data_of[self._style] = at["style:data-style-name"]
        elif tag == "table-properties" and at.get("table:display") == "false":
            self.styles.hidden_tables.add(self._style)
        elif tag == "table":
            hidden = at.get("table:style-name") in self.styles.hidden_tables
            self.sheets.append(_Sheet(at.get("table:name", ""), hidden))
            self._row, self._row_repeat, self._next_column = 0, 1, 1
        elif self.sheets:
            self._table_piece(tag, at)

    def end(self, tag: str) -> None:
        if tag in _DATA_STYLES:
            self.styles.codes[self._data_style] = "".join(self._pieces)
            self._data_style = ""
        elif tag in ("text", "embedded-text"):
            self._in_text = False

    def text(self, data: str) -> None:
        if self._in_text:
            self._pieces.append(data if set(data) <= _BARE else f'"{data}"')

    def _format_piece(self, tag: str, at: dict[str, str]) -> None:
        long = at.get("number:style") == "long"
        if tag == "number":
            self._pieces.append(_number_code(at))
        elif tag == "month":
            textual = at.get("number:textual") == "true"
            self._pieces.append(("mmmm" if long else "mmm") if textual else ("mm" if long else "m"))
        elif tag in _PARTS:
            self._pieces.append(_PARTS[tag][long])
        elif tag in ("text", "embedded-text"):
            self._in_text = True

    def _table_piece(self, tag: str, at: dict[str, str]) -> None:
        sheet = self.sheets[-1]
        if tag == "table-column":
            first = self._next_column
            self._next_column += int(at.get("table:number-columns-repeated", 1))
            hidden = at.get("table:visibility", "visible") != "visible"
            sheet.columns.append((first, self._next_column - 1, at.get("table:default-cell-style-name", ""), hidden))
        elif tag == "table-row":
            self._row += self._row_repeat
            self._row_repeat = int(at.get("table:number-rows-repeated", 1))
            self._row_style, self._column = at.get("table:default-cell-style-name", ""), 0
            if at.get("table:visibility", "visible") != "visible":
                sheet.hidden_rows.append((self._row, self._row + self._row_repeat - 1))
        elif tag in ("table-cell", "covered-table-cell"):
            self._cell(sheet, at)

    def _cell(self, sheet: _Sheet, at: dict[str, str]) -> None:
        first = self._column + 1
        self._column += int(at.get("table:number-columns-repeated", 1))
        rows, columns = (int(at.get(f"table:number-{what}-spanned", 1)) for what in ("rows", "columns"))
        if rows > 1 or columns > 1:
            sheet.merged.append((self._row, first, self._row + rows - 1, first + columns - 1))
        kind = at.get("office:value-type")
        if kind is None:
            return
        last_row = self._row + self._row_repeat - 1
        sheet.last_row, sheet.last_column = max(sheet.last_row, last_row), max(sheet.last_column, self._column)
        if kind == "string":
            return
        style = at.get("table:style-name") or self._row_style or sheet.column_style(first)
        if code := self.styles.code(style):
            cells = ((row, c) for row in range(self._row, last_row + 1) for c in range(first, self._column + 1))
            sheet.codes.update(dict.fromkeys(cells, code))


def _number_code(at: dict[str, str]) -> str:
    digits = int(at.get("number:min-integer-digits", 1))
    whole = "0" * digits if digits else "#"
    if at.get("number:grouping") == "true":
        whole = "#," + whole.rjust(3, "#")
    decimals = int(at.get("number:decimal-places", 0))
    return f"{whole}.{'0' * decimals}" if decimals else whole
