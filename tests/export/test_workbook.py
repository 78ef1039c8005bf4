"""Template and export: the shape that loads back, and text that stays text."""

import csv
import re
import zipfile
from datetime import date, datetime, time

import openpyxl
import pytest
from python_calamine import CalamineWorkbook
from refusals import refused

from tracker.domain.tables import TABLES, TERM_HEADINGS, TERMS
from tracker.errors import TrackerError, UsageError
from tracker.export.workbook import write_export, write_template

LOOM = {"loom": "007", "hall": "Hall 1", "machine_type": "AJ-190"}
RISKY = [
    "=1+1",
    "+1",
    "-1",
    "@x",
    "\tx",
    "\rx",
    "=cmd|' /C calc'!A0",
    "#N/A",
    "TRUE",
    "007",
    "3/12",
    "1e5",
    " x ",
    "a\nb",
    "_x000D_",
]


def grid(path, sheet):
    return CalamineWorkbook.from_path(str(path)).get_sheet_by_name(sheet).to_python()


def test_the_template_has_every_sheet_and_heading(tmp_path):
    write_template(tmp_path / "t.xlsx")
    book = openpyxl.load_workbook(tmp_path / "t.xlsx")
    assert book.sheetnames[1:] == [table.sheet for table in TABLES.values()]
    for table in TABLES.values():
        headings = [cell.value for cell in book[table.sheet][1]]
        assert headings[: len(table.columns)] == [column.title for column in table.columns]
        if table is not TERMS:
            assert (len(headings), book[table.sheet].max_row) == (len(table.columns), 1)
    headings = {cell.value: cell for cell in book["Looms"][1]}
    assert "Efficiency (%)" in headings and "Reed width (cm)" in headings
    note = headings["Loom"].comment.text
    assert note.startswith("Needed.") and "For example: 007" in note


def test_the_template_has_every_term_with_its_default_its_unit_what_it_means_and_where_it_acts(tmp_path):
    write_template(tmp_path / "t.xlsx")
    heading, *rows = grid(tmp_path / "t.xlsx", "Terms")
    assert heading == ["Term", "Value", "Default", "Unit", "Meaning", "Where it acts"]
    assert [row[0] for row in rows] == [*TERM_HEADINGS, "pilot of TYPE"]
    assert all((row[1] == "" and all(row[2:])) or row[2] == 0 for row in rows)
    terms = {row[0]: row[2:4] for row in rows}
    # the trade's usual figures, as `Terms` has them
    assert terms["horizon (days)"] == [84, "days"] and terms["allowance (%)"] == [15, "%"]
    assert terms["left-over penalty"] == [5000, "currency"] and terms["start"] == ["none", "day"]
    assert terms["looms stopped at once"] == ["none", "looms"] and terms["lead trade"] == ["fitter", "text"]


def test_the_template_offers_the_closed_lists(tmp_path):
    write_template(tmp_path / "t.xlsx")
    sheet = openpyxl.load_workbook(tmp_path / "t.xlsx")["Warps"]
    lists = {str(rule.sqref): rule.formula1 for rule in sheet.data_validations.dataValidation if rule.type == "list"}
    assert lists == {"I2:I1001": '"repeat,style"'}  # Change is the ninth column


def test_a_loom_number_typed_into_the_template_stays_text(tmp_path):
    write_template(tmp_path / "t.xlsx")
    sheet = openpyxl.load_workbook(tmp_path / "t.xlsx")["Looms"]
    assert sheet.column_dimensions["A"].number_format == "@"


def test_values_in_workbook_units(tmp_path):
    rows = [
        LOOM | {"efficiency": 0.88, "reed_width_cm": 190.0, "year": 2012, "capacity_unsold": True,
                "protected_until": date(2027, 2, 14), "Rail": "undrilled", "Width of creel": 2.5},
        LOOM | {"loom": "3/12", "efficiency": 0.07, "Drop wires": False},
    ]  # fmt: skip
    write_export(tmp_path / "e.xlsx", {"looms": rows})
    heading, first, second = grid(tmp_path / "e.xlsx", "Looms")
    one, two = dict(zip(heading, first, strict=True)), dict(zip(heading, second, strict=True))
    assert heading[-3:] == ["Rail", "Width of creel", "Drop wires"]
    assert one["Loom"] == "007" and two["Loom"] == "3/12"
    assert one["Efficiency (%)"] == 88 and two["Efficiency (%)"] == 7
    assert one["Capacity unsold"] == "yes" and two["Capacity unsold"] == "" and two["Drop wires"] is False
    assert one["Protected until"] == date(2027, 2, 14) and one["Width of creel"] == 2.5


def test_moments_times_and_weekdays(tmp_path):
    write_export(
        tmp_path / "e.xlsx",
        {
            "readings": [{"loom": "1", "read_at": datetime(2027, 3, 28, 5, 40, 59), "picks": 812000.0}],
            "crews": [
                {"crew": "F", "weekdays": frozenset({0, 1, 2}), "shift_start": time(5, 40), "shift_end": time(0)}
            ],
        },
    )
    assert grid(tmp_path / "e.xlsx", "Readings")[1][2] == datetime(2027, 3, 28, 5, 40, 59)
    assert grid(tmp_path / "e.xlsx", "Crews")[1][3:6] == ["Mon-Wed", time(5, 40), time(0)]


@pytest.mark.parametrize("text", RISKY)
def test_text_stays_text_in_a_workbook(tmp_path, text):
    """As loom number, as note and as the heading and value of a column of the mill's own."""
    write_export(tmp_path / "e.xlsx", {"looms": [LOOM | {"loom": text, "notes": text, text: text}]})
    heading, row = grid(tmp_path / "e.xlsx", "Looms")
    assert row[0] == row[15] == row[16] == heading[16] == text
    with zipfile.ZipFile(tmp_path / "e.xlsx") as archive:
        assert not any(re.search(rb"<f[ />]", archive.read(name)) for name in archive.namelist() if "/sheet" in name)


def test_risky_text_is_marked_so_that_editing_keeps_it_text(tmp_path):
    write_export(tmp_path / "e.xlsx", {"looms": [LOOM | {"notes": "=1+1", "row": "4"}]})
    sheet = openpyxl.load_workbook(tmp_path / "e.xlsx")["Looms"]
    notes, row = sheet["P2"], sheet["C2"]
    assert notes.quotePrefix and notes.number_format == "@" and notes.data_type == "s"
    assert not row.quotePrefix


def test_csv_of_one_table(tmp_path):
    write_export(tmp_path / "e.csv", {"looms": [LOOM | {"notes": "=1+1", "saving_per_day": -3.5, "efficiency": 0.287}]})
    text = (tmp_path / "e.csv").read_bytes()
    assert text.startswith(b"\xef\xbb\xbf")  # so that a spreadsheet knows it for UTF-8
    (row,) = csv.DictReader(text.decode("utf-8-sig").splitlines())
    assert row["Notes"] == "'=1+1" and row["Saving per day"] == "-3.5" and row["Efficiency (%)"] == "28.7"
    assert row["Loom"] == "007" and row["Year"] == ""


def test_a_csv_of_two_tables_is_wrong_use(tmp_path):
    with refused(UsageError, "one table"):
        write_export(tmp_path / "e.csv", {"looms": [], "warps": []})
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_cannot_be_written_is_one_line(tmp_path):
    for target, error, word in (
        (tmp_path / "no folder" / "e.xlsx", TrackerError, "there is no folder"),
        (tmp_path / "e.pdf", UsageError, r"must end in \.xlsx"),
    ):
        with refused(error, word):
            write_export(target, {"looms": []})


def test_a_failed_export_leaves_the_old_file(tmp_path):
    write_export(tmp_path / "e.xlsx", {"looms": [LOOM]})
    before = (tmp_path / "e.xlsx").read_bytes()
    with refused(TrackerError, "32,768 characters"):
        write_export(tmp_path / "e.xlsx", {"looms": [LOOM | {"notes": "x" * 32_768}]})
    assert (tmp_path / "e.xlsx").read_bytes() == before
    assert [path.name for path in tmp_path.iterdir()] == ["e.xlsx"]


def test_the_guide_is_no_table_of_headings(tmp_path):
    """A reader that looks for headings must not find them one below the other in the guide."""
    write_template(tmp_path / "t.xlsx")
    titles = {column.title for table in TABLES.values() for column in table.columns}
    first = CalamineWorkbook.from_path(str(tmp_path / "t.xlsx")).get_sheet_by_index(0).to_python()
    assert not titles & {value for row in first for value in row}
