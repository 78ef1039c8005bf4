"""The files that purchasing and the stockroom work with: order lists to send, and pick lists."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from tracker.domain.needs import OrderLine
from tracker.export.orders import OrdersOf, supplier_file, supplier_workbook, write_orders, write_supplier_orders
from tracker.export.picks import write_picks
from tracker.services.context import Context
from tracker.services.parts.kits import PickReport, pick_list
from tracker.services.parts.needs import NeedsReport, net_needs


@dataclass(frozen=True, slots=True)
class OrderFiles:
    needs: NeedsReport
    whole: Path
    """The list for purchasing, with the money by month."""
    suppliers: tuple[Path, ...]
    """A workbook for each supplier, to send; filled in, it loads as receipts."""


def order_files(
    context: Context,
    folder: Path,
    as_of: datetime | None = None,
    left_over: bool = True,
    left_over_on: date | None = None,
) -> OrderFiles:
    """Write the order list and a workbook for each supplier into `folder` (made where missing)."""
    report = net_needs(context, as_of, left_over, left_over_on)
    with context.reading() as uow:
        of = OrdersOf(report.currency, uow.terms().programme, report.cash)
    whole, *suppliers = write_supplier_orders(folder, report.orders, of, context.language)
    return OrderFiles(report, whole, tuple(suppliers))


def order_workbook(context: Context, lines: Sequence[OrderLine]) -> bytes:
    """A workbook of lines of one supplier to send, for a download; filled in, it loads as receipts."""
    with context.reading() as uow:
        terms = uow.terms()
    return supplier_workbook(lines, OrdersOf(terms.currency, terms.programme), context.language)


def order_file_name(supplier: str, language: str = "en") -> str:
    """`order Rail works.xlsx`."""
    return supplier_file(supplier, language)


def order_list(
    context: Context,
    target: Path,
    as_of: datetime | None = None,
    left_over: bool = True,
    left_over_on: date | None = None,
) -> NeedsReport:
    """Write the order list alone (.xlsx), with the money by month."""
    report = net_needs(context, as_of, left_over, left_over_on)
    write_orders(target, report.orders, OrdersOf(report.currency, cash=report.cash), context.language)
    return report


def pick_file(
    context: Context, target: Path, first: date | None = None, days: int = 1, as_of: datetime | None = None
) -> PickReport:
    """Write the pick list of `days` local days from `first` (default: the day of `as_of`) as .xlsx or .pdf."""
    report = pick_list(context, first, days, as_of)
    with context.reading() as uow:
        write_picks(target, report.picks, uow.mill(), context.language)
    return report
