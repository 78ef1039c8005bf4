"""Restyling cells of a worksheet part in place: values, formulas, row heights, everything else stay byte for byte."""

from bisect import bisect_right
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from tracker.domain.addresses import Area, Cell, cell_in, cell_name
from tracker.office.patching.package import OFFICE
from tracker.office.patching.xml import Edit, Element, opened, splice, tag_at, walk, with_attribute

_AFTER_NOTES = ("legacyDrawingHF", "drawingHF", "picture", "oleObjects", "controls", "webPublishItems", "tableParts", "extLst",
                "AlternateContent")  # fmt: skip
"""What may follow `legacyDrawing` in a worksheet (ECMA-376 part 1, 18.3.1.99, from memory)."""


@dataclass(slots=True)
class _Row:
    start: int
    end: int = -1
    style: int = 0
    cells: list[tuple[int, int, int]] = field(default_factory=list)
    """Column, first byte, style."""


class SheetPart:
    """Where the rows and cells of a worksheet stand."""

    def __init__(self, xml: bytes, wanted: set[int]):
        """`wanted`: the rows of which the cells are looked up."""
        self.xml = xml = opened(xml, "sheetData")
        self.merged: list[Area] = []
        self.notes_relation = ""
        """Relation of the drawing that holds the sheet's notes; `` = none yet."""
        self.edits: list[Edit] = []
        self._prefix = ""
        self._rows: dict[int, _Row] = {}
        self._starts: list[tuple[int, int]] = []
        self._column_styles: list[tuple[int, int, int]] = []
        self._data_end = self._root_end = self._notes_at = -1
        self._find(wanted)

    def top_left(self, cell: Cell) -> Cell:
        """The cell that shows: the first of the merged area that it lies in, else itself."""
        row, column = cell
        return next(((r1, c1) for r1, c1, r2, c2 in self.merged if r1 <= row <= r2 and c1 <= column <= c2), cell)

    def restyle(self, cells: Mapping[Cell, Callable[[int], int]]) -> None:
        """Give each cell the style that its function makes of the one it has; missing cells and rows are added empty."""
        by_row: dict[int, dict[int, Callable[[int], int]]] = {}
        for (row, column), restyled in sorted(cells.items()):
            by_row.setdefault(row, {})[column] = restyled
        for number, wanted in by_row.items():
            if number in self._rows:
                self._restyle_row(number, self._rows[number], wanted)
            else:
                self._add_row(number, wanted)

    def refer_to_notes(self, relation: str) -> None:
        """Name the drawing that holds the notes."""
        at = self._notes_at if self._notes_at >= 0 else self._root_end
        tag = f'<{self._prefix}legacyDrawing xmlns:r="{OFFICE}" r:id="{relation}"/>'
        self.edits.append((at, at, tag.encode()))

    def written(self) -> bytes:
        return splice(self.xml, self.edits)

    def _restyle_row(self, number: int, row: _Row, wanted: Mapping[int, Callable[[int], int]]) -> None:
        tag = tag_at(self.xml, row.start)
        there = {column: (at, style) for column, at, style in row.cells}
        new = {c: restyled for c, restyled in wanted.items() if c not in there}
        for column, restyled in wanted.items():
            if column in there:
                at, style = there[column]
                cell = tag_at(self.xml, at)
                self.edits.append((at, at + len(cell), with_attribute(cell, "s", str(restyled(style)))))
        if not new:
            return
        opened = with_attribute(tag, "spans", None)
        if tag.endswith(b"/>"):
            cells = b"".join(self._new_cell(number, c, row.style, new[c]) for c in sorted(new))
            closed = opened[:-2].rstrip() + b">" + cells + f"</{self._prefix}row>".encode()
            self.edits.append((row.start, row.start + len(tag), closed))
            return
        self.edits.append((row.start, row.start + len(tag), opened))
        for column in sorted(new):
            at = next((at for other, at, _ in row.cells if other > column), row.end)
            self.edits.append((at, at, self._new_cell(number, column, row.style, new[column])))

    def _add_row(self, number: int, wanted: Mapping[int, Callable[[int], int]]) -> None:
        cells = b"".join(self._new_cell(number, column, 0, wanted[column]) for column in sorted(wanted))
        row = f'<{self._prefix}row r="{number}">'.encode() + cells + f"</{self._prefix}row>".encode()
        index = bisect_right(self._starts, (number, 1 << 60))
        at = self._starts[index][1] if index < len(self._starts) else self._data_end
        self.edits.append((at, at, row))

    def _new_cell(self, row: int, column: int, row_style: int, restyled: Callable[[int], int]) -> bytes:
        style = row_style or next((s for first, last, s in self._column_styles if first <= column <= last), 0)
        return f'<{self._prefix}c r="{cell_name((row, column))}" s="{restyled(style)}"/>'.encode()

    def _find(self, wanted: set[int]) -> None:
        number = column = 0
        row: _Row | None = None

        def start(element: Element) -> None:
            nonlocal number, column, row
            name, at = element.name, element.attributes
            if name == "c":
                column = _cell(at["r"])[1] if "r" in at else column + 1
                if row is not None:
                    row.cells.append((column, element.at, int(at.get("s", 0))))
            elif name == "row":
                number, column = int(at.get("r", number + 1)), 0
                self._starts.append((number, element.at))
                if number in wanted:
                    style = int(at.get("s", 0)) if at.get("customFormat") in ("1", "true") else 0
                    row = self._rows[number] = _Row(element.at, style=style)
            elif name == "mergeCell":
                first, _, last = at.get("ref", "A1").partition(":")
                self.merged.append((*_cell(first), *_cell(last or first)))
            elif name == "col" and "style" in at:
                self._column_styles.append((int(at["min"]), int(at["max"]), int(at["style"])))
            elif element.depth == 0:
                self._prefix = element.prefix
            elif element.depth == 1:
                top(element)

        def top(element: Element) -> None:
            if element.name == "legacyDrawing":
                self.notes_relation = next((v for k, v in element.attributes.items() if k.endswith(":id")), "")
            elif element.name in _AFTER_NOTES and self._data_end >= 0 and self._notes_at < 0:
                self._notes_at = element.at

        def end(name: str, at: int, depth: int) -> None:
            nonlocal row
            if name == "row" and row is not None:
                row.end, row = at, None
            elif depth == 1 and name == "sheetData":
                self._data_end = at
            elif depth == 0:
                self._root_end = at

        walk(self.xml, start, end)


def _cell(name: str) -> Cell:
    return cell_in(name) or (1, 1)
