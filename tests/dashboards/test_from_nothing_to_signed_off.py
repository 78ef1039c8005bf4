"""An empty database, a mill's own untidy list with a question in it, and no terminal: to the first plan in force in fewer than 15
steps, then to a loom that is signed off. A step is a press, a choice, files dropped, or a screen opened."""

from datetime import timedelta
from pathlib import Path

import pytest
from mill_sheets import workbook
from quick_jobs import quick_jobs  # noqa: F401
from streamlit.testing.v1 import AppTest
from three_looms import at

from tracker.services.context import Context
from tracker.services.jobs import desk
from tracker.services.own_clock import give_own_clock, set_clock
from tracker.store import open_store

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
LOOMS = [["Loom", "Hall", "Machine type", "Reed width", "Speed (picks/min)", "Efficiency", "Saving per day"],
         ["1", "H", "AJ", 110, 600, 90, 2.4], ["2", "H", "AJ", 130, 600, 90, 2.4], ["3", "H", "AJ", 143, 600, 90, 2.4]]  # fmt: skip
"""Widths that can be cm or inches: the reader has to ask."""
LEFT = (("1", 518.4), ("2", 1036.8), ("3", 12960))
REST = {
    "Warps": [["Loom", "Hall", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"],
              *([loom, "H", 0, "A", 20000, left, "2027-01-04 00:00"] for loom, left in LEFT)],
    "Articles": [["Article", "Pick density (picks/cm)", "Take-up (%)", "Contribution per metre"], ["A", 20, 0, 0.5]],
    "Changes": [["Kind", "Hours (h)"], ["repeat", 2]],
    "Crews": [["Crew", "Trade", "Heads", "Shift start", "Shift end"], ["F1", "fitter", 2, "06:00", "18:00"]],
    "Operations": [["Step", "Operation", "Minutes (min)", "Trade", "Heads"], [10, "Mount", 300, "fitter", 2]],
    "Terms": [["Term", "Value"], ["start", "2027-01-04"], ["horizon (days)", 42], ["soak (days)", 0]],
}  # fmt: skip


class Person:
    """Who does it, and how many steps that took."""

    def __init__(self):
        self.steps = 0
        self.app = AppTest.from_string("")

    def opens(self, screen: str, **address: str) -> None:
        self.app = AppTest.from_string(
            f"from dashboards.screens import {screen}\n{screen}.page()\n", default_timeout=60
        )
        for name, value in address.items():
            self.app.query_params[name] = value
        self._step(self.app)

    def drops(self, *files: Path) -> None:
        self._step(self.app.file_uploader[0].set_value([(file.name, file.read_bytes(), XLSX) for file in files]))

    def presses(self, label: str) -> None:
        there = {one.label: one for one in self.app.button}
        assert label in there, (list(there), [one.label for one in self.app.radio])
        self._step(there[label].click())

    def chooses(self, answer: str) -> None:
        self.app.radio[0].set_value(answer)  # inside a form: it is sent with the next press
        self.steps += 1

    def _step(self, done) -> None:
        self.steps += 1
        done.run()
        assert not self.app.exception, self.app.exception
        assert not self.app.error, self.app.error


@pytest.fixture
def mill(tmp_path, monkeypatch) -> Context:
    """Nothing in it; it is Monday 4 January 2027, 06:00."""
    path = str(tmp_path / "mill.db")
    open_store(path, make=True)
    give_own_clock(Context(path), at(0, 6))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return Context(path)


def test_from_an_empty_database_to_a_signed_off_loom(mill, tmp_path, quick_jobs):  # noqa: F811
    one = Person()
    one.opens("load")
    one.drops(workbook(tmp_path / "our looms.xlsx", {"Looms": LOOMS}), workbook(tmp_path / "mill.xlsx", REST))
    one.chooses("cm")
    one.presses("Use these answers")
    one.presses("Write to the database")
    assert "All that a plan needs is there" in one.app.info[0].value
    one.opens("bookings")
    assert "Make the first one below" in one.app.info[0].value
    one.presses("Make a plan")
    assert desk.wait(mill, 1, 60)
    one.app.run()
    one.presses("Publish plan 1")
    one.presses("Yes: Publish plan 1")
    assert "Plan 2 is in force: 3 looms booked" in one.app.success[0].value
    assert one.steps == 9, "of fewer than 15"

    with mill.reading() as uow:
        plan = uow.published_plan()
    assert plan is not None
    first = min(plan.bookings, key=lambda booking: booking.start)
    set_clock(mill, first.start)
    one.opens("today", crew="F1", loom=first.key.loom, hall="H")
    one.presses("Start: the loom is stopped now")
    set_clock(mill, first.end)
    one.app.segmented_control[0].set_value("today-tab-end").run()
    one.presses("The loom is at speed: run-in begins")
    set_clock(mill, first.end + timedelta(hours=1))
    one.presses("Sign off")
    one.presses("Yes: Sign off")
    with mill.reading() as uow:
        assert uow.stages()[first.key].stage.value == "signed off"
