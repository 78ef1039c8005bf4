"""Commands for the stockroom and purchasing: kits, needs."""

from datetime import datetime
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, Loom, checked, local_day, moment
from tracker.errors import DataError
from tracker.words.formats import count, number

if TYPE_CHECKING:
    from tracker.services.context import Context


def add_commands(app: typer.Typer) -> None:
    app.command()(kits)
    app.command()(needs)


def kits(
    context: typer.Context,
    loom: Loom = None,
    hall: Hall = None,
    pick: Annotated[
        Path | None,
        typer.Option(metavar="F", callback=checked, help="Write the pick list of some days: F.pdf or F.xlsx."),
    ] = None,
    day: Annotated[
        str | None, typer.Option(metavar="D", help="With --pick: the first day, 2027-01-04; default today.")
    ] = None,
    days: Annotated[int, typer.Option(metavar="N", min=1, max=366, help="With --pick: how many days.")] = 1,
    choices: Annotated[
        bool, typer.Option("--choices", help="What the plan took where the method gives a choice, and its price.")
    ] = False,
    json_to: Json = None,
) -> None:
    """The kit of every booked loom, and what it lacks.

    A kit is short, reserved (what lacks is on order and due in time), complete or issued.

    Example: beamslot kits --pick picks.pdf --day 2027-01-11 --days 5
    """
    if pick:
        _pick(context.obj, pick, day, days, json_to)
    elif choices:
        _choices(context.obj, json_to)
    else:
        from tracker.services.parts import kits as service

        report = service.kits(context.obj, loom, hall)
        show.emit(json_to, report.record(), lambda: _print_kits(report))


def _pick(here: "Context", target: Path, day: str | None, days: int, json_to: str | None) -> None:
    first = local_day(day)
    from tracker.services.parts.purchasing import pick_file

    report = pick_file(here, target, first, days)
    show.emit(json_to, report.record(), lambda: _print_picks(report, target))


def _print_picks(report, target: Path) -> None:
    show.tell(report.messages())
    show.say(f"Wrote {target}.")


def _choices(here: "Context", json_to: str | None) -> None:
    from tracker.services.parts.kits import prices_of_choices

    report = prices_of_choices(here)
    show.emit(json_to, report.record(), lambda: _print_choices(report))


def _print_choices(report) -> None:
    show.table(
        f"What the other choice would have cost beyond the one taken ({report.currency}; + dearer)",
        ["Hall", "Loom", "Taken", "Instead", ">Parts", ">Labour", "?>On loom (min)", ">In all, at its best date"],
        [
            (p.key.hall, p.key.loom, _named(p.taken), _named(p.other), _signed(p.parts), _signed(p.labour),
             _signed(p.on_loom_min), "no such date" if p.extra_cost is None else _signed(p.extra_cost))
            for p in report.prices
        ],
    )  # fmt: skip
    show.tell(report.messages())


def _named(choices) -> str:
    return ", ".join(alternative for _, alternative in choices)


def _signed(value: float) -> str:
    return "0" if round(value) == 0 else f"{value:+,.0f}"


def _print_kits(report) -> None:
    show.table(
        "Kits by start",
        ["Hall", "Loom", "Start", "Kit", "Lacks"],
        [(k.key.hall, k.key.loom, show.moment(k.start, report.zone), k.state, _lacks(k)) for k in report.kits],
    )
    show.tell(report.messages())


def _lacks(kit) -> str:
    """`2 RAIL-190 (due Mon 25 Jan 2027)`: what is missing, and when it comes."""
    return ", ".join(
        f"{number(quantity, digits=2)} {part}" + (f" (due {show.day(kit.expected[part])})" if part in kit.expected else "")
        for part, quantity in sorted(kit.short.items())
    )  # fmt: skip


def needs(
    context: typer.Context,
    part: Annotated[
        str | None, typer.Argument(metavar="PART", help="One part, week by week; default all, a line each.")
    ] = None,
    as_of: AsOf = None,
    left_over: Annotated[bool, typer.Option(help="Count the looms that the plan leaves over, too.")] = True,
    orders: Annotated[bool, typer.Option("--orders", help="The order list instead of the weeks.")] = False,
    out: Annotated[
        Path | None,
        typer.Option(
            metavar="F.xlsx", callback=checked, help="With --orders: write the order list, with the money by month."
        ),
    ] = None,
    send: Annotated[
        Path | None,
        typer.Option(
            metavar="FOLDER", help="Write a workbook for each supplier to fill in; it loads back as receipts."
        ),
    ] = None,
    json_to: Json = None,
) -> None:
    """Net needs by week and part, and what to order by when.

    Example: beamslot needs --orders --out orders.xlsx
    """
    if out and (send or not orders):
        raise typer.BadParameter("--out goes with --orders; --send writes the whole list, too")
    if part is not None and (send or orders):
        raise typer.BadParameter("PART shows the weeks of one part; the order list is of all parts")
    report, written = _needs(context.obj, moment(context.obj, as_of), left_over, out, send)
    listed = orders or send is not None
    if part is not None and part not in report.units:
        raise DataError("part-unknown", part=part)
    weeks = [week for week in report.record() if part in (None, week["part"])]
    record = report.order_record() if listed else weeks
    show.emit(json_to, record, lambda: _print_orders(report) if listed else _print_needs(report, part))
    if written and json_to != "-":
        show.say(f"Wrote {', '.join(map(str, written))}.")


def _needs(here: "Context", at: datetime | None, left_over: bool, out: Path | None, send: Path | None):
    """The needs, and the files that were written of them."""
    from tracker.services.parts import purchasing
    from tracker.services.parts.needs import net_needs

    if send:
        files = purchasing.order_files(here, send, at, left_over)
        return files.needs, [files.whole, *files.suppliers]
    if out:
        return purchasing.order_list(here, out, at, left_over), [out]
    return net_needs(here, at, left_over), []


def _print_needs(report, part: str | None) -> None:
    if part is None:
        _print_parts(report)
    else:
        _print_weeks(report, part)
    show.tell(report.messages())


def _print_parts(report) -> None:
    """A line for each part: what matters of its weeks."""
    weeks = {part: list(of) for part, of in groupby(report.weeks, key=lambda week: week.part)}
    lowest = {part: min(of, key=lambda week: week.on_hand_end) for part, of in weeks.items()}
    show.table(
        "Parts: what to order, and the least that is on hand at the end of a week, orders counted as received",
        ["Part", ">Order", "Order by", "Late", ">Least on hand", "Week", ">Bookings", "?>Left over", "?>Receipts"],
        [
            (part, number(total, report.units[part], 2) if (total := sum(week.order_quantity for week in of)) else "",
             show.day(min((week.order_by for week in of if week.order_by), default=None)),
             _late(max(week.days_late for week in of)),
             number(lowest[part].on_hand_end, report.units[part], 2), lowest[part].week,
             *(number(sum(getattr(week, name) for week in of), digits=2) for name in ("gross", "gross_left_over", "receipts")))
            for part, of in weeks.items()
        ],
        most=200,
    )  # fmt: skip


def _late(days: int) -> str:
    return count(days, "so-many-days") if days else ""


def _print_weeks(report, part: str) -> None:
    unit = f" ({report.units[part]})" if report.units[part] else ""
    show.table(
        f"Needs of {part} by week{unit}",
        ["Week", ">Bookings", ">Left over", ">Receipts", ">On hand at end", ">Order", "Order by", "Late"],
        [
            (week.week, *(number(q, digits=2) for q in (week.gross, week.gross_left_over, week.receipts, week.on_hand_end)),
             number(week.order_quantity, digits=2) if week.order_quantity else "", show.day(week.order_by), _late(week.days_late))
            for week in report.weeks if week.part == part
        ],
        most=200,
    )  # fmt: skip


def _print_orders(report) -> None:
    show.table(
        "Order list",
        ["Order by", "Supplier", "Part", ">Quantity", "Needed in store by", f"?>Amount ({report.currency})", "Late", "?Order"],
        [
            (show.day(o.order_by), o.supplier or "none named", o.part, number(o.quantity, o.unit, 2), show.day(o.due),
             show.money(o.amount), f"{_late(o.days_late)}, {count(len(o.looms), 'so-many-looms')}" if o.late else "", o.order)
            for o in report.orders
        ],
    )  # fmt: skip
    show.tell(report.messages())
