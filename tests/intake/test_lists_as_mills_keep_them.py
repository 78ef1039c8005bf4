"""Habits of real lists, each as small as it can be: nothing that they say is lost or taken for another thing in silence."""

from pathlib import Path

import pytest
from mill_sheets import read, workbook

HEAD = ["Hall", "Loom", "Machine type", "Speed (picks/min)"]


def listed(tmp_path: Path, head: list, *rows: list, **more):
    return read(workbook(tmp_path / "a.xlsx", [head, *rows]), **more)


def column(got, field: str) -> list:
    return [loom[field] for loom in got.looms]


@pytest.mark.parametrize("heading", ["Un.", "Einheit", "Unit"])
def test_a_column_of_units_beside_one_of_figures(tmp_path: Path, heading):
    """75 inch are 190.5 cm."""
    rows = [["1", i, "AJ", 600 + i, 75 if i % 3 == 0 else 190, "pol" if i % 3 == 0 else "cm"] for i in range(1, 7)]
    got = listed(tmp_path, [*HEAD, "Largura do pente", heading], *rows)
    assert column(got, "reed_width_cm") == [190, 190, 190.5, 190, 190, 190.5]
    assert not got.doubts and not got.refused and [f.cell for f in got.findings(code="units-beside")] == ["F1"]


@pytest.mark.parametrize("mark", ['-"-', '- " -', '" "', "”", "„", "--»--", "dto."])
def test_marks_that_repeat_the_cell_above(tmp_path: Path, mark):
    got = listed(tmp_path, HEAD, ["1", 1, "AJ-190", 620], ["1", 2, mark, mark], ["1", 3, "RP", 430])
    assert column(got, "machine_type") == ["AJ-190", "AJ-190", "RP"] and column(got, "speed_ppm") == [620, 620, 430]
    assert [f.cell for f in got.findings(code="ditto")] == ["C3", "D3"]


def test_full_width_points_and_percents(tmp_path: Path):
    got = listed(tmp_path, [*HEAD, "效率（％）"], *(["1", i, "AJ", "６２０", f"８８．{i}％"] for i in range(1, 4)))
    assert column(got, "efficiency") == [0.881, 0.882, 0.883] and column(got, "speed_ppm") == [620] * 3


def test_second_lines_of_looms_are_refused_and_fields_behind_a_gap_are_read(tmp_path: Path):
    head = ["Salon", "Tezgah no", "Makine tipi", None, "Devir", "Randıman %"]
    rows = [
        row for i in range(1, 5) for row in (["A", i, "HJ", "Plan", 650, 92], [None, None, None, "Fiili", 600 + i, 88])
    ]
    got = listed(tmp_path, head, *rows)
    assert [(f.code, f.cell) for f in got.refused] == [("missing-value", f"B{r}") for r in (3, 5, 7, 9)]
    assert column(got, "speed_ppm") == [650] * 4


def test_sums_of_money_in_several_currencies(tmp_path: Path):
    money = ["€ 12,50", "12,50 EUR", "USD 12", "12", "£9"]
    got = listed(tmp_path, [*HEAD, "Saving per day"], *(["1", i, "AJ", 600, one] for i, one in enumerate(money)))
    assert [(f.code, f.cell) for f in got.refused] == [("other-currency", "E4"), ("other-currency", "E6")]


@pytest.mark.parametrize(
    "word", ["SOLD 2024", "verschrottet", "vendus", "rottamato", "dado de baja", "vendido", "hurda", "已报废"]
)
def test_a_word_in_place_of_the_machine_type_that_says_that_the_loom_is_gone(tmp_path: Path, word):
    rows = [["1", 1, "AJ", 600, ""], ["1", 2, word, None, ""], ["1", 3, "AJ", 601, word]]
    got = listed(tmp_path, [*HEAD, "State"], *rows)
    assert [(f.code, f.cell) for f in got.refused] == [("type-says-gone", "C3")]
    assert column(got, "loom") == ["1", "3"] and [f.cell for f in got.findings(code="says-gone")] == ["E4"]


@pytest.mark.parametrize("name", ["Verkauft", "sold looms", "Vendidos 2024", "报废"])
def test_a_sheet_of_looms_that_are_gone_is_asked_about(tmp_path: Path, name):
    rows = [HEAD, ["1", 1, "AJ", 600]]
    path = workbook(tmp_path / "a.xlsx", {"Now": rows, name: [HEAD, ["1", 2, "AJ", 600]]})
    (doubt,) = read(path).doubts
    assert (doubt.code, doubt.sheet) == ("gone-sheet", name)
    assert column(read(path, answers={name: "ignore"}), "loom") == ["1"]
    assert column(read(path, answers={name: "read"}), "loom") == ["1", "2"]


def test_a_speed_that_is_headed_by_its_letter_alone_is_asked_about(tmp_path: Path):
    rows = [["1", i, "AJ", 650, 600 + i] for i in range(1, 5)]
    got = listed(tmp_path, ["Halle", "WM", "Typ", "n soll", "n ist"], *rows)
    assert [(d.code, d.cell) for d in got.doubts] == [("may-be-field", "D1"), ("may-be-field", "E1")]


def test_an_efficiency_headed_per_mille(tmp_path: Path):
    got = listed(tmp_path, [*HEAD, "Rand. ‰"], *(["1", i, "AJ", 600, 800 + i] for i in range(1, 5)))
    assert column(got, "efficiency") == [0.801, 0.802, 0.803, 0.804]


def test_a_line_of_a_second_language_heads_a_column_that_the_first_does_not(tmp_path):
    lines = [
        ["织机号", "车间", "机型", "车速", None],
        ["Loom no.", "Hall", "Machine type", "Speed", "Guide"],
        [None, None, None, "(rpm)", "(mm)"],
    ]
    got = read(workbook(tmp_path / "a.xlsx", [*lines, *([f"A-{i}", "1", "AJ-190", 600 + i, 7] for i in range(1, 5))]))
    assert [loom["speed_ppm"] for loom in got.looms] == [601, 602, 603, 604]
    assert [row.kept for row in got.rows("looms")] == [{"Guide (mm)": 7}] * 4 and not got.findings(
        code="beside-the-table"
    )
