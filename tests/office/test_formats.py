"""Number formats that change what a cell shows, hidden rows, columns and sheets, merged cells."""

import pytest
from raw_builder import MAIN, extras, ods, xlsx

from tracker.office.opening.book import open_book
from tracker.office.opening.code_pages import KnownWords
from tracker.office.walking.format_codes import matters, tidy

STYLES = f"""<styleSheet xmlns="{MAIN}"><numFmts count="3"><numFmt numFmtId="164" formatCode="000"/>
<numFmt numFmtId="165" formatCode="&quot;A-&quot;00"/><numFmt numFmtId="166" formatCode="dd\\-mm\\-yyyy;@"/></numFmts>
<cellStyleXfs count="2"><xf numFmtId="164"/><xf numFmtId="164"/></cellStyleXfs>
<cellXfs count="7"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="9"/><xf numFmtId="14"/>
<xf numFmtId="166"/><xf numFmtId="4"/></cellXfs></styleSheet>"""


def row(number, *styles, attributes=""):
    cells = "".join(f'<c r="{chr(65 + i)}{number}" s="{style}"><v>7</v></c>' for i, style in enumerate(styles))
    return f'<row r="{number}" {attributes}>{cells}</row>'


def test_xlsx_codes(tmp_path):
    """Style 0 and 6 (#,##0.00) show the plain number; 3 is built-in 9, 4 is built-in 14, in the computer's own order."""
    path = xlsx(tmp_path / "a.xlsx", row(1, 0, 1, 2) + row(12, 6, 3, 4, 5), styles=STYLES)
    assert extras(path).codes == {
        (1, 2): "000",
        (1, 3): '"A-"00',
        (12, 2): "0%",
        (12, 3): "[$-x-sysdate]",
        (12, 4): "dd-mm-yyyy",
    }


def test_empty_cells_and_other_attribute_orders(tmp_path):
    rows = "<row r='1'><c s='1' r='A1'><v>7</v></c><c r='B1' s='1'/><c r='C1' s='1'></c><c r='D1' t='n' s='1'><v>7</v></c></row>"
    codes = extras(xlsx(tmp_path / "a.xlsx", rows, styles=STYLES)).codes
    assert codes == {(1, 1): "000", (1, 4): "000"}


def test_cells_that_do_not_say_where_they_stand(tmp_path):
    rows = '<row><c s="0"><v>1</v></c></row><row><c s="0"><v>1</v></c><c s="1"><v>7</v></c></row>'
    assert extras(xlsx(tmp_path / "a.xlsx", rows, styles=STYLES)).codes == {(2, 2): "000"}


def test_xlsx_hidden_merged_and_filtered(tmp_path):
    path = xlsx(
        tmp_path / "a.xlsx",
        row(1, 0)
        + row(2, 0, attributes='hidden="1"')
        + row(3, 0, attributes='hidden="0"')
        + row(4, attributes='hidden="true"'),
        before='<cols><col min="2" max="3" hidden="1"/><col min="5" max="5" width="9"/></cols>',
        after='<autoFilter ref="A1:C9"><filterColumn colId="0"/></autoFilter>'
        '<mergeCells count="2"><mergeCell ref="A1:C1"/><mergeCell ref="B5:B7"/></mergeCells>',
        state="veryHidden",
    )
    found = open_book(path, KnownWords(lambda text: None))[0].extras
    assert found.hidden and found.hidden_rows == {2, 4} and found.hidden_columns == {2, 3}
    assert found.merged == ((1, 1, 1, 3), (5, 2, 7, 2)) and found.filtered == "A1:C9"


def test_a_filter_that_shows_everything_is_none(tmp_path):
    found = extras(xlsx(tmp_path / "a.xlsx", row(1, 0), after='<autoFilter ref="A1:C9"/>'))
    assert found.filtered == "" and not found.hidden and found.merged == ()


ODS_STYLES = """
<number:number-style style:name="N1"><number:number number:min-integer-digits="3"/></number:number-style>
<number:number-style style:name="N2"><number:text>A-</number:text><number:number number:min-integer-digits="2"/>
</number:number-style>
<number:percentage-style style:name="N3"><number:number number:decimal-places="1" number:min-integer-digits="1"/>
<number:text>%</number:text></number:percentage-style>
<number:date-style style:name="N4"><number:day number:style="long"/><number:text>.</number:text><number:month/>
<number:text>.</number:text><number:year number:style="long"/></number:date-style>
<number:number-style style:name="N5"><number:number number:decimal-places="2" number:min-integer-digits="1"
 number:grouping="true"/></number:number-style>
<style:style style:name="c1" style:family="table-cell" style:data-style-name="N1"/>
<style:style style:name="c1b" style:family="table-cell" style:parent-style-name="c1"/>
<style:style style:name="c2" style:family="table-cell" style:data-style-name="N2"/>
<style:style style:name="c3" style:family="table-cell" style:data-style-name="N3"/>
<style:style style:name="c4" style:family="table-cell" style:data-style-name="N4"/>
<style:style style:name="c5" style:family="table-cell" style:data-style-name="N5"/>
<style:style style:name="shut" style:family="table"><style:table-properties table:display="false"/></style:style>
"""


def cell(style="", kind="float", extra=""):
    style = f'table:style-name="{style}"' if style else ""
    return f'<table:table-cell {style} office:value-type="{kind}" office:value="7" {extra}/>'


def test_ods_codes(tmp_path):
    """Column 2 has the default style c2; cell A3 inherits c1; text never has a code; rows 3 and 4 are one element."""
    table = (
        '<table:table table:name="Looms"><table:table-column/>'
        '<table:table-column table:default-cell-style-name="c2" table:number-columns-repeated="2"/>'
        f"<table:table-row>{cell('c1')}{cell()}{cell('c3', 'percentage')}{cell('c4', 'date')}{cell('c5')}</table:table-row>"
        f"<table:table-row>{cell('c1', 'string')}</table:table-row>"
        f'<table:table-row table:number-rows-repeated="2">{cell("c1b")}</table:table-row></table:table>'
    )
    assert extras(ods(tmp_path / "a.ods", table, ODS_STYLES)).codes == {
        (1, 1): "000",
        (1, 2): '"A-"00',
        (1, 3): "0.0%",
        (1, 4): "dd.m.yyyy",
        (3, 1): "000",
        (4, 1): "000",
    }


def test_ods_hidden_and_merged(tmp_path):
    """Of the million rows hidden below, only those up to the last filled one count."""
    span = 'table:number-columns-spanned="2" table:number-rows-spanned="3"'
    table = (
        '<table:table table:name="Looms" table:style-name="shut"><table:table-column/>'
        '<table:table-column table:visibility="collapse" table:number-columns-repeated="16383"/>'
        f"<table:table-row>{cell()}{cell()}</table:table-row>"
        f'<table:table-row table:visibility="filter" table:number-rows-repeated="2">{cell(extra=span)}</table:table-row>'
        f'<table:table-row table:visibility="collapse" table:number-rows-repeated="1000000"><table:table-cell/>'
        "</table:table-row></table:table>"
    )
    found = extras(ods(tmp_path / "a.ods", table, ODS_STYLES))
    assert found.hidden and found.hidden_rows == {2, 3} and found.hidden_columns == {2}
    assert found.merged == ((2, 1, 4, 2),)


@pytest.mark.parametrize("code", ["General", "0", "#,##0", "#,##0.00;[Red]-#,##0.00", "_-* #,##0.0_-", "@", "# ?"])
def test_codes_that_show_the_plain_number(code):
    assert not matters(code)


@pytest.mark.parametrize(
    "code", ["000", "00.0", '"A-"0', '0" cm"', "0%", "dd/mm/yyyy", "d-mmm", "#,##0,", "0.0,,", "h:mm", "€ 0"]
)
def test_codes_that_show_something_else(code):
    assert matters(code)


def test_codes_in_one_spelling():
    assert tidy("yyyy\\-mm\\-dd\\ hh:mm;@") == "yyyy-mm-dd hh:mm"
    assert tidy("[$-407]d/\\ mmm") == "d/ mmm"
    assert tidy("[$-F800]dddd") == "[$-x-sysdate]dddd"
    assert tidy("\\A0") == '"A"0'


def test_xlsx_struck_through(tmp_path):
    """Style 1 has the struck font; the shared text 1 is struck in its first run, the text in E1 in none that counts."""
    styles = f"""<styleSheet xmlns="{MAIN}"><fonts><font/><font><b/><strike/></font><font><strike val="0"/></font></fonts>
<cellXfs><xf fontId="0"/><xf fontId="1"/><xf fontId="2"/></cellXfs></styleSheet>"""
    texts = f"""<sst xmlns="{MAIN}"><si><t>a</t></si><si><r><rPr><strike/></rPr><t>620</t></r><r><t>640</t></r></si></sst>"""
    run = '<is><r><rPr><strike val="false"/></rPr><t>x</t></r></is>'
    cells = (
        '<c r="A1" s="1"><v>7</v></c><c r="B1" s="2"><v>7</v></c><c r="C1" s="1"/><c r="D1" t="s"><v>1</v></c>'
        f'<c r="E1" t="inlineStr">{run}</c><c r="F1" t="inlineStr">{run.replace(" val=", " id=")}</c><c r="G1" t="s"><v>0</v></c>'
    )
    found = extras(xlsx(tmp_path / "a.xlsx", f'<row r="1">{cells}</row>', styles=styles, strings=texts))
    assert found.struck == {(1, 1), (1, 4), (1, 6)}


def test_ods_struck_through(tmp_path):
    """Style s strikes, its child does too, its other child does not; in D1 a part of the text is struck."""
    line = "style:text-line-through-style"
    styles = f"""<style:style style:name="s"><style:text-properties {line}="solid"/></style:style>
<style:style style:name="child" style:parent-style-name="s"/>
<style:style style:name="not" style:parent-style-name="s"><style:text-properties {line}="none"/></style:style>"""
    part = '<table:table-cell office:value-type="string"><text:p>620 <text:span text:style-name="s">640</text:span></text:p>'
    cells = "".join(cell(style) for style in ("s", "child", "not")) + f"{part}</table:table-cell>{cell()}"
    table = f'<table:table table:name="Looms"><table:table-row>{cells}</table:table-row></table:table>'
    assert extras(ods(tmp_path / "a.ods", table, styles)).struck == {(1, 1), (1, 2), (1, 4)}
