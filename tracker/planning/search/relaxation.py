"""The linear programme over all options, by priced columns and the rows that bite.

It begins with the cheapest option of each window and no limit at all. What a solution overruns comes in as a row, what
its prices make worth taking as a column; first for sums of rows (`levels`), then for the rows themselves. Any prices
give a bound over every option (`Programme.bound`), so it may stop anywhere and still have proved something.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.programme import NONE, Control, Programme
from tracker.planning.search.levels import make_levels
from tracker.planning.search.master import Master

TOLERANCES = (5e-3, 1e-5)
"""Gap between master and bound, relative, at which each level is left."""
A_ROUND, OF_WINDOW = 30, 4
"""Options of a loom, and of each of its windows, that come in at a time: each round solves the whole programme again, and
what comes in by the dozen saves half of the rounds."""
_EPS = 1e-4
_NOTHING: Floats = np.zeros(0)


@dataclass(frozen=True)
class Relaxation:
    bound: float
    """No choice of options costs less."""
    price: Floats
    """Currency per unit of each row, ≥ 0; the prices that gave the bound."""
    reduced: Floats
    """By option: what the loom costs at these prices if it takes it, less what it costs at best; ≥ 0."""
    reduced_left: Floats
    """By loom of the programme: the same for leaving it over."""
    index: Ints
    """Options that were columns."""
    share: Floats
    """How much of each of them the last solution takes, 0 to 1."""


def relax(
    programme: Programme, control: Control, tell: Callable[[float], None] = lambda bound: None
) -> Iterator[Relaxation]:
    """What is known after each level, ever nearer to the relaxation over all rows and options, until the control stops
    it."""
    master = Master(programme, make_levels(programme.instance, programme.rows), control)
    best, price = programme.bound(master.price), master.price
    rows, columns = np.zeros(0, dtype=np.int64), _best_of_windows(programme, programme.options.cost)
    columns = np.union1d(columns, programme.kept)
    for level, tolerance in enumerate(TOLERANCES):
        inside = False
        while True:
            master.add_columns(columns)
            master.add_rows(rows)
            if not master.solve(inside):
                yield priced(programme, price, master.index, master.share)
                return
            bound = programme.bound(master.price)
            if bound > best:
                best, price = bound, master.price
            tell(best)
            rows, columns = master.overrun(level), _worth_adding(programme, master)
            settled = not columns.size or master.objective - best <= tolerance * abs(master.objective)
            if settled and not rows.size:
                if inside:
                    break
                inside, best = True, -np.inf
        yield priced(programme, price, master.index, master.share)


def unpriced(programme: Programme) -> Relaxation:
    """What is known before anything is solved: each loom at its cheapest, nothing short."""
    return priced(programme, np.zeros(programme.rows.upper.size))


def priced(programme: Programme, price: Floats, index: Ints = NONE, share: Floats = _NOTHING) -> Relaxation:
    """What prices (≥ 0) of the rows say of every option; `index` and `share` are what a solution took."""
    reduced = programme.lookup.reduced(price)
    least = np.minimum(programme.left_cost, programme.least(reduced))
    return Relaxation(
        bound=programme.bound(price),
        price=price,
        reduced=reduced - least[programme.number],
        reduced_left=programme.left_cost - least,
        index=index,
        share=share,
    )


def _best_of_windows(programme: Programme, value: Floats) -> Ints:
    """The first option with the least value of each window."""
    begin = np.flatnonzero(np.diff(programme.options.window, prepend=-1))
    if not begin.size:
        return begin
    size = np.diff(np.append(begin, value.size))
    found = np.flatnonzero(value <= np.repeat(np.minimum.reduceat(value, begin), size))
    return found[np.diff(programme.options.window[found], prepend=-1) != 0]


def _worth_adding(programme: Programme, master: Master) -> Ints:
    """Options that the prices make worth taking: the best of each window, the best of these of each loom."""
    reduced = programme.lookup.reduced(master.price) - master.worth[programme.number]
    found = np.flatnonzero((reduced < -_EPS) & ~master.has)
    for group, most in ((programme.options.window, OF_WINDOW), (programme.number, A_ROUND)):
        found = _first_of_each(found, reduced, group, most)
    return np.sort(found)


def _first_of_each(options: Ints, value: Floats, group: Ints, most: int) -> Ints:
    """Of the options those with the least values of each group, so many of them."""
    options = options[np.lexsort((value[options], group[options]))]
    mine = group[options]
    return options[np.arange(options.size) - np.searchsorted(mine, mine) < most]
