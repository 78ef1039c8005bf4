"""Collects findings while a file is read, and puts those that say the same of one column into one finding.

READING.md, section 6.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from tracker.domain.addresses import Cell, ranges
from tracker.domain.findings import Choice, Finding, Severity
from tracker.errors import Message
from tracker.office.sheet import Mark, Sheet

_DOUBTS = {"unit": "unit-doubt", "order": "order-doubt", "decimals": "decimals-doubt", "value": "value-doubt"}


@dataclass(slots=True)
class _Found:
    """A finding without its address, and the cells that share it."""

    finding: Finding
    cells: list[Cell]


@dataclass(slots=True)
class Report:
    """Findings in the order in which they were met. Keywords beyond those named are parameters of the code."""

    _found: dict[tuple[object, ...], _Found] = field(default_factory=dict)
    """What cells have in common → the finding."""
    _asked: set[tuple[str, str, str]] = field(default_factory=set)

    def cell(
        self, severity: Severity, code: str, sheet: Sheet, row: int, column: int, *,
        heading: str = "", raw: Any = "", understood: str | Message = "", choices: Sequence[Choice] = (), **params: Any,
    ) -> None:  # fmt: skip
        """A finding about one cell; equal ones of a column become one that names all the cells."""
        place, said = sheet.place(row, column), raw_text(raw)
        group = place[0] if sheet.transposed else place[1]
        common = (group, severity, code, sheet.file, sheet.name, heading, said, str(understood), str(params))
        if common not in self._found:
            finding = Finding(
                code, severity, file=sheet.file, sheet=sheet.name, heading=heading, raw=said, understood=understood,
                params=params, choices=tuple(choices),
            )  # fmt: skip
            self._found[common] = _Found(finding, [])
        self._found[common].cells.append(place)

    def whole(
        self, severity: Severity, code: str, sheet: Sheet, cell: str, *,
        heading: str = "", raw: Any = "", understood: str | Message = "", choices: Sequence[Choice] = (), **params: Any,
    ) -> None:  # fmt: skip
        """A finding about a range, a heading, or (cell empty) the sheet."""
        finding = Finding(
            code, severity, file=sheet.file, sheet=sheet.name, cell=cell, heading=heading, raw=raw_text(raw),
            understood=understood, params=params, choices=tuple(choices),
        )  # fmt: skip
        self._found[(len(self._found),)] = _Found(finding, [])

    def commented(self, sheet: Sheet, cells: Sequence[Cell], text: str) -> None:
        """A note about what a comment on some cells says, at full length."""
        finding = Finding(
            "cell-comment", Severity.NOTE, file=sheet.file, sheet=sheet.name, cell=ranges(cells), raw=text
        )
        self._found[(len(self._found),)] = _Found(finding, [])

    def ask(
        self, kind: str, sheet: Sheet, heading: str, cell: str, choices: Sequence[Choice], *,
        raw: Any = "", code: str = "", **params: Any,
    ) -> None:  # fmt: skip
        """A question about a column or sheet, asked once for a heading in a file."""
        about = (kind, sheet.file, heading)
        if about not in self._asked:
            self._asked.add(about)
            self.whole(
                Severity.DOUBT, code or _DOUBTS[kind], sheet, cell, heading=heading, raw=raw, choices=choices, **params
            )

    def has(self, code: str, sheet: Sheet) -> bool:
        """Is there such a finding about the sheet?"""
        found = (one.finding for one in self._found.values())
        return any((one.code, one.file, one.sheet) == (code, sheet.file, sheet.name) for one in found)

    def copy(self) -> "Report":
        """A report that holds the same findings and goes its own way from here."""
        return Report({key: _Found(one.finding, list(one.cells)) for key, one in self._found.items()}, set(self._asked))

    def findings(self) -> tuple[Finding, ...]:
        return tuple(
            replace(one.finding, cell=ranges(one.cells)) if one.cells else one.finding for one in self._found.values()
        )


def answers_for(heading: str, *answers: str) -> tuple[Choice, ...]:
    """The answers about a heading or sheet that may be chosen."""
    return tuple(Choice(heading, answer) for answer in answers)


def raw_text(value: Any) -> str:
    """A cell's value as a finding quotes it: 190.0 as 190."""
    if isinstance(value, Mark):
        return value.text
    if isinstance(value, float) and value == int(value) and abs(value) < 1e15:
        return str(int(value))
    return str(value)[:200]
