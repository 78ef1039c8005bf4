"""Cell styles added to a workbook's own: copies of the style a cell has, but with the fill of a mark."""

from dataclasses import dataclass, field

from tracker.office.patching.xml import Edit, Element, end_of, splice, tag_at, walk, with_attribute

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
EMPTY_STYLES = (
    f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="{MAIN}">'
    '<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill '
    'patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border>'
    "<left/><right/><top/><bottom/><diagonal/></border></borders>"
    '<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellXfs></styleSheet>'
).encode()

_SECTIONS = ("fonts", "fills", "cellXfs")


@dataclass(slots=True)
class _Section:
    start: int = -1
    end: int = -1
    children: list[tuple[int, int]] = field(default_factory=list)
    """First byte and byte after the last of each entry."""
    added: list[bytes] = field(default_factory=list)


class Styles:
    """The styles part, and what is to be added to it."""

    def __init__(self, xml: bytes):
        self._xml = xml
        self._sections = {name: _Section() for name in _SECTIONS}
        self._prefix = ""
        self._made: dict[tuple, int] = {}
        self._find()
        if any(section.start < 0 or section.end <= section.start for section in self._sections.values()):
            raise ValueError("a styles part without fonts, fills or cell formats")

    def filled(self, style: int, colour: str) -> int:
        """Index of a style like the given one, but with a solid fill of that colour (RRGGBB)."""
        if ("style", style, colour) not in self._made:
            xfs = self._sections["cellXfs"]
            first, after = xfs.children[style if style < len(xfs.children) else 0]
            raw = self._xml[first:after]
            tag = tag_at(raw, 0)
            new = with_attribute(with_attribute(tag, "fillId", str(self._fill(colour))), "applyFill", "1")
            self._made["style", style, colour] = self._add("cellXfs", new + raw[len(tag) :])
        return self._made["style", style, colour]

    def plain(self, bold: bool = False, wrap: bool = True, colour: str = "") -> int:
        """Index of a style of our own for the sheet of findings."""
        key = ("plain", bold, wrap, colour)
        if key not in self._made:
            p, fill = self._prefix, self._fill(colour) if colour else 0
            self._made[key] = self._add(
                "cellXfs",
                f'<{p}xf numFmtId="49" fontId="{self._font(bold)}" fillId="{fill}" borderId="0" applyNumberFormat="1" '
                f'applyFont="1" applyFill="1" applyAlignment="1"><{p}alignment vertical="top" wrapText="{int(wrap)}"/>'
                f"</{p}xf>".encode(),
            )
        return self._made[key]

    def written(self) -> bytes:
        """The part with everything added."""
        edits: list[Edit] = []
        for section in self._sections.values():
            if section.added:
                tag = tag_at(self._xml, section.start)
                count = str(len(section.children) + len(section.added))
                edits.append((section.start, section.start + len(tag), with_attribute(tag, "count", count)))
                edits.append((section.end, section.end, b"".join(section.added)))
        return splice(self._xml, edits)

    def _font(self, bold: bool) -> int:
        key = ("font", bold)
        if key not in self._made:
            p = self._prefix
            weight = f"<{p}b/>" if bold else ""
            font = f'<{p}font>{weight}<{p}sz val="11"/><{p}name val="Calibri"/><{p}family val="2"/></{p}font>'
            self._made[key] = self._add("fonts", font.encode())
        return self._made[key]

    def _fill(self, colour: str) -> int:
        key = ("fill", colour)
        if key not in self._made:
            p = self._prefix
            fill = (
                f'<{p}fill><{p}patternFill patternType="solid"><{p}fgColor rgb="FF{colour}"/><{p}bgColor indexed="64"/>'
                f"</{p}patternFill></{p}fill>"
            )
            self._made[key] = self._add("fills", fill.encode())
        return self._made[key]

    def _add(self, section: str, xml: bytes) -> int:
        found = self._sections[section]
        found.added.append(xml)
        return len(found.children) + len(found.added) - 1

    def _find(self) -> None:
        open_section: _Section | None = None

        def start(element: Element) -> None:
            nonlocal open_section
            if element.depth == 0:
                self._prefix = element.prefix
            elif element.depth == 1 and element.name in self._sections:
                open_section = self._sections[element.name]
                open_section.start = element.at
            elif element.depth == 2 and open_section is not None:
                open_section.children.append((element.at, -1))

        def end(name: str, at: int, depth: int) -> None:
            nonlocal open_section
            if depth == 2 and open_section is not None:
                open_section.children[-1] = (open_section.children[-1][0], end_of(self._xml, name, at))
            elif depth == 1 and open_section is not None:
                open_section.end, open_section = at, None

        walk(self._xml, start, end)
