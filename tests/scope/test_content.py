"""Scope of a loom: rows, minutes, heads, tools, parts, choices, reasons, and what must be surveyed."""

from dataclasses import replace

import pytest
from refusals import refused
from said import said
from small_mill import METHOD, key, loom, mill, operation, with_operations

from tracker.domain.method import Alternative, Method, Operation
from tracker.domain.windows import WindowKind
from tracker.errors import DataError
from tracker.scope.content import scope_looms
from tracker.scope.loads import Loader

REPEAT, MID_WARP = WindowKind.REPEAT, WindowKind.MID_WARP


def names(content):
    return [row.operation for row in content.operations]


def test_a_drilled_loom_with_one_side():
    # bench 20; on the loom: fit left 30; after restart 10; all × 1.15; one fitter throughout.
    scope = scope_looms(mill(loom("1")))[key("1")]
    (content,) = scope.contents[REPEAT]
    assert names(content) == ["Make ready", "Fit left", "Watch"]
    assert content.on_loom_min == pytest.approx(34.5)
    assert content.bench_min == pytest.approx(23)
    assert content.after_restart_min == pytest.approx(11.5)
    assert content.labour_min == {"fitter": pytest.approx(69)}
    assert content.labour_h == pytest.approx(1.15)
    assert content.parts == {"DEVICE": 1}
    assert content.choices == (("rail work", "as it is"),)


def test_work_on_the_bench_afterwards_is_paid_for_and_holds_no_loom():
    # 20 minutes of the fitter more, on no loom: 23 with the allowance; the conversion itself takes what it took
    cleaned = with_operations(operation(10, 70, "Clean the old rail", 20, place="bench after"))
    (content,) = scope_looms(mill(loom("1"), method=cleaned))[key("1")].contents[REPEAT]
    assert (content.bench_after_min, content.on_loom_min) == (pytest.approx(23), pytest.approx(34.5))
    assert content.labour_min == {"fitter": pytest.approx(69 + 23)}
    assert [step.step for step in (*content.steps, *content.after_steps)] == [30, 60]


def test_rows_with_one_step_number_are_done_side_by_side():
    # both sides: 30 and 20 min side by side take 30 min and two fitters; labour 50 person-minutes.
    (content,) = scope_looms(mill(loom("1", side="both")))[key("1")].contents[REPEAT]
    (step,) = content.steps
    assert (step.step, step.minutes, step.heads, step.tools) == (30, pytest.approx(34.5), {"fitter": 2}, {})
    assert content.labour_min["fitter"] == pytest.approx((20 + 30 + 20 + 10) * 1.15)
    assert content.parts == {"DEVICE": 2}


def test_the_beam_comes_out_in_a_mid_warp_stop_alone():
    contents = scope_looms(mill(loom("1")))[key("1")].contents
    assert {kind: "Beam out" in names(of[0]) for kind, of in contents.items()} == {
        WindowKind.REPEAT: False, WindowKind.STYLE: False, WindowKind.STANDING: False, MID_WARP: True,
    }  # fmt: skip
    assert contents[MID_WARP][0].steps[0].tools == {"hoist": 1}


def test_one_content_for_each_alternative_that_is_left():
    drill, rail = scope_looms(mill(loom("1", rail="undrilled")))[key("1")].contents[REPEAT]
    assert (drill.choices, rail.choices) == ((("rail work", "drill"),), (("rail work", "new rail"),))
    assert drill.on_loom_min == pytest.approx((30 + 60) * 1.15)
    assert rail.on_loom_min == pytest.approx((30 + 50) * 1.15)
    assert rail.labour_min["fitter"] == pytest.approx((20 + 30 + 2 * 50 + 10) * 1.15)
    assert (drill.parts, rail.parts) == ({"DEVICE": 1}, {"DEVICE": 1, "RAIL": 1})


def test_learning_shortens_every_minute():
    (content,) = scope_looms(mill(loom("1")), {"AJ": 0.8})[key("1")].contents[REPEAT]
    assert content.on_loom_min == pytest.approx(34.5 * 0.8)
    assert content.labour_min["fitter"] == pytest.approx(69 * 0.8)


def test_three_figures_count_as_their_pert_expectation():
    # (20 + 4 × 30 + 70) / 6 = 35
    method = with_operations(operation(9, 70, "Set", 30, minutes_low=20, minutes_high=70))
    (content,) = scope_looms(mill(loom("1"), method=method))[key("1")].contents[REPEAT]
    assert content.steps[-1].minutes == pytest.approx(35 * 1.15)


def test_looms_that_need_the_same_share_their_contents():
    scopes = scope_looms(mill(loom("1", frames=4), loom("2", frames=12), loom("3", frames=13)))
    assert scopes[key("1")].contents is scopes[key("2")].contents
    assert scopes[key("1")].variant == scopes[key("2")].variant != scopes[key("3")].variant


def test_looms_with_other_learning_are_the_same_variant():
    scopes = scope_looms(mill(loom("1"), loom("2", machine_type="RA")), {"RA": 0.7})
    assert scopes[key("1")].variant == scopes[key("2")].variant
    assert scopes[key("1")].contents[REPEAT][0].labour_h > scopes[key("2")].contents[REPEAT][0].labour_h


def test_a_missing_attribute_that_matters_makes_the_loom_to_survey():
    scope = scope_looms(mill(loom("1", side=None, rail=None)))[key("1")]
    assert scope.to_survey
    assert scope.unknown == ("side", "rail")
    assert said(scope.obstacle) == "to survey: side unknown, rail unknown"
    assert scope.contents == {}


def test_a_value_that_cannot_be_compared_is_to_survey_too():
    scope = scope_looms(mill(loom("1", frames="many")))[key("1")]
    assert said(scope.obstacle) == "to survey: frames = many not comparable"


def test_an_attribute_asked_for_in_two_unlike_ways_is_to_survey():
    rows = [operation(20, 80, "Close", 5, grade="> 3"), operation(21, 90, "Open", 5, grade='> "C"')]
    looms = [loom("1"), loom("2", grade=5), loom("3", grade="D")]
    scopes = scope_looms(mill(*looms, method=with_operations(*rows)))
    assert [scopes[key(n)].unknown for n in "123"] == [("grade",)] * 3


@pytest.mark.parametrize(
    "rows",
    [
        [operation(20, 80, "Close", 5, creel="vertical", side="right")],  # asked of right-hand looms alone
        [operation(20, 80, "Close", 5, creel="vertical"), operation(21, 80, "Close", 5, creel="not(vertical)")],
        [operation(20, 80, "Close", 5, creel="<= 12"), operation(21, 80, "Close", 5, creel="> 12")],
    ],
)
def test_a_missing_attribute_that_changes_nothing_does_not(rows):
    scope = scope_looms(mill(loom("1"), method=with_operations(*rows)))[key("1")]
    assert not scope.to_survey and scope.contents[REPEAT]


def test_two_missing_attributes_that_only_matter_together():
    # extra work where creel is vertical and frames > 12; frames also decides "Wire": with creel known to be none,
    # frames still matters; with frames 8, creel does not.
    method = with_operations(operation(20, 80, "Close", 5, creel="vertical", frames="> 12"))
    scopes = scope_looms(mill(loom("1", frames=None), loom("2", frames=8), loom("3", frames=20), method=method))
    assert [scopes[key(n)].unknown for n in "123"] == [("frames", "creel"), (), ("creel",)]


def test_a_choice_without_an_alternative_is_an_obstacle():
    scope = scope_looms(mill(loom("1", rail="bent")))[key("1")]
    assert scope.contents == {}
    assert said(scope.obstacle) == "no alternative is left of rail work (any window)"


def test_a_loom_without_work_on_it_is_not_planned():
    method = Method(operations=(operation(2, 10, "Make ready", 20, place="bench before"),))
    scope = scope_looms(mill(loom("1"), method=method))[key("1")]
    assert (scope.contents, said(scope.obstacle)) == ({}, "the method gives it no operation on the loom")


def test_a_choice_that_changes_nothing_is_not_taken():
    # Both rows that name the choice ask for undrilled rails, so a drilled loom has nothing to choose.
    drill, change = (replace(o, conditions={**o.conditions, "rail": "undrilled"}) for o in METHOD.operations[4:6])
    method = replace(
        METHOD,
        operations=(*METHOD.operations[:4], drill, change),
        kit_lines=METHOD.kit_lines[:2],
        alternatives=METHOD.alternatives[1:],
    )
    (content,) = scope_looms(mill(loom("1"), method=method))[key("1")].contents[REPEAT]
    assert content.choices == ()


def test_a_choice_may_hang_on_another():
    # "jig" is asked only where the rail is drilled in place.
    method = replace(
        with_operations(operation(20, 42, "Small jig", 5, jig="small"), operation(21, 42, "Big jig", 9, jig="big")),
        alternatives=(
            *METHOD.alternatives,
            Alternative("jig", "small", {"rail work": "drill"}),
            Alternative("jig", "big", {"rail work": "drill"}),
            Alternative("jig", "none", {"rail work": "not(drill)"}),
        ),
    )  # fmt: skip
    contents = scope_looms(mill(loom("1", rail="undrilled"), method=method))[key("1")].contents[REPEAT]
    assert [dict(content.choices) for content in contents] == [
        {"rail work": "drill", "jig": "small"},
        {"rail work": "drill", "jig": "big"},
        {"rail work": "new rail", "jig": "none"},
    ]


def test_reasons_in_words():
    scope = scope_looms(mill(loom("1", side="both", rail="undrilled", frames=16)))[key("1")]
    words = {getattr(row, "operation", getattr(row, "part", "")): reason for row, reason in scope.reasons}
    assert words["Make ready"] == "every loom"
    assert words["Beam out"] == "window = mid-warp"
    assert words["Fit left"] == "side = both"
    assert words["Drill"] == "rail work = drill"
    assert words["Wire"] == "frames = 16 (> 12)"


def test_efficiency_is_asked_for_in_percent():
    listen = replace(operation(20, 80, "Listen", 5), conditions={"Efficiency (%)": "> 85"})
    method = with_operations(listen)
    looms = [replace(loom(n), efficiency=share) for n, share in (("1", 0.9), ("2", 0.85))]
    scopes = scope_looms(mill(*looms, method=method))
    assert ["Listen" in names(scopes[key(n)].contents[REPEAT][0]) for n in "12"] == [True, False]


def test_an_unreadable_condition_names_sheet_and_cell():
    method = with_operations(operation(20, 80, "Close", 5, creel="<= 12 cm"))
    with refused(DataError, "Operations J20, column creel"):
        scope_looms(mill(loom("1"), method=method))


def test_without_a_method_there_is_no_scope():
    with refused(DataError, "no method yet"):
        scope_looms(mill(loom("1"), method=Method()))


def test_a_trade_written_in_two_ways_is_one_in_its_step():
    # an electrician and an Electrician side by side, 30 and 20 min: two heads of one trade for 30 min, 30 + 20 = 50
    # person-minutes; Hoist and hoist are two of one tool
    rows = [
        operation(2, 10, "Wire", 30, trade="electrician", tool="Hoist"),
        operation(3, 10, "Lay", 20, trade="Electrician", tool="hoist"),
    ]
    load = Loader(0.0).load(rows)
    assert [(step.minutes, step.heads, step.tools) for step in load.steps] == [(30, {"electrician": 2}, {"Hoist": 2})]
    assert load.labour_min == {"electrician": 50}


def test_steps_that_do_not_learn_keep_their_minutes():
    # isolate 20 min does not learn (nor its three points count), lift 60 min does; allowance 10 %, learning 0.5:
    # 20 × 1.1 + 60 × 1.1 × 0.5 = 22 + 33 = 55 min, with 1 and 2 heads 22 + 66 = 88 person-minutes, of which 22 are kept
    rows = (
        Operation(10, "Isolate", 20, "fitter", 1, minutes_low=10, minutes_high=60, learns=False),
        Operation(20, "Lift", 60, "fitter", 2),
    )
    load = Loader(0.1, 0.5).load(rows)
    assert load.on_loom_min == pytest.approx(55)
    assert [step.learns for step in load.steps] == [False, True]
    assert (load.labour_min["fitter"], load.kept_labour_min["fitter"]) == (pytest.approx(88), pytest.approx(22))


def test_where_the_ordinary_change_parts_a_conversion():
    (content,) = scope_looms(mill(loom("1")))[key("1")].contents[REPEAT]

    def first_part(*places):
        rows = [replace(operation(i, i, f"Step {i}", 30), warp=warp) for i, warp in enumerate(places, start=10)]
        return replace(content, steps=Loader(0.0).load(rows).steps).first_part

    # up to the last that needs the warp out, whatever stands before it
    assert first_part(None, "out", None, "out", None, "in") == 4
    # what needs neither comes before the change only where something after it needs the warp out
    assert first_part("out", None, "in") == 1
    assert first_part("out", None) == 1
    # nothing needs it out: all before the first that needs it in
    assert first_part(None, None, "in", None) == 2
    # nothing is marked, or all of it lies on one side
    assert first_part(None, None) == 0
    assert first_part("in", None) == 0
    assert first_part(None, "out") == 0
    # of rows side by side, one that needs it out decides
    beside = [replace(operation(i, 10, f"Row {i}", 30), warp=warp) for i, warp in enumerate(("in", None, "out"))]
    assert Loader(0.0).load(beside).steps[0].warp == "out"
