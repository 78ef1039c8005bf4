"""The review of a method: each fault is found, at its sheet and cell, and stops the method or does not."""

from dataclasses import replace
from datetime import time

import pytest
from small_mill import CREWS, METHOD, PARTS, TERMS, TOOLS, loom, operation, row, with_operations

from tracker.domain.findings import Severity
from tracker.domain.method import Alternative, Check, KitLine, Method, Setpoint
from tracker.domain.mill import Crew
from tracker.scope.review import refuses, review, settle
from tracker.words.findings import in_words

REFUSED, DOUBT, NOTE = Severity.REFUSED, Severity.DOUBT, Severity.NOTE
LOOMS = [
    loom("1"),
    loom("2", side="right", rail="undrilled"),
    loom("3", side="both", frames=16),
    loom("4", side="both", rail="undrilled", frames=14),
]


def findings(method=METHOD, looms=LOOMS, parts=PARTS, tools=TOOLS, crews=CREWS):
    return review(method, {one.key: one for one in looms}, parts, tools, crews, TERMS)


def only(method=METHOD, **given):
    (one,) = findings(method, **given)
    return one


def where(finding):
    return finding.code, finding.severity, finding.sheet, finding.cell


def test_a_sound_method_has_no_findings():
    assert findings() == ()
    assert not refuses(())


def test_a_method_without_an_operation():
    one = only(Method())
    assert where(one) == ("method-without-operation", REFUSED, "Operations", "")
    assert refuses([one])


@pytest.mark.parametrize("cell", ["<= 12 cm", "left,", "= left", "[8..16"])
def test_a_cell_that_cannot_be_read(cell):
    one = only(with_operations(operation(9, 70, "Clean", 5, side=cell)))
    assert where(one) == ("condition-unreadable", REFUSED, "Operations", "J9")
    assert one.raw == cell


def test_a_kit_line_of_half_a_piece_or_of_too_much():
    """DEVICE is counted in pieces, RAIL in m: 2.5 and 0.0005 cannot be handed out. The quantity stands in column B."""
    kit = (replace(METHOD.kit_lines[0], quantity=2.5), *METHOD.kit_lines[1:-1],
           replace(METHOD.kit_lines[-1], quantity=0.0005))  # fmt: skip
    parts = {name: replace(part, unit="pc" if name == "DEVICE" else "m") for name, part in PARTS.items()}
    one, other = findings(replace(METHOD, kit_lines=kit), parts=parts)
    assert (one.code, one.severity, in_words(one).message) == (
        "quantity-impossible", REFUSED, "Part DEVICE: 2.5 is no whole number of pc.",
    )  # fmt: skip
    assert in_words(other).message == "Part RAIL: 0.0005 is finer than 0.001 m."


def test_an_unreadable_cell_does_not_hide_the_others():
    codes = {one.code for one in findings(with_operations(operation(9, 70, "Clean", -5, side="left,", tool="saw")))}
    assert codes == {"condition-unreadable", "impossible-figure", "tool-not-listed"}


def test_a_decimal_comma_is_asked_about():
    one = findings(with_operations(operation(9, 70, "Clean", 5, frames="<= 12,5")))[0]
    assert where(one)[:2] == ("decimal-comma", DOUBT)
    assert in_words(one).message == "<= 12,5 is read as <= 12 or 5."


def test_an_unknown_attribute_offers_the_one_that_was_meant():
    one = only(with_operations(operation(9, 70, "Clean", 5, rial="drilled")))
    assert where(one) == ("unknown-attribute", DOUBT, "Operations", "J9")
    assert "Did you mean Rail?" in in_words(one).hint


def test_an_attribute_still_to_be_surveyed_is_answered():
    found = findings(with_operations(operation(9, 70, "Clean", 5, oil_line="yes")))
    assert [one.code for one in found] == ["unknown-attribute"] and refuses(found)
    assert not refuses(settle(found, {"Oil line": "as written"}))
    assert refuses(settle(found, {"Rail": "as written"}))


def test_a_value_that_no_loom_has():
    one = only(with_operations(operation(9, 70, "Clean", 5, rail="undriled")))
    assert where(one) == ("value-on-no-loom", DOUBT, "Operations", "J9")
    assert in_words(one).message == "No loom has rail = undriled."
    assert "Did you mean undrilled?" in in_words(one).hint


def test_a_value_that_a_loom_without_one_may_have_is_a_note():
    looms = [*LOOMS, loom("5", rail=None)]
    found = {one.code: one.severity for one in findings(with_operations(operation(9, 70, "X", 5, rail="bent")), looms)}
    assert found == {"value-on-no-loom": NOTE}


def test_a_range_written_with_a_dash_is_a_word_that_no_loom_has():
    one = only(with_operations(operation(9, 70, "Clean", 5, frames="8-16")))
    assert in_words(one).message == "No loom has frames = 8-16."


@pytest.mark.parametrize("cell", ["[16..8]", "(8..8)", "not(<= 8, > 8)"])
def test_a_row_that_can_never_hold(cell):
    codes = {where(one)[:2] for one in findings(with_operations(operation(9, 70, "Clean", 5, frames=cell)))}
    assert ("row-never-holds", REFUSED) in codes


def test_an_attribute_put_in_order_in_two_ways():
    rows = [operation(9, 70, "Clean", 5, frames='> "C"'), operation(10, 80, "Dust", 5, frames="> 3")]
    found = [one for one in findings(with_operations(*rows)) if one.severity is REFUSED]
    assert [where(one) for one in found] == [("unlike-limits", REFUSED, "Operations", "J9")]
    assert in_words(found[0]).message == '> "C" asks for a text; Operations J8 asks for a number.'


@pytest.mark.parametrize(
    ("heading", "value", "meant"), [("window", "midwarp", "mid-warp"), ("rail_work", "new rails", "new rail")]
)
def test_a_window_or_alternative_that_there_is_not(heading, value, meant):
    one = findings(with_operations(operation(9, 70, "Clean", 5, **{heading: value})))[0]
    assert where(one) == ("value-unknown", REFUSED, "Operations", "J9")
    assert f"Did you mean {meant}?" in in_words(one).hint


def test_a_part_that_is_not_listed():
    line = KitLine("DEVISE", 1, row=row(9, "part", "quantity", sheet="Kit lines"))
    one = only(replace(METHOD, kit_lines=(*METHOD.kit_lines, line)))
    assert where(one) == ("part-not-listed", REFUSED, "Kit lines", "A9")
    assert in_words(one).hint.startswith("Did you mean DEVICE?")


def test_a_tool_that_is_not_listed():
    assert where(only(tools={"hoist": TOOLS["hoist"]})) == ("tool-not-listed", REFUSED, "Operations", "F6")


def test_a_trade_without_a_crew():
    one = only(crews=CREWS[:1])
    assert where(one) == ("trade-without-crew", REFUSED, "Operations", "D8")


def test_a_trade_is_one_however_its_crew_is_written():
    crews = (Crew("F1", "Fitter", 2), Crew("E1", " ELECTRICIAN", 1))
    assert findings(crews=crews) == ()
    # one electrician in E1 and one in E2 are two altogether, and the crew written Fitter is of the lead trade
    wire = with_operations(operation(9, 70, "Wire", 5, trade="electrician", heads=2))
    assert findings(wire, crews=(*crews, Crew("E2", "electrician", 1))) == ()
    lift = only(with_operations(operation(9, 70, "Lift", 5, heads=3)), crews=crews)
    assert "the largest crew of the lead trade has 2" in in_words(lift).message


def test_more_heads_of_the_lead_trade_than_the_largest_crew_has():
    one = only(with_operations(operation(9, 70, "Lift", 5, heads=3)), crews=(*CREWS, Crew("F2", "fitter", 1)))
    assert where(one) == ("too-many-heads", REFUSED, "Operations", "E9")
    assert "the largest crew of the lead trade has 2" in in_words(one).message


def test_more_heads_of_another_trade_than_there_are():
    method = with_operations(operation(9, 70, "Wire", 5, trade="electrician", heads=2))
    assert where(only(method))[:2] == ("too-many-heads", REFUSED)
    assert findings(method, crews=(*CREWS, Crew("E2", "electrician", 1))) == ()


@pytest.mark.parametrize(
    ("figures", "code", "cell"),
    [
        ({"minutes": -1}, "impossible-figure", "C9"),
        ({"minutes": float("nan")}, "impossible-figure", "C9"),
        ({"minutes": "ten"}, "impossible-figure", "C9"),
        ({"minutes": 10, "heads": -1}, "impossible-figure", "E9"),
        ({"minutes": 10, "minutes_low": 5}, "three-point-incomplete", "I9"),
        ({"minutes": 10, "minutes_low": 12, "minutes_high": 20}, "three-point-order", "H9"),
    ],
)
def test_figures_that_cannot_be(figures, code, cell):
    one = only(with_operations(operation(9, 70, "Clean", figures.pop("minutes"), **figures)))
    assert where(one) == (code, REFUSED, "Operations", cell)


@pytest.mark.parametrize(
    ("setpoint", "code", "cell"),
    [
        (Setpoint("tension", None, "cN", 24, 28, 20), "low-above-high", "C9"),
        (Setpoint("tension", None, "cN", 30, 20, 28), "target-outside-limits", "B9"),
        (Setpoint("tension", None, "cN", 30, None, 28), "target-outside-limits", "B9"),
    ],
)
def test_a_setpoint_outside_its_limits(setpoint, code, cell):
    placed = replace(setpoint, row=row(9, "setting", "target", "low", "high", sheet="Setpoints"))
    assert where(only(replace(METHOD, setpoints=(placed,)))) == (code, REFUSED, "Setpoints", cell)


def test_a_check_with_low_above_high():
    check = Check("Torque", None, "number", 44, 36, row=row(9, "check", "low", "high", sheet="Checks"))
    assert where(only(replace(METHOD, checks=(check,)))) == ("low-above-high", REFUSED, "Checks", "B9")


def test_a_step_that_comes_again():
    one = only(with_operations(operation(10, 50, "Clean", 5)))
    assert where(one) == ("step-repeated", REFUSED, "Operations", "A10")
    assert in_words(one).message == "Step 50 comes again after step 60; it was used in A8."


def test_a_step_on_the_loom_and_on_the_bench():
    one = only(with_operations(operation(10, 60, "Clean", 5)))
    assert where(one) == ("step-in-two-places", REFUSED, "Operations", "G10")


def test_a_step_doubled_for_some_looms():
    operations = (*METHOD.operations[:4], operation(10, 30, "fit right", 25, side="both"), *METHOD.operations[4:])
    found = [one for one in findings(replace(METHOD, operations=operations)) if one.code == "step-doubled"]
    assert [where(one)[1:] for one in found] == [(REFUSED, "Operations", "B10")]
    assert "this row and B5 both hold for looms 3 (H1), 4 (H1)" in in_words(found[0]).message


def test_a_step_missing_for_some_looms():
    looms = [*LOOMS, loom("5", creel="vertical"), loom("6", creel="horizontal"), loom("7", creel="round")]
    rows = [operation(9, 70, "Close", 5, creel="vertical"), operation(10, 70, "Shut", 5, creel="horizontal")]
    one = only(with_operations(*rows), looms=looms)
    assert where(one) == ("step-missing", DOUBT, "Operations", "J9")
    assert "none for round, which loom 7 (H1) have" in in_words(one).message
    mentioned = with_operations(*rows, operation(11, 80, "Note", 1, creel="not(round)"))
    assert findings(mentioned, looms=looms) == ()


def test_side_by_side_needs_more_than_there_is():
    rows = [operation(9, 70, "Lift left", 5, tool="hoist"), operation(10, 70, "Lift right", 5, tool="hoist", heads=2)]
    found = {where(one): in_words(one).message for one in findings(with_operations(*rows))}
    assert set(found) == {
        ("step-needs-too-much", REFUSED, "Operations", "E10"),
        ("step-needs-too-much", REFUSED, "Operations", "F10"),
    }


def test_two_setpoints_for_one_setting():
    more = Setpoint(
        "Angle", "Left", "deg", 300, conditions={"frames": "<= 12"}, row=row(9, "setting", sheet="Setpoints")
    )
    found = findings(replace(METHOD, setpoints=(*METHOD.setpoints, more)))
    assert [where(one) for one in found] == [("setpoint-doubled", REFUSED, "Setpoints", "A9")]


def test_a_choice_with_no_alternative_left():
    one = only(replace(METHOD, alternatives=METHOD.alternatives[1:]))
    assert where(one) == ("choice-without-alternative", REFUSED, "Choices", "B3")
    assert "looms 1 (H1), 3 (H1) (rail = drilled)" in in_words(one).message


def test_choices_that_hang_on_each_other():
    more = (
        Alternative("jig", "small", {"rail work": "drill"}, row(5, "choice", sheet="Choices")),
        Alternative("rail work", "drill", {"jig": "small"}, row(6, "choice", sheet="Choices")),
    )
    found = findings(replace(METHOD, alternatives=(*METHOD.alternatives, *more)))
    assert [where(one) for one in found] == [
        ("choice-circular", REFUSED, "Choices", "A2"),
        ("choice-circular", REFUSED, "Choices", "A5"),
    ]


def test_a_choice_called_like_an_attribute():
    more = Alternative("rail", "new", {}, row(5, "choice", sheet="Choices"))
    codes = [where(one) for one in findings(replace(METHOD, alternatives=(*METHOD.alternatives, more)))]
    assert ("choice-is-attribute", REFUSED, "Choices", "A5") in codes


def test_rows_and_choices_that_nothing_needs_are_notes():
    more = Alternative("colour", "blue", {}, row(5, "choice", sheet="Choices"))
    method = replace(
        with_operations(operation(9, 70, "Clean", 5, frames="> 30")), alternatives=(*METHOD.alternatives, more)
    )
    found = {one.code: one.severity for one in findings(method)}
    assert found == {"choice-unused": NOTE, "row-on-no-loom": NOTE}


def test_without_looms_or_crews_the_rest_is_still_reviewed():
    found = findings(with_operations(operation(9, 70, "Clean", -5, rial="x")), looms=[], crews=())
    assert [(one.code, one.severity) for one in found] == [
        ("impossible-figure", REFUSED), ("unchecked", NOTE), ("unchecked", NOTE),
    ]  # fmt: skip


def test_a_row_that_was_read_nowhere_names_no_cell():
    one = only(with_operations(replace(operation(9, 70, "Clean", -5), row=replace(METHOD.checks[0].row))))
    assert (one.sheet, one.cell) == ("", "")


def test_what_needs_the_warp_out_comes_before_what_needs_it_in():
    late = replace(operation(9, 70, "Drill", 5), warp="out", row=row(9, "step", "operation", "warp"))
    early = replace(operation(8, 65, "Gait", 5), warp="in")
    (one,) = (f for f in findings(with_operations(early, late)) if f.code == "warp-out-after-in")
    assert (
        where(one)[:3] == ("warp-out-after-in", REFUSED, "Operations")
        and "Step 70 Drill needs the warp out" in in_words(one).message
    )
    assert findings(with_operations(replace(early, warp="out"), replace(late, warp="in"))) == ()


def test_a_trade_that_is_never_there_with_the_lead_crew_is_named():
    crews = tuple(replace(c, shift_start=time(22), shift_end=time(6)) if c.trade == "electrician" else c for c in CREWS)
    one = only(crews=crews)
    assert where(one)[:2] == ("trade-never-together", REFUSED) and "electrician" in in_words(one).message
