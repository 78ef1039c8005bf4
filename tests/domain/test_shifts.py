"""Winter in Vienna: local time is UTC + 1. Monday is 4 January 2027."""

from dataclasses import replace
from datetime import UTC, date, datetime, time

from tracker.domain.calendars import Calendar
from tracker.domain.mill import Closure, Crew, Loom, Mill, Running
from tracker.domain.shifts import crew_calendar, crews_of, overlaps, running_calendars, working_calendar
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
