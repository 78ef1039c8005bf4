"""The cells of an xlsx sheet that a grid reader shows wrongly or not at all, and how far its filled cells reach.

The sheet's XML is searched, not parsed: of 200,000 cells a few thousand matter, and a parser would visit them all.
"""

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from tracker.domain.addresses import Cell, cell_of, column_number
from tracker.office.sheet import Extras
from tracker.office.walking.extent import MAX_CELLS, MAX_TEXT_CHARS, Extent

_FAR = re.compile(rb"""\br\s*=\s*["'](?:[A-Z]{3}\d|[A-Z]+\d{5})""")
_FILLED = re.compile(
    rb"""<(?:\w+:)?c\s[^>]*?\br\s*=\s*["']([A-Z]+)(\d+)["'][^>]*(?<!/)>\s*<(?:\w+:)?(?:f|v|is)[\s/>]"""
)
_SHARED = re.compile(rb"""\bt\s*=\s*["']s["'][^>]*>\s*<(?:\w+:)?v\b[^>]*>\s*(\d+)""")
_ROW_OR_CELL = re.compile(rb"<(?:\w+:)?(row|c)(?=[\s/>])([^>]*)>")
_VALUE = re.compile(rb"<(?:\w+:)?v(?:\s[^>]*)?(?:/>|>([^<]*)<)")
_FORMULA = re.compile(rb"<(?:\w+:)?f[\s/>]")
_INLINE = re.compile(rb"<(?:\w+:)?is[\s/>]")
_HINTS = (b"<f", b":f", b'"e"', b"'e'")
"""One of them stands in every sheet with a formula or an error."""
_HIDDEN_ROW = re.compile(rb"""<(?:\w+:)?row\s[^>]*?\bhidden\s*=\s*["'](?:1|true)["'][^>]*>""")
_COLUMN = re.compile(rb"<(?:\w+:)?col\s[^>]*>")
_FILTER = re.compile(rb"<(?:\w+:)?autoFilter\s[^>]*(?<!/)>\s*<(?:\w+:)?filterColumn")
_ATTRIBUTE = re.compile(rb"""([\w:]+)\s*=\s*(?:"([^"]*)"|'([^']*)')""")
_STRUCK = re.compile(rb"""<(?:\w+:)?strike(?!\s[^>]*\bval\s*=\s*["'](?:0|false))[\s/>]""")
_LAST_COLUMN = 16_384


@dataclass(frozen=True, slots=True)
class Struck:
    """What is struck through: cell styles, and shared texts in some of their letters; both by index."""

    styles: frozenset[bytes] = frozenset()
    texts: frozenset[bytes] = frozenset()

    @classmethod
    def of(cls, styles: frozenset[bytes], texts: list[bytes]) -> "Struck":
        return cls(styles, frozenset(b"%d" % i for i, text in enumerate(texts) if _strikes(text)))

    def has(self, at: Mapping[str, str], shown: bytes, content: bytes) -> bool:
        """Is a filled cell of these attributes struck through?"""
        shared = at.get("t") == "s" and shown in self.texts
        return at.get("s", "").encode() in self.styles or shared or _strikes(content)


def _strikes(xml: bytes) -> bool:
    return b"strike" in xml and _STRUCK.search(xml) is not None


def sheet_extent(xml: bytes, texts: list[bytes]) -> Extent:
    """Rows and columns of a sheet that reaches far, and the size of its texts where they may be too much; an ordinary
    sheet is passed over by a quick look and has an empty extent."""
    extent = Extent()
    if _FAR.search(xml):
        rows: set[int] = set()
        columns: set[bytes] = set()
        for count, found in enumerate(_FILLED.finditer(xml)):
            columns.add(found[1])
            rows.add(int(found[2]))
            if count > MAX_CELLS:
                break
        last_column = max((column_number(letters.decode()) for letters in columns), default=0)
        extent = Extent(sorted(rows), max(rows, default=0), last_column, len(rows))
    if not extent.costly and max(map(len, texts), default=0) * xml.count(b"v>") // 2 > MAX_TEXT_CHARS:
        extent.chars = _shared_chars(xml, texts)
    return extent


def _shared_chars(xml: bytes, texts: list[bytes]) -> int:
    """Bytes of shared texts, each counted as often as a cell refers to it: never less than the characters."""
    uses = Counter(int(found[1]) for found in _SHARED.finditer(xml))
    return sum(len(texts[index]) * count for index, count in uses.items() if index < len(texts))


def sheet_extras(xml: bytes, codes: Mapping[bytes, str], struck: Struck, hidden: bool) -> Extras:
    """What stands beside the values, but for merged cells, which the grid reader gives.

    `codes`: index of a cell style → number format code that matters.
    """
    extras = Extras(
        hidden=hidden, hidden_rows=_hidden_rows(xml), hidden_columns=_hidden_columns(xml), filtered=_filter(xml)
    )
    for cell, tag, content in _cells_that_matter(xml, codes, struck):
        at, found, formula = _attributes(tag), _VALUE.search(content), _FORMULA.search(content)
        shown = found[1].strip() if found and found[1] else b""
        kind, code = at.get("t", ""), codes.get(at.get("s", "").encode())
        if formula and not (shown or (found and kind == "str") or _INLINE.search(content)):
            extras.no_value.add(cell)  # an empty text that a formula gave is a value
        if kind == "e" and shown:
            extras.errors[cell] = shown.decode()
        if code and (found or formula):
            extras.codes[cell] = code
        if (shown or _INLINE.search(content)) and struck.has(at, shown, content):
            extras.struck.add(cell)
    return extras


def _cells_that_matter(xml: bytes, codes: Mapping[bytes, str], struck: Struck) -> Iterator[tuple[Cell, bytes, bytes]]:
    """(address, start tag, content) of the filled cells with a format that matters, an error, a formula or a text that may
    be struck through."""
    struck_inside = _strikes(xml)
    styles = {*codes, *struck.styles}
    if not (styles or struck.texts or struck_inside) and not any(hint in xml for hint in _HINTS):
        return
    kinds = [b"e", *([b"s"] if struck.texts else ()), *([b"inlineStr"] if struck_inside else ())]
    wanted = _wanted(styles, kinds)
    for hit in wanted.finditer(xml):
        address = _attributes(hit[1]).get("r")
        if address is None:
            yield from _counted(xml, wanted)
            return
        yield cell_of(address), hit[1], hit[2]


def _wanted(styles: Collection[bytes], kinds: Collection[bytes]) -> re.Pattern[bytes]:
    said = [rb"""\bt\s*=\s*["'](?:%s)["']""" % b"|".join(kinds)]
    said += [rb"""\bs\s*=\s*["'](?:%s)["']""" % b"|".join(sorted(styles))] if styles else []
    return re.compile(
        rb"<(?:\w+:)?c(\s(?=[^>]*?(?:%s)|[^>]*>\s*<(?:\w+:)?f[\s/>])[^>]*|(?=>\s*<(?:\w+:)?f[\s/>]))(?<!/)>"
        rb"(.*?)</(?:\w+:)?c\s*>" % b"|".join(said),
        re.DOTALL,
    )


def _counted(xml: bytes, wanted: re.Pattern[bytes]) -> Iterator[tuple[Cell, bytes, bytes]]:
    """The same where cells do not say where they stand, so that they must be counted."""
    row = column = 0
    for hit in _ROW_OR_CELL.finditer(xml):
        address = _attributes(hit[2]).get("r")
        if hit[1] == b"row":
            row, column = int(address) if address else row + 1, 0
            continue
        row, column = cell_of(address) if address else (row, column + 1)
        if found := wanted.match(xml, hit.start()):
            yield (row, column), found[1], found[2]


def _hidden_rows(xml: bytes) -> frozenset[int]:
    """Rows that say they are hidden; rows carry their number in every file that a spreadsheet programme writes."""
    tags = (_attributes(hit[0]) for hit in _HIDDEN_ROW.finditer(xml)) if b"hidden" in xml else ()
    return frozenset(int(at["r"]) for at in tags if "r" in at)


def _hidden_columns(xml: bytes) -> frozenset[int]:
    head = xml[: max(0, xml.find(b"sheetData"))]
    return frozenset(
        column
        for at in (_attributes(hit[0]) for hit in _COLUMN.finditer(head))
        if at.get("hidden") in ("1", "true")
        for column in range(int(at["min"]), min(int(at["max"]), _LAST_COLUMN) + 1)
    )


def _filter(xml: bytes) -> str:
    hit = _FILTER.search(xml) if b"filterColumn" in xml else None
    return _attributes(hit[0]).get("ref", "") if hit else ""


def _attributes(tag: bytes) -> dict[str, str]:
    return {name.decode(): (one or two).decode() for name, one, two in _ATTRIBUTE.findall(tag)}
