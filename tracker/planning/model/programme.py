"""What is to be decided: one option or left over per loom, within the rows."""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from math import inf

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.lookup import Lookup
from tracker.planning.model.options import Options
from tracker.planning.model.rows import Rows, make_rows

NONE: Ints = np.zeros(0, dtype=np.int64)
LEFT = -1
"""Stands for `left over` where an option number is asked for."""


@dataclass(frozen=True)
class Price:
    """What a choice pays beside what its options cost by themselves, in currency and ≥ 0; any price gives a bound."""

    rows: Floats
    """Of one unit of each row."""
    toll: Floats
    """By option, for the rows beside the programme's that every choice keeps (`search.days`)."""
    leaving: float = 0.0
    """What comes back for each loom left over, where at least so many have to be."""
    fetched: float = 0.0
    """What all that those rows allow would fetch, less what comes back at least."""


@dataclass(frozen=True)
class Programme:
    """Looms with options, the options and the rows. Loom numbers are those of the instance."""

    instance: Instance
    rows: Rows
    options: Options
    lookup: Lookup
    looms: Ints
    """Looms that have an option, in order."""
    first: Ints
    """Where the options of each of them begin; shape (looms + 1,)."""
    kept: Ints
    """Options, one a loom, that can all be taken together and keep as many published bookings as asked for."""

    @cached_property
    def left_cost(self) -> Floats:
        """By loom of `looms`."""
        return self.instance.left_cost[self.looms]

    @cached_property
    def number(self) -> Ints:
        """By option: which of `looms` it belongs to."""
        return np.repeat(np.arange(self.looms.size), np.diff(self.first))

    def options_of(self, number: int) -> Ints:
        """The options of one of `looms`."""
        return np.arange(int(self.first[number]), int(self.first[number + 1]))

    def least(self, values: Floats) -> Floats:
        """The least of a value by option, for each loom; shape (looms,)."""
        return np.minimum.reduceat(values, self.first[:-1]) if self.looms.size else np.zeros(0)

    @cached_property
    def nothing_asked(self) -> Price:
        """Nothing has a price."""
        return Price(np.zeros(self.rows.upper.size), np.zeros(len(self.options)))

    def reduced(self, price: Price) -> Floats:
        """What each option costs at these prices; shape (options,)."""
        return self.lookup.reduced(price.rows) + price.toll

    def bound(self, price: Price, reduced: Floats) -> float:
        """No plan costs less, whatever the prices: what the looms would cost if they paid for what they take (`reduced`, what
        `reduced` gives), less what all there is would fetch."""
        return self.paid(price, reduced, self.left_cost)

    def paid(self, price: Price, reduced: Floats, left: Floats) -> float:
        """The same where the options cost `reduced` at these prices and leaving looms over costs `left` without them."""
        paid = np.minimum(left - price.leaving, self.least(reduced))
        return float(paid.sum() - price.rows @ self.rows.upper - self._lent(price.rows).sum() - price.fetched)

    def _lent(self, price: Floats) -> Floats:
        """What lending brings in beyond what the lender's row asks for it."""
        borrowers = np.flatnonzero(self.rows.lender >= 0)
        lender = self.rows.lender[borrowers]
        return np.maximum(0.0, price[borrowers] - price[lender]) * self.rows.upper[lender]

    def cost(self, chosen: Ints) -> float:
        """What a choice costs; `chosen` (looms,) holds option numbers or LEFT."""
        taken = chosen >= 0
        return float(self.options.cost[chosen[taken]].sum() + self.left_cost[~taken].sum())

    def used(self, index: Ints) -> Floats:
        """What the options at `index` take of each row."""
        _, row, value = self.lookup.entries(index)
        return np.bincount(row, value, minlength=self.rows.upper.size).astype(float, copy=False)


def make_programme(instance: Instance, options: Options, kept: Ints = NONE, at_least: int = 0) -> Programme:
    """`at_least` so many published bookings are to be kept, as the options `kept` do."""
    rows = make_rows(instance, at_least)
    looms, first = np.unique(options.loom, return_index=True)
    first = np.append(first, len(options)).astype(np.int64)
    return Programme(instance, rows, options, Lookup(instance, rows, options), looms, first, kept)


@dataclass(frozen=True)
class Control:
    """When to stop, and whom to tell."""

    gap: float = 0.0
    """Relative gap at which a plan is called optimal."""
    seed: int = 0
    left_s: Callable[[], float] = lambda: inf
    """Seconds until the time limit."""
    stop: Callable[[], bool] = lambda: False
    """True once the user wants the best plan so far."""
    tell: Callable[[str, float, float], None] = lambda what, cost, bound: None
    """(what is being done, cost of the best plan or of the relaxation, bound so far)."""
    interrupts: list[bool] = field(default_factory=list)
    """Shared with copies: holds something after a Ctrl-C."""

    def over(self) -> bool:
        """Whether the time limit has struck or the user wants to stop."""
        return bool(self.interrupts) or self.left_s() <= 0 or self.stop()

    def interrupt(self) -> None:
        """Remember a Ctrl-C that came where no exception may pass: inside the solver."""
        self.interrupts.append(True)
