"""Cells that say that there is nothing: dashes, n/a, question marks, error texts; and cells that repeat the one above."""

import re
from functools import lru_cache

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import tokens, vocabulary

_SYMBOLS = re.compile(r"[-‐‑‒–—―−_=./\\?？…*·•~]+|\(\s*[-–—?]*\s*\)|\[\s*\]|[xX]{3,}")
_SHORT = re.compile(
    r"n\s?[./]?\s?[av]\.?|n\.?\s?/\s?[advckbo]\.?|n\.\s?[dckbvio]\.?|k\.\s?a\.?|s\s?/\s?d|s\.\s?[do]\.?|#\s?n/?[adv]\.?|null|nan|none\s?given|"
    r"\(null\)|\(blank\)|\(leer\)|\(vide\)|<na>|n\.\s?a\.?|d/k|tbd|tba|tbc",
    re.IGNORECASE,
)
_ERROR = re.compile(
    r"#(?:REF|N/A|N/D|NV|DIV/0|VALUE|NAME|NUM|NULL|BEZUG|WERT|ZAHL|NOMBRE|NOM|VALEUR|RIF|VALORE|NOME|VALOR|¡?VALOR|"
    r"¿?NOMBRE|¡?REF|¡?DIV/0|¡?NUM|¡?NULO|NULO|BAŞV|DEĞER|AD|SAYI|SAYI/0|YOK|BOŞ|SPILL|CALC|FIELD|GETTING_DATA|"
    r"UNKNOWN|BLOCKED|CONNECT|ÜBERLAUF|NUL|PROPAGATION)[!?]?|Err:5\d\d|#+",
    re.IGNORECASE,
)
_DITTO = re.compile(
    r"[-–—\s]*(?:[\"″”“„‟〃«»]|''|,,)[-–—\s\"″”“„‟〃«»']*|ditto|do\.|dto\.?|idem|id\.|dito|同上|aynı|wie oben|come sopra|"
    r"as above|\^",
    re.IGNORECASE,
)


@lru_cache(maxsize=50_000)
def emptiness(text: str) -> str:
    """`error` for an error shown as text, `placeholder` for a mark that says nothing, `` for a value."""
    if len(text) > 24:
        return ""
    if text[0] in "#E" and _ERROR.fullmatch(text):
        return "error"
    return "placeholder" if _SYMBOLS.fullmatch(text) or _SHORT.fullmatch(text) else ""


@lru_cache(maxsize=50_000)
def says_unknown(text: str) -> bool:
    """Does a word say that the value is not known (`unbekannt`, `s/d`, `未知`)? A word such as `none` is a value."""
    words = vocabulary().words["unknown"]
    return fold(text).strip(".") in words or " ".join(tokens(text)) in words


def is_ditto(text: str) -> bool:
    """Does the cell repeat the one above?"""
    return len(text) <= 12 and bool(_DITTO.fullmatch(text))
