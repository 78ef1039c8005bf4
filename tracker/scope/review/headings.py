"""Condition columns headed with something that no loom has."""

from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.scope.review.subject import Subject, did_you_mean, found, is_window


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
            yield found("unknown-attribute", Severity.DOUBT, row, heading,
                        f"{heading} is no column of the loom list, no choice, and not window.",
                        f'{did_you_mean(heading, offered)}If it is still to be surveyed, give --answer "{heading}=as written".',
                        row.conditions[heading])  # fmt: skip
