"""The command for cards."""

from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, checked, moment


def add_commands(app: typer.Typer) -> None:
    app.command()(cards)


def cards(
    context: typer.Context,
    loom: Annotated[
        str | None, typer.Argument(metavar="LOOM", help="One loom by its number; default a whole week.")
    ] = None,
    hall: Hall = None,
    week: Annotated[
        str | None,
        typer.Option(metavar="W", help="The conversions that begin in that week, 2027-W02; default this week."),
    ] = None,
    crew: Annotated[str | None, typer.Option(metavar="CREW", help="Those of one crew.")] = None,
    out: Annotated[Path | None, typer.Option(metavar="F", callback=checked, help="Write the cards: F.pdf, A4.")] = None,
    xlsx: Annotated[
        Path | None, typer.Option(metavar="F", callback=checked, help="Write them as a workbook to fill in: F.xlsx.")
    ] = None,
    notes: Annotated[
        Path | None,
        typer.Option(metavar="F", callback=checked, help="Write a note for the weaver of each loom: F.pdf, A6."),
    ] = None,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Work cards of the published plan.

    Of one loom, or a week's pack for each crew with a page of contents. Without a file to write, a table of the cards.

    Example: beamslot cards --week 2027-W02 --out week.pdf
    """
    if loom is not None and (week or crew):
        raise typer.BadParameter("a loom's card goes without --week and --crew")
    from tracker.services.work import cards as service

    report = service.cards(context.obj, loom, hall, week, crew, moment(context.obj, as_of))
    if out or xlsx or notes:
        service.write_cards(report, out, xlsx, notes, context.obj.language)
    show.emit(json_to, report.record(), lambda: _print(report, [path for path in (out, xlsx, notes) if path]))


def _print(report, written: list[Path]) -> None:
    from tracker.words import Speaker

    zone = report.mill.terms.zone
    show.table(
        "Cards",
        ["Card", "Hall", "Loom", "Start", "End", "Crew", "?Kit lacks"],
        [
            (card.number, card.key.hall, card.key.loom, show.moment(card.booking.start, zone),
             show.moment(card.booking.end, zone), card.booking.crew_names,
             ", ".join(part.part for part in card.parts if part.short))
            for card in report.cards
        ],
        most=200,
    )  # fmt: skip
    for message in report.messages():
        show.say(Speaker("en", zone).line(message))
    if written:
        show.say(f"Wrote {', '.join(map(str, written))}.")
