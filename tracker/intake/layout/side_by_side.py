"""Several looms to a row: which columns are each loom's own, and which the looms of a row share (READING.md, section 2)."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from tracker.domain.words import fold
from tracker.intake.vocabulary.headings import ENOUGH, match_heading


class Group(NamedTuple):
    own: list[int]
    shared: list[int]
    """Columns that say something of every loom of the row."""


def groups_of(columns: Sequence[int], headings: Mapping[int, str]) -> list[Group]:
    """The groups where the heading of the loom and another one stand again and again; empty where they do not.

    `Hall | Loom | Type | Loom | Type` are two groups that share the hall; columns beyond the last group are shared, too.
    """
    keys = [fold(headings[c]) for c in columns]
    starts = _loom_places(keys, [headings[c] for c in columns])
    if not starts or not _repeat_more(keys, starts):
        return []
    lead = _lead(keys, starts, [headings[c] for c in columns])
    edges = [start - lead for start in starts]
    end = _end_of_last(keys, edges)
    parts = [[*columns[a:b]] for a, b in pairwise([*edges, end])]
    shared = [*columns[: edges[0]], *columns[end:]]
    return [Group(own, shared) for own in parts]


def _loom_places(keys: Sequence[str], texts: Sequence[str]) -> list[int]:
    """Where the same heading of a loom number stands, if more than once."""
    for key, text in zip(keys, texts, strict=True):
        if keys.count(key) > 1 and _field(text) == "loom":
            return [i for i, other in enumerate(keys) if other == key]
    return []


def _repeat_more(keys: Sequence[str], starts: list[int]) -> bool:
    """Does another heading stand again with each loom, too? `Loom | Type | Loom | Date` is a list beside a log."""
    parts = [set(keys[a:b]) for a, b in pairwise([*starts, len(keys)])]
    before = [set(keys[a:b]) for a, b in pairwise([0, *starts])]
    return len(set.intersection(*parts)) > 1 or bool(set.intersection(*before))


def _lead(keys: Sequence[str], starts: list[int], texts: Sequence[str]) -> int:
    """How many columns before the loom belong to its group: those alike before each loom that the last group has room for."""
    width = min(b - a for a, b in pairwise(starts))
    room = min(width - (len(keys) - starts[-1]), starts[0])
    lead = 0
    while lead < room and _alike([starts_at - lead - 1 for starts_at in starts], keys, texts):
        lead += 1
    return lead


def _alike(places: list[int], keys: Sequence[str], texts: Sequence[str]) -> bool:
    """The same heading, or headings none of which is one of ours (`Side A | Loom | … | Side B | Loom`)."""
    return len({keys[i] for i in places}) == 1 or not any(_field(texts[i]) for i in places)


def _end_of_last(keys: Sequence[str], edges: list[int]) -> int:
    """The last group is at least as wide as the narrowest other one; what no other group has stands behind it."""
    known = set(keys[edges[0] : edges[-1]])
    last = max(i for i in range(edges[-1], len(keys)) if keys[i] in known)
    width = min(b - a for a, b in pairwise(edges))
    return max(last + 1, min(len(keys), edges[-1] + width))


def _field(text: str) -> str:
    """The field of the loom list that a heading means most surely."""
    found = match_heading(text).candidates
    sure = [entry for entry in found if entry.table in ("", "looms") and entry.weight >= ENOUGH]
    return sure[0].field if sure else ""
