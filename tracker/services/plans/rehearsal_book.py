"""The newest rehearsal of the plan in force as a workbook."""

from pathlib import Path

from tracker.domain.rehearsal import KeptRehearsal
from tracker.errors import DataError
from tracker.export.rehearsal_workbook import RehearsalWords, rehearsal_sheets
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet, content, tables_book, write_tables
from tracker.services.context import Context
from tracker.services.plans.rehearsal_says import POLICIES, cause_of, ground_words, grounds_of, said, source_of
from tracker.services.plans.rehearse import last_rehearsal

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
    write_tables(target, _sheets(kept, context.language))
    return kept


def rehearsal_file(context: Context) -> bytes:
    """The same, for a download."""
    return content(tables_book(_sheets(kept_rehearsal(context), context.language)), NAME)


def _sheets(kept: KeptRehearsal, language: str) -> list[TidySheet]:
    result, write = kept.result, Wording(language)
    say = write.speaker.say
    words = RehearsalWords(
        [say(line) for line in said(result)],
        [say(source_of(worry)) for worry in result["worries"]],
        [say(cause_of(booking)) for booking in result["bookings"]],
        {name: write.say(code) for name, code in POLICIES.items()},
        [[say(word) if word else "" for word in ground_words(ground)] for ground in grounds_of(result)],
    )
    return rehearsal_sheets(result, words, write)
