"""Several people at once: real processes that each do one thing to one database, begun together."""

import multiprocessing
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager

from tracker.errors import TrackerError
from tracker.words import ENGLISH

PEOPLE = 4
ANEW = multiprocessing.get_context("forkserver")
"""Processes that inherit no open database; what all of them need is brought in once."""
ANEW.set_forkserver_preload(["tracker.services.loading.load", "tracker.services.plans.plan", "tracker.services.work.record",
                             "tracker.services.parts.reservations", "tracker.services.parts.stock"])  # fmt: skip

Act = Callable[[str, int], object]
"""What a person does: to which database, as which of them."""


@contextmanager
def four_people() -> Iterator[ProcessPoolExecutor]:
    """Four processes that begin each act together; each waits for the others, so each does one of the four."""
    barrier = ANEW.Barrier(PEOPLE)
    with ProcessPoolExecutor(PEOPLE, mp_context=ANEW, initializer=_start, initargs=(barrier,)) as pool:
        yield pool


def at_once(people: ProcessPoolExecutor, acts: Act | Sequence[Act], db: str) -> list[str]:
    """What became of each person's attempt at `acts`, one for all or one each: `done`, or the refusal."""
    each = acts if isinstance(acts, Sequence) else [acts] * PEOPLE
    return list(people.map(_try, each, [db] * PEOPLE, range(PEOPLE)))


def _start(barrier) -> None:
    global all_here
    all_here = barrier


def _try(act: Act, db: str, person: int) -> str:
    all_here.wait(60)
    try:
        act(db, person)
    except TrackerError as refusal:
        return ENGLISH.line(refusal)
    return "done"
