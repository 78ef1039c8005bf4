"""Sums of neighbouring rows. They hold wherever the rows do, and there are few of them: a linear programme that begins
with them and comes to the rows themselves step by step is solved many times sooner."""

from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_array, vstack

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.rows import Rows

SIZES = (0, 1)
"""Neighbouring slots that are summed up at each level; 0 = all of a day among which the limit stays the same. Levels
between these two cost more than they save."""


@dataclass(frozen=True)
class Levels:
    """`sums @ used <= upper`, level after level; the last level is the rows themselves, slot by slot."""

    sums: csr_array
    upper: Floats
    edges: Ints
    """First row of each level; shape (levels + 1,)."""


def make_levels(instance: Instance, rows: Rows) -> Levels:
    """All levels. The rows of parts stand in the first level as they are."""
    days = np.array([instance.grid.day_start(day) for day in instance.grid.days()])
    levels = [_level(rows, days, size, with_parts=i == 0) for i, size in enumerate(SIZES)]
    sums = csr_array(vstack(levels, format="csr"))
    return Levels(sums, sums @ rows.upper, np.cumsum([0, *(level.indptr.size - 1 for level in levels)]))


def _level(rows: Rows, days: Ints, size: int, with_parts: bool) -> csr_array:
    member: list[Ints] = []
    ids: list[Ints] = []
    count = 0
    for b in range(rows.pools if not with_parts else len(rows.blocks)):
        mine = np.arange(rows.base[b], rows.base[b + 1])
        group = _groups(rows, b, mine, days, size) if b < rows.pools else np.arange(mine.size)
        member.append(count + group)
        ids.append(mine)
        count += int(group.max(initial=-1)) + 1
    row, column = np.concatenate(member), np.concatenate(ids)
    return csr_array((np.ones(row.size), (row, column)), shape=(count, rows.upper.size))


def _groups(rows: Rows, block: int, mine: Ints, days: Ints, size: int) -> Ints:
    """The group of each row of a pool: neighbours of one hall and day with the same limit, `size` at a time."""
    hall, slot = rows.blocks[block].hall, rows.blocks[block].slot
    order = np.lexsort((slot, hall))
    keys = np.stack([hall[order], np.searchsorted(days, slot[order], side="right"), rows.upper[mine][order]])
    new = np.concatenate([[True], (np.diff(keys, axis=1) != 0).any(axis=0)])
    run = np.cumsum(new) - 1
    rank = np.arange(run.size) - np.flatnonzero(new)[run]
    lump = run * 1000 + (rank // size if size else 0)
    group = np.empty(run.size, dtype=np.int64)
    group[order] = np.unique(lump, return_inverse=True)[1]
    return group
