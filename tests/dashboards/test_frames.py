"""Reports become frames: gaps filled, wall clock kept, words in full."""

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from opened import here
from screen_mill import AS_OF, SEVEN, at, put, small_mill, small_plan

from dashboards.frames import (
    board_frame,
    cost_frame,
    day_ms,
    monday_of,
    progress_frame,
    rest_frame,
    stage_frame,
    wall_ms,
)
from tracker.mill_state.progress import WeekCount
from tracker.services.screens.bookings import bookings
from tracker.services.screens.status import status

VIENNA = ZoneInfo("Europe/Vienna")
DAY_MS = 86_400_000


@pytest.fixture
def db(tmp_path):
    return put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))


def test_wall_clock_milliseconds_are_the_local_reading():
    # 05:00 UTC is 06:00 in Vienna in winter, 07:00 in summer
    assert wall_ms(datetime(2027, 1, 4, 5, tzinfo=UTC), VIENNA) == day_ms(date(2027, 1, 4)) + DAY_MS / 4
    assert wall_ms(datetime(2027, 7, 5, 5, tzinfo=UTC), VIENNA) == day_ms(date(2027, 7, 5)) + DAY_MS / 24 * 7


def test_weeks_without_a_booking_stand_in_the_frame():
    weeks = [WeekCount("2026-W53", 2, 1, 2, 1), WeekCount("2027-W02", 3, 0, 5, 1)]
    frame = progress_frame(weeks, date(2027, 1, 6))
    planned = frame[frame["what"] == "planned"]
    # 2026 has 53 weeks (ISO 8601, computed: 31 December 2026 is 2026-W53-4), so W01 of 2027 lies between
    assert list(planned["week"]) == ["2026-W53", "2027-W01", "2027-W02"]
    assert list(planned["total"]) == [2, 2, 5]
    assert list(planned["in_week"]) == [2, 0, 3]
    assert planned["ends_ms"].iloc[0] == day_ms(date(2027, 1, 4))


def test_what_is_done_ends_with_this_week():
    weeks = [WeekCount("2026-W53", 2, 1, 2, 1), WeekCount("2027-W02", 3, 0, 5, 1)]
    frame = progress_frame(weeks, date(2027, 1, 6))  # a Wednesday of 2027-W01
    assert list(frame[frame["what"] == "done"]["week"]) == ["2026-W53", "2027-W01"]


def test_what_is_expected_begins_with_this_week():
    # one was done in W53, two are still to come in W02
    weeks = [WeekCount("2026-W53", 2, 1, 2, 1, 1, 1), WeekCount("2027-W02", 3, 0, 5, 1, 2, 3)]
    expected = progress_frame(weeks, date(2027, 1, 6)).query("what == 'expected'")
    assert list(zip(expected["week"], expected["total"], strict=True)) == [("2027-W01", 1), ("2027-W02", 3)]


def test_no_weeks_no_rows():
    assert progress_frame([], date(2027, 1, 4)).empty


def test_the_monday_of_an_iso_week():
    assert monday_of("2026-W53") == date(2026, 12, 28)


def test_stages_and_costs(db):
    report = status(here(db), AS_OF)
    stages = dict(zip(*(stage_frame(report)[name] for name in ("stage", "looms")), strict=True))
    # A-9 lacks its rail; two rails are on hand for the two booked looms, none is reserved: booked, not kitted
    assert (stages["to survey"], stages["booked"], stages["kitted"]) == (1, 2, 0)
    costs = cost_frame(report)
    # 400 + 0, 40 + 0, 250 + 190, 310 + 310; what is nothing is left out; nothing is done, so expected is as planned
    amounts = ["400 EUR", "40 EUR", "440 EUR", "620 EUR"]
    assert list(costs["says"]) == [amount for amount in amounts for _ in range(2)]
    assert list(costs["term"])[::2] == ["lost production", "late beam-outs", "labour", "parts"]
    assert list(costs["what"])[:2] == ["planned", "expected"]


def test_the_board_frame_has_the_words_and_the_spread(db):
    board = bookings(here(db), AS_OF)
    frame = board_frame(board.rows, board.zone)
    assert list(frame["row"]) == ["A-7", "A-10"]
    assert list(frame["says"]) == ["style, firm", "repeat, pilot"]
    assert frame["when"].iloc[0] == "Wed 6 Jan 2027 06:00 to 10:00"
    assert frame["when"].iloc[1] == "Thu 7 Jan 2027 08:00 to Fri 8 Jan 2027 10:00"
    assert frame["start_ms"].iloc[0] == day_ms(date(2027, 1, 6)) + DAY_MS / 4
    assert (frame["p10_ms"] < frame["p50_ms"]).all() and (frame["p50_ms"] < frame["p90_ms"]).all()


def test_the_board_forecasts_the_beam_out_that_is_waited_for(db):
    row = next(row for row in bookings(here(db), AS_OF).rows if row.booking.key == SEVEN)
    # 699.84 m at 17.496 m/h are 40 h from Monday 05:00 UTC: Tuesday 21:00 UTC; the median lies a little before the mean
    assert row.beam_out is not None
    assert row.beam_out.mean_at == at(5, 21)
    assert abs((row.beam_out.p50_at - at(5, 21)).total_seconds()) < 3600
    assert row.kit == "short" and row.stage == "booked"


def test_rest_is_what_lies_between_the_shifts():
    # Monday 06:00–14:00 and Tuesday 06:00–14:00 local, cut to two days: three spans of rest
    working = [(at(4, 5), at(4, 13)), (at(5, 5), at(5, 13)), (at(6, 5), at(6, 13))]
    rest = rest_frame(working, VIENNA, date(2027, 1, 4), 2)
    monday = day_ms(date(2027, 1, 4))
    hours = [
        ((start - monday) / 3.6e6, (end - monday) / 3.6e6)
        for start, end in zip(rest["start_ms"], rest["end_ms"], strict=True)
    ]
    assert hours == [(0, 6), (14, 30), (38, 48)]


def test_no_shift_at_all_is_all_rest():
    rest = rest_frame([], VIENNA, date(2027, 1, 4), 7)
    assert (rest["end_ms"] - rest["start_ms"]).to_list() == [7 * DAY_MS]
