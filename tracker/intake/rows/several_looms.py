"""Which loom numbers may be several looms in one cell: `101-108`, `201-204, 206`, `101–120 except 107`.

READING.md, section 5. `3-04` may as well be row and place: what is written like the others of its list stands for several looms
only where each is a span that goes up and no two of one hall have a loom in common.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Set
from functools import lru_cache
from itertools import pairwise

from tracker.domain.words import fold
from tracker.intake.layout.body import shape

_TO = "to|bis|à|a|al|au|até|hasta|ile"
_AND = re.compile(r"\s*[,;+&、和\n]\s*|\s+(?:und|and|et|ve|e|y)\s+", re.IGNORECASE)
_ONE_OR_SPAN = re.compile(
    rf"(\D{{0,8}}?)(\d{{1,9}})(?:\s*(?:[-–—~/]|\.{{2,}}|…|至|到|\b(?:{_TO})\b)\s*(\D{{0,8}}?)(\d{{1,9}}))?",
    re.IGNORECASE,
)
_FROM_TO = re.compile(r"^(?:from|von|de|da|dal|du|del|desde)\s+(?=\d)", re.IGNORECASE)
_WORDS_BEHIND = re.compile(rf"(?<=\d)\s*[(\[（]?\s*(?!(?:{_TO}|und|and)\b)[^\W\d_]{{3,}}.*$", re.DOTALL | re.IGNORECASE)
_BEFORE_NUMBER = re.compile(r"\D*")
_MOST = 500
"""Looms of one span; what reaches further is a name."""

Span = tuple[str, int, int]
"""What stands before the numbers, the first, the last."""


def less_those_of_several(numbers: Iterable[tuple[str, str]], usual: frozenset[str]) -> frozenset[str]:
    """The shapes that name one loom each, of those that are usual in a list. `numbers`: (hall, loom number)."""
    found = set(numbers)
    return frozenset(one for one in usual if not _are_several({n for n in found if shape(n[1]) == one}, found))


def each_of(text: str) -> tuple[str, ...]:
    """The looms that a text names one by one, spelt as its first: `A101-104, 107` → `A101` … `A104`, `A107`; nothing where words
    stand in it (`101-120 except 107`), or one of two numbers may be a place (`101/108`)."""
    found: list[str] = []
    for part in _AND.split(text.strip()):
        hit = _ONE_OR_SPAN.fullmatch(part)
        span = _span(hit[1], hit[2], hit[3], hit[4]) if hit else None
        if hit is None or span is None or ("/" in part and span[2] - span[1] > 1):
            return ()
        before = hit[1] or (_BEFORE_NUMBER.match(found[0])[0] if found else "")  # type: ignore[index]
        found += [f"{before}{number:0{len(hit[2])}d}" for number in range(span[1], span[2] + 1)]
    return tuple(found) if len(set(found)) == len(found) > 1 else ()


def stands_for_several(text: str) -> bool:
    """Can the text be read as more than one loom?"""
    return len(spans := _spans_of(text)) > 1 or any(first < last for _, first, last in spans)


def _are_several(numbers: Set[tuple[str, str]], of_all: Set[tuple[str, str]]) -> bool:
    """Is each of these several looms, and none of them a loom of another number of its hall?"""
    if len(numbers) < 2 or not all(stands_for_several(text) for _, text in numbers):
        return False
    taken: dict[tuple[str, str], list[tuple[int, int]]] = defaultdict(list)
    for hall, text in of_all:
        for before, first, last in _spans_of(text):
            taken[hall, before].append((first, last))
    return all(one[1] < two[0] for spans in taken.values() for one, two in pairwise(sorted(spans)))


@lru_cache(maxsize=50_000)
def _spans_of(text: str) -> tuple[Span, ...]:
    """`A101-104, 107` → `(('a', 101, 104), ('a', 107, 107))`; nothing where a part is no number and no span that goes up."""
    found: list[Span] = []
    for part in _AND.split(_WORDS_BEHIND.sub("", _FROM_TO.sub("", text.strip()))):
        hit = _ONE_OR_SPAN.fullmatch(part)
        span = _span(hit[1], hit[2], hit[3], hit[4]) if hit else None
        if span is None:
            return ()
        found.append((span[0] or found[0][0], *span[1:]) if found else span)
    return tuple(found)


def _span(before: str, first: str, again: str | None, last: str | None) -> Span | None:
    if last is None:
        return fold(before), int(first), int(first)
    if fold(again or "") not in ("", fold(before)) or (last[0] == "0" and len(last) > len(first)):
        return None
    whole = first[: max(0, len(first) - len(last))] + last  # `101-8` ends at 108
    return (fold(before), int(first), int(whole)) if 0 < int(whole) - int(first) < _MOST else None
