"""Error cells, which the grid reader gives as empty, are found with the text that they show."""

from raw_builder import MAIN, extras, ods, sheet_xml, xlsx


def test_xlsx_errors_by_hand(tmp_path):
    """A1 an error, B1 the same in other quotes and order, C1 a text that only looks like one, A3 one from a formula."""
    rows = (
        """<row r="1"><c r="A1" t="e"><v>#REF!</v></c><c t='e' r='B1'><v>#N/A</v></c><c r="C1" t="str"><v>#REF!</v></c></row>"""
        """<row r="3"><c r="A3" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>"""
    )
    found = extras(xlsx(tmp_path / "a.xlsx", rows))
    assert found.errors == {(1, 1): "#REF!", (1, 2): "#N/A", (3, 1): "#DIV/0!"} and found.no_value == set()


def test_xlsx_errors_in_cells_that_do_not_say_where_they_stand(tmp_path):
    rows = '<row><c><v>1</v></c></row><row><c><v>1</v></c><c t="e"><v>#NUM!</v></c></row>'
    assert extras(xlsx(tmp_path / "a.xlsx", rows)).errors == {(2, 2): "#NUM!"}


def test_a_sheet_in_utf_16(tmp_path):
    xml = '<?xml version="1.0" encoding="UTF-16"?>' + sheet_xml('<row r="1"><c r="A1" t="e"><v>#REF!</v></c></row>')
    path = xlsx(tmp_path / "a.xlsx", extra=[("xl/worksheets/sheet1.xml", xml.encode("utf-16"))])
    assert MAIN in xml and extras(path).errors == {(1, 1): "#REF!"}


def test_ods_errors_repeated_over_cells_and_rows(tmp_path):
    """One element stands for B1, C1, B2 and C2; the one in D1 is a text that is typed, not an error."""
    error = 'table:formula="of:=1/0" office:value-type="string" office:string-value=""'
    row = (
        '<table:table-row table:number-rows-repeated="2"><table:table-cell office:value-type="float" office:value="1"/>'
        f'<table:table-cell {error} table:number-columns-repeated="2"><text:p>#DIV/0!</text:p></table:table-cell>'
        '<table:table-cell office:value-type="string"><text:p>#DIV/0!</text:p></table:table-cell></table:table-row>'
    )
    path = ods(tmp_path / "a.ods", f'<table:table table:name="Looms">{row}</table:table>')
    assert extras(path).errors == dict.fromkeys([(1, 2), (1, 3), (2, 2), (2, 3)], "#DIV/0!")
