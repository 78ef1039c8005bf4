"""Delimited text: which encoding, which delimiter, which quoting, decided from the bytes and from the headings that one knows."""

import codecs
import csv
import io
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from tracker.domain.plain_text import unguarded
from tracker.office.refusal import refuse
from tracker.office.sheet import Extras, Sheet, clean

CODE_PAGES = ("cp1252", "cp1254", "gb18030", "cp1250", "cp850", "cp857", "mac_roman", "big5")
"""Tried where the text is no Unicode, in this order of liking."""
DELIMITERS = ";\t,|"
LanguageOf = Callable[[str], str | None]
"""The language of a text that is a known heading; None for any other text."""
_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF32_LE, "utf-32"), (codecs.BOM_UTF32_BE, "utf-32"),
          (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))  # fmt: skip
ALPHABETS = {
    "de": "äöüßÄÖÜ", "fr": "àâçéèêëîïôùûüœæÀÂÇÉÈÊËÎÏÔÙÛÜŒÆ", "it": "àèéìòùÀÈÉÌÒÙ", "es": "áéíóúñüÁÉÍÓÚÑÜº",
    "pt": "ãõáéíóúâêôçàÃÕÁÉÍÓÚÂÊÔÇÀº",
    "tr": "çğıöşüâîûÇĞİÖŞÜÂÎÛ",
}  # fmt: skip
"""Letters beyond ASCII of the languages whose headings were found."""
_SAID = re.compile(r"\Asep=(.)\r?\n", re.IGNORECASE)
_STRANGE = re.compile(r"[\u0080-\u009f¤¦¨¬¯¶¸¹ÐðÝýÞþ\u2500-\u25ff†‡…‰‹›Ž\ue000-\uf8ff]")


def text_sheet(path: Path, language_of: LanguageOf) -> Sheet:
    """The file as one sheet, named after the file."""
    data = path.read_bytes()
    text = decoded(path, data, language_of)
    said = _SAID.match(text)
    body = text[said.end() :] if said else text
    delimiter = said[1] if said else best_delimiter(body, language_of)
    rows: list[list[str | None]] = [
        [clean(_unprotected(field)) or None for field in row] for row in _parsed(path, body, delimiter)
    ]
    return Sheet(path.name, path.stem, rows, Extras())  # type: ignore[arg-type]


def _unprotected(field: str) -> str:
    """The text that a program protected from a spreadsheet: `="007"` is 007, `'=1+1` is =1+1."""
    if len(field) > 3 and field.startswith('="') and field.endswith('"'):
        return field[2:-1]
    return unguarded(field)


def decoded(path: Path, data: bytes, language_of: LanguageOf) -> str:
    """The text; raises InputRefused where no encoding fits."""
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return data.decode(encoding, "replace")
    zeros = (data[:4096:2].count(0), data[1:4096:2].count(0))
    if max(zeros) > len(data[:4096]) / 5:
        return data.decode("utf-16-be" if zeros[0] > zeros[1] else "utf-16-le", "replace")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        pass
    best = max(
        (score, -i, page) for i, page in enumerate(CODE_PAGES) if (score := _fit(data, page, language_of)) is not None
    )
    if best is None:
        refuse(path, "encoding")
    return data.decode(best[2])


def _fit(data: bytes, page: str, language_of: LanguageOf) -> float | None:
    """How well the bytes read in a code page: known headings count most, letters out of place count against."""
    sample = data[: 1 << 16]
    sample = sample[: sample.rfind(b"\n") + 1] or sample
    try:
        text = sample.decode(page)
        data.decode(page)
    except UnicodeDecodeError:
        return None
    beyond = [c for c in text if ord(c) > 127]
    strange = len(_STRANGE.findall(text)) + sum(_out_of_place(text, page))
    cells = {clean(cell).strip('"') for line in text.splitlines()[:40] for cell in re.split(r"[;\t,|]", line)}
    found = [(cell, language) for cell in cells if (language := language_of(cell)) is not None]
    headings = sum(not cell.isascii() for cell, _ in found)
    alphabet = set("".join(ALPHABETS.get(language, "") for language in {language for _, language in found}))
    foreign = sum(c.isalpha() and c not in alphabet for c in beyond) if alphabet and page[:2] not in ("gb", "bi") else 0
    share = 1 / max(1, len(beyond))
    return 20 * headings - (10 * strange + 6 * foreign) * share * min(10, len(beyond))


def _out_of_place(text: str, page: str) -> list[bool]:
    """Signs of a wrong code page: capitals with accents inside small letters, Chinese beside Latin letters."""
    if page in ("gb18030", "big5"):
        return [True for _ in re.findall(r"[a-zà-ÿ][\u3400-\u9fff]|[\u3400-\u9fff][a-zà-ÿ]", text)]
    return [True for _ in re.findall(r"[a-zß-ÿ][À-Þ](?=[a-zß-ÿ])|[×÷¢£¥§©«®±²³µ·»¼½¾¿](?=[a-z])", text)]


def best_delimiter(text: str, language_of: LanguageOf) -> str:
    """The delimiter under which most lines have the same number of fields, more fields the better."""
    return max(DELIMITERS, key=lambda mark: _evenness(text, mark, language_of))


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
    headings = max((sum(1 for f in row if language_of(clean(f)) is not None) for row in rows), default=0)
    return (width > 1) * lines / sum(counts.values()) + headings


def _parsed(path: Path, text: str, delimiter: str) -> list[list[str]]:
    csv.field_size_limit(1 << 20)
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter))
    except csv.Error as error:
        refuse(path, "damaged", how="columns", why=str(error))
