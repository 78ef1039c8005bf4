"""All ways to take footprints of days on end together, and the tightest row that every one of them keeps."""

import numpy as np

from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.search.highs import INF, small

MOST_WAYS = 20_000
"""That are listed of one day."""
MOST_DENOMINATOR = 60
"""Of the amounts of a row, which are made whole numbers."""
WORTH = 1.01
"""A row is worth having where shares take so much of what it allows."""
MOST_STEPS = 200
"""After which a row that is still broken by some way is given up."""
_EPS = 1e-7


class Ways:
    """Those of each day that agree on what both of two days on end have. `counts`, one array a day, shape (ways of the day,
    footprints); `there`, which footprints hold anything on each day, shape (footprints, days)."""

    def __init__(self, counts: list[Ints], there: Bools):
        self._counts = counts
        self._first = [there[:, i] & ~there[:, :i].any(axis=1) for i in range(len(counts))]
        """Which footprints are counted on each day, so that each is counted once."""
        self._after: list[Ints] = []
        self._before: list[Ints] = []
        """By way, the number of what it has of the day after, and of the day before."""
        for i in range(len(counts) - 1):
            both = there[:, i] & there[:, i + 1]
            had = np.concatenate([counts[i][:, both], counts[i + 1][:, both]])
            number = (
                np.unique(had, axis=0, return_inverse=True)[1] if both.any() else np.zeros(len(had), dtype=np.int64)
            )
            self._after.append(number[: len(counts[i])])
            self._before.append(number[len(counts[i]) :])

    def most(self, amount: Floats) -> tuple[float, Floats]:
        """What the way takes that takes most, by amounts ≥ 0 of the footprints, and how often it takes each of them."""
        value = self._counts[0] @ (amount * self._first[0])
        came: list[Ints] = []
        for after, before, counts, first in zip(
            self._after, self._before, self._counts[1:], self._first[1:], strict=True
        ):
            order = np.argsort(value, kind="stable")
            best = np.full(int(max(after.max(), before.max())) + 1, -1)
            best[after[order]] = order
            came.append(best[before])
            value = counts @ (amount * first) + np.append(value, -np.inf)[came[-1]]
        at = int(np.argmax(value))
        most, way = float(value[at]), np.zeros(amount.size)
        for i in range(len(self._counts) - 1, -1, -1):
            way += self._counts[i][at] * self._first[i]
            at = int(came[i - 1][at]) if i else 0
        return most, way


def ways_of_day(slots: Ints, limit: Ints) -> Ints | None:
    """All ways to take footprints of one day together, each a row of counts; None where there are too many.

    `slots`: what each footprint holds, shape (footprints, slots of the day), each something; `limit`: what there is.
    """
    counts, free = np.zeros((1, len(slots)), dtype=slots.dtype), limit[None, :].copy()
    for i, held in enumerate(slots):
        more, left = [counts], [free]
        while True:
            fits = (left[-1] >= held).all(axis=1)
            if not fits.any():
                break
            once_more = more[-1][fits]
            once_more[:, i] += 1
            more.append(once_more)
            left.append(left[-1][fits] - held)
            if sum(map(len, more)) > MOST_WAYS:
                return None
        counts, free = np.concatenate(more), np.concatenate(left)
    return counts


def tightest(ways: Ways, share: Floats) -> tuple[Floats, float] | None:
    """A row, as whole amounts of the footprints and what the way takes that takes most, that these shares of the footprints
    overrun most for what it allows; None where that is not worth a row.

    The linear programme: most share @ amount, no way taking more than 1; of the ways those that bite come in one by one.
    """
    solver = small()
    solver.addVars(share.size, np.zeros(share.size), np.ones(share.size))
    solver.changeColsCost(share.size, np.arange(share.size, dtype=np.int32), (-share).astype(float))
    amount = np.ones(share.size)
    for _ in range(MOST_STEPS):
        if amount @ share < WORTH:
            return None
        most, way = ways.most(amount)
        if most <= 1 + _EPS:
            break
        at = np.flatnonzero(way)
        solver.addRow(-INF, 1.0, at.size, at.astype(np.int32), way[at].astype(float))
        solver.run()
        amount = np.array(solver.getSolution().col_value)
    whole = _whole(amount)
    if whole is None:
        return None
    allowed = ways.most(whole)[0]
    return (whole, allowed) if whole @ share >= WORTH * allowed else None


def _whole(amount: Floats) -> Floats | None:
    """The same amounts as whole numbers; None where they have no small common denominator."""
    for times in range(1, MOST_DENOMINATOR + 1):
        whole = np.round(amount * times)
        if np.all(np.abs(amount * times - whole) < 1e-5):
            return whole
    return None
