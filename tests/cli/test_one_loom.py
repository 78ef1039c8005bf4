"""A mill of one loom is told of in the singular."""

from openpyxl import Workbook


def test_one_loom_is_no_looms(beamslot, tmp_path):
    book = Workbook()
    looms, steps, crews = book.active, book.create_sheet("Operations"), book.create_sheet("Crews")
    looms.title = "Looms"
    for sheet, rows in (
        (looms, [["Loom", "Hall", "Machine type", "Speed (picks/min)"], ["001", "Hall 1", "AJ-190", 640]]),
        (steps, [["Step", "Operation", "Minutes", "Trade", "Heads"], [10, "Fit", 60, "fitter", 2]]),
        (crews, [["Crew", "Trade", "Heads", "Shift start", "Shift end"], ["F1", "fitter", 2, "06:00", "14:00"]]),
    ):
        for row in rows:
            sheet.append(row)
    book.save(tmp_path / "mill.xlsx")
    assert beamslot("load", "mill.xlsx").code == 0
    assert beamslot("status").out.splitlines()[0].endswith(": 1 loom")
    assert "1 loom in 1 variant by method version 1." in beamslot("scope").out.splitlines()
    assert beamslot("scope", "--survey", "survey.xlsx").out.splitlines()[-1].startswith("Wrote survey.xlsx: 0 looms. ")
