"""The list of plans, and publishing one as it was made; on the sample mill with the plan of the baseline."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from shutil import copy

import pytest
from opened import here
from published_sample import protect, published_sample
from refusals import refused

from tracker.domain.plan import Plan
from tracker.errors import DataError, PlanRefused
from tracker.services.plans.made_plans import made_plan, made_plans, publish_made
from tracker.services.plans.plan import save
from tracker.store import open_store


@pytest.fixture(scope="module")
def sample(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Plan]:
    return published_sample(tmp_path_factory.mktemp("sample") / "mill.db")


@pytest.fixture
def db(sample: tuple[Path, Plan], tmp_path: Path) -> str:
    """Plan 1 is published; plan 2 is the same, saved and not published."""
    path = str(copy(sample[0], tmp_path / "mill.db"))
    assert save(here(path), sample[1], False, None, sample[1]) == 2
    return path


def numbers(db: str) -> list[tuple[int, bool]]:
    return [(entry.number, entry.published) for entry in made_plans(here(db)).entries]


def test_all_plans_are_listed_with_what_they_book(db: str, sample: tuple[Path, Plan]) -> None:
    assert numbers(db) == [(2, False), (1, True)]
    newest = made_plans(here(db)).entries[0]
    assert (newest.bookings, newest.left_over) == (len(sample[1].bookings), len(sample[1].left_over))
    assert made_plan(here(db), 2)[0] == sample[1]
    with refused(DataError, "there is no plan 9; `beamslot plan --list` lists them"):
        made_plan(here(db), 9)


def test_a_saved_plan_is_published_as_it_was_made(db: str, sample: tuple[Path, Plan]) -> None:
    report = publish_made(here(db), 2)
    assert (report.plan, report.number, report.published, report.moves) == (sample[1], 3, True, ())
    assert numbers(db) == [(3, True), (2, False), (1, True)]
    with refused(PlanRefused, "plan 3 is in force already"):
        publish_made(here(db), 3)


def test_a_plan_whose_first_booking_is_past_is_not_published(db: str, sample: tuple[Path, Plan]) -> None:
    first = min(b.start for b in sample[1].bookings if not b.firm)
    assert publish_made(here(db), 2, as_of=first).number == 3
    with refused(PlanRefused, "which is past; plan again"):
        publish_made(here(db), 2, as_of=first + timedelta(minutes=1))


def test_a_plan_that_does_not_hold_any_more_is_not_published(db: str, sample: tuple[Path, Plan]) -> None:
    booking = sample[1].bookings[-1]
    protect(db, booking.key, (booking.start + timedelta(days=3)).date())
    with refused(PlanRefused, f"does not pass the check: .*{booking.key.loom}"):
        publish_made(here(db), 2)
    assert numbers(db) == [(2, False), (1, True)]


def test_a_scenario_is_not_published(db: str, sample: tuple[Path, Plan]) -> None:
    save(here(db), sample[1], False, "third crew", sample[1])
    with refused(PlanRefused, "plan 3 is of the scenario third crew; put the scenario in force"):
        publish_made(here(db), 3)


def test_a_plan_made_before_another_was_published_is_not_published(db: str, sample: tuple[Path, Plan]) -> None:
    later = replace(sample[1], start=date(2027, 1, 5))
    save(here(db), later, True, None, sample[1])
    mine = replace(sample[1], bookings=sample[1].bookings[1:])
    gone = sample[1].bookings[0].key.loom
    with refused(
        PlanRefused, f"another plan was published .*, plan 3 by tester; .* it books loom {gone} .* otherwise"
    ) as two:
        save(here(db), mine, True, None, sample[1])
    assert [finding.params["mine"] for finding in two.value.findings] == [None]  # it is not booked here
    with refused(PlanRefused, "another plan was published .*; both book the same"):
        publish_made(here(db), 2, after=1)
    with open_store(db).reading() as uow:
        assert uow.published_plan() == later
