"""What a load of parts and order lines may not say, each with its cell."""

from datetime import UTC, date, datetime

import pytest

from tracker.domain.mill import Part, Receipt
from tracker.domain.rows import SourceColumn, SourceTable, TypedRow
from tracker.domain.stock import Movement, MovementKind
from tracker.kits.refusals import stock_findings
from tracker.words.findings import in_words

FIELDS = ("order", "part", "quantity", "due", "unit")
COLUMNS = tuple(SourceColumn(name.title(), f"{letter}3", name) for letter, name in zip("BCDEF", FIELDS, strict=True))
RECEIPTS = SourceTable("orders.xlsx", "Open", "receipts", 3, COLUMNS)
PART_COLUMNS = (SourceColumn("Part", "A1", "part"), SourceColumn("Unit", "B1", "unit"))
PARTS = SourceTable("orders.xlsx", "Parts", "parts", 1, PART_COLUMNS)
STORED = {"RAIL": Part("RAIL", 4, unit="pc"), "CABLE": Part("CABLE", 10, unit="m")}
LINE = Receipt("PO-1", "RAIL", 3, date(2027, 1, 25))
CAME = Movement("RAIL", MovementKind.RECEIPT, 5, datetime(2027, 1, 20, tzinfo=UTC), "store", order="PO-1")


def line(order="PO-2", part="RAIL", quantity=1.0, unit=None, number=4):
    values = {"order": order, "part": part, "quantity": quantity, "due": date(2027, 2, 1), "unit": unit}
    return TypedRow("receipts", values, number=number)


def part(name, unit, number=2):
    return TypedRow("parts", {"part": name, "unit": unit, "on_hand": 1.0}, source=1, number=number)


def found(*rows):
    findings = stock_findings(rows, (RECEIPTS, PARTS), STORED, (LINE,), (CAME,))
    return [(finding.code, finding.sheet, finding.cell, finding.raw) for finding in findings]


@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        ([line()], []),
        ([line(part="BOLT", number=9)], [("part-not-listed", "Open", "C9", "BOLT")]),
        ([line(part="BOLT"), part("BOLT", "pc")], []),
        ([line(unit="box")], [("unit-mismatch", "Open", "F4", "box")]),
        ([line(unit="PC ")], []),
        ([line(part="CABLE", unit="pc")], [("unit-mismatch", "Open", "F4", "pc")]),
        ([line(), line(part="CABLE", number=5)], [("order-line-twice", "Open", "B5", "PO-2")]),
        ([line(order="PO-1", part="CABLE")], [("order-line-twice", "Open", "B4", "PO-1")]),
        ([line(order="PO-1", quantity=3)], []),  # what is still open, said again
        ([line(order="PO-1", quantity=8)], [("received-already", "Open", "D4", "8")]),
        ([part("RAIL", "box")], [("unit-mismatch", "Parts", "B2", "box")]),
        ([part("CABLE", "km")], []),  # no stock entry yet
        ([part("NEW", "pc")], []),
    ],
)
def test_rows_and_their_refusals(rows, expected):
    assert found(*rows) == expected


def test_a_message_says_what_is_known_and_what_to_do():
    (finding,) = stock_findings([line(order="PO-1", quantity=8.0)], (RECEIPTS, PARTS), STORED, (LINE,), (CAME,))
    said = in_words(finding)
    assert said.message == "Order line PO-1: 5 of part RAIL were received and 3 are open; 8 would count them twice."
    assert said.hint == "Give what is still open, or a new line number for what comes beside it."


def test_cells_of_a_transposed_sheet():
    table = SourceTable("f.xlsx", "S", "receipts", 1, (SourceColumn("Order", "A7", "order"),), transposed=True)
    assert (table.cell_of("order", 28), table.cell_of("due", 28)) == ("AB7", "")
