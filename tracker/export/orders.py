"""Order proposals: the whole list for purchasing, and for each supplier a workbook to send and have filled in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

from tracker.domain.file_names import file_name
from tracker.domain.needs import Cash, OrderLine
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.errors import TrackerError
from tracker.export.needs_sheets import late_text, touched_text
from tracker.export.wording import Wording
from tracker.office.files import write_all
from tracker.office.writing.sheets import TidySheet, content, tables_book, write_tables


@dataclass(frozen=True, slots=True)
class OrdersOf:
    """Whose orders they are."""

    currency: str
    programme: str = ""
    cash: Cash | None = None
    """The money by month, where it is told."""


def write_orders(path: str | Path, lines: Iterable[OrderLine], of: OrdersOf, language: str = "en") -> None:
    """Write the order list for purchasing (.xlsx): all lines by supplier and order-by day, and the money by month."""
    write_tables(path, _order_sheets(lines, of, Wording(language)))


def write_supplier_orders(
    folder: str | Path, lines: Sequence[OrderLine], of: OrdersOf, language: str = "en"
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
    write = Wording(language)
    sheets = {f"{write.say('book-order-list')}.xlsx": _order_sheets(lines, of, write)}
    for supplier, of_one in groupby(_ordered(lines), key=lambda line: line.supplier):
        sheets[_file_name(supplier, sheets, write)] = [_supplier_sheet(list(of_one), of, write)]
    paths = {folder / name: of_one for name, of_one in sheets.items()}
    write_all({path: content(tables_book(of_one), path) for path, of_one in paths.items()}, ".xlsx")
    return list(paths)


def supplier_workbook(lines: Sequence[OrderLine], of: OrdersOf, language: str = "en") -> bytes:
    """The workbook of one supplier, as `write_supplier_orders` writes it."""
    sheet = _supplier_sheet(lines, of, Wording(language))
    return content(tables_book([sheet]), supplier_file(lines[0].supplier, language))


def supplier_file(supplier: str, language: str = "en") -> str:
    """`order Rail works.xlsx`: the name of a supplier's workbook."""
    return _file_name(supplier, (), Wording(language))


def _order_sheets(lines: Iterable[OrderLine], of: OrdersOf, write: Wording) -> list[TidySheet]:
    listed = _list(_ordered(lines), of.currency, write)
    return [listed, _cash(of.cash, of.currency, write)] if of.cash is not None and of.cash.months else [listed]


def _ordered(lines: Iterable[OrderLine]) -> list[OrderLine]:
    """By supplier (none last), then order-by day, then part."""
    return sorted(
        lines, key=lambda o: (not o.supplier, natural_key(o.supplier), o.supplier, o.order_by, natural_key(o.part))
    )


def _list(lines: Sequence[OrderLine], currency: str, write: Wording) -> TidySheet:
    col, nobody = write.col, write.say("book-no-supplier")
    columns = [
        col("heading-supplier"),
        col("heading-order", Kind.IDENTIFIER, about="hint-order-line"),
        col("col-order-by", Kind.DATE),
        col("col-late"),
        col("heading-part", Kind.IDENTIFIER),
        col("heading-description"),
        col("heading-quantity", Kind.NUMBER),
        col("heading-unit"),
        col("col-needed-in-store", Kind.DATE),
        col("col-expected", Kind.DATE, about="hint-expected"),
        col("heading-price", Kind.NUMBER, unit=write.say("book-per-unit", currency=currency), digits=2),
        col("col-amount", Kind.NUMBER, unit=currency, digits=2, total=True),
        col("col-looms-touched-if-late"),
        col("col-looms-that-fall-without"),
    ]
    rows = [
        [o.supplier or nobody, o.order, o.order_by, late_text(o.late, o.days_late, write), o.part, o.description, o.quantity,
         o.unit, o.due, o.expected, o.price, o.amount, touched_text(o.touched, write), write.listed(o.falls)]
        for o in lines
    ]  # fmt: skip
    late = sum(line.late for line in lines)
    amount = sum(line.amount for line in lines)
    says = write.say(
        "book-orders-about", lines=write.count(len(lines), "so-many-lines"), amount=amount, currency=currency, late=late
    )
    marks = {index: "late" for index, line in enumerate(lines) if line.late}
    return write.sheet("book-orders", columns, rows, [write.say("book-orders-title"), says], frozen=2, marks=marks)


def _cash(cash: Cash, currency: str, write: Wording) -> TidySheet:
    peak = cash.peak
    sentences = [write.say("book-cash-about")]
    if peak:
        sentences.append(
            write.say("book-cash-peak", total=cash.total, month=peak.month, most=peak.total, currency=currency)
        )
    codes = ("col-to-order", "col-on-order", "col-both")
    columns = [
        write.col("col-month"), *(write.col(code, Kind.NUMBER, unit=currency, digits=2, total=True) for code in codes),
    ]  # fmt: skip
    rows = [[month.month, month.proposed, month.on_order, month.total] for month in cash.months]
    return write.sheet("book-cash", columns, rows, sentences)


def _supplier_sheet(lines: Sequence[OrderLine], of: OrdersOf, write: Wording) -> TidySheet:
    """No total below the rows: it would read as one line more. No heading but the two to fill in may read as a quantity
    or a day: an amount of money would."""
    col, supplier, currency = write.col, lines[0].supplier, of.currency
    columns = [
        col("heading-order", Kind.IDENTIFIER),
        col("heading-part", Kind.IDENTIFIER),
        col("heading-description"),
        col("heading-unit"),
        col("remark-asked-for", Kind.NUMBER),
        col("remark-asked-by", Kind.DATE),
        col("heading-price", Kind.NUMBER, unit=write.say("book-per-unit", currency=currency), digits=2),
        col("remark-total-price", Kind.NUMBER, unit=currency, digits=2),
        col("heading-quantity", Kind.NUMBER, needed=True, about="hint-please-quantity"),
        col("heading-due", Kind.DATE, needed=True, about="hint-please-due"),
        col("heading-supplier"),
    ]
    rows = [
        [o.order, o.part, o.description, o.unit, o.quantity, o.due, o.price, o.amount, None, None, supplier or None]
        for o in lines
    ]
    amount = sum(line.amount for line in lines)
    sentences = [
        write.say("book-order-to", programme=of.programme, supplier=supplier or write.say("book-no-supplier")),
        write.say("book-order-sum", lines=write.count(len(lines), "so-many-lines"), amount=amount, currency=currency),
        write.say("book-order-please"),
    ]
    return write.sheet("book-order", columns, rows, sentences, frozen=2)


def _file_name(supplier: str, others: Iterable[str], write: Wording) -> str:
    """`order Rail works.xlsx`, as a file name can hold it, and free."""
    nobody, order = write.say("book-no-supplier"), write.say("book-order-file")
    plain = file_name(supplier or nobody, "supplier")
    names = (f"{order} {plain}.xlsx", *(f"{order} {plain} {i}.xlsx" for i in range(2, 10_000)))
    taken = {name.casefold() for name in others}
    return next(name for name in names if name.casefold() not in taken)
