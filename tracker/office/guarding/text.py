"""Tells delimited text (CSV, tabbed text) from everything that is neither text nor a workbook."""

import codecs
from pathlib import Path

from tracker.office.refusal import refuse

MAX_TEXT_BYTES = 20 << 20
"""About 200,000 lines of a loom list."""

_WORKBOOK_NAMES = (".xlsx", ".xlsm", ".xls", ".ods", ".xlsb")
_NAMED = {
    b"%PDF": "pdf", b"\x89PNG": "picture", b"\xff\xd8\xff": "picture", b"GIF8": "picture", b"Rar!": "archive",
    b"7z\xbc\xaf": "archive", b"\x1f\x8b": "archive", b"{\\rtf": "document", b"SQLite format": "database",
}  # fmt: skip
_MARKUP = (b"<!doctype", b"<html", b"<table", b"<?xml", b"<style", b"<head", b"<meta")


def check_text(path: Path) -> None:
    """Refuse what is not text in UTF-8, UTF-16 or a Windows code page, and text that is no delimited table."""
    if path.stat().st_size > MAX_TEXT_BYTES:
        refuse(path, "file-too-large", kind="text", mib=path.stat().st_size / 2**20, limit_mib=MAX_TEXT_BYTES >> 20)
    data = path.read_bytes()
    for magic, kind in _NAMED.items():
        if data.startswith(magic):
            refuse(path, "not-a-workbook", kind=kind)
    text = _plain(data)
    start = text[:4096].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if start.startswith(_MARKUP):
        refuse(path, "not-a-workbook", kind="web-page" if path.suffix.lower() in _WORKBOOK_NAMES else "markup")
    if not text.strip():
        refuse(path, "file-empty", how="blanks")
    if _control_share(text) > 0.01:
        refuse(path, "not-a-workbook", kind="unknown")
    if path.suffix.lower() in _WORKBOOK_NAMES and not _looks_delimited(text):
        refuse(path, "not-a-workbook", kind="plain-text")


def _plain(data: bytes) -> bytes:
    """The text with one byte per ASCII character: UTF-16, with or without a mark, and UTF-32 lose its zero bytes."""
    if data.startswith((codecs.BOM_UTF32_LE, codecs.BOM_UTF32_BE)):
        return data.decode("utf-32", "replace").encode()
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return data.decode("utf-16", "replace").encode()
    sample = data[:4096]
    zeros = (sample[0::2].count(0), sample[1::2].count(0))
    if max(zeros) > 0.4 * len(sample) / 2 and min(zeros) < 0.02 * len(sample):
        return data.decode("utf-16-be" if zeros[0] > zeros[1] else "utf-16-le", "replace").encode()
    return data


def _control_share(text: bytes) -> float:
    controls = bytes(c for c in range(32) if c not in b"\t\n\r\f\x1a")
    return (len(text) - len(text.translate(None, controls))) / len(text)


def _looks_delimited(text: bytes) -> bool:
    lines = [line for line in text[:65536].splitlines() if line.strip()][:50]
    return any(sum(line.count(mark) > 0 for line in lines) >= min(2, len(lines)) for mark in (b"\t", b";", b",", b"|"))
