"""A stray cell far below the list neither costs memory nor loses its row number."""

import pytest
from python_calamine import CalamineWorkbook
from raw_builder import ods, xlsx

from tracker.office.guarding.check_file import check_file
from tracker.office.opening import gaps


def readable(path):
    return gaps.readable(path, check_file(path).sheets)


def rows_of(path, sheet):
    """{row in the file: first value} as a reader would see it through `readable`."""
    found = readable(path)
    book = CalamineWorkbook.from_object(found.file)
    grid = book.get_sheet_by_name(sheet).to_python(skip_empty_area=False)
    assert len(grid) < 100
    return {found.row(sheet, number): row[0] for number, row in enumerate(grid, 1) if row[0] != ""}


def xlsx_row(number, value, column="A"):
    return f'<row r="{number}"><c r="{column}{number}"><v>{value}</v></c></row>'


def test_an_ordinary_workbook_is_read_itself(tmp_path):
    path = xlsx(tmp_path / "a.xlsx", xlsx_row(1, 10) + xlsx_row(2, 20))
    assert readable(path).file == path and readable(path).row("Looms", 2) == 2


def test_stray_cells_of_an_xlsx_keep_their_rows(tmp_path):
    """Three columns wide, so that the box (1,048,576 × 3) is beyond what a reader should hold."""
    rows = xlsx_row(1, 10) + xlsx_row(2, 20) + xlsx_row(9000, 5, "C") + xlsx_row(700_000, 30) + xlsx_row(1_048_576, 40)
    path = xlsx(tmp_path / "a.xlsx", rows)
    assert readable(path).file != path
    assert rows_of(path, "Looms") == {1: 10.0, 2: 20.0, 700_000: 30.0, 1_048_576: 40.0}


def test_an_empty_formatted_cell_in_the_last_row_needs_no_copy(tmp_path):
    path = xlsx(tmp_path / "a.xlsx", xlsx_row(1, 10) + '<row r="1048576"><c r="XFD1048576" s="0"/></row>')
    assert readable(path).file == path


@pytest.mark.parametrize("name", ["Säle", "A &amp; B"])
def test_stray_cells_of_an_ods_keep_their_rows(tmp_path, name):
    """Rows 1 and 2, then 699,997 empty ones, row 700,000 twice, then 299,999 empty ones and row 1,000,001."""

    def row(value, repeat=1):
        cell = f'<table:table-cell office:value-type="float" office:value="{value}"/>' * 3
        return f'<table:table-row table:number-rows-repeated="{repeat}">{cell}</table:table-row>'

    def gap(repeat):
        return f'<table:table-row table:number-rows-repeated="{repeat}"><table:table-cell/></table:table-row>'

    first = f'<table:table table:name="Other">{row(1)}{gap(50)}{row(2)}</table:table>'
    second = row(10) + row(20) + gap(699_997) + row(30, 2) + gap(299_999) + row(40)
    path = ods(tmp_path / "a.ods", f'{first}<table:table table:name="{name}">{second}</table:table>')
    assert rows_of(path, name.replace("&amp;", "&")) == {1: 10, 2: 20, 700_000: 30, 700_001: 30, 1_000_001: 40}
    assert rows_of(path, "Other") == {1: 1, 52: 2}
