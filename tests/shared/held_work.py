"""Work of jobs that waits to be stopped, in the process of the job: by it a job can be looked at, stopped and killed while it
runs."""

from collections.abc import Callable
from dataclasses import dataclass
from time import sleep
from typing import Any

from tracker.errors import message
from tracker.services.jobs.kinds import PlanWork
from tracker.services.jobs.work import Kept, Progress, Stop

A_MOMENT_S, LONGEST_S = 0.05, 120


@dataclass(frozen=True, slots=True)
class HeldPlan:
    """A plan whose search goes on after its first word only once it is to end."""

    plan: PlanWork

    def run(self, progress: Progress, stop: Stop) -> Any:
        def tell(what, fraction):
            progress(what, fraction)
            while not stop():
                sleep(A_MOMENT_S)

        return self.plan.run(tell, stop)

    def keep(self, uow, found, stopped: bool) -> Kept:
        return self.plan.keep(uow, found, stopped)


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
