"""A machine type that stands in no column: in the cell of the loom's number, or in the name of the sheet."""

import openpyxl
import pytest
from mill_sheets import read, workbook

HEAD = ["Loom", "Hall", "Reed width (cm)", "Speed (rpm)"]
TYPES = ("AJ-190", "RP-220")


def rows(first=101, joint=" / ", type_first=False, count=8):
    for i in range(first, first + count):
        parts = [str(i), TYPES[i % 2]]
        yield [joint.join(reversed(parts) if type_first else parts), "Hall 1", 190, 600 + i]


@pytest.mark.parametrize("heading", ["Loom", "Loom / type", "Webmaschine (Typ)", "Telaio / Tipo"])
@pytest.mark.parametrize(("joint", "type_first"), [(" / ", False), ("\n", False), (" – ", True)])
def test_number_and_type_in_one_cell_are_read_apart(tmp_path, heading, joint, type_first):
    got = read(workbook(tmp_path / "a.xlsx", [[heading, *HEAD[1:]], *rows(joint=joint, type_first=type_first)]))
    assert [(loom["loom"], loom["machine_type"]) for loom in got.looms] == [
        (str(i), TYPES[i % 2]) for i in range(101, 109)
    ]
    assert not got.doubts and [f.cell for f in got.findings(code="type-beside-number")] == ["A2"]


def test_hall_and_number_in_one_cell_are_no_type(tmp_path):
    sheet = [[f"{100 + i}/H{i % 3 + 1}", "", 190, 600 + i] for i in range(9)]
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *sheet]))
    assert "no-machine-type" in [doubt.code for doubt in got.doubts] and not got.findings(code="type-beside-number")


def typed_sheets(path, names):
    book = openpyxl.Workbook()
    book.remove(book.active)
    for k, name in enumerate(names, 1):
        sheet = book.create_sheet(name)
        for row in [HEAD, *([str(100 * k + i), "Hall 1", 190, 600 + i] for i in range(1, 6))]:
            sheet.append(row)
    book.save(path)
    return path


def test_sheets_called_like_types_are_asked_about_once(tmp_path):
    path = typed_sheets(tmp_path / "a.xlsx", ["AJ-190", "RP-220"])
    (doubt,) = read(path).doubts
    assert doubt.code == "sheet-is-type" and "AJ-190=machine type" in doubt.hint and "RP-220" in doubt.message
    got = read(path, **{"AJ-190": "machine type"})
    assert {loom["machine_type"] for loom in got.looms if loom["loom"] < "200"} == {"AJ-190"}
    assert {loom["machine_type"] for loom in got.looms if loom["loom"] > "200"} == {"RP-220"} and len(got.looms) == 10
    assert not got.doubts and not read(path, remembered=got.result.answers_used).doubts


def test_a_line_of_units_may_have_a_heading_of_its_own(tmp_path):
    """Looms in columns, with a column of units: speed 1 loom of 601, widths in inch: 75 in = 190.5 cm."""
    sheet = [["Loom", "Unit", *range(101, 107)], ["Hall", None, *["Hall 1"] * 6], ["Machine type", None, *["AJ-190"] * 6],
             ["Reed width", "inch", *[75] * 6], ["Speed", "rpm", *[600 + i for i in range(6)]]]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", sheet))
    assert [loom["loom"] for loom in got.looms] == [str(i) for i in range(101, 107)] and not got.doubts
    assert {loom["reed_width_cm"] for loom in got.looms} == {190.5} and got.looms[1]["speed_ppm"] == 601
