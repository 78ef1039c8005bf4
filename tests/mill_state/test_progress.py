"""Planned, done and expected, worked out by hand: four looms, booked for the Fridays of 2027-W01 to W04."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, LeftOver, Plan, PlanStatus
from tracker.domain.progress import Stage, StageChange
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands
from tracker.mill_state.progress import (
    Pace,
    WeekCount,
    by_week,
    done_on,
    expected_cost,
    pace,
    reference_of,
    still_to_come,
)

TERMS = Terms(time_zone="Europe/Vienna", start=date(2027, 1, 4))
A, B, C, D, E = (LoomKey("H", name) for name in "ABCDE")
MONDAY = date(2027, 1, 18)  # of W03


def booking(key: LoomKey, friday: date, **cost: float) -> Booking:
    end = datetime(friday.year, friday.month, friday.day, 12, tzinfo=UTC)
    return Booking(key, 1, WindowKind.REPEAT, (), end - timedelta(hours=6), end, None, 12, 12, {}, CostTerms(**cost))


FIRST = {A: booking(A, date(2027, 1, 8)), B: booking(B, date(2027, 1, 15)), C: booking(C, date(2027, 1, 22)),
         D: booking(D, date(2027, 1, 29))}  # fmt: skip


def plan(*bookings: Booking, left: tuple[LoomKey, ...] = ()) -> Plan:
    at = datetime(2027, 1, 4, tzinfo=UTC)
    return Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", at, at + timedelta(weeks=12), bookings,
                tuple(LeftOver(key, as_it_stands(""), 0) for key in left))  # fmt: skip


def stage(key: LoomKey, stage: Stage, day: int) -> StageChange:
    return StageChange(key, stage, datetime(2027, 1, day, 12, tzinfo=UTC), "foreman")


def test_the_reference_keeps_what_was_first_planned_and_takes_in_looms_that_it_does_not_know():
    first, moved = plan(*FIRST.values(), left=(E,)), booking(E, date(2027, 2, 5))
    new = LoomKey("H", "F")
    found = reference_of(first, {E: moved, new: replace(moved, key=new), A: moved})
    # E was left over when it was made: not planned; F came later: planned as it was first published
    assert found == {**FIRST, new: replace(moved, key=new)}
    assert reference_of(None, {}) == {}


def test_a_loom_is_done_when_it_was_first_signed_off_unless_it_was_taken_back():
    history = [stage(A, Stage.SIGNED_OFF, 8), stage(A, Stage.SIGNED_OFF, 9), stage(B, Stage.SIGNED_OFF, 15),
               stage(B, Stage.SCOPED, 16)]  # fmt: skip
    assert done_on(history, TERMS) == {A: date(2027, 1, 8)}


def test_the_planned_curve_stays_while_work_is_done_and_what_slips_is_expected_later():
    # A was done in time; B slipped and is booked for W05 now; on Monday of W03
    in_force = [replace(FIRST[B], end=datetime(2027, 2, 5, 12, tzinfo=UTC)), FIRST[C], FIRST[D]]
    weeks = by_week(FIRST.values(), {A: date(2027, 1, 8)}, in_force, MONDAY, TERMS)
    assert weeks == (
        WeekCount("2027-W01", 1, 1, 1, 1, 1, 1),
        WeekCount("2027-W02", 1, 0, 2, 1, 0, 1),
        WeekCount("2027-W03", 1, 0, 3, 1, 1, 2),
        WeekCount("2027-W04", 1, 0, 4, 1, 1, 3),
        WeekCount("2027-W05", 0, 0, 4, 1, 1, 4),
    )


def test_what_should_have_been_done_is_expected_this_week_at_the_earliest():
    weeks = by_week(FIRST.values(), {}, FIRST.values(), MONDAY, TERMS)
    assert [(week.week, week.expected) for week in weeks] == [
        ("2027-W01", 0), ("2027-W02", 0), ("2027-W03", 3), ("2027-W04", 1)]  # fmt: skip


def test_what_was_put_off_or_left_out_is_not_to_come():
    stages = {A: Stage.SIGNED_OFF, B: Stage.PUT_OFF, C: Stage.IN_WORK}
    assert [b.key for b in still_to_come(plan(*FIRST.values()), stages, FIRST)] == [C, D]
    assert still_to_come(None, {}, {}) == ()


def test_a_loom_in_work_is_to_come_although_the_plan_in_force_has_it_no_more():
    stages = {A: Stage.SIGNED_OFF, C: Stage.IN_WORK}
    assert [b.key for b in still_to_come(plan(FIRST[D]), stages, FIRST)] == [D, C]


def test_the_pace_is_that_of_the_last_four_weeks():
    done = {A: date(2027, 2, 1), B: date(2027, 2, 20), C: date(2027, 2, 28)}
    # Mon 1 March: B and C lie within 28 days (from 2 Feb on); 3 to come at 2 in 28 days are 42 days
    assert pace(done, 3, date(2027, 1, 4), date(2027, 3, 1)) == Pace(2, 28, 3, date(2027, 4, 12))


def test_a_young_programme_has_the_pace_of_its_own_days_and_none_in_its_first_week():
    done = {A: date(2027, 1, 8)}
    # Monday 18 January: 14 days since the start, 1 done; 2 to come are 28 days
    told = pace(done, 2, date(2027, 1, 4), date(2027, 1, 18))
    assert told == Pace(1, 14, 2, date(2027, 2, 15)) and told.how == "told"
    soon = pace(done, 2, date(2027, 1, 4), date(2027, 1, 9))
    assert (soon.finish_on, soon.how) == (None, "soon")
    assert pace({}, 2, date(2027, 1, 4), date(2026, 12, 1)).how == "ahead"
    never = pace({}, 2, date(2027, 1, 4), date(2027, 2, 15))
    assert (never.finish_on, never.how) == (None, "never")


def test_expected_cost_is_recorded_for_what_is_behind_and_estimated_for_what_is_ahead():
    # A is done: 500 of parts and 90 of labour, where 400 and 100 were estimated; its lost production stays an estimate.
    # C is in work: 450 of parts issued (400 estimated), its labour not recorded yet. D lies ahead.
    a, c, d = (booking(key, date(2027, 1, 8), parts=400, labour=100, lost_production=70) for key in (A, C, D))
    found = expected_cost(
        [c, d], [a], {A: Stage.SIGNED_OFF, C: Stage.IN_WORK}, {A: 500.0, C: 450.0, E: 30.0}, {A: 90.0}
    )
    # parts 500 + 450 + 400, and 30 issued for a loom that nobody books
    assert (found.parts, found.labour, found.lost_production) == (1380, 290, 210)
