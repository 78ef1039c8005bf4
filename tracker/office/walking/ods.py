"""The cells of an OpenDocument spreadsheet, walked once: formats, formulas without a value, errors, merged cells, what is
hidden or struck through, and how far the filled cells reach.

A row or cell may stand for a million of its like, so areas are kept and become cells only once the extent is known to be
bearable. Element and attribute names: OASIS OpenDocument 1.3 part 3 (schema), from memory.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from tracker.domain.addresses import Area, Cell
from tracker.office.sheet import Extras
from tracker.office.walking.comments import Comment, said_by_others
from tracker.office.walking.extent import Extent
from tracker.office.walking.ods_styles import OdsStyles

_CELLS = ("table-cell", "covered-table-cell")
_VALUES = ("office:value", "office:date-value", "office:time-value", "office:boolean-value")


@dataclass(slots=True)
class OdsSheet:
    """What the walk found in one table."""

    name: str
    hidden: bool
    extent: Extent = field(default_factory=Extent)
    codes: list[tuple[Area, str]] = field(default_factory=list)
    no_value: list[Area] = field(default_factory=list)
    errors: list[tuple[Area, str]] = field(default_factory=list)
    struck: list[Area] = field(default_factory=list)
    merged: list[Area] = field(default_factory=list)
    comments: list[Comment] = field(default_factory=list)
    columns: list[tuple[int, int, str, bool]] = field(default_factory=list)
    """First, last, default cell style, hidden."""
    hidden_rows: list[tuple[int, int]] = field(default_factory=list)
    last_row: int = 0
    last_column: int = 0
    """Of the cells with a value."""

    def column_style(self, column: int) -> str:
        return next((style for first, last, style, _ in self.columns if first <= column <= last), "")

    def extras(self) -> Extras:
        """Cell by cell; only for a sheet whose extent is bearable."""
        rows, columns = range(1, self.last_row + 1), range(1, self.last_column + 1)
        hidden_columns = ((first, last) for first, last, _, hidden in self.columns if hidden)
        return Extras(
            hidden=self.hidden,
            codes=dict(_each(self.codes)),
            hidden_rows=_within(self.hidden_rows, rows),
            hidden_columns=_within(hidden_columns, columns),
            merged=tuple(self.merged),
            no_value={cell for area in self.no_value for cell in _cells(area)},
            errors=dict(_each(self.errors)),
            struck={cell for area in self.struck for cell in _cells(area)},
            comments=said_by_others(self.comments),
        )


def _each(areas: Iterable[tuple[Area, str]]) -> Iterator[tuple[Cell, str]]:
    return ((cell, said) for area, said in areas for cell in _cells(area))


def _cells(area: Area) -> Iterator[Cell]:
    first_row, first_column, last_row, last_column = area
    return ((r, c) for r in range(first_row, last_row + 1) for c in range(first_column, last_column + 1))


def _within(spans: Iterable[tuple[int, int]], filled: range) -> frozenset[int]:
    return frozenset(n for first, last in spans for n in range(first, min(last, len(filled)) + 1))


class OdsWalk:
    """Follows the elements of styles.xml and then content.xml."""

    def __init__(self) -> None:
        self.styles = OdsStyles()
        self.sheets: list[OdsSheet] = []
        self._row = self._row_repeat = self._column = self._repeat = self._next_column = 0
        self._row_style = ""
        self._filled_to = self._row_chars = 0
        self._in_cell = self._in_note = self._is_formula = self._unvalued = self._struck = False
        self._shown = ""
        self._note_part = ""

    def start(self, tag: str, at: dict[str, str]) -> None:
        if tag in _CELLS:
            self._start_cell(self.sheets[-1], at)
        elif tag == "p":
            if self._in_note:
                self._note_part = tag
                self.sheets[-1].comments[-1].text += "\n"
            else:
                self._unvalued = False  # a formula that returned an empty text has an empty paragraph and no value
        elif tag == "table-row":
            self._start_row(self.sheets[-1], at)
        elif tag == "span":
            self._struck |= self._in_cell and not self._in_note and self.styles.struck(at.get("text:style-name", ""))
        elif tag == "annotation":
            self._in_note = True
            self.sheets[-1].comments.append(Comment(self._row, self._column - self._repeat + 1))
        elif self._in_note:
            self._note_part = tag
        elif tag == "table-column":
            self._column_group(self.sheets[-1], at)
        elif tag == "table":
            hidden = at.get("table:style-name") in self.styles.hidden_tables
            self.sheets.append(OdsSheet(at.get("table:name", ""), hidden))
            self._row, self._row_repeat, self._next_column = 0, 1, 1
        elif not self.sheets:
            self.styles.start(tag, at)

    def end(self, tag: str) -> None:
        if tag in _CELLS:
            self._end_cell(self.sheets[-1])
        elif tag == "table-row":
            if self._filled_to:
                last = self._row + self._row_repeat - 1
                self.sheets[-1].extent.add_rows(self._row, last, self._filled_to, self._row_chars * self._row_repeat)
        elif tag == "annotation":
            self._in_note, self._note_part = False, ""
        elif not self.sheets:
            self.styles.end(tag)

    def text(self, data: str) -> None:
        if self._note_part == "p":
            self.sheets[-1].comments[-1].text += data
        elif self._note_part == "creator":
            self.sheets[-1].comments[-1].author += data
        if self._in_cell:
            self._row_chars += self._repeat * len(data)
            if self._is_formula and not self._in_note:
                self._shown += data
        elif not self.sheets:
            self.styles.text(data)

    def _column_group(self, sheet: OdsSheet, at: dict[str, str]) -> None:
        first = self._next_column
        self._next_column += int(at.get("table:number-columns-repeated", 1))
        hidden = at.get("table:visibility", "visible") != "visible"
        sheet.columns.append((first, self._next_column - 1, at.get("table:default-cell-style-name", ""), hidden))

    def _start_row(self, sheet: OdsSheet, at: dict[str, str]) -> None:
        self._row += self._row_repeat
        self._row_repeat = int(at.get("table:number-rows-repeated", 1))
        self._row_style = at.get("table:default-cell-style-name", "")
        self._column = self._filled_to = self._row_chars = 0
        if at.get("table:visibility", "visible") != "visible":
            sheet.hidden_rows.append((self._row, self._row + self._row_repeat - 1))

    def _start_cell(self, sheet: OdsSheet, at: dict[str, str]) -> None:
        first = self._column + 1
        self._repeat = int(at.get("table:number-columns-repeated", 1))
        self._column += self._repeat
        formula, kind = "table:formula" in at, at.get("office:value-type")
        self._in_cell = True
        self._is_formula = formula or at.get("calcext:value-type") == "error"
        self._unvalued = formula and kind != "string" and not any(name in at for name in _VALUES)
        if "table:number-rows-spanned" in at or "table:number-columns-spanned" in at:
            self._merge(sheet, first, at)
        if formula or kind is not None:
            self._filled_to = self._column
            self._row_chars += self._repeat * len(at.get("office:string-value", ""))
        if kind is not None:
            sheet.last_row = max(sheet.last_row, self._row + self._row_repeat - 1)
            sheet.last_column = max(sheet.last_column, self._column)
            style = at.get("table:style-name") or self._row_style or sheet.column_style(first)
            self._struck = self.styles.struck(style)
            if kind != "string" and (code := self.styles.code(style)):
                sheet.codes.append((self._area(), code))

    def _end_cell(self, sheet: OdsSheet) -> None:
        if self._unvalued:
            sheet.no_value.append(self._area())
        if self._struck:
            sheet.struck.append(self._area())
        if self._is_formula:
            shown, self._shown = self._shown.strip(), ""
            if shown.startswith(("#", "Err:")):
                sheet.errors.append((self._area(), shown))
        self._in_cell = self._is_formula = self._unvalued = self._struck = False

    def _merge(self, sheet: OdsSheet, first: int, at: dict[str, str]) -> None:
        rows, columns = (int(at.get(f"table:number-{what}-spanned", 1)) for what in ("rows", "columns"))
        if rows > 1 or columns > 1:
            sheet.merged.append((self._row, first, self._row + rows - 1, first + columns - 1))

    def _area(self) -> Area:
        """Of the cell at hand, with its repeats."""
        return self._row, self._column - self._repeat + 1, self._row + self._row_repeat - 1, self._column
