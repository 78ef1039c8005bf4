"""The sheets of what was done: recognised, read, and compared as history is."""

from mill_sheets import TODAY, workbook

from tracker.intake.reader import read_files
from tracker.intake.rows.compare import compare

LOOMS = {("007", "Hall 1"): {"loom": "007", "hall": "Hall 1", "machine_type": "AJ"}}
HEAD = ["Loom", "Side", "Setting", "Value", "At", "Why"]
AT = "2027-01-11 13:20"


def read(tmp_path, sheets, current=None):
    result = read_files([workbook(tmp_path / "a.xlsx", sheets)], {}, {}, TODAY)
    return result, compare(result, {"looms": LOOMS, **(current or {})})


def test_a_line_that_nobody_filled_in_is_no_row_and_is_accounted_for(tmp_path):
    """Of the three lines the second has neither value nor waiver; the third has no value but says why."""
    rows = [[*HEAD, "Waived because"], ["007", "left", "angle", 310, AT, "set", None],
            ["007", "right", "angle", None, None, "set", None],
            ["007", None, "current", None, AT, "set", "meter away"]]  # fmt: skip
    result, found = read(tmp_path, {"Set values": rows})
    assert [(row.values["setting"], row.values["value"]) for row in result.rows] == [("angle", 310), ("current", None)]
    aside = [(one.reason, one.cells) for one in result.account.sheets[0].aside]
    assert aside == [("unfilled", 4)] and result.findings == () and found.findings == ()


def test_a_value_without_its_moment_is_refused_in_its_cell(tmp_path):
    result, _ = read(tmp_path, {"Set values": [HEAD, ["007", "left", "angle", 310, None, "set"]]})
    assert [(f.code, f.cell) for f in result.findings] == [("missing-value", "E2")]


def test_an_operation_needs_neither_start_nor_stage(tmp_path):
    head = ["Loom", "Card", "Operation", "Started", "Stage reached", "Minutes"]
    rows = [head, ["007", "C3-0001-2", "lift the rail", None, None, 45], ["007", "C3-0001-2", None, None, None, 45]]
    result, _ = read(tmp_path, {"Work done": rows})
    assert [row.values["operation"] for row in result.rows] == ["lift the rail"]
    assert {(f.code, f.cell) for f in result.findings} == {("missing-value", "D3"), ("missing-value", "E3")}


def test_results_are_yes_no_or_a_number_in_any_language(tmp_path):
    """`3 mm` keeps its unit: which one is meant the method knows."""
    answers = ["ja", "✓", "non", "12,5", 3, "evet"]
    rows = [["Loom", "Check", "Result", "At"], *(["007", f"c{i}", a, AT] for i, a in enumerate(answers))]
    result, _ = read(tmp_path, {"Check results": rows})
    assert [row.values["result"] for row in result.rows] == [True, True, False, 12.5, 3, True]
    rows = [["Loom", "Setting", "Value", "At"], ["007", "offset", "3 mm", AT], ["007", "angle", "310°", AT]]
    result, _ = read(tmp_path, {"Set values": rows})
    assert [row.values["value"] for row in result.rows] == ["3 mm", 310.0]


def test_the_same_again_changes_nothing_what_is_new_completes_and_what_differs_is_refused(tmp_path):
    rows = {"Set values": [[*HEAD, "Who"], ["007", "left", "angle", 310, AT, "set", "Berg"]]}
    _, first = read(tmp_path, rows)
    ((key, stored),) = [(change.key, change.new) for change in first.changes]
    stored = {"hall": "Hall 1", "article": None, "waived_because": None, **stored}
    _, again = read(tmp_path, rows, {"set_values": {key: stored}})
    assert again.changes == [] and again.counts[0].unchanged == 1
    _, completed = read(tmp_path, rows, {"set_values": {key: stored | {"who": None}}})
    assert [(c.field, c.old, c.new) for c in completed.changes] == [("who", None, "Berg")]
    _, other = read(tmp_path, rows, {"set_values": {key: stored | {"value": 312}}})
    assert other.changes == [] and other.counts[0].refused == 1
    assert [(f.code, f.cell, f.params["stored"]) for f in other.findings] == [("record-differs", "D2", "312")]


def test_widths_grams_and_yarns_in_other_units(tmp_path):
    """6.2 cm are 62 mm, 0.64 kg are 640 g."""
    rows = [["Loom", "From", "To", "Waste width (cm)"], ["007", "2027-01-04", "2027-01-11", 6.2]]
    result, _ = read(tmp_path, {"Waste": rows})
    assert [row.values["waste_width_mm"] for row in result.rows] == [62]
    rows = [["Loom", "Side", "At", "Grams left (kg)"], ["007", "links", AT, 0.64]]
    result, _ = read(tmp_path, {"Bobbins": rows})
    assert [(row.values["side"], row.values["grams_left"]) for row in result.rows] == [("left", 640)]
