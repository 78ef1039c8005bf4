"""Work of jobs that waits to be stopped, in the process of the job: by it a job can be looked at, stopped and killed while it
runs."""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from time import sleep
from typing import Any

from tracker.domain.plan import Plan
from tracker.errors import Message, message
from tracker.planning.problem import PlanningProblem
from tracker.services.jobs.kinds import PlanWork
from tracker.services.jobs.work import Kept, Progress, Stop
from tracker.services.plans.plan import PlanTask, Search

A_MOMENT_S, LONGEST_S = 0.05, 120


class HeldTask(PlanTask):
    """A plan whose search goes on after its first word only once it is to end."""

    __slots__ = ()

    def made(self, problem: PlanningProblem, search: Search) -> Plan:
        def tell(what: Message, fraction: float) -> None:
            assert search.progress and search.stop
            search.progress(what, fraction)
            while not search.stop():
                sleep(A_MOMENT_S)

        return PlanTask.made(self, problem, replace(search, progress=tell))


def held(work: PlanWork) -> PlanWork:
    """The same plan, held."""
    task = HeldTask(*(getattr(work.task, field.name) for field in fields(PlanTask)))
    return replace(work, task=task)


@dataclass(frozen=True, slots=True)
class Waiting:
    """Does nothing until it is stopped."""

    def run(self, progress: Progress, stop: Stop) -> None:
        progress(message("job-begins"), 0.5)
        while not stop():
            sleep(A_MOMENT_S)

    def keep(self, uow, found, stopped: bool) -> Kept:
        return Kept(message("job-begins"))


def until(told: Callable[[], Any]) -> Any:
    """What is told once it is true; it must be so some time."""
    for _ in range(int(LONGEST_S / A_MOMENT_S)):
        if found := told():
            return found
        sleep(A_MOMENT_S)
    raise TimeoutError
