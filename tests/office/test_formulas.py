"""Formulas without a cached value are found, those with one are not."""

from python_calamine import CalamineWorkbook
from raw_builder import extras, ods, xlsx

from tracker.office.guarding.check_file import check_file


def test_xlsx_cells_by_hand(tmp_path):
    """A1 number cached; B1 none; C1 `<v/>` of a number: none; D1 empty text cached; E1 text formula without v: none;
    F1 shared formula, self-closed, with value; A2 shared without; B2 a plain number."""
    rows = (
        '<row r="1"><c r="A1"><f>1+1</f><v>2</v></c><c r="B1"><f>1+1</f></c><c r="C1"><f>1+1</f><v/></c>'
        '<c r="D1" t="str"><f>""</f><v></v></c><c r="E1" t="str"><f>""</f></c>'
        '<c r="F1"><f t="shared" si="0"/><v>0</v></c></row>'
        '<row r="2"><c r="A2"><f t="shared" si="0"/></c><c r="B2"><v>5</v></c></row>'
    )
    assert extras(xlsx(tmp_path / "a.xlsx", rows)).no_value == {(1, 2), (1, 3), (1, 5), (2, 1)}


def test_cells_that_do_not_say_where_they_stand_are_counted(tmp_path):
    rows = "<row><c><v>1</v></c></row><row><c><v>1</v></c><c><f>A1</f></c></row>"
    assert extras(xlsx(tmp_path / "a.xlsx", rows)).no_value == {(2, 2)}


def test_prefixed_names(tmp_path):
    """Some libraries write `<x:c>` instead of `<c>`."""
    sheet = (
        '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData>'
        '<x:row r="3"><x:c r="B3"><x:f>A1</x:f></x:c></x:row></x:sheetData></x:worksheet>'
    )
    path = xlsx(tmp_path / "a.xlsx", extra=[("xl/worksheets/sheet1.xml", sheet)])
    assert extras(path).no_value == {(3, 2)}


def test_ods_cells_by_hand(tmp_path):
    """Row 1: A1 number, B1 and C1 (repeated) without value, D1 empty text as an office programme writes it, E1 text.
    Row 2 stands for rows 2 and 3: A2 and A3 without value."""
    formula = 'table:formula="of:=1"'
    rows = (
        f'<table:table-row><table:table-cell {formula} office:value-type="float" office:value="1"/>'
        f'<table:table-cell {formula} table:number-columns-repeated="2"/>'
        f"<table:table-cell {formula}><text:p/></table:table-cell>"
        f'<table:table-cell {formula} office:value-type="string"><text:p>x</text:p></table:table-cell></table:table-row>'
        f'<table:table-row table:number-rows-repeated="2"><table:table-cell {formula}/></table:table-row>'
    )
    path = ods(tmp_path / "a.ods", f'<table:table table:name="Säle">{rows}</table:table>')
    assert extras(path, "Säle").no_value == {(1, 2), (1, 3), (2, 1), (3, 1)}


def test_the_grid_reader_loses_what_this_finds(tmp_path):
    """The reason for this file: the library gives such a cell as an empty one."""
    path = xlsx(tmp_path / "a.xlsx", '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f>A1+1</f></c></row>')
    assert CalamineWorkbook.from_path(str(path)).get_sheet_by_index(0).to_python() == [[1.0]]
    assert extras(path).no_value == {(1, 2)}


def test_files_without_formulas(tmp_path):
    (tmp_path / "a.csv").write_text("a;b\n=1+1;2\n")
    assert check_file(tmp_path / "a.csv").sheets == ()
    assert extras(xlsx(tmp_path / "a.xlsx", '<row r="1"><c r="A1"><v>1</v></c></row>')).no_value == set()


def test_a_formula_that_holds_a_sign_of_xml(tmp_path):
    """`>` may stand unescaped in a text: A1 has no value although its formula says `is>`, B1 has one."""
    rows = '<row r="1"><c r="A1"><f>IF(this>1,2)</f></c><c r="B1"><f>IF(this>1,2)</f><v>2</v></c></row>'
    assert extras(xlsx(tmp_path / "a.xlsx", rows)).no_value == {(1, 1)}


def test_a_note_on_an_ods_formula_is_no_value(tmp_path):
    """The paragraph belongs to the note, not to the cell."""
    note = "<office:annotation><text:p>to be checked</text:p></office:annotation>"
    row = f'<table:table-row><table:table-cell table:formula="of:=1">{note}</table:table-cell></table:table-row>'
    path = ods(tmp_path / "a.ods", f'<table:table table:name="Looms">{row}</table:table>')
    assert extras(path).no_value == {(1, 1)}
