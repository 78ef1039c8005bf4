"""Make a plan: pilots first, then all other looms, at the least cost, with the proof beside it (planning.md)."""

import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta
from math import inf

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, LeftOver, OtherDate, Plan, PlanStatus, ScarcityPrice
from tracker.planning.fixed import fixed_conversions
from tracker.planning.grid import Floats, Ints
from tracker.planning.instance import Instance, make_instance
from tracker.planning.options import Options, make_options
from tracker.planning.outcome import bookings_of, other_dates, reasons_left, scarcity
from tracker.planning.pilots import find_pilots, followers, only
from tracker.planning.problem import PlanningProblem
from tracker.planning.programme import LEFT, Control, Programme, make_programme
from tracker.planning.rows import Rows, less, make_rows
from tracker.planning.solver import Solution, optimise

Progress = Callable[[str, float], None]


def plan(
    problem: PlanningProblem,
    time_limit_s: float | None = None,
    gap: float = 0.001,
    progress: Progress | None = None,
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
) -> Plan:
    """Book every loom at the least cost, or leave it over.

    `gap`: relative distance to the bound at which the plan counts as optimal. `time_limit_s` and `stop` end the search
    with the best plan so far. Same problem and seed, same plan, unless one of them strikes. Raises DataError where the
    data cannot carry a plan.
    """
    begin = time.monotonic()
    control = _control(begin, time_limit_s, gap, progress, seed, stop)
    run = _Run(make_instance(problem), control)
    run.plan_pilots()
    run.plan_others()
    return run.plan(time.monotonic() - begin)


def _control(
    begin: float,
    limit_s: float | None,
    gap: float,
    progress: Progress | None,
    seed: int,
    stop: Callable[[], bool] | None,
) -> Control:
    def left_s() -> float:
        return inf if limit_s is None else limit_s - (time.monotonic() - begin)

    def over() -> bool:
        return left_s() <= 0 or bool(stop and stop())

    def tell(what: str, best: float, bound: float) -> None:
        if progress:
            open_ = (best - bound) / best if 0 < best < inf and bound > -inf else 1.0
            progress(f"{what}: cost {best:,.0f}, gap {open_:.2%}", min(0.99, max(0.1, 1 - open_ * 20)))

    return Control(over, left_s, tell, gap, seed)


@dataclass
class _Part:
    """The pilots or the other looms: what was decided, and the cost and bound of it."""

    programme: Programme
    solution: Solution

    @property
    def taken(self) -> Ints:
        return self.solution.chosen[self.solution.chosen != LEFT]


class _Run:
    """One planning run, step by step."""

    def __init__(self, instance: Instance, control: Control):
        self.instance, self.control = instance, control
        self.rows: Rows = make_rows(instance)
        self.fixed = fixed_conversions(instance, self.rows)
        skip = np.array([key in self.fixed.bookings for key in instance.looms], dtype=bool)
        self.options: Options = make_options(instance, skip)
        self.pilots = find_pilots(instance, self.options, self.fixed.bookings)
        self.opens = dict(self.pilots.opens)
        self.used: Floats = self.fixed.used
        self.bookings: list[Booking] = []
        self.lead: frozenset[LoomKey] = self.pilots.firm
        self.others: _Part | None = None

    def plan_pilots(self) -> None:
        """Pilots by themselves; a pilot is booked wherever it can be, whatever leaving it over would cost."""
        if not self.pilots.looms.size:
            return
        options = only(self.options, self.pilots.looms)
        dear = replace(self.instance, left_cost=self.instance.left_cost + 1e7)
        part = self._solve(dear, options)
        keys = frozenset(self.instance.looms[i] for i in self.pilots.looms)
        found = bookings_of(self.instance, options, part.taken, keys)
        soak = timedelta(days=self.instance.mill.terms.soak_days)
        for booking in found:
            self.opens[self.instance.mill.looms[booking.key].machine_type] = booking.end + soak
        self.bookings += found
        self.lead |= {booking.key for booking in found}
        self.used = self.used + part.programme.used(part.taken)

    def plan_others(self) -> None:
        booked = {booking.key for booking in self.bookings}
        pilots = np.array([i for i, key in enumerate(self.instance.looms) if key in booked], dtype=np.int32)
        self.options = followers(self.instance, self.options, pilots, self.opens)
        self.others = self._solve(self.instance, self.options)
        self.bookings += bookings_of(self.instance, self.options, self.others.taken, self.lead)

    def _solve(self, instance: Instance, options: Options) -> _Part:
        programme = make_programme(instance, options, less(self.rows, self.used))
        return _Part(programme, optimise(programme, self.control))

    # ---- the result

    def plan(self, seconds: float) -> Plan:
        assert self.others
        problem, terms = self.instance.problem, self.instance.mill.terms
        firm = [replace(b, pilot=b.key in self.pilots.firm) for b in self.fixed.bookings.values()]
        bookings = sorted((*firm, *self.bookings), key=lambda b: (b.start, b.key.sort_key))
        left = self._left_over({booking.key for booking in bookings})
        objective = sum(b.cost.total for b in bookings) + sum(item.cost for item in left)
        spread = self.others.solution.cost - self.others.solution.bound
        bound = objective - max(0.0, spread)
        return Plan(
            status=self._status(objective, bound, bool(bookings)),
            objective=objective,
            bound=bound,
            seconds=seconds,
            currency=terms.currency,
            as_of=problem.as_of,
            horizon_end=self.instance.grid.moment(self.instance.grid.slots),
            bookings=tuple(bookings),
            left_over=tuple(left),
            prices=tuple(self._prices()),
            other_dates=tuple(self._other_dates()),
            reasons=tuple(self._reasons(bookings, left)),
            start=terms.start,
        )

    def _status(self, objective: float, bound: float, booked: bool) -> PlanStatus:
        assert self.others
        if not booked and self.instance.looms and not len(self.options):
            return PlanStatus.INFEASIBLE
        if objective - bound <= self.control.gap * abs(objective) + 1e-9:
            return PlanStatus.OPTIMAL
        return PlanStatus.TIMED_OUT if self.control.over() else PlanStatus.FEASIBLE

    def _left_over(self, booked: set[LoomKey]) -> list[LeftOver]:
        assert self.others
        programme = self.others.programme
        numbers = np.array([i for i, key in enumerate(self.instance.looms) if key not in booked], dtype=np.int32)
        free = programme.rows.free(programme.used(self.others.taken))
        why = reasons_left(self.instance, self.options, numbers, programme, free)
        left = [LeftOver(self.instance.looms[i], why[int(i)], float(self.instance.left_cost[i])) for i in numbers]
        problem = self.instance.problem
        put_off = [LeftOver(key, reason, self._put_off_cost(key)) for key, reason in problem.put_off.items()]
        return sorted((*left, *put_off), key=lambda item: item.key.sort_key)

    def _put_off_cost(self, key: LoomKey) -> float:
        """Saving over the horizon and the penalty; its work is not known here."""
        terms = self.instance.mill.terms
        return (self.instance.mill.looms[key].saving_per_day or 0.0) * terms.horizon_days + terms.left_over_penalty

    def _prices(self) -> list[ScarcityPrice]:
        assert self.others
        return scarcity(self.others.programme, self.others.solution.price)

    def _other_dates(self) -> list[OtherDate]:
        assert self.others
        programme = self.others.programme
        return list(other_dates(programme, self.others.solution.chosen, programme.used(self.others.taken)))

    def _reasons(self, bookings: list[Booking], left: list[LeftOver]) -> list[str]:
        notes = list(self.instance.notes)
        if not bookings and left:
            common = max({item.why for item in left}, key=lambda why: sum(item.why == why for item in left))
            count = sum(item.why == common for item in left)
            notes.insert(0, f"No loom can be booked; for {count} of {len(left)} the reason is: {common}. "
                            "Lift that limit (a later horizon, more people, an earlier receipt) and plan again.")  # fmt: skip
        return notes
