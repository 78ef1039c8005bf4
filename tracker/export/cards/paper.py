"""What cards are drawn with: small paragraphs, ruled tables, boxes, and the square code."""

import re
from collections.abc import Sequence
from typing import Any

import segno
from reportlab.lib.colors import black, white
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Table, TableStyle

from tracker.export.pdf import markup, style

WIDTH = 190 * mm
"""Of the text on A4."""
SMALL, TEXT = 6.2, 7.0
_EMPTY_PAGE = 260 * mm
"""At least so high is the room of an A4 page on which nothing stands yet."""
_PALE = 0.9
"""Grey of a heading's ground: it prints on a machine that has black only."""


def small(text: str, size: float = TEXT, bold: bool = False, right: bool = False) -> Paragraph:
    """A paragraph of plain text, close-set."""
    return Paragraph(markup(text), _close(size, bold, right))


def pair(label: str, value: str, size: float = TEXT) -> Paragraph:
    """`label` in bold and what it is."""
    return Paragraph(f"<b>{markup(label)}</b> {markup(value)}", _close(size))


def _close(size: float, bold: bool = False, right: bool = False) -> ParagraphStyle:
    made = style(size, bold=bold, colour="#000000", right=right)
    made.leading = size * 1.18
    made.splitLongWords = 1
    return made


def heading(text: str, keep: bool = True) -> Paragraph:
    """The heading of a block. `keep`: it stays with the whole block, as far as a page holds that; a long block is to begin
    wherever there is room."""
    made = _close(8.5, bold=True)
    made.spaceBefore, made.spaceAfter, made.keepWithNext = 2.5, 1, int(keep)
    return Paragraph(markup(text), made)


class _Ruled(Table):
    """A table that breaks inside a row only on an empty page, where the row is higher than that."""

    def split(self, availWidth: float, availHeight: float) -> list:
        self.splitInRow = int(availHeight > _EMPTY_PAGE)
        return super().split(availWidth, availHeight)


def ruled(
    rows: Sequence[list[Any]],
    widths: Sequence[float],
    heads: int = 1,
    more: Sequence[tuple] = (),
    low: float | None = None,
) -> Table:
    """A table with hairlines. A page breaks between rows; inside one only where it is higher than a page. `low`: height of
    each row, where it is to be written into by hand."""
    made = _Ruled(rows, colWidths=widths, repeatRows=heads, rowHeights=[low] * len(rows) if low else None)
    made.setStyle(
        TableStyle(
            [
                ("GRID", (0, 0), (-1, -1), 0.4, black),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 2),
                ("RIGHTPADDING", (0, 0), (-1, -1), 2),
                ("TOPPADDING", (0, 0), (-1, -1), 0.6),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 1.0),
                ("FONTSIZE", (0, 0), (-1, -1), SMALL),  # an empty cell is no higher than one with text
                ("LEADING", (0, 0), (-1, -1), SMALL),
                *([("BACKGROUND", (0, 0), (-1, heads - 1), (_PALE, _PALE, _PALE))] if heads else []),
                *more,
            ]
        )
    )
    return made


def shaded(row: int) -> list[tuple]:
    """The style of a row that heads those below it."""
    return [("SPAN", (0, row), (-1, row)), ("BACKGROUND", (0, row), (-1, row), (_PALE, _PALE, _PALE))]


class SquareCode(Flowable):
    """A text as QR code (ISO/IEC 18004), with its quiet zone of four modules."""

    def __init__(self, text: str, size: float):
        super().__init__()
        self.width = self.height = size
        self.rows = [bytes(row) for row in segno.make(text, micro=False, error="m").matrix_iter(scale=1, border=4)]

    def draw(self) -> None:
        side = self.width / len(self.rows)
        self.canv.setFillColor(white)
        self.canv.rect(0, 0, self.width, self.height, stroke=0, fill=1)
        self.canv.setFillColor(black)
        drawn = self.canv.beginPath()
        for y, row in enumerate(self.rows):
            for dark in re.finditer(rb"\x01+", row):
                drawn.rect(dark.start() * side, self.height - (y + 1) * side, len(dark[0]) * side, side * 1.02)
        self.canv.drawPath(drawn, stroke=0, fill=1)
