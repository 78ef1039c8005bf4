"""What comments on cells say, and those of an xlsx package; what we wrote ourselves is none of the mill's.

Part and element names: ECMA-376 part 1, 18.7 `comments`; of discussions [MS-XLSX] `threadedComment`; from memory.
"""

import posixpath
import zipfile
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from tracker.domain.addresses import Cell, cell_in
from tracker.office.sheet import clean
from tracker.office.walking.xml import scan

OURS = "beamslot"
"""Author of the comments that we write."""
OUR_PART = "\nbeamslot: "
"""Begins what we add below a comment that a cell has."""


@dataclass(slots=True)
class Comment:
    row: int
    column: int
    author: str = ""
    text: str = ""


def said_by_others(comments: Iterable[Comment]) -> dict[Cell, str]:
    """Cell → the text of its comments in one line, without ours and what we added to theirs."""
    found: dict[Cell, str] = {}
    for one in comments:
        cell, said = (one.row, one.column), " ".join(clean(one.text.partition(OUR_PART)[0]).split())
        if said and one.author.strip() != OURS:
            found[cell] = f"{found[cell]} / {said}" if cell in found else said
    return found


def comments_of(archive: zipfile.ZipFile, part: str) -> dict[Cell, str]:
    """Cell → what is said of it; of a discussion all that was written, in its order."""
    parts = _related(archive, part)
    discussions = [
        one for name in parts["threadedComment"] for one in _read(archive.read(name), "threadedComment", "text")
    ]
    discussed = {(one.row, one.column) for one in discussions}
    plain = [one for name in parts["comments"] for one in _read(archive.read(name), "comment", "t")]
    return said_by_others([*(one for one in plain if (one.row, one.column) not in discussed), *discussions])


def _related(archive: zipfile.ZipFile, part: str) -> dict[str, list[str]]:
    """Last word of a relation's type → the parts that the sheet has by it."""
    folder, name = posixpath.split(part)
    relations, names = f"{folder}/_rels/{name}.rels", set(archive.namelist())
    found: dict[str, list[str]] = defaultdict(list)

    def relation(tag: str, at: dict[str, str]) -> None:
        target = posixpath.normpath(posixpath.join("/", folder, at.get("Target", ""))).lstrip("/")
        if tag == "Relationship" and target in names:
            found[at.get("Type", "").rpartition("/")[2]].append(target)

    if relations in names:
        scan(archive.read(relations), relation)
    return found


def _read(xml: bytes, element: str, text_element: str) -> list[Comment]:
    """The comments of a part, one each `element`, whose letters stand in its `text_element`s."""
    authors: list[str] = []
    found: list[Comment] = []
    inside = ""

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal inside
        inside = tag
        if tag == "author":
            authors.append("")
        elif tag == element and (cell := cell_in(at.get("ref", ""))):
            found.append(Comment(*cell, author=at.get("authorId", "")))

    def text(data: str) -> None:
        if inside == "author":
            authors[-1] += data
        elif inside == text_element and found:
            found[-1].text += data

    def end(tag: str) -> None:
        nonlocal inside
        inside = ""

    scan(xml, start, end, text)
    for one in found:
        one.author = authors[int(one.author)] if one.author.isdigit() and int(one.author) < len(authors) else ""
    return found
