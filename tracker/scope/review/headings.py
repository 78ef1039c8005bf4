"""Condition columns headed with something that no loom has."""

from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.scope.review.subject import Subject, found, is_window, nearest


def unknown(subject: Subject) -> Iterator[Finding]:
    """One doubt for each column of each sheet; a mill that has not surveyed the attribute yet answers it."""
    if not subject.looms:
        return
    seen = set()
    for row, heading, name, _ in subject.tests:
        known = is_window(name) or name in subject.alternatives or name in subject.attributes
        if not known and (row.row.sheet, name) not in seen:
            seen.add((row.row.sheet, name))
            offered = [*subject.attributes.values(), *(r.choice for r in subject.method.alternatives), "window"]
            near = nearest(heading, offered)
            yield found("unknown-attribute", Severity.DOUBT, row, heading, row.conditions[heading], near=near)
