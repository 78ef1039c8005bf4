"""One machine type spelt in several ways is as many types for the plan; said, since only the mill knows (READING.md, 4)."""

from collections import Counter, defaultdict
from collections.abc import Sequence

from tracker.domain.findings import Severity
from tracker.domain.words import fold
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report


def note_spellings(lists: Sequence[TableReading], report: Report) -> None:
    """Note the machine types of loom lists that differ in case, blanks or dashes alone, once for each type."""
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for reading in lists:
        column = reading.column_of("machine_type")
        for value in reading.values[column] if column is not None and column in reading.values else ():
            if value:
                counts[_bare(str(value))][str(value)] += 1
    for spellings in counts.values():
        if len(spellings) > 1:
            ways = [spelling for spelling, _ in spellings.most_common()]
            report.whole(Severity.NOTE, "type-spellings", lists[0].block.sheet, "", types=ways)


def _bare(text: str) -> str:
    """Letters and figures alone: `AJ-190`, `aj 190`."""
    return "".join(sign for sign in fold(text) if sign.isalnum())
