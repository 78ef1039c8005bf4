"""What stands against a sign-off: hold points, checks and settings, by the sample card of `card_samples`."""

from dataclasses import replace
from datetime import datetime

from card_samples import CONTENT

from tracker.cards.sign_off import Recorded, meets, open_points
from tracker.domain.method import Setpoint

AT = datetime(2027, 1, 5, 7)
WAIVER = {"waived_because": "meter away", "waived_by": "Berg", "waived_at": AT}
STOPS = {"card": None, "operation": "Test every emergency stop", "done_by": "Kaya"}


def value(setting, side, is_value, **more):
    return {"setting": setting, "side": side, "value": is_value, "at": AT, "why": "set", **more}


def result(check, is_result, side=None, **more):
    return {"check": check, "side": side, "result": is_result, "at": AT, **more}


VALUES = (
    value("crossing angle", "left", 310),
    value("crossing angle", "right", 315),
    value("motor current", None, 2.0),
)
RESULTS = (result("Selvedge holds on the first 50 m", True, "left"), result("Guards are refitted", True),
           result("Bond of the rail", 0.1), result("Noise", True))  # fmt: skip


def is_open(work=(STOPS,), values=VALUES, results=RESULTS, since=None):
    told = Recorded(work, values, results)
    told = told.since(since) if since else told
    points = open_points(CONTENT.operations, CONTENT.setpoints, CONTENT.checks, told)
    return [next(v for k, v in p.params.items() if k in ("operation", "check", "setting")) for p in points]


def test_a_card_filled_in_leaves_nothing_open():
    """315 and 0.1 are the limits themselves: within."""
    assert is_open() == []


def test_of_an_empty_card_everything_is_open_hold_points_first():
    assert is_open((), (), ()) == [
        "Test every emergency stop", "Selvedge holds on the first 50 m", "Guards are refitted", "Bond of the rail", "Noise",
        "crossing angle", "crossing angle", "motor current",
    ]  # fmt: skip


def test_a_hold_point_without_a_name_is_open():
    assert is_open(work=({**STOPS, "done_by": None},)) == ["Test every emergency stop"]


def test_a_setting_out_of_its_limits_is_open_until_it_is_read_again_or_waived():
    off = value("crossing angle", "right", 316)
    assert is_open(values=(VALUES[0], off, VALUES[2])) == ["crossing angle"]
    assert is_open(values=(VALUES[0], off | WAIVER, VALUES[2])) == []
    assert is_open(values=(VALUES[0], off, VALUES[2], VALUES[1] | {"at": AT.replace(hour=8)})) == []


def test_a_waiver_without_a_name_waives_nothing():
    off = value("crossing angle", "right", 316) | WAIVER | {"waived_by": None}
    assert is_open(values=(VALUES[0], off, VALUES[2])) == ["crossing angle"]


def test_how_a_setting_was_found_does_not_say_how_it_stands():
    assert is_open(values=(VALUES[0], VALUES[1] | {"why": "found"}, VALUES[2])) == ["crossing angle"]


def test_a_check_may_be_waived_unless_safety_holds_it():
    """The guards are safety without a word on waiving, the bond is named as not waivable; the noise may be."""
    failed = tuple(row | {"result": 0.2 if row["check"].startswith("Bond") else False} | WAIVER for row in RESULTS)
    assert is_open(results=failed) == ["Guards are refitted", "Bond of the rail"]


def test_what_was_read_before_the_conversion_began_does_not_count():
    assert is_open(since=AT) == []
    assert len(is_open(since=AT.replace(hour=8))) == 7


def test_limits_of_an_angle_may_run_through_zero():
    """From 354 to 8: 2, 354 and 8 lie within, 9 and 353 do not."""
    point = Setpoint("crossing angle", "left", "deg", 0, 354, 8)
    assert [meets(point, angle) for angle in (2, 354, 8, 9, 353)] == [True, True, True, False, False]
    assert not meets(replace(point, unit="mm", low=-1, high=8), 9)


def test_a_hold_point_of_a_stopped_conversion_is_held_again():
    """What was proved before the conversion was stopped says nothing of today."""
    stopped = {"operation": None, "card": "C3-0001-2", "stage": "stopped", "done_by": None}
    before, again = ({**STOPS, "card": card} for card in ("C3-0001-2", "C4-0001-7"))
    told = Recorded((stopped, before), VALUES, RESULTS)
    (point,) = open_points(CONTENT.operations, CONTENT.setpoints, CONTENT.checks, told)
    assert (point.code, point.params["operation"]) == ("open-hold-point", "Test every emergency stop")
    assert not open_points(
        CONTENT.operations, CONTENT.setpoints, CONTENT.checks, replace(told, work=(*told.work, again))
    )


def test_what_is_read_after_the_sign_off_does_not_undo_it():
    """Signed off at nine: 316 at ten is a later reading. Where nothing had been read by nine the first reading after counts."""
    later = {"at": AT.replace(hour=10)}
    values = (*VALUES, value("crossing angle", "right", 316, **later))
    points = CONTENT.operations, CONTENT.setpoints, CONTENT.checks
    assert open_points(*points, Recorded((STOPS,), values, RESULTS, AT.replace(hour=9))) == ()
    assert len(open_points(*points, Recorded((STOPS,), values, RESULTS, AT.replace(hour=10)))) == 1
    only_later = (VALUES[0], VALUES[1] | later, values[-1] | {"at": AT.replace(hour=11)}, VALUES[2])
    assert open_points(*points, Recorded((STOPS,), only_later, RESULTS, AT.replace(hour=9))) == ()
