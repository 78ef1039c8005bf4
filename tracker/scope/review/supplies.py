"""Parts, tools, trades and heads that the mill does not have."""

from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.quantities import fault
from tracker.domain.words import fold
from tracker.scope.review.subject import Subject, found, nearest


def parts(subject: Subject) -> Iterator[Finding]:
    for line in subject.method.kit_lines:
        if line.part not in subject.parts:
            near = nearest(line.part, subject.parts)
            yield found("part-not-listed", Severity.REFUSED, line, "part", line.part, part=line.part, near=near)


def quantities(subject: Subject) -> Iterator[Finding]:
    for line in subject.method.kit_lines:
        part = subject.parts.get(line.part)
        if part and (wrong := fault(line.quantity, part.unit)):
            yield found("quantity-impossible", Severity.REFUSED, line, "quantity", line.quantity, part=line.part,
                        quantity=line.quantity, wrong=wrong)  # fmt: skip


def tools(subject: Subject) -> Iterator[Finding]:
    for row in subject.method.operations:
        if row.tool and row.tool not in subject.tools:
            yield found(
                "tool-not-listed", Severity.REFUSED, row, "tool", row.tool, near=nearest(row.tool, subject.tools)
            )


def trades(subject: Subject) -> Iterator[Finding]:
    known = {fold(crew.trade): crew.trade for crew in subject.crews}
    for row in subject.method.operations:
        if known and fold(row.trade) not in known:
            yield found("trade-without-crew", Severity.REFUSED, row, "trade", row.trade,
                        near=nearest(row.trade, known.values()), trades=sorted(known.values()))  # fmt: skip


def heads(subject: Subject) -> Iterator[Finding]:
    """More heads than the largest crew of the lead trade has, or than a trade has altogether."""
    for row in subject.method.operations:
        most = most_heads(subject, row.trade)
        if most is not None and isinstance(row.heads, int) and row.heads > most:
            yield found("too-many-heads", Severity.REFUSED, row, "heads", row.heads, step=row.step, operation=row.operation,
                        heads=row.heads, trade=row.trade, most=most,
                        how="lead" if _leads(subject, row.trade) else "other")  # fmt: skip


def most_heads(subject: Subject, trade: str) -> int | None:
    """Heads that an operation may ask for; None where the trade has no crew."""
    crews: dict[str, int] = {}
    for crew in subject.crews:
        if fold(crew.trade) == fold(trade) and crew.heads > 0:
            crews[crew.crew] = max(crews.get(crew.crew, 0), crew.heads)
    if not crews:
        return None
    return max(crews.values()) if _leads(subject, trade) else sum(crews.values())


def _leads(subject: Subject, trade: str) -> bool:
    return fold(trade) == fold(subject.terms.lead_trade)
