"""A sheet that counts looms by type is no loom list: its counts are never read as loom numbers without a question."""

from pathlib import Path

import pytest
from mill_sheets import read, workbook

from tracker.errors import InputRefused

COUNTS = [["AJ-190", 12, 190, 620], ["RP-360", 8, 360, 340], ["AJ-220", 30, 220, 600]]
PLURALS = ["Looms", "Webmaschinen", "Maschinen", "Métiers", "Telai", "Telares", "Teares", "Máquinas", "Tezgahlar"]


def listed(tmp_path: Path, heading: str, rows: list, **answers: str):
    head = ["Machine type", heading, "Reed width (cm)", "Speed (rpm)"]
    return read(workbook(tmp_path / "a.xlsx", [head, *rows]), **answers)


@pytest.mark.parametrize("heading", [*PLURALS, "Loom", "N. telai", "Nº telares"])
def test_counts_of_looms_are_asked_about(tmp_path, heading):
    (doubt,) = listed(tmp_path, heading, COUNTS).doubts
    assert (doubt.code, doubt.cell) == ("looms-or-count", "B1")
    assert [loom["loom"] for loom in listed(tmp_path, heading, COUNTS, answers={heading: "loom"}).looms] == [
        "12",
        "8",
        "30",
    ]
    assert not listed(tmp_path, heading, COUNTS, Sheet1="ignore").looms


@pytest.mark.parametrize("heading", PLURALS)
def test_numbers_of_looms_below_a_plural_are_read_and_told(tmp_path, heading):
    got = listed(tmp_path, heading, [["AJ-190", i, 190, 600 + i] for i in (101, 102, 103, 104)])
    assert [loom["loom"] for loom in got.looms] == ["101", "102", "103", "104"] and not got.doubts
    assert [f.cell for f in got.findings(code="heading-understood")] == ["B1"]


@pytest.mark.parametrize(
    "heading", ["Anzahl WM", "Number of looms", "Nb métiers", "Qtd teares", "Tezgah sayısı", "台数", "Cant. telares"]
)
def test_a_heading_that_counts_names_no_loom(tmp_path, heading):
    with pytest.raises(InputRefused):
        listed(tmp_path, heading, COUNTS)
