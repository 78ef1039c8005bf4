"""No loom stands open over a day on which nobody converts. The fitters work from Monday to Saturday, 6 to 14 o'clock.

Loom 1 runs out on Saturday 9 January at 13:00 and it is 12:30: its conversion of two hours would begin at once and end on
Monday at 7:00 (42 h stopped, 210 lost), or begin on Monday at 6:00 and end at 8:00 (41 h waited for and 2 h: 215 lost).
"""

from dataclasses import replace
from datetime import date

import pytest
from small_halls import TriedOut, seeds, small_problem
from two_looms import ELECTRICIAN, FITTERS, ONE, at, problem, still, window
from worded import no_longer, verify

from tracker.domain.mill import Closure
from tracker.domain.windows import Window, WindowKind
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.words import ENGLISH

TO_SATURDAY = tuple(replace(crew, weekdays=frozenset(range(6))) for crew in (FITTERS, ELECTRICIAN))


def asked(of: Window, **changes) -> PlanningProblem:
    return problem({ONE: (of,)}, soak_days=0, crews=TO_SATURDAY, as_of=at(5, 12.5), **changes)


OUT = window(ONE, at(5, 13))


@pytest.mark.parametrize(
    ("lets", "start", "end", "lost"), [(True, at(5, 13), at(7, 7), 210.0), (False, at(7, 6), at(7, 8), 215.0)]
)
def test_it_begins_after_the_closed_day_instead(lets, start, end, lost):
    said = asked(OUT, open_over_closed_days=lets)
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    assert [(b.start, b.end, b.cost.lost_production) for b in found.bookings] == [(start, end, pytest.approx(lost))]
    # who takes each beam-out as it comes does the same
    assert [b.start for b in baseline(said).bookings] == [start]


def test_the_check_names_the_day():
    over = plan(asked(OUT, open_over_closed_days=True), gap=0.0)
    says = "loom 1 (Hall 1) stands open over Sun 10 Jan 2027, on which nobody converts"
    assert verify(over, asked(OUT)) == (says,)
    assert no_longer(over, asked(OUT)) == {ONE: (says,)}


def test_a_night_is_no_closed_day_and_a_closure_is_one():
    friday = replace(asked(window(ONE, at(4, 13))), as_of=at(4, 12.5))
    # over the night to Saturday: stopped from 13:00 to 7:00, 18 h at 5
    (booking,) = plan(friday, gap=0.0).bookings
    assert (booking.start, booking.end, booking.cost.lost_production) == (at(4, 13), at(5, 7), pytest.approx(90.0))
    shut = replace(friday, mill=replace(friday.mill, closures=(Closure(date(2027, 1, 9), "work", None),)))
    assert [b.start for b in plan(shut, gap=0.0).bookings] == [at(7, 6)]


def test_what_stands_anyway_may_stand_open():
    said = asked(still(ONE, WindowKind.STANDING, at(5, 13), at(8, 0), 1))
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    assert [(b.start, b.end) for b in found.bookings] == [(at(5, 13), at(7, 7))]


def test_a_loom_that_every_start_would_leave_open_says_so():
    # ten hours of work, and no two days of work on end
    crews = tuple(replace(crew, weekdays=frozenset({0, 2, 4})) for crew in TO_SATURDAY)
    long = {
        kind: tuple(replace(c, steps=(replace(c.steps[0], minutes=600.0),), on_loom_min=600.0) for c in contents)
        for kind, contents in asked(OUT).contents[ONE].items()
    }
    said = replace(asked(OUT), contents={ONE: long})
    said = replace(said, mill=replace(said.mill, crews=crews))
    assert next(ENGLISH.line(item.why) for item in plan(said, gap=0.0).left_over) == (
        "it would stand open over a day on which nobody converts (term 'open over closed days')"
    )


@pytest.mark.parametrize("seed", seeds([4, 15], [2, 8]))
def test_no_plan_that_passes_the_check_is_cheaper(seed):
    # on Tuesday, the second of three days, nobody converts in either hall
    small = small_problem(seed)
    said = replace(small, mill=replace(small.mill, closures=(Closure(date(2027, 1, 5), "work", None),)))
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    assert found.objective == pytest.approx(TriedOut(said).best(), abs=0.01)
    assert verify(baseline(said, [8.0]), said) == ()
