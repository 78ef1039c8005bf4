"""A list in the making: its looms as they are, the columns that say so, and what must come of loading it."""

import random
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from .sheets import Cell, File, Row, Sheet, Tag
from .words import words


class Anything:
    """Equal to whatever was read, also to nothing: a value that the list does not settle."""

    def __repr__(self) -> str:
        return "anything"


ANYTHING = Anything()

Answer = tuple[Tag | str, str]
"""(heading, sheet, or the tag of the cell that is named; answer)."""


@dataclass(frozen=True)
class Question:
    """One question that a list raises."""

    about: str
    at: tuple[Tag, ...] = ()
    """Cells of which the question must name one. Empty: a question about the file."""
    answers: tuple[tuple[Answer, ...], ...] = ()
    """What may be answered, in the spellings that are tried in turn. Empty: it is enough that it is asked."""
    required: bool = True
    """Must it be asked? Else loading right without it is as good."""


@dataclass
class Truth:
    looms: list[dict[str, Any]]
    """Canonical records with `attributes`; `key` is what the tags call the loom."""
    questions: list[Question] = field(default_factory=list)
    refused: list[Tag] = field(default_factory=list)
    """Cells whose rows must be refused; the rest loads with --partial."""
    may_stop: bool = False
    """Is any question and any refusal as good as what else is right?"""
    asking_will_do: bool = False
    """Is a question about what is to be refused as good?"""
    optional: list[dict[str, Any]] = field(default_factory=list)
    """Looms that may be left out; if they are loaded they must read like one of these."""
    told: list[Tag] = field(default_factory=list)
    """Cells that a finding of any severity must name."""
    headings_also: dict[str, tuple[str, ...]] = field(default_factory=dict)
    """Heading of an attribute → under what it may be kept as well."""


@dataclass
class Column:
    name: str
    """Field of the loom list, or a name for a column of the mill's own."""
    heading: str
    unit: str = ""
    """As it stands with the heading; `` where it does not."""
    group: int | None = None
    """Which of the group headings it stands below, where a layout has them."""
    twins: tuple[str, ...] = ()
    """Columns that stand with it below one heading, itself among them; `below` is what stands under that heading."""
    below: str = ""


@dataclass
class Draft:
    """What the parts of the generator work on, one after the other."""

    rng: random.Random
    language: str
    looms: list[dict[str, Any]]
    columns: list[Column] = field(default_factory=list)
    cells: dict[tuple[int, str], Any] = field(default_factory=dict)
    codes: dict[tuple[int, str], str] = field(default_factory=dict)
    """Number formats of cells."""
    truth: Truth = field(init=False)
    sheets: list[Sheet] = field(default_factory=list)
    files: list[File] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.truth = Truth(self.looms)

    @property
    def words(self) -> dict[str, Any]:
        return words(self.language)

    @property
    def keys(self) -> list[int]:
        return [loom["key"] for loom in self.looms]

    def column(self, name: str) -> Column:
        return next(column for column in self.columns if column.name == name)

    def has(self, name: str) -> bool:
        return any(column.name == name for column in self.columns)

    def loom(self, key: int) -> dict[str, Any]:
        return next(loom for loom in self.looms if loom["key"] == key)

    def cell(self, key: int, name: str) -> Cell | None:
        value = self.cells.get((key, name))
        return None if value is None else Cell(value, (key, name), self.codes.get((key, name), ""))

    def rows(self, keys: Sequence[int], names: Sequence[str]) -> list[Row]:
        return [[self.cell(key, name) for name in names] for key in keys]

    def head(self, names: Sequence[str]) -> Row:
        return [Cell(headed(self.column(name)), ("head", name)) for name in names]

    def add_column(self, column: Column, values: dict[int, Any], attribute: str = "", after: str = "") -> None:
        """Add a column; `attribute`: the heading under which its values are kept."""
        at = 1 + [c.name for c in self.columns].index(after) if after else len(self.columns)
        self.columns.insert(at, column)
        for key, value in values.items():
            self.cells[key, column.name] = value
            if attribute:
                self.loom(key)["attributes"][attribute] = value

    def drop_column(self, name: str, truth: bool = True) -> None:
        """Take a column out of the list, and (`truth`) what it says out of the looms."""
        self.columns = [column for column in self.columns if column.name != name]
        for loom in self.looms if truth else ():
            loom[name] = None


def headed(column: Column) -> str:
    return f"{column.heading} {column.unit}".strip()


@dataclass(frozen=True)
class Finished:
    """A list ready to be written, with the truth and the addresses of all that it names."""

    name: str
    traits: tuple[str, ...]
    files: tuple[File, ...]
    truth: Truth
    places: dict[Tag, list[tuple[str, str]]]
    """Tag → (sheet, address) of its cells."""

    @classmethod
    def of(cls, name: str, traits: tuple[str, ...], draft: Draft) -> "Finished":
        places: dict[Tag, list[tuple[str, str]]] = {}
        for file in draft.files:
            for sheet in file.sheets:
                shown = sheet.name if file.name.endswith(("x", "s")) else file.name.rpartition(".")[0]
                for tag, address in sheet.places():
                    places.setdefault(tag, []).append((shown, address))
        return cls(name, traits, tuple(draft.files), draft.truth, places)
