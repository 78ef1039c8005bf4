"""What a command may write over: its database never, a file that is not ours only where it is told to."""

from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path

from tracker.office import files
from tracker.services.context import Context
from tracker.store.place import file_of


def permit(context: Context, force: bool) -> Callable[[], None]:
    """Set what may be written over from now on; gives what takes it back."""
    database = file_of(context.database)
    within = ExitStack()
    within.enter_context(files.permitting(force, files.with_side_files(database) if database else ()))
    return within.close


def check(target: str | Path) -> None:
    """Refuse a file that may not or cannot be written, before anything is done. TrackerError."""
    files.check(target)


def write_text(target: str | Path, text: str) -> None:
    """Write a text in UTF-8; half a character of a broken file name stands there by its code, as in `\\udcff`."""
    files.write(target, text.encode("utf-8", "backslashreplace"))
