"""A Dask cluster elsewhere that does our work: the same code as the processes here (extra `cluster`). Snapshots of the mill travel
there and results back, never a database."""

import logging
import socket
from collections.abc import Callable, Iterator
from concurrent.futures import CancelledError, Executor
from contextlib import contextmanager
from importlib.util import find_spec
from threading import Event as Done
from time import monotonic
from typing import Any, TypeVar
from urllib.parse import urlsplit
from uuid import uuid4

from tracker.domain import messages
from tracker.errors import Message, TrackerError, UsageError

CONNECT_S = 3
"""After so long a scheduler that does not answer counts as not there."""
ASKED_EVERY_S = 0.5
"""A worker asks the scheduler so often whether it is to stop, and who waits for it whether it is done."""
R = TypeVar("R")
Progress = Callable[[Message, float], None]
Stop = Callable[[], bool]


def require_there(address: str) -> None:
    """Whether somebody listens at the address of a scheduler, as `tcp://10.0.0.5:8786`; found out at once.

    UsageError where the library is not installed or the address is none, TrackerError where nobody does.
    """
    if find_spec("distributed") is None:
        raise UsageError("cluster-not-installed")
    try:
        parts = urlsplit(address)
        place = parts.hostname, parts.port
    except ValueError:
        place = None, None
    if not (place[0] and place[1]):
        raise UsageError("cluster-no-address", address=address)
    try:
        socket.create_connection((place[0], place[1]), CONNECT_S).close()
    except OSError as error:
        raise TrackerError("cluster-not-there", address=address, seconds=CONNECT_S) from error


@contextmanager
def cluster(address: str) -> Iterator[tuple[Executor, int]]:
    """(who works, how many side by side) at the scheduler of an address. Raises as `require_there`, and TrackerError where no
    worker is at work, or the cluster is lost meanwhile."""
    with _connected(address) as (client, workers):
        yield client.get_executor(), workers


def run_there(address: str, do: Callable[[Progress, Stop], R], progress: Progress, stop: Stop) -> R:
    """Have one worker of a cluster do it; what it tells and the wish to stop travel. Raises as `cluster`, and what `do` raises."""
    from distributed import Event

    with _connected(address) as (client, _):
        name = f"beamslot-{uuid4().hex}"
        ended = Event(name, client=client)
        client.subscribe_topic(name, lambda event: _told(event[1], progress))
        future: Any = client.submit(_do_there, do, name, pure=False)
        done = Done()
        future.add_done_callback(lambda _: done.set())
        while not done.wait(ASKED_EVERY_S):
            if stop():
                ended.set()
        return future.result()


def _told(event: Any, progress: Progress) -> None:
    progress(messages.read(event["what"]), event["part"])


def _do_there(do: Callable[[Progress, Stop], R], name: str) -> R:
    """In a thread of a worker. It is to stop, too, once whoever asked for it is gone."""
    from distributed import Event, get_worker

    worker: Any = get_worker()
    task = worker.state.tasks[worker.get_current_task()]
    ended, asked_at, wish = Event(name), monotonic(), False

    def stop() -> bool:
        nonlocal asked_at, wish
        if not wish and monotonic() - asked_at > ASKED_EVERY_S:
            wish, asked_at = bool(ended.is_set()) or task.state != "executing", monotonic()
        return wish

    return do(lambda what, part: worker.log_event(name, {"what": messages.kept(what), "part": part}), stop)


@contextmanager
def _connected(address: str) -> Iterator[tuple[Any, int]]:
    require_there(address)
    from distributed import Client, KilledWorker

    logging.getLogger("distributed").setLevel(logging.CRITICAL)  # what went wrong is said once, by us
    try:
        client = Client(address, timeout=CONNECT_S, set_as_default=False)
    except ValueError as error:
        raise UsageError("cluster-no-address", address=address) from error
    except OSError as error:  # a timeout is one
        raise TrackerError("cluster-not-there", address=address, seconds=CONNECT_S) from error
    try:
        there: Any = client.nthreads()  # typed as if it could be awaited, which it cannot here
        workers = len(there)
        if not workers:
            raise TrackerError("cluster-without-workers", address=address)
        yield client, workers
    except (KilledWorker, CancelledError, OSError) as error:
        raise TrackerError("cluster-lost", address=address) from error
    finally:
        client.close(timeout=CONNECT_S)
