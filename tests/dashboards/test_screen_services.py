"""The services that only the screens call."""

from dataclasses import replace
from datetime import timedelta

import pytest
from opened import here
from refusals import refused
from screen_mill import AS_OF, NINE, SEVEN, TEN, at, put, small_mill, small_plan

from tracker.domain.progress import Stage, StageChange
from tracker.domain.stock import Reservation
from tracker.domain.windows import Window, WindowKind
from tracker.errors import DataError, message
from tracker.services.screens.bookings import awaited, bookings
from tracker.services.screens.loom_sheet import loom_list, loom_sheet
from tracker.services.screens.state import database_state
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    return put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))


def window(number: int, p50_at) -> Window:
    return Window(SEVEN, number, WindowKind.REPEAT, AS_OF, 1, 0, p50_at, p50_at, p50_at, p50_at, p50_at, None, None,
                  None, 1, 1, 1, 2)  # fmt: skip


# ---- state


def test_the_mark_stays_while_nothing_is_written(db):
    assert database_state(here(db)).mark == database_state(here(db)).mark


@pytest.mark.parametrize(
    "write",
    [
        lambda uow: uow.save_plan(small_plan(small_mill()), published=True),
        lambda uow: uow.add_stage(StageChange(SEVEN, Stage.IN_WORK, AS_OF, "fitter")),
        lambda uow: uow.set_reservations([Reservation(SEVEN, "RAIL", 1)]),
        lambda uow: uow.add_answers({"width": "inch"}),
    ],
    ids=["plan", "stage", "reservation", "answer"],
)
def test_every_write_changes_the_mark(db, write):
    before = database_state(here(db)).mark
    with open_store(db).unit_of_work() as uow:
        write(uow)
        uow.commit()
    assert database_state(here(db)).mark != before


def test_another_database_in_the_same_place_has_another_mark(tmp_path):
    mill, path = small_mill(), tmp_path / "mill.db"
    before = database_state(here(put(path, mill, small_plan(mill)))).mark
    for file in tmp_path.glob("mill.db*"):
        file.unlink()
    later = small_plan(mill)
    written_anew = put.__wrapped__  # and not copied from the first
    assert database_state(here(written_anew(path, mill, later))).mark != before  # the plan was made at another moment


def test_the_screens_look_at_a_plan_that_lies_ahead(tmp_path):
    mill = small_mill()
    far = replace(small_plan(mill), as_of=AS_OF + timedelta(days=36500))
    assert database_state(here(put(tmp_path / "far.db", mill, far))).as_of == far.as_of


# ---- the board


def test_a_booking_waits_for_the_beam_out_nearest_to_the_planned_one():
    booking = small_plan(small_mill()).bookings[0]  # planned for Tuesday 5 January, 21:00 UTC
    windows = [window(1, at(4, 20)), window(2, at(6, 3)), window(3, at(14, 0))]
    assert awaited(booking, windows) is windows[1]
    assert awaited(replace(booking, kind=WindowKind.STANDING), windows) is None
    assert awaited(booking, []) is None


def test_a_conversion_in_work_waits_for_no_beam_out(db):
    with open_store(db).unit_of_work() as uow:
        uow.add_stage(StageChange(SEVEN, Stage.IN_WORK, AS_OF, "fitter"))
        uow.commit()
    rows = {row.booking.key: row for row in bookings(here(db), AS_OF).rows}
    assert rows[SEVEN].beam_out is None and rows[SEVEN].stage == "in work"
    assert rows[TEN].beam_out is not None


def test_the_board_names_every_hall_and_type_and_when_it_works(db):
    board = bookings(here(db), AS_OF)
    assert board.halls == ("Hall 1", "Hall 2") and board.machine_types == ("AJ-N", "RP-W")
    assert board.working["Hall 1"][0] == (at(4, 5), at(4, 13))  # Monday 06:00 to 14:00 in Vienna


# ---- looms


def test_the_list_has_every_loom_in_natural_order(db):
    looms = loom_list(here(db)).looms
    assert [line.key for line in looms] == [SEVEN, TEN, NINE]
    assert [line.stage for line in looms] == ["booked", "booked", "to survey"]
    assert looms[2].booking is None


def test_a_sheet_knows_booking_other_dates_and_origins(db):
    sheet = loom_sheet(here(db), "A-7", as_of=AS_OF)
    assert sheet.booking and sheet.booking.firm and sheet.left_over is None
    assert [other.extra_cost for other in sheet.other_dates] == [55.0]
    assert sheet.windows[0].mean_at == at(5, 21)
    width = next(fact for fact in sheet.facts if fact.heading == "Reed width")
    assert (width.value, width.unit) == (190, "cm")
    assert width.origin and (width.origin.file, width.origin.cell, width.origin.who) == ("mill.xlsx", "E2", "planner")


def test_a_sheet_without_method_says_so(tmp_path):
    bare = replace(small_mill(), method=replace(small_mill().method, operations=(), kit_lines=()))
    sheet = loom_sheet(here(put(tmp_path / "mill.db", bare)), "A-7")
    assert sheet.scope is None and sheet.no_scope == message("no-method")


def test_an_unknown_loom_is_refused(db):
    with refused(DataError, "no loom A-99"):
        loom_sheet(here(db), "A-99")
