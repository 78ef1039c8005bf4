"""Refuses hostile and broken files in one clear line, in bounded time and memory, before any reader opens them."""

import os
import stat
from dataclasses import dataclass
from enum import Enum
from functools import partial
from pathlib import Path

from tracker.office.guarding.archive import check_archive
from tracker.office.guarding.compound import COMPOUND_MAGIC, check_compound
from tracker.office.guarding.extent import check_extent
from tracker.office.guarding.text import check_text
from tracker.office.refusal import refuse
from tracker.office.walking.walk import WalkedSheet, walk

MAX_FILE_BYTES = 64 << 20
"""No loom list comes near: 5,000 looms × 40 columns are about 1 MiB as xlsx."""

ZIP_MAGICS = (b"PK\x03\x04", b"PK\x05\x06", b"PK\x07\x08")


class FileKind(Enum):
    ARCHIVE = "xlsx, xlsm or ods"
    COMPOUND = "xls"
    TEXT = "delimited text"


@dataclass(frozen=True, slots=True)
class CheckedFile:
    """What the check saw on its way, so that nobody has to look again."""

    kind: FileKind
    sheets: tuple[WalkedSheet, ...] = ()
    """Of an archive."""


def check_file(path: str | Path) -> CheckedFile:
    """Pass an xlsx, xlsm, xls, ods or delimited text file that is safe to read; the content decides, not the name.

    Raises `InputRefused` with one line (file, what is wrong, what to do) and one finding for: a missing, unreadable,
    empty or oversize file, a folder, no workbook, a password, a truncated or damaged archive, a zip bomb, entity
    tricks, cells or texts repeated beyond what fits into memory. Takes some 5 s and under 512 MiB for the largest file.
    """
    path = Path(path)
    _check_regular(path)
    head = _head(path)
    if head.startswith(ZIP_MAGICS):
        check_archive(path)
        return CheckedFile(FileKind.ARCHIVE, walk(path, partial(check_extent, path)))
    if head.startswith(COMPOUND_MAGIC):
        check_compound(path)
        return CheckedFile(FileKind.COMPOUND)
    check_text(path)
    return CheckedFile(FileKind.TEXT)


def _check_regular(path: Path) -> None:
    try:
        found = os.stat(path)
    except FileNotFoundError:
        refuse(path, "file-missing", full_path=True)
    except (OSError, ValueError) as error:
        refuse(path, "file-unreadable", why=_words(error))
    if stat.S_ISDIR(found.st_mode):
        refuse(path, "file-is-folder", full_path=True)
    if not stat.S_ISREG(found.st_mode):
        refuse(path, "file-unreadable", full_path=True, why=None)
    if found.st_size == 0:
        refuse(path, "file-empty", how="bytes")
    if found.st_size > MAX_FILE_BYTES:
        refuse(path, "file-too-large", kind="any", mib=found.st_size / 2**20, limit_mib=MAX_FILE_BYTES >> 20)


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(16)
    except OSError as error:
        refuse(path, "file-unreadable", why=_words(error))


def _words(error: Exception) -> str:
    return (getattr(error, "strerror", None) or str(error)).lower()
