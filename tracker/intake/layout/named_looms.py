"""The looms of a list whose own column or line has no heading that says so: `Loom 101 | Loom 102` in the cells does."""

import re
from collections.abc import Mapping
from typing import Any

from tracker.intake.vocabulary.heading_forms import one_line
from tracker.intake.vocabulary.headings import ENOUGH, match_heading
from tracker.office.sheet import Sheet

_NAMED = re.compile(r"([^\W\d_][^\d]*?)[\s.:#№°-]*(?<![^\W\d_])\w*\d\w*")
_COLUMNS = 3
"""The first filled ones, in which looms are named."""
_ROWS = 30


def with_named_looms(sheet: Sheet, headings: Mapping[int, str], bottom: int) -> dict[int, str]:
    """The headings, and the word for a loom above a column of such names where no heading means the loom."""
    found = dict(headings)
    if any(_means(text, "loom") for text in headings.values()):
        return found
    first = min(headings, default=0)
    for column in range(max(0, first - 1), first + _COLUMNS):
        if not match_heading(headings.get(column, "")).candidates and (word := _word_for_looms(sheet, column, bottom)):
            return dict(sorted((found | {column: word}).items()))
    return found


def _word_for_looms(sheet: Sheet, column: int, bottom: int) -> str:
    """The word for a loom with which all cells below but one (that of the units) begin; `` where they do not."""
    values = [v for row in range(bottom + 1, min(len(sheet.rows), bottom + _ROWS)) if (v := sheet.value(row, column))]
    words = [word for value in values if (word := _word_before(value))]
    enough = len(words) > 1 and len(words) >= len(values) - 1 and len(set(values)) == len(values)
    return words[0] if enough and all(_means(word, "loom") for word in set(words)) else ""


def _word_before(value: Any) -> str:
    hit = _NAMED.fullmatch(one_line(value)) if isinstance(value, str) else None
    return hit[1].strip() if hit else ""


def _means(text: str, field: str) -> bool:
    return any(entry.field == field and entry.weight >= ENOUGH for entry in match_heading(text).candidates)
