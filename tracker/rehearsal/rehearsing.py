"""All the runs of a rehearsal, by whoever plays them: this process, several, or a cluster."""

from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Executor, Future
from dataclasses import dataclass, field
from functools import cached_property
from pickle import dumps
from typing import NamedTuple, ParamSpec, TypeVar

from tracker.domain.plan import Plan
from tracker.errors import Message, message
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.policies import KEPT, RULE_LIMITS_H, Policy, rule_of_thumb
from tracker.rehearsal.results import half_width
from tracker.rehearsal.runs import Outcome, RunBatch, play_batch
from tracker.rehearsal.sources import Source, Spreads

BATCH = 5
"""Runs that are handed over together; of a policy that plans anew each Monday one, since it takes as long as a hundred others."""
REPLANNED_RUNS = 20
"""At most, of such a policy that another is held against."""
ROUND = 20
"""Runs after which it is asked whether the mean cost is sure enough."""
TRIAL = 1_000_000
"""Runs from this number on find the best limit of the rule of thumb, so that it is not judged by the worlds it was chosen by."""
TRIAL_RUNS = 5
Progress = Callable[[Message, float], None]
"""Told after each few runs: what is being played, and the share of all runs that is done."""
Given = ParamSpec("Given")
Made = TypeVar("Made")
Name = tuple[str, Source | None, str | None]
"""(policy, what is certain, the crew of a stand-in)."""


@dataclass(frozen=True, slots=True)
class Ask:
    """What is to be rehearsed."""

    policies: tuple[Policy, ...] = (KEPT,)
    """The first is held against the others; a rule of thumb without a limit gets the best of several."""
    spreads: Spreads = field(default_factory=Spreads)
    runs: int = 200
    """Of the first policy; half as many of each other one and of each worry, at most `REPLANNED_RUNS` of one that plans anew."""
    seed: int = 1
    worries: bool | None = None
    """None = unless the first policy plans anew."""
    crews: tuple[str, ...] = ()
    """For whom a stand-in is weighed."""
    until_sure: float | None = None
    """Currency: no more runs once the mean cost of the first policy is known as closely as this; None = all runs."""

    @property
    def weighs(self) -> bool:
        """Whether it is asked what each worry is worth."""
        return not self.policies[0].replanned if self.worries is None else self.worries

    def runs_of(self, place: int) -> int:
        """Runs of a policy by its place among those asked for."""
        half = (self.runs + 1) // 2
        return self.runs if not place else min(half, REPLANNED_RUNS) if self.policies[place].replanned else half


@dataclass(frozen=True, slots=True)
class Rehearsed:
    """The runs by what was played, each in order of number."""

    runs: dict[Name, tuple[Outcome, ...]]
    stopped: bool
    limit_h: float | None = None
    """Of the rule of thumb, where one was played."""


class Players(NamedTuple):
    """Who plays, and how many side by side."""

    executor: Executor
    side_by_side: int = 1


def rehearse(
    problem: PlanningProblem,
    plan: Plan,
    ask: Ask,
    players: Players,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
) -> Rehearsed:
    """Play all runs. The same ask gives the same runs, whoever plays them and however many at once; `stop` ends it with
    what is done."""
    return _Rehearsal(dumps((problem, plan)), ask, players, progress, stop or (lambda: False)).run()


class _Rehearsal:
    def __init__(
        self,
        setting: bytes,
        ask: Ask,
        players: Players,
        progress: Progress | None,
        stop: Callable[[], bool],
    ):
        self.setting, self.ask, self.executor, self.stop = setting, ask, players.executor, stop
        self.ahead, self.progress, self.played = 2 * players.side_by_side, progress, 0
        self.found: dict[Name, list[Outcome]] = defaultdict(list)
        self.limit_h: float | None = None

    def run(self) -> Rehearsed:
        policies = tuple(self._with_limit(policy) for policy in self.ask.policies)
        first = policies[0].name, None, None
        for begin in range(0, self.ask.runs, ROUND):
            numbers = range(begin, min(begin + ROUND, self.ask.runs))
            if not self._play(self._round(policies, numbers)):
                break
            sure = self.ask.until_sure
            if sure is not None and half_width([run.cost for run in self.found[first]]) <= sure:
                break
        runs = {name: tuple(sorted(of, key=lambda run: run.number)) for name, of in self.found.items() if of}
        return Rehearsed(runs, self.stop(), self.limit_h)

    def _with_limit(self, policy: Policy) -> Policy:
        """A rule of thumb waits as long as is cheapest in worlds of its own."""
        if policy.follows_plan or policy.limit_h is not None:
            return policy
        tried = {limit: rule_of_thumb(limit) for limit in RULE_LIMITS_H}
        numbers = range(TRIAL, TRIAL + TRIAL_RUNS)
        costs: dict[float, float] = {}
        for limit, each in tried.items():
            found: list[Outcome] = []
            if not self._play([(found, RunBatch(each, self.ask.spreads, self.ask.seed, tuple(numbers)))]):
                break
            costs[limit] = sum(run.cost for run in found)
        self.limit_h = min(costs, key=lambda limit: costs[limit], default=RULE_LIMITS_H[0])
        return tried[self.limit_h]

    def _round(self, policies: Sequence[Policy], numbers: range) -> Iterator[tuple[list[Outcome], RunBatch]]:
        """What is played of these numbers, and where it goes."""
        for begin in range(numbers.start, numbers.stop, BATCH):
            some = range(begin, min(begin + BATCH, numbers.stop))
            for i, policy in enumerate(policies):
                of_policy = range(begin, min(some.stop, self.ask.runs_of(i)))
                yield from self._batches((policy.name, None, None), policy, self.ask.spreads, of_policy)
            if self.ask.weighs:
                fewer = range(begin, min(some.stop, (self.ask.runs + 1) // 2))
                for name, spreads in self._certain(policies[0]):
                    yield from self._batches(name, policies[0], spreads, fewer)

    def _certain(self, policy: Policy) -> Iterator[tuple[Name, Spreads]]:
        for source in Source:
            if source not in self.ask.spreads.off:
                yield (policy.name, source, None), self.ask.spreads.without(source)
        if Source.PEOPLE not in self.ask.spreads.off:
            for crew in self.ask.crews:
                yield (policy.name, Source.PEOPLE, crew), self.ask.spreads.with_stand_in(crew)

    def _batches(
        self, name: Name, policy: Policy, spreads: Spreads, numbers: range
    ) -> Iterator[tuple[list[Outcome], RunBatch]]:
        size = 1 if policy.replanned else BATCH
        for begin in range(numbers.start, numbers.stop, size):
            some = tuple(range(begin, min(begin + size, numbers.stop)))
            yield self.found[name], RunBatch(policy, spreads, self.ask.seed, some)

    def _play(self, batches: Iterable[tuple[list[Outcome], RunBatch]]) -> bool:
        """A few batches at a time; False where it was stopped: what was under way is done, what had not begun is not."""
        going: deque[tuple[list[Outcome], Future[tuple[Outcome, ...]]]] = deque()
        stopped = False
        for found, batch in batches:
            if stopped := self.stop():
                break
            going.append((found, self.executor.submit(play_batch, self.setting, batch)))
            if len(going) >= self.ahead:
                self._take(*going.popleft())
        while going:
            found, future = going.popleft()
            stopped = stopped or self.stop()
            if not (stopped and future.cancel()):
                self._take(found, future)
        return not stopped

    def _take(self, found: list[Outcome], future: "Future[tuple[Outcome, ...]]") -> None:
        outcomes = future.result()
        found.extend(outcomes)
        self.played += len(outcomes)
        if self.progress:
            done = len(self.found[self.ask.policies[0].name, None, None])
            self.progress(message("runs-played", done=done, of=self.ask.runs), min(1.0, self.played / self._all_runs))

    @cached_property
    def _all_runs(self) -> int:
        """Of every policy, worry and trial."""
        ask, half = self.ask, (self.ask.runs + 1) // 2
        trials = len(RULE_LIMITS_H) * TRIAL_RUNS * sum(not p.follows_plan and p.limit_h is None for p in ask.policies)
        worries = len(list(self._certain(ask.policies[0]))) if ask.weighs else 0
        return sum(map(ask.runs_of, range(len(ask.policies)))) + half * worries + trials


class InThisProcess(Executor):
    """Plays at once, here."""

    def submit(self, fn: Callable[Given, Made], /, *args: Given.args, **kwargs: Given.kwargs) -> Future[Made]:
        future: Future[Made] = Future()
        future.set_result(fn(*args, **kwargs))
        return future
