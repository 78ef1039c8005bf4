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
