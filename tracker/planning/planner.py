"""Make a plan: pilots first, then all other looms, at the least cost, with the proof beside it (MODEL.md)."""

import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property
from math import inf

import numpy as np

from tracker.domain.plan import (
    TOLERANCE,
    Asked,
    Booking,
    FreePlan,
    Keeping,
    LeftOver,
    OtherDate,
    Plan,
    PlanStatus,
    Undo,
)
from tracker.errors import Message, message
from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import Instance, make_instance
from tracker.planning.model.leaving import left_costs, move_cost, moved
from tracker.planning.model.options import Dropped, make_options
from tracker.planning.model.programme import LEFT, Control, Programme, make_programme
from tracker.planning.naming.named import with_names
from tracker.planning.problem import PlanningProblem
from tracker.planning.result.coming_back import taken_as_used_up
from tracker.planning.result.gone import cannot_stay
from tracker.planning.result.late_ends import pushed_past_a_shift
from tracker.planning.result.outcome import bookings_of, dates_of_held, other_dates, scarcity
from tracker.planning.result.reasons import Why, reasons_left
from tracker.planning.search.another import another
from tracker.planning.search.calm import most_kept
from tracker.planning.search.solver import Solution, lightly, optimise, renewed
from tracker.planning.search.staying import settle
from tracker.planning.settled.given import take_given
from tracker.planning.settled.held import refuse, take_held, waiting
from tracker.planning.settled.pilots import decide_pilots
from tracker.planning.settled.taking import Decided, of_options

Progress = Callable[[Message, float], None]


def plan(
    problem: PlanningProblem,
    time_limit_s: float | None = None,
    gap: float = TOLERANCE,
    progress: Progress | None = None,
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
) -> Plan:
    """Book every loom at the least cost, or leave it over.

    `gap`: relative distance to the bound at which the plan counts as optimal. `time_limit_s` and `stop` end the search
    with the best plan so far. Another `seed` than 0 draws another plan that is as good within the gap. Same problem and seed,
    same plan, unless one of them strikes. Raises DataError where the
    data cannot carry a plan.
    """
    begin = time.monotonic()
    end = inf if time_limit_s is None else begin + time_limit_s
    tell = _tell(progress, problem.mill.terms.currency)
    control = Control(gap, seed, lambda: end - time.monotonic(), stop or (lambda: False), tell)
    made = _Run(make_instance(problem), control).plan()
    if made.keeping and not control.over():
        beside = replace(control, tell=_tell(progress, problem.mill.terms.currency, beside=True))
        made = replace(made, keeping=replace(made.keeping, free=_free(problem, beside, made)))
    return with_names(replace(made, seconds=time.monotonic() - begin), problem)


def renew(problem: PlanningProblem) -> Plan:
    """The last published plan by today's data, in a second or two: what can stay is where the search begins, and a rough
    relaxation and a few neighbourhoods say what pays for its move. Limits, costs and what becomes of firm bookings are those of
    `plan`; its bound is rough, and prices of scarcity, other dates and reasons are not asked for. Same problem, same plan. Raises
    as `plan`.
    """
    return with_names(_Run(make_instance(problem), Control(), renewed).bare(), problem)


def sketch(problem: PlanningProblem) -> Plan:
    """A plan by a light search, for who compares many: the whole relaxation and a few sweeps, as many for every problem. Limits,
    costs and firm bookings are those of `plan`; its gap is a few per cent, and prices of scarcity, other dates and reasons are not
    asked for. Same problem, same plan. Raises as `plan`.
    """
    return with_names(_Run(make_instance(problem), Control(), lightly).bare(), problem)


def _free(problem: PlanningProblem, control: Control, kept: Plan) -> FreePlan:
    """The plan beside one that keeps bookings."""
    free = replace(problem, held=frozenset(), calm=None)
    made = _Run(make_instance(free), control).plan()
    gone, left = moved(free, made.bookings), {item.key for item in kept.left_over}
    books = tuple(booking.key for booking in made.bookings if booking.key in left)
    return FreePlan(made.objective, made.bound, len(gone), sum(move_cost(free, old) for old in gone), books)


def _tell(progress: Progress | None, currency: str, beside: bool = False) -> Callable[[str, float, float], None]:
    """Progress as a message; the fraction follows the gap, since nobody knows how long the rest will take. `beside`: of the plan
    that stands beside one that keeps bookings."""

    def tell(what: str, cost: float, bound: float) -> None:
        if progress:
            gap = (cost - bound) / cost if 0 < cost < inf and bound > -inf else 1.0
            known = cost if cost < inf else None
            said = message("planning-step", step=what, cost=known, currency=currency, gap=gap * 100, beside=beside)
            progress(said, min(0.99, max(0.1, 1 - gap * 20)))

    return tell


class _Run:
    """One planning run, step by step."""

    def __init__(
        self, instance: Instance, control: Control, search: Callable[[Programme, Control], Solution] = optimise
    ):
        """`search`: another than the whole one leaves moves as the terms price them, and draws no other plan by a seed."""
        self.given = take_given(instance)
        self.control = control
        firm = np.isin(np.arange(len(instance.looms)), [item.loom for item in self.given.firm])
        dear = np.array([key in instance.problem.held for key in instance.looms], dtype=bool)
        self.every = make_options(self.given.instance, firm, dear)
        held = take_held(self.given, self.every)
        refuse(instance, held.refused)
        self.opening = decide_pilots(held.instance, held.options, self.given.firm, control, held.taken)
        refuse(instance, waiting(self.opening, held))
        self.instance, self.options = self.opening.instance, self.opening.options
        self.calm = None
        if instance.problem.calm is None:
            self.programme = make_programme(self.instance, self.options)
        else:
            self.calm = most_kept(self.instance, self.options, control)
            self.programme = self.calm.programme(self.instance, self.options, instance.problem.calm)
        quiet = replace(control, tell=self._tell)
        found, whole = search(self.programme, quiet), search is optimise
        if control.seed and whole:
            found = another(self.programme, found, self._elsewhere, quiet)
        self.undoing: tuple[Undo, ...] = ()
        self.solution = found
        if instance.problem.previous and whole:
            self.solution, self.undoing = settle(self.programme, found, self._elsewhere, quiet)

    def _tell(self, what: str, cost: float, bound: float) -> None:
        """With what is decided already and what has no option, so that the cost is that of the plan."""
        self.control.tell(what, cost + self._elsewhere, bound + self._elsewhere)

    @cached_property
    def _elsewhere(self) -> float:
        decided = [item.loom for item in self.opening.decided]
        bookings = bookings_of(self.instance, self.opening.decided, self.opening.pilots)
        left = np.setdiff1d(np.arange(len(self.instance.looms)), [*decided, *self.programme.looms])
        put_off = left_costs(self.instance.problem, self.instance.problem.put_off).values()
        return sum(b.cost.total for b in bookings) + float(self.instance.left_cost[left].sum()) + sum(put_off)

    @cached_property
    def _decided(self) -> list[Decided]:
        chosen = self.solution.chosen[self.solution.chosen != LEFT]
        return [*self.opening.decided, *of_options(self.instance, self.options, chosen)]

    @cached_property
    def _why(self) -> dict[int, Why]:
        chosen = self.solution.chosen[self.solution.chosen != LEFT]
        return self._why_left({item.loom for item in self._decided}, chosen)

    def bare(self) -> Plan:
        """Bookings and looms left over; of what is told beside them only what the check asks for."""
        problem, terms = self.instance.problem, self.instance.mill.terms
        bookings = bookings_of(self.instance, self._decided, self.opening.pilots)
        left = self._left_over(self._why)
        objective = sum(b.cost.total for b in bookings) + sum(item.cost for item in left)
        bound = objective - (self.solution.cost - self.solution.bound)
        return Plan(
            status=self._status(objective, bound, bookings),
            objective=objective,
            bound=bound,
            seconds=0.0,
            currency=terms.currency,
            as_of=problem.as_of,
            horizon_end=self.instance.grid.moment(self.instance.grid.slots),
            bookings=tuple(bookings),
            left_over=tuple(left),
            reasons=tuple(self._unattended(bookings)),
            start=terms.start,
            asked=Asked(
                problem.hold_firm,
                problem.released,
                gap=self.control.gap,
                held=problem.held,
                calm=problem.calm,
                again=problem.again,
                ruled_out=problem.ruled_out,
                placed=problem.placed,
            ),
        )

    def plan(self) -> Plan:
        made = self.bare()
        bookings, used_up = made.bookings, (item.part for item in self._why.values() if item.part)
        return replace(
            made,
            prices=tuple(scarcity(self.programme, self.solution.scarce)),
            other_dates=tuple(self._other_dates(self._decided)),
            reasons=(
                *self._reckoned(made.objective, bookings),
                *self._let_go(bookings),
                *self._nothing_booked(bookings, made.left_over),
                *self._astray(bookings),
                *self._unattended(bookings),
                *pushed_past_a_shift(self.instance, self._decided),
                *taken_as_used_up(self.instance, bookings, used_up),
                *self._notes(),
            ),
            keeping=self._keeping(bookings) if self.instance.problem.keeps else None,
            undoing=(*self.undoing, *cannot_stay(self.given, self.opening, self.options, bookings)),
        )

    def _other_dates(self, decided: Sequence[Decided]) -> Iterator[OtherDate]:
        yield from other_dates(self.programme, self.solution.chosen)
        held = {self.instance.looms.index(key) for key in self.instance.problem.held if key in self.instance.looms}
        yield from dates_of_held(self.given.instance, self.every, decided, self.opening.opens, held)

    def _keeping(self, bookings: Sequence[Booking]) -> Keeping:
        """How much the plan moves, and how few moves it could have been."""
        problem = self.instance.problem
        gone = moved(problem, bookings)
        keeping = Keeping(len(gone), sum(move_cost(problem, old) for old in gone))
        if self.calm is None or problem.calm is None:
            return keeping
        settled = bookings_of(self.instance, self.opening.decided, self.opening.pilots)
        open_to_move = len(moved(problem, settled))
        most = open_to_move - self.calm.kept.size + problem.calm
        return replace(keeping, fewest=open_to_move - self.calm.most, most=most)

    def _status(self, objective: float, bound: float, bookings: Sequence[Booking]) -> PlanStatus:
        if not bookings and self._nothing_possible:
            return PlanStatus.INFEASIBLE
        if objective - bound <= self.control.gap * abs(objective) + 1e-9:
            return PlanStatus.OPTIMAL
        return PlanStatus.TIMED_OUT if self.control.over() else PlanStatus.FEASIBLE

    @property
    def _nothing_possible(self) -> bool:
        """There are looms to plan, and not one start that would only be too dear."""
        return bool(self.instance.looms) and not len(self.options) and not self.options.dropped[:, Dropped.DEARER].any()

    def _why_left(self, decided: set[int], chosen: Ints) -> dict[int, Why]:
        numbers = [i for i in range(len(self.instance.looms)) if i not in decided]
        free = self.programme.rows.free(self.programme.used(chosen))
        return reasons_left(self.programme, np.array(numbers, dtype=np.int64), free, self.opening.opens)

    def _left_over(self, why: dict[int, Why]) -> list[LeftOver]:
        instance, problem = self.instance, self.instance.problem
        left = [LeftOver(instance.looms[i], said.says, float(instance.left_cost[i])) for i, said in why.items()]
        put_off = left_costs(problem, problem.put_off)
        left += [LeftOver(key, reason, put_off[key]) for key, reason in problem.put_off.items()]
        return sorted(left, key=lambda item: item.key.sort_key)

    def _nothing_booked(self, bookings: Sequence[Booking], left: Sequence[LeftOver]) -> list[Message]:
        if bookings or not self._nothing_possible:
            return []
        whys = [str(item.why) for item in left]
        common = max(sorted(set(whys)), key=whys.count)
        why = left[whys.index(common)].why
        return [message("no-loom-booked", looms=whys.count(common), of=len(left), why=why)]

    def _reckoned(self, objective: float, bookings: Sequence[Booking]) -> Iterator[Message]:
        """What of the objective nobody pays."""
        if (reckoned := sum(booking.cost.surviving for booking in bookings)) > 0:
            currency = self.instance.mill.terms.currency
            yield message("surviving-reckoned", reckoned=reckoned, paid=objective - reckoned, currency=currency)

    def _let_go(self, bookings: Sequence[Booking]) -> Iterator[Message]:
        """Firm bookings that could not stay, and where their looms are booked now."""
        zone, now = self.instance.grid.zone, {booking.key: booking for booking in bookings}
        old_ones = sorted(self.instance.problem.previous_bookings, key=lambda b: (b.start, b.key.sort_key))
        for old in old_ones:
            if why := self.given.let_go.get(old.key):
                new = now.get(old.key)
                yield message("firm-let-go", loom=old.key, start=old.start.astimezone(zone), why=why,
                              now=new.start.astimezone(zone) if new else None)  # fmt: skip

    def _astray(self, bookings: Sequence[Booking]) -> Iterator[Message]:
        """Firm bookings that stay where their beam-outs have left them."""
        zone = self.instance.grid.zone
        for b in bookings:
            if b.key in self.given.astray:
                yield message(
                    "firm-astray", loom=b.key, number=b.key.loom, start=b.start.astimezone(zone),
                    beam_out=self.given.astray[b.key].astimezone(zone), cost=b.cost.late_beam_out + b.cost.lost_production,
                    currency=self.instance.mill.terms.currency,
                )  # fmt: skip

    def _unattended(self, bookings: Sequence[Booking]) -> Iterator[Message]:
        """Pilots with which the electrician cannot stay throughout."""
        mill, alone = self.instance.mill, {self.instance.looms[loom] for loom in self.opening.alone}
        for b in bookings:
            if b.pilot and not b.attended and b.key in alone:
                machine_type = mill.looms[b.key].machine_type
                yield message("pilot-unattended", trade=mill.terms.pilot_trade, loom=b.key, machine_type=machine_type)

    def _notes(self) -> tuple[Message, ...]:
        return (*self.opening.notes, *self.given.notes, *self.instance.notes)
