"""The planner's day through the real server: an untidy list with a question, a plan made by a process of its own, published, what
moves and why once a crew is away, and another plan in force."""

import sys
from datetime import date
from pathlib import Path

import pytest
from conftest import settle
from mill_sheets import workbook
from served import served
from three_looms import at

from tracker.domain.plan import Plan
from tracker.services.context import Context
from tracker.services.own_clock import give_own_clock
from tracker.services.people.absences import record_absence
from tracker.store import open_store

sys.path.insert(0, str(Path(__file__).parents[1] / "dashboards"))
from test_from_nothing_to_signed_off import LOOMS, REST

pytestmark = [pytest.mark.browser, pytest.mark.long]
PATIENT_MS = 60_000


def in_force(db: str) -> Plan:
    with Context(db).reading() as uow:
        plan = uow.published_plan()
    assert plan
    return plan


def press(page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).first.click(timeout=PATIENT_MS)
    settle(page)


def publish(page, number: int) -> None:
    press(page, f"Publish plan {number}")
    press(page, f"Yes: Publish plan {number}")
    page.get_by_text(f"Plan {number + 1} is in force").first.wait_for(timeout=PATIENT_MS)


def test_the_planners_day(open_page, tmp_path):
    db = str(tmp_path / "mill.db")
    open_store(db, make=True)
    give_own_clock(Context(db), at(0, 6))
    files = [workbook(tmp_path / "our looms.xlsx", {"Looms": LOOMS}), workbook(tmp_path / "mill.xlsx", REST)]
    with served(db) as screens:
        page = open_page(f"{screens.url}/load")
        page.set_input_files("input[type=file]", files)
        page.get_by_test_id("stRadio").get_by_text("cm", exact=True).first.click(timeout=PATIENT_MS)
        press(page, "Use these answers")
        press(page, "Write to the database")
        page.get_by_text("All that a plan needs is there").wait_for(timeout=PATIENT_MS)

        page = open_page(f"{screens.url}/bookings")
        press(page, "Make a plan")
        page.get_by_role("button", name="Publish plan 1", exact=True).wait_for(timeout=PATIENT_MS)
        publish(page, 1)
        first = {b.key.loom: b.start for b in in_force(db).bookings}

        # somebody else enters that the crew is away on the day of the first booking: the open page hears of it by itself
        away = min(first.values()).date()
        record_absence(Context(db), "F1", away, away, reason="ill")
        page.get_by_text("The published plan cannot be kept as it is").wait_for(timeout=PATIENT_MS)
        settle(page)
        press(page, "Make a plan")
        page.get_by_text("What it moves, and why").wait_for(timeout=PATIENT_MS)
        assert "is away" in page.locator(".sheet").first.inner_text()
        publish(page, 3)
    again = {b.key.loom: b.start for b in in_force(db).bookings}
    assert again != first and away not in {start.date() for start in again.values()} and away >= date(2027, 1, 4)
