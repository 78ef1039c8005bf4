"""The review that a method passes before it is accepted: everything that would go wrong later, by sheet and cell."""

from collections.abc import Callable, Iterable, Mapping
from string import ascii_uppercase

from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Method
from tracker.domain.mill import Crew, Loom, LoomKey, Part, Tool
from tracker.domain.terms import Terms
from tracker.scope.review import choices, conditions, coverage, figures, headings, steps, supplies, together, values
from tracker.scope.review.settling import answered, settle
from tracker.scope.review.subject import Subject

__all__ = ["answered", "refuses", "review", "settle"]

Check = Callable[[Subject], Iterable[Finding]]

FIRST: tuple[Check, ...] = (
    steps.no_operation,
    conditions.unreadable,
    conditions.decimal_commas,
    figures.impossible,
    figures.three_points,
    figures.limits,
    steps.repeated,
    steps.places,
    choices.names,
    choices.circular,
    headings.unknown,
    values.not_a_choice,
    values.on_no_loom,
    values.never,
    values.mixed,
    supplies.parts,
    supplies.quantities,
    supplies.tools,
    supplies.trades,
    supplies.heads,
)
"""What each row shows by itself."""

THEN: tuple[Check, ...] = (
    choices.without_alternative,
    choices.unused,
    coverage.missing,
    coverage.doubled,
    coverage.two_targets,
    coverage.side_by_side,
    steps.warp_order,
    together.never_at_work,
    coverage.no_work,
    coverage.no_loom,
)
"""What shows only when the looms are scoped by it."""

UNSCOPABLE = frozenset({"method-without-operation", "condition-unreadable", "choice-circular", "impossible-figure"})
"""Findings with which no loom can be scoped."""


def review(
    method: Method,
    looms: Mapping[LoomKey, Loom],
    parts: Mapping[str, Part],
    tools: Mapping[str, Tool],
    crews: Iterable[Crew],
    terms: Terms,
) -> tuple[Finding, ...]:
    """All findings on a method, by sheet and cell.

    `refused` ones stop it. A `doubt` stops it too, until its heading is answered `as written` (see `settle`). A `note`
    does not. Where there are no looms, or no crews, what depends on them is left unchecked with a note.
    """
    subject = Subject(method, tuple(looms.values()), parts, tools, tuple(crews), terms)
    found = [finding for check in FIRST for finding in check(subject)]
    if not any(finding.code in UNSCOPABLE for finding in found):
        seen = {(finding.sheet, finding.cell.lstrip(ascii_uppercase)) for finding in found}
        found += [finding for check in THEN for finding in check(subject) if not _said(finding, seen)]
    return (*found, *subject.unchecked())


def _said(finding: Finding, seen: set[tuple[str, str]]) -> bool:
    """Whether the finding that nobody gets a row is explained by another one on that row."""
    return finding.code == "row-on-no-loom" and (finding.sheet, finding.cell.lstrip(ascii_uppercase)) in seen


def refuses(findings: Iterable[Finding]) -> bool:
    """Whether these findings stop the method."""
    return any(finding.severity is not Severity.NOTE for finding in findings)
