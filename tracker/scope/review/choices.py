"""Choices: their names, what they depend on, and whether something is left to choose."""

from collections import defaultdict
from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Alternative
from tracker.domain.mill import Loom
from tracker.domain.words import fold
from tracker.scope.review.subject import Subject, found, is_window, named
from tracker.scope.rules import known_values


def names(subject: Subject) -> Iterator[Finding]:
    """A choice must not be called like an attribute of the looms, nor `window`: a condition could mean either."""
    for choice in subject.alternatives:
        if choice in subject.attributes or is_window(choice):
            row = _first(subject, choice)
            how = "window" if is_window(choice) else "column"
            yield found("choice-is-attribute", Severity.REFUSED, row, "choice", row.choice, how=how)


def circular(subject: Subject) -> Iterator[Finding]:
    """A choice that depends on itself, or on another that depends on it."""
    hangs_on: dict[str, set[str]] = defaultdict(set)
    for row, _, name, _ in subject.tests:
        if isinstance(row, Alternative) and name in subject.alternatives:
            hangs_on[fold(row.choice)].add(name)
    for choice in subject.alternatives:
        if choice in _reached(choice, hangs_on):
            row = _first(subject, choice)
            yield found("choice-circular", Severity.REFUSED, row, "choice", row.choice)


def without_alternative(subject: Subject) -> Iterator[Finding]:
    stuck: dict[str, list[Loom]] = defaultdict(list)
    for shape, looms in subject.shapes:
        for choice in shape.stuck:
            stuck[choice] += looms
    for choice, looms in stuck.items():
        row = _first(subject, choice)
        asked = {h for r, h, _, _ in subject.tests if isinstance(r, Alternative) and fold(r.choice) == choice}
        known = known_values(looms[0])
        why = ", ".join(f"{heading} = {known[fold(heading)]}" for heading in sorted(asked) if fold(heading) in known)
        yield found("choice-without-alternative", Severity.REFUSED, row, "alternative", choice=row.choice,
                    looms=named(looms), why=why or None)  # fmt: skip


def unused(subject: Subject) -> Iterator[Finding]:
    asked = {name for _, _, name, _ in subject.tests}
    for choice in subject.alternatives:
        if choice not in asked:
            row = _first(subject, choice)
            yield found("choice-unused", Severity.NOTE, row, "choice", row.choice)


def _reached(start: str, hangs_on: dict[str, set[str]]) -> set[str]:
    reached: set[str] = set()
    waiting = list(hangs_on[start])
    while waiting:
        choice = waiting.pop()
        if choice not in reached:
            reached.add(choice)
            waiting += hangs_on[choice]
    return reached


def _first(subject: Subject, choice: str) -> Alternative:
    return next(row for row in subject.method.alternatives if fold(row.choice) == choice)
