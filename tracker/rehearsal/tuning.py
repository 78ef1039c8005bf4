"""What lets a plan survive, found by rehearsal (MODEL.md, section 6)."""

from collections import deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Future
from contextlib import suppress
from dataclasses import dataclass, field, fields, replace
from pickle import dumps, loads
from statistics import fmean
from typing import Any

from tracker.domain.plan import Plan
from tracker.domain.terms import NO_CARE, Care
from tracker.errors import message
from tracker.planning.planner import plan as solve
from tracker.planning.planner import sketch
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.policies import KEPT
from tracker.rehearsal.rehearsing import BATCH, Players, Progress
from tracker.rehearsal.results import MeanInterval, interval
from tracker.rehearsal.runs import RunBatch, play_batch
from tracker.rehearsal.sources import Spreads

STEPS: dict[str, tuple[Any, ...]] = {
    "pilots_for_type": (True,),
    "no_second_chance": (0.3, 1.0),
    "room": (1.0, 2.5),
    "usual_absence": (0.04, 0.08),
    "receipts_later_days": (2, 5),
    "patience_h": (0.5, 1.0, 4.0),
}
"""Field of `Care` → values that are tried beside nothing."""
MOST_LOOMS = 200
"""To be planned, up to which every candidate is planned as the mill's own plans are. For so many the planner solves at once; of
more one plan may take minutes."""
OTHER_WORLDS = 2_000_000
"""Runs from this number on judge what was found, in worlds that had no say in it."""


@dataclass(frozen=True, slots=True)
class AskTuning:
    """How hard to look."""

    spreads: Spreads = field(default_factory=Spreads)
    seed: int = 1
    tune_on: int = 30
    """Worlds in which each candidate is played."""
    runs: int = 100
    """Other worlds in which the best is held against a plan without care."""
    variants: int = 8
    """Plans that are as good within the gap, beside the first one, that are tried of the best."""


@dataclass(frozen=True, slots=True)
class Candidate:
    care: Care = NO_CARE
    variant: int = 0
    """Which of the plans that are as good within the gap; 0 = the one that the planner finds."""


@dataclass(frozen=True, slots=True)
class Tried:
    candidate: Candidate
    plan: Plan
    costs: tuple[float, ...]
    """In the hall, world by world."""

    @property
    def kept(self) -> float:
        return fmean(self.costs)


@dataclass(frozen=True, slots=True)
class Tuned:
    tried: tuple[Tried, ...]
    """The first is the plan without care; in the order in which they were tried."""
    without: Tried | None
    """The plan without care as it was judged."""
    best: Tried | None
    """The cheapest in the hall of the others, as it was judged; None where it was stopped before there was one."""
    judged: MeanInterval | None
    """What the best costs more than the plan without care in worlds that had no say; None where none was played."""
    kept: tuple[float, float] | None
    """What the plan without care and the best cost there on average."""
    runs: int
    stopped: bool
    light: bool = False
    """Whether what was tried was planned by a light search, and only the two that were judged by the whole one."""

    @property
    def helps(self) -> bool:
        """Whether the best is cheaper in the hall for sure."""
        return self.judged is not None and self.judged.high < 0


def tune(
    problem: PlanningProblem,
    ask: AskTuning,
    players: Players,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
) -> Tuned:
    """Try terms one by one, then together, then plans that are as good; the best is judged in other worlds. Of more than
    `MOST_LOOMS` what is tried is planned by a light search, and the best and the plan without care are planned by the whole one
    before they are judged. The same ask gives the same answer, whoever plays; `stop` ends it with what is known by then."""
    return _Tuning(problem, ask, players, progress, stop or (lambda: False)).run()


def make_plan(problem: bytes, candidate: Candidate) -> Plan:
    """The plan of a candidate; `problem` is pickled."""
    asked: PlanningProblem = loads(problem)
    return solve(_with_care(asked, candidate.care), seed=candidate.variant)


def sketch_plan(problem: bytes, candidate: Candidate) -> Plan:
    """The same by a light search."""
    asked: PlanningProblem = loads(problem)
    return sketch(_with_care(asked, candidate.care))


def _with_care(problem: PlanningProblem, care: Care) -> PlanningProblem:
    mill = problem.mill
    return replace(problem, mill=replace(mill, terms=mill.terms.with_care(care)))


class _Stopped(Exception):
    pass


class _Tuning:
    def __init__(
        self,
        problem: PlanningProblem,
        ask: AskTuning,
        players: Players,
        progress: Progress | None,
        stop: Callable[[], bool],
    ):
        self.now = problem.mill.terms.care
        self.problem = _with_care(problem, NO_CARE)
        self.pickled = dumps(self.problem)
        self.ask, self.players, self.progress, self.stop = ask, players, progress, stop
        self.tried: dict[Candidate, Tried] = {}
        self.light = len(problem.planned) > MOST_LOOMS
        self.by: Callable[[bytes, Candidate], Plan] = sketch_plan if self.light else make_plan

    def run(self) -> Tuned:
        stopped = False
        try:
            self._search()
        except _Stopped:
            stopped = True
        others = [one for one in self.tried.values() if one.candidate != Candidate()]
        best = min(others, key=lambda one: one.kept, default=None)
        without = self.tried.get(Candidate())
        pairs: list[tuple[float, float]] = []
        if without and best:
            with suppress(_Stopped):
                without, best = self._whole(without, best)
                pairs = self._judge(without, best)
        more = [with_care - without for without, with_care in pairs]
        return Tuned(
            tuple(self.tried.values()), without, best, interval(more) if len(more) > 1 else None,
            (fmean(one for one, _ in pairs), fmean(other for _, other in pairs)) if pairs else None,
            len(pairs), stopped or len(pairs) < self.ask.runs, self.light,
        )  # fmt: skip

    # ---- the search

    def _search(self) -> None:
        singles = [_changed(NO_CARE, name, value) for name, values in STEPS.items() for value in values]
        self._try([Candidate(), *map(Candidate, singles), *([Candidate(self.now)] if self.now != NO_CARE else [])])
        care = self._together()
        if self.light:
            return  # which of the plans that are as good is taken says nothing of the one that the whole search finds
        best = min((Candidate(care), *self.tried), key=lambda one: self.tried[one].kept).care
        self._try(Candidate(best, variant) for variant in range(1, self.ask.variants + 1))

    def _together(self) -> Care:
        """The values that help by themselves, the one that helps most first, each kept where it helps beside those before it."""
        care, without = NO_CARE, self.tried[Candidate()].kept
        gains = {
            (name, value): without - self.tried[Candidate(_changed(NO_CARE, name, value))].kept
            for name, values in STEPS.items()
            for value in values
        }
        for (name, value), gain in sorted(gains.items(), key=lambda item: -item[1]):
            if gain <= 0 or getattr(care, name):
                continue
            both = _changed(care, name, value)
            self._try([Candidate(both)])
            if self.tried[Candidate(both)].kept < self.tried[Candidate(care)].kept:
                care = both
        return care

    def _try(self, candidates: Iterable[Candidate]) -> None:
        """Plan and play those that were not tried yet; plans that are the same as another's are not played again."""
        new = [one for one in dict.fromkeys(candidates) if one not in self.tried]
        for candidate, made in zip(new, self._each(self.by, ((self.pickled, one) for one in new)), strict=True):
            same = (one.costs for one in self.tried.values() if _met(one.candidate, one.plan) == _met(candidate, made))
            costs = next(same, None) or self._play(candidate, made, range(self.ask.tune_on))
            self.tried[candidate] = Tried(candidate, made, costs)
            self._tell()

    # ---- whoever plays

    def _batches(self, candidate: Candidate, plan: Plan, numbers: Sequence[int]) -> list[tuple[bytes, RunBatch]]:
        """In a hall whose crews wait as long as the candidate says."""
        hall = _with_care(self.problem, replace(NO_CARE, patience_h=candidate.care.patience_h))
        setting, ask = dumps((hall, plan)), self.ask
        some = (tuple(numbers[i : i + BATCH]) for i in range(0, len(numbers), BATCH))
        return [(setting, RunBatch(KEPT, ask.spreads, ask.seed, each)) for each in some]

    def _play(self, candidate: Candidate, plan: Plan, numbers: Sequence[int]) -> tuple[float, ...]:
        played = self._each(play_batch, self._batches(candidate, plan, numbers))
        return tuple(outcome.cost for outcomes in played for outcome in outcomes)

    def _each(self, do: Callable[..., Any], tasks: Iterable[tuple[Any, ...]]) -> Iterator[Any]:
        """What comes of each, in order, some of them under way at once."""
        going: deque[Future[Any]] = deque()
        for task in tasks:
            if self.stop():
                raise _Stopped
            going.append(self.players.executor.submit(do, *task))
            if len(going) >= 2 * self.players.side_by_side:
                yield going.popleft().result()
        while going:
            yield going.popleft().result()

    def _whole(self, *sketched: Tried) -> tuple[Tried, ...]:
        """The same candidates planned as the mill's own plans are."""
        if not self.light:
            return sketched
        plans = list(self._each(make_plan, ((self.pickled, one.candidate) for one in sketched)))
        return tuple(
            Tried(one.candidate, made, self._play(one.candidate, made, range(self.ask.tune_on)))
            for one, made in zip(sketched, plans, strict=True)
        )

    def _judge(self, *both: Tried) -> list[tuple[float, float]]:
        """Costs of the plan without care and of the best, world by world; as many as were played before a stop."""
        numbers = range(OTHER_WORLDS, OTHER_WORLDS + self.ask.runs)
        of_both = (self._batches(one.candidate, one.plan, numbers) for one in both)
        tasks = (task for both in zip(*of_both, strict=True) for task in both)
        pairs: list[tuple[float, float]] = []
        played = self._each(play_batch, tasks)
        with suppress(_Stopped):
            for without in played:
                pairs += [(one.cost, other.cost) for one, other in zip(without, next(played), strict=True)]
                if self.progress:
                    said = message("tuning-judged", done=len(pairs), of=self.ask.runs)
                    self.progress(said, 0.7 + 0.3 * len(pairs) / self.ask.runs)
        return pairs

    def _tell(self) -> None:
        if self.progress:
            of = sum(map(len, STEPS.values())) + 4 + (0 if self.light else self.ask.variants)
            saves = self.tried[Candidate()].kept - min(one.kept for one in self.tried.values())
            currency = self.problem.mill.terms.currency
            told = message("tuning-tried", tried=len(self.tried), saves=saves, currency=currency)
            self.progress(told, min(0.7, 0.7 * len(self.tried) / of))


def _met(candidate: Candidate, plan: Plan) -> tuple[float | None, frozenset[tuple[Any, ...]]]:
    """All that a hall meets of a plan."""
    books = frozenset((b.key, b.start, b.window, b.kind, b.choices, b.pilot) for b in plan.bookings)
    return candidate.care.patience_h, books


def _changed(care: Care, name: str, value: Any) -> Care:
    assert name in {each.name for each in fields(Care)}
    return replace(care, **{name: value})
