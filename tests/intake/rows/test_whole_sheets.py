"""Sheets that cannot be meant as they are read: asked about, never merged and never empty in silence."""

from mill_sheets import read, workbook

HEAD = ["Loom", "Machine type", "Reed width (cm)", "Speed (rpm)"]
ROWS = [[f"{n:03d}", "AJ-190", 190, 600 + n] for n in range(1, 6)]


def test_numbers_that_start_again_without_a_word_are_asked_about(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [HEAD, *ROWS, [], *ROWS])
    (doubt,) = read(path).doubts
    assert doubt.code == "looms-twice" and "5 looms" in doubt.message
    got = read(path, Sheet1="read")
    assert [loom["loom"] for loom in got.looms] == [row[0] for row in ROWS] * 2 and not got.doubts


def test_two_looms_twice_are_a_slip_and_the_same_number_in_another_hall_is_none(tmp_path):
    assert not read(workbook(tmp_path / "a.xlsx", [HEAD, *ROWS, *ROWS[:2]])).doubts
    halls = [["Hall 1"], *ROWS, ["Hall 2"], *ROWS]
    assert not read(workbook(tmp_path / "b.xlsx", [HEAD, *halls])).doubts


def test_headings_behind_a_list_on_its_side_are_asked_about_and_an_empty_template_is_not(tmp_path):
    lying = [[*(row[i] for row in ROWS), HEAD[i]] for i in range(len(HEAD))]
    (doubt,) = read(workbook(tmp_path / "a.xlsx", lying)).doubts
    assert (doubt.code, doubt.cell) == ("no-rows-below", "A1:E4")
    assert not read(workbook(tmp_path / "b.xlsx", [["Our looms"], HEAD])).doubts


def test_a_legend_that_no_empty_column_parts_from_the_list_is_none_of_its_columns(tmp_path):
    rows = [["001", "AJ-190", 190, 601, "AJ-190", "air-jet"], ["002", "RP-360", 360, 340, "RP-360", "rapier"],
            ["003", "AJ-190", 190, 603], ["004", "RP-360", 360, 341]]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", [[*HEAD, "Code", "Meaning"], *rows]))
    assert [dict(row.kept) for row in got.rows("looms")] == [{}] * 4
    assert [f.cell for f in got.findings(code="beside-the-table")] == ["E1:F3"]
