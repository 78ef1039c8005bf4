"""What stands beside a list behind an empty column: more of its columns, or something else, such as a legend of its codes."""

from collections.abc import Sequence

from tracker.intake.vocabulary.dictionary import tokens, vocabulary
from tracker.office.sheet import Sheet

_LOOK = 500
"""Rows below a heading that tell."""
_LEGEND = 0.7
"""Share of the list's rows that a legend reaches at most."""


def goes_with(
    sheet: Sheet, main: Sequence[int], other: Sequence[int], bottom: int, has_fields: bool, headed_again: bool
) -> bool:
    """Are the columns behind a gap filled where the table is, and only there? Where they are fields that the table lacks
    (`has_fields`), they may go on in lines between its rows. With a heading of the table again (`headed_again`), or with a line
    that sums up, they are a table of their own."""
    if headed_again or _sums_up(sheet, other[0], bottom):
        return False
    both = only_main = only_other = 0
    for row in range(bottom + 1, min(len(sheet.rows), bottom + 1 + _LOOK)):
        here = sum(sheet.value(row, c) is not None for c in main) >= min(2, len(main))
        there = any(sheet.value(row, c) is not None for c in other)
        both, only_main, only_other = both + (here and there), only_main + (here > there), only_other + (there > here)
    if both + only_other == 0:
        return True
    return (
        both >= 0.4 * (both + only_main)
        and (has_fields or only_other <= 0.1 * (both + 1))
        and not is_legend(sheet, main, other, bottom)
    )


def _sums_up(sheet: Sheet, column: int, bottom: int) -> bool:
    totals = vocabulary().words["total"]
    values = (sheet.value(row, column) for row in range(bottom + 1, min(len(sheet.rows), bottom + 1 + _LOOK)))
    return any(isinstance(value, str) and " ".join(tokens(value)) in totals for value in values)


def without_legend(sheet: Sheet, columns: Sequence[int], bottom: int) -> list[int]:
    """The columns of a table but for its last two or three where these are a legend that no empty column parts from it."""
    for size in (2, 3):
        if len(columns) > size + 2 and is_legend(sheet, columns[:-size], columns[-size:], bottom):
            return [*columns[:-size]]
    return [*columns]


def is_legend(sheet: Sheet, main: Sequence[int], other: Sequence[int], bottom: int) -> bool:
    """Does the first of the columns list words of the list once each, from its first row on and long before its last? A column
    alone does where all are such words, as loom numbers are."""
    rows = range(bottom + 1, min(len(sheet.rows), bottom + 1 + _LOOK))
    listed = [row for row in rows if any(sheet.value(row, c) is not None for c in other)]
    if not listed:
        return False
    of_list = [row for row in rows if sum(sheet.value(row, c) is not None for c in main) > len(main) / 2]
    if (
        len(listed) < (2 if len(other) < 2 else 1)
        or len(listed) > _LEGEND * len(of_list)
        or listed != list(range(bottom + 1, bottom + 1 + len(listed)))
    ):
        return False
    words = [str(sheet.value(row, other[0])) for row in listed]
    known = {str(value) for row in of_list for c in main if (value := sheet.value(row, c)) is not None}
    share = 1 if len(other) < 2 else 0.5
    return len(set(words)) == len(words) and sum(word in known for word in words) >= share * len(words)
