"""What has to be named: conversions with their slots, and the crews that can take them."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.shifts import crews_of
from tracker.planning.checks.case import Case, Hold

Bools = NDArray[np.bool_]


@dataclass(frozen=True)
class Job:
    """A conversion, booked or in work."""

    key: LoomKey
    machine_type: str
    slots: tuple[int, ...]
    wanted: Mapping[int, str] = field(default_factory=dict)
    """Slot → the crew that has it already, by the last published plan or because it is at work on it."""
    follows: bool = False
    """Whether it is the second part of the job before it, after the ordinary change."""


@dataclass(frozen=True)
class Crews:
    """The crews of the lead trade by name."""

    names: tuple[str, ...]
    there: Mapping[tuple[str, str], Bools]
    """(crew, hall) → whether it can work at a conversion there, shape (slots,)."""
    anywhere: frozenset[str]
    """Crews with a row for any hall."""
    mixed: bool
    """Whether crews of a hall of their own stand beside crews for any hall."""

    def at_work(self, crew: str, hall: str, slot: int) -> bool:
        there = self.there[crew, hall]
        return slot < there.size and bool(there[slot])


def jobs_of(case: Case) -> list[Job]:
    """In work first, then the bookings; the two parts of a conversion one after the other."""
    in_work = {item.key: item.crew for item in case.problem.in_work}
    return [part for hold in case.holds for part in _parts(case, hold, _job(case, hold, in_work.get(hold.key)))]


def _parts(case: Case, hold: Hold, job: Job) -> Iterator[Job]:
    first = tuple(slot for slot in job.slots if hold.pause is None or case.begin(slot) < hold.pause[0])
    second = job.slots[len(first) :]
    if first:
        yield replace(job, slots=first)
    if second:
        yield replace(job, slots=second, follows=bool(first))


def _job(case: Case, hold: Hold, at_it: str | None) -> Job:
    loom = case.mill.looms[hold.key]
    if at_it:
        wanted = dict.fromkeys(hold.slots, at_it)
    else:
        old = case.firm.get(hold.key) if hold.fixed else None
        wanted = dict(_published(case, old, hold.slots)) if old else {}
    return Job(hold.key, loom.machine_type, hold.slots, wanted)


def _published(case: Case, old: Booking, slots: Iterable[int]) -> Iterator[tuple[int, str]]:
    """Slot → crew of a firm booking as it was published; where it goes on longer, with the crew that had it last."""
    for slot in slots:
        at = case.begin(slot)
        crew = next((turn.crew for turn in old.crews if turn.start <= at < turn.end), None)
        if crew is None and old.crews and at >= old.crews[-1].end:
            crew = old.crews[-1].crew
        if crew:
            yield slot, crew


def people_of(case: Case, slots: int) -> Crews:
    """`slots`: how many there are before the horizon."""
    rows = crews_of(case.mill, case.terms.lead_trade)
    names = tuple(dict.fromkeys(row.crew for row in rows))
    halls = {key.hall for key in case.mill.looms}
    there = {(name, hall): np.zeros(slots, dtype=bool) for name in names for hall in halls}
    for row in rows:
        for hall in halls:
            there[row.crew, hall][[slot for slot in case.crew_slots(row, hall) if slot < slots]] = True
    anywhere = frozenset(row.crew for row in rows if row.hall is None)
    return Crews(names, there, anywhere, mixed=0 < sum(row.hall is None for row in rows) < len(rows))
