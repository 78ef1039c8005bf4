"""Of the plans that cost the same within the gap, one that leaves published bookings where they are (MODEL.md, section 7)."""

from dataclasses import dataclass, replace

import numpy as np

from tracker.domain.plan import Undo
from tracker.planning.model.grid import Bools, Ints
from tracker.planning.model.lookup import Lookup
from tracker.planning.model.options import stays
from tracker.planning.model.programme import LEFT, Control, Programme
from tracker.planning.search.incumbent import Incumbent, as_published
from tracker.planning.search.integer import Effort, Task, solve
from tracker.planning.search.neighbourhood import Neighbourhood, sweep
from tracker.planning.search.relaxation import Relaxation, priced
from tracker.planning.search.solver import MOST_LOOMS, Solution
from tracker.planning.search.undoing import undo

PRICES = (8, 2, 1)
"""Times what may be spent on each move given up; the dearer are tried first, since the first that spends no more is taken."""
PER_LOOM = 8
"""Options a loom that the integer programme over all looms may have."""
PASSES = 2
"""Over the moves that are left, each by itself; what is put back may let another go back."""
SEARCH = Neighbourhood(24, 12, 1000)
_SAME = 1e-6
_EFFORT = Effort(gap=1e-4, nodes=200, stall=100)


@dataclass(frozen=True)
class Priced:
    """The programme when some options cost more than the terms say."""

    programme: Programme
    relaxation: Relaxation


def settle(
    programme: Programme, solution: Solution, fixed: float, control: Control
) -> tuple[Solution, tuple[Undo, ...]]:
    """A choice that leaves published bookings where they are, and what it would take to leave the others there.

    `fixed` is what is decided elsewhere, which counts towards the gap, too.
    """
    if not solution.chosen.size:
        return solution, ()
    control.tell("stay", solution.cost, solution.bound)
    solution = _calmest(programme, solution, fixed, control)
    return _one_by_one(programme, solution, ceiling(solution, fixed, control.gap), control)


def _one_by_one(
    programme: Programme, solution: Solution, most: float, control: Control
) -> tuple[Solution, tuple[Undo, ...]]:
    """Each move by itself is put back where what may be spent allows it and no other takes its place, or it costs less."""
    found, relaxation = _incumbent(programme, solution.chosen), priced(programme, solution.price)
    told: list[Undo] = []
    for _ in range(PASSES):
        told = []
        for undone in undo(found, relaxation, control):
            control.tell("price", programme.cost(found.chosen), solution.bound)
            chosen = found.chosen.copy()
            if undone.says.costs is not None:
                chosen[undone.looms] = undone.chosen
            more = _moves(programme, chosen) - _moves(programme, found.chosen)
            gains = programme.cost(found.chosen) - programme.cost(chosen)
            if (gains > _SAME and more <= 0) or (more < 0 and programme.cost(chosen) <= most):
                found.move(undone.looms, undone.chosen)
            else:
                instead = more + 1 if more >= 0 and undone.says.costs is not None else None
                told.append(replace(undone.says, instead=instead))
        if programme.cost(found.chosen) == solution.cost:
            break
        solution = replace(solution, chosen=found.chosen.copy(), cost=programme.cost(found.chosen))
    return solution, tuple(told)


def _incumbent(programme: Programme, chosen: Ints) -> Incumbent:
    return Incumbent(programme, chosen.copy(), programme.used(chosen[chosen != LEFT]))


def _calmest(programme: Programme, solution: Solution, fixed: float, control: Control) -> Solution:
    """A choice that moves fewer published bookings and is as good within the control's gap; the one given where none is found.

    With a price μ on each move beyond what the terms ask, the cheapest choice costs at most μ × (moves given up) more than
    before. So μ = what may be spent / the moves that could be given up never spends too much; a higher one often does not.
    """
    most, moves = ceiling(solution, fixed, control.gap), _moves(programme, solution.chosen)
    could_go = moves - _moves(programme, as_published(programme, priced(programme, solution.price)).chosen)
    for factor in PRICES if could_go > 0 and most > solution.cost else ():
        if control.over():
            break
        price = factor * (most - solution.cost) / could_go
        chosen = choice_at(_with_price(programme, solution, price), solution.chosen, control)
        if (cost := programme.cost(chosen)) <= most and _moves(programme, chosen) < moves:
            return replace(solution, chosen=chosen, cost=cost)
    return solution


def ceiling(solution: Solution, fixed: float, gap: float) -> float:
    """What a choice may cost to be as good within the gap: proven within it where that one is, else within it of that one."""
    proven = (solution.bound + fixed) / (1 - gap) - fixed
    return proven if solution.cost <= proven else solution.cost + gap * (solution.cost + fixed)


def _moves(programme: Programme, chosen: Ints) -> int:
    """Published bookings that a choice moves, of the programme's looms."""
    kept = stays(programme.instance, programme.options)[np.maximum(chosen, 0)] & (chosen != LEFT)
    return int((programme.instance.previous.booked[programme.looms] & ~kept).sum())


def _with_price(programme: Programme, solution: Solution, price: float) -> Priced:
    instance, options = programme.instance, programme.options
    booked = instance.previous.booked
    moves: Bools = booked[options.loom] & ~stays(instance, options)
    instance = replace(instance, left_cost=instance.left_cost + price * booked)
    options = replace(options, cost=options.cost + price * moves)
    dearer = replace(programme, instance=instance, options=options, lookup=Lookup(instance, programme.rows, options))
    return Priced(dearer, priced(dearer, solution.price))


def choice_at(asked: Priced, chosen: Ints, control: Control) -> Ints:
    """The best choice found at those prices, from the one that was found without them and from what was published."""
    programme, relaxation = asked.programme, asked.relaxation
    best = min(_incumbent(programme, chosen), as_published(programme, relaxation), key=lambda found: found.cost)
    looms = np.arange(programme.looms.size)
    if looms.size <= MOST_LOOMS:
        promising = np.sort(np.argsort(relaxation.reduced, kind="stable")[: PER_LOOM * looms.size])
        within = np.union1d(promising, best.chosen[best.chosen != LEFT])
        answer = solve(programme, Task(looms, within, np.zeros(programme.rows.upper.size)), _EFFORT, control)
        if answer.chosen is not None and answer.cost < best.cost:
            best.move(looms, answer.chosen)
    else:
        for _ in sweep(best, relaxation, 0.0, SEARCH, control):
            pass
    return best.chosen
