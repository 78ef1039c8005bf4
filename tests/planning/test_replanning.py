"""Replanning: firm bookings stay, moving others costs, and what is in work or done is respected.

Two looms, one crew, as in `test_limits`: both out on Tuesday 5 January at 08:00, booked at 08:00 and 10:00.
"""

from dataclasses import replace
from datetime import date, time, timedelta
from typing import Any

import pytest
from said import texts
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, MONDAY, ONE, TWO, at, problem, window
from worded import no_longer, verify

from tracker.domain.mill import Absence, Closure, LoomKey, Part, Running, Tool
from tracker.domain.plan import Plan, PlanStatus
from tracker.errors import as_it_stands
from tracker.planning.planner import plan
from tracker.planning.problem import InWork, PlanningProblem
from tracker.words import ENGLISH

PARTS = {"RAIL": Part("RAIL", 2.0, price=100.0)}
BOTH = {key: (window(key, at(1, 8)),) for key in (ONE, TWO)}
NEXT_WEEK = {key: (window(key, at(8, 8)),) for key in (ONE, TWO)}
"""More than 72 hours off on Monday: not firm."""


def asked(windows=BOTH, **changes: Any) -> PlanningProblem:
    return problem(windows, **{"parts": PARTS, "soak_days": 0, **changes})


def made(asked: PlanningProblem) -> Plan:
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    return found


def starts(found: Plan) -> dict[LoomKey, Any]:
    return {booking.key: booking.start for booking in found.bookings}


PUBLISHED = made(asked())
LATER = made(asked(NEXT_WEEK))


def test_bookings_within_72_running_hours_are_firm() -> None:
    assert [b.firm for b in PUBLISHED.bookings] == [True, True]
    assert [b.firm for b in LATER.bookings] == [False, False]
    # the hall weaves 8 hours a day: 72 running hours are nine days, and Tuesday week 08:00 is 8 × 8 = 64 of them ahead
    shifts = (Running("Hall 1", frozenset(range(7)), time(8), time(16)),)
    assert [b.firm for b in made(asked(NEXT_WEEK, running=shifts)).bookings] == [True, True]


def test_a_firm_booking_stays_where_it_was_though_the_beam_out_came_late() -> None:
    # loom 1 is out at 11:00 now; its crew would do better to start with loom 2, but both bookings are firm
    late = BOTH | {ONE: (window(ONE, at(1, 11)),)}
    free = starts(made(asked(late)))
    assert free == {ONE: at(1, 11), TWO: at(1, 8)}
    found = made(asked(late, previous=PUBLISHED))
    assert starts(found) == starts(PUBLISHED)
    moved = made(asked(late, previous=PUBLISHED, hold_firm=False, move_cost=15.0))
    assert starts(moved) == free
    assert sorted(b.cost.moves for b in moved.bookings) == sorted(
        15.0 * (free[k] != starts(PUBLISHED)[k]) for k in free
    )


def test_a_firm_booking_that_its_beam_out_has_left_is_told() -> None:
    # both out a day later than when they were booked, at 08:00 and 10:00 on Tuesday
    later = {key: (window(key, at(2, 8)),) for key in (ONE, TWO)}
    found = made(asked(later, previous=PUBLISHED))
    assert starts(found) == starts(PUBLISHED)
    assert [reason for reason in texts(found.reasons) if "stays on" in reason] == [
        # 2 h of conversion at 5; the crew waits 2 h at 60, then what is left is cut: 22 h and 20 h at 10 m/h and 3 a metre
        f"The firm booking of loom {b.key} stays on Tue 5 Jan 2027 {b.start:%H:%M}, though its beam-out is now expected on "
        f"Wed 6 Jan 2027 08:00: late beam-out and lost production {cost} EUR. Let it follow with --release {b.key.loom}."
        for b, cost in zip(PUBLISHED.bookings, (10 + 120 + 660, 10 + 120 + 600), strict=True)
    ]
    in_time = {key: (window(key, at(1, 11)),) for key in (ONE, TWO)}
    assert not [reason for reason in texts(made(asked(in_time, previous=PUBLISHED)).reasons) if "stays on" in reason]


def test_a_released_booking_may_move() -> None:
    late = BOTH | {ONE: (window(ONE, at(1, 11)),)}
    first, second = (b.key for b in PUBLISHED.bookings)
    found = made(asked(late, previous=PUBLISHED, released=frozenset({ONE})))
    assert starts(found)[TWO] == starts(PUBLISHED)[TWO]
    assert starts(found)[ONE] != starts(PUBLISHED)[ONE] or {first, second} == {TWO, ONE}


def test_a_gain_smaller_than_the_move_cost_moves_nothing() -> None:
    # an hour less of waiting saves 5 + 1; two bookings exchanged cost 120
    first, second = (b.key for b in LATER.bookings)
    earlier = NEXT_WEEK | {second: (window(second, at(8, 7)),)}
    # free: second 07:00, first 09:00 (waits 1 h): saves 2 h + 1 h of waiting against 08:00 and 10:00 (waits 3 h) …
    found = made(asked(earlier, previous=LATER))
    assert starts(found) == starts(LATER)
    assert all(b.cost.moves == 0 for b in found.bookings)
    cheap = made(asked(earlier, previous=LATER, move_cost=1.0))
    assert starts(cheap) == {second: at(8, 7), first: at(8, 9)}
    assert [b.cost.moves for b in cheap.bookings] == [1.0, 1.0]


def test_moving_what_starts_later_than_in_14_days_costs_a_quarter() -> None:
    # published for Monday 18 January 00:00, 14 days after as of, and an hour later; both are moved: 60 and 15
    hours = (replace(FITTERS, shift_start=time(0), shift_end=time(8)), replace(ELECTRICIAN, shift_start=time(0)))
    for hour, cost in ((0, 60.0), (1, 15.0)):
        one = made(asked({ONE: (window(ONE, at(14, hour)),)}, crews=hours))
        (booked,) = one.bookings
        assert booked.start == at(14, hour)
        later = {ONE: (window(ONE, at(14, 6)),)}
        assert [b.cost.moves for b in made(asked(later, crews=hours, previous=one)).bookings] == [cost]


def test_leaving_a_booked_loom_over_is_a_move() -> None:
    # one rail, none to be had: loom 1 is booked for Tuesday week. Loom 2 turns up, out at the same hour and saving 1 a day
    # more: booking it instead gains 28 days of that less the 8 and a third until it is done, 19.67; moving costs 60
    one_rail: dict[str, Any] = {
        "parts": {"RAIL": Part("RAIL", 1.0, price=100.0)},
        "receipts": (),
        "lead_time_none_given_days": 0,
    }
    looms = {ONE: LOOMS[ONE], TWO: replace(LOOMS[TWO], saving_per_day=25.0)}
    published = made(asked({ONE: NEXT_WEEK[ONE]}, **one_rail, looms=looms))
    assert starts(published) == {ONE: at(8, 8)}
    stays = made(asked(NEXT_WEEK, **one_rail, looms=looms, previous=published))
    assert starts(stays) == {ONE: at(8, 8)}
    goes = made(asked(NEXT_WEEK, **one_rail, looms=looms, previous=published, move_cost=15.0))
    assert starts(goes) == {TWO: at(8, 8)}
    # saving 24 × 28, penalty 5,000, labour 160, rail 100, and the move
    assert [(item.key, item.cost) for item in goes.left_over] == [(ONE, 24 * 28 + 5000 + 160 + 100 + 15)]


def test_a_firm_booking_whose_crew_is_away_is_booked_anew_and_told() -> None:
    ill = (replace(FITTERS, from_on=date(2027, 1, 7)), ELECTRICIAN)
    found = made(asked(crews=ill, previous=PUBLISHED))
    assert found.status is PlanStatus.OPTIMAL
    # 08:00 on Tuesday + 32 working half hours: Thursday
    now = starts(found)
    assert sorted(now.values()) == [at(3, 6), at(3, 8)]
    assert texts(found.reasons) == tuple(
        f"The firm booking of loom {b.key} on Tue 5 Jan 2027 {b.start:%H:%M} cannot stay: no crew of the trade 'fitter' works "
        f"in Hall 1 at its start; it is booked anew on Thu 7 Jan 2027 {now[b.key]:%H:%M}."
        for b in PUBLISHED.bookings
    )


SECOND = replace(FITTERS, crew="Fitters 2")
TWO_CREWS = (FITTERS, SECOND, replace(ELECTRICIAN, heads=2))


def test_a_sick_crew_gives_way_and_the_other_keeps_its_firm_booking() -> None:
    # both at 08:00 on Tuesday, a crew each, two electricians and two hoists; then the crew of loom 1 is away that Tuesday:
    # loom 2 keeps its start and its crew, loom 1 follows it at 10:00, though by its number it would come first
    hoists = {"hoist": Tool("hoist", 2)}
    published = made(asked(crews=TWO_CREWS, tools=hoists))
    assert set(starts(published).values()) == {at(1, 8)}
    crew = {b.key: b.crew_names for b in published.bookings}
    sick = (Absence(crew[ONE], date(2027, 1, 5), date(2027, 1, 5), reason="ill"),)
    found = made(asked(crews=TWO_CREWS, tools=hoists, absences=sick, previous=published))
    assert starts(found) == {TWO: at(1, 8), ONE: at(1, 10)}
    assert {b.crew_names for b in found.bookings} == {crew[TWO]}
    assert texts(found.reasons) == (
        "The firm booking of loom 1 (Hall 1) on Tue 5 Jan 2027 08:00 cannot stay: too little fitter from Tue 5 Jan 2027 08:00 on; "
        "it is booked anew on Tue 5 Jan 2027 10:00.",
    )


def test_a_firm_booking_that_was_moved_though_it_could_stay_is_found() -> None:
    given = asked(previous=PUBLISHED)
    sound = plan(given, gap=0.0)
    first, second = sound.bookings
    wandering = replace(sound, bookings=(first, replace(second, start=at(1, 11), end=at(1, 13))))
    assert any(
        f"loom {second.key}: the firm booking of Tue 5 Jan 2027 10:00 was moved to Tue 5 Jan 2027 11:00, though it could stay"
        == said
        for said in verify(wandering, given)
    )
    gone = replace(sound, bookings=(second,))
    assert any("is gone, though it could stay" in said for said in verify(gone, given))


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        (
            {"looms": LOOMS | {ONE: replace(LOOMS[ONE], protected_until=date(2027, 1, 5))}},
            "is protected until Tue 5 Jan 2027",
        ),
        (
            {"parts": {"RAIL": Part("RAIL", 1.0, lead_time_days=90)}, "receipts": ()},
            "it needs 1 of part RAIL, 0 can be there",
        ),
        (
            {"crews": (FITTERS, replace(ELECTRICIAN, shift_end=time(9)))},
            "too little electrician from Tue 5 Jan 2027 09:00",
        ),
    ],
)
def test_why_a_firm_booking_cannot_stay(changes: dict[str, Any], why: str) -> None:
    found = made(asked(previous=PUBLISHED, **changes))
    assert any(why in reason for reason in texts(found.reasons))
    assert starts(found) != starts(PUBLISHED)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"contents": {ONE: {}, TWO: CONTENTS}}, "the method no longer has a conversion with its choices"),
        (
            {"contents": {ONE: {}, TWO: CONTENTS}, "unplannable": {ONE: as_it_stands("to survey: rail unknown")}},
            "to survey: rail unknown",
        ),
    ],
)
def test_a_firm_booking_that_the_method_has_left_stays_as_published(changes: dict[str, Any], why: str) -> None:
    # the electrician of the other loom is still held by what this one was published to need: his hour is not free
    found = made(asked(previous=PUBLISHED, **changes))
    assert [(b.key, b.start, b.end, b.needs) for b in found.bookings] == [
        (b.key, b.start, b.end, b.needs) for b in PUBLISHED.bookings
    ]
    assert texts(found.reasons) == (
        f"The firm booking of loom 1 (Hall 1) stays as published: {why}. Plan it anew with --release 1.",
    )


def test_a_firm_booking_holds_what_it_was_published_to_need() -> None:
    # loom 1 firm on Tuesday 08:00, the electrician from 09:00 to 10:00. By the method of today he comes first, for the
    # first hour: still the firm one has him from 9 to 10, so loom 2, out at 08:00 with a crew and a hoist of its own and
    # needing him first, starts at 08:00 and does not have to wait until 09:00
    hoists, crews = {"hoist": Tool("hoist", 2)}, (FITTERS, SECOND, ELECTRICIAN)
    published = made(asked(ONE_OF_THEM, crews=crews, tools=hoists))
    turned = {
        kind: tuple(replace(c, steps=(replace(c.steps[1], step=10), replace(c.steps[0], step=20))) for c in contents)
        for kind, contents in CONTENTS.items()
    }
    found = made(asked(crews=crews, tools=hoists, contents=dict.fromkeys(LOOMS, turned), previous=published))
    assert starts(found) == {ONE: at(1, 8), TWO: at(1, 8)}
    him = {b.key: [(n.start, n.end) for n in b.needs if n.what == "electrician"] for b in found.bookings}
    assert him == {ONE: [(at(1, 9), at(1, 10))], TWO: [(at(1, 8), at(1, 9))]}


def test_a_booking_whose_day_has_passed_is_planned_anew() -> None:
    # as of Wednesday noon; nobody recorded that the conversions of Tuesday began
    noon = at(2, 12)
    found = made(asked(as_of=noon, previous=PUBLISHED))
    assert all(b.start >= noon for b in found.bookings)
    assert [b.cost.moves for b in found.bookings] == [60.0] * len(found.bookings)


def test_a_loom_in_work_holds_its_crew_for_what_is_left() -> None:
    # loom 1 has three half hours to do on Monday from 06:00: loom 2, out at 06:00, can start at 07:30
    windows = {TWO: (window(TWO, at(0, 6)),)}
    found = made(asked(windows, as_of=at(0, 6), in_work=(InWork(ONE, 3),)))
    assert starts(found) == {TWO: at(0, 7.5)}
    # two crews: nobody waits, unless one loom only may be stopped
    two: dict[str, Any] = {"crews": (FITTERS, replace(FITTERS, crew="2"), ELECTRICIAN)}
    assert starts(made(asked(windows, as_of=at(0, 6), in_work=(InWork(ONE, 3),), **two))) == {TWO: at(0, 6)}
    one = made(asked(windows, as_of=at(0, 6), in_work=(InWork(ONE, 3),), looms_stopped_at_once=1, **two))
    assert starts(one) == {TWO: at(0, 7.5)}


def test_a_loom_in_work_holds_the_electrician_of_its_last_steps() -> None:
    # the last two half hours need him: 06:00 to 07:00; loom 2 needs him in its second hour, so it can start at 06:00
    windows = {TWO: (window(TWO, at(0, 6)),)}
    content = next(iter(CONTENTS.values()))[0]
    two: dict[str, Any] = {"crews": (FITTERS, replace(FITTERS, crew="2"), ELECTRICIAN)}
    assert starts(made(asked(windows, as_of=at(0, 6), in_work=(InWork(ONE, 2, content),), **two))) == {TWO: at(0, 6)}
    # with three left he is needed 06:30 to 07:30: loom 2 needs him from 07:30, and starts at 06:30
    assert starts(made(asked(windows, as_of=at(0, 6), in_work=(InWork(ONE, 3, content),), **two))) == {TWO: at(0, 6.5)}


def test_looms_done_put_off_or_left_out_are_not_planned() -> None:
    assert set(starts(made(asked(converted={ONE: MONDAY}, signed_off=frozenset({ONE}))))) == {TWO}
    assert set(starts(made(asked(left_out=frozenset({ONE}))))) == {TWO}
    found = made(asked(put_off={ONE: as_it_stands("put off: waits for the order")}))
    assert [(item.key, ENGLISH.line(item.why)) for item in found.left_over] == [(ONE, "put off: waits for the order")]


def test_work_that_closes_for_good_after_publishing() -> None:
    # nobody converts from Tuesday to the horizon: both firm bookings are named, and nothing can be booked
    shut = tuple(Closure(date(2027, 1, 5) + timedelta(days=i), "work") for i in range(28))
    found = plan(asked(closures=shut, previous=PUBLISHED), gap=0.0)
    assert found.status is PlanStatus.INFEASIBLE
    assert sum("cannot stay" in reason and "its loom is left over" in reason for reason in texts(found.reasons)) == 2


def test_what_was_booked_and_not_recorded_is_told() -> None:
    # as of Tuesday 09:00: the booking of 08:00 is past, that of 10:00 is firm
    first = PUBLISHED.bookings[0].key
    found = made(asked(BOTH, previous=PUBLISHED, as_of=at(1, 9)))
    assert texts(found.reasons) == (
        f"Booked, past and not recorded: {first} on Tue 5 Jan 2027 08:00. Record what was done (in work, run-in, signed "
        "off); here they are planned anew.",
    )


def test_what_of_a_plan_the_data_do_not_allow_any_more_is_told_by_loom() -> None:
    # both booked on Tuesday week at 08:00 and 10:00; then one loom is protected and one of the two rails is gone
    first, second = LATER.bookings
    looms = LOOMS | {first.key: replace(LOOMS[first.key], protected_until=date(2027, 1, 12))}
    now = asked(NEXT_WEEK, previous=LATER, looms=looms, parts={"RAIL": Part("RAIL", 1.0, price=100.0)}, receipts=())
    assert no_longer(LATER, now) == {
        first.key: (f"loom {first.key} starts Tue 12 Jan 2027 08:00, but is protected until Tue 12 Jan 2027 included",),
        None: ("part RAIL: 2 needed by Tue 12 Jan 2027, 1 usable",),
    }
    assert no_longer(LATER, asked(NEXT_WEEK, previous=LATER)) == {}
    # what is recorded as done, or lies before now, is not asked for any more
    done = asked(NEXT_WEEK, previous=LATER, looms=looms, converted={first.key: at(1, 8)}, as_of=at(8, 9))
    assert no_longer(LATER, done) == {}
    assert second.start == at(8, 10)


def test_a_booking_that_ends_later_because_its_early_crew_is_away_is_told() -> None:
    # out on Tuesday week 21:00: two half hours of the late crew, then two of the early one, to Wednesday 07:00. The early
    # crew is away that Wednesday: the last two half hours come from 14:00 on
    early, late = FITTERS, replace(FITTERS, crew="Fitters 2", shift_start=time(14), shift_end=time(22))
    always = replace(ELECTRICIAN, shift_end=time(22))
    one = {ONE: (window(ONE, at(8, 21)),)}
    booked = made(asked(one, crews=(early, late, always)))
    assert [(b.start, b.end) for b in booked.bookings] == [(at(8, 21), at(9, 7))]
    away = (replace(early, to_on=date(2027, 1, 12)), replace(early, from_on=date(2027, 1, 14)), late, always)
    assert no_longer(booked, asked(one, previous=booked, crews=away)) == {
        ONE: ("loom 1 (Hall 1) ends Wed 13 Jan 2027 07:00, but 4 working half hours end Wed 13 Jan 2027 15:00",)
    }


def test_a_booking_whose_work_has_become_longer_is_told_and_a_shorter_one_is_not() -> None:
    # 130 min are five half hours instead of four: they end at 10:30 and at 12:30; 80 min are three, and fit
    def lasting(minutes: float) -> dict[str, Any]:
        of = {kind: tuple(replace(c, on_loom_min=minutes) for c in contents) for kind, contents in CONTENTS.items()}
        return {"contents": dict.fromkeys(LOOMS, of), "previous": LATER}

    longer = no_longer(LATER, asked(NEXT_WEEK, **lasting(130.0)))
    first = LATER.bookings[0]
    assert longer[first.key] == (f"loom {first.key}: 4 half hours booked, its scope has 5",)
    assert no_longer(LATER, asked(NEXT_WEEK, **lasting(80.0))) == {}


def test_what_waits_for_a_pilot_that_is_late_or_not_recorded_is_told() -> None:
    # loom 1, the pilot, is booked from 08:00 to 10:00 on Tuesday, loom 2 at 10:00 on Tuesday week, 7 days after it
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(8, 10)),)}
    booked = made(asked(windows, soak_days=7))
    assert [(b.key, b.start, b.pilot) for b in booked.bookings] == [(ONE, at(1, 8), True), (TWO, at(8, 10), False)]
    given: dict[str, Any] = {"soak_days": 7, "previous": booked, "as_of": at(1, 12)}
    assert no_longer(booked, asked(windows, converted={ONE: at(1, 10)}, **given)) == {}
    assert no_longer(booked, asked(windows, converted={ONE: at(1, 11)}, **given)) == {
        TWO: (
            "loom 2 (Hall 1) starts Tue 12 Jan 2027 10:00, before the pilot of AJ has run 7 days (Tue 12 Jan 2027 11:00)",
        )
    }
    assert no_longer(booked, asked(windows, **given)) == {
        None: ("AJ: no pilots booked, one is needed before 1 booking",)
    }


# ---- firm bookings keep their published shape


def by_now(share: float) -> dict[LoomKey, Any]:
    """The work of both looms when it takes this share of what it took."""
    of = {kind: tuple(content.scaled(share) for content in contents) for kind, contents in CONTENTS.items()}
    return dict.fromkeys(LOOMS, of)


ONE_OF_THEM = {ONE: (window(ONE, at(1, 8)),)}
FROM_9 = (FITTERS, replace(ELECTRICIAN, shift_start=time(9)))


def test_a_firm_booking_keeps_its_shape_though_its_work_has_become_shorter() -> None:
    # booked 08:00-10:00, the electrician from 09:00, when his shift begins. At 92 % his work would begin after 55.2 min,
    # in a half hour in which he is not there; at 70 % the whole takes 84 min, three half hours
    booked = made(asked(ONE_OF_THEM, crews=FROM_9))
    assert [(b.start, b.end, b.slots) for b in booked.bookings] == [(at(1, 8), at(1, 10), 4)]
    for share, labour, told in ((0.92, 147.2, ()), (0.7, 112.0, (
        "The firm booking of loom 1 (Hall 1) stays as published, 2 h, though its work takes 1.5 h by now.",
    ))):  # fmt: skip
        found = made(asked(ONE_OF_THEM, crews=FROM_9, previous=booked, contents=by_now(share)))
        (kept,) = found.bookings
        assert (kept.start, kept.end, kept.slots, kept.labour_h) == (at(1, 8), at(1, 10), 4, 5.0)
        # 160 of labour when it was booked; the loom stands for 2 h at 5 as it was booked
        assert (kept.cost.labour, kept.cost.lost_production) == (pytest.approx(labour), pytest.approx(10.0))
        assert texts(found.reasons) == told
        # and once more after that
        again = made(asked(ONE_OF_THEM, crews=FROM_9, previous=found, contents=by_now(share)))
        assert again.bookings == found.bookings


def test_a_firm_booking_whose_work_has_become_longer_overruns() -> None:
    # both on Tuesday, 08:00-10:00 and 10:00-12:00, with the one crew. At 120 % each takes 144 min, five half hours: the
    # first would end at 10:30, when the second has begun
    first, second = PUBLISHED.bookings
    found = made(asked(previous=PUBLISHED, contents=by_now(1.2)))
    assert [(b.key, b.start, b.end, b.slots, b.labour_h) for b in found.bookings] == [
        (first.key, at(1, 8), at(1, 10.5), 5, 5.0),
        (second.key, at(1, 10), at(1, 12.5), 5, 5.0),
    ]
    ends = "ends on Tue 5 Jan 2027 {} instead of Tue 5 Jan 2027 {}: its work takes 2.5 h by now, 2 h were booked."
    short = "there is too little fitter from Tue 5 Jan 2027 10:00 on; it is taken to go on all the same."
    assert texts(found.reasons) == (
        f"The firm booking of loom {first.key} {ends.format('10:30', '10:00')}",
        f"The firm booking of loom {first.key} overruns: {short}",
        f"The firm booking of loom {second.key} {ends.format('12:30', '12:00')}",
    )
    # a loom that is not firm begins when the crew is free: out at 10:00, it starts at 10:30
    windows = ONE_OF_THEM | {TWO: (window(TWO, at(1, 10)),)}
    one = made(asked(ONE_OF_THEM))
    later = made(asked(windows, previous=one, contents=by_now(1.2)))
    assert starts(later) == {ONE: at(1, 8), TWO: at(1, 10.5)}
    # at 110 %, 132 min, five half hours still, both stay as they are now
    again = made(asked(previous=found, contents=by_now(1.1)))
    assert [(b.start, b.end) for b in again.bookings] == [(b.start, b.end) for b in found.bookings]
    assert texts(again.reasons) == (f"The firm booking of loom {first.key} overruns: {short}",)


def test_a_firm_booking_moves_its_end_with_the_hours_of_its_crew() -> None:
    # 08:00-10:00; the crew now begins a break shift at 09:00: 08:00-09:00 and 12:00-16:00
    booked = made(asked(ONE_OF_THEM))
    broken = (replace(FITTERS, shift_end=time(9)), replace(FITTERS, shift_start=time(12), shift_end=time(16)))
    crews = (*broken, replace(ELECTRICIAN, shift_end=time(16)))
    found = made(asked(ONE_OF_THEM, crews=crews, previous=booked))
    assert [(b.start, b.end, b.slots) for b in found.bookings] == [(at(1, 8), at(1, 13), 4)]
    assert texts(found.reasons) == (
        "The firm booking of loom 1 (Hall 1) ends on Tue 5 Jan 2027 13:00 instead of Tue 5 Jan 2027 10:00: the hours of the "
        "crews have changed.",
    )


def test_a_firm_booking_in_another_shape_is_found() -> None:
    booked = made(asked(ONE_OF_THEM))
    given = asked(ONE_OF_THEM, previous=booked, contents=by_now(0.7))
    sound = plan(given, gap=0.0)
    (kept,) = sound.bookings
    for changes, says in (
        ({"slots": 3, "end": at(1, 9.5)}, "3 half hours, 4 are due"),
        ({"labour_h": 3.5}, "3.50 person-hours, 5.00 were published"),
        ({"end": at(1, 9.5)}, "ends Tue 5 Jan 2027 09:30, due is Tue 5 Jan 2027 10:00"),
    ):
        spoilt = replace(sound, bookings=(replace(kept, **changes),))
        assert any(says in finding for finding in verify(spoilt, given)), changes
