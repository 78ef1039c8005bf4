"""The marked copy is the user's own workbook: nothing changes but the marks, and every programme opens it."""

import re
import subprocess
import zipfile
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from machine import needs
from openpyxl.chart import BarChart, Reference
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import Border, Font, PatternFill, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from python_calamine import CalamineWorkbook
from refusals import refused

from tracker.domain.findings import Severity
from tracker.domain.own_sheets import FINDINGS_TITLE, OWN_TITLES
from tracker.errors import TrackerError, UsageError
from tracker.export.marked import cells_of, write_marked
from tracker.words import ENGLISH
from tracker.words.findings import FindingInWords

REFUSED, DOUBT, NOTE = Severity.REFUSED, Severity.DOUBT, Severity.NOTE
RED, YELLOW, BLUE = "F3B8A8", "F8E08E", "CFE2EE"
LOOMS = "Looms & Säle"


def finding(severity, cell, message="speed 6,000 picks/min is above 2,500.", sheet=LOOMS, **more):
    said = {"file": "", "heading": "", "raw": "", "understood": "", "hint": "Correct it.", **more}
    return FindingInWords("impossible-value", severity, message=message, sheet=sheet, cell=cell, **said)


@pytest.fixture
def rich(tmp_path) -> Path:
    """A workbook with everything that a rewriting library tends to lose, and formulas with their cached values."""
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = LOOMS
    sheet.append(["Loom", "Hall", "Speed", "Efficiency", "Double"])
    for i in range(2, 12):
        sheet.append([f"{i:03d}", "Hall 1", 500 + i, 0.8 + i / 100, f"=C{i}*2"])
        sheet.cell(i, 4).number_format = "0.0%"
        sheet.cell(i, 3).font = Font(italic=True, color="FF0000")
    sheet["C3"].border = Border(left=Side(style="thick"))
    sheet["A5"].comment = Comment("measured by the planner", "Planner")
    chart = BarChart()
    chart.add_data(Reference(sheet, min_col=3, min_row=1, max_row=11), titles_from_data=True)
    sheet.add_chart(chart, "G2")
    sheet.conditional_formatting.add(
        "C2:C11", CellIsRule("greaterThan", ["505"], fill=PatternFill("solid", bgColor="FFFF00"))
    )
    rule = DataValidation("list", formula1='"Hall 1,Hall 2"')
    rule.add("B2:B50")
    sheet.add_data_validation(rule)
    sheet.merge_cells("A14:B15")
    sheet["A14"] = "merged"
    sheet.auto_filter.ref, sheet.freeze_panes = "A1:E11", "A2"
    other = book.create_sheet("Other")
    other["B2"] = f"='{LOOMS}'!C2"
    other.defined_names["here"] = DefinedName("here", attr_text="Other!$B$2")
    book.defined_names["speeds"] = DefinedName("speeds", attr_text=f"'{LOOMS}'!$C$2:$C$11")
    book.create_sheet("Hidden").sheet_state = "hidden"
    book.active = 1
    book.save(tmp_path / "rich.xlsx")
    return with_cached_values(tmp_path / "rich.xlsx")


def with_cached_values(path: Path) -> Path:
    """The library writes formulas without values; a spreadsheet programme writes both: E2 = 2 × 502 and so on."""
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    for row in range(2, 12):
        bare, cached = f"<f>C{row}*2</f><v />".encode(), f"<f>C{row}*2</f><v>{2 * (500 + row)}</v>".encode()
        assert bare in parts["xl/worksheets/sheet1.xml"]
        parts["xl/worksheets/sheet1.xml"] = parts["xl/worksheets/sheet1.xml"].replace(bare, cached)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in parts.items():
            archive.writestr(name, data)
    return path


def marked(source: Path, *findings: FindingInWords) -> Path:
    target = source.with_name("marked.xlsx")
    write_marked(source, findings, target)
    return target


def parts_of(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        assert archive.testzip() is None
        return {name: archive.read(name) for name in archive.namelist()}


def colour(cell) -> str | None:
    return cell.fill.fgColor.rgb[-6:] if cell.fill.fill_type else None


# ---------------------------------------------------------------------- what changes


def test_cells_are_coloured_and_commented(rich):
    path = marked(
        rich,
        finding(REFUSED, "C3", hint="Correct the cell.", understood="6000 picks/min"),
        finding(DOUBT, "D2", "0.82: 82 %?", hint=""),
        finding(NOTE, "E4", "<read> & kept"),
    )
    sheet = openpyxl.load_workbook(path)[LOOMS]
    assert sheet["C3"].comment.text == (
        "REFUSED: speed 6,000 picks/min is above 2,500.\nRead as: 6000 picks/min\nWhat to do: Correct the cell."
    )
    assert sheet["D2"].comment.text == "DOUBT: 0.82: 82 %?"
    assert sheet["E4"].comment.text.startswith("NOTE: <read> & kept")
    assert (colour(sheet["C3"]), colour(sheet["D2"]), colour(sheet["E4"])) == (RED, YELLOW, BLUE)
    assert colour(sheet["C4"]) is None


def test_a_marked_cell_keeps_the_rest_of_its_look(rich):
    sheet = openpyxl.load_workbook(marked(rich, finding(REFUSED, "C3"), finding(DOUBT, "D3")))[LOOMS]
    assert (
        sheet["C3"].font.italic
        and sheet["C3"].font.color.rgb == "00FF0000"
        and sheet["C3"].border.left.style == "thick"
    )
    assert sheet["D3"].number_format == "0.0%"


def test_several_findings_on_one_cell_share_a_comment_and_the_worst_colour(rich):
    sheet = openpyxl.load_workbook(marked(rich, finding(NOTE, "C3", "first."), finding(REFUSED, "C3", "second.")))[
        LOOMS
    ]
    assert colour(sheet["C3"]) == RED
    assert (
        sheet["C3"].comment.text == "NOTE: first.\nWhat to do: Correct it.\n\nREFUSED: second.\nWhat to do: Correct it."
    )


def test_a_comment_that_was_there_stays(rich):
    comment = openpyxl.load_workbook(marked(rich, finding(NOTE, "A5", "n."), finding(NOTE, "A6", "m.")))[LOOMS][
        "A5"
    ].comment
    assert (
        comment.text == "measured by the planner\nbeamslot: NOTE: n.\nWhat to do: Correct it."
        and comment.author == "Planner"
    )


def test_a_range_is_coloured_and_commented_once(rich):
    sheet = openpyxl.load_workbook(marked(rich, finding(DOUBT, "D2:D11")))[LOOMS]
    assert {colour(sheet.cell(row, 4)) for row in range(2, 12)} == {YELLOW} and colour(sheet["D1"]) is None
    assert [row for row in range(1, 12) if sheet.cell(row, 4).comment] == [2]


def test_cells_and_rows_that_the_file_does_not_have(rich):
    """F3 lies in a row that ends at E, H30 in a row of its own, C20 and A40 around it."""
    path = marked(rich, *(finding(REFUSED, cell, "is missing.") for cell in ("F3", "H30", "C20", "A40", "B30")))
    sheet = openpyxl.load_workbook(path)[LOOMS]
    assert all(colour(sheet[cell]) == RED and sheet[cell].comment for cell in ("F3", "H30", "C20", "A40", "B30"))
    rows = [int(n) for n in re.findall(rb'<row r="(\d+)"', parts_of(path)["xl/worksheets/sheet1.xml"])]
    assert rows == sorted(rows)


def test_a_cell_inside_a_merged_area_is_marked_where_it_shows(rich):
    sheet = openpyxl.load_workbook(marked(rich, finding(DOUBT, "B15")))[LOOMS]
    assert colour(sheet["A14"]) == YELLOW and sheet["A14"].comment.text.startswith("DOUBT")


def test_the_first_sheet_lists_the_findings(rich):
    """Refused first; the cell is a link; what has no cell is listed all the same."""
    path = marked(
        rich,
        finding(NOTE, "", "a hidden sheet.", sheet="Hidden", hint=""),
        finding(REFUSED, "C3", heading="Speed", raw="=6000", understood="6000"),
    )
    book = openpyxl.load_workbook(path)
    assert book.sheetnames == ["Findings", LOOMS, "Other", "Hidden"] and book.active.title == "Findings"
    sheet = book["Findings"]
    assert sheet["A1"].value == FINDINGS_TITLE and sheet["A2"].value.startswith("2 findings: 1 refused, 1 note.")
    assert [cell.value for cell in sheet[6]][:8] == [
        "refused", LOOMS, "C3", "Speed", "=6000", "6000", "speed 6,000 picks/min is above 2,500.", "Correct it.",
    ]  # fmt: skip
    assert sheet["E6"].data_type != "f" and colour(sheet["A6"]) == RED
    assert sheet["C6"].hyperlink.location == f"'{LOOMS}'!C3"
    assert sheet["A7"].value == "note" and sheet["B7"].value == "Hidden" and sheet["G7"].value == "a hidden sheet."


def test_only_one_sheet_is_selected(rich):
    path = marked(rich, finding(NOTE, "C3"))
    assert sum(part.count(b'tabSelected="1"') for part in parts_of(path).values()) == 1


# ---------------------------------------------------------------------- what does not


def test_everything_else_survives(rich):
    """Untouched parts are the same bytes; in the marked sheet all but styles of cells is the same text."""
    before, after = parts_of(rich), parts_of(marked(rich, finding(REFUSED, "C3"), finding(NOTE, "F3")))
    may_change = {
        "[Content_Types].xml", "xl/workbook.xml", "xl/_rels/workbook.xml.rels", "xl/styles.xml", "xl/worksheets/sheet1.xml",
        "xl/worksheets/sheet2.xml",  # it was the selected sheet
    }  # fmt: skip
    notes = {name for name in before if "comment" in name.casefold()}
    assert any("chart" in name for name in before) and notes
    for name, data in before.items():
        assert after[name] == data or name in may_change or name in notes, name
    old, new = before["xl/worksheets/sheet1.xml"], after["xl/worksheets/sheet1.xml"]
    new = re.sub(rb'<c r="F3" s="\d+"/>', b"", new)
    new = re.sub(rb'<c r="C3"([^>]*?) s="\d+">', rb'<c r="C3"\1>', new)
    old = re.sub(rb'<c r="C3" s="\d+"([^>]*?)>', rb'<c r="C3"\1>', old)
    assert new == old.replace(b' tabSelected="1"', b"")


def test_values_formulas_names_and_drop_downs_read_the_same(rich):
    path = marked(rich, finding(REFUSED, "C3"), finding(REFUSED, "E5"), finding(DOUBT, "B2:B11"))
    book, values = openpyxl.load_workbook(path), CalamineWorkbook.from_path(str(path))
    assert book[LOOMS]["E5"].value == "=C5*2"
    assert (
        values.get_sheet_by_name(LOOMS).to_python()[:11]
        == (CalamineWorkbook.from_path(str(rich)).get_sheet_by_name(LOOMS).to_python()[:11])
    )
    assert values.get_sheet_by_name(LOOMS).to_python()[4][4] == 1010
    assert book.defined_names["speeds"].attr_text == f"'{LOOMS}'!$C$2:$C$11"
    assert book["Other"].defined_names["here"].attr_text == "Other!$B$2"
    assert book["Hidden"].sheet_state == "hidden"
    (rule,) = book[LOOMS].data_validations.dataValidation
    assert rule.formula1 == '"Hall 1,Hall 2"' and str(rule.sqref) == "B2:B50"
    assert book[LOOMS].conditional_formatting and book[LOOMS].auto_filter.ref == "A1:E11"


def test_a_copy_can_be_marked_again(rich):
    """The sheet name Findings is taken then, and the earlier comment stays."""
    once = marked(rich, finding(NOTE, "C3", "one."))
    write_marked(once, [finding(REFUSED, "C3", "two.")], once.with_name("again.xlsx"))
    book = openpyxl.load_workbook(once.with_name("again.xlsx"))
    assert book.sheetnames[:2] == ["Findings 2", "Findings"]
    assert "one." in book[LOOMS]["C3"].comment.text and "two." in book[LOOMS]["C3"].comment.text


@needs("soffice", "libreoffice-calc")
def test_an_office_programme_opens_it_and_finds_the_same(rich, tmp_path):
    path = marked(rich, finding(REFUSED, "C3"), finding(NOTE, "A5"), finding(DOUBT, "H30"))
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    subprocess.run(
        ["soffice", "--headless", profile, "--convert-to", "ods", "--outdir", str(tmp_path), str(path)],
        check=True, capture_output=True, timeout=120,
    )  # fmt: skip
    with zipfile.ZipFile(tmp_path / "marked.ods") as archive:
        content = archive.read("content.xml").decode()
        assert any("Object" in name for name in archive.namelist())  # the chart
    assert content.count("<office:annotation ") == 3 and "measured by the planner" in content
    sheet = CalamineWorkbook.from_path(str(tmp_path / "marked.ods")).get_sheet_by_name(LOOMS).to_python()
    assert sheet[2][:3] == ["003", "Hall 1", 503] and sheet[4][4] == 1010


# ---------------------------------------------------------------------- odd packages


def test_a_workbook_without_styles_with_prefixes_and_an_empty_sheet(tmp_path):
    """Made by hand: every element has a prefix, there are no styles, the sheet is `<x:sheetData/>`."""
    main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    package = "http://schemas.openxmlformats.org/package/2006"
    parts = {
        "[Content_Types].xml": f'<Types xmlns="{package}/content-types"><Default Extension="rels" '
        'ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" '
        'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override '
        'PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
        "</Types>",
        "_rels/.rels": f'<Relationships xmlns="{package}/relationships"><Relationship Id="r1" '
        f'Type="{office}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<x:workbook xmlns:x="{main}" xmlns:rr="{office}"><x:sheets><x:sheet name="Looms" sheetId="7" '
        'rr:id="rId1"/></x:sheets></x:workbook>',
        "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{package}/relationships"><Relationship Id="rId1" '
        f'Type="{office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
        "xl/worksheets/sheet1.xml": f'<x:worksheet xmlns:x="{main}"><x:sheetData/><x:extLst/></x:worksheet>',
    }
    source = tmp_path / "odd.xlsx"
    with zipfile.ZipFile(source, "w") as archive:
        for name, text in parts.items():
            archive.writestr(name, text.encode("utf-16") if name == "xl/worksheets/sheet1.xml" else text)
    write_marked(
        source, [finding(REFUSED, "B2", sheet="Looms"), finding(NOTE, "A1", sheet="")], tmp_path / "marked.xlsx"
    )
    sheet = openpyxl.load_workbook(tmp_path / "marked.xlsx")["Looms"]
    assert colour(sheet["B2"]) == RED and colour(sheet["A1"]) == BLUE and sheet["B2"].comment
    assert parts_of(tmp_path / "marked.xlsx")["xl/worksheets/sheet1.xml"].endswith(b"/><x:extLst/></x:worksheet>")


GRID = st.dictionaries(st.tuples(st.integers(1, 12), st.integers(1, 30)), st.integers(0, 99), min_size=1, max_size=30)


@settings(max_examples=40, deadline=None)
@given(GRID, st.sets(st.tuples(st.integers(1, 14), st.integers(1, 32)), min_size=1, max_size=12))
def test_any_cells_of_any_grid(tmp_path_factory, values, cells):
    """Values stay, marked cells and only they are coloured, whatever rows and cells the file has."""
    folder = tmp_path_factory.mktemp("grid")
    book = openpyxl.Workbook()
    for (row, column), value in values.items():
        book.active.cell(row, column, value)
    book.save(folder / "a.xlsx")
    names = [f"{openpyxl.utils.get_column_letter(column)}{row}" for row, column in cells]
    write_marked(folder / "a.xlsx", [finding(NOTE, name, sheet="Sheet") for name in names], folder / "b.xlsx")
    sheet = openpyxl.load_workbook(folder / "b.xlsx")["Sheet"]
    found = {(c.row, c.column): c for row in sheet.iter_rows() for c in row}
    assert {place: c.value for place, c in found.items() if c.value is not None} == values
    assert {place for place, c in found.items() if colour(c)} == cells == {p for p, c in found.items() if c.comment}


# ---------------------------------------------------------------------- other files


@pytest.mark.parametrize("name", ["plain.xls"])
def test_the_values_of_an_xls_go_into_a_new_workbook(tmp_path, name):
    source = Path(__file__).parents[1] / "office" / "files" / name
    note = write_marked(source, [finding(REFUSED, "C3", sheet="")], tmp_path / "marked.xlsx")
    assert note
    said = ENGLISH.say(note)
    assert "copy of the values of plain.xls" in said and "formats and formulas stay behind" in said
    book = openpyxl.load_workbook(tmp_path / "marked.xlsx")
    sheet = book.worksheets[1]
    assert [cell.value for cell in sheet[2]] == ["A-01", "Hall 1", "AJ-190"]
    assert colour(sheet["C3"]) == RED and sheet["C3"].comment.text.startswith("REFUSED")
    assert said in [row[0].value for row in book["Findings"].iter_rows(max_col=1)]


def test_a_text_file_is_copied_from_what_was_read(tmp_path):
    """`=1+1` and 007 stay text."""
    (tmp_path / "looms.csv").write_text("Loom;Notes\n007;=1+1\n")
    grid = {"looms": [["Loom", "Notes"], ["007", "=1+1"]]}
    write_marked(tmp_path / "looms.csv", [finding(DOUBT, "B2", sheet="looms")], tmp_path / "m.xlsx", grid)
    sheet = openpyxl.load_workbook(tmp_path / "m.xlsx")["looms"]
    assert [(cell.value, cell.data_type) for cell in sheet[2]] == [("007", "s"), ("=1+1", "s")]
    assert colour(sheet["B2"]) == YELLOW


def test_wrong_targets(rich, tmp_path):
    with refused(UsageError, r"must end in \.xlsx"):
        write_marked(rich, [], tmp_path / "m.ods")
    with refused(UsageError, "overwrite"):
        write_marked(rich, [], rich)
    with refused(TrackerError, "there is no folder"):
        write_marked(rich, [], tmp_path / "nowhere" / "m.xlsx")


def test_findings_of_another_file_are_left_out(rich):
    path = marked(rich, finding(REFUSED, "C3", file="other.xlsx"), finding(NOTE, "C4", file="/some/where/rich.xlsx"))
    sheet = openpyxl.load_workbook(path)[LOOMS]
    assert colour(sheet["C3"]) is None and colour(sheet["C4"]) == BLUE


def test_addresses():
    assert cells_of("C7") == [(7, 3)] and cells_of("$C$7:D8") == [(7, 3), (7, 4), (8, 3), (8, 4)]
    assert cells_of("A1, B2") == [(1, 1), (2, 2)] and cells_of("AA10") == [(10, 27)]
    assert cells_of("") == [] and cells_of("row 7") == []
    assert len(cells_of("A1:A1048576")) == 5001


def test_the_marked_copy_is_whole_in_german(rich):
    said = [
        finding(REFUSED, "C3", "Drehzahl 6.000 ist über 2.500.", hint="Zelle berichtigen.", understood="6000"),
        finding(DOUBT, "D2", "0,82: 82 %?", hint=""),
        finding(NOTE, "E4", "gelesen.", hint=""),
    ]
    text = rich.with_name("looms.csv")
    text.write_text("001;Hall 1;6000;0.82;x", encoding="utf-8")
    for source, grids in ((rich, None), (text, {"looms": [["001", "Hall 1", 6000, 0.82, "x"]] * 5})):
        target = rich.with_name(f"{source.suffix[1:]} gekennzeichnet.xlsx")
        write_marked(source, said, target, grids, "de")
        book = openpyxl.load_workbook(target)
        sheet = book["Befunde"]
        assert sheet["A1"].value == "Befunde in dieser Arbeitsmappe von beamslot" and sheet["A1"].value in OWN_TITLES
        assert sheet["A2"].value.startswith("3 Befunde: 1 abgelehnt, 1 Zweifel, 1 Hinweis. Gekennzeichnete Zellen")
        rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=4) if row[0].value]
        headings, *listed = rows[-4:]
        assert headings == [
            "Schwere", "Blatt", "Zelle", "Überschrift", "In der Zelle", "Verstanden als", "Was gefunden wurde", "Was tun",
            "Kennung",
        ]  # fmt: skip
        assert [row[0] for row in listed] == ["abgelehnt", "Zweifel", "Hinweis"]
        marked_cell = book.worksheets[1]["C3"]
        assert marked_cell.comment.text == (
            "ABGELEHNT: Drehzahl 6.000 ist über 2.500.\nGelesen als: 6000\nWas tun: Zelle berichtigen."
        )
        assert colour(marked_cell) == RED
