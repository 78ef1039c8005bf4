"""Crews are named by going through time; every case is small enough to follow by hand."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
from two_looms import ELECTRICIAN, FITTERS, ONE, TWO, at, problem, window
from worded import verify

from tracker.domain.mill import LoomKey, Part
from tracker.domain.plan import CrewTurn, Need
from tracker.planning.naming.jobs import Crews, Job
from tracker.planning.naming.turns import share_out
from tracker.planning.planner import plan

HALF_HOUR = timedelta(minutes=30)


def people(slots, anywhere=(), **there):
    """crew="hall: slots": where each crew is at work; `*` = in halls H and K."""
    spans = {}
    for crew, said in there.items():
        hall, _, times = said.partition(": ")
        for name in ("H", "K"):
            spans[crew, name] = np.zeros(slots, dtype=bool)
            if hall in ("*", name):
                for part in times.split(","):
                    first, past = map(int, part.split("-"))
                    spans[crew, name][first:past] = True
    return Crews(tuple(there), spans, frozenset(anywhere), mixed=0 < len(anywhere) < len(there))


def job(loom, first, past, hall="H", kind="AJ", wanted=None):
    return Job(LoomKey(hall, loom), kind, tuple(range(first, past)), wanted or {})


def test_a_crew_stays_with_its_loom_to_the_end_of_its_shift():
    # A works 0-8, B 4-12: loom 1 (2-10) has A from 2 to 8 and then B; loom 2 (4-6) has B meanwhile
    named = share_out([job("1", 2, 10), job("2", 4, 6)], people(12, A="*: 0-8", B="*: 4-12"))
    assert named.crew[0] == dict.fromkeys(range(2, 8), "A") | {8: "B", 9: "B"}
    assert named.crew[1] == {4: "B", 5: "B"}
    assert named.within_shift == 0


def test_at_a_shifts_end_the_crew_follows_that_stays_longest():
    # at 4 the crew A goes; C is there to 6 only, B to 12
    named = share_out([job("1", 2, 10)], people(12, A="*: 0-4", C="*: 3-6", B="*: 4-12"))
    assert named.crew[0] == {2: "A", 3: "A"} | dict.fromkeys(range(4, 10), "B")


def test_a_crew_comes_back_to_its_loom_after_a_pause():
    # both are there 0-4 and 8-12; loom 1 pauses at night and loom 2 begins in the morning
    jobs = [Job(LoomKey("H", "1"), "AJ", (2, 3, 8, 9)), job("2", 8, 10)]
    named = share_out(jobs, people(12, A="*: 0-4,8-12", B="*: 0-4,8-12"))
    first = named.crew[0][2]
    assert set(named.crew[0].values()) == {first} and set(named.crew[1].values()).isdisjoint({first})


def test_crews_of_a_hall_beside_crews_for_any_hall_may_have_to_change():
    # crew A of hall H, S for any: V 5-7 and Z 6-9 in H, Y 5-6 and W 7-9 in K. Y needs S, so V has A; Z needs S from 6,
    # W needs S from 7: Z has to go over to A, which V has left at 7: one change while S is still at work
    jobs = [job("V", 5, 7), job("Z", 6, 9), job("Y", 5, 6, "K"), job("W", 7, 9, "K")]
    named = share_out(jobs, people(10, ("S",), A="H: 0-10", S="*: 0-10"))
    assert named.crew == [
        {5: "A", 6: "A"}, {6: "S", 7: "A", 8: "A"}, {5: "S"}, {7: "S", 8: "S"},
    ]  # fmt: skip
    assert named.within_shift == 1


def test_a_hall_takes_its_own_crew_before_one_that_any_hall_can_have():
    named = share_out([job("1", 0, 4)], people(4, ("S",), S="*: 0-4", A="H: 0-4"))
    assert set(named.crew[0].values()) == {"A"}


def test_a_firm_booking_has_its_crew_unless_that_crew_is_away():
    wanted = dict.fromkeys(range(4, 8), "B")
    firm = job("1", 4, 8, wanted=wanted)
    # loom 2 begins before it and would have taken B as well as A, were B not promised
    assert share_out([firm, job("2", 2, 8)], people(8, B="*: 0-8", A="*: 0-8")).crew == [
        wanted, dict.fromkeys(range(2, 8), "A"),
    ]  # fmt: skip
    assert set(share_out([firm], people(8, B="*: 0-3", A="*: 0-8")).crew[0].values()) == {"A"}


def test_a_crew_stays_with_a_machine_type_and_hours_are_even():
    # 1 (AJ) and 2 (RP) at once, then 3 (RP): whoever did 2 does it, though both are free
    both = people(10, A="*: 0-10", B="*: 0-10")
    named = share_out([job("1", 0, 4), job("2", 0, 4, kind="RP"), job("3", 4, 6, kind="RP")], both)
    assert named.crew[2][4] == named.crew[1][0]
    # 4 slots for one crew, then the next loom of the same type goes to the other
    named = share_out([job("1", 0, 4), job("2", 5, 6)], both)
    assert named.crew[1][5] != named.crew[0][0]


# ---- in a plan

PARTS = {"RAIL": Part("RAIL", 2.0, price=100.0)}


def test_a_plan_names_crews_and_when_it_needs_whom():
    asked = problem({key: (window(key, at(1, 8)),) for key in (ONE, TWO)}, parts=PARTS, soak_days=0)
    made = plan(asked, gap=0.0)
    assert verify(made, asked) == () and made.crew_changes == 0
    for booking in made.bookings:
        assert [turn.crew for turn in booking.crews] == [FITTERS.crew] * len(booking.crews)
        assert (booking.crews[0].start, booking.crews[-1].end) == (booking.start, booking.end)


def test_verify_sees_wrong_names():
    asked = problem({ONE: (window(ONE, at(1, 8)),)}, parts=PARTS, soak_days=0)
    made = plan(asked, gap=0.0)
    (booking,) = made.bookings

    def said(**changes):
        return " ".join(verify(replace(made, bookings=(replace(booking, **changes),)), asked))

    whole = CrewTurn(FITTERS.crew, booking.start, booking.end)
    assert said(crews=(whole,)) == ""
    assert "no crew is named at" in said(crews=())
    assert "crew Nobody is named at" in said(crews=(replace(whole, crew="Nobody"),))
    assert "the plan states 3" in " ".join(verify(replace(made, crew_changes=3), asked))
    longer = replace(whole, end=whole.end + HALF_HOUR)
    assert f"crew {FITTERS.crew} is named from" in said(crews=(longer,)) and "outside the booking" in said(
        crews=(longer,)
    )
    halves = (replace(whole, end=whole.start + 3 * HALF_HOUR), replace(whole, start=whole.start + 2 * HALF_HOUR))
    assert "while another is there" in said(crews=halves)


def test_verify_sees_other_trades_and_tools_at_wrong_hours():
    # two hours from the beam-out on: fitters alone, then the electrician and the hoist beside them
    asked = problem({ONE: (window(ONE, at(1, 8)),)}, parts=PARTS, soak_days=0)
    made = plan(asked, gap=0.0)
    (booking,) = made.bookings
    second_hour = (booking.start + 2 * HALF_HOUR, booking.end)
    electrician, hoist = Need("electrician", "trade", 1, *second_hour), Need("hoist", "tool", 1, *second_hour)
    assert booking.needs == (electrician, hoist)

    def said(*needs):
        return verify(replace(made, bookings=(replace(booking, needs=needs),)), asked)

    assert said(hoist, electrician) == ()
    assert (
        said()
        == said(hoist)
        == ("loom 1 (Hall 1): 0 × electrician is listed at Tue 5 Jan 2027 09:00, its work holds 1 then",)
    )
    earlier = replace(electrician, start=booking.start, end=booking.start + 2 * HALF_HOUR)
    assert said(earlier, hoist) == (
        "loom 1 (Hall 1): 1 × electrician is listed at Tue 5 Jan 2027 08:00, its work holds 0 then",
    )
    assert said(electrician, replace(hoist, amount=2)) == (
        "loom 1 (Hall 1): 2 × hoist is listed at Tue 5 Jan 2027 09:00, its work holds 1 then",
    )
    # a firm booking lists what it was published with
    firm = replace(asked, previous=made, as_of=at(0, 12))
    kept = plan(firm, gap=0.0)
    assert kept.bookings[0].firm and kept.bookings[0].needs == booking.needs and verify(kept, firm) == ()
    other = replace(kept, bookings=(replace(kept.bookings[0], needs=(earlier, hoist)),))
    assert "1 × electrician is listed at Tue 5 Jan 2027 08:00" in " ".join(verify(other, firm))


def test_one_crew_on_two_looms_at_once_is_seen():
    second = replace(FITTERS, crew="Fitters 2")
    asked = problem(
        {key: (window(key, at(1, 8)),) for key in (ONE, TWO)},
        parts=PARTS,
        soak_days=0,
        crews=(FITTERS, second, ELECTRICIAN),
    )
    made = plan(asked, gap=0.0)
    assert verify(made, asked) == () and len(made.bookings) == 2
    assert made.bookings[1].start < made.bookings[0].end
    at_once = tuple(replace(b, crews=(CrewTurn(FITTERS.crew, b.start, b.end),)) for b in made.bookings)
    assert "is named on several looms" in " ".join(verify(replace(made, bookings=at_once), asked))
