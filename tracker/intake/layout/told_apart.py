"""Headings of several looms to a row that a number or word tells apart: `Loom 1 | Type 1 | Loom 2 | Type 2`, `Left loom | …`."""

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Mapping

from tracker.domain.words import fold
from tracker.intake.vocabulary.headings import ENOUGH, match_heading

_BEHIND = re.compile(r"(.*[^\W\d].*?)[\s\-_.(]*(\d{1,2}|(?<=[\s\-_.(])[^\W\d]+)[).]?")
_SIDE_BEFORE = re.compile(r"([左右前后上下甲乙])(.+)")
_BEFORE = re.compile(r"(\d{1,2}|[^\W\d]+)[\s\-_.):]+(.*[^\W\d].*)")

_SURE = 0.9
"""Certainty from which a heading is what it says as a whole: `Loom type` is no loom, `Left loom` one."""


def alike(headings: Mapping[int, str]) -> dict[int, str]:
    """The headings without what tells the looms of a row apart; as they are where it does not stand with several of them."""
    return _cut(headings, _behind) or _cut(headings, _before) or dict(headings)


def _behind(text: str) -> tuple[str, str] | None:
    hit = _BEHIND.fullmatch(text)
    return (hit[1], fold(hit[2])) if hit else None


def _before(text: str) -> tuple[str, str] | None:
    hit = _BEFORE.fullmatch(text) or _SIDE_BEFORE.fullmatch(text)
    return (hit[2], fold(hit[1])) if hit else None


def _cut(headings: Mapping[int, str], split: Callable[[str], tuple[str, str] | None]) -> dict[int, str]:
    """Each of at least two words, one of them that for a loom, must stand once with each of the same marks."""
    cut = {c: found for c, text in headings.items() if (found := split(text))}
    often = Counter(fold(word) for word, _ in cut.values())
    parts = {
        c: found for c, found in cut.items()
        if often[fold(found[0])] > 1 and _field(headings[c], _SURE) in ("", _field(found[0]))
    }  # fmt: skip
    marks: dict[str, list[str]] = defaultdict(list)
    for word, mark in parts.values():
        marks[fold(word)].append(mark)
    looms = next(
        (tuple(found) for word, found in marks.items() if len(set(found)) == len(found) > 1 and _field(word) == "loom"),
        (),
    )
    groups = [
        word
        for word, found in marks.items()
        if looms and set(found) <= set(looms) and len(set(found)) == len(found) > 1
    ]
    plain = Counter(fold(text) for c, text in headings.items() if c not in parts)
    again = any(count == len(looms) and _field(text) for text, count in plain.items())
    if len(groups) < (1 if again else 2):  # `Left loom | Type | Right loom | Type`: the others stand again as they are
        return {}
    return {
        c: parts[c][0].strip() if c in parts and fold(parts[c][0]) in groups else text for c, text in headings.items()
    }


def _field(text: str, enough: float = ENOUGH) -> str:
    found = match_heading(text).candidates
    return found[0].field if found and found[0].weight >= enough else ""
