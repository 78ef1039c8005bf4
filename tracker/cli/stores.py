"""Commands for the store room and purchasing: kits, needs."""

from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.show import Json
from tracker.cli.work import AsOf, Hall, Loom, moment
from tracker.domain.formats import number


def add_commands(app: typer.Typer) -> None:
    app.command()(kits)
    app.command()(needs)


def kits(context: typer.Context, loom: Loom = None, hall: Hall = None, json_to: Json = None) -> None:
    """The kit of every booked loom: short, reserved, complete or issued.

    Example: beamslot kits 007 --hall "Hall 1"
    """
    from tracker.services import kits as service

    report = service.kits(context.obj, loom, hall)
    show.emit(json_to, report.record(), lambda: _print_kits(report))


def _print_kits(report) -> None:
    show.table(
        "Kits by start",
        ["Hall", "Loom", "Start", "Kit", "Lacks"],
        [(k.key.hall, k.key.loom, show.moment(k.start, report.zone), k.state, _lacks(k)) for k in report.kits],
    )
    for line in report.lines():
        show.say(line)


def _lacks(kit) -> str:
    """`2 RAIL-190 (Mon 25 Jan 2027)`: what is missing, and when it comes."""
    return ", ".join(
        f"{number(quantity, digits=2)} {part}" + (f" ({show.day(kit.expected[part])})" if part in kit.expected else "")
        for part, quantity in sorted(kit.short.items())
    )


def needs(
    context: typer.Context,
    as_of: AsOf = None,
    left_over: Annotated[bool, typer.Option(help="Count the looms that the plan leaves over, too.")] = True,
    orders: Annotated[bool, typer.Option("--orders", help="The order list instead of the weeks.")] = False,
    json_to: Json = None,
) -> None:
    """Net needs by week and part, and what to order by when.

    Example: beamslot needs --orders
    """
    from tracker.services.needs import net_needs

    report = net_needs(context.obj, moment(context.obj, as_of), left_over)
    record = report.order_record() if orders else report.record()
    show.emit(json_to, record, lambda: _print_orders(report) if orders else _print_needs(report))


def _print_needs(report) -> None:
    show.table(
        "Net needs by week",
        ["Part", "Week", ">Bookings", ">Left over", ">Receipts", ">On hand at end", ">Order", "Order by"],
        [
            (r.part, r.week, *(number(q, digits=2) for q in (r.gross, r.gross_left_over, r.receipts, r.on_hand_end)),
             number(r.order_quantity, report.units[r.part], 2) if r.order_quantity else "",
             show.day(r.order_by) + (" late" if r.late else ""))
            for r in report.moving
        ],
    )  # fmt: skip
    for line in report.lines():
        show.say(line)


def _print_orders(report) -> None:
    show.table(
        "Order list",
        ["Order by", "Supplier", "Part", ">Quantity", "Due", f">Amount ({report.currency})", "Note"],
        [
            (show.day(o.order_by), o.supplier, o.part, number(o.quantity, o.unit, 2), show.day(o.due),
             show.money(o.amount), f"late by {o.days_late} days, touches {len(o.looms)} looms" if o.late else "")
            for o in report.orders
        ],
    )  # fmt: skip
    for line in report.lines():
        show.say(line)
