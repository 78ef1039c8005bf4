"""Changing an XML part in place: find the byte where something stands, put bytes there, leave every other byte alone.

A parsed and rewritten part would lose what its parser does not keep (prefixes that `mc:Ignorable` names, unknown
extensions), and a spreadsheet programme would then call the workbook damaged.
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from xml.parsers import expat
from xml.sax.saxutils import escape

from tracker.office.walking.xml import no_doctype
from tracker.office.writing.values import xml_text

Edit = tuple[int, int, bytes]
"""(first byte, byte after the last, what stands there instead); both equal = insertion."""

_TAG = re.compile(rb"""<[^>"']*(?:"[^"]*"[^>"']*|'[^']*'[^>"']*)*>""")


@dataclass(frozen=True, slots=True)
class Element:
    """A start tag met on the way through a part."""

    name: str
    """Without prefix."""
    prefix: str
    """`x:` or ``."""
    attributes: dict[str, str]
    at: int
    """Byte at which the tag starts."""
    depth: int
    """0 = the root."""


def walk(xml: bytes, start: Callable[[Element], object], end: Callable[[str, int, int], object] | None = None) -> None:
    """Call `start(element)` and `end(name, at, depth)` through a UTF-8 part; raises ValueError for a doctype."""
    parser = expat.ParserCreate()
    depth = 0

    def on_start(tag: str, attributes: dict[str, str]) -> None:
        nonlocal depth
        prefix, _, name = tag.rpartition(":")
        start(Element(name, f"{prefix}:" if prefix else "", attributes, parser.CurrentByteIndex, depth))
        depth += 1

    def on_end(tag: str) -> None:
        nonlocal depth
        depth -= 1
        if end is not None:
            end(tag.rpartition(":")[2], parser.CurrentByteIndex, depth)

    parser.StartElementHandler, parser.EndElementHandler = on_start, on_end
    parser.StartDoctypeDeclHandler = no_doctype
    parser.Parse(xml, True)


def end_of(xml: bytes, name: str, at: int) -> int:
    """Byte after the element that `end` reported: there an element closed by itself is already passed."""
    closing = re.compile(rb"</(?:[\w.-]+:)?" + name.encode() + rb"\s*>").match(xml, at)
    return closing.end() if closing else at


def opened(xml: bytes, *names: str) -> bytes:
    """The part with `<name/>` written as `<name></name>`, so that something can be put inside."""
    for name in names:
        pattern = re.compile(rb"<((?:[\w.-]+:)?" + name.encode() + rb")(\s[^>]*?)?\s*/>")
        xml = pattern.sub(rb"<\1\2></\1>", xml)
    return xml


def splice(xml: bytes, edits: Iterable[Edit]) -> bytes:
    """The part with all edits made; insertions at one place keep their order."""
    pieces, done = [], 0
    for first, after, new in sorted(edits, key=lambda edit: edit[:2]):
        pieces += [xml[done:first], new]
        done = after
    return b"".join([*pieces, xml[done:]])


def tag_at(xml: bytes, at: int) -> bytes:
    """The whole tag that starts at a byte."""
    hit = _TAG.match(xml, at)
    if hit is None:
        raise ValueError("a tag without end")
    return hit[0]


def with_attribute(tag: bytes, name: str, value: str | None) -> bytes:
    """The start tag with an attribute set, or taken away where the value is None."""
    pattern = re.compile(rb"""\s+""" + name.encode() + rb"""\s*=\s*(?:"[^"]*"|'[^']*')""")
    bare = pattern.sub(b"", tag, count=1)
    if value is None:
        return bare
    tail = 2 if bare.endswith(b"/>") else 1
    return bare[:-tail].rstrip() + f' {name}="{attribute(value)}"'.encode() + bare[-tail:]


def attribute(text: str) -> str:
    """Text for an attribute in double quotes."""
    return escape(xml_text(text), {'"': "&quot;", "\n": "&#10;", "\t": "&#9;"})


def element_text(text: str) -> str:
    """Text for an element; CR and characters that XML cannot hold as the format escapes them."""
    return escape(xml_text(text))
