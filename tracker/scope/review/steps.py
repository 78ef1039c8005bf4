"""The order of the operations."""

from collections import defaultdict
from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Operation
from tracker.scope.review.subject import Subject, cell_of, found


def no_operation(subject: Subject) -> Iterator[Finding]:
    if not subject.method.operations:
        yield Finding("method-without-operation", Severity.REFUSED, "The method has no operation.",
                      "Fill in at least one row: step, operation, minutes, trade, heads.", sheet="Operations")  # fmt: skip


def repeated(subject: Subject) -> Iterator[Finding]:
    """Rows of one step are done side by side, so they stand together; a step that comes again later goes in a circle."""
    last: dict[int, Operation] = {}
    before: Operation | None = None
    for row in subject.method.operations:
        if before and row.step != before.step and row.step in last:
            first = last[row.step]
            yield found("step-repeated", Severity.REFUSED, row, "step",
                        f"Step {row.step} comes again after step {before.step}; it was used in {cell_of(first, 'step')}.",
                        "Rows of one step are done side by side: put them together, or give this one its own number.",
                        row.step)  # fmt: skip
        last[row.step] = before = row


def places(subject: Subject) -> Iterator[Finding]:
    rows: dict[int, list[Operation]] = defaultdict(list)
    for row in subject.method.operations:
        rows[row.step].append(row)
    for step, of in rows.items():
        other = next((row for row in of if row.place != of[0].place), None)
        if other:
            yield found("step-in-two-places", Severity.REFUSED, other, "place",
                        f"Step {step} is {of[0].place} in row {of[0].row.number} and {other.place} here.",
                        "Rows of one step are done side by side: give one of them another number.", other.place)  # fmt: skip
