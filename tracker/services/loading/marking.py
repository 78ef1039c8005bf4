"""Where the marked copies of a load go, and their writing."""

from collections.abc import Callable, Sequence
from pathlib import Path
from zipfile import is_zipfile

from tracker.domain.findings import Finding
from tracker.errors import Message, UsageError, message
from tracker.export.marked import write_marked
from tracker.intake.vocabulary.known_words import KNOWN
from tracker.office.files import check
from tracker.office.guarding.compound import COMPOUND_MAGIC
from tracker.office.opening.text import text_sheet
from tracker.words import Speaker
from tracker.words.findings import in_words


class Marking:
    """A copy for each file of a load that has findings.

    Raises UsageError at once where a name cannot be that of a copy: another ending than .xlsx (.xlsm for such a file), or
    a file of the load itself; TrackerError where it may not or cannot be written.
    """

    def __init__(self, files: Sequence[Path], target: Path, speaker: Speaker):
        self.speaker = speaker
        self.targets = {files[0]: target} if len(files) == 1 else _names(files, target)
        for file, copy in self.targets.items():
            if copy.suffix.lower() != _ending(file):
                raise UsageError("marked-ending", target=str(copy), file=file.name, ending=_ending(file))
            if copy.resolve() in {file.resolve() for file in files}:
                raise UsageError("marked-over-itself", target=str(copy), what="file")
            check(copy)

    def write(self, findings: Sequence[Finding], page_of: Callable[[str], str | None]) -> list[Message]:
        """Write the copies, in their language; gives what to tell. `page_of`: name of a text file → code page that
        it was read in."""
        said: list[Message] = []
        worded = [in_words(finding, self.speaker) for finding in findings]
        for file, copy in self.targets.items():
            if any(Path(finding.file).name in ("", file.name) for finding in findings):
                note = write_marked(file, worded, copy, _grids(file, page_of(file.name)), self.speaker.language)
                said += [message("marked-written", file=str(copy)), *filter(None, [note])]
        return said or [message("marked-none")]


def _names(files: Sequence[Path], target: Path) -> dict[Path, Path]:
    """`marked.xlsx` → `marked looms.xlsx`, `marked weaving.xlsx` …, each once."""
    if target.suffix.lower() not in (".xlsx", ".xlsm"):
        raise UsageError("marked-endings", target=str(target))
    names: dict[Path, Path] = {}
    for file in files:
        stems = (f"{target.stem} {file.stem}", *(f"{target.stem} {file.stem} {i}" for i in range(2, len(files) + 1)))
        copies = (target.with_name(stem + _ending(file)) for stem in stems)
        names[file] = next(copy for copy in copies if copy not in names.values())
    return names


def _ending(file: Path) -> str:
    return ".xlsm" if file.suffix.lower() == ".xlsm" else ".xlsx"


def _grids(file: Path, page: str | None) -> dict[str, list[list[object]]] | None:
    """Of delimited text the cells as the load reads them; None for a workbook, whose own cells the copy takes."""
    with file.open("rb") as opened:
        if is_zipfile(file) or opened.read(8).startswith(COMPOUND_MAGIC):
            return None
    sheet = text_sheet(file, KNOWN, page)
    return {sheet.name: [list(row) for row in sheet.rows]}
