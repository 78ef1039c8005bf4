"""Minutes worked out from the times of a conversion, by hand."""

from datetime import UTC, datetime

import pytest
from card_samples import OPERATIONS

from tracker.cards.times import Times, shared, worked_min
from tracker.domain.calendars import Calendar

EXPECTED = {"lift the rail off": 20, "lift the new rail on": 30, "test every emergency stop": 10,
            "watch the first quarter of an hour": 15, "ring out the cables": 15}  # fmt: skip


def test_what_does_not_learn_keeps_its_minutes_and_the_others_share_the_rest():
    """110 on the loom: 10 for the test; 100 left, shared 20 : 30. The bench and the watch are not on the loom."""
    assert shared(110, OPERATIONS, EXPECTED, {}) == pytest.approx(
        {"Lift the rail off": 40, "Lift the new rail on": 60, "Test every emergency stop": 10}
    )


def test_what_was_taken_stands():
    """Of 110 the first took 70; 10 for the test leave 30 to the only other."""
    assert shared(110, OPERATIONS, EXPECTED, {"Lift the rail off": 70}) == pytest.approx(
        {"Lift the new rail on": 30, "Test every emergency stop": 10}
    )


def test_where_too_little_is_left_all_share_it_alike():
    """6 min cannot hold the test's 10: shared 20 : 30 : 10."""
    assert shared(6, OPERATIONS, EXPECTED, {}) == pytest.approx(
        {"Lift the rail off": 2, "Lift the new rail on": 3, "Test every emergency stop": 1}
    )


def test_nothing_is_left_to_share_where_all_of_it_was_taken():
    assert shared(60, OPERATIONS, EXPECTED, {"Lift the rail off": 60}) == {}


def test_a_crew_that_was_not_at_work_by_its_calendar_worked_all_of_the_time():
    """Six to eight is 120 min; less a pause of half an hour 90."""
    start, over = (datetime(2027, 1, 5, hour, tzinfo=UTC) for hour in (6, 8))
    assert worked_min(Times(start, over), Calendar()) == 120
    assert worked_min(Times(start, over, 0.5), Calendar()) == 90
