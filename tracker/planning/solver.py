"""From the programme to a choice and its proof: relaxation, a good start, neighbourhoods, integer programme."""

from dataclasses import dataclass

import numpy as np

from tracker.planning.grid import Floats, Ints
from tracker.planning.incumbent import Incumbent, greedy, nothing_booked
from tracker.planning.integer import Effort, Task, solve
from tracker.planning.neighbourhood import Search, sweep
from tracker.planning.programme import Control, Programme
from tracker.planning.relaxation import Relaxation, relax

SEARCHES = (Search(24, 12, 1000), Search(24, 24, 2000), Search(32, 32, 4000))
"""Tried one after the other, each until a sweep gains little."""
FIRST = Search(24, 12, 600)
"""While the relaxation is still being solved."""
MOST_SWEEPS = 12
"""Of one kind of search."""
LITTLE = 0.02
"""A sweep gains little when it closes less than this share of the gap."""
SHIFT = 0.382
"""The edges of the neighbourhoods move on by this share from sweep to sweep."""
SIZES = (3_000, 6_000, 12_000)
"""Options that an integer programme over all looms may have; beyond the last one it is not tried."""
MARGIN = 1.02
"""Options are taken in up to a little more than the reduced cost that the proof needs."""
MOST_LOOMS = 200
"""Looms up to which it is tried."""


@dataclass(frozen=True)
class Solution:
    chosen: Ints
    """By loom of the programme: its option, or LEFT."""
    cost: float
    bound: float
    """No choice costs less."""
    price: Floats
    """Of one more unit of each row, by the relaxation."""


def optimise(programme: Programme, control: Control) -> Solution:
    """The best choice found within the control's limits, and the bound."""
    search = _Search(programme, control)
    if programme.looms.size:
        search.run()
    price = search.relaxation.price if search.relaxation else np.zeros(programme.rows.upper.size)
    return Solution(search.best.chosen, search.best.cost, min(search.bound, search.best.cost), price)


class _Search:
    """The best choice so far and what is proved about it."""

    def __init__(self, programme: Programme, control: Control):
        self.programme, self.control = programme, control
        self.best: Incumbent = nothing_booked(programme)
        self.bound = -np.inf if programme.looms.size else 0.0
        self.relaxation: Relaxation | None = None

    @property
    def done(self) -> bool:
        return self.gap <= self.control.gap or self.control.over()

    @property
    def gap(self) -> float:
        return (self.best.cost - self.bound) / self.best.cost if self.best.cost > 0 else 0.0

    def run(self) -> None:
        for i, relaxation in enumerate(relax(self.programme, self.control)):
            self.relaxation = relaxation
            self.bound = max(self.bound, relaxation.bound)
            self._start_from(relaxation)
            if i == 0:
                self._sweep(relaxation, FIRST, 0.0)
        if self.relaxation is None or self.done:
            return
        if self.programme.looms.size <= MOST_LOOMS:
            self._prove(self.relaxation)
        for search in SEARCHES:
            self._sweeps(self.relaxation, search)

    def _start_from(self, relaxation: Relaxation) -> None:
        found = greedy(self.programme, relaxation)
        if found.cost < self.best.cost:
            self.best = found
        self._tell("start")

    def _sweeps(self, relaxation: Relaxation, search: Search) -> None:
        for i in range(MOST_SWEEPS):
            before = self.best.cost
            if self.done:
                return
            self._sweep(relaxation, search, i * SHIFT % 1)
            if before - self.best.cost < LITTLE * (before - self.bound):
                return

    def _sweep(self, relaxation: Relaxation, search: Search, shift: float) -> None:
        for _ in sweep(self.best, relaxation, shift, search, self.control):
            self._tell("search")
            if self.done:
                return

    def _prove(self, relaxation: Relaxation) -> None:
        """The integer programme over all looms and the options whose reduced cost is within the gap in play.

        Who takes an option with reduced cost above `reach` costs at least the bound + reach; so the lesser of that and
        the integer bound over the options within reach holds for all.
        """
        for most in SIZES:
            if self.done:
                return
            needed = MARGIN * (self.best.cost * (1 - self.control.gap) - relaxation.bound)
            reach = min(needed, _reach(relaxation.reduced, most))
            before = self.best.cost
            if not self._solve_within(relaxation, reach):
                return
            if reach == needed and self.best.cost == before:
                return

    def _solve_within(self, relaxation: Relaxation, reach: float) -> bool:
        looms = np.arange(self.programme.looms.size)
        within = np.flatnonzero(relaxation.reduced <= reach)
        task = Task(looms, within, np.zeros(self.programme.rows.upper.size))
        answer = solve(self.programme, task, self._effort, self.control)
        if answer is None:
            return False
        if answer.cost < self.best.cost:
            self.best.move(looms, answer.chosen)
        self.bound = max(self.bound, min(answer.bound, relaxation.bound + reach))
        self._tell("proof")
        return True

    @property
    def _effort(self) -> Effort:
        return Effort(gap=self.control.gap / 2, nodes=5_000, stall=1_000)

    def _tell(self, what: str) -> None:
        self.control.tell(what, self.best.cost, self.bound)


def _reach(reduced: Floats, most: int) -> float:
    """The reduced cost up to which there are no more than so many options."""
    return float(np.partition(reduced, most)[most]) - 1e-6 if reduced.size > most else np.inf
