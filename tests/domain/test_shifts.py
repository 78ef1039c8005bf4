"""Winter in Vienna: local time is UTC + 1. Monday is 4 January 2027."""

from dataclasses import replace
from datetime import UTC, date, datetime, time

import pytest

from tracker.domain.breaks import outside_shift, read_breaks
from tracker.domain.calendars import Calendar
from tracker.domain.method import Method, Operation
from tracker.domain.mill import Absence, Closure, Crew, Loom, Mill, Overtime, Running
from tracker.domain.shifts import (
    can_convert,
    crew_calendar,
    crew_heads,
    crews_of,
    overlaps,
    running_calendars,
    short_of_heads,
    working_calendar,
)  # fmt: skip
from tracker.domain.terms import Terms

FIRST, LAST = date(2027, 1, 4), date(2027, 1, 10)
EARLY = Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(14))
LATE = Crew("Fitters 2", "fitter", 2, shift_start=time(13), shift_end=time(21))
ELECTRICIAN = Crew("Electrician", "electrician", 1, shift_start=time(8), shift_end=time(16))


def mill(*crews: Crew, closures: tuple[Closure, ...] = (), running: tuple[Running, ...] = ()) -> Mill:
    looms = [Loom("Hall 1", "1", "AJ"), Loom("Hall 2", "1", "AJ")]
    return Mill(
        looms={loom.key: loom for loom in looms},
        crews=crews,
        closures=closures,
        running=running,
        terms=Terms(time_zone="Europe/Vienna"),
    )


def hours(c: Calendar) -> float:
    return sum((b - a).total_seconds() for a, b in c.spans) / 3600


def test_the_working_calendar_is_every_hour_with_a_crew_of_the_lead_trade() -> None:
    # 06:00–14:00 and 13:00–21:00, five days: 15 h a day; the electrician alone does not count
    week = working_calendar(mill(EARLY, LATE, ELECTRICIAN), "Hall 1", FIRST, LAST)
    assert hours(week) == 5 * 15
    assert week.spans[0] == (datetime(2027, 1, 4, 5, tzinfo=UTC), datetime(2027, 1, 4, 20, tzinfo=UTC))


def test_a_crew_of_another_hall_does_not_work_here() -> None:
    bound = Crew("Fitters 3", "fitter", 2, shift_start=time(22), shift_end=time(23), hall="Hall 2")
    both = mill(EARLY, bound)
    assert hours(working_calendar(both, "Hall 1", FIRST, LAST)) == 40
    assert hours(working_calendar(both, "Hall 2", FIRST, LAST)) == 45


def test_a_crew_without_heads_is_no_crew() -> None:
    nobody = Crew("Fitters 9", "fitter", 0)
    assert crews_of(mill(nobody), "fitter") == ()
    assert working_calendar(mill(nobody), "Hall 1", FIRST, LAST) == Calendar()


def test_trades_are_compared_without_case() -> None:
    assert crews_of(mill(Crew("F", "Fitter ", 2)), "fitter")


def test_an_absence_is_the_days_between_two_rows() -> None:
    # here Monday and Tuesday, and again from Friday: 3 days of 8 h
    rows = (
        Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(14), to_on=date(2027, 1, 5)),
        Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(14), from_on=date(2027, 1, 8)),
    )
    assert hours(working_calendar(mill(*rows), "Hall 1", FIRST, LAST)) == 24


def test_the_last_night_shift_of_a_row_runs_on_into_the_next_day() -> None:
    night = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(6), to_on=date(2027, 1, 5))
    spans = crew_calendar(mill(night), night, "Hall 1", FIRST, LAST).spans
    assert spans[-1] == (datetime(2027, 1, 5, 21, tzinfo=UTC), datetime(2027, 1, 6, 5, tzinfo=UTC))


def test_the_first_night_shift_of_a_row_has_no_night_before_it() -> None:
    night = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(6), from_on=date(2027, 1, 5))
    assert crew_calendar(mill(night), night, "Hall 1", FIRST, LAST).spans[0][0] == datetime(2027, 1, 5, 21, tzinfo=UTC)


def test_closures_stop_what_they_say_where_they_say() -> None:
    closures = (
        Closure(date(2027, 1, 6), "work"),
        Closure(date(2027, 1, 7), "weaving", "Hall 2"),
        Closure(date(2027, 1, 8), "both", "Hall 1"),
    )
    closed = mill(EARLY, closures=closures)
    running = running_calendars(closed, FIRST, LAST)
    assert hours(working_calendar(closed, "Hall 1", FIRST, LAST)) == 3 * 8
    assert hours(working_calendar(closed, "Hall 2", FIRST, LAST)) == 4 * 8
    assert hours(running["Hall 1"]) == 6 * 24
    assert hours(running["Hall 2"]) == 6 * 24


def test_a_hall_weaves_by_its_rows_and_without_rows_always() -> None:
    # Hall 2: Monday to Friday round the clock and Saturday 06:00–14:00
    rows = (Running("Hall 2", frozenset(range(5))), Running("Hall 2", frozenset({5}), time(6), time(14)))
    running = running_calendars(mill(running=rows), FIRST, LAST)
    assert hours(running["Hall 1"]) == 7 * 24
    assert hours(running["Hall 2"]) == 5 * 24 + 8


def alone(rows: tuple[Crew, ...], row: Crew, hall: str = "Hall 1") -> float:
    """Hours of the week that a row counts for."""
    return hours(crew_calendar(mill(*rows), row, hall, FIRST, LAST))


def test_a_crew_in_overlapping_rows_is_one_crew() -> None:
    # Monday to Friday 06:00-14:00, Monday and Tuesday 08:00-16:00, too: of those two days only 14:00-16:00 is new
    more = replace(EARLY, weekdays=frozenset((0, 1)), shift_start=time(8), shift_end=time(16))
    assert (alone((EARLY, more), EARLY), alone((EARLY, more), more)) == (40, 4)
    assert hours(working_calendar(mill(EARLY, more), "Hall 1", FIRST, LAST)) == 44
    # the same row once more adds nothing; another crew, or another trade of the crew, does
    again = replace(EARLY)
    assert (alone((EARLY, again), EARLY), alone((EARLY, again), again)) == (40, 0)
    wiring = replace(more, trade="electrician")
    assert alone((EARLY, replace(more, crew="Fitters 2"), wiring), wiring) == 16


def test_where_rows_of_a_crew_overlap_the_one_with_more_heads_or_a_hall_counts() -> None:
    small = replace(EARLY, heads=1, shift_start=time(5), shift_end=time(15))
    assert (alone((small, EARLY), EARLY), alone((small, EARLY), small)) == (40, 10)  # 05:00-06:00 and 14:00-15:00
    # on Mondays 06:00-10:00 the crew is in Hall 2: it is not in Hall 1 then
    there = replace(EARLY, heads=1, hall="Hall 2", weekdays=frozenset((0,)), shift_end=time(10))
    assert (alone((EARLY, there), EARLY), alone((EARLY, there), there, "Hall 2")) == (36, 4)
    # a row without heads takes nothing away
    assert alone((EARLY, replace(there, heads=0)), EARLY) == 40


def test_rows_of_a_crew_that_overlap_are_found_with_the_first_moment_of_it() -> None:
    late = replace(LATE, crew="Fitters 1", hall="Hall 2")
    after = replace(EARLY, shift_start=time(14), shift_end=time(16))
    rows = mill(EARLY, late, after, LATE)
    # 13:00 in Vienna is 12:00 UTC; 14:00 to 16:00 lies in the late shift, too
    assert list(overlaps(rows, FIRST, LAST)) == [
        (EARLY, late, datetime(2027, 1, 4, 12, tzinfo=UTC)),
        (late, after, datetime(2027, 1, 4, 13, tzinfo=UTC)),
    ]


# ---- who is away, who stays longer, breaks, hours closed


def test_a_crew_short_of_heads_takes_no_conversion_that_day() -> None:
    # of three heads one is away on Tuesday and two on Thursday; the rail takes two: no conversion on Thursday only
    three = replace(EARLY, heads=3)
    away = (
        Absence("Fitters 1", date(2027, 1, 5), date(2027, 1, 5), 1),
        Absence("Fitters 1", date(2027, 1, 7), date(2027, 1, 7), 2),
    )
    there = replace(mill(three), absences=away, method=Method(1, (Operation(1, "Lift the rail", 30, "Fitter", 2),)))
    assert hours(working_calendar(there, "Hall 1", FIRST, LAST)) == 4 * 8
    assert short_of_heads(there, three, FIRST, LAST) == [date(2027, 1, 7)]
    # Monday, Wednesday and Friday with three heads, Tuesday with two, Thursday with one
    by_heads = [(heads, hours(calendar)) for heads, calendar in crew_heads(there, three, "Hall 1", FIRST, LAST)]
    assert by_heads == [(1, 8), (2, 8), (3, 24)]
    assert not can_convert(there, three, date(2027, 1, 7)) and can_convert(there, three, date(2027, 1, 5))


def test_an_absence_without_heads_takes_the_whole_crew_and_its_night_shift() -> None:
    # nights of Monday to Friday; away on Tuesday: the shift from Tuesday 22:00 to Wednesday 06:00 falls out
    night = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(6))
    there = replace(mill(night), absences=(Absence("Nights", date(2027, 1, 5), date(2027, 1, 5)),))
    assert [a for a, _ in working_calendar(there, "Hall 1", FIRST, LAST).spans] == [
        datetime(2027, 1, day, 21, tzinfo=UTC) for day in (4, 6, 7, 8)
    ]
    assert not can_convert(there, night, date(2027, 1, 5))


def test_overtime_is_worked_beside_the_shifts_and_counts_once() -> None:
    # Saturday 06:00-12:00, and Friday from 13:00 to 16:00, of which one hour is shift already: 40 + 6 + 2
    extra = (
        Overtime("Fitters 1", date(2027, 1, 9), time(6), time(12)),
        Overtime("Fitters 1", date(2027, 1, 8), time(13), time(16)),
    )
    assert hours(working_calendar(replace(mill(EARLY), overtime=extra), "Hall 1", FIRST, LAST)) == 48


def test_overtime_of_a_day_on_which_a_head_is_away_has_no_more_heads_than_are_there() -> None:
    there = replace(
        mill(EARLY),
        absences=(Absence("Fitters 1", date(2027, 1, 9), date(2027, 1, 9), 1),),
        overtime=(Overtime("Fitters 1", date(2027, 1, 9), time(6), time(12)),),
    )
    by_heads = [(heads, hours(calendar)) for heads, calendar in crew_heads(there, EARLY, "Hall 1", FIRST, LAST)]
    assert by_heads == [(1, 6), (2, 40)]


def test_breaks_are_taken_out_of_the_shift_also_after_midnight() -> None:
    # 8 h less 45 min on five days
    assert (
        hours(working_calendar(mill(replace(EARLY, breaks="10:00-10:15, 12:00-12:30")), "Hall 1", FIRST, LAST)) == 36.25
    )
    night = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(6), breaks="02:00-02:30")
    spans = crew_calendar(mill(night), night, "Hall 1", FIRST, LAST).spans
    assert spans[:2] == (
        (datetime(2027, 1, 4, 21, tzinfo=UTC), datetime(2027, 1, 5, 1, tzinfo=UTC)),
        (datetime(2027, 1, 5, 1, 30, tzinfo=UTC), datetime(2027, 1, 5, 5, tzinfo=UTC)),
    )


def test_a_closure_of_some_hours_stops_only_these() -> None:
    # the climate stands on Monday from 11:00 to 13:00: no weaving in Hall 1 for 2 h, conversions go on
    climate = Closure(date(2027, 1, 4), "weaving", "Hall 1", start=time(11), end=time(13))
    closed = mill(EARLY, closures=(climate,))
    running = running_calendars(closed, FIRST, LAST)
    assert (hours(running["Hall 1"]), hours(running["Hall 2"])) == (7 * 24 - 2, 7 * 24)
    assert hours(working_calendar(closed, "Hall 1", FIRST, LAST)) == 40
    power = Closure(date(2027, 1, 4), "both", start=time(13))  # to midnight: the last hour of the shift
    assert hours(working_calendar(mill(EARLY, closures=(power,)), "Hall 1", FIRST, LAST)) == 39
    assert power.whole_day is False and Closure(date(2027, 1, 4)).whole_day


def test_breaks_that_cannot_be_read_or_lie_outside_are_found() -> None:
    assert read_breaks("9.30-9.45 , 12:00 – 12:30") == ((time(9, 30), time(9, 45)), (time(12), time(12, 30)))
    with pytest.raises(ValueError, match="noon"):
        read_breaks("10:00-10:15, noon")
    breaks = read_breaks("10:00-10:15, 13:45-14:15")
    assert outside_shift(breaks, time(6), time(14)) == (time(13, 45), time(14, 15))
    assert outside_shift(breaks[:1], time(6), time(14)) is None
    assert outside_shift(read_breaks("02:00-02:30"), time(22), time(6)) is None
    assert outside_shift(read_breaks("12:30-12:00"), time(6), time(14)) == (time(12, 30), time(12))
