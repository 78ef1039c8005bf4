"""What is reviewed, and how a finding names its cell."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from rapidfuzz import fuzz, process

from tracker.domain.findings import Choice, Finding, Severity
from tracker.domain.method import Alternative, Method
from tracker.domain.mill import Crew, Loom, Part, Tool
from tracker.domain.terms import Terms
from tracker.domain.words import fold
from tracker.domain.work import MethodRow
from tracker.errors import DataError, Message, message
from tracker.scope.cells import UnaryTest
from tracker.scope.judging import Consequence, Judge, Outcomes
from tracker.scope.rules import WINDOW, Rules, attribute_name, compile_method, read_condition
from tracker.scope.sheets import Piece

AnyRow = MethodRow | Alternative
AS_WRITTEN = "as written"
"""The answer that settles a doubt about a method: it is meant as it stands."""
NEAR = 70
"""Likeness (0 to 100) from which a word is offered as the one that was meant."""


@dataclass(frozen=True)
class Subject:
    method: Method
    looms: tuple[Loom, ...]
    parts: Mapping[str, Part]
    tools: Mapping[str, Tool]
    crews: tuple[Crew, ...]
    terms: Terms

    @cached_property
    def rows(self) -> tuple[AnyRow, ...]:
        m = self.method
        return (*m.operations, *m.kit_lines, *m.alternatives, *m.setpoints, *m.checks)

    @cached_property
    def tests(self) -> tuple[tuple[AnyRow, str, str, UnaryTest], ...]:
        """(row, heading, folded name, test) of every condition that can be read and asks something."""
        return tuple(self._tests())

    def _tests(self) -> Iterator[tuple[AnyRow, str, str, UnaryTest]]:
        for row in self.rows:
            for heading, cell in row.conditions.items():
                try:
                    test = read_condition(row, heading, cell)
                except DataError:
                    continue
                if test.tests:
                    yield row, heading, attribute_name(heading), test

    @cached_property
    def alternatives(self) -> dict[str, dict[str, str]]:
        """Folded choice → folded alternative → as written."""
        found: dict[str, dict[str, str]] = defaultdict(dict)
        for row in self.method.alternatives:
            found[fold(row.choice)].setdefault(fold(row.alternative), row.alternative)
        return found

    @cached_property
    def attributes(self) -> dict[str, str]:
        """Folded name → as the loom list heads it, of every column that the list has."""
        names: dict[str, str] = {}
        for loom in self.looms:
            for heading in loom.attributes:
                names.setdefault(fold(heading), heading)
            if not names.keys() >= set(CORE):
                names |= {name: name for name in CORE}
        return names

    @cached_property
    def rules(self) -> Rules:
        return compile_method(self.method)

    @cached_property
    def judge(self) -> Judge:
        return Judge(self.rules)

    @cached_property
    def groups(self) -> dict[Outcomes, list[Loom]]:
        """Looms that turn out alike on every test."""
        found: dict[Outcomes, list[Loom]] = defaultdict(list)
        for loom in self.looms:
            found[self.judge.outcomes(self.rules.values(loom))].append(loom)
        return found

    @cached_property
    def shapes(self) -> tuple[tuple[Consequence, list[Loom]], ...]:
        """Scopes and their looms; looms to survey are left out."""
        judged = ((self.judge.judge(outcomes)[0], looms) for outcomes, looms in self.groups.items())
        return tuple((shape, looms) for shape, looms in judged if shape)

    def pieces(self, sheet: int) -> dict[Piece, list[Loom]]:
        """Rows of one sheet (0 operations, 1 kit lines, 2 setpoints, 3 checks) that hold together, and their looms."""
        found: dict[Piece, dict[str, Loom]] = defaultdict(dict)
        for shape, looms in self.shapes:
            for piece in {pieces[sheet] for taken in shape.taken.values() for _, pieces in taken}:
                found[piece] |= {str(loom.key): loom for loom in looms}
        return {piece: list(looms.values()) for piece, looms in found.items()}

    def unchecked(self) -> Iterator[Finding]:
        """Notes on what could not be checked."""
        if not self.looms:
            yield Finding("unchecked", Severity.NOTE, params={"how": "looms"})
        if not self.crews:
            yield Finding("unchecked", Severity.NOTE, params={"how": "crews"})


CORE = tuple(Loom("", "", "").known())


def found(code: str, severity: Severity, row: AnyRow, column: str, raw: object = "", **params: object) -> Finding:
    """A finding on one cell: `column` is the field or the heading of the row's column. A doubt may stand `as written`."""
    choices = (Choice(column, AS_WRITTEN),) if severity is Severity.DOUBT else ()
    return Finding(code, severity, sheet=row.row.sheet, cell=cell_of(row, column), heading=column,
                   raw="" if raw is None else str(raw), params=params, choices=choices)  # fmt: skip


def cell_of(row: AnyRow, column: str) -> str:
    """`J7`; `7` where the column is not known, empty where the row is not."""
    letters = row.row.columns.get(column) or {fold(k): v for k, v in row.row.columns.items()}.get(fold(column), "")
    return f"{letters}{row.row.number}" if row.row.number else ""


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that looks most like this one, or None."""
    best = process.extractOne(fold(word), {k: fold(k) for k in known}, scorer=fuzz.ratio, score_cutoff=NEAR)
    return best[2] if best else None


def named(looms: list[Loom]) -> Message:
    """`looms 001 (Hall 1), 002 (Hall 1) and 31 more`."""
    keys = sorted({loom.key for loom in looms}, key=lambda key: key.sort_key)
    return message("looms-named", many=len(keys), looms=[str(key) for key in keys])


def is_window(name: str) -> bool:
    return name == WINDOW
