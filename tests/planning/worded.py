"""What the check finds, as a person reads it."""

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan
from tracker.planning import verify as check
from tracker.planning.problem import PlanningProblem
from tracker.words import ENGLISH


def verify(plan: Plan, problem: PlanningProblem) -> tuple[str, ...]:
    return tuple(map(ENGLISH.line, check.verify(plan, problem)))


def no_longer(previous: Plan, problem: PlanningProblem) -> dict[LoomKey | None, tuple[str, ...]]:
    return {key: tuple(map(ENGLISH.line, found)) for key, found in check.no_longer(previous, problem).items()}
