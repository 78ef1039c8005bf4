"""Hall names in titles, section lines and sheet names: `SALON A`, `Summe Halle B` (no), `一车间`, `Websaal 2`."""

import re
from functools import lru_cache

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import is_cjk, tokens, vocabulary

_WORD = re.compile(r"[^\s,;:()\[\]|/]+")
_IDENTIFIER = re.compile(r"[A-Z]{1,3}|[a-z]|[IVX]+|[A-Z]{0,3}[-.]?\d{1,3}[A-Za-z]?\.?|\d{1,2}(?:ª|º|°|\.|er|ème|e)?")
_SEVERAL = re.compile(r"\s*(?:[+&/,\-–]|und|and|et|e|y|ve|bis|to|à|a|至|和)\s*[A-Z\d](?![^\W\d])", re.IGNORECASE)
"""`Halle 1 und 2` names no one hall."""
_SOLID = re.compile(r"([^\W\d_]{3,})[-_.]?(?:\d{1,3}|[A-Z])")
_ORDINAL = re.compile(r"\d{1,2}(?:ª|º|°|\.|er|ère|ème|e|st|nd|rd|th)")


@lru_cache(maxsize=5_000)
def hall_in(text: str, *, alone: bool = True) -> str | None:
    """The hall that a title names, None where it names none. `alone`: nothing else stands in the row."""
    return _place_in(" ".join(text.replace("_", " ").split()), "hall", alone)


@lru_cache(maxsize=5_000)
def row_in(text: str) -> str | None:
    """The row of looms that a section line names: `Reihe 3` → `3`."""
    found = _place_in(text, "row", False)
    return found.rpartition(" ")[2].strip(".") if found and " " in found else None


def _place_in(text: str, kind: str, alone: bool) -> str | None:
    words_of_kind = vocabulary().words[kind]
    if is_cjk(text):
        return _cjk_place(text, words_of_kind, alone)
    words = list(_WORD.finditer(text))
    for at, word in enumerate(words):
        size = next((n for n in (3, 2, 1) if at + n <= len(words) and _joined(words[at : at + n]) in words_of_kind), 0)
        if not size:
            continue
        last = at + size - 1
        behind = words[last + 1 :]
        if behind and _joined(behind[:1]) in vocabulary().number_words and len(behind) > 1:
            behind = behind[1:]
        if (
            behind
            and _IDENTIFIER.fullmatch(behind[0].group())
            and "," not in text[words[last].end() : behind[0].start()]
        ):
            return None if _SEVERAL.match(text, behind[0].end()) else _tidy(text[word.start() : behind[0].end()])
        if at and (_ORDINAL if word.group().casefold()[-1:] not in "uüıi" else _IDENTIFIER).fullmatch(
            words[at - 1].group()
        ):
            return _tidy(text[words[at - 1].start() : words[last].end()])
    if re.search(r"\d\s*[-–+&]\s*\d", text):
        return None
    for word in words:
        solid = _SOLID.fullmatch(word.group())
        if solid and fold(solid[1]) in words_of_kind and fold(word.group()) not in words_of_kind:
            return word.group()
    if alone and kind == "hall" and 1 < len(words) <= 3 and _has_hall_word(words):
        return _tidy(text)
    if alone and kind == "hall" and len(words) == 1 and re.search(r".{3,}(halle|saal)$", fold(text)):
        return text if fold(text) not in words_of_kind else None
    return None


def _has_hall_word(words: list[re.Match[str]]) -> bool:
    halls = vocabulary().words["hall"]
    return any(fold(word.group()) in halls for word in words) and _joined(words) not in halls


def _joined(words: list[re.Match[str]]) -> str:
    return " ".join(tokens(" ".join(word.group() for word in words)))


def _tidy(text: str) -> str:
    return " ".join(text.replace(":", " ").split())


def _cjk_place(text: str, words: frozenset[str], alone: bool) -> str | None:
    names = [word for word in words if is_cjk(word)]
    for name in names:
        at = text.find(name)
        if at < 0:
            continue
        if alone and len(text) <= 10 and text != name and not re.search(r"[：:，,。（(]", text):
            return text
        hit = re.search(
            rf"([\d一二三四五六七八九十东西南北中A-Za-z]+号?(?:织造|织布|布机)?{name}|{name}[\dA-Za-z]+)", text
        )
        if hit:
            return hit[1]
    return None
