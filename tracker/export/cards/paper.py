"""What cards are drawn with: small paragraphs, ruled tables, boxes, and the square code."""

import re
from collections.abc import Sequence
from threading import local
from typing import Any

import segno
from reportlab.lib.colors import black, white
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Table, TableStyle

from tracker.export.pdf import markup, style

WIDTH = 194 * mm
"""Of the text on A4."""
SMALL, TEXT = 6.2, 7.0
_EMPTY_PAGE = 260 * mm
"""At least so high is the room of an A4 page on which nothing stands yet."""
_PALE = 0.9
"""Grey of a heading's ground: it prints on a machine that has black only."""


class _Text(Paragraph):
    """A paragraph that is broken into lines once for each width: the same cautions and operations stand on every card."""

    _broken_at: float | None = None
    _takes = (0.0, 0.0)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        if self._broken_at != aW:
            self._takes, self._broken_at = super().wrap(aW, aH), aW
        return self._takes


_made = local()
"""Of this thread: what was asked for → its paragraph. A paragraph knows the page that it is drawn on, so no two threads share
one."""


def _text(kind: str, text: tuple[str, ...], size: float, bold: bool = False, right: bool = False) -> Paragraph:
    known: dict[Any, Paragraph] = _made.__dict__.setdefault("texts", {})
    asked = (kind, text, size, bold, right)
    if asked not in known:
        marked = [markup(piece) for piece in text]
        known[asked] = _Text(
            f"<b>{marked[0]}</b> {marked[1]}" if kind == "pair" else marked[0], _close(size, bold, right)
        )
    return known[asked]


def forget() -> None:
    """Let go of the paragraphs that were made; to be done before a file is begun."""
    _made.__dict__.clear()


def small(text: str, size: float = TEXT, bold: bool = False, right: bool = False) -> Paragraph:
    """A paragraph of plain text, close-set."""
    return _text("plain", (text,), size, bold, right)


def pair(label: str, value: str, size: float = TEXT) -> Paragraph:
    """`label` in bold and what it is."""
    return _text("pair", (label, value), size)


def _close(size: float, bold: bool = False, right: bool = False) -> ParagraphStyle:
    made = style(size, bold=bold, colour="#000000", right=right)
    made.leading = size * 1.12
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
    low: float | Sequence[float] | None = None,
) -> Table:
    """A table with hairlines. A page breaks between rows; inside one only where it is higher than a page. `low`: height of
    each row (of all, or one by one), where it is to be written into by hand."""
    heights = [low] * len(rows) if isinstance(low, int | float) else low
    made = _Ruled(rows, colWidths=widths, repeatRows=heads, rowHeights=heights)
    made.setStyle(
        TableStyle(
            [
                ("GRID", (0, 0), (-1, -1), 0.4, black),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("LEFTPADDING", (0, 0), (-1, -1), 2),
                ("RIGHTPADDING", (0, 0), (-1, -1), 2),
                ("TOPPADDING", (0, 0), (-1, -1), 0.3),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 0.7),
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
