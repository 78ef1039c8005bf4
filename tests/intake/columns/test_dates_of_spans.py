"""Protected until is never dropped: read to its last day, asked, or refused. Days by hand: see test_spans."""

from datetime import date, datetime

import pytest
from mill_sheets import HEADINGS, delimited, inventory, read, typed_rows, workbook

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)


def protected(tmp_path, cells, write=workbook, name="a.xlsx", **answers):
    padded = [*cells, *[None] * (len(ROWS) - len(cells))]
    rows = [[*HEAD, "Protected until"], *([*row, cell] for row, cell in zip(ROWS, padded, strict=True))]
    return read(write(tmp_path / name, rows), **answers)


@pytest.mark.parametrize(
    ("cell", "day"),
    [
        ("KW 12/27", date(2027, 3, 28)),
        ("03/2027", date(2027, 3, 31)),
        (2027, date(2027, 12, 31)),
        (46_388, date(2027, 1, 1)),
    ],
)
def test_a_span_protects_to_its_last_day(tmp_path, cell, day):
    got = protected(tmp_path, [cell, datetime(2027, 5, 4), cell])
    assert [loom["protected_until"] for loom in got.looms[:3]] == [day, date(2027, 5, 4), day]
    assert not got.doubts and got.findings(code="serial-date") + got.findings(code="date-of-span")


def test_serial_numbers_in_a_text_file(tmp_path):
    """46,388 days after 30 December 1899 is 1 January 2027: 127 years of 365 days, 32 leap days, and one."""
    got = protected(tmp_path, ["46388", "46389"], delimited, "a.csv")
    assert [loom["protected_until"] for loom in got.looms[:2]] == [date(2027, 1, 1), date(2027, 1, 2)]


def test_what_cannot_be_read_as_a_day_is_asked_or_refused(tmp_path):
    assert [d.code for d in protected(tmp_path, ["when sold"] * 12).doubts] == ["values-do-not-fit"]
    got = protected(tmp_path, [*[datetime(2027, 5, 4)] * 5, "12/27"])
    assert [(f.code, f.cell) for f in got.refused] == [("not-a-date", "L7")]


def test_a_week_from_when_on_begins_on_monday(tmp_path):
    head = ["Crew", "From", "To", "Reason"]
    got = read(workbook(tmp_path / "a.xlsx", {"Absences": [head, ["A", "KW 12/27", "KW 12/27", "course"]]}))
    (row,) = got.rows("absences")
    assert (row.values["from_on"], row.values["to_on"]) == (date(2027, 3, 22), date(2027, 3, 28))
