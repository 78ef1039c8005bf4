"""From the programme to a choice and its proof: relaxation, a good start, neighbourhoods, integer programme."""

from contextlib import suppress
from dataclasses import dataclass, replace

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.programme import Control, Price, Programme
from tracker.planning.search.incumbent import Incumbent, as_published, calmest, greedy
from tracker.planning.search.integer import Effort, Task, solve
from tracker.planning.search.neighbourhood import ROUGHLY, Neighbourhood, sweep
from tracker.planning.search.relaxation import Relaxation, relax, unpriced

FIRST = Neighbourhood(24, 12, 1000)
WIDER = (Neighbourhood(60, 200, 3000, ROUGHLY), Neighbourhood(100, 300, 6000, ROUGHLY))
"""Kinds of search, tried one after the other until a sweep gains little: what is left of the gap are looms left over that would fit
in if dozens made room."""
WIDEST = (Neighbourhood(100, 200, 5000, ROUGHLY),)
"""Instead of these where looms are more than `MOST_WIDER`: a week has so many that the first of them gains half for the time."""
MOST_WIDER = 500
MOST_SWEEPS = 8
"""Of one kind of search."""
LITTLE = 0.04
"""A sweep gains little when it closes less than this share of the gap."""
SHIFT = 0.382
"""The edges of the neighbourhoods move on by this share from sweep to sweep."""
PER_LOOM = (20, 50)
"""Options a loom that the integer programme over all looms may have while it looks for a better plan."""
MOST_PROVED = 40_000
"""Options over which it may have to prove that there is none."""
MARGIN = 1.02
"""Options are taken in up to a little more than the reduced cost that the proof needs."""
MOST_LOOMS = 200
"""Looms up to which it is tried."""
SMALL = Neighbourhood(16, 8, 400, Effort(gap=1e-3, nodes=20, stall=20))
SMALL_SWEEPS = 3
"""Of a search that has a second or two and begins with what was published."""
LIGHT_SWEEPS = 3
"""Of the first kind of search, where the relaxation is whole and nothing else is tried."""
_PROOF = Effort(gap=0.0, nodes=500, stall=500, heuristics=0.0)
_ROUNDING = 1e-9


@dataclass(frozen=True)
class Solution:
    chosen: Ints
    """By loom of the programme: its option, or LEFT."""
    cost: float
    bound: float
    """No choice costs less."""
    price: Price
    """That the relaxation found."""
    scarce: Floats
    """Currency for one more unit of each row, by the relaxation over the programme's rows alone."""


def optimise(programme: Programme, control: Control) -> Solution:
    """The best choice found within the control's limits, and the bound."""
    search = _Search(programme, control)
    if programme.looms.size:
        search.run()
    best = search.best
    return Solution(
        best.chosen, best.cost, min(search.bound, best.cost), search.relaxation.price, search.relaxation.scarce
    )


def renewed(programme: Programme, control: Control) -> Solution:
    """A good choice that begins with what was published, soon: what the first level of the relaxation says, and a few sweeps."""
    if not programme.looms.size:
        return optimise(programme, control)
    relaxation = next(relax(programme, control))
    best = as_published(programme, relaxation)
    for i in range(SMALL_SWEEPS):
        for _ in sweep(best, relaxation, i * SHIFT % 1, SMALL, control):
            pass
    return Solution(best.chosen, best.cost, min(relaxation.bound, best.cost), relaxation.price, relaxation.scarce)


def lightly(programme: Programme, control: Control) -> Solution:
    """A choice by the whole relaxation and a few sweeps from where it says to begin, without the search that takes most of the time
    of many looms; the bound is that of the relaxation."""
    if not programme.looms.size:
        return optimise(programme, control)
    relaxation = unpriced(programme)
    best = as_published(programme, relaxation)
    for relaxation in relax(programme, control):
        start = greedy(programme, relaxation)
        best = start if start.calm and start.cost < best.cost else best
    for i in range(LIGHT_SWEEPS):
        for _ in sweep(best, relaxation, i * SHIFT % 1, FIRST, control):
            pass
    return Solution(best.chosen, best.cost, min(relaxation.bound, best.cost), relaxation.price, relaxation.scarce)


class _Search:
    """The best choice so far and what is proved about it."""

    def __init__(self, programme: Programme, control: Control):
        self.programme, self.control = programme, control
        free = unpriced(programme)
        self.best: Incumbent = as_published(programme, free)
        self.bound = free.bound
        self.relaxation: Relaxation = free
        self._replans = bool(programme.instance.previous.booked[programme.looms].any())

    @property
    def done(self) -> bool:
        return self.gap <= self.control.gap or self.control.over()

    @property
    def gap(self) -> float:
        return (self.best.cost - self.bound) / self.best.cost if self.best.cost > 0 else 0.0

    def run(self) -> None:
        """An interrupt ends the search as the time limit does: with the best so far."""
        with suppress(KeyboardInterrupt):
            self._relax()
            if self.done:
                return
            self._sweep(self.relaxation, FIRST, 0.0)
            if self.programme.looms.size <= MOST_LOOMS:
                self._whole(self.relaxation)
            else:
                self._sweeps(self.relaxation)

    def _relax(self) -> None:
        for relaxation in relax(self.programme, self.control, self._enough):
            self.relaxation = relaxation
            if not self._enough(relaxation.bound):
                self._start_from(relaxation)

    def _start_from(self, relaxation: Relaxation) -> None:
        starts = [greedy] if self.programme.rows.kept < 0 else [greedy, calmest]
        for found in (start(self.programme, relaxation) for start in starts):
            if found.calm and found.cost < self.best.cost:
                self.best = found
        self._tell("start")

    def _sweeps(self, relaxation: Relaxation) -> None:
        for search in WIDER if self.programme.looms.size <= MOST_WIDER else WIDEST:
            for i in range(MOST_SWEEPS):
                before = self.best.cost
                if self.done:
                    return
                self._sweep(relaxation, search, i * SHIFT % 1)
                if before - self.best.cost < LITTLE * (before - self.bound):
                    break

    def _sweep(self, relaxation: Relaxation, search: Neighbourhood, shift: float) -> None:
        for _ in sweep(self.best, relaxation, shift, search, self.control):
            self._tell("search")
            if self.done:
                return

    def _whole(self, relaxation: Relaxation) -> None:
        """Integer programmes over all looms: first for a better plan among the most promising options, then for the
        proof, over more of them each time."""
        for per_loom in PER_LOOM:
            if self.done:
                return
            most = per_loom * self.programme.looms.size
            self._solve_within(relaxation, _reach(relaxation.reduced, most), self._find)
            self._sweeps(relaxation)
            self._prove(relaxation)

    def _prove(self, relaxation: Relaxation) -> None:
        """Raise the bound over the options whose reduced cost is within the gap in play."""
        target = self.best.cost * (1 - self.control.gap - _ROUNDING)
        reach = MARGIN * (target - relaxation.bound)
        if not self.done and np.count_nonzero(relaxation.reduced <= reach) <= MOST_PROVED:
            self._solve_within(relaxation, reach, replace(_PROOF, target=target))

    def _solve_within(self, relaxation: Relaxation, reach: float, effort: Effort) -> None:
        """Who takes an option with reduced cost above `reach` costs at least the relaxation's bound + reach; so the
        lesser of that and the integer bound over the options within reach holds for all plans."""
        looms = np.arange(self.programme.looms.size)
        within = np.flatnonzero(relaxation.reduced <= reach)
        nothing = np.zeros(self.programme.rows.upper.size)
        task = Task(looms, within, nothing, relaxation.whole, relaxation.fewest_left)
        answer = solve(self.programme, task, effort, self.control)
        if answer.chosen is not None and answer.cost < self.best.cost:
            self.best.move(looms, answer.chosen)
        self.bound = max(self.bound, min(answer.bound, relaxation.bound + reach))
        self._tell("proof")

    @property
    def _find(self) -> Effort:
        return Effort(gap=self.control.gap / 2, nodes=5_000, stall=500)

    def _enough(self, bound: float) -> bool:
        """A replan need not look for a better plan where what was published is as good as proven; a first plan has nothing to keep,
        and the last prices often find a better one within the gap."""
        self.bound = max(self.bound, bound)
        self._tell("bound")
        return self._replans and self.gap <= self.control.gap

    def _tell(self, what: str) -> None:
        self.control.tell(what, self.best.cost, self.bound)


def _reach(reduced: Floats, most: int) -> float:
    """The reduced cost up to which there are no more than so many options."""
    return float(np.partition(reduced, most)[most]) - 1e-6 if reduced.size > most else np.inf
