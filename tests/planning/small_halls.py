"""Halls so small that every way to convert them can be tried out, drawn at random from a seed."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property
from itertools import product
from random import Random
from typing import Any

import pytest

from tracker.domain.mill import Closure, Crew, Loom, LoomKey, Mill, Part, Receipt, Running, Tool
from tracker.domain.plan import Booking, CostTerms, Keeping, LeftOver, Plan, PlanStatus
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import StepLoad, WorkContent
from tracker.errors import as_it_stands
from tracker.planning.checks.case import Case
from tracker.planning.checks.costs import Prices
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import CHECKS

MONDAY = datetime(2027, 1, 4, tzinfo=UTC)
DAYS = 3


def at(day: int, hour: float) -> datetime:
    return MONDAY + timedelta(days=day, hours=hour)


def small_problem(seed: int, looms: int = 3) -> PlanningProblem:
    """Two halls, one or two crews that share or keep to their hall, an electrician, one hoist, a scarce rail; three
    days of four or five working hours. No pilots."""
    rng = Random(seed)
    keys = [LoomKey(f"Hall {1 + i % 2}", str(i + 1)) for i in range(looms)]
    mill = Mill(
        looms={key: _loom(rng, key) for key in keys},
        parts={"RAIL": Part("RAIL", float(rng.randint(0, 2)), price=90.0, safety_stock=float(rng.randint(0, 1)))},
        receipts=(Receipt("4500-10", "RAIL", float(rng.randint(1, 2)), date(2027, 1, rng.choice((3, 4, 5)))),),
        crews=tuple(_crews(rng)),
        running=(Running("Hall 1", frozenset(range(7)), time(2), time(20)),) if rng.random() < 0.5 else (),
        closures=(Closure(date(2027, 1, 5), rng.choice(("work", "weaving", "both")), rng.choice((None, "Hall 2"))),)
        if rng.random() < 0.4
        else (),
        tools={"hoist": Tool("hoist", 1)},
        terms=Terms(
            start=date(2027, 1, 4),
            horizon_days=DAYS,
            soak_days=0,
            left_over_penalty=rng.choice((100.0, 500.0)),
            looms_stopped_at_once=rng.choice((None, 1, 2)),
        ),
    )
    contents = _contents(rng)
    windows = {key: tuple(_windows(rng, key)) for key in keys}
    return PlanningProblem(mill, windows, dict.fromkeys(keys, contents), MONDAY)


def days_later(problem: PlanningProblem, before: Plan, seed: int) -> PlanningProblem:
    """The small problem once its plan was published and readings have come: beam-outs up to three hours off, sometimes a rail
    less or an electrician who ends at 08:00. Moves cost nothing, nothing is firm."""
    rng, mill = Random(1000 + seed), problem.mill
    windows = {key: tuple(w if w.ends_at else _off(w, rng.choice((-2, 0, 0, 2, 3))) for w in of)
               for key, of in problem.windows.items()}  # fmt: skip
    parts = {"RAIL": replace(mill.parts["RAIL"], on_hand=mill.parts["RAIL"].on_hand - rng.choice((0, 0, 1)))}
    early = rng.random() < 0.3
    crews = tuple(replace(c, shift_end=time(8)) if early and c.trade == "electrician" else c for c in mill.crews)
    mill = replace(mill, parts=parts, crews=crews, terms=replace(mill.terms, move_cost=0.0))
    return replace(problem, mill=mill, windows=windows, previous=before, hold_firm=False)


def _off(w: Window, hours: float) -> Window:
    by = timedelta(hours=hours)
    return replace(w, mean_at=w.mean_at + by, p10_at=w.p10_at + by, p50_at=w.p50_at + by, p90_at=w.p90_at + by,
                   starts_at=w.starts_at + by, mean_running_h=w.mean_running_h + hours)  # fmt: skip


def _loom(rng: Random, key: LoomKey) -> Loom:
    protected = date(2027, 1, 4) if rng.random() < 0.2 else None
    return Loom(key.hall, key.loom, "AJ", saving_per_day=float(rng.randint(5, 40)), protected_until=protected)


def _crews(rng: Random) -> Iterator[Crew]:
    yield Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(10), rate_per_head_h=30.0)
    if rng.random() < 0.7:
        hall = rng.choice((None, "Hall 1", "Hall 2"))
        yield Crew("Fitters 2", "Fitter", 1, shift_start=time(8), shift_end=time(11), rate_per_head_h=33.0, hall=hall)
    end = time(rng.choice((9, 11)))
    yield Crew("Electrician", "electrician", 1, shift_start=time(6), shift_end=end, rate_per_head_h=40.0)


def _contents(rng: Random) -> dict[WindowKind, tuple[WorkContent, ...]]:
    minutes = rng.choice((40.0, 75.0, 120.0))
    made = {}
    for kind in WindowKind:
        new = _content(kind, "new", minutes, {"RAIL": 1.0})
        drilled = _content(kind, "drilled", minutes + 50.0, {})
        made[kind] = (new, drilled) if rng.random() < 0.7 else (new,)
    return made


def _content(kind: WindowKind, rail: str, minutes: float, parts: dict[str, float]) -> WorkContent:
    steps = (
        StepLoad(10, minutes / 2, {"fitter": 2}, {"hoist": 1} if rail == "new" else {}),
        StepLoad(20, minutes / 2, {"fitter": 1, "electrician": 1}, {}),
    )
    labour = {"fitter": 1.5 * minutes, "electrician": minutes / 2}
    return WorkContent(kind, (("rail", rail),), (), (), (), (), steps, minutes, 0.0, 0.0, labour, parts)


def _windows(rng: Random, key: LoomKey) -> Iterator[Window]:
    for number in range(1, rng.randint(2, 3)):
        kind = rng.choice((WindowKind.REPEAT, WindowKind.STYLE, WindowKind.STANDING))
        mean = at(rng.randint(0, 1), rng.choice((5.0, 7.25, 9.5, 16.0)))
        yield window(key, number, kind, mean, spread_h=rng.choice((0.0, 0.0384, 0.5)))
    if rng.random() < 0.5:
        yield window(key, 0, WindowKind.MID_WARP, MONDAY, ends_at=at(DAYS, 0))


def window(
    key: LoomKey,
    number: int,
    kind: WindowKind,
    mean_at: datetime,
    spread_h: float = 0.0,
    ends_at: datetime | None = None,
) -> Window:
    beam_out = kind in (WindowKind.REPEAT, WindowKind.STYLE)
    return Window(
        key=key,
        number=number,
        kind=kind,
        reading_at=MONDAY,
        mean_running_h=(mean_at - MONDAY) / timedelta(hours=1) if beam_out else 0.0,
        spread_h=spread_h if beam_out else 0.0,
        mean_at=mean_at,
        p10_at=mean_at,
        p50_at=mean_at,
        p90_at=mean_at,
        starts_at=mean_at,
        ends_at=None if beam_out else ends_at or mean_at + timedelta(hours=6),
        article_out="A",
        article_in="A",
        warp_rate_m_per_h=10.0,
        warp_value_per_m=2.0,
        contribution_per_h=6.0,
        ordinary_change_h=2.0 if beam_out else 0.0,
        meanwhile_h=0.5 * number if beam_out else 0.0,
    )


class TriedOut:
    """Every plan of a small problem, by the solver-free check alone: what it lets pass is feasible."""

    def __init__(self, problem: PlanningProblem):
        self.problem = problem
        nothing = Plan(PlanStatus.FEASIBLE, 0, 0, 0, "EUR", problem.as_of, problem.as_of)
        self.case = Case(nothing, problem)
        windows = [w for key in problem.planned for w in problem.windows.get(key, ())]
        self.prices = Prices(self.case, windows)
        self.left = {key: self.prices.of_left_over(key) for key in problem.planned}

    def best(self, most_moves: int = 99) -> float:
        """The least cost of any plan that the check lets pass and that moves so few published bookings, found by trying all."""
        found = self.best_or_none(most_moves)
        assert found is not None
        return found

    def best_or_none(self, most_moves: int = 99) -> float | None:
        """The same; None where the check lets none pass."""
        few = (plan for plan in self._by_cost if self.moves(plan) <= most_moves)
        return next((plan.objective for plan in few if self.sound(plan)), None)

    def fewest_moves(self) -> int:
        """Of any plan that the check lets pass."""
        by_moves = sorted(self._by_cost, key=self.moves)
        return next(self.moves(plan) for plan in by_moves if self.sound(plan))

    def moves(self, plan: Plan) -> int:
        """How many published bookings have another start, other choices, or are gone."""
        now = {(b.key, b.start, b.choices) for b in plan.bookings}
        return sum((b.key, b.start, b.choices) not in now for b in self.problem.previous_bookings)

    @cached_property
    def _by_cost(self) -> list[Plan]:
        """Every choice of bookings that pass by themselves, the cheapest first."""
        answers = [[None, *self.possible(key)] for key in self.problem.planned]
        plans = (self.plan([b for b in chosen if b]) for chosen in product(*answers))
        return sorted(plans, key=lambda plan: plan.objective)

    def sound(self, plan: Plan) -> bool:
        """What `verify` says, with the calendars looked up once for all plans."""
        self.case.plan = plan
        vars(self.case).pop("holds", None)
        return not any(True for check in CHECKS for _ in check(self.case))

    def possible(self, key: LoomKey) -> list[Booking]:
        """Bookings of a loom that pass by themselves, at every half hour and in every window."""
        found, alone = [], replace(self.problem, held=self.problem.held & {key})
        self.case.problem, given = alone, self.case.problem
        for w in self.problem.windows.get(key, ()):
            for content in self.problem.contents[key].get(w.kind, ()):
                bookings = (self.booking(w, content, i) for i in range(len(self.case.work(key.hall))))
                found += [b for b in bookings if b and self.sound(self.plan([b]))]
        self.case.problem = given
        return [b for b in found if b.cost.total <= self.left[key] or key in self.problem.held]

    def booking(self, w: Window, content: WorkContent, position: int) -> Booking | None:
        start = self.case.begin(self.case.work(w.key.hall)[position])
        course = self.case.course(start, content, w, w.key.hall)
        if course is None:
            return None
        booking = Booking(
            w.key, w.number, w.kind, content.choices, start, course.end, None if w.ends_at else w.p50_at, course.slots,
            content.labour_h, content.parts, CostTerms(), pause=course.pause,
        )  # fmt: skip
        return replace(booking, cost=self.prices.of_booking(booking, w, content))

    def plan(self, bookings: list[Booking]) -> Plan:
        booked = {b.key for b in bookings}
        left = tuple(LeftOver(key, as_it_stands("tried"), cost) for key, cost in self.left.items() if key not in booked)
        total = sum(b.cost.total for b in bookings) + sum(item.cost for item in left)
        found = Plan(PlanStatus.FEASIBLE, total, 0.0, 0.0, "EUR", self.problem.as_of, self.case.horizon_end,
                     tuple(bookings), left)  # fmt: skip
        return replace(found, keeping=Keeping(self.moves(found), 0.0))


def seeds(first: Iterable[int], more: Iterable[int] = ()) -> list[Any]:
    """Halls to draw: the `first` in every run, `more` in the long one."""
    return [*first, *(pytest.param(seed, marks=pytest.mark.long) for seed in more)]
