"""Commands for the stockroom's book: what came, went out, came back, was counted, is held, and what if."""

from datetime import timedelta
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.commands import Commands
from tracker.cli.options import AsOf, Hall, Json, OneLoom, moment, numbers
from tracker.words.formats import number

if TYPE_CHECKING:
    from tracker.services.parts.stock_entry import Told

Part = Annotated[str, typer.Argument(metavar="PART", help="The part, as the parts list names it.")]
SomePart = Annotated[str | None, typer.Argument(metavar="PART", help="One part; default the whole kit.")]
Quantity = Annotated[float, typer.Argument(metavar="QUANTITY", help="How much, in the part's unit.")]
SomeQuantity = Annotated[
    float | None, typer.Argument(metavar="QUANTITY", help="How much of the part, in its unit; default what is open.")
]
Unit = Annotated[str | None, typer.Option(help="The unit meant; refused where the part is kept in another.")]
Why = Annotated[str, typer.Option(help="The reason, for the book.")]
At = Annotated[str | None, typer.Option(metavar="T", help="When it happened; default now.")]
Who = Annotated[str | None, typer.Option(metavar="NAME", help="Who did it; default the user of this computer.")]

MOST_SLIP_DAYS = 3650

stock = Commands(
    name="stock",
    help="The stockroom's book: receive, issue, count, hold.\n\nExample: beamslot stock receive --order 4100127-10",
    no_args_is_help=True,
    rich_markup_mode=None,
)


def add_commands(app: typer.Typer) -> None:
    app.add_typer(stock)


@stock.command()
def receive(
    context: typer.Context,
    part: Annotated[str | None, typer.Argument(metavar="PART", help="Needed without --order.")] = None,
    quantity: SomeQuantity = None,
    order: Annotated[str | None, typer.Option(help="The order line that it came on; default without one.")] = None,
    last: Annotated[bool, typer.Option("--last", help="The rest of the order line will not come.")] = False,
    unit: Unit = None,
    why: Why = "",
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Book what came in. With --order by default all that is open of the line; without, the reason.

    Example: beamslot stock receive RAIL-N 4 --order 4100127-10
    """
    from tracker.services.parts.stock import receive as run

    _print(run(context.obj.telling(who), part, quantity, order, not last, told=_told(context, why, at, unit)), json_to)


@stock.command()
def issue(
    context: typer.Context,
    loom: OneLoom,
    part: SomePart = None,
    quantity: SomeQuantity = None,
    hall: Hall = None,
    incomplete: Annotated[bool, typer.Option("--incomplete", help="Hand out a kit that is short, too.")] = False,
    unit: Unit = None,
    why: Why = "",
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Hand out a loom's kit as reserved, or one part of it.

    Example: beamslot stock issue 007
    """
    from tracker.services.parts import stock as book

    here, told = context.obj.telling(who), _told(context, why, at, unit)
    done = (
        book.issue(here, loom, part, quantity, hall, told)
        if part is not None
        else book.issue_kit(here, loom, hall, incomplete, told)
    )
    _print(done, json_to)


@stock.command("return")
def give_back(
    context: typer.Context,
    loom: OneLoom,
    part: SomePart = None,
    quantity: Annotated[
        float | None, typer.Argument(metavar="QUANTITY", help="How much of the part; default all that the loom has.")
    ] = None,
    hall: Hall = None,
    unit: Unit = None,
    why: Why = "",
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Take back a kit that was not used, or a part of it. The loom's kit needs it again.

    Example: beamslot stock return 007 --why "rail does not fit"
    """
    from tracker.services.parts.stock import give_back as run

    _print(run(context.obj.telling(who), loom, part, quantity, hall, told=_told(context, why, at, unit)), json_to)


@stock.command()
def scrap(
    context: typer.Context,
    loom: OneLoom,
    part: Part,
    quantity: Quantity,
    why: Annotated[str, typer.Option(help="The reason: broken, cut too short.")],
    hall: Hall = None,
    unit: Unit = None,
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Scrap a part of a loom's kit. Its kit needs it again.

    Example: beamslot stock scrap 007 DEV-L 1 --why "housing broken"
    """
    from tracker.services.parts.stock import scrap as run

    _print(run(context.obj.telling(who), loom, part, quantity, hall, told=_told(context, why, at, unit)), json_to)


@stock.command()
def recover(
    context: typer.Context,
    loom: OneLoom,
    part: SomePart = None,
    quantity: SomeQuantity = None,
    hall: Hall = None,
    why: Why = "",
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Book back what comes back after use. What does, the method says; all of it or one part.

    Example: beamslot stock recover 007
    """
    from tracker.services.parts.stock import recover as run

    _print(run(context.obj.telling(who), loom, hall, part, quantity, told=_told(context, why, at)), json_to)


@stock.command(context_settings={"ignore_unknown_options": True})
def adjust(
    context: typer.Context,
    part: Part,
    quantity: Annotated[float, typer.Argument(metavar="QUANTITY", help="How much more, or less where below 0.")],
    why: Annotated[str, typer.Option(help="The reason: scrapped, found, used elsewhere.")],
    unit: Unit = None,
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Add to a part's stock or take from it, with the reason.

    Example: beamslot stock adjust RAIL-N -1 --why "bent"
    """
    from tracker.services.parts.stock import adjust as run

    _print(run(context.obj.telling(who), part, quantity, _told(context, why, at, unit)), json_to)


@stock.command()
def count(
    context: typer.Context,
    part: Part,
    found: Annotated[float, typer.Argument(metavar="FOUND", help="How much there is, in the part's unit.")],
    unit: Unit = None,
    why: Why = "",
    at: At = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Book a count; the book keeps the difference.

    Example: beamslot stock count RAIL-N 12
    """
    from tracker.services.parts.stock import count as run

    _print(run(context.obj.telling(who), part, found, _told(context, why, at, unit)), json_to)


@stock.command()
def reserve(
    context: typer.Context,
    loom: OneLoom,
    part: SomePart = None,
    quantity: SomeQuantity = None,
    hall: Hall = None,
    safety_stock: Annotated[bool, typer.Option("--safety-stock", help="Take from the safety stock, too.")] = False,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Hold parts for a loom: all that its kit lacks, or one part.

    Example: beamslot stock reserve 007 RAIL-N
    """
    from tracker.services.parts.reservations import reserve as run

    _print(run(context.obj.telling(who), loom, hall, part, quantity, safety_stock), json_to)


@stock.command()
def release(
    context: typer.Context,
    loom: OneLoom,
    part: SomePart = None,
    hall: Hall = None,
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Give up what is held for a loom, of one part or of all.

    Example: beamslot stock release 007
    """
    from tracker.services.parts.reservations import release as run

    _print(run(context.obj.telling(who), loom, hall, part), json_to)


@stock.command()
def take(
    context: typer.Context,
    part: Part,
    giver: Annotated[str, typer.Option("--from", metavar="LOOM", help="The loom whose kit gives it.")],
    taker: Annotated[str, typer.Option("--to", metavar="LOOM", help="The loom that gets it.")],
    quantity: SomeQuantity = None,
    from_hall: Annotated[str | None, typer.Option(help="The hall of the giving loom, where needed.")] = None,
    to_hall: Annotated[str | None, typer.Option(help="The hall of the other, where needed.")] = None,
    why: Why = "",
    who: Who = None,
    json_to: Json = None,
) -> None:
    """Take a part held for one loom for another. The answer says who lacks it now.

    Example: beamslot stock take RAIL-N --from 012 --to 007
    """
    from tracker.services.looms import LoomName
    from tracker.services.parts.reservations import take as run

    giving, taking = LoomName(giver, from_hall), LoomName(taker, to_hall)
    _print(run(context.obj.telling(who), part, giving, taking, quantity, why), json_to)


def _told(context: typer.Context, why: str, at: str | None, unit: str | None = None) -> "Told":
    from tracker.services.parts.stock_entry import Told

    return Told(why, moment(context.obj, at), unit)


def _print(report, json_to: str | None) -> None:
    show.emit(json_to, report.record(), lambda: _print_entry(report))


def _print_entry(report) -> None:
    booked: dict[str, float] = {}
    for movement in report.movements:
        booked[movement.part] = booked.get(movement.part, 0.0) + movement.quantity
    show.table(
        "Stock now",
        ["Part", ">Booked", ">On hand", ">Reserved", ">Free", "Unit"],
        [
            (s.part, _signed(booked[s.part]) if s.part in booked else "", *(_quantity(q) for q in (s.on_hand, s.reserved, s.free)),
             s.unit)
            for s in report.stock
        ],
    )  # fmt: skip
    if report.kits:
        show.table(
            "Kits that this touched",
            ["Hall", "Loom", "Kit", "Lacks"],
            [(k.key.hall, k.key.loom, k.state, _parts(k.short)) for k in report.kits],
        )


def _quantity(value: float) -> str:
    return number(value, digits=3)


def _signed(value: float) -> str:
    return ("+" if value > 0 else "") + _quantity(value)


def _parts(quantities) -> str:
    return ", ".join(f"{_quantity(quantity)} {part}" for part, quantity in sorted(quantities.items()))


@stock.command()
def moves(
    context: typer.Context,
    part: Annotated[str | None, typer.Argument(metavar="PART", help="One part; default all.")] = None,
    json_to: Json = None,
) -> None:
    """Every entry with who, when and why, the newest first.

    Example: beamslot stock moves RAIL-N
    """
    from tracker.services.parts.ledger import ledger

    book = ledger(context.obj, part)
    show.emit(json_to, book.record(), lambda: _print_moves(book))


def _print_moves(book) -> None:
    show.table(
        "Entries, the newest first",
        ["When", "Part", "Entry", ">Quantity", ">On hand after", "?Unit", "Loom", "?Order", "?Who", "?Why", "?Entered"],
        [
            (show.moment(m.at, book.zone), m.part, m.kind.value, _signed(m.quantity), _quantity(line.on_hand),
             book.units.get(m.part, ""), m.key, m.order, m.who, m.why, _entered(m, book.zone))
            for line in reversed(book.lines) for m in (line.movement,)
        ],
    )  # fmt: skip


def _entered(movement, zone) -> str:
    """When it was written down, where that is not when it happened."""
    entered = movement.entered_at
    return "" if entered is None or entered - movement.at < timedelta(minutes=1) else show.moment(entered, zone)


@stock.command("what-if")
def what_if(
    context: typer.Context,
    slip: Annotated[
        list[str] | None, typer.Option(metavar="ORDER=DAYS", help="An order line comes so many days later.")
    ] = None,
    short: Annotated[
        list[str] | None, typer.Option(metavar="ORDER=QUANTITY", help="Only so much of an order line comes.")
    ] = None,
    scrap: Annotated[
        list[str] | None, typer.Option(metavar="PART=QUANTITY", help="So much of a part on hand is lost.")
    ] = None,
    replan: Annotated[bool, typer.Option("--replan", help="The plan that follows, too; nothing is saved.")] = False,
    time_limit: Annotated[float | None, typer.Option(metavar="S", help="With --replan: seconds at most.")] = None,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Which bookings fall if a delivery slips or a part is lost. Several changes count together.

    Example: beamslot stock what-if --slip 4100127-10=14 --replan
    """
    from tracker.domain.needs import Scrap, ShortDelivery, Slip

    changes = [Slip(order, _days(days, order)) for order, days in numbers(slip, "ORDER=DAYS")]
    changes += [ShortDelivery(order, quantity) for order, quantity in numbers(short, "ORDER=QUANTITY")]
    changes += [Scrap(part, quantity) for part, quantity in numbers(scrap, "PART=QUANTITY")]
    if not changes:
        raise typer.BadParameter("say what changes: --slip, --short or --scrap")
    at = moment(context.obj, as_of)
    from tracker.services.plans.what_if import what_if as run

    with show.progress() as progress:
        report = run(context.obj, changes, at, replan, time_limit, progress)
    show.emit(json_to, report.record(), lambda: show.tell(report.messages()))


def _days(value: float, order: str) -> int:
    if value != int(value):
        raise typer.BadParameter(f"{order}: {value:g} is no whole number of days")
    if abs(value) > MOST_SLIP_DAYS:
        raise typer.BadParameter(f"{order}: {value:.0f} days; give at most {MOST_SLIP_DAYS}")
    return int(value)
