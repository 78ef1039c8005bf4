"""The list to walk the hall with: one row a loom, framed cells to fill in; filled in, it loads like any loom list."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tracker.domain.survey import SurveyColumn, SurveyList, SurveyRow
from tracker.domain.tables import LOOMS, Kind
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, write_tables

_KNOWN = ("loom", "hall", "row", "place", "machine_type")


def write_survey(path: str | Path, survey: SurveyList, programme: str = "", language: str = "en") -> None:
    """Write the survey list (.xlsx): what is known stands there, what is asked is framed and has a drop-down.

    Every column that the list has is filled where the loom list has a value, so that loading it back changes nothing
    but what was filled in.
    """
    write = Wording(language)
    columns = [_known(field, write) for field in _KNOWN] + [_asked(column, write) for column in survey.columns]
    framed = {
        number: [i for i, column in enumerate(survey.columns, len(_KNOWN)) if column.heading in row.asked]
        for number, row in enumerate(survey.rows)
    }
    rows = [_row(row, survey.columns) for row in survey.rows]
    write_tables(path, [write.sheet("own-sheet-looms", columns, rows, _lines(survey, programme, write), framed=framed)])


def _lines(survey: SurveyList, programme: str, write: Wording) -> list[str]:
    looms = write.count(len(survey.rows), "so-many-looms")
    cells = write.count(sum(len(row.asked) for row in survey.rows), "so-many-cells")
    return [
        write.say("book-survey-of", programme=programme) if programme else write.say("book-survey"),
        write.say("book-survey-fill", looms=looms, cells=cells),
        write.say("book-survey-load"),
    ]


def _known(field: str, write: Wording) -> Col:
    column = LOOMS.column(field)
    return Col(write.speaker.say(column.titled), column.kind)


def _asked(column: SurveyColumn, write: Wording) -> Col:
    allowed = write.say("hint-one-of", words=", ".join(column.allowed)) if column.allowed else ""
    asks = write.say("hint-matters", what=column.asks) if column.asks else ""
    about = ". ".join(part for part in (asks, allowed) if part)
    return Col(column.heading, Kind.ANY, words=column.allowed, about=about, closed=False)


def _row(row: SurveyRow, columns: Sequence[SurveyColumn]) -> list[Any]:
    known = [row.key.loom, row.key.hall, row.row, row.place, row.machine_type]
    return known + [row.values.get(column.heading) for column in columns]
