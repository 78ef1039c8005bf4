"""The reference plan: what was planned stays, whatever is published after it, and the term chooses another."""

from datetime import date, timedelta

import openpyxl
import pytest
from opened import here
from stock_room_samples import AT, KITS, PLAN, booking, fill_with_method, plan_of

from tracker.services.loading.load import load
from tracker.services.screens.status import status
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.words import ENGLISH


@pytest.fixture
def mill(tmp_path):
    """Plan 1 books looms 1, 2 and 10 for the weeks W03, W04 and W05 of 2026 and is published with the samples."""
    return fill_with_method(str(tmp_path / "mill.db"))


def publish(db: str, *looms: str, week_later: bool = False) -> int:
    days = {loom: date(2026, 2, 16) if week_later else KITS[loom][0] for loom in looms}
    with open_store(db).unit_of_work("planner") as uow:
        number = uow.save_plan(
            plan_of(*(booking(loom, day, KITS[loom][1]) for loom, day in days.items())), published=True
        )
        uow.commit()
    return number


def planned(db: str) -> dict[str, int]:
    return {week.week: week.planned for week in status(here(db), AT).weeks if week.planned}


def set_reference(db: str, number: object, tmp_path):
    book = openpyxl.Workbook()
    book.active.title = "Terms"
    for row in (["Term", "Value"], ["reference plan", number]):
        book.active.append(row)
    book.save(tmp_path / "terms.xlsx")
    return load(here(db), [tmp_path / "terms.xlsx"])


def test_later_plans_leave_what_was_planned(mill):
    before = planned(mill)
    assert before == {"2026-W03": 1, "2026-W04": 1, "2026-W05": 1}
    publish(mill, "10", week_later=True)
    assert planned(mill) == before
    report = status(here(mill), AT)
    # in force: loom 10 alone, in 2026-W08
    assert {week.week: week.expected for week in report.weeks if week.expected} == {"2026-W08": 1}
    assert report.planned_cost.total == sum(b.cost.total for b in PLAN.bookings)
    assert "what plan 1 of" in ENGLISH.say(report.reference_says)


def test_the_term_chooses_another_and_looms_done_before_it_stay_planned(mill, tmp_path):
    number = publish(mill, "2", "10", week_later=True)
    report = set_reference(mill, number, tmp_path)
    assert report.written, report.refusal
    # looms 2 and 10 by plan 2; loom 1, which it does not know, as plan 1 had it
    assert planned(mill) == {"2026-W03": 1, "2026-W08": 2}
    assert "as the term chooses it" in ENGLISH.say(status(here(mill), AT).reference_says)


def test_a_plan_that_was_never_published_is_refused_by_its_cell(mill, tmp_path):
    report = set_reference(mill, 9, tmp_path)
    assert not report.written
    (found,) = [finding for finding in report.findings if finding.code == "reference-not-there"]
    assert (found.sheet, found.cell) == ("Terms", "B2")
    assert status(here(mill), AT).reference.number == 1


def test_without_a_published_plan_nothing_is_planned(tmp_path):
    with open_store(tmp_path / "new.db", make=True).unit_of_work("planner") as uow:
        uow.commit()
    report = status(here(tmp_path / "new.db"), AT)
    assert report.reference is None and report.weeks == () and report.late == ()


def test_a_loom_in_work_is_still_expected_and_late_once_another_plan_books_it_no_more(mill):
    record_stage(here(mill), "1", "in work", told=StageTold(at=AT + timedelta(days=7, hours=1), why="began early"))
    publish(mill, "10", week_later=True)  # the plan in force books loom 10 alone, in 2026-W08
    report = status(here(mill), AT + timedelta(days=14))
    # loom 1 should have been done on 12 January, in W03; it is expected in the week looked at, that of Mon 19 January
    assert {week.week: week.expected for week in report.weeks if week.expected} == {"2026-W04": 1, "2026-W08": 1}
    assert report.pace.to_come == 2
    assert [(late.what.code, late.key.loom, late.days) for late in report.late] == [("late-end", "1", 7)]
