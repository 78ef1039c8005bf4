"""A value a tenth of its column, or in inches among cm, is asked once, with its loom and its cell."""

import pytest
from mill_sheets import HEADINGS, inventory, read, typed_rows, workbook

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)
WIDTH, SPEED, EFFICIENCY = 7, 9, 10


def column(tmp_path, at, cells, **answers):
    rows = [[*row[:at], cell, *row[at + 1 :]] for row, cell in zip(ROWS, cells, strict=True)]
    return read(workbook(tmp_path / "a.xlsx", [HEAD, *rows]), **answers)


@pytest.mark.parametrize(
    ("at", "cells", "cell"),
    [(EFFICIENCY, [88, 8.8, *[86] * 10], "K3"), (SPEED, [640, *[610, 330] * 5, 61], "J13"),
     (WIDTH, [190, 75, *[190, 210] * 5], "H3"), (WIDTH, [134, *[340, 360, 220] * 3, 360, 360], "H2"),
     (SPEED, [1100, *[110, 95] * 5, 95], "J2"),
     (SPEED, [33, *[470, 890] * 5, 640], "J2"), (EFFICIENCY, [*[88, 84] * 5, 88, 12], "K13")],
)  # fmt: skip
def test_a_slip_is_asked(tmp_path, at, cells, cell):
    (doubt,) = column(tmp_path, at, cells).doubts
    assert (doubt.code, doubt.cell) == ("odd-value", cell)
    assert ROWS[int(cell[1:]) - 2][0] in doubt.message
    first = column(tmp_path, at, cells, **{cell: "as written"})
    assert not first.doubts
    assert not column(tmp_path, at, cells, remembered=first.result.answers_used).doubts


def test_several_slips_are_one_question_and_one_answer_may_leave_others_open(tmp_path):
    cells = [75, *[190, 210] * 4, 75, 86, 190]
    (doubt,) = column(tmp_path, WIDTH, cells).doubts
    assert doubt.cell == "H2, H11:H12" or doubt.cell == "H2, H11, H12"
    assert not column(tmp_path, WIDTH, cells, **{"Reed width": "as written"}).doubts
    (left,) = column(tmp_path, WIDTH, cells, H2="as written").doubts
    assert "H2" not in left.cell


def test_what_a_mill_has_is_not_asked_about(tmp_path):
    for at, cells in ((SPEED, [120, 130, 150, 190, *[470, 890] * 4]), (WIDTH, [140, *[360] * 11]),
                      (WIDTH, [150, 360] * 6), (WIDTH, [*[190] * 11, 360]),
                      (WIDTH, [*[190] * 11, 540]), (SPEED, [330, *[900] * 11]),
                      (EFFICIENCY, [45, *[92] * 11]), (SPEED, [*[330] * 11, 1100])):  # fmt: skip
        assert not column(tmp_path, at, cells).doubts, cells


def test_fractions_of_an_inch_and_words_behind(tmp_path):
    """75.75 in = 192.405 cm, 75.5 in = 191.77 cm."""
    got = column(tmp_path, WIDTH, ['75 3/4"', '75½"', "190 (new reed)", "190（新筘）", "to check", *[190] * 7])
    assert [loom["reed_width_cm"] for loom in got.looms[:5]] == [
        pytest.approx(192.405),
        pytest.approx(191.77),
        190,
        190,
        None,
    ]
    assert [(f.code, f.cell) for f in got.findings() if f.cell[1:] < "7"] == [
        ("remark-left-out", "H4"),
        ("remark-left-out", "H5"),
        ("read-as-empty", "H6"),
    ]
    assert not got.doubts and not got.refused


@pytest.mark.parametrize("cell", ["2x190", "190/210", "190 ells", "190 (75)", "190-210"])
def test_what_is_no_single_width_is_refused(tmp_path, cell):
    got = column(tmp_path, WIDTH, [cell, *[190] * 11])
    assert [f.cell for f in got.refused] == ["H2"]


@pytest.mark.parametrize("cell", ["06/1998", "1998/06", "Juni 1998", "1998年6月", "06/98", "Jun 98"])
def test_a_month_for_a_year(tmp_path, cell):
    assert [loom["year"] for loom in column(tmp_path, 6, [cell] * 12).looms] == [1998] * 12


@pytest.mark.parametrize("cell", ["1998/99", "1998-99", "13/1998", "05/06", "11/12"])
def test_two_years_are_no_month_of_one(tmp_path, cell):
    got = column(tmp_path, 6, [cell, *[1998] * 11])
    assert [f.cell for f in got.refused] == ["G2"]


def test_a_heading_whose_values_do_not_fit_is_asked(tmp_path):
    words = ["A / night"] * 12
    (doubt,) = column(tmp_path, SPEED, words).doubts
    assert (doubt.code, doubt.cell) == ("values-do-not-fit", "J1")
    kept = column(tmp_path, SPEED, words, J1="own column")
    assert not kept.doubts and kept.rows("looms")[0].kept["Speed (picks/min)"] == "A / night"
    assert [f.cell for f in column(tmp_path, SPEED, words, J1="speed").refused] == ["J2:J13"]


def test_densities_of_articles_that_differ_anyway_are_not_asked_about(tmp_path):
    # 8.2 × 2.54 = 20.9 would stand among the others; but from 16 to 50 they differ by more than inches and cm do
    rows = [[f"A{i}", density, 5] for i, density in enumerate([8.2, 46.3, 16.4, 49.9, 20.5])]
    sheet = [["Article", "Pick density (picks/cm)", "Take-up (%)"], *rows]
    got = read(workbook(tmp_path / "a.xlsx", {"Articles": sheet}))
    assert not got.doubts
    assert [row.values["pick_density_per_cm"] for row in got.result.rows] == [row[1] for row in rows]


@pytest.mark.parametrize("cell", ["n=620", "n = 620", "n: 620", "Drehzahl: 620"])
def test_the_name_of_the_value_before_it_is_left_out_and_told(tmp_path, cell):
    got = column(tmp_path, SPEED, [cell, *[640] * 11])
    assert got.looms[0]["speed_ppm"] == 620 and [f.cell for f in got.findings(code="remark-left-out")] == ["J2"]


@pytest.mark.parametrize("cell", ["x=620", "A: 620", "n=6200"])
def test_the_name_of_another_thing_before_a_value_is_refused(tmp_path, cell):
    assert [f.cell for f in column(tmp_path, SPEED, [cell, *[640] * 11]).refused] == ["J2"]
