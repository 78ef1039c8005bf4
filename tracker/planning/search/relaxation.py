"""The linear programme over all options, by priced columns and the rows that bite.

It begins with the cheapest option of each window and no limit at all. What a solution overruns comes in as a row, what
its prices make worth taking as a column; first for sums of rows (`levels`), then for the rows themselves, then with rows of
what the crews of a day can take (`days`). Any prices give a bound over every option (`Programme.bound`), so it may stop
anywhere and still have proved something.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from math import ceil

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.programme import NONE, Control, Price, Programme
from tracker.planning.search.days import CrewDays, WholeRows
from tracker.planning.search.levels import make_levels
from tracker.planning.search.master import Master

TOLERANCES = (5e-3, 1e-4)
"""Gap between master and bound, relative, at which each level is left."""
A_ROUND, OF_WINDOW = 30, 4
"""Options of a loom, and of each of its windows, that come in at a time: each round solves the whole programme again, and
what comes in by the dozen saves half of the rounds."""
LITTLE = 1e-4
"""Rows of days come in as long as they raise what the options cost by so much, relative."""
DAYS_UP_TO, COUNTED_UP_TO = 500, 200
"""Looms up to which they come in at all, and up to which those of two days on end do and it is asked how few looms could be left
over: at 1,000 looms with ten crews rows of days raise the bound by 0.02 %, for a quarter of the time."""
COUNTED = 1e-6
"""Of a loom: what a count may be off."""
_EPS = 1e-4


@dataclass(frozen=True)
class Relaxation:
    bound: float
    """No choice of options costs less."""
    price: Price
    """That gave the bound."""
    reduced: Floats
    """By option: what the loom costs at these prices if it takes it, less what it costs at best; ≥ 0."""
    reduced_left: Floats
    """By loom of the programme: the same for leaving it over."""
    scarce: Floats
    """Currency per unit of each row, by the programme's rows alone."""
    index: Ints = field(default_factory=lambda: NONE)
    """Options that were columns."""
    share: Floats = field(default_factory=lambda: np.zeros(0))
    """How much of each of them the last solution takes, 0 to 1."""
    whole: WholeRows | None = None
    """Rows found beside the programme's."""
    fewest_left: int = 0
    """No choice leaves fewer looms over."""


class _Climb:
    """The linear programme and the best bound that its prices gave so far."""

    def __init__(self, programme: Programme, control: Control, enough: Callable[[float], bool]):
        self.programme, self.enough = programme, enough
        self.master = Master(programme, make_levels(programme.instance, programme.rows), control)
        self.price = programme.nothing_asked
        self.scarce: Floats | None = None
        self.best = programme.bound(self.price, programme.options.cost)

    def settle(self, level: int, tolerance: float) -> bool:
        """Solve, and let in rows up to the level and options, until no row is overrun and the bound is within the tolerance
        (relative) of what the options cost that are in; False where that was stopped or the bound is high enough."""
        programme, master = self.programme, self.master
        master.add_rows(master.overrun(level))
        while master.solve():
            reduced = programme.reduced(master.price)
            if self._keep(programme.bound(master.price, reduced)):
                return False
            rows, columns = master.overrun(level), _worth_adding(programme, master, reduced)
            settled = not columns.size or master.objective - self.best <= tolerance * abs(master.objective)
            if settled and not rows.size:
                return True
            master.add_columns(columns)
            master.add_rows(rows)
        return False

    def from_inside(self, level: int, tolerance: float) -> bool:
        """Prices from the middle, which then are the ones that count, letting in what they ask for until the bound is within the
        tolerance; False as above."""
        self.best = -np.inf
        while self.master.from_inside():
            reduced = self.programme.reduced(self.master.price)
            if self._keep(self.programme.bound(self.master.price, reduced)):
                return False
            columns = _worth_adding(self.programme, self.master, reduced)
            if not columns.size or self.master.objective - self.best <= tolerance * abs(self.master.objective):
                return True
            self.master.add_columns(columns)
            self.master.add_rows(self.master.overrun(level))
        return False

    def _keep(self, bound: float) -> bool:
        """Whether that is enough, once what is scarce is known."""
        if bound > self.best:
            self.best, self.price = bound, self.master.price
        return self.enough(self.best) and self.scarce is not None

    def beside(self, level: int) -> bool:
        """Let in rows beside the programme's; False as above."""
        self.scarce, looms = self.price.rows, self.programme.looms.size
        if looms > DAYS_UP_TO:
            return True
        days = CrewDays(self.programme)
        if looms > COUNTED_UP_TO:
            return self._whole_rows(days, level, 1)
        return self._whole_rows(days, level, 2) and self._leave_some(level) and self._whole_rows(days, level, 2)

    def _whole_rows(self, days: CrewDays, level: int, most: int) -> bool:
        """Let in rows of days and of up to so many days on end as long as they raise what the options cost; False as above."""
        for length in range(1, most + 1):
            while len(rows := days.broken(self.master.index, self.master.share, length)):
                before = self.master.objective
                self.master.add_whole_rows(rows)
                if not self.settle(level, TOLERANCES[level]):
                    return False
                if self.master.objective - before < LITTLE * abs(before):
                    break
        return True

    def _leave_some(self, level: int) -> bool:
        """Ask how few looms could be left over, and hold that every choice leaves a whole number of them; False as above."""
        programme, master = self.programme, self.master
        master.count(True)
        fewest = -np.inf
        while master.solve():
            reduced = programme.reduced(master.price) - programme.options.cost
            fewest = max(fewest, programme.paid(master.price, reduced, np.ones(master.looms)))
            rows, columns = master.overrun(level), _worth_adding(programme, master, reduced, COUNTED)
            if ceil(fewest - COUNTED) >= ceil(master.objective - COUNTED) or not (rows.size or columns.size):
                break
            master.add_columns(columns)
            master.add_rows(rows)
        else:
            return False
        master.count(False)
        master.leave_at_least(max(0, ceil(fewest - COUNTED)))
        return self.settle(level, TOLERANCES[level])

    def known(self) -> Relaxation:
        master = self.master
        return replace(
            priced(self.programme, self.price),
            index=master.index,
            share=master.share,
            scarce=self.price.rows if self.scarce is None else self.scarce,
            whole=master.whole,
            fewest_left=master.fewest_left,
        )


def relax(
    programme: Programme, control: Control, enough: Callable[[float], bool] = lambda bound: False
) -> Iterator[Relaxation]:
    """What is known after each level, the last one with the rows beside the programme's, ever nearer to the least cost, until the
    control stops it or what is scarce is known and the bound is `enough`."""
    climb = _Climb(programme, control, enough)
    climb.master.add_columns(np.union1d(_best_of_windows(programme, programme.options.cost), programme.kept))
    done, last = True, len(TOLERANCES) - 1
    for level, tolerance in enumerate(TOLERANCES):
        done = climb.settle(level, tolerance) and (level < last or climb.beside(last))
        done = done and climb.from_inside(level, tolerance)
        yield climb.known()
        if not done:
            return


def unpriced(programme: Programme) -> Relaxation:
    """What is known before anything is solved: each loom at its cheapest, nothing short."""
    return priced(programme, programme.nothing_asked)


def priced(programme: Programme, price: Price) -> Relaxation:
    """What prices say of every option of a programme with these options, whatever they cost."""
    reduced = programme.reduced(price)
    left = programme.left_cost - price.leaving
    least = np.minimum(left, programme.least(reduced))
    bound = programme.bound(price, reduced)
    return Relaxation(bound, price, reduced - least[programme.number], left - least, price.rows)


def _best_of_windows(programme: Programme, value: Floats) -> Ints:
    """The first option with the least value of each window."""
    begin = np.flatnonzero(np.diff(programme.options.window, prepend=-1))
    if not begin.size:
        return begin
    size = np.diff(np.append(begin, value.size))
    found = np.flatnonzero(value <= np.repeat(np.minimum.reduceat(value, begin), size))
    return found[np.diff(programme.options.window[found], prepend=-1) != 0]


def _worth_adding(programme: Programme, master: Master, reduced: Floats, worth: float = _EPS) -> Ints:
    """Options that the prices make worth taking: the best of each window, the best of these of each loom."""
    saved = reduced - master.worth[programme.number]
    found = np.flatnonzero((saved < -worth) & ~master.has)
    for group, most in ((programme.options.window, OF_WINDOW), (programme.number, A_ROUND)):
        found = _first_of_each(found, saved, group, most)
    return np.sort(found)


def _first_of_each(options: Ints, value: Floats, group: Ints, most: int) -> Ints:
    """Of the options those with the least values of each group, so many of them."""
    options = options[np.lexsort((value[options], group[options]))]
    mine = group[options]
    return options[np.arange(options.size) - np.searchsorted(mine, mine) < most]
