"""One set of processes that run commands, and a mill on each database, for all tests of faults."""

import os

import pytest
from commands import Commands
from mills import FIRST, PostgresMills, SQLiteMills, write_books


@pytest.fixture(scope="package")
def commands(tmp_path_factory):
    if not hasattr(os, "pidfd_open"):
        pytest.skip("processes are killed by their descriptor, which this system does not have: run these on Linux")
    folder = tmp_path_factory.mktemp("mill")
    write_books(folder)
    made = Commands(FIRST, folder)
    made.run("--help", folder=folder, db="")  # when it answers, the mill is there
    yield made
    made.close()


@pytest.fixture(scope="package")
def sqlite(commands):
    return SQLiteMills(commands)


@pytest.fixture(scope="package")
def postgresql(commands, postgres):
    return PostgresMills(commands, postgres)


@pytest.fixture(params=["sqlite", "postgresql"])
def mills(request):
    return request.getfixturevalue(request.param)
