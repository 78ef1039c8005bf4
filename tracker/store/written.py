"""Whether anything was written to a database since a moment ago: cheap enough to be asked with every request.

Of an SQLite file the times and lengths of its two files tell it, whichever process wrote; they are only looked at, never opened
(closing a file beside SQLite would give up its locks). Of a server only what this process wrote is told.
"""

import time
from collections.abc import Callable
from pathlib import Path
from typing import Generic, TypeVar

from tracker.store.place import file_of

TICK_S = 0.05
"""Times of files go forward in steps: two writes within one may bear the same time, so that a file that young tells nothing."""

HOLDS_S = 1.0
Written = tuple[object, ...]
T = TypeVar("T")


class _Here:
    """What this process has written."""

    times = 0


def note_written() -> None:
    """A unit of work of this process was committed."""
    _Here.times += 1


def is_seen_at_once(database: str) -> bool:
    """Whether what another process writes is seen, too."""
    return file_of(database) is not None


def written(database: str) -> Written | None:
    """Equal values: nothing was written in between. None where that cannot be told at this moment."""
    file = file_of(database)
    if file is None:
        return (_Here.times,)
    files = [found for path in (file, file.with_name(f"{file.name}-wal")) if (found := _looked_at(path))]
    young = any(time.time() - at_ns / 1e9 < TICK_S for at_ns, *_ in files)
    return None if young or not files else (_Here.times, *files)


class WhileUnwritten(Generic[T]):
    """What was found out of a database counts as long as nothing was written to it, and a second at most: a screen asks the same
    things many times in one run, and each look opens the file anew."""

    def __init__(self, most: int = 1_000) -> None:
        """`most`: answers that are kept; the oldest goes first."""
        self._most = most
        self._known: dict[object, tuple[Written, float, T]] = {}

    def of(self, database: str, key: object, look: Callable[[], T]) -> T:
        """The answer to `key`, looked for where it is not known any more; what `look` raises is not kept."""
        mark, at, asked = written(database), time.monotonic(), (database, key)
        known = self._known.get(asked)
        if known and known[0] == mark and at - known[1] < HOLDS_S:
            return known[2]
        found = look()
        if mark is not None:
            self._known.pop(asked, None)
            self._known[asked] = (mark, at, found)
            while len(self._known) > self._most:
                self._known.pop(next(iter(self._known)), None)
        return found


def _looked_at(path: Path) -> tuple[int, int, int] | None:
    """Time, length and number; None where it is not there or empty, as the log is that a reader makes."""
    try:
        found = path.stat()
    except OSError:
        return None
    return (found.st_mtime_ns, found.st_size, found.st_ino) if found.st_size else None
