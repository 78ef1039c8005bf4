"""Cards as a workbook to fill in."""

from datetime import date

from card_samples import BOOKING, CONTENT, KEY, MILL, WINDOW
from openpyxl import load_workbook
from python_calamine import CalamineWorkbook

from tracker.cards.content import BookedLoom, make_card
from tracker.export.cards.workbook import write_card_workbook
from tracker.intake.reader import read_files

CARD = make_card("C3-0001-2", 3, MILL, BookedLoom(BOOKING, CONTENT, window=WINDOW), lambda row: row.minutes)
HEADINGS = {
    # as the sheets of records are to be headed
    "Work done": "loom, hall, card, started, ended, crew, stage reached, beam-out, locked, unlocked, first pick, at speed, "
    "operation, minutes (min), heads, torque read (N·m), done by, remark, hand over",
    "Set values": "loom, hall, side, setting, value, at, who, why, article, waived because, waived by, waived at",
    "Check results": "loom, hall, side, check, result, at, who, waived because, waived by, waived at",
    "Parts used": "loom, hall, card, part, used, left over, broken",
    "Stops": "loom, hall, from, to, article, cause, stops, picks, hours (h), efficiency (%)",
    "Waste": "loom, hall, from, to, side, waste width (mm), article",
    "Bobbins": "loom, hall, side, at, grams left (g), tex",
}


def sheets(path):
    book = CalamineWorkbook.from_path(str(path))
    return {name: book.get_sheet_by_name(name).to_python() for name in book.sheet_names}


def test_the_sheets_have_the_headings_of_the_records(tmp_path):
    write_card_workbook(tmp_path / "c.xlsx", [CARD], MILL.terms.zone)
    found = {
        name: {str(h).lower() for h in rows[0]} for name, rows in sheets(tmp_path / "c.xlsx").items() if name != "Cards"
    }
    assert found == {name: {h.lower() for h in text.split(", ")} for name, text in HEADINGS.items()}


def test_what_is_known_stands_there_and_nothing_else(tmp_path):
    """Five operations and the conversion; two sides of one setting and one of the loom, found and set; four checks; three
    parts."""
    write_card_workbook(tmp_path / "c.xlsx", [CARD], MILL.terms.zone)
    found = sheets(tmp_path / "c.xlsx")
    work = [dict(zip(found["Work done"][0], row, strict=True)) for row in found["Work done"][1:]]
    assert len(work) == 6 and {(row["Loom"], row["Hall"], row["Card"]) for row in work} == {(*KEY[::-1], "C3-0001-2")}
    assert (work[0]["Operation"], work[0]["Crew"], work[0]["Started"]) == ("", "Fitters 1", "")
    assert (work[1]["Operation"], work[1]["Heads"], work[1]["Minutes (min)"]) == ("Ring out the cables", 1, "")
    settings = [(row[2], row[3], row[4], row[7], row[8]) for row in found["Set values"][1:]]
    assert settings == [
        ("left", "crossing angle", "", "found", "B-in"), ("left", "crossing angle", "", "set", "B-in"),
        ("right", "crossing angle", "", "found", "B-in"), ("right", "crossing angle", "", "set", "B-in"),
        ("", "motor current", "", "found", "B-in"), ("", "motor current", "", "set", "B-in"),
    ]  # fmt: skip
    assert [row[3] for row in found["Check results"][1:]] == [check.check for check in CARD.checks]
    assert [row[2:] for row in found["Parts used"][1:]] == [
        ["C3-0001-2", part, "", "", ""] for part in ("LOCK", "RAIL-190", "PIN")
    ]
    assert [row[2] for row in found["Bobbins"][1:]] == ["left", "right"]
    assert len(found["Stops"]) == len(found["Waste"]) == 1


def test_what_is_to_be_filled_in_is_framed(tmp_path):
    write_card_workbook(tmp_path / "c.xlsx", [CARD], MILL.terms.zone)
    page = load_workbook(tmp_path / "c.xlsx")["Work done"]
    at = {cell.value: cell.column for cell in page[1]}

    def is_framed(row, heading):
        left = page.cell(row, at[heading]).border.left
        return left is not None and left.style == "medium"

    assert is_framed(2, "Started") and is_framed(2, "At speed") and not is_framed(2, "Minutes (min)")
    assert is_framed(3, "Minutes (min)") and not is_framed(3, "Started") and not is_framed(3, "Loom")


def test_a_load_passes_over_the_list_of_cards(tmp_path):
    """Known by its first cell, though it has looms in it."""
    write_card_workbook(tmp_path / "c.xlsx", [CARD], MILL.terms.zone)
    book = load_workbook(tmp_path / "c.xlsx")
    page = book.create_sheet("Looms")
    for row in (["Loom", "Hall", "Machine type", "Frames", "Speed"], ["A-1", "Hall 1", "AJ-190", 8, 600]):
        page.append(row)
    book.save(tmp_path / "d.xlsx")
    got = read_files([tmp_path / "d.xlsx"], {}, {}, date(2027, 1, 1))
    assert [row.values["loom"] for row in got.rows] == ["A-1"]
    assert not [f for f in got.findings if f.sheet == "Cards"]
