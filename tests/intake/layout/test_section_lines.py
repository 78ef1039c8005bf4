"""Lines between the rows that no word explains: what they are asked, and what an answer makes of them."""

import pytest
from mill_sheets import read, workbook

HEAD = ["Loom", "Reed width (cm)", "Speed (rpm)", "Eff. %"]


def rows(*numbers: int):
    return [[f"{n}", 190, 600 + n, 88] for n in numbers]


def typed(sheet):
    """The rows with a machine type in a column of its own."""
    return [[*row, "Type" if i == 0 else "AJ-190"] if len(row) > 1 else row for i, row in enumerate(sheet)]


AGAIN = typed([HEAD, ["North side"], *rows(1, 2), ["South side"], *rows(1, 2)])


def test_numbers_that_start_again_below_unknown_lines_are_never_merged(tmp_path):
    path = workbook(tmp_path / "a.xlsx", AGAIN)
    (doubt,) = read(path).doubts
    assert (doubt.code, doubt.cell) == ("section-lines", "A2, A5") and "North side=hall" in doubt.hint
    got = read(path, answers={"North side": "hall"})
    halls = [(loom["hall"], loom["loom"]) for loom in got.looms]
    assert halls == [("North side", "1"), ("North side", "2"), ("South side", "1"), ("South side", "2")]
    assert not read(path, remembered=got.result.answers_used).doubts


def test_the_answer_may_name_the_cell_of_a_line_and_each_line_may_have_its_own(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [*AGAIN, ["Row 9"], *typed([HEAD, *rows(7)])[1:]])
    got = read(path, answers={"A2": "hall", "A5": "row"})
    assert [(loom["hall"], loom.get("row")) for loom in got.looms][:4] == [("North side", None)] * 2 + [
        ("North side", "South side")
    ] * 2


def test_lines_above_looms_without_a_type_are_asked_about(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [HEAD, ["Wide ones"], *rows(1, 2), ["Narrow ones"], *rows(3, 4)])
    assert [doubt.code for doubt in read(path).doubts] == ["section-lines"]
    got = read(path, answers={"Wide ones": "machine type"})
    assert [loom["machine_type"] for loom in got.looms] == ["Wide ones"] * 2 + ["Narrow ones"] * 2 and not got.doubts


def halled(sheet):
    return [[*row, "Hall" if i == 0 else "H1"] if len(row) > 1 else row for i, row in enumerate(sheet)]


GOING_ON = typed([HEAD, ["North side"], *rows(1, 2), ["South side"], *rows(3, 4)])


def test_lines_above_numbers_that_go_on_are_told_where_the_hall_is_known(tmp_path):
    path = workbook(tmp_path / "a.xlsx", halled(GOING_ON))
    got = read(path)
    assert not got.doubts and [f.cell for f in got.findings(code="row-passed-over")] == ["A2:F2", "A5:F5"]
    assert "North side=section" in got.findings(code="row-passed-over")[0].hint
    got = read(path, answers={"North side": "section"})
    assert [loom["section"] for loom in got.looms] == ["North side"] * 2 + ["South side"] * 2


@pytest.mark.parametrize("sheet", [GOING_ON, typed([HEAD, ["North side"], *rows(1, 2)])], ids=["two", "one"])
def test_lines_that_may_be_the_halls_of_a_list_without_any_are_asked_about(tmp_path, sheet):
    path = workbook(tmp_path / "a.xlsx", sheet)
    (doubt,) = read(path).doubts
    assert doubt.code == "section-lines" and "No column is the hall" in doubt.message
    assert {loom["hall"] for loom in read(path, answers={"North side": "hall"}).looms} <= {"North side", "South side"}
    assert {loom["hall"] for loom in read(path, answers={"North side": "ignore"}).looms} == {""}


@pytest.mark.parametrize("line", ["As of May 2026", "Looms in use: 2", "please look at the speeds again"])
def test_a_remark_above_the_rows_names_no_hall(tmp_path, line):
    got = read(workbook(tmp_path / "a.xlsx", typed([HEAD, [line], *rows(1, 2)])))
    assert not got.doubts and [f.hint for f in got.findings(code="row-passed-over")] == [""]


def test_a_lone_line_that_may_be_a_type_is_asked_about(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [HEAD, ["AJ-190"], *rows(1, 2)])
    assert [doubt.code for doubt in read(path).doubts] == ["section-lines"]
    got = read(path, answers={"AJ-190": "machine type"})
    assert [loom["machine_type"] for loom in got.looms] == ["AJ-190"] * 2 and not got.doubts


def test_looms_below_a_line_that_says_that_they_are_gone(tmp_path):
    path = workbook(tmp_path / "a.xlsx", halled(typed([HEAD, *rows(1, 2), [], ["verkauft"], *rows(3, 4)])))
    (doubt,) = read(path).doubts
    assert (doubt.code, doubt.cell) == ("gone-line", "A5")
    assert [loom["loom"] for loom in read(path, verkauft="ignore").looms] == ["1", "2"]
    assert [loom["loom"] for loom in read(path, verkauft="read").looms] == ["1", "2", "3", "4"]
    (left,) = [one for one in read(path, verkauft="ignore").result.account.sheets[0].aside if one.reason == "left out"]
    assert left.cells == 12  # two rows of loom, width, speed, efficiency, type and hall
