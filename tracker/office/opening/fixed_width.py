"""Text in columns of fixed width, as a program prints lists: split where nearly every line is blank."""

import re
from collections.abc import Sequence
from itertools import pairwise

_FEWEST_LINES, _FEWEST_COLUMNS = 3, 3
_BLANK = 0.9
"""Share of the lines of a list that are blank between two columns; titles and the foot of a page cross."""
_LONG = 0.6
"""Share of the usual length from which on a line is one of the list."""
_HELD = 0.2
"""Share of the lines that a column holds at least; less is a piece of a remark."""
_RULER = re.compile(r"[-=_+|\s]*[-=_]{2,}[-=_+|\s]*")
"""A line of dashes below the headings, one run of them for each column."""
Gap = tuple[int, int]
"""First blank between two columns, and the first sign behind it."""


def fixed_rows(text: str) -> list[list[str]] | None:
    """The fields of each line; None where no columns show. A border that falls into a word is none in that line."""
    lines = [line.expandtabs().rstrip().replace("\f", "") for line in text.splitlines()]
    filled = [line for line in lines if line]
    gaps = _ruled(filled) or _blank_in_most(filled)
    return [_cut(line, gaps) for line in lines] if len(gaps) + 1 >= _FEWEST_COLUMNS else None


def _ruled(lines: Sequence[str]) -> list[Gap]:
    """The gaps of a line of dashes."""
    ruler = next((line for line in lines if _RULER.fullmatch(line) and len(line.split()) >= _FEWEST_COLUMNS), "")
    runs = [hit.span() for hit in re.finditer(r"[^\s+|]+", ruler)]
    return [(left[1], right[0]) for left, right in pairwise(runs)]


def _blank_in_most(lines: Sequence[str]) -> list[Gap]:
    """The gaps of two blanks and more that nearly every line of the list has, between columns that hold something."""
    if len(lines) < _FEWEST_LINES:
        return []
    usual = sorted(map(len, lines))[len(lines) // 2]
    listed = [line for line in lines if len(line) >= _LONG * usual]
    width = max(map(len, listed))
    padded = [line.ljust(width) for line in listed]
    blank = "".join(
        " " if sum(line[i] == " " for line in padded) >= _BLANK * len(padded) else "x" for i in range(width)
    )
    parts = [hit.span() for hit in re.finditer(r"x+(?: x+)*", blank)]
    held = [part for part in parts if sum(bool(line[slice(*part)].strip()) for line in padded) >= _HELD * len(padded)]
    return [(left[1], right[0]) for left, right in pairwise(held)]


def _cut(line: str, gaps: Sequence[Gap]) -> list[str]:
    """The fields, each cut in the longest blank of the line within the gap before it: headings reach beyond their values."""
    fields, first, empty = [], 0, 0
    for start, end in gaps:
        within = line[start:end].ljust(end - start)
        runs = [hit.span() for hit in re.finditer(r"\s+", within)]
        if not runs:
            empty += 1  # the text goes on over the border
            continue
        a, b = max(runs, key=lambda run: run[1] - run[0])
        fields += [line[first : start + a].strip(), *[""] * empty]
        first, empty = start + b, 0
    return [*fields, line[first:].strip(), *[""] * empty]
