"""Which crew works at which conversion, slot by slot, going through time.

A conversion keeps its crew while that crew is at work, also over a pause. Where it has none, or has to give it up, crews
are shared out by what that costs, one kind of cost far above the next: nobody at a conversion; another crew than a firm
booking has; a change while the crew is still at work; a crew for any hall where the hall has a free one of its own; a crew
that leaves before the conversion is done; another crew than the first part had; another machine type than its last one; more
hours than the others have.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from scipy.optimize import linear_sum_assignment

from tracker.planning.model.grid import Ints
from tracker.planning.naming.jobs import Bools, Crews, Job

IMPOSSIBLE, NOBODY, NOT_ITS_OWN, WITHIN_SHIFT, FOR_ANY_HALL, WAITED_FOR = 1e10, 1e9, 1e7, 1e6, 1e4, 5e3
LEAVES, OTHER_CREW, OTHER_TYPE, HOURS = 10.0, 3.0, 1.0, 1e-4
"""For each slot that the crew does not stay; for another crew than had the first part; for a change of machine type; for
each slot worked so far."""


@dataclass
class Named:
    crew: list[dict[int, str]]
    """By job: slot → crew; a slot in which nobody is left is missing."""
    within_shift: int = 0
    """Changes of crew while the earlier one is still at work."""


@dataclass
class _Crew:
    worked: int = 0
    last_type: str = ""
    reserved: set[int] = field(default_factory=set)
    """Slots in which a firm booking or one in work has it."""


class _Sharing:
    def __init__(self, jobs: Sequence[Job], people: Crews):
        self.jobs, self.people = jobs, people
        self.crews = {name: _Crew() for name in people.names}
        self.named = Named([{} for _ in jobs])
        self.now: dict[int, str] = {}
        """Job begun and not done → its crew."""
        for job in jobs:
            for slot, name in job.wanted.items():
                if name in self.crews:
                    self.crews[name].reserved.add(slot)
        self._stays: dict[tuple[str, str], Bools] = {}

    def run(self) -> Named:
        by_slot: dict[int, list[int]] = defaultdict(list)
        for i, job in enumerate(self.jobs):
            for slot in job.slots:
                by_slot[slot].append(i)
        for slot in sorted(by_slot):
            self._slot(slot, by_slot[slot])
        return self.named

    def _slot(self, slot: int, active: list[int]) -> None:
        kept = [self.now.get(i, "") for i in active]
        if not all(self._may_stay(i, crew, slot) for i, crew in zip(active, kept, strict=True)) or len(set(kept)) < len(
            kept
        ):
            kept = self._share(slot, active)
        for i, crew in zip(active, kept, strict=True):
            self._works(i, crew, slot)

    def _may_stay(self, i: int, crew: str, slot: int) -> bool:
        job = self.jobs[i]
        return bool(crew) and self._there(crew, job, slot) and self._wanted(job, slot) in ("", crew)

    def _there(self, crew: str, job: Job, slot: int) -> bool:
        return self.people.at_work(crew, job.key.hall, slot)

    def _wanted(self, job: Job, slot: int) -> str:
        """The crew that has a slot of the job already; empty where that crew is not at work."""
        crew = job.wanted.get(slot, "")
        return crew if crew in self.crews and self._there(crew, job, slot) else ""

    def _works(self, i: int, crew: str, slot: int) -> None:
        before, job = self.now.get(i, ""), self.jobs[i]
        self.named.within_shift += bool(before and crew and before != crew and self._there(before, job, slot))
        if crew:
            self.now[i] = self.named.crew[i][slot] = crew
            self.crews[crew].worked += 1
            self.crews[crew].last_type = job.machine_type
        if slot == job.slots[-1]:
            self.now.pop(i, None)

    def _share(self, slot: int, active: list[int]) -> list[str]:
        names = self.people.names
        waited_for = {crew for i, crew in self.now.items() if i not in active}
        costs = np.full((len(active), len(names) + len(active)), NOBODY)
        for row, i in enumerate(active):
            left = np.array([s for s in self.jobs[i].slots if s >= slot])
            costs[row, : len(names)] = [self._cost(i, crew, left, crew in waited_for) for crew in names]
        _, columns = linear_sum_assignment(costs)
        return [names[c] if c < len(names) and costs[r, c] < IMPOSSIBLE else "" for r, c in enumerate(columns)]

    def _cost(self, i: int, name: str, left: Ints, waited_for: bool) -> float:
        """Of a crew in the first of the slots that are left of the job."""
        job, now, slot = self.jobs[i], self.now.get(i, ""), int(left[0])
        if not self._there(name, job, slot):
            return IMPOSSIBLE
        wanted = self._wanted(job, slot)
        cost = NOT_ITS_OWN * (wanted not in ("", name))
        if name == now:
            return cost
        cost += WITHIN_SHIFT * (now != "" and now != wanted and self._there(now, job, slot))
        cost += FOR_ANY_HALL * (self.people.mixed and name in self.people.anywhere) + WAITED_FOR * waited_for
        crew = self.crews[name]
        cost += LEAVES * self._leaves(job, name, left) + HOURS * crew.worked
        cost += OTHER_CREW * (job.follows and name not in self.named.crew[i - 1].values())
        return cost + OTHER_TYPE * (crew.last_type not in ("", job.machine_type))

    def _leaves(self, job: Job, name: str, left: Ints) -> int:
        """Slots of the job from the first one on that the crew cannot stay for."""
        stays = self._free_for(name, job.key.hall)[left]
        if job.wanted:
            stays = stays | np.array([job.wanted.get(int(s)) == name for s in left])
        gone = np.flatnonzero(~stays)
        return int(left.size - gone[0]) if gone.size else 0

    def _free_for(self, name: str, hall: str) -> Bools:
        """Where the crew is at work in the hall and no firm booking has it."""
        if (name, hall) not in self._stays:
            free = self.people.there[name, hall].copy()
            free[[slot for slot in self.crews[name].reserved if slot < free.size]] = False
            self._stays[name, hall] = free
        return self._stays[name, hall]


def share_out(jobs: Sequence[Job], people: Crews) -> Named:
    """A crew for every slot of every job, as far as there are any."""
    return _Sharing(jobs, people).run()
