"""A table as a file: what is a number, a day or a moment is one there, with its unit in the heading."""

import csv
import io
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from openpyxl import load_workbook
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import AS_OF, ZONE, put, small_mill
from streamlit.testing.v1 import AppTest

from dashboards import downloads, parts
from dashboards.downloads import TITLE
from dashboards.speaking import speaking_in
from dashboards.table_values import headed, values_of, worth
from dashboards.tables import Cell, Head, loom_cell
from tracker.domain.mill import LoomKey
from tracker.errors import NotAllowed
from tracker.export.shown_table import table_file
from tracker.services.context import Context
from tracker.services.people.accounts import add_person

VIENNA = ZoneInfo(ZONE)
COLUMNS = [*map(Head, ("Start", "Loom", "Left", "On hand", "Reserved", "Cost (EUR)", "Remark", ""))]
ROWS = [
    # what is shown is rounded; the file has the value itself, and the moment on Vienna's clock, an hour ahead of UTC
    [Cell("Mon 4 Jan 2027 06:00", AS_OF), loom_cell(LoomKey("Hall 1", "007")), Cell("1,204 m", 1204.4), Cell("2.5 m", 2.5),
     Cell("87 %", 0.871), Cell("1,200 EUR", 1199.6), "=1+1", Cell("Undo", href="changes?undo=1")],
    [Cell("", None), "A-10", Cell("90 m", 90), Cell("3 pc", 3), Cell("", None), Cell("", None), "-5 by hand", ""],
]  # fmt: skip
HEADINGS = ["Start", "Loom", "Left (m)", "On hand", "On hand: Unit", "Reserved (%)", "Cost (EUR)", "Remark"]


def made(ending: str) -> bytes:
    return table_file("Looms", *headed(COLUMNS, values_of(ROWS, VIENNA), "Unit"), ending)


def test_a_workbook_has_numbers_and_moments_and_text_that_is_no_formula():
    page = load_workbook(io.BytesIO(made(".xlsx")))["Looms"]
    assert [[cell.value for cell in row] for row in page.iter_rows()] == [
        HEADINGS,
        [datetime(2027, 1, 4, 6), "007", 1204.4, 2.5, "m", 87.1, 1199.6, "=1+1"],
        [None, "A-10", 90, 3, "pc", None, None, "-5 by hand"],
    ]
    assert page["H2"].data_type == "s" and page["H2"].quotePrefix


def test_a_csv_has_the_same_and_what_might_run_has_an_apostrophe():
    assert [*csv.reader(io.StringIO(made(".csv").decode("utf-8-sig")))] == [
        HEADINGS,
        ["2027-01-04 06:00", "007", "1204.4", "2.5", "m", "87.1", "1199.6", "'=1+1"],
        ["", "A-10", "90", "3", "pc", "", "", "'-5 by hand"],
    ]


@pytest.mark.parametrize(("cell", "value"), [
    (Cell("Short", 3), "Short"),  # a rank
    (Cell("3 days", -3), 3),  # sorted the other way round
    (Cell("3 of 5", 3), "3 of 5"),
    (Cell("3/12", ("3", "12")), "3/12"),
    (Cell("Mon 4 Jan 2027 06:00 to 14:30", AS_OF), "Mon 4 Jan 2027 06:00 to 14:30"),
    (Cell("Mon 4 Jan 2027", AS_OF), date(2027, 1, 4)),
    (Cell("Tue 5 Jan 2027", date(2027, 1, 5)), date(2027, 1, 5)),
    (Cell("Mon 4 Jan 2027 06:00", (AS_OF, -1)), datetime(2027, 1, 4, 6)),
    (Cell("0.3", 0.1 + 0.2), 0.3),
    (Cell("-12", -12.4), -12.4),
    ("12", "12"),
    (Cell("not known", datetime.max.replace(tzinfo=UTC)), "not known"),
])  # fmt: skip
def test_what_a_cell_shows_decides_what_it_is(cell, value):
    assert worth(cell, VIENNA).value == value


def test_german_numbers_are_numbers():
    with speaking_in("de"):
        assert worth(Cell("1.204,5 m", 1204.46), VIENNA) == (1204.46, "m")


@pytest.mark.usefixtures("quick_passwords")
def test_a_file_is_made_when_it_is_clicked_in_the_language_of_the_page(tmp_path, monkeypatch):
    """All 450 rows of a table of which 200 are shown. Where there are accounts, nothing is made for who has no session."""
    db = put(tmp_path / "mill.db", small_mill())
    monkeypatch.setenv("BEAMSLOT_DB", db)
    clicked = []
    monkeypatch.setattr(downloads.st, "download_button", lambda label, make, **_: clicked.append((label, make)))
    app = AppTest.from_string(LONG, default_timeout=30)
    app.session_state[TITLE] = "Zahlen"
    app.query_params["lang"] = "de"
    assert not app.run().exception
    assert [label for label, _ in clicked] == ["als CSV", "als Arbeitsmappe"] * 2
    lines = clicked[0][1]().decode("utf-8-sig").splitlines()
    assert len(lines) == 451 and lines[0] == "Nummer (m)" and lines[450] == "1449"
    page = load_workbook(io.BytesIO(clicked[1][1]()))["Zahlen"]
    assert (page.max_row, page["A451"].value) == (451, 1449)
    add_person(Context(db), "Ann", PASSWORD, ["administrator"])
    with pytest.raises(NotAllowed):
        clicked[0][1]()


def test_what_is_read_at_a_glance_is_not_offered():
    app = AppTest.from_string(LONG.replace("450", "4"), default_timeout=30).run()
    assert not app.exception and not app.get("download_button")


def test_two_tables_of_the_same_headings_are_two():
    app = AppTest.from_string(LONG.replace("450", "5"), default_timeout=30).run()
    assert not app.exception and len(app.get("download_button")) == 4


LONG = """
from dashboards.parts import table
from dashboards.speaking import number
from dashboards.tables import Cell, Head, RowsAsShown
for name in ("first", "second") if 450 > 5 else ("", ""):
    table([Head("Nummer")], RowsAsShown(range(450), lambda i: [Cell(number(1000 + i, "m"), 1000 + i)]), name=name)
"""


def test_a_table_of_which_only_the_first_rows_are_shown_is_a_file_of_all(monkeypatch):
    shown, offered = [], []
    monkeypatch.setattr(parts.st, "html", shown.append)
    monkeypatch.setattr(parts, "offer_table", lambda _columns, rows, _name: offered.append(len(rows)))
    parts.table([Head("Loom")], [[str(number)] for number in range(600)], first=8)
    parts.table([Head("Loom")], [["1"]], files=False)
    assert [html.count("<td") for html in shown] == [8, 1] and offered == [600]
