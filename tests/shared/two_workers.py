"""A Dask cluster of the test's own process, on a port of this machine, begun once for all tests."""

import pytest
from distributed import LocalCluster


@pytest.fixture(scope="session")
def two_workers():
    """Its address."""
    with LocalCluster(
        n_workers=2, threads_per_worker=1, processes=False, protocol="tcp", host="127.0.0.1", dashboard_address=None
    ) as started:
        yield started.scheduler_address
