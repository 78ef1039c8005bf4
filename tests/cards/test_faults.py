"""What cannot be of a record: each by its code and field, against the sample loom of `card_samples`."""

from datetime import datetime

import pytest
from card_samples import CONTENT, KEY, OPERATIONS

from tracker.cards.faults import Known, faults
from tracker.domain.method import Method
from tracker.domain.mill import LoomKey

SIX, TEN, NOON = (datetime(2027, 1, 5, hour) for hour in (6, 10, 12))
LOOM = {"loom": KEY.loom, "hall": KEY.hall}
WHOLE = {
    **LOOM,
    "card": "C3-0001-2",
    "operation": None,
    "started_at": SIX,
    "ended_at": TEN,
    "stage": "run-in",
    "crew": "F1",
}
RAIL = {**LOOM, "card": "C3-0001-2", "operation": "Lift the new rail on"}
ANGLE = {**LOOM, "setting": "crossing angle", "side": "left", "value": 310, "at": TEN, "why": "set"}
GUARDS = {**LOOM, "check": "Guards are refitted", "side": None, "result": True, "at": TEN}
STOPS = {**LOOM, "from_at": SIX, "to_at": TEN, "cause": None, "stops": 3, "picks": 1000.0}


def known(**more):
    method = Method(version=4, operations=OPERATIONS, setpoints=CONTENT.setpoints, checks=CONTENT.checks)
    given = {"begun": frozenset({KEY}), "work": {KEY: (WHOLE,)}} | more
    cards = {(3, 1): KEY, (3, 2): LoomKey("Hall 1", "A-2")}
    return Known(
        lambda _: (method,), frozenset({"F1", "F2"}), frozenset({"PIN"}), NOON,
        lambda plan, place: cards.get((plan, place)), lambda _: {"PIN": 4.0}, **given,
    )  # fmt: skip


def said(table, row, **more):
    return [(fault.said.code, fault.field) for fault in faults(table, row, known(**more))]


def test_a_card_as_it_should_be_has_no_faults():
    rows = {"work_done": WHOLE, "set_values": ANGLE, "check_results": GUARDS, "stops": STOPS}
    assert [said(table, row) for table, row in rows.items()] == [[]] * 4
    assert said("work_done", RAIL | {"torque_nm": 40.0, "minutes": 240.0}) == []


@pytest.mark.parametrize(
    "table, row, code, field",
    [
        # 3·2⁵ + 2·2 = 100; 100 mod 11 = 1; 12 − 1 = 11 mod 11 = 0: card 2 of plan 3 is that of loom A-2
        ("work_done", WHOLE | {"card": "C3-0002-0"}, "card-of-another", "card"),
        ("work_done", WHOLE | {"card": "C3-0001-3"}, "card-mistyped", "card"),
        ("work_done", WHOLE | {"ended_at": None}, "record-without-end", "ended_at"),
        ("work_done", WHOLE | {"stage": "stopped", "remark": " "}, "stopped-without-reason", "remark"),
        ("work_done", WHOLE | {"ended_at": NOON.replace(hour=13)}, "record-ahead", "ended_at"),
        ("work_done", WHOLE | {"crew": "F2", "started_at": SIX.replace(hour=9)}, "two-crews", "crew"),
        ("work_done", WHOLE | {"crew": "F9", "started_at": TEN, "ended_at": NOON}, "crew-not-known", "crew"),
        ("work_done", WHOLE | {"minutes": 241.0}, "minutes-longer", "minutes"),  # 6 to 10 are 240
        ("work_done", RAIL | {"minutes": 0.0}, "minutes-longer", "minutes"),
        ("work_done", RAIL | {"torque_nm": 0.0}, "torque-impossible", "torque_nm"),
        ("work_done", RAIL | {"torque_nm": 54.0}, "torque-impossible", "torque_nm"),  # 40 · 4/3 = 53.3
        ("work_done", RAIL | {"operation": "Lift the old rail on"}, "operation-not-known", "operation"),
        ("set_values", ANGLE | {"value": 400}, "value-impossible", "value"),
        ("set_values", ANGLE | {"value": "soft"}, "value-no-number", "value"),
        ("set_values", ANGLE | {"setting": "crossing angel"}, "setting-not-known", "setting"),
        ("set_values", ANGLE | {"waived_because": "meter away"}, "waiver-incomplete", "waived_because"),
        ("check_results", GUARDS | {"result": 5}, "result-of-other-kind", "result"),
        ("check_results", GUARDS | {"waived_because": "x", "waived_by": "B", "waived_at": TEN}, "never-waived", "waived_because"),
        ("parts_used", {**LOOM, "part": "PIN", "used": 3.0, "broken": 2.0}, "more-than-issued", "used"),
        ("parts_used", {**LOOM, "part": "NUT", "used": 1.0}, "part-unknown", "part"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_at_its_field(table, row, code, field):
    assert said(table, row) == [(code, field)]


def test_nothing_is_done_on_a_loom_that_is_not_in_work():
    nothing = {"begun": frozenset(), "work": {}}
    assert (
        said("work_done", RAIL, **nothing) == said("set_values", ANGLE, **nothing) == [("record-not-in-work", "loom")]
    )
    assert said("set_values", ANGLE | {"why": "found"}, **nothing) == []


def test_a_period_overlaps_no_other_of_its_cause_and_has_one_number_of_picks():
    other = STOPS | {"from_at": SIX.replace(hour=9), "to_at": NOON}
    assert said("stops", STOPS, stops={KEY: (other,)}) == [("period-overlaps", "from_at")]
    assert said("stops", STOPS, stops={KEY: (other | {"cause": "weft"},)}) == []
    warp = STOPS | {"cause": "warp", "picks": 999.0}
    assert said("stops", STOPS, stops={KEY: (warp,)}) == [("picks-differ", "picks")]
