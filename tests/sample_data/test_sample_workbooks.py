"""The workbooks that are committed are those that the script makes."""

from datetime import date, datetime
from pathlib import Path

import pytest
from openpyxl import load_workbook

from sample_data.big import make_mill
from sample_data.make import HERE, make

NAMES = ("loom_list", "weaving", "stores", "people_and_tools", "method", "terms")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("made")
    make(folder)
    return folder


def cells(path: Path) -> dict[str, list]:
    book = load_workbook(path)
    return {sheet.title: [[c.value for c in row] for row in sheet.iter_rows()] for sheet in book}


def test_made_twice_gives_the_same_bytes(made: Path, tmp_path: Path) -> None:
    again = make(tmp_path)
    assert [path.stem for path in again] == list(NAMES)
    assert all(path.read_bytes() == (made / path.name).read_bytes() for path in again)


@pytest.mark.parametrize("name", NAMES)
def test_committed_workbook_is_the_one_made(made: Path, name: str) -> None:
    assert cells(HERE / f"{name}.xlsx") == cells(made / f"{name}.xlsx")


def test_loom_list_is_untidy_as_described(made: Path) -> None:
    rows = cells(made / "loom_list.xlsx")["Weaving halls"]
    assert [row[0] for row in rows[:6]] == [rows[0][0], rows[1][0], None, "Loom", "no.", "Hall 1"]
    looms = [row for row in rows[6:] if row[0] and row[4]]
    assert len(looms) == 97
    assert sum(row[0] == "018" for row in looms) == 2
    assert sum("cm" in str(row[7]) for row in looms) == 3
    assert all("," in str(row[7]) for row in looms)
    assert [row[0] for row in looms if row[14] == "?" or row[16] is None] == ["031", "R-17"]


def test_tidy_sheets_keep_text_and_local_time(made: Path) -> None:
    warps = cells(made / "weaving.xlsx")["Warps"]
    at = warps[0].index("Read at")
    assert warps[1][0] == "001"
    # The walk was on Saturday 2 January 2027 between 13:00 and 15:00, the mill's local time; R-31 was read before.
    read = {row[0]: row[at] for row in warps[1:] if row[at]}
    assert read.pop("R-31") == datetime(2026, 12, 30, 14)
    assert {(moment.date(), moment.hour) for moment in read.values()} == {
        (date(2027, 1, 2), 13),
        (date(2027, 1, 2), 14),
    }


def test_a_big_hall_has_the_size_asked_for() -> None:
    mill = make_mill(looms=401, weeks=20, crews=5, halls=3, seed=4)
    sizes = [sum(loom.hall == f"Hall {n}" for loom in mill.looms.values()) for n in (1, 2, 3)]
    assert sizes == [134, 134, 133]
    assert sum(crew.trade == "fitter" for crew in mill.crews) == 5
    assert mill.terms.horizon_days == 140
    assert make_mill(401, 20, 5, 3, 4) == mill
