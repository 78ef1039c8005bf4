"""Runs by the dozen, and what is kept of each: small enough for thousands, the same in whichever process it was played."""

from collections.abc import Sequence
from dataclasses import astuple, dataclass, fields
from functools import lru_cache
from pickle import loads
from typing import NamedTuple

from tracker.domain.plan import CostTerms
from tracker.rehearsal.course import Course
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.mondays import Planner
from tracker.rehearsal.policies import Policy
from tracker.rehearsal.sources import Spreads
from tracker.rehearsal.world import play

TERMS = tuple(each.name for each in fields(CostTerms))


class PlayedBooking(NamedTuple):
    """What became of a booking."""

    late: int | None
    """Slots of 30 min from its booked start to its first start; None = it was lost."""
    cause: str


@dataclass(frozen=True, slots=True)
class Outcome:
    """What is kept of a run."""

    number: int
    terms: tuple[float, ...]
    """Cost of the conversions by `TERMS`, currency."""
    of_lost: float
    left_over: float
    ends: tuple[int, ...]
    """When each conversion was done: the slot past its last, in order."""
    looms: tuple[PlayedBooking, ...]
    """By booking, in the order of the plan; empty without a plan."""
    waited_h: float
    idle_h: float

    @property
    def cost(self) -> float:
        return sum(self.terms) + self.of_lost + self.left_over


@dataclass(frozen=True, slots=True)
class RunBatch:
    """Runs that are played together."""

    policy: Policy
    spreads: Spreads
    seed: int
    numbers: tuple[int, ...]


@lru_cache(maxsize=2)
def _hall(setting: bytes) -> Hall:
    return Hall(*loads(setting))


def play_batch(setting: bytes, batch: RunBatch) -> tuple[Outcome, ...]:
    """Play runs of a hall; `setting` is (problem, plan), pickled. Each process makes its hall once."""
    hall = _hall(setting)
    drawing = hall.drawing(batch.spreads)
    booked = hall.plan.bookings if batch.policy.follows_plan else ()
    starts = {booking.key: hall.slot(booking.start) for booking in booked}
    courses = (
        play(hall, drawing.world(batch.seed, n), batch.policy, batch.spreads, _planner(batch.policy))
        for n in batch.numbers
    )
    return tuple(outcome(n, course, starts) for n, course in zip(batch.numbers, courses, strict=True))


def _planner(policy: Policy) -> Planner | None:
    """The very planner of the mill; brought in only where somebody plans, since its solver takes its time."""
    if not policy.replanned:
        return None
    from tracker.planning.planner import renew

    return renew


def outcome(number: int, course: Course, starts: dict) -> Outcome:
    """What is kept of a course; `starts`: loom → its booked slot."""
    went = {done.key: PlayedBooking(done.start - starts.get(done.key, 0), done.cause) for done in course.done}
    went |= {lost.key: PlayedBooking(None, lost.cause) for lost in course.lost}
    terms = [sum(of_term) for of_term in zip(*(astuple(done.cost) for done in course.done), strict=True)]
    return Outcome(
        number, tuple(terms) or (0.0,) * len(TERMS), course.of_lost, course.left_over,
        tuple(sorted(done.end for done in course.done)), tuple(went.get(key, PlayedBooking(None, "")) for key in starts),
        course.waited_h, course.idle_h,
    )  # fmt: skip


def quantile(values: Sequence[float], share: float) -> float:
    """The smallest value that at least this share of them does not exceed; infinity stands for never."""
    ordered = sorted(values)
    return ordered[max(0, min(len(ordered) - 1, -int(-share * len(ordered) // 1) - 1))]
