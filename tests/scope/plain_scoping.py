"""Scoping without any cleverness: every row for every loom, window and combination of choices. The oracle and the baseline."""

from itertools import product

from tracker.domain.mill import Loom, Mill
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.scope.cells import parse_cell


def plain_scope(mill: Mill, loom: Loom) -> dict[WindowKind, list[tuple]]:
    """Window → (operations, kit lines, setpoints, checks, on-loom minutes, person-minutes) of each combination.

    For looms with every attribute known and methods in which every choice has an alternative.
    """
    return {kind: _contents(mill, loom, kind) for kind in WindowKind}


def _contents(mill, loom, kind):
    method, known = mill.method, loom.known() | {"window": kind.value}
    choices = {}
    for row in method.alternatives:
        choices.setdefault(fold(row.choice), []).append(row)
    found = []
    for rows in product(*choices.values()):
        here = known | {fold(row.choice): row.alternative for row in rows}
        if all(_holds(row, here) for row in rows):
            found.append(_content(mill, here))
    return found


def _holds(row, known):
    return all(parse_cell(cell).holds(known.get(fold(heading))) for heading, cell in row.conditions.items())


def _content(mill, known):
    method, factor = mill.method, 1 + mill.terms.allowance
    taken = [
        [row for row in rows if _holds(row, known)]
        for rows in (method.operations, method.kit_lines, method.setpoints, method.checks)
    ]
    longest, labour = {}, 0.0
    for row in taken[0]:
        minutes = row.minutes
        if row.minutes_low is not None and row.minutes_high is not None:
            minutes = (row.minutes_low + 4 * row.minutes + row.minutes_high) / 6
        labour += minutes * row.heads * factor
        if row.place == "on loom":
            longest[row.step] = max(longest.get(row.step, 0.0), minutes * factor)
    return (*(tuple(map(id, rows)) for rows in taken), round(sum(longest.values()), 6), round(labour, 6))
