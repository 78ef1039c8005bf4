"""Order proposals: the whole list for purchasing, and for each supplier a workbook to send and have filled in."""

from collections.abc import Iterable, Sequence
from itertools import groupby
from pathlib import Path

from tracker.domain.file_names import file_name
from tracker.domain.needs import Cash, OrderLine
from tracker.domain.own_sheets import REMARKS
from tracker.domain.tables import RECEIPTS, Kind
from tracker.domain.words import natural_key
from tracker.errors import TrackerError
from tracker.export.needs_sheets import late_text
from tracker.office.files import write_all
from tracker.office.writing.sheets import Col, TidySheet, content, tables_book, write_tables
from tracker.words.formats import count, listed, money

NO_SUPPLIER = "no supplier named"
WHOLE = "order list.xlsx"


def write_orders(path: str | Path, lines: Iterable[OrderLine], currency: str, cash: Cash | None = None) -> None:
    """Write the order list for purchasing (.xlsx): all lines by supplier and order-by day, and the money by month."""
    write_tables(path, _order_sheets(lines, currency, cash))


def write_supplier_orders(
    folder: str | Path, lines: Sequence[OrderLine], currency: str, programme: str, cash: Cash | None = None
) -> list[Path]:
    """Write the whole list and one workbook per supplier into the folder (made where missing), all of them or none; gives
    the paths, that of the list first.

    A supplier's sheet has the shape of Receipts: he fills in Quantity and Due, and the copy loads back.
    """
    folder = Path(folder)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise TrackerError(
            "cannot-make-folder", folder=str(folder), why=(error.strerror or str(error)).lower()
        ) from error
    sheets = {WHOLE: _order_sheets(lines, currency, cash)}
    for supplier, of_one in groupby(_ordered(lines), key=lambda line: line.supplier):
        sheets[_file_name(supplier, sheets)] = [_supplier_sheet(list(of_one), supplier, currency, programme)]
    paths = {folder / name: of_one for name, of_one in sheets.items()}
    write_all({path: content(tables_book(of_one), path) for path, of_one in paths.items()}, ".xlsx")
    return list(paths)


def supplier_workbook(lines: Sequence[OrderLine], currency: str, programme: str) -> bytes:
    """The workbook of one supplier, as `write_supplier_orders` writes it."""
    supplier = lines[0].supplier
    sheet = _supplier_sheet(lines, supplier, currency, programme)
    return content(tables_book([sheet]), supplier_file(supplier))


def supplier_file(supplier: str) -> str:
    """`order Rail works.xlsx`: the name of a supplier's workbook."""
    return _file_name(supplier, ())


def _order_sheets(lines: Iterable[OrderLine], currency: str, cash: Cash | None) -> list[TidySheet]:
    listed = _list(_ordered(lines), currency)
    return [listed, _cash(cash, currency)] if cash is not None and cash.months else [listed]


def _ordered(lines: Iterable[OrderLine]) -> list[OrderLine]:
    """By supplier (none last), then order-by day, then part."""
    return sorted(
        lines, key=lambda o: (not o.supplier, natural_key(o.supplier), o.supplier, o.order_by, natural_key(o.part))
    )


def _list(lines: Sequence[OrderLine], currency: str) -> TidySheet:
    columns = [
        Col("Supplier"),
        Col("Order", Kind.IDENTIFIER, about="Number of the line; the supplier's answer carries it back."),
        Col("Order by", Kind.DATE),
        Col("Late"),
        Col("Part", Kind.IDENTIFIER),
        Col("Description"),
        Col("Quantity", Kind.NUMBER),
        Col("Unit"),
        Col("Needed in store by", Kind.DATE),
        Col("Expected", Kind.DATE, about="The day it is needed, or for a late line the day on which it comes if ordered today."),
        Col(f"Price ({currency} per unit)", Kind.NUMBER, digits=2),
        Col(f"Amount ({currency})", Kind.NUMBER, digits=2, total=True),
        Col("Looms touched if late"),
        Col("Looms that fall without it"),
    ]  # fmt: skip
    rows = [
        [o.supplier or NO_SUPPLIER, o.order, o.order_by, late_text(o.late, o.days_late), o.part, o.description, o.quantity,
         o.unit, o.due, o.expected, o.price, o.amount,
         ", ".join(f"{touched.key} by {count(touched.days, 'so-many-days')}" for touched in o.touched),
         listed(o.falls)]
        for o in lines
    ]  # fmt: skip
    late = sum(line.late for line in lines)
    sentences = [
        "Order list",
        f"{count(len(lines), 'so-many-lines')} for {money(sum(line.amount for line in lines), currency)}; {late} late: the "
        "order-by day is past.",
    ]
    marks = {index: "late" for index, line in enumerate(lines) if line.late}
    return TidySheet("Orders", columns, rows, sentences, frozen=2, marks=marks)


def _cash(cash: Cash, currency: str) -> TidySheet:
    peak = cash.peak
    sentences = ["Money by month of delivery"]
    if peak:
        sentences.append(
            f"{money(cash.total, currency)} in all; the most in {peak.month}: {money(peak.total, currency)}."
        )
    columns = [
        Col("Month"),
        *(Col(f"{name} ({currency})", Kind.NUMBER, digits=2, total=True) for name in ("To order", "On order", "Both")),
    ]
    rows = [[month.month, month.proposed, month.on_order, month.total] for month in cash.months]
    return TidySheet("Cash by month", columns, rows, sentences)


def _supplier_sheet(lines: Sequence[OrderLine], supplier: str, currency: str, programme: str) -> TidySheet:
    """No total below the rows: it would read as one line more. No heading but the two to fill in may read as a quantity
    or a day: an amount of money would."""
    quantity, due = RECEIPTS.column("quantity"), RECEIPTS.column("due")
    description, asked_for, asked_by, price, total = REMARKS["receipts"]
    columns = [
        Col(RECEIPTS.column("order").title, Kind.IDENTIFIER),
        Col(RECEIPTS.column("part").title, Kind.IDENTIFIER),
        Col(description),
        Col("Unit"),
        Col(asked_for, Kind.NUMBER),
        Col(asked_by, Kind.DATE),
        Col(f"{price} ({currency} per unit)", Kind.NUMBER, digits=2),
        Col(f"{total} ({currency})", Kind.NUMBER, digits=2),
        Col(quantity.title, Kind.NUMBER, needed=True, about="Please fill in: the quantity you confirm; 0 = none."),
        Col(due.title, Kind.DATE, needed=True, about="Please fill in: the day on which it arrives here."),
        Col(RECEIPTS.column("supplier").title),
    ]
    rows = [
        [o.order, o.part, o.description, o.unit, o.quantity, o.due, o.price, o.amount, None, None, supplier or None]
        for o in lines
    ]
    sentences = [
        f"{programme}: order to {supplier or NO_SUPPLIER}",
        f"{count(len(lines), 'so-many-lines')}, {money(sum(line.amount for line in lines), currency)}.",
        "Please fill in Quantity and Due with what you confirm, leave the other columns as they are, and send the file back.",
    ]
    return TidySheet("Order", columns, rows, sentences, frozen=2)


def _file_name(supplier: str, others: Iterable[str]) -> str:
    """`order Rail works.xlsx`, as a file name can hold it, and free."""
    plain = file_name(supplier or NO_SUPPLIER, "supplier")
    names = (f"order {plain}.xlsx", *(f"order {plain} {i}.xlsx" for i in range(2, 10_000)))
    taken = {name.casefold() for name in others}
    return next(name for name in names if name.casefold() not in taken)
