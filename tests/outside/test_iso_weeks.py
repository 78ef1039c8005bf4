"""ISO weeks at the edges of the year (SOURCES.md D1)."""

from datetime import date

import pytest

from tracker.domain.calendars import iso_week


@pytest.mark.parametrize(
    ("day", "week", "weekday"),
    [
        (date(2020, 12, 31), "2020-W53", 4),
        (date(2021, 1, 3), "2020-W53", 7),
        (date(2026, 12, 31), "2026-W53", 4),
        (date(2027, 1, 3), "2026-W53", 7),
        (date(2019, 12, 30), "2020-W01", 1),
        (date(2022, 12, 31), "2022-W52", 6),
    ],
)
def test_week_of_a_day_at_the_turn_of_the_year(day: date, week: str, weekday: int) -> None:
    """ISO 8601 week dates (computed); the last was seen misprinted as a day of 2023-W01."""
    assert iso_week(day) == week
    assert day.isoweekday() == weekday
