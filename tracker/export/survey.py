"""The list to walk the hall with: one row a loom, framed cells to fill in; filled in, it loads like any loom list."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tracker.domain.survey import SurveyColumn, SurveyList, SurveyRow
from tracker.domain.tables import LOOMS, Kind
from tracker.office.writing.sheets import Col, TidySheet, write_tables
from tracker.words.formats import count

_KNOWN = ("loom", "hall", "row", "place", "machine_type")


def write_survey(path: str | Path, survey: SurveyList, programme: str = "") -> None:
    """Write the survey list (.xlsx): what is known stands there, what is asked is framed and has a drop-down.

    Every column that the list has is filled where the loom list has a value, so that loading it back changes nothing
    but what was filled in.
    """
    columns = [_known(field) for field in _KNOWN] + [_asked(column) for column in survey.columns]
    framed = {
        number: [i for i, column in enumerate(survey.columns, len(_KNOWN)) if column.heading in row.asked]
        for number, row in enumerate(survey.rows)
    }
    rows = [_row(row, survey.columns) for row in survey.rows]
    write_tables(path, [TidySheet(LOOMS.sheet, columns, rows, _lines(survey, programme), framed=framed)])


def _lines(survey: SurveyList, programme: str) -> list[str]:
    asked = sum(len(row.asked) for row in survey.rows)
    return [
        f"{programme}: looms to look at in the hall" if programme else "Looms to look at in the hall",
        f"{count(len(survey.rows), 'so-many-looms')}, {count(asked, 'so-many-cells')} to fill in. Fill in the framed cells; the "
        "others are known or do not matter for that loom.",
        "The drop-downs hold the values that the method knows. Save the list and load it: nothing else is changed.",
    ]


def _known(field: str) -> Col:
    column = LOOMS.column(field)
    return Col(column.title, column.kind)


def _asked(column: SurveyColumn) -> Col:
    allowed = f"One of: {', '.join(column.allowed)}" if column.allowed else ""
    asks = f"It matters whether: {column.asks}" if column.asks else ""
    about = ". ".join(part for part in (asks, allowed) if part)
    return Col(column.heading, Kind.ANY, words=column.allowed, about=about, closed=False)


def _row(row: SurveyRow, columns: Sequence[SurveyColumn]) -> list[Any]:
    known = [row.key.loom, row.key.hall, row.row, row.place, row.machine_type]
    return known + [row.values.get(column.heading) for column in columns]
