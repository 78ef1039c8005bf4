"""Packs of cards and weavers' notes as PDF: for each crew a page of contents and its cards in booking order."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from functools import partial
from io import BytesIO
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from reportlab.lib.pagesizes import A4, A6
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, NextPageTemplate, PageBreak, PageTemplate

from tracker.domain.cards import Card
from tracker.domain.plan import Booking
from tracker.domain.screen_addresses import loom_screen
from tracker.export.cards import blocks
from tracker.export.cards.note import note
from tracker.export.cards.paper import SMALL, TEXT, WIDTH, forget, heading, ruled, small
from tracker.export.cards.words import CardWords
from tracker.export.pdf import borrows, paragraph
from tracker.office.files import write


@dataclass(frozen=True, slots=True)
class PackLine:
    """A conversion that a crew works on: the card, or who has it, or that there is none."""

    booking: Booking
    start: datetime
    end: datetime
    """Of the crew's first turn."""
    card: Card | None = None
    taken_from: str = ""
    """The crew that began and so has the card."""


@dataclass(frozen=True, slots=True)
class Pack:
    crew: str
    """`` where the plan names none."""
    language: str
    lines: tuple[PackLine, ...]
    """By start."""

    @property
    def cards(self) -> tuple[Card, ...]:
        return tuple(line.card for line in self.lines if line.card)


@dataclass(slots=True)
class _Section:
    """Pages that belong together."""

    mark: str
    """What stands at the top of its pages, left."""
    words: CardWords
    story: list[Flowable]


@dataclass(slots=True)
class _Pages:
    """What is known once all is laid out."""

    first: dict[int, int] = field(default_factory=dict)
    """Section → its first page."""
    count: dict[int, int] = field(default_factory=dict)
    section: list[int] = field(default_factory=list)
    """Page → its section; the first page is page 1."""


def write_packs(
    path: str | Path, packs: Sequence[Pack], zone: ZoneInfo, programme: str, week: str | None, address: str | None
) -> int:
    """Write the packs (.pdf); gives the number of pages. Without a `week` the cards stand alone, without contents."""
    forget()
    sections: list[_Section] = []
    for pack in packs:
        words = CardWords(pack.language, zone)
        begin = len(sections) + (1 if week else 0)
        if week:
            sections.append(_Section(pack.crew, words, _contents(pack, words, week, begin)))
        for card in pack.cards:
            mark = f"{words('card-number')} {card.number} · {words('card-loom')} {card.key}"
            sections.append(_Section(mark, words, _card(card, words, address)))
    made, pages = _laid_out(sections, programme, A4, 8 * mm)
    write(path, made, ".pdf")
    return sum(pages.count.values())


def write_notes(path: str | Path, packs: Sequence[Pack], zone: ZoneInfo, programme: str) -> int:
    """Write a weaver's note (A6) for each card of the packs (.pdf); gives the number of pages."""
    forget()
    sections = []
    for pack in packs:
        words = CardWords(pack.language, zone)
        for card in pack.cards:
            mark = f"{words('card-loom')} {card.key}"
            sections.append(_Section(mark, words, note(card, words)))
    made, pages = _laid_out(sections, programme, A6, 6 * mm)
    write(path, made, ".pdf")
    return sum(pages.count.values())


def leads_to(card: Card, address: str | None) -> str:
    """What the square code holds: the loom's screen where its address is known, else the number of the card."""
    if not address:
        return card.number
    return loom_screen(address, card.key)


def _card(card: Card, words: CardWords, address: str | None) -> list[Flowable]:
    story = blocks.head(card, words, leads_to(card, address))
    for block in blocks.ALL:
        story += block(card, words)
    return story


def _contents(pack: Pack, words: CardWords, week: str, begin: int) -> list[Flowable]:
    codes = (
        "card-at-page",
        "card-start",
        "card-loom",
        "card-machine-type",
        "card-window",
        "card-number",
        "card-remark",
    )
    rows: list[list[Any]] = [[small(words(code), SMALL, bold=True) for code in codes]]
    section = begin
    for line in pack.lines:
        page: Flowable = small("")
        if line.card:
            page, section = _BeginsAt(section), section + 1
        rows.append(_content_line(line, page, words))
    widths = [12 * mm, 42 * mm, 34 * mm, 24 * mm, 26 * mm, 24 * mm, WIDTH - 162 * mm]
    return [
        paragraph(words("card-pack", week=week), 16, bold=True, colour="#000000"),
        paragraph(f"{words('card-crew')}: {pack.crew or words('card-no-crew')}", 12, colour="#000000"),
        heading(" "),
        ruled(rows, widths),
    ]


def _content_line(line: PackLine, page: Flowable, words: CardWords) -> list[Any]:
    card, booking = line.card, line.booking
    remarks = [words("card-pilot")] if booking.pilot else []
    remarks += [words("card-attended", trade=booking.attended_by)] if booking.attended_by else []
    if line.taken_from:
        remarks.append(words("card-takes-over", crew=line.taken_from))
    elif card is None:
        remarks.append(words("card-no-card"))
    if card and (short := [part.part for part in card.parts if part.short]):
        remarks.append(words("card-lacks", parts=", ".join(short)))
    return [
        page, small(words.span(line.start, line.end)), small(str(booking.key)),
        small(card.loom.machine_type if card else ""), small(words.kind(booking.kind)), small(card.number if card else ""),
        small("; ".join(remarks)),
    ]  # fmt: skip


# ---------------------------------------------------------------------- laying out


class _BeginsAt(Flowable):
    """The number of the page on which a section begins: room for it, which is drawn once that is known."""

    def __init__(self, section: int):
        super().__init__()
        self.section = section

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        return small("0").wrap(aW, aH)

    def draw(self) -> None:
        self.canv.doForm(f"begins-{self.section}")


class _Finished(Canvas):
    """Draws what is known last, such as how many pages there are, just before the file is written."""

    def __init__(self, finish: Callable[[Canvas], None], *given: Any, **more: Any):
        super().__init__(*given, **more)
        self.finish = finish

    def save(self) -> None:
        self.finish(self)
        super().save()


def _laid_out(
    sections: Sequence[_Section], programme: str, size: tuple[float, float], margin: float
) -> tuple[bytes, _Pages]:
    made, pages = BytesIO(), _Pages()
    width, height = size
    room = (margin, margin + 2 * mm, width - 2 * margin, height - 2 * margin - 4 * mm)
    document = BaseDocTemplate(made, pagesize=size, title=programme, author="beamslot")
    document.addPageTemplates([
        PageTemplate(str(i), [Frame(*room, leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0)],
                     onPage=partial(_page, i, section, pages, margin))
        for i, section in enumerate(sections)
    ])  # fmt: skip
    story: list[Flowable] = []
    for i, section in enumerate(sections):
        story += [NextPageTemplate(str(i)), PageBreak()] if i else []
        story += section.story
    finish = partial(_finish, sections, pages, programme, margin)
    document.build(story, canvasmaker=partial(_Finished, finish))
    return made.getvalue(), pages


def _page(i: int, section: _Section, pages: _Pages, margin: float, canvas: Canvas, document: Any) -> None:
    pages.first.setdefault(i, document.page)
    pages.count[i] = document.page - pages.first[i] + 1
    pages.section.append(i)
    width, height = document.pagesize
    _line(canvas, section.mark, "", margin, height - margin, width - 2 * margin)
    canvas.doForm(f"page-{document.page}")


def _finish(sections: Sequence[_Section], pages: _Pages, programme: str, margin: float, canvas: Canvas) -> None:
    """How many pages each section has, where it begins, and whether the letters of the file depend on its reader."""
    width, height = canvas._pagesize  # type: ignore[attr-defined]
    borrowed = borrows(canvas)
    for number, i in enumerate(pages.section, 1):
        words = sections[i].words
        say = words("card-page", page=number - pages.first[i] + 1, pages=pages.count[i])
        foot = " · ".join([programme, *([words("card-letters")] if borrowed else [])])
        canvas.beginForm(f"page-{number}")
        _line(canvas, "", say, margin, height - margin, width - 2 * margin)
        _line(canvas, foot, "", margin, margin - 2 * mm, width - 2 * margin)
        canvas.endForm()
    for i, first in pages.first.items():
        canvas.beginForm(f"begins-{i}")
        made = small(str(first))
        made.wrap(12 * mm, TEXT)
        made.drawOn(canvas, 0, 0)
        canvas.endForm()


def _line(canvas: Canvas, left: str, right: str, x: float, y: float, width: float) -> None:
    for text, at_right in ((left, False), (right, True)):
        if text:
            made = small(text, SMALL, right=at_right)
            made.wrap(width, 1000)
            made.drawOn(canvas, x, y - (made.height - SMALL * 1.15))
