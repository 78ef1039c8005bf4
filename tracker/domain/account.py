"""The account of a sheet: what became of each of its filled cells."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

HEADING, TAKEN, OWN, REFUSED = "heading", "taken", "own", "refused"
"""Heads of a table; values of its fields; values kept under the mill's own heading; all cells of a refused row."""
ASIDE = (
    "title", "heading again", "section", "total", "note", "number", "empty value", "no heading", "column", "beside", "below",
    "same again", "table", "left out", "sheet", "own report", "unfilled",
)  # fmt: skip
"""Why a cell is set aside, the words of the reasons stand in the catalogue: above the table, a repeated heading, a line that
names a hall or type, a sum, a note, a row with nothing but its number, a sign that means empty, a column without heading or
place, beside or below the table, a row that stands twice, a table of another kind, a sheet that was left out or is none of
ours, a report of ours, a line of a form that nobody filled in."""


@dataclass(frozen=True, slots=True)
class Aside:
    reason: str
    cells: int
    where: str
    """Addresses in short: `A1:C1, F7`; of a whole sheet its range."""


@dataclass(frozen=True)
class SheetAccount:
    """Counts of filled cells; a merged area is one cell. They add up to all of the sheet."""

    file: str
    sheet: str
    counts: Mapping[str, int]
    """HEADING, TAKEN, OWN, REFUSED → cells."""
    aside: tuple[Aside, ...] = ()

    @property
    def cells(self) -> int:
        return sum(self.counts.values()) + sum(one.cells for one in self.aside)

    @property
    def set_aside(self) -> int:
        return sum(one.cells for one in self.aside)

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        aside = [{"reason": one.reason, "cells": one.cells, "where": one.where} for one in self.aside]
        counts = {name: self.counts.get(name, 0) for name in (HEADING, TAKEN, OWN, REFUSED)}
        return {"file": self.file, "sheet": self.sheet, "cells": self.cells, **counts, "aside": aside}

    def without_row(self, filled: "Filled", reason: str, where: str) -> "SheetAccount":
        """The account once a row that had been read was refused (REFUSED) or found to stand twice (`same again`)."""
        counts = dict(self.counts)
        counts[TAKEN] = counts.get(TAKEN, 0) - filled.taken
        counts[OWN] = counts.get(OWN, 0) - filled.own
        if reason == REFUSED:
            counts[REFUSED] = counts.get(REFUSED, 0) + filled.taken + filled.own
            return replace(self, counts=counts)
        return replace(self, counts=counts, aside=(*self.aside, Aside(reason, filled.taken + filled.own, where)))


@dataclass(frozen=True, slots=True)
class Filled:
    """How many cells of a row were taken, and kept as the mill's own."""

    taken: int = 0
    own: int = 0


@dataclass(frozen=True)
class Account:
    """What a reader did with every cell of its files."""

    sheets: tuple[SheetAccount, ...] = ()
    rows: Mapping[tuple[int, int], Filled] = field(default_factory=dict)
    """(source, number) of a row that was read → its cells."""
