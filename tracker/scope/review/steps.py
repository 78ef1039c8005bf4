"""The order of the operations."""

from collections import defaultdict
from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Operation
from tracker.scope.review.subject import Subject, cell_of, found


def no_operation(subject: Subject) -> Iterator[Finding]:
    if not subject.method.operations:
        yield Finding("method-without-operation", Severity.REFUSED, sheet="Operations", params={"how": "method"})


def repeated(subject: Subject) -> Iterator[Finding]:
    """Rows of one step are done side by side, so they stand together; a step that comes again later goes in a circle."""
    last: dict[int, Operation] = {}
    before: Operation | None = None
    for row in subject.method.operations:
        if before and row.step != before.step and row.step in last:
            first = last[row.step]
            yield found("step-repeated", Severity.REFUSED, row, "step", row.step, step=row.step, before=before.step,
                        first=cell_of(first, "step"))  # fmt: skip
        last[row.step] = before = row


def places(subject: Subject) -> Iterator[Finding]:
    rows: dict[int, list[Operation]] = defaultdict(list)
    for row in subject.method.operations:
        rows[row.step].append(row)
    for step, of in rows.items():
        other = next((row for row in of if row.place != of[0].place), None)
        if other:
            yield found("step-in-two-places", Severity.REFUSED, other, "place", other.place, step=step,
                        place=of[0].place, line=str(of[0].row.number))  # fmt: skip


def warp_order(subject: Subject) -> Iterator[Finding]:
    """What needs the old warp out comes before what needs the new one in, for every loom that gets both."""
    together = subject.pieces(0) if subject.looms else {}
    every = [piece.rows for piece in together] or [subject.method.operations]
    late: dict[int, tuple[Operation, Operation]] = {}
    for rows in every:
        first_in = min((row for row in rows if row.warp == "in"), key=lambda row: row.step, default=None)
        for row in rows:
            if first_in and row.warp == "out" and row.step >= first_in.step:
                late.setdefault(id(row), (row, first_in))
    for row, first_in in late.values():
        yield found("warp-out-after-in", Severity.REFUSED, row, "warp", "out", step=row.step, operation=row.operation,
                    other=first_in.step, other_operation=first_in.operation, there=cell_of(first_in, "warp"))  # fmt: skip
