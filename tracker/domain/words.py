"""Comparing and sorting the mill's own words: folding of case and accents, natural order."""

import re
import unicodedata
from functools import lru_cache


def fold(text: object) -> str:
    """The text without case, accents, surrounding and repeated spaces: `' Reed  Width '` → `'reed width'`.

    Used wherever two of the mill's words are compared: headings, attribute names, bare words in conditions.
    """
    return _folded(str(text))


@lru_cache(maxsize=65536)
def _folded(text: str) -> str:
    plain = unicodedata.normalize("NFKD", text).casefold().replace("ı", "i")
    return " ".join("".join(c for c in plain if not unicodedata.combining(c)).split())


def natural_key(text: object) -> tuple:
    """Sort key in which numbers inside a text count as numbers: `A-2` comes before `A-10`, `007` beside `7`."""
    parts = re.split(r"(\d+)", fold(text))
    return tuple((0, int(p), p) if p.isdigit() else (1, 0, p) for p in parts if p)
