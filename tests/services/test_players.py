"""Processes, and workers of a cluster, that play runs side by side."""

import sys
from concurrent.futures import CancelledError
from dataclasses import replace
from math import sqrt
from types import ModuleType

import pytest
from opened import here
from refusals import refused
from three_looms import MONDAY, make
from two_workers import two_workers  # noqa: F401

from tracker.errors import TrackerError, UsageError
from tracker.services.cluster import cluster
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.players import players
from tracker.services.plans.rehearse import RehearsalRequest, rehearse


def test_they_do_not_run_the_callers_program_again(tmp_path, monkeypatch):
    """A page of the screens is such a program: it would be drawn in every process."""
    page = tmp_path / "page.py"
    page.write_text("raise SystemExit('ran again')")
    main = ModuleType("__main__")
    main.__file__ = str(page)
    monkeypatch.setitem(sys.modules, "__main__", main)
    with players(2) as two:
        assert two.submit(sqrt, 9.0).result() == 3.0
    assert sys.modules["__main__"] is main


def test_two_workers_of_a_cluster_say_what_one_process_says(tmp_path, two_workers):  # noqa: F811
    db = make(str(tmp_path / "mill.db"))
    plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    ask = RehearsalRequest(runs=12, worries=False, jobs=1, as_of=MONDAY)
    alone = rehearse(here(db), ask)
    assert rehearse(here(db), replace(ask, cluster=two_workers)).result == alone.result


@pytest.mark.parametrize(
    ("address", "kind", "says"),
    [
        (
            "tcp://127.0.0.1:1",
            TrackerError,
            "no cluster answered at tcp://127.0.0.1:1 within 0.5 s; nothing was written",
        ),
        ("hall-2", UsageError, "hall-2 is no address of a cluster"),
    ],
)
def test_a_cluster_that_is_not_there_is_refused(monkeypatch, address, kind, says):
    monkeypatch.setattr("tracker.services.cluster.CONNECT_S", 0.5)
    with refused(kind, says), cluster(address):
        pass


def test_a_cluster_that_is_lost_is_refused(two_workers):  # noqa: F811
    with refused(TrackerError, "was lost; nothing was written"), cluster(two_workers) as (_, workers):
        assert workers == 2
        raise CancelledError
