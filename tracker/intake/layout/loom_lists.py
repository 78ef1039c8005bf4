"""Which of several tables with loom numbers is the loom list: a production report or a log of repairs is none."""

from collections import defaultdict

from tracker.domain.findings import Severity
from tracker.domain.tables import LOOMS
from tracker.intake.answers import IGNORE, Answers
from tracker.intake.layout.attribute_sheets import adds_to
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.report import Report, answers_for

_FACTS = frozenset({"machine_type", "insertion", "year", "reed_width_cm", "frames", "speed_ppm", "efficiency"})


def choose_loom_lists(blocks: list[TableBlock], answers: Answers, report: Report) -> list[TableBlock]:
    """The blocks without the tables that only mention looms; each one passed over is noted."""
    lists = [block for block in blocks if block.recognised.table is LOOMS]
    chosen = [block for block in lists if answers.sheet(block.sheet.name) == LOOMS.name]
    open_ones = [block for block in lists if block not in chosen]
    full = [block for block in open_ones if block.recognised.column_of("machine_type") is not None]
    poor = [block for block in open_ones if block not in full] if full or chosen else []
    for block in poor:
        block.joins = block.joins or adds_to(block, full + chosen)
    poor = [block for block in poor if not block.joins]
    poor += _weak_copies([block for block in open_ones if block not in poor and not block.joins])
    for block in poor:
        _pass_over(block, report)
    for block in lists:
        if block.joins:
            report.whole(
                Severity.NOTE, "joined-table", block.sheet, "", choices=answers_for(block.sheet.name, IGNORE),
                headings=[text for c, text in block.headings.items() if c != block.recognised.column_of("loom")],
            )  # fmt: skip
    return [block for block in blocks if block not in poor]


def _weak_copies(lists: list[TableBlock]) -> list[TableBlock]:
    """Tables that repeat the looms of another sheet with less than half of its facts."""
    by_facts = defaultdict(list)
    for block in lists:
        by_facts[len(_FACTS & {m.field for m in block.recognised.meanings.values()})].append(block)
    if not by_facts:
        return []
    most = max(by_facts)
    looms = {number for block in by_facts[most] for number in _numbers(block)}
    return [
        block
        for facts, some in by_facts.items()
        for block in some
        if facts <= most / 2 and len(_numbers(block) & looms) >= 0.5 * len(_numbers(block))
    ]


def _numbers(block: TableBlock) -> set[str]:
    column = block.recognised.column_of("loom")
    rows = range(block.bottom + 1, block.end)
    return {str(v) for r in rows if column is not None and (v := block.sheet.value(r, column)) is not None}


def _pass_over(block: TableBlock, report: Report) -> None:
    choices = answers_for(block.sheet.name, LOOMS.name)
    report.whole(Severity.NOTE, "not-the-loom-list", block.sheet, "", choices=choices)
