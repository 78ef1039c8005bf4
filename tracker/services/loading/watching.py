"""A folder in which files are dropped to be loaded: each by itself, as the command would, once it is whole.

What was loaded goes to `loaded/`, what is refused to `refused/`, each with its marked copy where it has findings; beside what is
refused lies a text that says why. The folder is looked at again and again rather than listened to, since a folder on a network
drive tells nobody what changes in it.
"""

import shutil
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from zipfile import is_zipfile

from tracker.domain.clock import now as machine_now
from tracker.errors import DataError, InputRefused, Message, TrackerError, UsageError, message
from tracker.office import files
from tracker.services.context import Context
from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.load_report import LoadReport
from tracker.store.opening import is_new
from tracker.words import ENGLISH
from tracker.words.findings import in_words, refusal_line

LOADED, REFUSED = "loaded", "refused"
SETTLED_S, GIVEN_UP_S = 5.0, 60.0
"""A file that has not changed for so long is whole; a workbook that still cannot be opened then has so long to become whole."""
ZIPPED = (".xlsx", ".xlsm", ".ods")
PASSED_OVER = ("~$", ".")
"""Begin the names of what other programs keep for themselves: locks, files that are still coming in."""
COMING = (".tmp", ".part", ".partial", ".crdownload", ".filepart")

Clock = Callable[[], float]
"""Seconds that only go forward."""


@dataclass(frozen=True, slots=True)
class DroppedFile:
    """What became of a file."""

    file: str
    written: bool
    lies: Path
    """Where it lies now."""
    says: Message

    def record(self) -> dict[str, object]:
        """As `--json` writes it."""
        return {"file": self.file, "written": self.written, "lies": str(self.lies), "says": ENGLISH.line(self.says)}


@dataclass
class Watch:
    """A folder, and what was seen of the files in it."""

    folder: Path
    clock: Clock = time.monotonic
    settled_s: float = SETTLED_S
    seen: dict[Path, tuple[tuple[int, int], float]] = field(default_factory=dict)
    """File → its length and its time, and since when they are so."""

    def __post_init__(self) -> None:
        """Make the two folders in it. UsageError where the folder is none, TrackerError where nothing can be put into it."""
        if not self.folder.is_dir():
            raise UsageError("watch-no-folder", folder=str(self.folder))
        try:
            for name in (LOADED, REFUSED):
                (self.folder / name).mkdir(exist_ok=True)
                with tempfile.TemporaryFile(dir=self.folder / name):
                    pass
        except OSError as error:
            raise TrackerError("watch-not-writable", folder=str(self.folder), why=error.strerror) from error

    def whole(self) -> list[Path]:
        """Files that are there whole, the oldest first; those that changed since the last look, or cannot be opened yet, wait."""
        at, before, self.seen = self.clock(), self.seen, {}
        for file, mark in _files(self.folder):
            known = before.get(file)
            self.seen[file] = known if known and known[0] == mark else (mark, at)
        return sorted(
            (file for file in self.seen if self._is_whole(file, at)), key=lambda f: (self.seen[f][0][1], f.name)
        )

    def _is_whole(self, file: Path, at: float) -> bool:
        still_s = at - self.seen[file][1]
        if still_s < self.settled_s:
            return False
        return still_s >= GIVEN_UP_S or file.suffix.lower() not in ZIPPED or is_zipfile(file)


def load_dropped(context: Context, watch: Watch) -> Iterator[DroppedFile]:
    """Load what is there whole, each file as one load. TrackerError where the database is held, gone or none of ours: the files
    stay where they are."""
    if not is_new(context.database):
        with context.reading():
            pass
    for file in watch.whole():
        with tempfile.TemporaryDirectory() as aside:
            marked = Path(aside) / f"{file.stem} marked{'.xlsm' if file.suffix.lower() == '.xlsm' else '.xlsx'}"
            if (done := _load(context, file, marked)) is None:
                continue
            written, says, lines = done
            there = watch.folder / (LOADED if written else REFUSED)
            lies = _moved(file, there, machine_now().astimezone())
            if marked.exists():
                shutil.move(marked, there / f"{lies.stem} marked{marked.suffix}")
            if not written:
                files.write(there / f"{lies.name} why.txt", ("\n".join(lines) + "\n").encode(), ".txt")
        watch.seen.pop(file, None)
        yield DroppedFile(file.name, written, lies, says)


def _load(context: Context, file: Path, marked: Path) -> tuple[bool, Message, list[str]] | None:
    """Whether it was written, what to tell, and why it was refused; None for a file that has gone meanwhile."""
    if not file.exists():
        return None
    try:
        report = load(context, [file], LoadRequest(marked=marked))
    except (DataError, UsageError, InputRefused) as refusal:
        says = message("watch-refused", file=file.name, why=refusal.message)
        return False, says, [ENGLISH.line(refusal)]
    if report.written:
        return True, message("watch-loaded", file=file.name, what=list(report.messages())[-1]), []
    return False, message("watch-refused", file=file.name, why=report.refusal), _why(report)


def _why(report: LoadReport) -> list[str]:
    return [refusal_line(report.refusal, report.quoted), *(in_words(finding).line() for finding in report.listed)]


def _files(folder: Path) -> Iterator[tuple[Path, tuple[int, int]]]:
    for file in folder.iterdir():
        if file.name.startswith(PASSED_OVER) or file.suffix.lower() in COMING or file.is_symlink():
            continue
        try:
            found = file.stat()
        except FileNotFoundError:
            continue
        if file.is_file():
            yield file, (found.st_size, found.st_mtime_ns)


def _moved(file: Path, there: Path, at: datetime) -> Path:
    """Move it under a name that tells when, and that nothing else has."""
    named = f"{at:%Y-%m-%d %H%M%S} {file.stem}"
    names = (f"{named}{more}{file.suffix}" for more in ("", *(f" {number}" for number in range(2, 1000))))
    lies = next(there / name for name in names if not (there / name).exists())
    shutil.move(file, lies)
    return lies
