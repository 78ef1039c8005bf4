"""What becomes of the method sheets of a load."""

from dataclasses import replace

import pytest

from tracker.domain.method import Method
from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part
from tracker.domain.rows import SourceColumn, SourceTable, TypedRow
from tracker.services.loading.method import load_method, method_of_rows

SOURCES = (
    SourceTable("method.xlsx", "Operations", "operations", 1, (
        SourceColumn("Step", "A1", "step"), SourceColumn("Operation", "B1", "operation"),
        SourceColumn("Minutes", "C1", "minutes"), SourceColumn("Trade", "D1", "trade"), SourceColumn("Heads", "E1", "heads"),
        SourceColumn("Frames", "F1", ""), SourceColumn("Internal", "G1", "", kept=False),
    )),
    SourceTable("method.xlsx", "Kit", "kit_lines", 1, (SourceColumn("Part", "A1", "part"), SourceColumn("No.", "B1", "quantity"))),
)  # fmt: skip
LOOM = Loom("H1", "1", "AJ", frames=8)
MILL = Mill({LOOM.key: LOOM}, parts={"RAIL": Part("RAIL", 1)}, crews=(Crew("F1", "fitter", 2),))


def operation(number, step, frames=None, minutes=30.0, heads=1):
    values = {"step": step, "operation": "Fit", "minutes": minutes, "trade": "fitter", "heads": heads, "tool": None}
    return TypedRow("operations", values, {"Frames": frames}, 0, number)


def kit(part="RAIL"):
    return TypedRow("kit_lines", {"part": part, "quantity": 2.0, "comes_back": None}, {}, 1, 2)


def test_rows_become_a_method_that_knows_its_cells():
    method = method_of_rows({"operations": [operation(2, 10, "<= 12"), operation(3, 20, 8.0)]}, SOURCES, Method())
    first, second = method.operations
    assert (method.version, first.place, first.tool) == (1, "on loom", None)
    assert first.row.columns["Frames"] == "F" and "Internal" not in first.row.columns
    assert (first.conditions, second.conditions) == ({"Frames": "<= 12"}, {"Frames": "8"})


def test_a_table_that_is_not_brought_keeps_its_rows():
    old = method_of_rows({"operations": [operation(2, 10)], "kit_lines": [kit()]}, SOURCES, Method())
    new = method_of_rows({"operations": [operation(2, 20)]}, SOURCES, old)
    assert (new.version, new.kit_lines) == (2, old.kit_lines)


def test_a_first_method_is_accepted_with_what_it_changes():
    decision = load_method(MILL, {"operations": [operation(2, 10)], "kit_lines": [kit()]}, SOURCES)
    assert decision.accepted and decision.changed
    assert decision.difference is not None
    assert [change.looms for change in decision.difference.looms] == [(LoomKey("H1", "1"),)]


def test_the_same_rows_are_no_new_version():
    rows = {"operations": [operation(2, 10, "<= 12")]}
    in_force = load_method(MILL, rows, SOURCES).method
    again = load_method(replace(MILL, method=in_force), {"operations": [operation(9, 10, " <= 12 ")]}, SOURCES)
    assert (again.changed, again.accepted, again.method) == (False, True, in_force)


@pytest.mark.parametrize(
    ("rows", "sheet", "cell"),
    [
        ({"operations": [operation(2, 10), operation(3, 20, "<= 12 cm")]}, "Operations", "F3"),
        ({"operations": [operation(2, 10, heads=3)]}, "Operations", "E2"),
        ({"operations": [operation(2, 10)], "kit_lines": [kit("RIAL")]}, "Kit", "A2"),
        ({"operations": []}, "Operations", ""),
    ],
)
def test_a_method_with_a_fault_is_refused_by_file_sheet_and_cell(rows, sheet, cell):
    decision = load_method(MILL, rows, SOURCES)
    assert not decision.accepted and decision.difference is None
    assert (decision.findings[0].file, decision.findings[0].sheet, decision.findings[0].cell) == (
        "method.xlsx",
        sheet,
        cell,
    )


def test_a_doubt_is_settled_by_its_answer():
    rows = {"operations": [operation(2, 10), operation(3, 20, "9")]}
    assert not load_method(MILL, rows, SOURCES).accepted
    settled = load_method(MILL, rows, SOURCES, {"frames": "as written"})
    assert settled.accepted and settled.answers_used == {"Frames": "as written"}
