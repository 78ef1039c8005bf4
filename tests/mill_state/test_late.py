"""What is late, and what follows of it."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from tracker.domain.late import shortened
from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms
from tracker.domain.progress import Stage
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.mill_state.late import late
from tracker.words import ENGLISH

KEY = LoomKey("H", "7")
MILL = Mill(
    looms={KEY: Loom("H", "7", "AJ")},
    parts={"RAIL": Part("RAIL", 0.0, lead_time_days=7), "NUT": Part("NUT", 0.0)},
    crews=(Crew("Fitters 1", "fitter", 2),),
    terms=Terms(time_zone="Europe/Vienna", start=date(2027, 1, 4), lead_time_none_given_days=0),
)
START = datetime(2027, 1, 6, 5, tzinfo=UTC)
BOOKING = Booking(KEY, 1, WindowKind.REPEAT, (), START, START + timedelta(hours=8), None, 16, 16, {}, CostTerms())
NOON = datetime(2027, 1, 8, 11, tzinfo=UTC)  # Friday, 12:00 in the mill


def window(state: str) -> Window:
    out = START - timedelta(hours=3)
    return Window(KEY, 1, WindowKind.REPEAT, START - timedelta(days=3), 20.0, 0.0, out, out, out, out, out, None, None, None,
                  1.0, 0.0, 0.0, 0.0, state=state)  # fmt: skip


def told(mill: Mill = MILL, stages=None, windows=None, needed=None, at: datetime = NOON) -> list[tuple[str, int]]:
    return [
        (ENGLISH.say(one.what), one.days)
        for one in late(mill, [BOOKING], stages or {}, windows or {}, needed or {}, at)
    ]


@pytest.mark.parametrize("stage", [None, Stage.SCOPED])
def test_a_start_that_passed_without_a_record(stage):
    said = "Loom 7 (H) was to begin on Wed 6 Jan 2027 06:00 and is not recorded as begun."
    assert told(stages={KEY: stage} if stage else {}) == [(said, 2)]
    assert told(at=START) == []


def test_a_conversion_in_work_past_its_end():
    assert told(stages={KEY: Stage.IN_WORK}) == [
        ("Loom 7 (H) is in work; it was to be done on Wed 6 Jan 2027 14:00.", 2)
    ]
    assert told(stages={KEY: Stage.IN_WORK}, at=BOOKING.end) == []
    assert told(stages={KEY: Stage.RUN_IN}) == []


def test_a_warp_that_should_be_gone():
    said = "The warp of loom 7 (H) should have run out on Wed 6 Jan 2027 03:00, by its reading of Sun 3 Jan 2027 06:00."
    assert told(windows={KEY: (window("overdue"),)}, at=START) == [(said, 0)]
    assert told(windows={KEY: (window("stale"),)}, at=START) == []
    assert told(stages={KEY: Stage.SIGNED_OFF}, windows={KEY: (window("overdue"),)}) == []


def test_a_receipt_past_its_date_says_who_waits_and_when_it_is_reckoned_with():
    line = Receipt("4100", "RAIL", 3.0, date(2027, 1, 5))
    mill = replace(MILL, receipts=(line,))
    (one,) = late(mill, [], {}, {}, {"RAIL": {KEY: 1.0}}, NOON)
    assert (one.days, ENGLISH.say(one.what)) == (
        3,
        "Order 4100: 3 of RAIL were due on Tue 5 Jan 2027 and have not come.",
    )
    # ordered on Friday 8 January with seven days it comes on Friday 15
    assert ENGLISH.say(one.follows) == (
        "Reckoned with on Fri 15 Jan 2027, as if ordered today. The kit of loom 7 (H) wants the part. "
        "Receive them, or correct the day."
    )
    assert late(replace(MILL, receipts=(replace(line, due=date(2027, 1, 8)),)), [], {}, {}, {}, NOON) == ()


def test_a_part_that_cannot_be_ordered_is_not_reckoned_with():
    (one,) = late(replace(MILL, receipts=(Receipt("4101", "NUT", 3.0, date(2027, 1, 5)),)), [], {}, {}, {}, NOON)
    assert ENGLISH.say(one.follows).startswith(
        "They cannot be ordered, so nobody may rely on them. No booked kit wants"
    )


def test_what_holds_people_up_comes_first():
    mill = replace(MILL, receipts=(Receipt("4100", "RAIL", 3.0, date(2027, 1, 5)),))
    found = late(mill, [BOOKING], {}, {KEY: (window("overdue"),)}, {}, NOON)
    assert [one.what.code for one in found] == ["late-start", "late-receipt", "late-beam-out"]


def test_of_many_warps_past_their_day_five_are_listed_and_the_others_counted():
    looms = {LoomKey("H", str(i)): (replace(window("overdue"), key=LoomKey("H", str(i))),) for i in range(7)}
    found = late(MILL, [BOOKING], {}, looms, {}, NOON)
    shown, more = shortened(found)
    assert [one.what.code for one in shown] == ["late-start", *["late-beam-out"] * 5]
    assert more and ENGLISH.say(more) == "2 more warps should have run out by the readings."
    assert shortened(found[:6]) == (list(found[:6]), None)
