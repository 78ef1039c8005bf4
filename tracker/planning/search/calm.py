"""The fewest moves that any plan needs, and the programme of the plans that move only so many more (MODEL.md, section 7)."""

from dataclasses import dataclass, replace
from math import ceil

import numpy as np

from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Options, stays
from tracker.planning.model.programme import NONE, Control, Programme, make_programme
from tracker.planning.search.incumbent import as_published
from tracker.planning.search.integer import Effort, Task, solve
from tracker.planning.search.relaxation import unpriced

_PROOF = Effort(gap=0.0, nodes=100_000, stall=100_000)


@dataclass(frozen=True)
class Calm:
    """How many of the published bookings that are still to be decided can stay."""

    kept: Ints
    """Options that keep as many of them as were found to stay together, one a loom."""
    most: int
    """No plan keeps more."""

    def programme(self, instance: Instance, options: Options, more: int) -> Programme:
        """All choices that give up at most `more` bookings beyond those that cannot stay together."""
        at_least = self.kept.size - more
        return (
            make_programme(instance, options, self.kept, at_least)
            if at_least > 0
            else make_programme(instance, options)
        )


def most_kept(instance: Instance, options: Options, control: Control) -> Calm:
    """Solve for the most bookings that stay: every option but those where they are is left out, and each loom that does not
    get its own costs one."""
    mask = stays(instance, options)
    if not mask.any():
        return Calm(NONE, 0)
    counted = replace(instance, left_cost=np.ones(len(instance.looms)))
    alone = options.only(mask)
    programme = make_programme(counted, replace(alone, cost=np.zeros(len(alone))))
    chosen, bound = as_published(programme, unpriced(programme)).chosen, 0.0
    looms = programme.looms.size
    if np.count_nonzero(chosen >= 0) < looms:
        task = Task(np.arange(looms), np.arange(len(alone)), np.zeros(programme.rows.upper.size))
        answer = solve(programme, task, _PROOF, control)
        bound = max(bound, answer.bound)
        if answer.chosen is not None and np.count_nonzero(answer.chosen >= 0) > np.count_nonzero(chosen >= 0):
            chosen = answer.chosen
    kept = np.flatnonzero(mask)[chosen[chosen >= 0]]
    return Calm(kept, max(kept.size, looms - ceil(bound - 1e-6)))
