"""A Dask cluster elsewhere that plays runs: the same code as the processes here (extra `cluster`)."""

import logging
from collections.abc import Iterator
from concurrent.futures import CancelledError, Executor
from contextlib import contextmanager
from typing import Any

from tracker.errors import TrackerError, UsageError

CONNECT_S = 5
"""After so long a scheduler that does not answer counts as not there."""


@contextmanager
def cluster(address: str) -> Iterator[tuple[Executor, int]]:
    """(who plays, how many side by side) at the scheduler of an address, as `tcp://10.0.0.5:8786`.

    UsageError where the library is not installed or the address is none, TrackerError where nobody answers there, no worker
    is at work, or the cluster is lost meanwhile.
    """
    try:
        from distributed import Client, KilledWorker
    except ImportError as error:
        raise UsageError("cluster-not-installed") from error
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
        yield client.get_executor(), workers
    except (KilledWorker, CancelledError, OSError) as error:
        raise TrackerError("cluster-lost", address=address) from error
    finally:
        client.close(timeout=CONNECT_S)
