"""What replanning says of a booking that moved, and of one that is gone."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from said import said

from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.domain.plan import Booking, CostTerms, CrewTurn, LeftOver, Plan, PlanStatus, Undo
from tracker.domain.progress import Stage, StageChange
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands, message
from tracker.mill_state.happened import OTHER, PART, PEOPLE, Happened
from tracker.services.plans.moves import differences

AT = datetime(2027, 1, 4, 5, tzinfo=UTC)
MILL = Mill(
    looms={LoomKey("H", loom): Loom("H", loom, "RP" if loom == "5" else "AJ") for loom in "12345"},
    terms=Terms(soak_days=7),
)
"""Loom 5 is of another machine type."""


def booking(start_h, beam_out_h=None, kind=WindowKind.REPEAT, loom="1", window=1, choices=()):
    start = AT + timedelta(hours=start_h)
    out = None if beam_out_h is None else AT + timedelta(hours=beam_out_h)
    return Booking(
        LoomKey("H", loom), window, kind, choices, start, start + timedelta(hours=6), out, 12, 8, {}, CostTerms()
    )


def plan(*bookings, left=()):
    return Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT + timedelta(days=30), bookings, left)


@pytest.mark.parametrize(
    ("before", "after", "what", "why"),
    [
        (booking(10, 8), booking(30, 28), "later", "its beam-out is expected 20 h later"),
        # the same beam-out under another number: a warp has run out in between
        (booking(60, 58, window=3), booking(54, 52, window=2), "earlier",
         "its beam-out is expected 6 h earlier"),
        (booking(10, 8), booking(400, 398, window=2), "later",
         "at a later beam-out, since the plan as a whole costs less this way"),
        (booking(400, 398), booking(10, 8), "earlier",
         "at an earlier beam-out, since the plan as a whole costs less this way"),
        (booking(10, 8), booking(14, 8.5), "later", "the plan as a whole costs less this way"),
        (booking(10, 8), booking(24, None, WindowKind.MID_WARP), "later",
         "mid-warp instead of repeat, since the plan as a whole costs less this way"),
        (booking(10, 8), booking(10, 8, choices=(("rail", "drill"),)), "other choice", "the plan as a whole costs less this way"),
    ],
)  # fmt: skip
def test_why_a_booking_moved(before, after, what, why):
    (move,) = differences(plan(before), plan(after), MILL)
    assert (move.what, said(move.why)) == (what, why)


def test_why_bookings_are_gone_or_new():
    before = plan(*(booking(10, 8, loom=loom) for loom in "1234"))
    after = plan(
        booking(10, 8), booking(20, 18, loom="5"), left=(LeftOver(LoomKey("H", "2"), as_it_stands("no kit: RAIL"), 0),)
    )
    stages = {LoomKey("H", "3"): StageChange(LoomKey("H", "3"), Stage.SIGNED_OFF, AT, "me")}
    assert [(move.key.loom, move.what, said(move.why)) for move in differences(before, after, MILL, stages)] == [
        ("5", "new", "was not booked before"),
        ("2", "dropped", "no kit: RAIL"),
        ("3", "dropped", "signed off"),
        ("4", "dropped", "no longer among the looms to plan"),
    ]


def test_what_keeps_a_booking_from_staying_is_told_before_any_other_reason():
    one, start = LoomKey("H", "1"), datetime(2027, 1, 4, 15)
    protected = {one: (message("starts-protected", loom=one, start=start, until=date(2027, 1, 20)),)}
    (move,) = differences(plan(booking(10, 8)), plan(booking(400, 398)), MILL, broken=protected)
    assert said(move.why) == "loom 1 (H) starts Mon 4 Jan 2027 15:00, but is protected until Wed 20 Jan 2027 included"


def test_a_move_says_what_it_costs():
    cheap = replace(booking(10, 8), cost=CostTerms(labour=100.0))
    dear = replace(booking(30, 28), cost=CostTerms(labour=100.0, lost_production=40.0, moves=15.0))
    (move,) = differences(plan(cheap), plan(dear), MILL)
    assert move.dearer == 55.0
    (new,) = differences(plan(), plan(cheap), MILL)
    assert new.dearer is None


def test_the_pilot_and_the_looms_that_wait_for_it_say_so():
    # loom 1 was the pilot and ran from hour 10 to 16; now loom 2 is, from hour 20 to 26: its soak is over 7 × 24 = 168 h
    # later, at hour 194. Loom 3 was booked before that, loom 4 after it, and loom 5 is of another type.
    before = plan(
        replace(booking(10, 8), pilot=True),
        booking(190, 188, loom="2"), booking(192, 190, loom="3"), booking(200, 198, loom="4"), booking(192, 190, loom="5"),
    )  # fmt: skip
    after = plan(
        replace(booking(20, 18, loom="2"), pilot=True),
        *(booking(300, 298, loom=loom) for loom in "1345"),
    )
    # AT is 05:00 UTC, and so is the mill's zone: hour 194 is 8 days and 2 h later, Tue 12 Jan 07:00
    waits = "it waits until Tue 12 Jan 2027 07:00 for the pilot of AJ, loom 2 (H), to have run 7 days"
    assert {move.key.loom: said(move.why) for move in differences(before, after, MILL)} == {
        "1": waits,
        "2": "it became the pilot of AJ, in place of loom 1 (H), which cannot stay or be the first",
        "3": waits,
        "4": "at a later beam-out, since the plan as a whole costs less this way",
        "5": "at a later beam-out, since the plan as a whole costs less this way",
    }
    # nobody waits where there are no pilots
    free = replace(MILL, terms=Terms(soak_days=0))
    assert {said(move.why) for move in differences(before, after, free) if move.key.loom in "13"} == {
        "at a later beam-out, since the plan as a whole costs less this way"
    }


def test_a_booking_that_gives_way_names_to_whom_what_began_it_and_the_price():
    # loom 1 is protected and takes the crew at hour 30, where loom 2 was; loom 2 takes loom 3's at hour 50; loom 3 has gone to
    # a place that was free
    before = plan(booking(10, 8), booking(30, 28, loom="2"), booking(50, 48, loom="3"), booking(90, 88, loom="4"))
    short = message("too-little", kind="crews", what="fitter", at=AT + timedelta(hours=50))
    undoing = (
        Undo(LoomKey("H", "2"), 120.0, short, (LoomKey("H", "1"),)),
        Undo(LoomKey("H", "3"), None, short, (LoomKey("H", "2"),)),
        Undo(LoomKey("H", "4"), 35.0, instead=1),
    )
    after = replace(
        plan(booking(30, 28), booking(50, 48, loom="2"), booking(70, 68, loom="3"), booking(80, 88, loom="4")),
        undoing=undoing,
    )
    protected = message("starts-protected", loom=LoomKey("H", "1"), start=AT, until=date(2027, 1, 4))
    told = {
        m.key.loom: (said(m.why), m.price)
        for m in differences(before, after, MILL, broken={LoomKey("H", "1"): (protected,)})
    }
    began = "it began with loom 1 (H) starts Mon 4 Jan 2027 05:00, but is protected until Mon 4 Jan 2027 included"
    beside = "with it there would be too little fitter from Wed 6 Jan 2027 07:00 on"
    assert told == {
        "1": ("loom 1 (H) starts Mon 4 Jan 2027 05:00, but is protected until Mon 4 Jan 2027 included", None),
        "2": (f"its beam-out is expected 20 h later; makes room for 1 (H): {beside}; {began}", 120.0),
        "3": (f"its beam-out is expected 20 h later; makes room for 2 (H): {beside}; {began}; no plan was found that leaves it "
              "where it was", None),
        "4": (
            "its place is still free; the plan as a whole costs less with it elsewhere; leaving it where it was would move 1 "
            "other instead", 35.0),
    }  # fmt: skip


def test_what_was_missed_or_broken_off_says_so_before_what_its_new_date_saves():
    # loom 1 was to start at hour 10 and it is hour 20 now; loom 2 was in work when the plan before was made
    before = plan(booking(10, 8))
    after = replace(plan(booking(30, 28), booking(40, 38, loom="2")), as_of=AT + timedelta(hours=20))
    broken_off = StageChange(LoomKey("H", "2"), Stage.SCOPED, AT + timedelta(hours=12), "me", "rail does not fit")
    assert [said(m.why) for m in differences(before, after, MILL, {broken_off.key: broken_off})] == [
        "its start on Mon 4 Jan 2027 15:00 passed and nothing was recorded",
        "its conversion was broken off: rail does not fit",
    ]


# ---- what happened


def test_who_was_away_is_why_a_start_passed_and_why_the_others_make_room():
    # the crew F1 is away on Monday: loom 1, booked for it at 15:00, was not begun; loom 3 had its place on Tuesday
    before = plan(replace(booking(10, 8), crews=(CrewTurn("F1", AT, AT),)), booking(30, 28, loom="3"))
    short = message("too-little", kind="crews", what="fitter", at=AT + timedelta(hours=30))
    after = replace(
        plan(booking(30, 28), booking(50, 28, loom="3")), as_of=AT + timedelta(hours=20),
        undoing=(Undo(LoomKey("H", "3"), 80.0, short, (LoomKey("H", "1"),)),),
    )  # fmt: skip
    ill = Happened(as_it_stands("F1 is away"), PEOPLE, "fitter", AT.date(), AT.date(), crew="F1")
    told = {m.key.loom: said(m.why) for m in differences(before, after, MILL, happened=(ill,))}
    assert told["1"] == "its start on Mon 4 Jan 2027 15:00 passed and nothing was recorded (F1 is away)"
    # nobody is away on Tuesday: loom 3 makes room for loom 1, and that is what began it
    assert told["3"].endswith(f"from Tue 5 Jan 2027 11:00 on; it began with loom 1 (H): {told['1']}")


def test_what_there_is_less_of_is_told_beside_the_limit():
    # RAIL is short for both bookings of the plan before, and the cause is the same; loom 3 takes none of it
    before = plan(
        *(replace(booking(hour, hour, loom=loom), parts={"RAIL": 1.0}) for hour, loom in ((10, "1"), (30, "2"))),
        booking(50, 50, loom="3"),
    )
    after = plan(booking(110, 10), booking(130, 30, loom="2"), booking(150, 50, loom="3"))
    short = message("part-short", part="RAIL", needed=2.0, day=date(2027, 1, 5), usable=1.0)
    late = Happened(as_it_stands("the receipt came late"), PART, "rail")
    told = {
        m.key.loom: said(m.why) for m in differences(before, after, MILL, broken={None: (short,)}, happened=(late,))
    }
    why = "part RAIL: 2 needed by Tue 5 Jan 2027, 1 usable (the receipt came late)"
    assert (told["1"], told["2"], told["3"]) == (why, why, "the plan as a whole costs less this way")


def test_looms_behind_a_missed_pilot_name_it():
    # loom 1, the pilot of AJ, was missed and starts at hour 30 now, to hour 36; loom 2 waits for 168 h more
    before = plan(replace(booking(10, 8), pilot=True), booking(190, 188, loom="2"))
    after = replace(
        plan(replace(booking(30, 28), pilot=True), booking(300, 298, loom="2")), as_of=AT + timedelta(hours=20)
    )
    (_, waits) = differences(before, after, MILL)
    assert said(waits.why) == (
        "it waits until Tue 12 Jan 2027 17:00 for the pilot of AJ, loom 1 (H), to have run 7 days; it began with loom 1 (H): "
        "its start on Mon 4 Jan 2027 15:00 passed and nothing was recorded"
    )


def test_a_limit_of_the_planner_and_news_that_take_no_place_are_told():
    # loom 1 cannot stay; loom 2 could, and made room for loom 3, which nothing forced: a third crew came meanwhile
    before = plan(booking(10, 8), booking(30, 28, loom="2"), booking(50, 48, loom="3"))
    closed = Undo(LoomKey("H", "1"), None, limit=message("hold-closed"))
    short = message("too-little", kind="stopped", what="", at=AT)
    room = Undo(LoomKey("H", "2"), 90.0, short, (LoomKey("H", "3"),))
    after = replace(plan(booking(110, 8), booking(50, 28, loom="2"), booking(30, 48, loom="3")), undoing=(closed, room))
    news = (
        Happened(as_it_stands("the mill is closed on Monday"), PEOPLE, first=AT.date(), last=AT.date()),
        Happened(as_it_stands("a crew more"), OTHER),
    )
    told = {m.key.loom: said(m.why) for m in differences(before, after, MILL, happened=news)}
    assert told["1"].endswith("open over a closed day (term 'open over closed days') (the mill is closed on Monday)")
    assert told["2"] == (
        "makes room for 3 (H): with it there would be too little room among the looms stopped at once from Mon 4 Jan 2027 "
        "05:00 on; new since the plan in force: a crew more"
    )


def test_a_new_booking_says_why_its_loom_was_left_over():
    left = (LeftOver(LoomKey("H", "1"), as_it_stands("no kit"), 0),)
    (move,) = differences(plan(left=left), plan(booking(10, 8)), MILL)
    assert (move.what, said(move.why)) == ("new", "was left over before: no kit")


@pytest.mark.parametrize(("looms", "why"), [("1", " (the receipt came late)"), ("2", "")])
def test_a_late_receipt_is_why_a_start_passed_only_where_the_kit_could_not_be_had_without_it(looms, why):
    late = Happened(
        as_it_stands("the receipt came late"), PART, "rail", AT.date(), looms=frozenset({LoomKey("H", looms)})
    )
    after = replace(plan(booking(30, 28)), as_of=AT + timedelta(hours=20))
    (move,) = differences(plan(booking(10, 8)), after, MILL, happened=(late,))
    assert said(move.why) == f"its start on Mon 4 Jan 2027 15:00 passed and nothing was recorded{why}"
