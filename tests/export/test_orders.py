"""Order list for purchasing, and workbooks that suppliers fill in."""

from datetime import date

import openpyxl
from export_samples import ORDERS
from python_calamine import CalamineWorkbook
from refusals import refused

from tracker.domain.needs import Cash, MonthCash
from tracker.domain.tables import RECEIPTS
from tracker.errors import TrackerError
from tracker.export.orders import OrdersOf, write_orders, write_supplier_orders


def records(path, sheet):
    rows = CalamineWorkbook.from_path(str(path)).get_sheet_by_name(sheet).to_python()
    start = next(i for i, row in enumerate(rows) if sum(cell != "" for cell in row) > 1)
    return [dict(zip(rows[start], row, strict=True)) for row in rows[start + 1 :]], [row[0] for row in rows[:start]]


def test_the_whole_list(tmp_path):
    """By supplier, none last: cable 100 × 2.50 = 250, rail 4 × 310 = 1,240, pin 0; together 1,490."""
    cash = Cash((MonthCash("2027-01", 250, 100), MonthCash("2027-03", 1240, 0)))
    write_orders(tmp_path / "o.xlsx", ORDERS, OrdersOf("EUR", cash=cash))
    rows, said = records(tmp_path / "o.xlsx", "Orders")
    assert [row["Supplier"] for row in rows] == ["Cable works", "Rail works", "no supplier named", "Total"]
    assert [row["Amount (EUR)"] for row in rows] == [250, 1240, 0, 1490]
    assert said[1] == "3 lines for 1,490 EUR; 1 late: the order-by day is past."
    rail = rows[1]
    assert (rail["Late"], rail["Order by"], rail["Expected"]) == (
        "late by 5 days",
        date(2026, 12, 30),
        date(2027, 3, 4),
    )
    assert rail["Looms touched if late"] == "007 (Hall 2) by 3 days" and rows[0]["Late"] == ""
    assert rows[2]["Description"] == "=pin"
    months, said = records(tmp_path / "o.xlsx", "Cash by month")
    assert months[0] == {"Month": "2027-01", "To order (EUR)": 250, "On order (EUR)": 100, "Both (EUR)": 350}
    assert said[1] == "1,590 EUR in all; the most in 2027-03: 1,240 EUR."


def test_one_workbook_per_supplier_to_fill_in(tmp_path):
    """It has the headings of Receipts, with Quantity and Due left empty, and no total that would read as a line."""
    paths = write_supplier_orders(tmp_path / "send", ORDERS, OrdersOf("EUR", "Hall renewal"))[1:]
    assert [path.name for path in paths] == [
        "order Cable works.xlsx", "order Rail works.xlsx", "order no supplier named.xlsx",
    ]  # fmt: skip
    (row,), said = records(paths[1], "Order")
    assert {column.title for column in RECEIPTS.columns} <= row.keys()
    assert (row["Order"], row["Part"], row["Supplier"]) == ("2027W09-RAIL-190", "RAIL-190", "Rail works")
    assert (row["Asked for"], row["Asked for by"], row["Quantity"], row["Due"]) == (4, date(2027, 2, 26), "", "")
    assert said[0] == "Hall renewal: order to Rail works"


def test_what_a_supplier_gets_says_nothing_of_our_looms(tmp_path):
    _, path = write_supplier_orders(tmp_path, ORDERS[:1], OrdersOf("EUR", "Hall renewal"))
    text = str(CalamineWorkbook.from_path(str(path)).get_sheet_by_index(0).to_python())
    assert "007" not in text and "late" not in text


def test_supplier_names_make_sound_file_names(tmp_path):
    lines = [
        type(ORDERS[0])(**{f: getattr(ORDERS[0], f) for f in ORDERS[0].__slots__} | {"supplier": name})
        for name in ("A/B: Co.", "A B  Co", "a b  co", "../x")
    ]
    names = [path.name for path in write_supplier_orders(tmp_path, lines, OrdersOf("EUR", "P"))[1:]]
    assert len({name.casefold() for name in names}) == 4 and all((tmp_path / name).exists() for name in names)
    assert all("/" not in name and ":" not in name for name in names)


def test_a_folder_that_cannot_be_made(tmp_path):
    (tmp_path / "file").write_text("x")
    with refused(TrackerError, "cannot make the folder"):
        write_supplier_orders(tmp_path / "file" / "send", ORDERS, OrdersOf("EUR", "P"))


def test_the_columns_to_fill_in_stand_out_and_say_so(tmp_path):
    _, path = write_supplier_orders(tmp_path, ORDERS[:1], OrdersOf("EUR", "P"))
    heading = {cell.value: cell for cell in openpyxl.load_workbook(path)["Order"][5]}
    assert heading["Quantity"].comment.text.startswith("Please fill in")
    assert heading["Quantity"].fill.fgColor.rgb != heading["Asked for"].fill.fgColor.rgb
