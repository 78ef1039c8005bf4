"""Addresses of cells, by hand."""

import pytest

from tracker.domain.addresses import (
    area_of,
    areas_in,
    cell_in,
    cell_name,
    cell_of,
    column_letters,
    column_number,
    in_line,
    range_name,
    ranges,
)


@pytest.mark.parametrize(
    ("letters", "number"), [("A", 1), ("Z", 26), ("AA", 27), ("AZ", 52), ("ZZ", 702), ("XFD", 16_384)]
)
def test_columns_count_in_letters(letters, number):
    assert column_number(letters) == number and column_letters(number) == letters


def test_cells_and_areas():
    assert cell_of("C7") == (7, 3) and cell_name((7, 3)) == "C7"
    assert cell_in(" $C$7 ") == (7, 3) and cell_in("C7:D9") is None and cell_in("") is None
    assert area_of("$A$1:C3") == (1, 1, 3, 3) and area_of("B2") == (2, 2, 2, 2)


def test_areas_in_a_text():
    assert areas_in("C7, D9:C8; nowhere") == [(7, 3, 7, 3), (8, 3, 9, 4)]


def test_runs_down_a_column_are_joined():
    assert ranges([(14, 3), (7, 3), (12, 3), (13, 3), (7, 3), (8, 4)]) == "C7, C12:C14, D8"
    assert range_name((7, 3), (7, 3)) == "C7" and range_name((7, 3), (7, 5)) == "C7:E7"


def test_the_cell_of_a_row_under_its_heading():
    assert in_line("AB3", 7) == "AB7" and in_line("C3", 28, transposed=True) == "AB3"
