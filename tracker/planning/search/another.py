"""Of the plans that cost the same within the gap, another than the one found, drawn by a seed (MODEL.md, section 8)."""

from dataclasses import replace

import numpy as np

from tracker.planning.model.lookup import Lookup
from tracker.planning.model.programme import Control, Programme
from tracker.planning.search.relaxation import priced
from tracker.planning.search.solver import Solution
from tracker.planning.search.staying import Priced, ceiling, choice_at

PRICES = (8, 4, 2, 1)
"""Times what may be spent on each loom: the most that is added to the cost of an option. The first that spends no more in all is
taken."""


def another(programme: Programme, solution: Solution, fixed: float, control: Control) -> Solution:
    """The cheapest choice found once every option costs a drawn amount more; the one given where none of those is as good within
    the gap. `fixed` is what is decided elsewhere."""
    most, looms = ceiling(solution, fixed, control.gap), programme.looms.size
    if not looms or most <= solution.cost:
        return solution
    drawn = np.random.default_rng(control.seed).random(len(programme.options))
    for factor in PRICES:
        if control.over():
            break
        dearer = _dearer(programme, solution, drawn * factor * (most - solution.cost) / looms)
        chosen = choice_at(dearer, solution.chosen, control)
        if (cost := programme.cost(chosen)) <= most:
            return replace(solution, chosen=chosen, cost=cost)
    return solution


def _dearer(programme: Programme, solution: Solution, by: np.ndarray) -> Priced:
    options = replace(programme.options, cost=programme.options.cost + by)
    dearer = replace(programme, options=options, lookup=Lookup(programme.instance, programme.rows, options))
    return Priced(dearer, priced(dearer, solution.price))
