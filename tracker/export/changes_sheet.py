"""Who did what as a sheet."""

from collections.abc import Sequence
from typing import Any

from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet


def changes_sheet(rows: Sequence[Sequence[Any]], lines: Sequence[str]) -> TidySheet:
    """Rows in the order of the columns below, moments local; `lines` stand above."""
    columns = [
        Col("When", Kind.MOMENT),
        *map(Col, ("Who", "Told to have done it", "Roles", "By")),
        Col("What", width=90),
    ]
    return TidySheet("Changes", columns, rows, lines, frozen=2)
