"""What cannot be planned at all is refused before anything is searched for, with what to mend."""

from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from datetime import UTC, date, datetime
from multiprocessing import get_context

import pytest

from tracker.domain.method import Method, Operation
from tracker.domain.mill import Crew, Loom, LoomKey, Mill
from tracker.domain.progress import Stage, StageChange
from tracker.domain.stock import Reservation
from tracker.domain.terms import Terms
from tracker.errors import DataError
from tracker.mill_state.planning import PlanningData, prepare
from tracker.words import ENGLISH

AT = datetime(2027, 1, 4, 5, tzinfo=UTC)
KEY = LoomKey("H", "1")
MILL = Mill(
    looms={KEY: Loom("H", "1", "AJ")},
    crews=(Crew("Fitters 1", "fitter", 2), Crew("Fitters 2", "Fitter", 3), Crew("Electrician", "electrician", 1)),
    method=Method(1, (Operation(10, "Lift the rail", 30, "fitter", 2), Operation(20, "Wire", 30, "electrician", 1))),
    terms=Terms(time_zone="Europe/Vienna", start=date(2027, 1, 4), horizon_days=28),
)


def refused(mill: Mill, at: datetime = AT) -> str:
    with pytest.raises(DataError) as refusal:
        prepare(PlanningData(mill, None, {}), at)
    return ENGLISH.line(refusal.value)


def test_the_largest_crew_must_do_for_every_operation_of_its_trade():
    prepare(PlanningData(MILL, None, {}), AT)
    small = tuple(replace(crew, heads=1) if crew.trade != "electrician" else crew for crew in MILL.crews)
    name = next(crew.crew for crew in small if crew.trade == "fitter")
    assert refused(replace(MILL, crews=small)) == (
        f"the largest crew, {name}, has 1 head, and step 10 Lift the rail asks for 2 × fitter; give a crew more heads"
    )
    # a smaller crew beside one that is large enough stops nothing
    prepare(PlanningData(replace(MILL, crews=(*MILL.crews, Crew("Fitters 3", "fitter", 1))), None, {}), AT)


def test_a_moment_past_the_horizon_is_told_in_local_time():
    # 28 days from Monday 4 January are over at local midnight of Monday 1 February, 23:00 UTC of the day before
    assert refused(MILL, datetime(2027, 1, 31, 23, 30, tzinfo=UTC)) == (
        "the horizon of 28 days ends on Mon 1 Feb 2027 00:00, and as of is Mon 1 Feb 2027 00:30; raise the term 'horizon "
        "(days)'"
    )
    prepare(PlanningData(MILL, None, {}), datetime(2027, 1, 31, 22, 30, tzinfo=UTC))


def test_without_looms_or_method_the_next_step_is_named():
    assert refused(replace(MILL, looms={})).startswith("there are no looms; load the loom list first")
    assert refused(replace(MILL, method=Method())).startswith(
        "there is no method yet; load a workbook with the sheet Operations"
    )


def test_what_is_held_for_looms_at_work_is_not_to_be_had_for_others():
    # 1 and 2 are at work and hold 2 + 1 rails; what is held for a booked loom and one put off is to be had for the plan
    keys = [LoomKey("H", str(number)) for number in range(1, 5)]
    mill = replace(MILL, looms={key: Loom("H", key.loom, "AJ") for key in keys})
    stages = zip(keys, (Stage.IN_WORK, Stage.RUN_IN, Stage.PUT_OFF), strict=False)
    data = PlanningData(
        mill,
        None,
        {key: StageChange(key, stage, AT, "fitter", "no warp") for key, stage in stages},
        reservations=tuple(Reservation(key, "RAIL", held) for key, held in zip(keys, (2, 1, 4, 8), strict=True)),
    )
    assert prepare(data, AT).problem.taken == {"RAIL": 3}


def test_the_mill_of_a_moment_travels_to_another_process():
    data = PlanningData(MILL, None, {KEY: StageChange(KEY, Stage.SCOPED, AT, "planner")})
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as pool:
        there = pool.submit(prepare, data, AT).result()
    here = prepare(data, AT)
    assert (there.problem, there.windows, there.scopes) == (here.problem, here.windows, here.scopes)


def test_looms_to_which_the_same_rows_apply_are_one_variant():
    # step 30 is for the type RP only: 1 and 2 are alike, 3 is another
    operations = (*MILL.method.operations, Operation(30, "Drill", 20, "fitter", 1, conditions={"machine type": "RP"}))
    looms = {LoomKey("H", n): Loom("H", n, kind) for n, kind in (("1", "AJ"), ("2", "AJ"), ("3", "RP"))}
    mill = replace(MILL, looms=looms, method=Method(1, operations))
    variant = prepare(PlanningData(mill, None, {}), AT).problem.variants
    assert [variant[key] == variant[KEY] for key in looms] == [True, True, False]
