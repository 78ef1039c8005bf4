"""Notes (comments) on cells of a package: the texts, and the old drawing in which programmes look for their boxes."""

import re
from collections.abc import Mapping

from tracker.domain.addresses import Cell, cell_in, cell_name
from tracker.office.patching.package import Package
from tracker.office.patching.sheet_part import SheetPart
from tracker.office.patching.styles import MAIN
from tracker.office.patching.xml import Edit, Element, element_text, end_of, opened, splice, tag_at, walk
from tracker.office.walking.comments import OUR_PART, OURS

_COMMENTS_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml"
_EMPTY_COMMENTS = (
    f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<comments xmlns="{MAIN}"><authors></authors>'
    "<commentList></commentList></comments>"
).encode()
_SHAPE_TYPE = (
    '<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe">'
    '<v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>'
)
_EMPTY_DRAWING = (
    '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" '
    'xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/>'
    f"</o:shapelayout>{_SHAPE_TYPE}</xml>"
).encode()
_SHAPE_ID = re.compile(rb"_x0000_s(\d+)")


def add_notes(package: Package, part: str, sheet: SheetPart, notes: Mapping[Cell, str]) -> list[Cell]:
    """Add a note to each cell; a note that a cell has keeps its text, and ours follows.

    Gives the cells that hold a discussion thread, to which nothing can be added.
    """
    relations = package.relations(part)
    comments = next((relation.part for relation in relations if relation.type == "comments"), "")
    if not comments:
        comments = package.new_name("xl/comments{}.xml")
        package.write(comments, _EMPTY_COMMENTS)
        package.declare(comments, _COMMENTS_TYPE)
        package.relate(part, "comments", comments)
    xml, without_box, threads = _with_texts(opened(package.read(comments), "authors", "commentList", "text"), notes)
    package.write(comments, xml)
    drawing = next((r.part for r in relations if r.id == sheet.notes_relation and r.part in package.names), "")
    if not drawing:
        drawing = package.new_name("xl/drawings/vmlDrawing{}.vml")
        package.write(drawing, _EMPTY_DRAWING)
        package.declare_vml()
        sheet.refer_to_notes(package.relate(part, "vmlDrawing", drawing))
    package.write(drawing, _with_boxes(package.read(drawing), {cell: notes[cell] for cell in without_box}))
    return threads


def _with_texts(xml: bytes, notes: Mapping[Cell, str]) -> tuple[bytes, list[Cell], list[Cell]]:
    """The comments part with the texts; the cells that had no note; the cells that hold a thread."""
    edits: list[Edit] = []
    there: dict[Cell, int] = {}
    authors: list[str] = []
    ends = {"authors": -1, "commentList": -1}
    threaded: set[Cell] = set()
    prefix, cell, text_end = "", None, -1

    def start(element: Element) -> None:
        nonlocal prefix, cell
        if element.depth == 0:
            prefix = element.prefix
        elif element.name == "author":
            at = element.at + len(tag_at(xml, element.at))
            authors.append(xml[at : xml.find(b"<", at)].decode())
        elif element.name == "comment":
            cell = cell_in(element.attributes.get("ref", ""))
            author = int(element.attributes.get("authorId", 0))
            if cell and author < len(authors) and authors[author].startswith("tc="):
                threaded.add(cell)
        elif element.name == "t" and element.depth == 4 and cell in notes:
            edits.append(
                (element.at, element.at, f"<{prefix}r>".encode())
            )  # plain text becomes a run, so that one can follow

    def end(name: str, at: int, depth: int) -> None:
        nonlocal text_end
        if name in ends:
            ends[name] = at
        elif name == "t" and depth == 4 and cell in notes:
            after = end_of(xml, name, at)
            edits.append((after, after, f"</{prefix}r>".encode()))
        elif name == "text" and cell is not None:
            there[cell] = at

    walk(xml, start, end)
    threads = sorted(threaded & notes.keys())
    for one in sorted(notes.keys() & there.keys() - threaded):
        edits.append((there[one], there[one], _run(prefix, OUR_PART + notes[one]).encode()))
    new = sorted(notes.keys() - there.keys() - threaded)
    if new:
        edits.append((ends["authors"], ends["authors"], f"<{prefix}author>{OURS}</{prefix}author>".encode()))
        made = (
            f'<{prefix}comment ref="{cell_name((r, c))}" authorId="{len(authors)}"><{prefix}text>'
            f"{_run(prefix, notes[r, c])}</{prefix}text></{prefix}comment>"
            for r, c in new
        )
        edits.append((ends["commentList"], ends["commentList"], "".join(made).encode()))
    return splice(xml, edits), new, threads


def _run(prefix: str, text: str) -> str:
    return f'<{prefix}r><{prefix}t xml:space="preserve">{element_text(text)}</{prefix}t></{prefix}r>'


def _with_boxes(drawing: bytes, notes: Mapping[Cell, str]) -> bytes:
    """The drawing with a hidden box for each note. Old drawings are not always sound XML, so only their end is touched."""
    first = max((int(number) for number in _SHAPE_ID.findall(drawing)), default=1024) + 1
    boxes = "".join(_box(first + i, cell, text) for i, (cell, text) in enumerate(sorted(notes.items())))
    if b"_x0000_t202" not in drawing:
        boxes = _SHAPE_TYPE + boxes
    at = drawing.rindex(b"</xml>")
    return drawing[:at] + boxes.encode() + drawing[at:]


def _box(number: int, cell: Cell, text: str) -> str:
    row, column = cell[0] - 1, cell[1] - 1
    rows = max(3, min(14, 1 + sum(1 + len(line) // 42 for line in text.split("\n"))))
    return (
        f'<v:shape xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" '
        f'xmlns:x="urn:schemas-microsoft-com:office:excel" id="_x0000_s{number}" type="#_x0000_t202" '
        'style="position:absolute;margin-left:60pt;margin-top:2pt;width:220pt;height:'
        f'{rows * 15}pt;z-index:1;visibility:hidden" fillcolor="#fffbe6" o:insetmode="auto"><v:fill color2="#fffbe6"/>'
        '<v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div>'
        '</v:textbox><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/>'
        f"<x:Anchor>{column + 1}, 12, {max(0, row - 1)}, 8, {column + 5}, 12, {max(0, row - 1) + rows}, 4</x:Anchor>"
        f"<x:AutoFill>False</x:AutoFill><x:Row>{row}</x:Row><x:Column>{column}</x:Column></x:ClientData></v:shape>"
    )
