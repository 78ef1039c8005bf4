"""The command `worth`: what the conversions are worth by what was counted and measured, beside what was claimed."""

from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Json, checked, moment
from tracker.errors import UsageError


def add_commands(app: typer.Typer) -> None:
    app.command()(worth)


def worth(
    context: typer.Context,
    cause: Annotated[str | None, typer.Option(help="Stops of one cause only; default all and each.")] = None,
    article: Annotated[str | None, typer.Option(help="Only what was woven of this article.")] = None,
    first: Annotated[
        str | None, typer.Option("--from", metavar="T", help="Only periods that begin at this moment or later.")
    ] = None,
    last: Annotated[
        str | None, typer.Option("--to", metavar="T", help="Only periods that end at this moment or before.")
    ] = None,
    looms: Annotated[bool, typer.Option("--looms", help="Also each loom by itself, before and after.")] = False,
    out: Annotated[
        Path | None, typer.Option("--out", metavar="F.pdf", callback=checked, help="Write a report of two pages.")
    ] = None,
    take: Annotated[
        bool, typer.Option("--take-over", help="Plan by the measured saving from now on: a recorded change of terms.")
    ] = False,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Say whether it was worth it: stops, waste width, efficiency.

    Converted looms against what the same weeks would have been without it, as looms not yet converted show it; what that saves
    a month, beside what was claimed. It needs the sheets Stops and Waste week by week, of all looms.

    Example: beamslot worth --cause weft
    """
    from tracker.services.work.worth import worth as run
    from tracker.services.work.worth_record import worth_record
    from tracker.services.work.worth_says import beside, savings_messages, verdicts

    here = context.obj
    if take:
        _take_over(here, any((cause, article, first, last, as_of, looms, out)), json_to)
        return
    report = run(here, cause, article, moment(here, first), moment(here, last), moment(here, as_of))

    if out:
        from tracker.services.work.worth_report import write_report

        write_report(out, report, here.language)

    def person() -> None:
        zone = report.terms.zone
        show.tell(verdicts(report), zone)
        _print_beside(report)
        if looms:
            _print_looms(report)
        show.tell(beside(report), zone)
        show.tell(savings_messages(report), zone)
        if out:
            show.say(f"Wrote {out}.")

    show.emit(json_to, worth_record(report), person)


def _take_over(here, narrowed: bool, json_to: str | None) -> None:
    from tracker.services.work.taking_over import take_over

    if narrowed:
        raise UsageError("worth-take-over-whole")
    taken = take_over(here)
    show.emit(json_to, taken.record(), lambda: show.tell([taken.message]))


def _print_beside(report) -> None:
    """The other two answers and the plain figures, which give no verdict."""
    from tracker.services.work.worth_says import changes_of
    from tracker.words import ENGLISH

    rows = [[ENGLISH.say(cell) if cell else "" for cell in changes_of(measure)] for measure in report.measures]
    columns = ["Figure", "Against the same weeks", "Loom by loom, without the season", "Plain before and after"]
    show.table("Change with its 95 % interval", columns, rows)


def _print_looms(report) -> None:
    """The looms on the first figure asked for, each with its own article."""
    from tracker.services.work.worth_says import loom_change, loom_figures, what_of
    from tracker.words import ENGLISH

    for measure in report.measures[:1]:
        rows = [
            (one.key.hall, one.key.loom, one.article, *loom_figures(measure, one), ENGLISH.say(loom_change(measure, one)),
             f"{one.picks_needed / 1e6:,.1f}" if one.picks_needed is not None else "")
            for one in measure.looms
        ]  # fmt: skip
        columns = ["Hall", "Loom", "Article", ">Before", ">After", "Change", ">Million picks needed"]
        show.table(f"Loom by loom, {ENGLISH.say(what_of(measure))}", columns, rows)
