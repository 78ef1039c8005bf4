"""A programme with its own clock: what is done happens by it, and it is only set forward."""

from datetime import UTC, datetime, timedelta

import pytest
from opened import here
from refusals import refused
from stock_room_samples import AT, fill, fill_with_method

from tracker.errors import DataError, UsageError
from tracker.services.own_clock import clock_says, give_own_clock, set_clock
from tracker.services.parts.stock import count, movements
from tracker.services.screens.state import database_state
from tracker.services.work.record import StageTold, record_stage
from tracker.words import ENGLISH


@pytest.fixture
def mill(tmp_path):
    """The invented mill of Mon 5 Jan 2026, whose clock stands at 05:00 UTC of that day; its zone is UTC."""
    db = fill_with_method(str(tmp_path / "mill.db"))
    return give_own_clock(here(db), AT)


def test_what_is_entered_without_a_moment_is_entered_by_the_clock(mill):
    assert mill.now() == AT
    count(mill, "NUT", 3)
    last = movements(mill)[-1]
    assert (last.at, last.entered_at) == (AT, AT)
    assert database_state(mill).as_of == AT


def test_what_lies_ahead_of_the_clock_is_refused_until_it_is_set(mill):
    noon = AT + timedelta(hours=7)
    with pytest.raises(UsageError) as ahead:
        record_stage(mill, "1", "in work", told=StageTold(at=noon, why="early"))
    assert ENGLISH.line(ahead.value) == (
        "Mon 5 Jan 2026 12:00 is still to come: this programme has its own clock, and it stands at Mon 5 Jan 2026 05:00. "
        "Say what has happened, or set the clock forward: beamslot clock 2026-01-05T12:00"
    )
    set_clock(mill, noon)
    again = here(mill.database)
    assert again.now() == noon
    assert record_stage(again, "1", "in work", told=StageTold(at=noon, why="early")).change.at == noon


def test_it_is_never_set_back(mill):
    with refused(UsageError, "It is only set forward"):
        set_clock(mill, AT - timedelta(minutes=1))
    assert here(mill.database).now() == AT


def test_a_mill_goes_by_the_computers_clock_which_is_not_set(tmp_path):
    db = here(fill(str(tmp_path / "mill.db")))
    before = datetime.now(UTC)
    assert before <= db.now() <= datetime.now(UTC)
    with refused(DataError, "goes by the computer's clock"):
        set_clock(db, before + timedelta(days=1))
    assert not clock_says(db).own


def test_given_twice_the_clock_stays_where_it_stands(mill):
    set_clock(mill, AT + timedelta(days=2))
    assert give_own_clock(mill, AT).now() == AT + timedelta(days=2)
