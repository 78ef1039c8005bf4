"""What cannot be is refused row by row, with cell, value and limit; files that hold no table are refused whole."""

from datetime import date
from pathlib import Path

import pytest
from mill_sheets import HEADINGS, inventory, read, typed_rows, workbook

from tracker.errors import InputRefused
from tracker.words import ENGLISH

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)


@pytest.mark.parametrize(
    ("column", "value", "words"),
    [
        (9, 6000, "Speed 6000 (6,000 picks/min) is above the highest possible, 2,500 picks/min."),
        (9, 0, "Speed 0 (0 picks/min) is below the lowest possible, 20 picks/min."),
        (10, "870 %", "Efficiency 870 % is above the highest possible, 100 %."),
        (10, 104, "Efficiency 104 (104 %) is above the highest possible, 100 %."),
        (8, -3, "Frames -3 is below the lowest possible, 1."),
        (8, 8.5, "Frames 8.5 is no whole number."),
        (8, "8+2", "Frames '8+2' cannot be read as a number."),
        (8, "8 to 12", "Frames '8 to 12' cannot be read as a number."),
        (6, 2091, "Year 2091 is still to come; the latest possible is 2026."),
        (6, "2027", "Year 2027 is still to come; the latest possible is 2026."),
        (6, "old", "Year 'old' cannot be read as a year."),
        (7, 1900, "Reed width 1900 (1,900 cm) is above the highest possible, 1,200 cm."),
        (7, "75 ell", "Reed width '75 ell': 'ell' is no unit of it."),
        (9, "620/640", "Speed '620/640' cannot be read as a number."),
        (0, None, "A6:K6 has no loom number."),
        (0, "-", "A6:K6 has no loom number."),
        (4, "?", "A6:K6 has no machine type."),
        (4, "unbekannt", "A6:K6 has no machine type."),
        (1, None, "A6:K6 has no hall."),
        (9, "=500+20", "Speed: the formula in this cell has no stored value."),
        (0, "=1+1", "Loom: the formula in this cell has no stored value."),
    ],
)  # fmt: skip
def test_the_row_is_refused_and_the_others_load(tmp_path: Path, column, value, words):
    rows = [list(row) for row in ROWS]
    rows[4][column] = value
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *rows]))
    (finding,) = got.refused
    assert finding.message.replace("Year ", "Year ").replace("Year built", "Year built") == words.replace(
        "Year built", "Year"
    )
    assert finding.cell == f"{'ABCDEFGHIJK'[column]}6"
    assert got.looms == [loom for i, loom in enumerate(LOOMS) if i != 4]
    assert got.result.refused == {0: 1} and finding.hint


def test_a_whole_column_of_formulas_is_one_finding(tmp_path: Path):
    rows = [[f"=A{i}", *row[1:]] for i, row in enumerate(ROWS)]
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *rows]))
    assert [(f.code, f.cell) for f in got.refused] == [("formula-without-value", "A2:A13")] and got.looms == []


def test_a_number_with_nothing_behind_it_is_no_note(tmp_path: Path):
    """A lone loom number among loom numbers is a loom without a type; a lone sentence is a note."""
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *ROWS, ["013"], ["Rail: see drawing 4"]]))
    assert [f.cell for f in got.refused] == ["E14"]
    assert [f.cell for f in got.findings(code="row-passed-over")] == ["A15:K15"]


def test_a_list_without_machine_types_is_asked_about(tmp_path: Path):
    rows = [[*row[:4], *row[5:]] for row in ROWS]
    (doubt,) = read(workbook(tmp_path / "a.xlsx", [[*HEAD[:4], *HEAD[5:]], *rows])).doubts
    assert doubt.code == "no-machine-type"


def test_a_file_without_a_table_we_know(tmp_path: Path):
    with pytest.raises(InputRefused) as refused:
        read(workbook(tmp_path / "a.xlsx", {"Phones": [["Name", "Phone"], ["x", "123"]]}))
    assert ENGLISH.line(refused.value).startswith(
        "a.xlsx: no heading row of a table known here was found (sheets: Phones)."
    )
    assert [f.code for f in refused.value.findings] == ["no-table"]


def test_own_tables_name_the_limit(tmp_path: Path):
    sheets = {
        "Articles": [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A1", 0, 6], ["A2", 24, 75]],
        "Changes": [
            ["Kind", "Hours (h)", "Machine type"],
            ["knotting", 2, None],
            ["other", 3, None],
            ["style", "90 min", None],
        ],
    }
    got = read(workbook(tmp_path / "a.xlsx", sheets))
    assert [(f.sheet, f.cell, f.message) for f in got.refused] == [
        ("Articles", "B2", "Pick density 0 (0 picks/cm) is below the lowest possible, 0.5 picks/cm."),
        ("Articles", "C3", "Take-up 75 (75 %) is above the highest possible, 60 %."),
        ("Changes", "A3", "Kind 'other' is none of: repeat, style."),
    ]
    assert [row.values for row in got.rows("changes")] == [
        {"kind": "repeat", "hours_h": 2.0, "machine_type": None},
        {"kind": "style", "hours_h": 1.5, "machine_type": None},
    ]


def test_terms_have_types_of_their_own(tmp_path: Path):
    rows = [["Term", "Value"], ["Horizon (days)", "84"], ["allowance", 15], ["Learning rate (%)", 0.9], ["Start", "2027-01-04"],
            ["soak", "soon"], ["colour", "red"], ["Pilot of AJ-190", 7], ["target finish", None]]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", {"Terms": rows}))
    assert [(row.values["term"], row.values["value"]) for row in got.rows("terms")] == [
        ("horizon (days)", 84), ("allowance (%)", 0.15), ("learning rate (%)", 0.9),
        ("start", date(2027, 1, 4)), ("pilot of AJ-190", "7")]  # fmt: skip
    assert [(f.code, f.cell) for f in got.refused] == [("impossible-value", "B6"), ("unknown-term", "A7")]


def test_sheets_that_no_mill_keeps_stay_bounded(tmp_path: Path):
    """A hundred rows of heading words, and a list with 300 columns of the mill's own."""
    words = ["left", "Hall", "Type", "Row", "Place", "loom"]
    rows = [[words[(i * j + i) % 6] for j in range(12)] for i in range(100)]
    got = read(workbook(tmp_path / "a.xlsx", {"Words": rows, "Looms": [HEAD, *ROWS]}))
    assert len([source for source in got.result.tables if source.sheet == "Looms"]) == 1
    wide = [[*HEAD, *(f"Own {i}" for i in range(300))], *([*row, *range(300)] for row in ROWS)]
    got = read(workbook(tmp_path / "b.xlsx", wide))
    assert got.looms == LOOMS and len(got.rows("looms")[0].kept) == 300
