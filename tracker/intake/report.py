"""Collects findings while a file is read, and puts those that say the same of one column into one finding."""

from dataclasses import dataclass, field
from typing import Any

from tracker.domain.addresses import Cell, ranges
from tracker.domain.findings import Finding, Severity
from tracker.office.sheet import Mark, Sheet


@dataclass(frozen=True, slots=True)
class _Key:
    code: str
    severity: Severity
    file: str
    sheet: str
    heading: str
    raw: str
    understood: str
    message: str
    hint: str
    group: int
    """Column (or row, where the finding is about one) that the cells share."""


@dataclass(slots=True)
class Report:
    """Findings in the order in which they were met."""

    _cells: dict[_Key, list[Cell]] = field(default_factory=dict)
    _asked: set[tuple[str, str, str]] = field(default_factory=set)
    _addresses: dict[_Key, str] = field(default_factory=dict)

    def cell(
        self, severity: Severity, code: str, sheet: Sheet, row: int, column: int, message: str, *,
        heading: str = "", raw: Any = "", understood: str = "", hint: str = "",
    ) -> None:  # fmt: skip
        """A finding about one cell; equal ones of a column become one that names all the cells."""
        place = sheet.place(row, column)
        group = place[0] if sheet.transposed else place[1]
        key = _Key(code, severity, sheet.file, sheet.name, heading, raw_text(raw), understood, message, hint, group)
        self._cells.setdefault(key, []).append(place)

    def whole(
        self, severity: Severity, code: str, sheet: Sheet, cell: str, message: str, *,
        heading: str = "", raw: Any = "", understood: str = "", hint: str = "",
    ) -> None:  # fmt: skip
        """A finding about a range, a heading, or (cell empty) the sheet."""
        group = -1 - len(self._cells)
        key = _Key(code, severity, sheet.file, sheet.name, heading, raw_text(raw), understood, message, hint, group)
        self._cells[key] = []
        if cell:
            self._addresses[key] = cell

    def copy(self) -> "Report":
        """A report that holds the same findings and goes its own way from here."""
        return Report({key: list(cells) for key, cells in self._cells.items()}, set(self._asked), dict(self._addresses))

    def ask(self, kind: str, sheet: Sheet, heading: str, cell: str, message: str, hint: str, *,
            raw: Any = "", code: str = "") -> None:  # fmt: skip
        """A question about a column, asked once for a heading in a file."""
        about = (kind, sheet.file, heading)
        if about not in self._asked:
            self._asked.add(about)
            self.whole(
                Severity.DOUBT, code or f"{kind}-doubt", sheet, cell, message, heading=heading, raw=raw, hint=hint
            )

    def findings(self) -> tuple[Finding, ...]:
        return tuple(
            Finding(key.code, key.severity, key.message, key.hint, key.file, key.sheet,
                    self._addresses.get(key) or ranges(cells), key.heading, key.raw, key.understood)
            for key, cells in self._cells.items()
        )  # fmt: skip


def raw_text(value: Any) -> str:
    """A cell's value as a finding quotes it: 190.0 as 190."""
    if isinstance(value, Mark):
        return value.text
    if isinstance(value, float) and value == int(value) and abs(value) < 1e15:
        return str(int(value))
    return str(value)[:200]
