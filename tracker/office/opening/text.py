"""Text: which encoding, which delimiter and quoting or which fixed columns, decided from the bytes and the known headings."""

import csv
import io
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from tracker.domain.plain_text import unguarded
from tracker.office.opening.code_pages import KnownWords, decoded
from tracker.office.opening.fixed_width import fixed_rows
from tracker.office.refusal import refuse
from tracker.office.sheet import Extras, Sheet, clean

DELIMITERS = ";\t,|"
_HEAD = 60
"""Lines in which the headings of a printed list stand."""
LanguageOf = Callable[[str], str | None]
"""The language of a text that is a known heading; None for any other text."""
_SAID = re.compile(r"\Asep=(.)\r?\n", re.IGNORECASE)


def text_sheet(path: Path, known: KnownWords, page: str | None = None) -> Sheet:
    """The file as one sheet, named after the file. `page`: the code page that an answer names; raises InputRefused."""
    read = decoded(path.read_bytes(), known, page)
    if read is None:
        refuse(path, "encoding")
    said = _SAID.match(read.text)
    body = read.text[said.end() :] if said else read.text
    fields = None if said else _in_fixed_columns(body, known.language_of)
    if fields is None:
        fields = _parsed(path, body, said[1] if said else best_delimiter(body, known.language_of))
    rows = [[clean(_unprotected(field)) or None for field in row] for row in fields]
    lost = [(r, c) for r, row in enumerate(rows, 1) for c, text in enumerate(row, 1) if text and "\ufffd" in text]
    return Sheet(path.name, path.stem, rows, Extras(lost_letters=lost, code_pages=read.readings))  # type: ignore[arg-type]


def _unprotected(field: str) -> str:
    """The text that a program protected from a spreadsheet: `="007"` is 007, `'=1+1` is =1+1."""
    if len(field) > 3 and field.startswith('="') and field.endswith('"'):
        return field[2:-1]
    return unguarded(field)


def best_delimiter(text: str, language_of: LanguageOf) -> str:
    """The delimiter under which most lines have the same number of fields, more fields the better."""
    return max(DELIMITERS, key=lambda mark: _evenness(text, mark, language_of))


def _in_fixed_columns(text: str, language_of: LanguageOf) -> list[list[str]] | None:
    """The fields of a printed list, where no delimiter parts as many known headings as its columns do."""
    rows = fixed_rows(text) if "  " in text else None
    if rows is None:
        return None
    fixed = _headings(rows[:_HEAD], language_of)
    head = "\n".join(text.splitlines()[:_HEAD])
    parted = (csv.reader(io.StringIO(head, newline=""), delimiter=mark) for mark in DELIMITERS)
    return rows if fixed > 1 and all(fixed > _headings(list(one), language_of) for one in parted) else None


def _headings(rows: list[list[str]], language_of: LanguageOf) -> int:
    """How many known headings the line with the most of them has."""
    return max((sum(1 for field in row if language_of(clean(field)) is not None) for row in rows), default=0)


def _evenness(text: str, delimiter: str, language_of: LanguageOf) -> float:
    try:
        rows = [
            row
            for row, _ in zip(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter), range(200), strict=False)
        ]
    except csv.Error:
        return -1
    counts = Counter(len(row) for row in rows if any(field.strip() for field in row))
    if not counts:
        return 0
    width, lines = max(counts.items(), key=lambda item: (item[1] * (item[0] > 1), item[0]))
    return (width > 1) * lines / sum(counts.values()) + _headings(rows, language_of)


def _parsed(path: Path, text: str, delimiter: str) -> list[list[str]]:
    csv.field_size_limit(1 << 20)
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter))
    except csv.Error as error:
        refuse(path, "damaged", how="columns", why=str(error))
