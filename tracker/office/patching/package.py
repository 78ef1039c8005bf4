"""The package of an xlsx: its parts as bytes, their relations and content types; untouched parts stay as they are."""

import posixpath
import re
import zipfile
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from tracker.office.patching.xml import Edit, Element, attribute, splice, tag_at, walk, with_attribute
from tracker.office.walking.xml import utf8

OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships"
_SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"


@dataclass(frozen=True, slots=True)
class Relation:
    id: str
    type: str
    """Last word of its address: `worksheet`, `comments`, `vmlDrawing`."""
    part: str
    """Name of the part in the archive; `` where it lies outside."""


class Package:
    """Parts that have been changed or added, over the archive they came from."""

    def __init__(self, path: Path):
        self._archive = zipfile.ZipFile(path)
        self._changed: dict[str, bytes] = {}
        self.names = list(self._archive.namelist())

    def read(self, part: str) -> bytes:
        """A part in UTF-8 (pictures and the like as they are)."""
        data = self._changed[part] if part in self._changed else self._archive.read(part)
        return utf8(data) if part.endswith((".xml", ".rels")) else data

    def write(self, part: str, data: bytes) -> None:
        if part not in self.names:
            self.names.append(part)
        self._changed[part] = data

    def saved(self) -> bytes:
        """The whole package anew."""
        made = BytesIO()
        with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as target:
            for name in self.names:
                if name in self._changed:
                    target.writestr(name, self._changed[name])
                else:
                    target.writestr(self._archive.getinfo(name), self._archive.read(name), zipfile.ZIP_DEFLATED)
        return made.getvalue()

    def close(self) -> None:
        self._archive.close()

    def new_name(self, pattern: str) -> str:
        """A part name that is free: `xl/comments{}.xml` → `xl/comments3.xml`."""
        taken = {name.casefold() for name in self.names}
        return next(name for name in (pattern.format(i) for i in range(1, 100_000)) if name.casefold() not in taken)

    def relations(self, part: str) -> list[Relation]:
        """What a part refers to."""
        rels = _rels(part)
        if rels not in self.names:
            return []
        found: list[Relation] = []

        def start(element: Element) -> None:
            at = element.attributes
            if element.name == "Relationship":
                inside = at.get("TargetMode", "Internal") == "Internal"
                target = _resolved(part, at.get("Target", "")) if inside else ""
                found.append(Relation(at.get("Id", ""), at.get("Type", "").rpartition("/")[2], target))

        walk(self.read(rels), start)
        return found

    def relate(self, part: str, kind: str, target: str) -> str:
        """Let a part refer to another one; gives the relation's id."""
        rels, taken = _rels(part), {relation.id.casefold() for relation in self.relations(part)}
        id_ = next(name for name in (f"rId{i}" for i in range(1, 1_000_000)) if name.casefold() not in taken)
        entry = f'<Relationship xmlns="{_PACKAGE}" Id="{id_}" Type="{OFFICE}/{kind}" Target="/{attribute(target)}"/>'
        empty = f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="{_PACKAGE}"></Relationships>'
        self.write(rels, _appended(self.read(rels) if rels in self.names else empty.encode(), entry))
        return id_

    def declare(self, part: str, content_type: str) -> None:
        """Say what an added part is."""
        entry = f'<Override xmlns="{_TYPES}" PartName="/{attribute(part)}" ContentType="{content_type}"/>'
        self.write("[Content_Types].xml", _appended(self.read("[Content_Types].xml"), entry))

    def declare_vml(self) -> None:
        """Say what .vml parts are, where nobody has."""
        types = self.read("[Content_Types].xml")
        if not re.search(rb"""Extension\s*=\s*["']vml["']""", types, re.IGNORECASE):
            kind = "application/vnd.openxmlformats-officedocument.vmlDrawing"
            entry = f'<Default xmlns="{_TYPES}" Extension="vml" ContentType="{kind}"/>'
            self.write("[Content_Types].xml", _appended(types, entry, first=True))

    def sheets(self) -> dict[str, str]:
        """Sheet name → part, in workbook order, sheets of every kind."""
        targets = {relation.id: relation.part for relation in self.relations("xl/workbook.xml")}
        found: dict[str, str] = {}

        def start(element: Element) -> None:
            if element.name == "sheet":
                id_ = next((value for name, value in element.attributes.items() if name.endswith(":id")), "")
                found[element.attributes.get("name", "")] = targets.get(id_, "")

        walk(self.read("xl/workbook.xml"), start)
        return {name: part for name, part in found.items() if part in self.names}

    def add_first_sheet(self, name: str, xml: bytes) -> None:
        """Put a worksheet before all others and let the workbook open on it."""
        part = self.new_name("xl/worksheets/sheet{}.xml")
        self.write(part, xml)
        self.declare(part, _SHEET_TYPE)
        for other in self.sheets().values():
            self.write(other, _unselected(self.read(other)))
        self._list_first(name, self.relate("xl/workbook.xml", "worksheet", part))

    def _list_first(self, name: str, relation: str) -> None:
        xml = self.read("xl/workbook.xml")
        edits: list[Edit] = []
        ids: list[int] = []

        def start(element: Element) -> None:
            at, tag = element.at, tag_at(xml, element.at)
            if element.name == "sheets":
                edits.append((at + len(tag), at + len(tag), element.prefix.encode()))
            elif element.name == "sheet":
                ids.append(int(element.attributes.get("sheetId", 0)))
            elif element.name == "workbookView":
                edits.append(
                    (at, at + len(tag), with_attribute(with_attribute(tag, "activeTab", None), "firstSheet", None))
                )
            elif element.name == "definedName" and "localSheetId" in element.attributes:
                moved = str(int(element.attributes["localSheetId"]) + 1)
                edits.append((at, at + len(tag), with_attribute(tag, "localSheetId", moved)))

        walk(xml, start)
        index, (at, _, prefix) = next((i, edit) for i, edit in enumerate(edits) if edit[0] == edit[1])
        sheet = f'<{prefix.decode()}sheet xmlns:r="{OFFICE}" name="{attribute(name)}" sheetId="{max(ids) + 1}" r:id="{relation}"/>'
        edits[index] = (at, at, sheet.encode())
        self.write("xl/workbook.xml", splice(xml, edits))


_TYPES = "http://schemas.openxmlformats.org/package/2006/content-types"


def _rels(part: str) -> str:
    folder, name = posixpath.split(part)
    return posixpath.join(folder, "_rels", f"{name}.rels")


def _resolved(part: str, target: str) -> str:
    return posixpath.normpath(posixpath.join("/", posixpath.dirname(part), target)).lstrip("/")


def _appended(xml: bytes, entry: str, first: bool = False) -> bytes:
    """The entry as the first or last child of the root."""
    places: list[int] = []

    def start(element: Element) -> None:
        if element.depth == 0:
            tag = tag_at(xml, element.at)
            places.append(element.at + len(tag))
            if tag.endswith(b"/>"):
                raise ValueError("an empty part")

    def end(_name: str, at: int, depth: int) -> None:
        if depth == 0:
            places.append(at)

    walk(xml, start, end)
    at = places[0] if first else places[-1]
    return splice(xml, [(at, at, entry.encode())])


def _unselected(xml: bytes) -> bytes:
    """The sheet without its mark as the selected one: two selected sheets would be edited together."""
    edits: list[Edit] = []

    def start(element: Element) -> None:
        if element.name == "sheetView" and "tabSelected" in element.attributes:
            tag = tag_at(xml, element.at)
            edits.append((element.at, element.at + len(tag), with_attribute(tag, "tabSelected", None)))

    if b"tabSelected" in xml:
        walk(xml, start)
    return splice(xml, edits)
