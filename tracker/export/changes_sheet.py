"""Who did what as a sheet."""

from collections.abc import Sequence
from typing import Any

from tracker.domain.tables import Kind
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet


def changes_sheet(rows: Sequence[Sequence[Any]], lines: Sequence[str], write: Wording) -> TidySheet:
    """Rows in the order of the columns below, moments local; `lines` stand above."""
    columns = [
        write.col("col-when", Kind.MOMENT),
        *map(write.col, ("heading-who", "col-told", "col-roles", "col-through")),
        write.col("col-what", width=90),
    ]
    return write.sheet("book-changes", columns, rows, lines, frozen=2)
