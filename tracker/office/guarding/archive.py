"""The zip archive inside an xlsx or ods: its directory is judged before anything is unpacked, the content while it is.

Field layout: the ZIP file format specification (APPNOTE 6.3.x, from memory); overlapping members are the trick of the
non-recursive zip bomb, where thousands of directory entries share one packed kernel.
"""

import re
import struct
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

from tracker.office.refusal import refuse

MAX_ENTRIES = 10_000
MAX_DIRECTORY_BYTES = 4 << 20
MAX_UNPACKED_BYTES = 256 << 20
MAX_XML_BYTES = 96 << 20
"""Twelve times what 5,000 looms × 40 columns unpack to."""
MAX_RATIO = 300
"""Real sheets pack 5 to 60 to 1; deflate cannot do more than 1,032 to 1."""
RATIO_FREE_BYTES = 16 << 20
"""Below this size a high ratio harms nobody."""

_CHUNK = 1 << 18
_LOCAL_HEADER = struct.Struct("<4s5H3I2H")
_END_RECORD = struct.Struct("<4s4H2IH")
_FORBIDDEN = re.compile(rb"<!(DOCTYPE|ENTITY)")
_NOT_READ = re.compile(r"(^|/)(media|embeddings|pictures|thumbnails)/", re.IGNORECASE)
_OTHER_KINDS = {"word/document.xml": "document", "ppt/presentation.xml": "slides"}


def check_archive(path: Path) -> None:
    """Refuse an archive that is no workbook, is damaged, locked, or unpacks to something other than it declares."""
    _check_end_record(path)
    try:
        with zipfile.ZipFile(path) as archive, path.open("rb") as file:
            entries = archive.infolist()
            _check_directory(path, entries)
            _check_kind(path, archive)
            _check_ods_lock(path, archive)
            for entry, data_start in _check_places(path, file, entries):
                _check_content(path, file, entry, data_start)
    except (zipfile.BadZipFile, zlib.error, struct.error, EOFError, UnicodeError, NotImplementedError, OSError):
        refuse(path, "damaged", how="packing")


def _check_end_record(path: Path) -> None:
    """The end record says how large the directory is, before a library would read all of it."""
    with path.open("rb") as file:
        size = file.seek(0, 2)
        file.seek(max(0, size - 66_000))
        tail = file.read()
    at = tail.rfind(b"PK\x05\x06")
    if at < 0 or at + _END_RECORD.size > len(tail):
        refuse(path, "truncated", how="archive")
    directory_bytes = _END_RECORD.unpack_from(tail, at)[5]
    wide = tail.rfind(b"PK\x06\x06", 0, at)
    if wide >= 0 and wide + 48 <= len(tail):
        directory_bytes = max(directory_bytes % 0xFFFFFFFF, struct.unpack_from("<Q", tail, wide + 40)[0])
    if directory_bytes > MAX_DIRECTORY_BYTES:
        refuse(path, "zip-bomb", how="directory", mib=directory_bytes / 2**20)


def _check_directory(path: Path, entries: list[zipfile.ZipInfo]) -> None:
    if len(entries) > MAX_ENTRIES:
        refuse(path, "zip-bomb", how="parts", parts=len(entries), limit=MAX_ENTRIES)
    if any(entry.flag_bits & 1 for entry in entries):
        refuse_locked(path)
    names = [entry.filename.casefold() for entry in entries]
    if len(set(names)) < len(names):
        twice = next(name for name in names if names.count(name) > 1)
        refuse(path, "damaged", how="twice", part=twice)
    for entry in entries:
        if entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            refuse(path, "damaged", how="unusual", part=entry.filename)
        if entry.file_size > RATIO_FREE_BYTES and entry.file_size > MAX_RATIO * max(1, entry.compress_size):
            ratio = entry.file_size / max(1, entry.compress_size)
            refuse(path, "zip-bomb", how="ratio", part=entry.filename, ratio=ratio, limit=MAX_RATIO)
    _check_total(path, sum(entry.file_size for entry in entries), MAX_UNPACKED_BYTES)
    _check_total(path, sum(entry.file_size for entry in entries if _is_xml(entry.filename)), MAX_XML_BYTES)


def _check_total(path: Path, total: int, limit: int) -> None:
    if total > limit:
        refuse(path, "too-large-unpacked", mib=total / 2**20, limit_mib=limit >> 20)


def _check_kind(path: Path, archive: zipfile.ZipFile) -> None:
    names = {entry.filename.casefold(): entry for entry in archive.infolist()}
    if "xl/workbook.xml" in names:
        return
    if "xl/workbook.bin" in names:
        refuse(path, "not-a-workbook", kind="binary-workbook")
    for name, kind in _OTHER_KINDS.items():
        if name in names:
            refuse(path, "not-a-workbook", kind=kind)
    mimetype = names.get("mimetype")
    kind = archive.read(mimetype)[:200] if mimetype is not None and mimetype.file_size < 200 else b""
    if "content.xml" not in names:
        refuse(path, "not-a-workbook", kind="zip")
    if kind and b"spreadsheet" not in kind:
        refuse(path, "not-a-workbook", kind="other-document")


def _check_places(path: Path, file: BinaryIO, entries: list[zipfile.ZipInfo]) -> list[tuple[zipfile.ZipInfo, int]]:
    """Each entry with where its data starts, once the local headers agree with the directory and nothing overlaps."""
    placed = []
    last_end = 0
    for entry in sorted(entries, key=lambda entry: entry.header_offset):
        if entry.header_offset < last_end:
            refuse(path, "zip-bomb", how="overlap", part=entry.filename)
        file.seek(entry.header_offset)
        header = _LOCAL_HEADER.unpack(file.read(_LOCAL_HEADER.size))
        magic, flags, method, packed, unpacked, name_bytes, extra_bytes = (header[i] for i in (0, 2, 3, 7, 8, 9, 10))
        name = file.read(name_bytes).decode("utf-8" if flags & 0x800 else "cp437")
        sizes_differ = not flags & 8 and 0xFFFFFFFF not in (packed, unpacked) and (
            (packed, unpacked) != (entry.compress_size, entry.file_size)
        )  # fmt: skip
        if magic != b"PK\x03\x04" or name != entry.orig_filename or method != entry.compress_type or sizes_differ:
            refuse(path, "damaged", how="contradiction", part=entry.filename)
        data_start = entry.header_offset + _LOCAL_HEADER.size + name_bytes + extra_bytes
        last_end = data_start + entry.compress_size
        placed.append((entry, data_start))
    return placed


def _check_content(path: Path, file: BinaryIO, entry: zipfile.ZipInfo, data_start: int) -> None:
    """Unpack one part without keeping it: what it declares must be what it holds, and XML must declare no entities."""
    produced, checksum, carry, looks_xml = 0, 0, b"", _is_xml(entry.filename)
    for chunk in _unpacked(file, entry, data_start):
        if produced == 0 and not _NOT_READ.search(entry.filename):
            looks_xml = looks_xml or chunk.lstrip(b"\xef\xbb\xbf\xfe\xff\x00 \t\r\n").startswith(b"<")
        produced += len(chunk)
        if produced > entry.file_size:
            refuse(path, "zip-bomb", how="undeclared", part=entry.filename)
        checksum = zlib.crc32(chunk, checksum)
        if looks_xml:
            text = carry + (chunk.replace(b"\0", b"") if b"\0" in chunk else chunk)
            if _FORBIDDEN.search(text):
                refuse(path, "entities", part=entry.filename)
            carry = text[-16:]
    if produced != entry.file_size or checksum != entry.CRC:
        refuse(path, "damaged", how="part", part=entry.filename)


def _unpacked(file: BinaryIO, entry: zipfile.ZipInfo, data_start: int) -> Iterator[bytes]:
    """The part's true content in small pieces; unlike `zipfile` it does not stop at the declared size."""
    file.seek(data_start)
    left = entry.compress_size
    inflate = zlib.decompressobj(-15) if entry.compress_type == zipfile.ZIP_DEFLATED else None
    while left > 0:
        packed = file.read(min(_CHUNK, left))
        if not packed:
            raise EOFError
        left -= len(packed)
        if inflate is None:
            yield packed
            continue
        while packed and not inflate.eof:
            yield inflate.decompress(packed, _CHUNK)
            packed = inflate.unconsumed_tail
    while inflate is not None and not inflate.eof:
        rest = inflate.decompress(b"", _CHUNK)
        if not rest:
            raise EOFError
        yield rest


def _check_ods_lock(path: Path, archive: zipfile.ZipFile) -> None:
    names = archive.namelist()
    manifest = archive.read("META-INF/manifest.xml") if "META-INF/manifest.xml" in names else b""
    if b"encryption-data" in manifest or "encrypted-package" in names:
        refuse_locked(path)


def refuse_locked(path: Path) -> None:
    refuse(path, "password")


def _is_xml(name: str) -> bool:
    return name.casefold().endswith((".xml", ".rels"))
