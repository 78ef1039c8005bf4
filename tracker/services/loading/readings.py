"""What files say, once they were read: a long list is read by a job, and not once more by who looks at it and loads it.

Kept in the memory of this process, the newest few; whether a file is still the same is told by its size and when it was written.
"""

from collections import OrderedDict
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from threading import Lock

from tracker.domain.rows import ReadResult
from tracker.errors import InputRefused, TrackerError, UsageError
from tracker.intake.reader import Progress, read_files
from tracker.services.context import Context
from tracker.store.opening import is_new

MOST = 4
Said = ReadResult | TrackerError
"""What the files say, or why they are refused."""
_READ: OrderedDict[Hashable, Said] = OrderedDict()
_LOCK = Lock()


@dataclass(frozen=True, slots=True)
class ReadingTask:
    """Files to be read, with all that tells how: pure, so that another process can read them."""

    files: tuple[Path, ...]
    answers: Mapping[str, str]
    remembered: Mapping[str, str]
    today: date

    @property
    def key(self) -> Hashable:
        """By which what they said is found again; None where a file is not there."""
        try:
            stats = [Path(file).stat() for file in self.files]
        except OSError:
            return None
        there = tuple((str(f), stat.st_size, stat.st_mtime_ns) for f, stat in zip(self.files, stats, strict=True))
        return there, frozenset(self.answers.items()), frozenset(self.remembered.items()), self.today

    def run(self, progress: Progress | None = None) -> ReadResult:
        """As `read_files`, from what was read before where it was."""
        said = _READ.get(self.key)
        if isinstance(said, TrackerError):
            raise said
        return said or read_files(self.files, self.answers, self.remembered, self.today, progress)

    def said(self, progress: Progress) -> Said:
        """The same, with what is refused as an answer: whoever loads the files is told."""
        try:
            return self.run(progress)
        except (InputRefused, UsageError) as refusal:
            return refusal

    def keep(self, said: Said) -> None:
        """For whoever loads the files; nothing where they have gone."""
        if (key := self.key) is None:
            return
        with _LOCK:
            _READ[key] = said
            while len(_READ) > MOST:
                _READ.popitem(last=False)


def reading_task(context: Context, files: Sequence[Path], answers: Mapping[str, str]) -> ReadingTask:
    return ReadingTask(tuple(files), dict(answers), remembered_answers(context), context.now().date())


def is_read(context: Context, files: Sequence[Path], answers: Mapping[str, str]) -> bool:
    """Whether a load of these files need not read them."""
    return reading_task(context, files, answers).key in _READ


def remembered_answers(context: Context) -> dict[str, str]:
    """What was answered in earlier loads."""
    if is_new(context.database):
        return {}
    with context.reading() as uow:
        return uow.answers()
