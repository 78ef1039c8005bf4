"""Who is at a booking from when to when, in one cell of a table."""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, CrewTurn, Need
from tracker.domain.windows import WindowKind
from tracker.words.formats import who_and_when

VIENNA = ZoneInfo("Europe/Vienna")
"""An hour before UTC in winter."""


def at(day: int, hour: int, minute: int = 0) -> datetime:
    """By Vienna's clock in February 2027; the 15th is a Monday."""
    return datetime(2027, 2, day, hour, minute, tzinfo=VIENNA).astimezone(UTC)


def booking(*crews: CrewTurn, needs: tuple[Need, ...] = ()) -> Booking:
    return Booking(
        LoomKey("Hall 1", "7"), 1, WindowKind.REPEAT, (), at(15, 7), at(16, 6, 30), None, 12, 9.0, {}, CostTerms(), crews=crews,
        needs=needs,
    )  # fmt: skip


def test_crews_then_trades_and_tools_with_the_weekday_where_it_is_another():
    one = booking(
        CrewTurn("Fitters 1", at(15, 7), at(15, 12, 30)), CrewTurn("Fitters 1", at(16, 6), at(16, 6, 30)),
        needs=(Need("electrician", "trade", 1, at(15, 8, 30), at(15, 12, 30)), Need("hoist", "tool", 2, at(15, 7), at(15, 8))),
    )  # fmt: skip
    said = "Fitters 1 07:00-12:30, {} 06:00-06:30; electrician 08:30-12:30; 2 × hoist 07:00-08:00"
    assert who_and_when(one, VIENNA) == said.format("Tue")
    assert who_and_when(one, VIENNA, "de") == said.format("Di")


def test_nobody_is_said_where_nobody_is_named():
    assert who_and_when(booking(), VIENNA) == ""
