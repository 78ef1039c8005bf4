"""What many runs say: spreads, differences and how sure they are, what each worry is worth, which bookings are at risk."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, inf, sqrt
from statistics import fmean, stdev

from scipy.special import stdtrit

from tracker.domain.plan import Booking
from tracker.rehearsal.runs import TERMS, Outcome, quantile
from tracker.rehearsal.sources import Source

SHARES = (0.1, 0.5, 0.8, 0.9)
SURE = 0.95
A_DAY = 48
"""Slots."""


@dataclass(frozen=True, slots=True)
class MeanInterval:
    """A mean and where the true one lies with 95 % certainty (Student's t)."""

    mean: float
    low: float
    high: float

    @property
    def is_sure(self) -> bool:
        """Whether it is away from 0."""
        return self.low > 0 or self.high < 0


def interval(values: Sequence[float]) -> MeanInterval:
    """Of at least one value; of one alone nothing is known but itself."""
    mean = fmean(values)
    half = half_width(values)
    return MeanInterval(mean, mean - half, mean + half)


def half_width(values: Sequence[float]) -> float:
    if len(values) < 2:
        return inf
    return float(stdtrit(len(values) - 1, (1 + SURE) / 2)) * stdev(values) / sqrt(len(values))


@dataclass(frozen=True, slots=True)
class Spread:
    """P10, P50, P80, P90 of something; infinity = never."""

    p10: float
    p50: float
    p80: float
    p90: float


def spread(values: Sequence[float]) -> Spread:
    return Spread(*(quantile(values, share) for share in SHARES))


@dataclass(frozen=True, slots=True)
class OfPolicy:
    """What came of one policy."""

    policy: str
    runs: int
    cost: Spread
    mean_cost: MeanInterval
    without_lost: MeanInterval
    """Mean cost without the price of looms that were lost or left over at the horizon."""
    terms: dict[str, float]
    """Mean of each cost term, currency; `lost` and `left over` beside those of a booking."""
    done: Spread
    """Looms converted: at least so many in 90, 50, 20 and 10 % of the runs stand under p10, p50, p80, p90 read backwards."""
    finish: Spread
    """Slot past the last conversion."""
    all_done: Spread
    """Slot in which every loom that was to be converted is; infinity = never."""
    most_done: int
    """The most looms that are done in 80 of 100 runs."""
    waited_h: float
    idle_h: float


@dataclass(frozen=True, slots=True)
class Difference:
    """What one way costs more than another, run by run in the same worlds."""

    cost: MeanInterval
    runs: int
    more_runs: int
    """How many more would settle which is dearer; 0 = it is settled."""


@dataclass(frozen=True, slots=True)
class Risk:
    """How a booking fares."""

    booking: Booking
    on_time: float
    """Share of runs in which it starts within a day of its date."""
    lost: float
    """Share in which its loom is not converted before the horizon."""
    cause: str
    """What breaks it most often; empty where nothing does."""
    of_cause: float
    """Share of the runs in which it is late or lost that go back to that."""


def of_policy(name: str, runs: Sequence[Outcome], to_do: int) -> OfPolicy:
    """`to_do`: looms that are to be converted."""
    costs = [run.cost for run in runs]
    ends = [run.ends for run in runs]
    done = [len(end) for end in ends]
    terms = {term: fmean(run.terms[i] for run in runs) for i, term in enumerate(TERMS)}
    terms |= {"lost": fmean(run.of_lost for run in runs), "left_over": fmean(run.left_over for run in runs)}
    return OfPolicy(
        policy=name,
        runs=len(runs),
        cost=spread(costs),
        mean_cost=interval(costs),
        without_lost=interval([sum(run.terms) for run in runs]),
        terms=terms,
        done=spread(done),
        finish=spread([end[-1] if end else inf for end in ends]),
        all_done=spread([end[to_do - 1] if 0 < to_do <= len(end) else inf for end in ends]),
        most_done=int(quantile([-n for n in done], 0.8) * -1),
        waited_h=fmean(run.waited_h for run in runs),
        idle_h=fmean(run.idle_h for run in runs),
    )


def when_done(runs: Sequence[Outcome], looms: int) -> Spread:
    """The slot in which so many looms are done."""
    return spread([run.ends[looms - 1] if 0 < looms <= len(run.ends) else inf for run in runs])


def difference(dearer: Sequence[Outcome], cheaper: Sequence[Outcome]) -> Difference | None:
    """What the first cost more, by the runs that both have; None where they have none in common."""
    others = {run.number: run.cost for run in cheaper}
    more = [run.cost - others[run.number] for run in dearer if run.number in others]
    if not more:
        return None
    cost = interval(more)
    return Difference(cost, len(more), 0 if cost.is_sure else _more_runs(more))


def _more_runs(values: Sequence[float]) -> int:
    """How many more until the interval of this mean and spread leaves 0; at most a million."""
    mean = abs(fmean(values))
    if len(values) < 2 or mean == 0:
        return 1_000_000
    wanted = (1.96 * stdev(values) / mean) ** 2
    return max(1, min(1_000_000, ceil(wanted) - len(values)))


def risks(bookings: Sequence[Booking], runs: Sequence[Outcome]) -> tuple[Risk, ...]:
    """Of every booking, in the order of the plan."""
    found = []
    for i, booking in enumerate(bookings):
        went = [run.looms[i] for run in runs]
        broken = [each for each in went if each.late is None or abs(each.late) > A_DAY]
        causes = Counter(each.cause for each in broken if each.cause)
        cause, often = causes.most_common(1)[0] if causes else ("", 0)
        found.append(Risk(
            booking, 1 - len(broken) / len(went), sum(each.late is None for each in went) / len(went), cause,
            often / len(broken) if broken else 0.0,
        ))  # fmt: skip
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Worry:
    """What the programme would cost less were one thing certain."""

    source: Source
    crew: str | None
    """Of people: the crew for whom somebody would stand in; None = all."""
    worth: Difference


def worries(
    runs: Sequence[Outcome], without: Mapping[tuple[Source, str | None], Sequence[Outcome]]
) -> tuple[Worry, ...]:
    """The dearest first; `without`: (source, crew) → the same runs with that one certain."""
    pairs = ((source, crew, difference(runs, calm)) for (source, crew), calm in without.items())
    found = [Worry(source, crew, worth) for source, crew, worth in pairs if worth]
    return tuple(sorted(found, key=lambda worry: -worry.worth.cost.mean))
