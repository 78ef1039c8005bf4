"""The electrician stays with a pilot from its start to its end.

A conversion takes two hours from its start (06:00 to 14:00 are the shifts of both trades); the electrician is asked for in the
second hour only, at 40 an hour.
"""

from dataclasses import replace
from datetime import time

from said import texts
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, ONE, TWO, at, content, problem, window

from tracker.domain.mill import LoomKey, Part
from tracker.domain.plan import Need, Plan
from tracker.domain.work import StepLoad
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import verify

PARTS = {"RAIL": Part("RAIL", 5.0, price=100.0)}
WEEKLY = {key: tuple(window(key, at(1 + 7 * w, 8), w + 1) for w in range(4)) for key in (ONE, TWO)}
"""Both looms are out on every Tuesday at 08:00."""


def asked(windows=WEEKLY, **changes) -> PlanningProblem:
    return problem(windows, **{"parts": PARTS, "pilot_trade": "Electrician", **changes})


def made(said: PlanningProblem) -> Plan:
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    return found


def electrician(found: Plan, pilot: bool) -> tuple[Need, ...]:
    (booking,) = (b for b in found.bookings if b.pilot is pilot)
    assert booking.attended is pilot
    return tuple(need for need in booking.needs if need.kind == "trade")


def test_the_electrician_is_held_throughout_a_pilot_and_only_when_asked_for_of_the_others() -> None:
    # the pilot on Tuesday from 08:00 to 10:00, the other a week later from 10:00 (soak) to 12:00. The pilot costs an hour of the
    # electrician more: 4 fitter hours × 30 + 2 × 40 = 200, the other 160; five person-hours become six
    found = made(asked())
    assert electrician(found, True) == (Need("electrician", "trade", 1, at(1, 8), at(1, 10)),)
    assert electrician(found, False) == (Need("electrician", "trade", 1, at(8, 11), at(8, 12)),)
    assert sorted((b.pilot, b.cost.labour, b.labour_h) for b in found.bookings) == [(False, 160, 5), (True, 200, 6)]
    # a trade that no operation asks for: nobody stays
    assert not any(b.attended for b in made(asked(pilot_trade="knotter")).bookings)


def test_a_pilot_begins_only_when_the_electrician_can_stay() -> None:
    # the electrician comes at 09:00: others may begin at 08:00, since he is asked for from 09:00; the pilot at 09:00
    late = replace(ELECTRICIAN, shift_start=time(9))
    assert sorted((b.start, b.pilot) for b in made(asked(crews=(FITTERS, late))).bookings) == [
        (at(1, 9), True), (at(8, 11), False),
    ]  # fmt: skip


def test_two_pilots_wait_for_the_one_electrician() -> None:
    # two types, two crews: both looms are out at 08:00; the electrician can stay with one at a time, so one begins at 10:00,
    # though without pilots (no soak) the electrician's hours alone would let it begin at 09:00
    looms = {key: replace(loom, machine_type=key.loom) for key, loom in asked().mill.looms.items()}
    crews = (FITTERS, replace(FITTERS, crew="Fitters 2"), ELECTRICIAN)
    said = asked(
        looms=looms, crews=crews, windows=WEEKLY, tools={"hoist": replace(asked().mill.tools["hoist"], how_many=2)}
    )
    assert sorted((b.start, b.attended) for b in made(said).bookings) == [(at(1, 8), True), (at(1, 10), True)]
    alone = made(replace(said, mill=replace(said.mill, terms=replace(said.mill.terms, soak_days=0))))
    assert sorted((b.start, b.attended) for b in alone.bookings) == [(at(1, 8), False), (at(1, 9), False)]
    # two looms of each type
    more = {LoomKey("Hall 1", n): replace(looms[key], loom=n) for n, key in (("3", ONE), ("4", TWO))}
    windows = WEEKLY | {key: tuple(replace(w, key=key) for w in WEEKLY[ONE]) for key in more}
    said = replace(
        said, mill=replace(said.mill, looms=looms | more), windows=windows, contents=dict.fromkeys(windows, CONTENTS)
    )
    assert sorted(b.start for b in made(said).bookings if b.pilot) == [at(1, 8), at(1, 10)]


def test_where_no_electrician_is_there_long_enough_the_pilot_goes_without_and_the_plan_says_so() -> None:
    # an hour a day is enough for the second hour of a conversion (08:00 to 10:00), never for two hours. The other may begin from
    # Tuesday the 12th, 10:00 on (soak): on the 13th at 08:00 it has waited for 24 hours at 5, less than six days of saving at 24
    short = replace(ELECTRICIAN, shift_start=time(9), shift_end=time(10))
    said = asked(crews=(FITTERS, short))
    found = made(said)
    assert sorted((b.start, b.pilot, b.attended) for b in found.bookings) == [
        (at(1, 8), True, False),
        (at(9, 8), False, False),
    ]
    line = (
        "Loom 1 (Hall 1), the pilot of AJ, is converted without the Electrician throughout: at no possible start is one at work "
        "from beginning to end. Overtime of that trade would let one be."
    )
    assert line in texts(found.reasons)
    # a plan that keeps quiet about it is found out
    quiet = replace(found, reasons=())
    says = "loom 1 (Hall 1) is a pilot without the Electrician throughout, and the plan does not say why"
    assert texts(verify(quiet, said)) == (says,)


def test_a_published_pilot_keeps_its_electrician() -> None:
    # published on Monday, the pilot of Tuesday 08:00 is firm (72 running hours ahead): planned again on Monday evening it stays
    # with the electrician from 08:00 to 10:00; released or held it stays there, too
    before = made(asked())
    need = electrician(before, True)
    pilot = next(b.key for b in before.bookings if b.pilot)
    for changes in ({}, {"released": frozenset({pilot})}, {"released": frozenset({pilot}), "held": frozenset({pilot})}):
        again = made(asked(as_of=at(0, 20), previous=before, **changes))
        assert electrician(again, True) == need


def test_the_steps_that_do_not_learn_stay_as_long() -> None:
    # an hour of fitters, 30 minutes of which are a wait that no learning shortens: the electrician stands by through both
    steps = (StepLoad(10, 30.0, {"fitter": 2}, {}, learns=False), *content().steps)
    work = replace(content(), steps=steps, on_loom_min=150.0)
    attended = work.attended_by("electrician")
    assert [step.heads.get("electrician") for step in attended.steps] == [1, 1, 1]
    assert attended.labour_min == {"fitter": 240.0, "electrician": 150.0}
    assert attended.kept_labour_min == {"electrician": 30.0}
    assert attended.attended_by("electrician") is attended
    # half as long: 30 + (60 + 60) / 2 = 90 minutes of the electrician
    assert attended.scaled(0.5).labour_min["electrician"] == 90.0
