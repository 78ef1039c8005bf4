"""The report of whether it was worth it, to be handed on: two pages, with pictures. It says what it is given."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from io import BytesIO
from pathlib import Path
from typing import Any

from reportlab.graphics.shapes import Circle, Drawing, Line, Rect, String
from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, PageBreak, SimpleDocTemplate, Spacer, Table, TableStyle

from tracker.export.pdf import FONT, GREY, INK, SHADE, paragraph
from tracker.export.wording import Wording
from tracker.office.files import write

_WIDE = A4[0] - 30 * mm
_LABEL = 62 * mm
_GOOD, _PLAIN = "#1b6f78", "#a2704a"
MOST_BARS = 14
"""Lines of a picture that leave the page room for the rest."""
MOST_LOOMS = 24
"""Rows of the last table that fit on the second page."""


@dataclass(frozen=True, slots=True)
class Bar:
    """An estimate with its interval; `marked` = shown beside it, not to be believed."""

    label: str
    middle: float
    low: float
    high: float
    marked: bool = False


@dataclass(frozen=True, slots=True)
class WorthPages:
    """What stands in the report; texts are sentences, ready to be read."""

    title: str
    as_of: str
    verdicts: Sequence[str]
    changes: Sequence[Bar]
    """Percent: each figure against the same weeks, and plainly before and after."""
    savings: Sequence[str]
    money: Sequence[Bar]
    """A month: measured and claimed."""
    currency: str
    weeks: Sequence[Bar]
    """Percent: stops by weeks since the restart."""
    beside: Sequence[str]
    looms: Sequence[Sequence[str]]
    """Hall, loom, article, before, after, change."""
    figure: str
    """What the looms' figures are."""
    language: str = "en"


def write_worth_report(path: str | Path, pages: WorthPages) -> None:
    """Write the report (.pdf)."""
    write(Path(path), worth_pdf(pages), ".pdf")


def worth_pdf(pages: WorthPages) -> bytes:
    """The report as PDF."""
    made = BytesIO()
    document = SimpleDocTemplate(
        made, pagesize=A4, leftMargin=15 * mm, rightMargin=15 * mm, topMargin=14 * mm, bottomMargin=15 * mm,
        title=pages.title, author="beamslot",
    )  # fmt: skip
    write = Wording(pages.language)
    foot = partial(_foot, write)
    document.build([*_first(pages, write), PageBreak(), *_second(pages, write)], onFirstPage=foot, onLaterPages=foot)
    return made.getvalue()


def _foot(write: Wording, canvas: Any, document: Any) -> None:
    canvas.saveState()
    canvas.setFont(FONT, 8)
    canvas.drawRightString(A4[0] - 15 * mm, 8 * mm, write.say("pdf-page", page=document.page))
    canvas.restoreState()


def _first(pages: WorthPages, write: Wording) -> list[Flowable]:
    story: list[Flowable] = [
        paragraph(pages.title, 16, bold=True),
        paragraph(pages.as_of, 9, colour=GREY),
        Spacer(1, 6),
    ]
    story += [paragraph(text, 10, bold=True, space_before=3) for text in pages.verdicts]
    story += _picture(write.say("pdf-changes"), pages.changes, "%", write)
    story += [paragraph(write.say("pdf-saves"), 12, bold=True, space_before=10)]
    story += [paragraph(text, 9, space_before=2) for text in pages.savings]
    return story + _picture(write.say("pdf-money", currency=pages.currency), pages.money, pages.currency, write)


def _second(pages: WorthPages, write: Wording) -> list[Flowable]:
    story: list[Flowable] = _picture(write.say("pdf-weeks"), pages.weeks, "%", write)
    story += [paragraph(write.say("pdf-believe"), 12, bold=True, space_before=8)]
    story += [paragraph(text, 9, space_before=2) for text in pages.beside]
    return story + _looms(pages, write)


def _picture(title: str, bars: Sequence[Bar], unit: str, write: Wording) -> list[Flowable]:
    if not bars:
        return []
    return [
        KeepTogether(
            [paragraph(title, 9, colour=GREY, space_before=8), Spacer(1, 3), _drawing(bars[:MOST_BARS], unit, write)]
        )
    ]


def _drawing(bars: Sequence[Bar], unit: str, write: Wording) -> Drawing:
    """A line a bar: its label, its interval, a dot at the middle; a rule at nothing."""
    row, height = 13.0, 13.0 * len(bars) + 16
    low, high = min(0.0, *(b.low for b in bars)), max(0.0, *(b.high for b in bars))
    span = (high - low) or 1.0
    picture = Drawing(_WIDE, height)

    def x(value: float) -> float:
        return _LABEL + (value - low) / span * (_WIDE - _LABEL - 40 * mm)

    picture.add(Line(x(0), 10, x(0), height, strokeColor=HexColor(GREY), strokeWidth=0.6))
    picture.add(String(x(0), 1, f"0 {unit}", fontName=FONT, fontSize=7, textAnchor="middle", fillColor=HexColor(GREY)))
    for i, bar in enumerate(bars):
        y, colour = height - row * (i + 0.5), HexColor(_PLAIN if bar.marked else _GOOD)
        picture.add(String(0, y - 3, bar.label[:42], fontName=FONT, fontSize=8, fillColor=HexColor(INK)))
        look: dict[str, Any] = {"fillColor": colour, "strokeColor": None}
        faint: dict[str, Any] = {**look, "fillOpacity": 0.35}
        picture.add(Rect(x(bar.low), y - 2, max(0.8, x(bar.high) - x(bar.low)), 4, **faint))
        picture.add(Circle(x(bar.middle), y, 2.6, **look))
        told = _told(bar, unit == "%", write)
        picture.add(String(_WIDE, y - 3, told, fontName=FONT, fontSize=8, textAnchor="end", fillColor=HexColor(INK)))
    return picture


def _told(bar: Bar, signed: bool, write: Wording) -> str:
    """`-16 (-21 to -12)`; `signed` where a change is told: what rises has a plus."""
    middle, low, high = (
        f"{'+' if signed and value > 0 else ''}{write.number(value)}" for value in (bar.middle, bar.low, bar.high)
    )
    return middle if bar.low == bar.high else write.say("pdf-range", middle=middle, low=low, high=high)


def _looms(pages: WorthPages, write: Wording) -> list[Flowable]:
    if not pages.looms:
        return []
    codes = ("heading-hall", "heading-loom", "heading-article", "pdf-before", "pdf-after", "pdf-change")
    head = [write.say(code) for code in codes]
    rows = [
        [paragraph(text, 8, bold=i == 0) for text in row] for i, row in enumerate([head, *pages.looms[:MOST_LOOMS]])
    ]
    table = Table(rows, colWidths=[28 * mm, 20 * mm, 28 * mm, 20 * mm, 20 * mm, _WIDE - 116 * mm], repeatRows=1)
    table.setStyle(TableStyle([
        ("BACKGROUND", (0, 0), (-1, 0), HexColor(SHADE)), ("LINEBELOW", (0, 0), (-1, -1), 0.3, HexColor("#9aa5ab")),
        ("TOPPADDING", (0, 0), (-1, -1), 1), ("BOTTOMPADDING", (0, 0), (-1, -1), 1),
    ]))  # fmt: skip
    over = len(pages.looms) - MOST_LOOMS
    more = [paragraph(write.say("pdf-more-looms", looms=over), 8, colour=GREY)] if over > 0 else []
    title = write.say("pdf-loom-by-loom", figure=pages.figure)
    return [paragraph(title, 9, colour=GREY, space_before=8), Spacer(1, 3), table, *more]
