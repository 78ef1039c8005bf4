"""What a changed method changes, in rows and for which looms."""

from dataclasses import replace

import pytest
from said import said
from small_mill import METHOD, loom, mill, operation, with_operations

from tracker.domain.method import KitLine, Method, Row
from tracker.scope.difference import method_difference, same_rows

MILL = mill(loom("1"), loom("2", side="right"), loom("3", side="both", frames=16), loom("4", side=None))


def difference(new, old=METHOD):
    return method_difference(old, new, MILL)


def changes(new, old=METHOD):
    return [
        ([key.loom for key in change.looms], said(change.says).partition(": ")[2])
        for change in difference(new, old).looms
    ]


def test_the_same_rows_elsewhere_in_the_sheet_are_the_same_method():
    moved = replace(METHOD, version=2, operations=tuple(replace(o, row=Row("Ops", 99)) for o in METHOD.operations))
    spelt = replace(METHOD.kit_lines[0], conditions={"Side": " left, right", "rail": "-"})
    moved = replace(moved, kit_lines=(spelt, *METHOD.kit_lines[1:]))
    assert same_rows(METHOD, moved)
    assert not difference(moved)


def test_a_new_operation_and_whom_it_concerns():
    new = with_operations(operation(9, 70, "Clean", 12, side="left, both"))
    assert not same_rows(METHOD, new)
    assert [said(row.says) for row in difference(new).rows] == ["step 70 Clean: added"]
    # 12 min × 1.15 = 13.8 min = 0.23 h
    assert changes(new) == [(["1", "3"], "+ step 70 Clean, +0.23 labour hours each")]


def test_a_changed_row_names_old_and_new():
    longer = replace(METHOD.operations[2], minutes=42, conditions={"side": "left"})
    new = replace(METHOD, operations=(*METHOD.operations[:2], longer, *METHOD.operations[3:]))
    assert [said(row.says) for row in difference(new).rows] == [
        "step 30 Fit left: minutes 30 → 42, side left, both → left"
    ]
    # loom 1: 12 more; loom 3 (both): the 30 min row goes; × 1.15 / 60
    assert changes(new) == [
        (["1"], "+0.23 labour hours each"),
        (["3"], "− step 30 Fit left, -0.57 labour hours each"),
    ]  # fmt: skip


def test_lines_for_a_person():
    told = difference(METHOD, old=Method()).messages(most=2)
    assert [said(each) for each in told] == [
        "step 10 Make ready: added", "step 20 Beam out: added", "… and 14 more rows of the method",
        "3 looms (1, 2, 3): can be planned", "loom 4 (H1): to survey: side unknown",
    ]  # fmt: skip


def test_parts_that_change():
    new = replace(METHOD, kit_lines=(*METHOD.kit_lines[:1], KitLine("DEVICE", 3, conditions={"side": "both"})))
    assert {said(row.says) for row in difference(new).rows} == {"DEVICE: quantity 2 → 3", "RAIL: removed"}
    assert changes(new) == [(["3"], "DEVICE 2 → 3")]


def test_settings_alone():
    new = replace(METHOD, setpoints=(replace(METHOD.setpoints[0], target=312),))
    assert changes(new) == [(["1", "3"], "choices, settings or checks change")]


def test_looms_that_come_to_be_surveyed_or_planned():
    new = with_operations(operation(9, 70, "Clean", 12, oil="yes"))
    assert changes(new) == [
        (["1", "2", "3"], "to survey: oil unknown"),
        (["4"], "to survey: side unknown, oil unknown"),
    ]
    assert changes(METHOD, old=new)[0] == (["1", "2", "3"], "can be planned")


def test_the_first_method_changes_everything():
    found = difference(METHOD, old=Method())
    assert len(found.rows) == 16
    assert changes(METHOD, old=Method())[0] == (["1", "2", "3"], "can be planned")


@pytest.mark.parametrize("removed", [0, 2, 7])
def test_a_row_that_goes(removed):
    new = replace(METHOD, operations=METHOD.operations[:removed] + METHOD.operations[removed + 1 :])
    (row,) = difference(new).rows
    assert row.what == "removed" and row.row == METHOD.operations[removed].row
