"""Orders out to the suppliers and their answers back in; what a sheet of receipts may not say."""

from datetime import date

import pytest
from opened import here
from openpyxl import Workbook, load_workbook
from said import lines
from stock_room_samples import AT, fill_with_method

from tracker.services.loading.load import load
from tracker.services.parts.needs import net_needs
from tracker.services.parts.purchasing import order_files, pick_file
from tracker.services.parts.stock import receive
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    return fill_with_method(str(tmp_path / "mill.db"))


def receipts(db):
    with open_store(db).reading() as uow:
        return {receipt.order: receipt for receipt in uow.mill().receipts}


def fill_in(path, answers):
    """Fill in Quantity and Due of the order lines in a supplier's workbook, as he would."""
    book = load_workbook(path)
    sheet = book.active
    rows = list(sheet.iter_rows())
    heading = next(row for row in rows if {"Order", "Quantity", "Due"} <= {cell.value for cell in row})
    column = {cell.value: cell.column for cell in heading}
    for row in rows[heading[0].row :]:
        if row[column["Order"] - 1].value in answers:
            quantity, due = answers[row[column["Order"] - 1].value]
            sheet.cell(row[0].row, column["Quantity"], quantity)
            sheet.cell(row[0].row, column["Due"], due)
    book.save(path)


def test_a_supplier_answer_comes_back_as_receipts_and_the_need_is_met(db, tmp_path):
    """The nuts of B Works: 4 for loom 10 and 8 for the loom left over (see test_needs_report). He sends 50 for the
    first on 22 Jan, and nothing more: 46 are left, the second need is met, too."""
    written = order_files(here(db), tmp_path / "orders", AT)
    (path,) = (path for path in written.suppliers if "B Works" in path.name)
    fill_in(path, {"2026W05-NUT": (50, date(2026, 1, 22)), "2026W09-NUT": (0, date(2026, 1, 22))})
    report = load(here(db), [path])
    assert (report.refusal, report.written, report.findings) == (None, True, ())
    line = receipts(db)["2026W05-NUT"]
    assert (line.part, line.quantity, line.due, line.supplier, line.unit) == (
        "NUT",
        50,
        date(2026, 1, 22),
        "B Works",
        "pc",
    )
    assert [order.part for order in net_needs(here(db), AT).orders if order.part == "NUT"] == []
    again = load(here(db), [path])
    assert [table.rows.unchanged for table in again.tables] == [2]
    assert again.changes == ()


def test_an_answer_without_a_date_is_refused_with_its_cell(db, tmp_path):
    written = order_files(here(db), tmp_path / "orders", AT)
    (path,) = (path for path in written.suppliers if "B Works" in path.name)
    fill_in(path, {"2026W05-NUT": (50, date(2026, 1, 22))})
    report = load(here(db), [path])
    assert not report.written
    assert all(finding.cell and finding.sheet == "Order" for finding in report.refused)
    assert "2026W05-NUT" not in receipts(db)


def test_an_answer_loaded_after_the_goods_have_come_is_refused(db, tmp_path):
    written = order_files(here(db), tmp_path / "orders", AT)
    (path,) = (path for path in written.suppliers if "B Works" in path.name)
    fill_in(path, {"2026W05-NUT": (50, date(2026, 1, 22)), "2026W09-NUT": (8, date(2026, 2, 20))})
    load(here(db), [path])
    receive(here(db), order="2026W05-NUT", quantity=30)
    report = load(here(db), [path])
    assert [finding.code for finding in report.refused] == ["received-already"]
    assert receipts(db)["2026W05-NUT"].quantity == 20


HEADINGS = ("Order", "Part", "Quantity", "Due", "Unit")
DUE = date(2026, 2, 2)


def sheet_of(tmp_path, *rows):
    book = Workbook()
    book.active.title = "Receipts"
    for row in (HEADINGS, *rows):
        book.active.append(row)
    book.save(tmp_path / "receipts.xlsx")
    return tmp_path / "receipts.xlsx"


SOUND = ("PO-7", "NUT", 5, DUE, "pc")


@pytest.mark.parametrize(
    ("row", "cell"),
    [
        (("PO-8", "BOLT", 1, DUE, None), "B3"),  # unknown part
        (("PO-8", "NUT", -1, DUE, None), "C3"),  # negative quantity
        (("PO-8", "NUT", 1, None, None), "D3"),  # no date
        (("PO-8", "CABLE", 1, DUE, "pc"), "E3"),  # kept in m
        (("PO-7", "RAIL", 1, DUE, None), "A3"),  # the line is for NUT
        (("PO-1", "NUT", 1, DUE, None), "A3"),  # in the database the line is for RAIL
    ],
)
def test_receipts_that_cannot_be_are_refused_with_their_cell(db, tmp_path, row, cell):
    before = receipts(db)
    report = load(here(db), [sheet_of(tmp_path, SOUND, row)])
    assert {finding.cell for finding in report.refused} == {cell}
    assert (report.written, receipts(db)) == (False, before)


def test_one_order_line_with_two_quantities_is_refused(db, tmp_path):
    report = load(here(db), [sheet_of(tmp_path, SOUND, ("PO-7", "NUT", 6, DUE, "pc"))])
    assert not report.written
    assert any("3" in finding.cell for finding in report.refused), report.refused


def test_pick_lists_are_written_as_workbook_and_pdf(db, tmp_path):
    report = pick_file(here(db), tmp_path / "picks.xlsx", date(2026, 1, 26))
    pick_file(here(db), tmp_path / "picks.pdf", date(2026, 1, 26))
    assert lines(report) == ["Mon 26 Jan 2026: 1 kit to pick, 1 of them short."]
    values = {cell for row in load_workbook(tmp_path / "picks.xlsx").active.iter_rows(values_only=True) for cell in row}
    assert {"NUT", "RAIL", "10"} <= values
    assert (tmp_path / "picks.pdf").read_bytes().startswith(b"%PDF")
