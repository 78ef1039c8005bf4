"""Jobs whose processes fork from the test, which has everything imported: one that is started anew needs seconds for that. What
jobs are left at the end is ended."""

from multiprocessing import get_context

import pytest

from tracker.rehearsal.rehearsing import InThisProcess
from tracker.services.jobs import desk, running
from tracker.services.plans import rehearse


@pytest.fixture
def quick_jobs(monkeypatch):
    monkeypatch.setattr(running, "APART", get_context("fork"))
    monkeypatch.setattr(rehearse, "players", lambda _jobs: InThisProcess())
    yield
    desk.end_all(60)
