"""Pick lists for the stockroom: day by day and kit by kit, shortages first, then by store location."""

from collections.abc import Iterable, Sequence
from datetime import date
from functools import partial
from io import BytesIO
from itertools import groupby
from pathlib import Path
from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, PageBreak, SimpleDocTemplate, Table, TableStyle

from tracker.domain.mill import Mill
from tracker.domain.needs import PickLine
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.export.pdf import FONT, GREY, SHADE, WARN, TickBox, is_borrowed, paragraph
from tracker.export.wording import Wording
from tracker.office import files
from tracker.office.writing.sheets import TidySheet, write_tables

_WIDTHS = (8 * mm, 22 * mm, 34 * mm, 56 * mm, 25 * mm, 35 * mm)


def write_picks(path: str | Path, lines: Iterable[PickLine], mill: Mill, language: str = "en") -> None:
    """Write the pick list as .xlsx, or as .pdf with a page per day and a box to tick per line."""
    path, ordered, write = Path(path), _ordered(lines), Wording(language)
    if path.suffix.lower() == ".pdf":
        _write_pdf(path, ordered, mill, write)
    else:
        write_tables(path, [_sheet(ordered, mill, write)])


def _ordered(lines: Iterable[PickLine]) -> list[PickLine]:
    return sorted(
        lines,
        key=lambda p: (p.day, p.start, p.key.sort_key, not p.short, not p.location, natural_key(p.location), natural_key(p.part)),
    )  # fmt: skip


# ------------------------------------------------------------------------------------------ workbook


def _sheet(lines: Sequence[PickLine], mill: Mill, write: Wording) -> TidySheet:
    col = write.col
    columns = [
        col("col-day", Kind.DATE),
        col("heading-start", Kind.MOMENT, about="hint-start-of-conversion"),
        col("heading-loom", Kind.IDENTIFIER),
        col("heading-hall", Kind.IDENTIFIER),
        col("col-short"),
        col("heading-location", Kind.IDENTIFIER),
        col("heading-part", Kind.IDENTIFIER),
        col("heading-description"),
        col("col-to-pick", Kind.NUMBER),
        col("heading-unit"),
        col("col-picked"),
    ]
    rows: list[list[Any]] = [
        [p.day, p.start.astimezone(mill.terms.zone).replace(tzinfo=None), p.key.loom, p.key.hall, _short(p, write), p.location,
         p.part, p.description, p.quantity, p.unit, None]
        for p in lines
    ]  # fmt: skip
    marks = {index: "short" for index, line in enumerate(lines) if line.short}
    says = [write.say("book-picks-of", programme=mill.terms.programme), _said(lines, write)]
    return write.sheet("book-picks", columns, rows, says, frozen=0, marks=marks)


def _short(line: PickLine, write: Wording) -> str:
    """`short of 2 pc`; empty where nothing lacks."""
    return write.say("book-short-of", quantity=write.number(line.short, line.unit, 3)) if line.short else ""


def _said(lines: Sequence[PickLine], write: Wording) -> str:
    kits = {(line.day, line.key) for line in lines}
    short = {(line.day, line.key) for line in lines if line.short}
    return write.say("picks-listed", kits=len(kits), lines=len(lines), short=len(short))


# ------------------------------------------------------------------------------------------ PDF


def _write_pdf(path: Path, lines: Sequence[PickLine], mill: Mill, write: Wording) -> None:
    made = _laid_out(lines, mill, "", write)
    if is_borrowed(made):
        made = _laid_out(lines, mill, write.say("card-letters"), write)
    files.write(path, made, ".pdf")


def _laid_out(lines: Sequence[PickLine], mill: Mill, note: str, write: Wording) -> bytes:
    """The file; `note` stands at the foot of every page."""
    story: list[Flowable] = []
    for on, of_day in groupby(lines, key=lambda line: line.day):
        if story:
            story.append(PageBreak())
        story += _day(on, list(of_day), mill, write)
    if not story:
        story = [paragraph(write.say("book-picks-none"), 11)]
    made = BytesIO()
    document = SimpleDocTemplate(
        made, pagesize=A4, leftMargin=15 * mm, rightMargin=15 * mm, topMargin=15 * mm, bottomMargin=16 * mm,
        title=write.say("book-picks-of", programme=mill.terms.programme), author="beamslot",
    )  # fmt: skip
    foot = partial(_foot, note, write)
    document.build(story, onFirstPage=foot, onLaterPages=foot)
    return made.getvalue()


def _foot(note: str, write: Wording, canvas: Any, document: Any) -> None:
    canvas.saveState()
    canvas.setFont(FONT, 8)
    canvas.drawString(15 * mm, 9 * mm, note)
    canvas.drawRightString(A4[0] - 15 * mm, 9 * mm, write.say("pdf-page", page=document.page))
    canvas.restoreState()


def _day(on: date, lines: Sequence[PickLine], mill: Mill, write: Wording) -> list[Flowable]:
    story: list[Flowable] = [
        paragraph(write.say("book-picks-for", on=on), 16, bold=True),
        paragraph(_said(lines, write), 9, colour=GREY),
    ]
    for _, of_kit in groupby(lines, key=lambda line: (line.start, line.key)):
        story.append(_kit(list(of_kit), mill, write))
    return story


def _kit(lines: Sequence[PickLine], mill: Mill, write: Wording) -> KeepTogether:
    first = lines[0]
    start = first.start.astimezone(mill.terms.zone)
    loom = mill.looms.get(first.key)
    codes = ("heading-location", "heading-part", "heading-description", "col-to-pick", "col-short")
    heads = [paragraph(text, 8, bold=True, right=i >= 4) for i, text in enumerate(("", *map(write.say, codes)))]
    rows = [heads, *(_pdf_row(line, write) for line in lines)]
    table = Table(rows, colWidths=_WIDTHS, repeatRows=1)
    shaded = [("BACKGROUND", (0, i), (-1, i), HexColor(WARN)) for i, line in enumerate(lines, 1) if line.short]
    table.setStyle(
        TableStyle(
            [
                ("BACKGROUND", (0, 0), (-1, 0), HexColor(SHADE)),
                ("LINEBELOW", (0, 0), (-1, -1), 0.4, HexColor("#9aa5ab")),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                *shaded,
            ]
        )
    )
    kit = write.say("book-picks-kit", loom=first.key, machine_type=loom.machine_type if loom else None, at=start.time())
    title = paragraph(kit, 11, bold=True, space_before=12)
    return KeepTogether([title, paragraph(" ", 3), table])


def _pdf_row(line: PickLine, write: Wording) -> list[Any]:
    bold = bool(line.short)
    texts = (line.location or write.say("book-no-location"), line.part, line.description)
    return [
        TickBox() if line.quantity else "",
        *(paragraph(text, 9, bold=bold) for text in texts),
        paragraph(write.number(line.quantity, line.unit, 3), 9, right=True),
        paragraph(_short(line, write), 9, bold=True, right=True),
    ]
