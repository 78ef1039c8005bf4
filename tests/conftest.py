"""For every test: no terminal's width from outside, the longest tests begun first where several run side by side, new mills
made quickly, statements worked out once, and no screen's script left behind as the main module, which processes begun later
would run."""

import os
import sys

import pytest

os.environ.pop("COLUMNS", None)  # what runs tests side by side sets it, and it would shape our tables

MAIN = sys.modules["__main__"]
LONGEST = ("tests/cli/test_demo.py", "tests/browser/", "tests/faults/")


def pytest_configure():
    import empty_mills
    import one_dialect

    from tracker.store import opening

    opening.upgrade = empty_mills.upgrade
    one_dialect.share()


def pytest_collection_modifyitems(items):
    items.sort(key=lambda item: not item.nodeid.startswith(LONGEST))
    if any("/dashboards/" in item.nodeid for item in items):
        _without_components()


def _without_components():
    """A screen by itself needs none of other packages, for which each one would look through all that is installed: two thirds
    of the time of its test."""
    from streamlit.components.v2 import manifest_scanner

    manifest_scanner.scan_component_manifests = list


def pytest_runtest_teardown():
    sys.modules["__main__"] = MAIN


@pytest.fixture(scope="session")
def people():
    """Four processes that each do one thing to one database at once."""
    from people import four_people

    with four_people() as pool:
        yield pool


@pytest.fixture(scope="session")
def postgres():
    """URL of a database on a server of this process's own, on which tests make further ones."""
    from postgres_server import postgres_server

    with postgres_server() as url:
        yield url
