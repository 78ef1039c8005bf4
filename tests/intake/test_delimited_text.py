"""Delimited text in every encoding, delimiter and number convention that the eight languages meet."""

from pathlib import Path

import pytest
from mill_sheets import HEADINGS, delimited, inventory, read, typed_rows

from tracker.intake.vocabulary.headings import language_of_heading
from tracker.office.opening.text import best_delimiter

LOOMS = inventory()
UNITS = {7: " (cm)", 9: " (1/min)", 10: " (%)"}


def rows_in(language, comma):
    head = [text + UNITS.get(i, "") for i, text in enumerate(HEADINGS[language])]
    rows = [
        [f"{v:.1f}".replace(".", "," if comma else ".") if isinstance(v, float) else v for v in r]
        for r in typed_rows(LOOMS)
    ]
    halls = {"tr": "Büyük Salon", "zh": "一车间", "fr": "Salle d'été", "de": "Große Halle"}
    rows = [[r[0], halls.get(language, "Hall"), *r[2:]] for r in rows]
    return [head, *rows], [{**loom, "hall": halls.get(language, "Hall")} for loom in LOOMS]


@pytest.mark.parametrize(
    ("language", "encoding", "delimiter", "comma"),
    [
        ("en", "ascii", ",", False), ("en", "utf-8-sig", "\t", False), ("de", "cp1252", ";", True), ("de", "cp850", ";", True),
        ("de", "utf-8", "|", True), ("fr", "cp1252", ";", True), ("fr", "utf-16", "\t", True), ("fr", "mac_roman", ";", True),
        ("it", "cp1252", ";", True), ("es", "utf-8", ";", True), ("pt", "cp1252", "\t", True), ("tr", "cp1254", ";", True),
        ("tr", "utf-8-sig", ";", True), ("tr", "utf-16-le", "\t", True), ("zh", "gb18030", ",", False), ("zh", "utf-8", ",", False),
        ("zh", "utf-16-be", "\t", False),
    ],
)  # fmt: skip
def test_encodings_and_delimiters(tmp_path: Path, language, encoding, delimiter, comma):
    rows, wanted = rows_in(language, comma)
    got = read(delimited(tmp_path / "a.csv", rows, delimiter, encoding))
    assert got.looms == wanted and not got.doubts and not got.refused


def test_traditional_characters_in_their_own_code_page(tmp_path: Path):
    head = ["機台號", "車間", "機型", "出廠年份", "筘寬(cm)", "綜框數"]
    got = read(delimited(tmp_path / "a.csv", [head, ["001", "一車間", "AJ-190", 2012, 190, 8]], ",", "big5"))
    assert got.looms == [
        {"loom": "001", "hall": "一車間", "machine_type": "AJ-190", "year": 2012, "reed_width_cm": 190.0, "frames": 8}
    ]


def test_a_line_that_names_the_delimiter(tmp_path: Path):
    rows, wanted = rows_in("en", False)
    got = read(delimited(tmp_path / "a.csv", rows, "|", before="sep=|\r\n"))
    assert got.looms == wanted and got.result.tables[0].heading_row == 1


def test_protected_texts_and_quotes_and_line_breaks(tmp_path: Path):
    """="007" and '=1+1 keep spreadsheets from reading numbers and formulas; both are the text inside."""
    rows = [["Loom", "Hall", "Machine type", "Frames", "Speed", "Says", "Notes"],
            ['="007"', "Hall 1", "AJ-190", 8, 600, "'=1+1", 'two\nlines; "quoted"'],
            ['="008"', "Hall 1", "AJ-190", 8, 600, "''=2", "plain"]]  # fmt: skip
    got = read(delimited(tmp_path / "a.csv", rows))
    assert [x["loom"] for x in got.looms] == ["007", "008"]
    assert [row.kept["Says"] for row in got.rows("looms")] == ["=1+1", "'=2"]
    assert got.looms[0]["notes"] == 'two\nlines; "quoted"'


def test_numbers_that_programs_write_with_a_point_and_a_nought(tmp_path: Path):
    rows = [
        ["Loom", "Hall", "Machine type", "Frames", "Speed"],
        *([f"{n}.0", "Hall 1", "AJ-190", 8, 600.0] for n in (1001, 1002)),
    ]
    got = read(delimited(tmp_path / "a.csv", rows, ","))
    assert [x["loom"] for x in got.looms] == ["1001", "1002"] and got.findings(code="point-zero")


@pytest.mark.parametrize(
    ("mark", "text"), [(",", "1,050"), (";", "1.050"), (";", "1 050"), (";", "1\u00a0050"), (";", "1'050")]
)
def test_thousands(tmp_path: Path, mark, text):
    rows = [
        ["Loom", "Hall", "Machine type", "Frames", "Speed"],
        *([f"{n}", "Hall 1", "AJ-190", 8, text] for n in (1, 2)),
    ]
    assert [x["speed_ppm"] for x in read(delimited(tmp_path / "a.csv", rows, mark)).looms] == [1050.0, 1050.0]


def test_own_columns_become_numbers_only_where_all_are(tmp_path: Path):
    rows = [["Loom", "Hall", "Machine type", "Frames", "Speed", "Cards", "Version", "Code", "Load", "Mixed"],
            ["1", "H", "AJ", 8, 600, "12", "1.1", "007", "1.234,5", "12"],
            ["2", "H", "AJ", 8, 600, "8", "1.10", "8", "2,5", "none"]]  # fmt: skip
    got = read(delimited(tmp_path / "a.csv", rows))
    assert [row.kept for row in got.rows("looms")] == [
        {"Cards": 12, "Version": "1.1", "Code": "007", "Load": 1234.5, "Mixed": "12"},
        {"Cards": 8, "Version": "1.10", "Code": "8", "Load": 2.5, "Mixed": "none"},
    ]


def test_turned_numbers_in_text(tmp_path: Path):
    rows = [["Loom", "Hall", "Machine type", "Frames", "Speed"],
            *([n, "H", "AJ", 8, 600] for n in ("3/11", "12-Mar", "3/13", "14. Mrz", "2026-03-15 00:00:00"))]  # fmt: skip
    got = read(delimited(tmp_path / "a.csv", rows))
    assert [d.code for d in got.doubts] == ["order-doubt"]
    got = read(delimited(tmp_path / "a.csv", rows), Loom="month first")
    assert [x["loom"] for x in got.looms] == ["3/11", "3/12", "3/13", "3/14", "3/15"]


@pytest.mark.parametrize("mark", [";", "\t", ",", "|"])
def test_delimiter_by_even_lines(mark):
    row = ["1,5", "x", "y"] if mark != "," else "xyz"
    text = mark.join("abc") + "\n" + mark.join(row) + "\n"
    assert best_delimiter(text, language_of_heading) == mark
