"""Machine types that stand once for a group of looms: in a line above it, or in its first row."""

from mill_sheets import read, workbook

HEAD = ["Loom", "Hall", "Reed width (cm)", "Speed (rpm)", "Eff. %"]


def rows(*numbers: int):
    return [[f"{n}", "Hall 1", 190, 600 + n, 88] for n in numbers]


def types(tmp_path, sheet):
    got = read(workbook(tmp_path / "a.xlsx", sheet))
    return [loom.get("machine_type") for loom in got.looms], got


def test_lines_that_name_a_type_fill_it_down_and_are_told(tmp_path):
    sheet = [HEAD, ["AJ-190"], *rows(1, 2), ["RP-360 (2 looms)"], *rows(3, 4), ["Total", 4]]
    found, got = types(tmp_path, sheet)
    assert found == ["AJ-190", "AJ-190", "RP-360", "RP-360"] and not got.doubts and not got.refused
    assert [(f.cell, f.understood) for f in got.findings(code="type-from-line")] == [("A2", "AJ-190"), ("A5", "RP-360")]


def test_a_type_above_the_halls_holds_for_all_of_them_and_one_below_a_hall_only_there(tmp_path):
    bare = [HEAD[0], *HEAD[2:]]
    one, two, three = ([[row[0], *row[2:]]] for row in rows(1, 2, 3))
    found, got = types(tmp_path, [bare, ["AJ-190"], ["Hall 1"], *one, ["Hall 2"], *two, ["RP-360"], ["Hall 1"], *three])
    assert found == ["AJ-190", "AJ-190", "RP-360"]
    assert [loom["hall"] for loom in got.looms] == ["Hall 1", "Hall 2", "Hall 1"]
    _, got = types(tmp_path, [bare, ["Hall 1"], ["AJ-190"], *one, *three, ["Hall 2"], *two])
    assert [f.code for f in got.doubts] == ["section-lines"]


def test_lines_that_may_be_places_are_no_types(tmp_path):
    for lines in (("Z1", "Z2"), ("North side", "South side")):
        _, got = types(tmp_path, [HEAD, [lines[0]], *rows(1, 2), [lines[1]], *rows(3, 4)])
        assert got.doubts and not got.findings(code="type-from-line")


def test_a_type_in_the_first_row_of_its_group_is_filled_down_and_noted(tmp_path):
    kinds = ["AJ-190", None, None, "RP-360", None, None]
    sheet = [[*HEAD, "Type"], *([*row, kind] for row, kind in zip(rows(1, 2, 3, 4, 5, 6), kinds, strict=True))]
    found, got = types(tmp_path, sheet)
    assert found == ["AJ-190"] * 3 + ["RP-360"] * 3
    assert [f.cell for f in got.findings(code="type-from-above")] == ["F3:F4", "F6:F7"]


def test_an_empty_type_among_types_that_are_said_again_is_refused(tmp_path):
    kinds = ["AJ-190", "AJ-190", None, None, "RP-360", "RP-360"]
    sheet = [[*HEAD, "Type"], *([*row, kind] for row, kind in zip(rows(1, 2, 3, 4, 5, 6), kinds, strict=True))]
    _, got = types(tmp_path, sheet)
    assert sorted(f.code for f in got.refused) == ["missing-value", "missing-value"]
