"""The one way out for files: whole or not at all, never over the database, never over what somebody has worked in.

A workbook and a PDF end with the SHA-256 of all that stands before it, in a place that readers pass over: the comment of
the ZIP archive, a comment line behind the PDF's end. So we know a file of ours that nobody has touched, and may replace it.
JSON and CSV have no place for it.
"""

import os
import re
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from tracker.errors import Message, TrackerError, UsageError, message

_MARK = b"beamslot sha256 "
_MARKED = re.compile(_MARK + rb"([0-9a-f]{64})\n?\Z")
_MARK_SIZE = len(_MARK) + 64
_ARCHIVES, _PDF = (".xlsx", ".xlsm"), ".pdf"
"""Endings of what carries our mark."""
_ARCHIVE_END = b"PK\x05\x06"
_SIDE_FILES = ("-wal", "-shm", "-journal")


@dataclass(frozen=True, slots=True)
class _Permission:
    force: bool = False
    """Replace a file that is not ours."""
    kept: tuple[Path, ...] = ()
    """Never to be written, whatever is forced."""


_NONE_GIVEN = _Permission()
_permission: ContextVar[_Permission] = ContextVar("permission", default=_NONE_GIVEN)


@contextmanager
def permitting(force: bool = False, kept: tuple[Path, ...] = ()) -> Iterator[None]:
    """What may be written over within the block: with `force` files that are not ours; what is `kept` never."""
    before = _permission.set(_Permission(force, kept))
    try:
        yield
    finally:
        _permission.reset(before)


def with_side_files(database: Path) -> tuple[Path, ...]:
    """The file of an SQLite database and those that SQLite lays beside it."""
    return (database, *(Path(f"{database}{ending}") for ending in _SIDE_FILES))


def write(target: str | Path, content: bytes, *suffixes: str) -> None:
    """Write one file. Errors as of `check`."""
    write_all({Path(target): content}, *suffixes)


def write_all(contents: Mapping[Path, bytes], *suffixes: str) -> None:
    """Write several files, all or none: each beside its target first, then all of them take their place."""
    for target in contents:
        check(target, *suffixes)
    drafts: list[tuple[Path, Path, Path]] = []
    try:
        for target, content in contents.items():
            with telling(target):
                goal = target.resolve()  # behind a link the file itself is replaced, not the link
                drafts.append((target, goal, _empty_draft(goal)))
                _fill(drafts[-1][2], _marked(content, target.suffix.lower()))
        for target, goal, draft in drafts:
            check(target, *suffixes)  # somebody may have laid a file there meanwhile
            with telling(target):
                draft.chmod(_mode(goal))
                os.replace(draft, goal)
    finally:
        for _, _, draft in drafts:
            draft.unlink(missing_ok=True)


def check(target: str | Path, *suffixes: str) -> None:
    """Refuse what may not or cannot be written, before any work is done.

    Raises UsageError where the target's ending is none of `suffixes`; TrackerError where it is the database, a file that
    is there and not ours (unless forced), no ordinary file, or in a folder that is missing or may not be written.
    """
    target = Path(target)
    if suffixes and target.suffix.lower() not in suffixes:
        raise UsageError("target-ending", target=str(target), endings=" or ".join(suffixes))
    with telling(target):
        if problem := _problem(target):
            raise TrackerError("cannot-write", target=str(target), why=problem, where=None)
        _empty_draft(target.resolve()).unlink()


def is_ours(file: Path) -> bool:
    """Whether the file is byte for byte as we wrote it."""
    with file.open("rb") as opened:
        content = opened.read()
    found = _MARKED.search(content, max(0, len(content) - _MARK_SIZE - 1))
    return found is not None and sha256(content[: found.start()]).hexdigest().encode() == found[1]


def _problem(target: Path) -> Message | None:
    """Why the target may not be written; None where it may."""
    permission = _permission.get()
    if any(target.resolve() == kept.resolve() or _same(target, kept) for kept in permission.kept):
        return message("target-is-database")
    if not target.parent.is_dir():
        return message("folder-missing", folder=str(target.parent))
    if target.is_dir():
        return message("target-is-folder")
    if not target.exists():
        return None
    if not target.is_file():
        return message("target-no-file")
    if not os.access(target, os.W_OK):
        return message("target-denied")
    if permission.force or is_ours(target):
        return None
    marked = target.suffix.lower() in (*_ARCHIVES, _PDF)
    return message("target-there", name=target.name, how="changed" if marked else "unmarked")


def _same(one: Path, other: Path) -> bool:
    """One file under two names: a hard link, or a file system that does not tell small letters from capitals."""
    return one.exists() and other.exists() and one.samefile(other)


@contextmanager
def telling(target: str | Path, where: str = "") -> Iterator[None]:
    """What the system refuses within the block becomes one line that names the target, and where the block writes if that
    is elsewhere."""
    try:
        yield
    except OSError as error:
        why = (error.strerror or str(error)).lower()
        raise TrackerError("cannot-write", target=str(target), why=why, where=where or None) from error


def _empty_draft(goal: Path) -> Path:
    handle, name = tempfile.mkstemp(prefix=".", suffix=goal.suffix, dir=goal.parent)
    os.close(handle)
    return Path(name)


def _fill(draft: Path, content: bytes) -> None:
    with draft.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _marked(content: bytes, suffix: str) -> bytes:
    """The content with our mark, where its format has a place for it.

    ZIP: the archive ends with the length of its comment (2 bytes) and the comment (APPNOTE 4.3.16); office programmes
    pass over it (ISO/IEC 29500-2, annex on ZIP). PDF: a line from % on is a comment, also behind %%EOF (ISO 32000-1, 7.2.3).
    """
    if suffix in _ARCHIVES and content[-22:-18] == _ARCHIVE_END:
        before = content[:-2] + _MARK_SIZE.to_bytes(2, "little")
    elif suffix == _PDF:
        before = content.rstrip(b"\n") + b"\n%"
    else:
        return content
    return before + _MARK + sha256(before).hexdigest().encode() + (b"\n" if suffix == _PDF else b"")


def _mode(goal: Path) -> int:
    """Permissions of the file that is replaced; else those of a new file, which `mkstemp` passes over."""
    if goal.exists():
        return goal.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
