"""Parts, tools, trades and heads that the mill does not have."""

from collections.abc import Iterator

from tracker.domain.findings import Finding, Severity
from tracker.domain.quantities import fault
from tracker.domain.words import fold
from tracker.scope.review.subject import Subject, did_you_mean, found


def parts(subject: Subject) -> Iterator[Finding]:
    for line in subject.method.kit_lines:
        if line.part not in subject.parts:
            yield found("part-not-listed", Severity.REFUSED, line, "part", f"Part {line.part} is not in the parts list.",
                        f"{did_you_mean(line.part, subject.parts)}Add it to the sheet Parts, or mend it.",
                        line.part)  # fmt: skip


def quantities(subject: Subject) -> Iterator[Finding]:
    for line in subject.method.kit_lines:
        part = subject.parts.get(line.part)
        if part and (wrong := fault(line.quantity, part.unit)):
            yield found("quantity-impossible", Severity.REFUSED, line, "quantity",
                        f"Part {line.part}: {line.quantity:,.12g} {wrong}.",
                        "Correct the cell, or list the part in the unit that it is counted in.", line.quantity)  # fmt: skip


def tools(subject: Subject) -> Iterator[Finding]:
    for row in subject.method.operations:
        if row.tool and row.tool not in subject.tools:
            yield found("tool-not-listed", Severity.REFUSED, row, "tool", f"Tool {row.tool} is not in the list of tools.",
                        f"{did_you_mean(row.tool, subject.tools)}Add it to the sheet Tools, or mend it.",
                        row.tool)  # fmt: skip


def trades(subject: Subject) -> Iterator[Finding]:
    known = {fold(crew.trade): crew.trade for crew in subject.crews}
    for row in subject.method.operations:
        if known and fold(row.trade) not in known:
            yield found("trade-without-crew", Severity.REFUSED, row, "trade", f"No crew is of the trade {row.trade}.",
                        f"{did_you_mean(row.trade, known.values())}The crews are: {', '.join(sorted(known.values()))}.",
                        row.trade)  # fmt: skip


def heads(subject: Subject) -> Iterator[Finding]:
    """More heads than the largest crew of the lead trade has, or than a trade has altogether."""
    for row in subject.method.operations:
        most = most_heads(subject, row.trade)
        if most is not None and isinstance(row.heads, int) and row.heads > most:
            yield found("too-many-heads", Severity.REFUSED, row, "heads",
                        f"Step {row.step} {row.operation} asks for {row.heads} × {row.trade}; {_limit(subject, row.trade, most)}.",
                        "Ask for fewer, or make the crew larger.", row.heads)  # fmt: skip


def most_heads(subject: Subject, trade: str) -> int | None:
    """Heads that an operation may ask for; None where the trade has no crew."""
    crews: dict[str, int] = {}
    for crew in subject.crews:
        if fold(crew.trade) == fold(trade) and crew.heads > 0:
            crews[crew.crew] = max(crews.get(crew.crew, 0), crew.heads)
    if not crews:
        return None
    return max(crews.values()) if _leads(subject, trade) else sum(crews.values())


def _limit(subject: Subject, trade: str, most: int) -> str:
    lead = _leads(subject, trade)
    return f"the largest crew of the lead trade has {most}" if lead else f"there are {most} altogether"


def _leads(subject: Subject, trade: str) -> bool:
    return fold(trade) == fold(subject.terms.lead_trade)
