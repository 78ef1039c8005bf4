"""Pilots: the first loom of a type is planned by itself, the others wait until it has run for the soak time."""

from dataclasses import replace
from datetime import date
from typing import Any

from said import texts
from two_looms import CONTENTS, LOOMS, MONDAY, ONE, TWO, at, problem, still, window

from tracker.domain.mill import LoomKey, Part
from tracker.domain.plan import Plan
from tracker.domain.windows import WindowKind
from tracker.planning.planner import plan
from tracker.planning.problem import InWork
from tracker.planning.verify import verify
from tracker.words import ENGLISH

PARTS = {"RAIL": Part("RAIL", 5.0, price=100.0)}
WEEKLY = {key: tuple(window(key, at(1 + 7 * w, 8), w + 1) for w in range(4)) for key in (ONE, TWO)}
"""Both looms are out on every Tuesday at 08:00."""


def made(windows=WEEKLY, **changes: Any) -> Plan:
    asked = problem(windows, **{"parts": PARTS, **changes})
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    return found


def booked(found: Plan) -> dict[LoomKey, tuple]:
    return {b.key: (b.start, b.pilot) for b in found.bookings}


def test_the_rest_of_the_type_waits_for_the_soak() -> None:
    # pilot on Tuesday 5th until 10:00; seven days later Tuesday 12th 10:00: the other, out at 08:00, waits two hours
    found = booked(made())
    assert sorted(found.values()) == [(at(1, 8), True), (at(8, 10), False)]
    assert sorted(booked(made(soak_days=6)).values()) == [(at(1, 8), True), (at(8, 8), False)]


def test_no_soak_no_pilots() -> None:
    assert sorted(booked(made(soak_days=0)).values()) == [(at(1, 8), False), (at(1, 10), False)]


def test_the_loom_that_the_mill_names_goes_first() -> None:
    for key in (ONE, TWO):
        assert booked(made(pilots={"AJ": key.loom}))[key] == (at(1, 8), True)


def test_the_cheapest_option_that_ends_in_three_weeks_names_the_pilot() -> None:
    # loom 2 is cheaper on Tuesday 26 January (no saving foregone), but that ends after the 25th; of the first three
    # weeks loom 1 has the cheapest: its capacity is unsold
    looms = {ONE: replace(LOOMS[ONE], capacity_unsold=True, saving_per_day=1.0), TWO: LOOMS[TWO]}
    windows = {ONE: WEEKLY[ONE], TWO: WEEKLY[TWO][3:]}
    assert booked(made(windows, looms=looms))[ONE] == (at(1, 8), True)
    # neither ends in the first three weeks: the earliest end
    windows = {ONE: (window(ONE, at(23, 8)),), TWO: (window(TWO, at(22, 8)),)}
    assert [key for key, (_, pilot) in booked(made(windows, looms=looms, soak_days=1)).items() if pilot] == [TWO]


def test_the_pilot_is_one_of_the_commonest_variant() -> None:
    # four looms out every Tuesday; loom 4 is the cheapest (its capacity is unsold, nothing is saved), but the others get
    # other rows of the method and are three; of them loom 2 loses least
    looms = {LoomKey("Hall 1", n): replace(LOOMS[ONE], loom=n, saving_per_day=24.0) for n in "1234"}
    last, second = (LoomKey("Hall 1", n) for n in "42")
    looms |= {
        last: replace(looms[last], capacity_unsold=True, saving_per_day=0.0),
        second: replace(looms[second], saving_per_day=1.0),
    }
    asked = {"looms": looms, "contents": dict.fromkeys(looms, CONTENTS)}
    windows = {key: tuple(replace(w, key=key) for w in WEEKLY[ONE]) for key in looms}
    of_them = dict.fromkeys(looms, 1) | {last: 2}

    def pilot(windows=windows, **changes) -> list[LoomKey]:
        return [key for key, (_, is_pilot) in booked(made(windows, **asked, **changes)).items() if is_pilot]

    assert pilot() == [last]
    assert pilot(variants=of_them) == [second]
    # nothing of the commonest in the first three weeks: the rare one rather than wait
    assert pilot(windows | {key: windows[key][3:] for key in looms if key != last}, variants=of_them) == [last]


def test_a_pilot_is_not_converted_mid_warp_where_there_is_another_window() -> None:
    # mid-warp nothing waits: it could be done on Monday at 06:00 and would cost less, but loom 1 has a beam change
    monday = {key: still(key, WindowKind.MID_WARP, MONDAY, at(28, 0), 0) for key in (ONE, TWO)}
    windows = {ONE: (monday[ONE], window(ONE, at(1, 8))), TWO: (monday[TWO],)}
    found = booked(made(windows))
    assert found[ONE] == (at(1, 8), True)
    # the loom that the mill names keeps to a beam change, too; one that has none is taken mid-warp
    assert booked(made(windows, pilots={"AJ": "1"}))[ONE] == (at(1, 8), True)
    assert booked(made(windows, pilots={"AJ": "2"}))[TWO] == (at(0, 6), True)


def test_a_named_pilot_that_cannot_be_booked_is_replaced_and_told() -> None:
    looms = LOOMS | {ONE: replace(LOOMS[ONE], protected_until=date(2027, 3, 1))}
    found = made(looms=looms, pilots={"AJ": "1"})
    assert booked(found) == {TWO: (at(1, 8), True)}
    assert texts(found.reasons) == (
        "Loom 1, named as the pilot of AJ, cannot be booked: protected until Mon 1 Mar 2027; loom 2 (Hall 1) is its pilot "
        "instead.",
    )


def test_a_named_pilot_that_is_no_loom_of_its_type_is_told() -> None:
    assert texts(made(pilots={"AJ": "9"}).reasons) == (
        "Loom 9, named as the pilot of AJ, cannot be booked: it is none of the AJ looms to plan; loom 1 (Hall 1) is its "
        "pilot instead.",
    )


def test_who_waits_for_a_pilot_too_long_is_told_for_which() -> None:
    # the pilot ends on Tuesday 5th at 10:00; 27 days later it is Monday 1 February, past the horizon of 28 days
    (left,) = made(soak_days=27).left_over
    assert (
        ENGLISH.line(left.why)
        == "no window after Mon 1 Feb 2027 10:00, when the pilot of AJ will have run 27 days (soak)"
    )


def test_a_converted_loom_opens_its_type() -> None:
    third = LoomKey("Hall 1", "3")
    more: dict[str, Any] = {"looms": LOOMS | {third: replace(LOOMS[ONE], loom="3")}}
    # its conversion ended on Saturday 2 January: a week later all may start, Tuesday 12th at 08:00 and 10:00
    found = booked(made(**more, converted={third: at(-2, 0)}))
    assert sorted(found.values()) == [(at(8, 8), False), (at(8, 10), False)]
    found = booked(made(**more, converted={third: at(-2, 0)}, signed_off=frozenset({third})))
    assert sorted(found.values()) == [(at(1, 8), False), (at(1, 10), False)]


def test_a_loom_in_work_opens_its_type_when_it_has_run() -> None:
    third = LoomKey("Hall 1", "3")
    more: dict[str, Any] = {"looms": LOOMS | {third: replace(LOOMS[ONE], loom="3")}}
    # four half hours from Monday 06:00 end at 08:00; Monday 11th at 08:00 the type is open
    found = booked(made(**more, as_of=MONDAY, in_work=(InWork(third, 4, next(iter(CONTENTS.values()))[0]),)))
    assert sorted(found.values()) == [(at(8, 8), False), (at(8, 10), False)]


def test_a_firm_booking_is_the_pilot_of_its_type() -> None:
    first = made()
    again = made(previous=first)
    assert booked(again) == booked(first)


def test_a_type_of_one_loom_waits_for_nobody() -> None:
    looms = LOOMS | {TWO: replace(LOOMS[TWO], machine_type="RP")}
    assert sorted(booked(made(looms=looms)).values()) == [(at(1, 8), True), (at(1, 10), True)]
