"""XML parts of a package: run through without building a tree, in one spelling of their letters."""

import re
from collections.abc import Callable
from xml.parsers import expat

_DECLARED = re.compile(rb"""^<\?xml[^>]*?encoding\s*=\s*["']([\w.-]+)["']""")


def scan(
    xml: bytes,
    start: Callable[[str, dict[str, str]], object],
    end: Callable[[str], object] | None = None,
    text: Callable[[str], object] | None = None,
) -> None:
    """Run through an XML part; tags come without their namespace prefix.

    A document type declaration raises `ValueError`, so no entity is ever expanded.
    """
    parser = expat.ParserCreate()
    parser.buffer_text = True
    names = _LocalNames()
    parser.StartElementHandler = lambda tag, at: start(names[tag], at)
    if end is not None:
        parser.EndElementHandler = lambda tag: end(names[tag])
    if text is not None:
        parser.CharacterDataHandler = text
    parser.StartDoctypeDeclHandler = no_doctype
    parser.Parse(xml, True)


class _LocalNames(dict[str, str]):
    """Tag → its name without the prefix, each worked out once."""

    def __missing__(self, tag: str) -> str:
        self[tag] = tag.rpartition(":")[2]
        return self[tag]


def no_doctype(*_: object) -> None:
    raise ValueError("a document type declaration")


def utf8(xml: bytes) -> bytes:
    """The part in UTF-8, whatever it came in, so that byte positions and patterns can be trusted."""
    if xml.startswith((b"\xff\xfe", b"\xfe\xff")):
        xml = xml.decode("utf-16").encode()
        return re.sub(rb"""(?<=encoding=["'])[\w.-]+""", b"UTF-8", xml, count=1)
    xml = xml.removeprefix(b"\xef\xbb\xbf")
    declared = _DECLARED.match(xml)
    if declared and declared[1].lower() not in (b"utf-8", b"utf8", b"us-ascii"):
        text = xml.decode(declared[1].decode())
        return text.replace(declared[1].decode(), "UTF-8", 1).encode()
    return xml
