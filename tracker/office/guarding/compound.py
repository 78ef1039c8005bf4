"""Compound files: old .xls workbooks, and the wrapper in which spreadsheets keep password-protected .xlsx files.

Record numbers: the published BIFF8 file format (MS-XLS, from memory): FILEPASS 0x2F, BOF 0x809, EOF 0x0A.
"""

import struct
from pathlib import Path

import olefile

from tracker.domain.addresses import cell_name
from tracker.errors import InputRefused
from tracker.office.guarding.archive import refuse_locked
from tracker.office.refusal import refuse
from tracker.office.walking.extent import MAX_CELLS

COMPOUND_MAGIC = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"

_BOF, _FILEPASS = 0x809, 0x2F
_CELLS = frozenset((0x203, 0x204, 0x205, 0x27E, 0xFD, 0x06, 0xBD, 0xD6))
"""NUMBER, LABEL, BOOLERR, RK, LABELSST, FORMULA, MULRK, RSTRING: each begins with row and column."""
_SECTOR_SHIFTS = ((9, 6), (12, 6))
"""Sectors of 512 or 4,096 bytes, small ones of 64; anything else makes a reader ask for absurd pieces."""
_RECORD = struct.Struct("<HH")


def check_compound(path: Path) -> None:
    """Refuse a compound file that is locked, damaged or no workbook, or whose cells lie too far apart to be read."""
    try:
        stream = _workbook_stream(path)
    except InputRefused:
        raise
    except Exception:  # the library lets any error of a broken file through
        stream = b""
    if not stream:
        refuse(path, "truncated", how="compound")
    check_records(path, stream)


def _workbook_stream(path: Path) -> bytes:
    """The records of the workbook; empty where the file holds less than it declares."""
    with path.open("rb") as file:
        header = file.read(34)
    if struct.unpack_from("<HH", header, 30) not in _SECTOR_SHIFTS:
        return b""
    with olefile.OleFileIO(str(path)) as compound:
        if compound.exists("EncryptedPackage"):
            refuse_locked(path)
        name = next((name for name in ("Workbook", "Book") if compound.exists(name)), None)
        if name is None:
            refuse(path, "not-a-workbook", kind="other-document")
        size = compound.get_size(name)
        stream = compound.openstream(name).read() if size <= path.stat().st_size else b""
        return stream if len(stream) == size else b""


def check_records(path: Path, stream: bytes) -> None:
    """Walk through the records of a workbook stream; refuse a password and more cells than a reader should hold.

    The reader keeps each row as long as its last cell, so a stray cell in the last row costs little.
    """
    at, row_ends = 0, {}
    held = 0
    while at + 4 <= len(stream):
        record, length = _RECORD.unpack_from(stream, at)
        if record == _FILEPASS:
            refuse_locked(path)
        if record == _BOF:
            row_ends, held = {}, 0
        elif record in _CELLS and length >= 4 and at + 8 <= len(stream):
            row, column = _RECORD.unpack_from(stream, at + 4)
            if column >= row_ends.get(row, 0):
                held += column + 1 - row_ends.get(row, 0)
                row_ends[row] = column + 1
            if held > MAX_CELLS:
                refuse(path, "cells-far-apart", corner=cell_name((row + 1, column + 1)), cells=held, limit=MAX_CELLS)
        elif record == 0 and length == 0:
            break
        at += 4 + length
