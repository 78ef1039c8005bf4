from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tracker.domain.calendars import Calendar, calendar_of, iso_week, union, weekly_calendar

VIENNA = ZoneInfo("Europe/Vienna")
WORKDAYS = frozenset(range(5))
MONDAY = datetime(2027, 1, 4, tzinfo=UTC)


def at(hours: float) -> datetime:
    """That many hours after Monday 4 January 2027, 00:00 UTC."""
    return MONDAY + timedelta(hours=hours)


def calendar(*spans: tuple[float, float]) -> Calendar:
    return Calendar(tuple((at(a), at(b)) for a, b in spans))


def total_h(c: Calendar) -> float:
    return sum((b - a).total_seconds() for a, b in c.spans) / 3600


def inside(calendar: Calendar, at: datetime) -> bool:
    return any(start <= at < end for start, end in calendar.spans)


TWO_SHIFTS = calendar((6, 14), (30, 38))
"""06:00 to 14:00 on Monday and on Tuesday."""


@pytest.mark.parametrize(
    ("start", "hours", "end"),
    [
        (6, 3, 9),
        (6, 8, 14),  # exactly the first shift: out at its end, not at the next one's start
        (6, 8.5, 30.5),
        (0, 1, 7),  # begins before the calendar: the clock starts with the first shift
        (20, 2, 32),  # begins in the gap
        (20, 0, 20),  # nothing to do: stays where it is
        (36, 4, 40),  # 2 h of the shift left, then the clock runs on past the last span
        (50, 5, 55),
        (9, -2, 7),
        (38, -8, 30),  # exactly the second shift, backwards
        (31, -2, 13),
        (6, -3, 3),  # runs back before the first span
    ],
)
def test_hours_are_laid_on_the_calendar(start: float, hours: float, end: float) -> None:
    assert TWO_SHIFTS.after(at(start), hours) == at(end)


def test_hours_between_counts_calendar_hours_only() -> None:
    # Monday 10:00 to Tuesday 07:00: 4 h of Monday's shift and 1 h of Tuesday's
    assert TWO_SHIFTS.hours_between(at(10), at(31)) == 5
    assert TWO_SHIFTS.hours_between(at(31), at(10)) == -5


def test_spans_are_half_open() -> None:
    # from 06:00 to 14:00, and the next at 06:00 of the next day
    assert TWO_SHIFTS.hours_between(at(6), at(14)) == 8
    assert TWO_SHIFTS.hours_between(at(14), at(30)) == 0


def test_a_calendar_without_spans_lets_the_clock_run() -> None:
    assert Calendar().after(at(1), 5) == at(6)
    assert Calendar().hours_between(at(0), at(9)) == 0


def test_spans_given_in_disorder_are_merged() -> None:
    assert calendar_of([(at(5), at(9)), (at(1), at(3)), (at(3), at(4)), (at(6), at(7)), (at(8), at(8))]) == calendar(
        (1, 4), (5, 9)
    )


def test_less_cuts_spans_at_both_ends_and_in_the_middle() -> None:
    # [0, 10) less [2, 3) and [4, 5); [20, 30) less its head; [40, 50) gone; [60, 70) untouched
    left = calendar((0, 10), (20, 30), (40, 50), (60, 70)).less(calendar((2, 3), (4, 5), (15, 22), (39, 55)))
    assert left == calendar((0, 2), (3, 4), (5, 10), (22, 30), (60, 70))


def test_less_lets_one_gap_cut_several_spans() -> None:
    assert calendar((0, 4), (6, 8), (9, 12)).less(calendar((3, 10))) == calendar((0, 3), (10, 12))


def test_union_runs_when_any_of_them_runs() -> None:
    assert union([calendar((6, 14)), calendar((13, 22)), calendar((22, 24))]) == calendar((6, 24))


def test_night_shift_runs_past_midnight_and_belongs_to_the_day_it_starts_on() -> None:
    # Friday night 22:00 to Saturday 06:00 counts, Sunday night does not; winter: local = UTC + 1
    week = weekly_calendar([(WORKDAYS, time(22), time(6))], [], VIENNA, date(2027, 1, 4), date(2027, 1, 10))
    assert total_h(week) == 5 * 8
    assert week.spans[-1] == (datetime(2027, 1, 8, 21, tzinfo=UTC), datetime(2027, 1, 9, 5, tzinfo=UTC))


def test_first_day_has_the_tail_of_the_shift_before() -> None:
    # Tuesday alone: 00:00–06:00 from Monday's night shift and 22:00–24:00 of its own
    day = weekly_calendar([(WORKDAYS, time(22), time(6))], [], VIENNA, date(2027, 1, 5), date(2027, 1, 5))
    assert total_h(day) == 8
    assert len(day.spans) == 2


def test_without_rows_the_hall_runs_always() -> None:
    week = weekly_calendar([], [], VIENNA, date(2027, 1, 4), date(2027, 1, 10))
    assert week.spans == ((datetime(2027, 1, 3, 23, tzinfo=UTC), datetime(2027, 1, 10, 23, tzinfo=UTC)),)


def test_a_closed_day_is_out_from_local_midnight_to_midnight() -> None:
    # Wednesday 6 January closed: 24 h out of 7 × 24
    week = weekly_calendar([], [date(2027, 1, 6)], VIENNA, date(2027, 1, 4), date(2027, 1, 10))
    assert total_h(week) == 6 * 24
    assert not inside(week, datetime(2027, 1, 5, 23, tzinfo=UTC))
    assert inside(week, datetime(2027, 1, 6, 23, tzinfo=UTC))


def test_clocks_go_forward() -> None:
    """Central Europe, Sunday 28 March 2027: 02:00 becomes 03:00, so the day has 23 hours (by hand)."""
    sunday = date(2027, 3, 28)
    assert total_h(weekly_calendar([], [], VIENNA, sunday, sunday)) == 23
    # the night shift 22:00–06:00 that begins on Saturday has 7 hours
    night = weekly_calendar([(frozenset({5}), time(22), time(6))], [], VIENNA, date(2027, 3, 27), sunday)
    assert total_h(night) == 7
    # 06:00–14:00 keeps its 8 hours but begins at 04:00 UTC instead of 05:00
    early = weekly_calendar([(frozenset(range(7)), time(6), time(14))], [], VIENNA, date(2027, 3, 27), sunday)
    assert [a.hour for a, _ in early.spans] == [5, 4]
    assert total_h(early) == 16


def test_clocks_go_back() -> None:
    """Central Europe, Sunday 31 October 2027: 03:00 becomes 02:00, so the day has 25 hours (by hand)."""
    sunday = date(2027, 10, 31)
    assert total_h(weekly_calendar([], [], VIENNA, sunday, sunday)) == 25
    night = weekly_calendar([(frozenset({5}), time(22), time(6))], [], VIENNA, date(2027, 10, 30), sunday)
    assert total_h(night) == 9


def test_a_run_over_the_change_of_clocks_takes_true_hours() -> None:
    """24 running hours from Saturday 27 March 2027, 12:00 in Vienna end on Sunday at 13:00 local (by hand)."""
    always = weekly_calendar([], [], VIENNA, date(2027, 3, 26), date(2027, 3, 30))
    end = always.after(datetime(2027, 3, 27, 12, tzinfo=VIENNA), 24)
    assert end.astimezone(VIENNA).replace(tzinfo=None) == datetime(2027, 3, 28, 13)


def test_a_time_that_the_clocks_skip_takes_the_offset_before() -> None:
    """02:30 does not exist on 28 March 2027 in Vienna; at the offset before, UTC + 1, it is 01:30 UTC (by hand)."""
    skipped = weekly_calendar(
        [(frozenset({6}), time(2, 30), time(5))], [], VIENNA, date(2027, 3, 28), date(2027, 3, 28)
    )
    assert skipped.spans == ((datetime(2027, 3, 28, 1, 30, tzinfo=UTC), datetime(2027, 3, 28, 3, tzinfo=UTC)),)


def test_iso_week_of_a_day_in_january_may_lie_in_the_year_before() -> None:
    assert iso_week(date(2027, 1, 1)) == "2026-W53"


# ---- against a count of minutes, one by one

MINUTES = 120


@st.composite
def small_calendars(draw: st.DrawFn) -> Calendar:
    """Up to six spans on whole minutes within two hours."""
    cuts = sorted(draw(st.lists(st.integers(0, MINUTES), min_size=0, max_size=12, unique=True)))
    pairs = zip(cuts[::2], cuts[1::2], strict=False)
    return Calendar(tuple((at(a / 60), at(b / 60)) for a, b in pairs))


def minutes_in(c: Calendar, start: int, end: int) -> int:
    return sum(inside(c, at(m / 60)) for m in range(start, end))


@settings(deadline=None)
@given(small_calendars(), st.integers(-60, MINUTES + 60), st.integers(-60, MINUTES + 60))
def test_hours_between_equals_minutes_counted(c: Calendar, a: int, b: int) -> None:
    start, end = min(a, b), max(a, b)
    assert c.hours_between(at(start / 60), at(end / 60)) * 60 == pytest.approx(minutes_in(c, start, end), abs=1e-6)


@settings(deadline=None)
@given(small_calendars(), st.integers(0, MINUTES), st.integers(1, MINUTES))
def test_after_is_the_first_moment_with_the_hours_passed(c: Calendar, start: int, minutes: int) -> None:
    if minutes_in(c, start, MINUTES) < minutes:
        return  # runs on past the calendar; worked by hand above
    end = next(m for m in range(start, MINUTES + 1) if minutes_in(c, start, m) == minutes)
    assert abs(c.after(at(start / 60), minutes / 60) - at(end / 60)) < timedelta(microseconds=2)


@settings(deadline=None)
@given(small_calendars(), st.integers(0, MINUTES), st.integers(1, MINUTES))
def test_after_backwards_is_the_last_moment_since_which_the_hours_passed(c: Calendar, start: int, minutes: int) -> None:
    if minutes_in(c, 0, start) < minutes:
        return
    begin = next(m for m in range(start, -1, -1) if minutes_in(c, m, start) == minutes)
    assert abs(c.after(at(start / 60), -minutes / 60) - at(begin / 60)) < timedelta(microseconds=2)


@settings(deadline=None)
@given(small_calendars(), small_calendars())
def test_less_takes_out_exactly_the_minutes_of_the_other(c: Calendar, shut: Calendar) -> None:
    left = c.less(shut)
    for m in range(MINUTES):
        assert inside(left, at(m / 60)) == (inside(c, at(m / 60)) and not inside(shut, at(m / 60)))
    assert all(a < b for a, b in left.spans)
