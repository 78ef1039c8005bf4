"""Commands for order lines that were placed: `stock order`, `stock expect`."""

from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json, local_day
from tracker.cli.stock import Part, Quantity, Who, Why, stock


def add_commands(app: typer.Typer) -> None:
    """To those of the stockroom."""
    stock.command()(order)
    stock.command()(expect)


def order(
    context: typer.Context,
    order: Annotated[str, typer.Argument(metavar="ORDER", help="The number of the order and of its line.")],
    part: Part,
    quantity: Quantity,
    due: Annotated[str, typer.Option(metavar="D", help="When it comes, as the supplier says: 2027-03-01.")],
    supplier: Annotated[str | None, typer.Option(help="Default that of the part.")] = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Enter an order line that was placed.

    It is expected from now on, and what it brings is not proposed again.

    Example: beamslot stock order 4500123-10 RAIL-N 8 --due 2027-03-01
    """
    day = local_day(due)
    from tracker.services.parts.ordering import Ordered, place

    assert day
    _print_lines(place(context.obj.telling(who), [Ordered(order, part, quantity, day, supplier)]), json_to)


def expect(
    context: typer.Context,
    order: Annotated[str, typer.Argument(metavar="ORDER", help="The number of an open order line.")],
    part: Annotated[str | None, typer.Argument(metavar="PART", help="Needed where several have the number.")] = None,
    due: Annotated[str | None, typer.Option(metavar="D", help="The day on which it comes now.")] = None,
    quantity: Annotated[
        float | None, typer.Option(metavar="N", help="How much of it still comes; 0 = nothing more.")
    ] = None,
    why: Why = "",
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Say anew when an open order line comes, or how much of it.

    Example: beamslot stock expect 4500123-10 --due 2027-03-08 --why "the supplier wrote"
    """
    day = local_day(due)
    from tracker.services.parts.ordering import expect as run

    _print_lines(run(context.obj.telling(who), order, part, day, quantity, why), json_to)


def _print_lines(report, json_to: str | None) -> None:
    show.emit(json_to, report.record(), lambda: show.tell(report.messages()))
