"""From the options to a plan and its proof: relaxation, a greedy start, neighbourhoods, the integer programme."""

from dataclasses import dataclass

import numpy as np

from tracker.planning.grid import Floats, Ints
from tracker.planning.incumbent import Incumbent, greedy
from tracker.planning.integer import Effort, Task, solve
from tracker.planning.neighbourhood import Search, sweep
from tracker.planning.programme import LEFT, Control, Programme
from tracker.planning.relaxation import Relaxation, relax

SHIFTS = (0.0, 0.5, 0.25, 0.75)
"""Where the neighbourhoods of one sweep after the other begin."""
MOST_SWEEPS = 24
BEST_OF_LOOM = 40
"""Options of each loom, the least reduced cost first, with which the integer programme is tried before all in play."""
MOST_COLUMNS = 40_000
"""Options in play above which the whole integer programme is left to the neighbourhoods."""


@dataclass(frozen=True)
class Optimum:
    chosen: Ints
    """By loom of the programme: its option, or LEFT."""
    cost: float
    bound: float
    price: Floats
    """Of each row, from the relaxation."""
    interrupted: bool
    """The time limit struck, or the user asked for the best so far, before the gap was reached."""

    def gap(self) -> float:
        return (self.cost - self.bound) / abs(self.cost) if self.cost else 0.0


def optimise(programme: Programme, control: Control) -> Optimum:
    """The best choice found for the looms of the programme, and what none can undercut."""
    if not programme.looms.size:
        return Optimum(np.zeros(0, dtype=np.int64), 0.0, 0.0, np.zeros(programme.rows.upper.size), False)
    relaxation = relax(programme, control)
    best = greedy(programme, relaxation)
    bound = relaxation.bound
    control.tell("first plan", best.cost, bound)
    if relaxation.solved:
        _sweeps(best, relaxation, control)
        bound = _integer(best, relaxation, control)
    open_ = best.cost - bound > control.gap * abs(best.cost)
    return Optimum(best.chosen, best.cost, min(bound, best.cost), relaxation.price, open_ and control.over())


def _reached(best: Incumbent, bound: float, control: Control) -> bool:
    return best.cost - bound <= control.gap * abs(best.cost)


def _sweeps(best: Incumbent, relaxation: Relaxation, control: Control) -> None:
    """Sweep until the gap is reached or every way of laying the neighbourhoods has brought nothing."""
    idle = 0
    for number in range(MOST_SWEEPS):
        before = best.cost
        for cost in sweep(best, relaxation, SHIFTS[number % len(SHIFTS)], Search(), control):
            control.tell("better plans", cost, relaxation.bound)
            if _reached(best, relaxation.bound, control):
                return
        idle = 0 if before - best.cost > 1e-5 * abs(before) else idle + 1
        if idle == len(SHIFTS) or control.over():
            return


def _integer(best: Incumbent, relaxation: Relaxation, control: Control) -> float:
    """Solve for all looms at once, first over the most promising options, then over all that could be in a better plan;
    gives the bound that is proven."""
    for most in (BEST_OF_LOOM, None):
        if _reached(best, relaxation.bound, control) or control.over():
            return relaxation.bound
        options = _in_play(best, relaxation, most)
        if options.size > MOST_COLUMNS:
            return relaxation.bound
        control.tell("proof", best.cost, relaxation.bound)
        looms = np.arange(best.programme.looms.size)
        now = best.chosen.copy()
        task = Task(looms, options, np.zeros(best.programme.rows.upper.size))
        answer = solve(best.programme, task, Effort(gap=control.gap * 0.8, nodes=5_000, stall=2_000), control)
        if answer is None:
            return relaxation.bound
        if answer.cost < best.cost - 1e-6:
            best.move(looms, answer.chosen)
        elif best.cost < answer.cost:
            best.move(looms, now)
        if most is None:
            return max(relaxation.bound, min(answer.bound, best.cost))
    return relaxation.bound


def _in_play(best: Incumbent, relaxation: Relaxation, most: int | None) -> Ints:
    """Options whose reduced cost is below the gap, `most` a loom, and those taken now: no other can be in a cheaper plan."""
    programme = best.programme
    gap = best.cost - relaxation.bound
    found = np.flatnonzero(relaxation.reduced <= gap)
    if most is not None:
        found = found[np.lexsort((relaxation.reduced[found], programme.number[found]))]
        loom = programme.number[found]
        found = found[np.arange(found.size) - np.searchsorted(loom, loom) < most]
    return np.union1d(found, best.chosen[best.chosen != LEFT])
