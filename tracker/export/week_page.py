"""The manager's page of a week: one A4 page, with a picture. It says what it is given."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from typing import Any

from reportlab.graphics.shapes import Circle, Drawing, Line, Polygon, PolyLine, Rect, String
from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Frame, KeepInFrame, PageTemplate, Spacer, Table, TableStyle
from reportlab.platypus.doctemplate import BaseDocTemplate

from tracker.export.pdf import FONT, GREY, INK, paragraph
from tracker.office.files import write

CLOTH, LINE, WOAD, WALNUT = "#f1ece1", "#d9d2c3", "#1d5c73", "#7a6652"
_MARGIN, _FOOT = 15 * mm, 16 * mm
_WIDE = A4[0] - 2 * _MARGIN
_HIGH = A4[1] - _MARGIN - _FOOT
_LEFT = 108 * mm
MOST_NOTES = 8
"""Lines of a list that are told; how many more there are stands below."""


@dataclass(frozen=True, slots=True)
class FigureOfWeek:
    what: str
    value: str
    more: str


@dataclass(frozen=True, slots=True)
class NotesOfWeek:
    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WeekPage:
    """What stands on the page; texts are ready to be read."""

    title: str
    subtitle: str
    figures: tuple[FigureOfWeek, ...]
    """Six."""
    progress_title: str
    weeks: tuple[str, ...]
    planned: tuple[int, ...]
    """Looms up to the end of each week; likewise the next two, done up to the week of the report."""
    done: tuple[int, ...]
    expected: tuple[int, ...]
    all: int
    legend: tuple[str, str, str]
    """Planned, done, expected."""
    months_title: str
    months: tuple[tuple[str, ...], ...]
    """The heading first."""
    notes: tuple[NotesOfWeek, ...]
    more: Callable[[int], str]
    foot: str
    seal: str
    """The last hash of the history."""


def write_week_page(path: str | Path, page: WeekPage) -> None:
    """Write the page (.pdf)."""
    write(Path(path), week_pdf(page), ".pdf")


def week_pdf(page: WeekPage) -> bytes:
    """The page; what would not fit on it is drawn smaller."""
    made = BytesIO()
    document = BaseDocTemplate(made, pagesize=A4, title=f"{page.title}, {page.subtitle}", author="beamslot")
    frame = Frame(_MARGIN, _FOOT, _WIDE, _HIGH, 0, 0, 0, 0)
    document.addPageTemplates(PageTemplate(frames=[frame], onPage=lambda canvas, _: _foot(canvas, page)))
    document.build([KeepInFrame(_WIDE, _HIGH, _story(page), mode="shrink")])
    return made.getvalue()


def _story(page: WeekPage) -> list[Flowable]:
    story: list[Flowable] = [
        paragraph(page.title, 16, bold=True), paragraph(page.subtitle, 10, colour=GREY), Spacer(1, 8),
        _figures(page.figures[:3]), Spacer(1, 5), _figures(page.figures[3:]), Spacer(1, 10),
        _beside([paragraph(page.progress_title, 10, bold=True), Spacer(1, 3), _picture(page)],
                [paragraph(page.months_title, 10, bold=True), Spacer(1, 3), _months(page.months)]),
    ]  # fmt: skip
    for notes in page.notes:
        story.append(paragraph(notes.title, 11, bold=True, space_before=9))
        story += [paragraph(f"– {line}", 9, space_before=2) for line in notes.lines[:MOST_NOTES]]
        if more := len(notes.lines) - MOST_NOTES:
            story += [paragraph(page.more(more), 9, colour=GREY, space_before=2)] if more > 0 else []
    return story


def _beside(left: list[Flowable], right: list[Flowable]) -> Table:
    table = Table([[left, right]], colWidths=[_LEFT + 4 * mm, _WIDE - _LEFT - 4 * mm])
    table.setStyle(_style(("VALIGN", (0, 0), (-1, -1), "TOP"), *_padded(0)))
    return table


def _figures(figures: Sequence[FigureOfWeek]) -> Table:
    """Side by side, each on cloth below a line of woad."""
    gap, wide = 4 * mm, (_WIDE - 8 * mm) / 3
    row: list[Any] = []
    for i, one in enumerate(figures):
        row += [[]] if i else []
        row.append([paragraph(one.what, 8, colour=GREY), paragraph(one.value, 14, bold=True), paragraph(one.more, 8)])
    table = Table([row], colWidths=[wide, gap, wide, gap, wide])
    boxes = [command for x in (0, 2, 4) for command in (
        ("BACKGROUND", (x, 0), (x, 0), HexColor(CLOTH)), ("LINEABOVE", (x, 0), (x, 0), 2, HexColor(WOAD)))]  # fmt: skip
    table.setStyle(_style(("VALIGN", (0, 0), (-1, -1), "TOP"), *_padded(5), *boxes))
    return table


def _months(rows: Sequence[Sequence[str]]) -> Table:
    cells = [
        [paragraph(text, 8, bold=not i, right=bool(j)) for j, text in enumerate(row)] for i, row in enumerate(rows)
    ]
    wide = _WIDE - _LEFT - 4 * mm
    table = Table(cells, colWidths=[17 * mm, *[(wide - 17 * mm) / (len(rows[0]) - 1)] * (len(rows[0]) - 1)])
    below = [("LINEBELOW", (0, 0), (-1, 0), 0.8, HexColor(INK)), ("LINEBELOW", (0, 1), (-1, -1), 0.3, HexColor(LINE))]
    table.setStyle(_style(*_padded(1.5), *below))
    return table


def _style(*commands: Any) -> TableStyle:
    return TableStyle(list(commands))


def _padded(points: float) -> list[Any]:
    return [(f"{side}PADDING", (0, 0), (-1, -1), points) for side in ("LEFT", "RIGHT", "TOP", "BOTTOM")]


def _picture(page: WeekPage) -> Drawing:
    """Lines over the weeks, each with a sign of its own: planned dashed with dots, expected dotted with triangles, done whole with
    squares; a rule at the number of all looms."""
    high, low, right = 150.0, 26.0, 14.0
    picture = Drawing(_LEFT, high)
    left, top = 22.0, max(page.all, *page.planned, *page.expected, 1)
    steps = max(1, len(page.weeks) - 1)

    def at(i: int, looms: float) -> tuple[float, float]:
        return left + i / steps * (_LEFT - left - right), low + looms / top * (high - low - 10)

    for looms in (0, page.all):
        y = at(0, looms)[1]
        picture.add(Line(left, y, _LEFT - right, y, strokeColor=HexColor(LINE), strokeWidth=0.8))
        picture.add(_text(left - 4, y - 3, f"{looms:,}", "end"))
    for i in range(0, len(page.weeks), -(-len(page.weeks) // 7) or 1):
        picture.add(_text(at(i, 0)[0], low - 11, page.weeks[i][-3:], "middle"))
    lines = (
        (page.planned, GREY, [4, 3], _dot),
        (page.expected, WALNUT, [1, 2], _triangle),
        (page.done, WOAD, None, _square),
    )
    for totals, colour, dashes, sign in lines:
        points = [at(i, looms) for i, looms in enumerate(totals)]
        if len(points) > 1:
            flat = [coordinate for point in points for coordinate in point]
            look: dict[str, Any] = {"strokeColor": HexColor(colour), "strokeDashArray": dashes, "fillColor": None}
            picture.add(PolyLine(flat, strokeWidth=1.3, **look))
        for x, y in points:
            picture.add(sign(x, y, colour))
    x = left
    for word, colour, sign in zip(page.legend, (GREY, WOAD, WALNUT), (_dot, _square, _triangle), strict=True):
        picture.add(sign(x, 5, colour))
        picture.add(_text(x + 6, 2, word, "start"))
        x += 78
    return picture


def _text(x: float, y: float, text: str, anchor: str) -> String:
    look: dict[str, Any] = {"fontName": FONT, "fontSize": 7.5, "textAnchor": anchor, "fillColor": HexColor(INK)}
    return String(x, y, text, **look)


def _dot(x: float, y: float, colour: str) -> Circle:
    return Circle(x, y, 2, **_filled(colour))


def _square(x: float, y: float, colour: str) -> Rect:
    return Rect(x - 2, y - 2, 4, 4, **_filled(colour))


def _triangle(x: float, y: float, colour: str) -> Polygon:
    return Polygon([x - 2.4, y - 2, x + 2.4, y - 2, x, y + 2.4], **_filled(colour))


def _filled(colour: str) -> dict[str, Any]:
    return {"fillColor": HexColor(colour), "strokeColor": None}


def _foot(canvas: Any, page: WeekPage) -> None:
    canvas.saveState()
    canvas.setFillColor(HexColor(GREY))
    canvas.setFont(FONT, 7)
    canvas.drawString(_MARGIN, 10 * mm, page.foot)
    canvas.drawString(_MARGIN, 6.5 * mm, page.seal)
    canvas.restoreState()
