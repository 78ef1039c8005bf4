"""Rows above their headings: what a sorted sheet says is worked out by hand."""

from pathlib import Path

from mill_sheets import read, workbook

HEAD = ["Loom", "Hall", "Machine type", "Reed width (cm)", "Speed (rpm)"]
ROWS = [[f"{10 + i}", "Hall 1", "AJ-190", 190, 600 + i] for i in range(6)]


def looms(path: Path):
    return [(loom["loom"], loom["speed_ppm"]) for loom in read(path).looms]


WANTED = [(f"{10 + i}", 600.0 + i) for i in range(6)]


def test_a_list_whose_headings_were_sorted_into_its_middle_keeps_all_rows_and_says_so(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [["Looms of the mill"], *ROWS[:2], HEAD, *ROWS[2:]])
    assert looms(path) == WANTED
    (note,) = read(path).findings(code="rows-above-headings")
    assert note.cell == "A2:E3"
    refused = read(
        workbook(tmp_path / "b.xlsx", [*ROWS[:2], HEAD, *ROWS[2:5], ["15", "Hall 1", "AJ-190", 190, 6000]])
    ).refused
    assert [finding.cell for finding in refused] == ["E7"]  # 2 rows, the headings, 3 rows, this one


def test_lines_above_the_headings_that_are_no_rows_stay_titles(tmp_path):
    above = [["Hall 2"], ["F01", "F02", "F03", "F04"], ["No.", "", "", "cm", "max 700"], [2026, 11, 3]]
    rows = [[row[0], *row[2:]] for row in ROWS]
    path = workbook(tmp_path / "a.xlsx", [*above, [HEAD[0], *HEAD[2:]], *rows])
    assert looms(path) == WANTED and {loom["hall"] for loom in read(path).looms} == {"Hall 2"}
    assert not read(path).findings(code="rows-above-headings")


def test_an_odd_row_above_the_headings_is_no_title(tmp_path):
    """189.865 cm may be read as a thousandfold, and 6,000 is no speed: both rows are kept, the second refused."""
    odd = [["16", "Hall 1", "AJ-190", "189.865 cm", 606], ["17", "Hall 1", "AJ-190", 190, 6000]]
    got = read(workbook(tmp_path / "a.xlsx", [["Looms"], odd[0], *ROWS[:2], odd[1], HEAD, *ROWS[2:]]))
    assert looms(tmp_path / "a.xlsx")[0] == ("16", 606) and len(got.looms) == 7
    assert [f.cell for f in got.refused] == ["E5"]
