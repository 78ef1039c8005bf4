"""Condition cells that cannot be read, or that may not mean what they say."""

import re
from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.errors import DataError
from tracker.scope.cells import Equal, Limit, parse_cell
from tracker.scope.review.subject import Subject, found
from tracker.scope.rules import as_cell


def unreadable(subject: Subject) -> Iterator[Finding]:
    for row in subject.rows:
        for heading, cell in row.conditions.items():
            try:
                parse_cell(as_cell(cell))
            except DataError as fault:
                yield found("condition-unreadable", Severity.REFUSED, row, heading, cell, why=fault.message)


def decimal_commas(subject: Subject) -> Iterator[Finding]:
    """`<= 12,5` is by the standard: at most 12, or 5."""
    for row, heading, _, test in subject.tests:
        cell = as_cell(row.conditions[heading])
        kinds = tuple(map(type, test.tests))
        if kinds == (Limit, Equal) and re.search(r"\d,\d+\s*$", cell):
            first, second = map(str, test.tests)
            yield found("decimal-comma", Severity.DOUBT, row, heading, cell, first=first, second=second,
                        point=cell.replace(",", "."))  # fmt: skip
