"""On the sample mill, loaded from its workbooks; the plan is the baseline, which needs no solver."""

import sqlite3
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from shutil import copy

import pytest
from opened import here
from published_sample import protect, published_sample
from refusals import refused
from said import lines

from tracker.domain.plan import Plan
from tracker.errors import DataError
from tracker.planning.baseline import walk
from tracker.services.plans.baseline import BaselineReport, baseline
from tracker.services.plans.verify import faults, verify
from tracker.store import open_store
from tracker.words import ENGLISH
from tracker.words.formats import day


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Plan]:
    """A database with the sample mill and a published plan."""
    return published_sample(tmp_path_factory.mktemp("sample") / "mill.db")


@pytest.fixture
def database(published: tuple[Path, Plan], tmp_path: Path) -> str:
    """A copy to change."""
    return str(copy(published[0], tmp_path / "mill.db"))


def test_a_published_plan_read_back_holds(database: str, published: tuple[Path, Plan]) -> None:
    report = verify(here(database))
    assert report.violations == ()
    assert report.sound
    assert report.record()["bookings"] == len(published[1].bookings)
    assert lines(report)[0].startswith(f"The published plan holds: {len(published[1].bookings)} bookings")


def test_a_loom_protected_since_then_is_found(database: str, published: tuple[Path, Plan]) -> None:
    booking = next(b for b in reversed(published[1].bookings) if b.key.hall == "Hall 2")
    until = (booking.start + timedelta(days=3)).date()
    protect(database, booking.key, until)
    report = verify(here(database))
    assert not report.sound
    assert [
        line
        for line in map(ENGLISH.line, report.violations)
        if f"loom {booking.key} " in line and f"protected until {day(until)} included" in line
    ]
    assert lines(report)[0].startswith(f"The published plan does not hold any more: {len(report.violations)} finding")
    assert lines(report)[-1].startswith("Plan again")


def test_history_touched_by_another_program_is_told_beside_the_plan(
    database: str, published: tuple[Path, Plan]
) -> None:
    with sqlite3.connect(database) as other:
        other.execute("DROP TRIGGER stock_movements_update")
        other.execute("UPDATE stock_movements SET quantity = quantity + 1 WHERE id = 3")
    report = verify(here(database))
    assert (report.violations, report.sound) == ((), False)
    assert len(report.record()["history_touched"]) == 2  # the guard, and the load that booked the opening stock
    assert lines(report)[1:3] == [
        "History was touched: 2 findings.",
        "the database no longer guards stock_movements against changes",
    ]
    assert lines(report)[3].startswith("what was written to stock_movements on ")


def test_without_a_published_plan_there_is_nothing_to_verify(tmp_path: Path) -> None:
    open_store(tmp_path / "empty.db", make=True)
    with refused(DataError, r"no plan is published yet; make one: beamslot plan --publish"):
        verify(here(tmp_path / "empty.db"))


def test_the_baseline_is_held_against_the_published_plan(
    database: str, published: tuple[Path, Plan], monkeypatch: pytest.MonkeyPatch
) -> None:
    # the published plan keeps one limit, so the best of several cannot be dearer; moves are charged against it. By itself ten are
    # tried, each for as long
    monkeypatch.setattr(walk.baseline, "__defaults__", ((4.0, 12.0, 48.0),))
    report = baseline(here(database))
    assert report.published == published[1]
    assert report.worth == pytest.approx(report.baseline.objective - published[1].objective)
    assert report.waiting_limit_h in walk.LIMITS_H
    assert len(lines(report)) == 2


def test_a_plan_of_another_moment_is_not_compared(published: tuple[Path, Plan]) -> None:
    report = BaselineReport(replace(published[1], objective=900.0), None)
    assert report.worth is None
    assert len(lines(report)) == 1


def test_the_screens_are_told_what_does_not_hold(database: str, published: tuple[Path, Plan]) -> None:
    assert faults(here(database)) == ()
    booking = published[1].bookings[-1]
    protect(database, booking.key, booking.start.date())
    assert any(
        fault.code == "starts-protected" and fault.params["loom"] == booking.key for fault in faults(here(database))
    )


def test_history_touched_is_told_where_no_plan_is_published_too(tmp_path: Path) -> None:
    open_store(tmp_path / "mill.db", make=True)
    with sqlite3.connect(tmp_path / "mill.db") as other:
        other.execute("DROP TRIGGER conversions_delete")
    says = (
        r"history was touched \(the database no longer guards conversions against changes\), and no plan is published"
    )
    with refused(DataError, says):
        verify(here(tmp_path / "mill.db"))
