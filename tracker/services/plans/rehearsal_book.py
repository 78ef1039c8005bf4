"""The newest rehearsal of the plan in force as a workbook."""

from pathlib import Path

from tracker.domain.rehearsal import KeptRehearsal
from tracker.errors import DataError
from tracker.export.rehearsal_workbook import rehearsal_sheets
from tracker.office.writing.sheets import TidySheet, content, tables_book, write_tables
from tracker.services.context import Context
from tracker.services.plans.rehearsal_says import cause_of, said, source_of
from tracker.services.plans.rehearse import last_rehearsal
from tracker.words import ENGLISH

NAME = "rehearsal.xlsx"


def kept_rehearsal(context: Context) -> KeptRehearsal:
    """DataError where the plan in force was never rehearsed."""
    kept = last_rehearsal(context)
    if kept is None:
        raise DataError("no-rehearsal")
    return kept


def write_rehearsal_workbook(context: Context, target: Path) -> KeptRehearsal:
    """Write it to a file (.xlsx). DataError where there is none."""
    kept = kept_rehearsal(context)
    write_tables(target, _sheets(kept))
    return kept


def rehearsal_file(context: Context) -> bytes:
    """The same, for a download."""
    return content(tables_book(_sheets(kept_rehearsal(context))), NAME)


def _sheets(kept: KeptRehearsal) -> list[TidySheet]:
    result = kept.result
    return rehearsal_sheets(
        result,
        [ENGLISH.say(line) for line in said(result)],
        [ENGLISH.say(source_of(worry)) for worry in result["worries"]],
        [ENGLISH.say(cause_of(booking)) for booking in result["bookings"]],
    )
