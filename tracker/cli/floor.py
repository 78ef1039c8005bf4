"""Commands for where it stands: status, absent, serve."""

from contextlib import nullcontext
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Json, checked, moment
from tracker.cli.planning import proof_lines
from tracker.words.choosing import SPOKEN
from tracker.words.formats import count, span


def add_commands(app: typer.Typer) -> None:
    app.command()(status)
    app.command()(absent)
    app.command()(serve)


def status(
    context: typer.Context,
    as_of: AsOf = None,
    pdf: Annotated[
        Path | None, typer.Option(metavar="F.pdf", callback=checked, help="Write the one-page report of a week.")
    ] = None,
    week: Annotated[
        str | None, typer.Option(metavar="W", help="With --pdf: the week, 2027-W02; default this one.")
    ] = None,
    language: Annotated[str, typer.Option(metavar="L", help="With --pdf: its language, en or de.")] = "en",
    json_to: Json = None,
) -> None:
    """The programme on one page.

    Looms by stage, finish, cost, what comes next. The report of a week is for who pays: of a week that is over it tells how
    it stood at its end.

    Example: beamslot status --pdf week.pdf --week 2027-W07
    """
    if language not in SPOKEN:
        raise typer.BadParameter(f"{language!r} is none of {', '.join(SPOKEN)}")
    if pdf is None and (week or language != "en"):
        raise typer.BadParameter("--week and --language go with --pdf")
    if pdf and as_of:
        raise typer.BadParameter("--pdf is of a week, not --as-of a moment")
    from tracker.services.screens.status import status as run

    report = run(context.obj, moment(context.obj, as_of))
    if pdf:
        from tracker.services.screens.week_page import week_report, write_week

        write_week(pdf, week_report(context.obj, week), language)
    show.emit(json_to, report.record(), lambda: show.say(f"Wrote {pdf}.") if pdf else _print_status(report))


def _print_status(report) -> None:
    from tracker.words import ENGLISH

    zone = report.zone
    show.say(f"{report.programme}, as of {show.moment(report.as_of, zone)}: {count(report.looms, 'so-many-looms')}")
    show.table("Looms by stage", ["Stage", ">Looms"], [(s, n) for s, n in report.stages.items() if n])
    show.late(report.late, zone)
    show.tell([report.finish_says])
    if report.plan is None:
        return
    show.say(ENGLISH.say(report.pace_says))
    if report.rehearsal_says:
        show.say(ENGLISH.say(report.rehearsal_says))
    show.table(
        "Looms done by the end of each week", ["Week", ">Planned", ">Done", ">Expected"],
        [(w.week, w.planned_total, w.done_total, w.expected_total) for w in report.weeks],
    )  # fmt: skip
    planned, expected = report.planned_cost, report.expected_cost
    terms = (("lost production", "lost_production"), ("late beam-outs", "late_beam_out"), ("labour", "labour"),
             ("parts", "parts"), ("saving foregone", "saving_foregone"), ("moves", "moves"), ("all", "total"))  # fmt: skip
    show.table(f"Cost ({report.currency})", ["Term", ">Planned", ">Expected"],
               [(name, *(show.money(getattr(cost, term)) for cost in (planned, expected))) for name, term in terms])  # fmt: skip
    if report.reference_says:
        show.say(ENGLISH.say(report.reference_says))
    labour = show.money(report.labour_recorded_cost, report.currency)
    show.say(
        f"So far: parts issued {show.money(report.parts_issued_cost, report.currency)}, recorded labour "
        f"{report.labour_recorded_h:.1f} person-hours ({labour})."
        + (f" {ENGLISH.say(report.untimed_says)}" if report.untimed_says else "")
    )
    show.table(
        f"Parts and labour by month ({report.currency})", ["Month", ">Planned", ">Spent", ">Still on order"],
        [(m.month, *(show.money(amount) for amount in (m.planned, m.spent, m.committed))) for m in report.months],
    )  # fmt: skip
    show.table("Next seven days", ["Hall", "Loom", "Start to end", "Window", "Kit"],
               [(b.key.hall, b.key.loom, span(b.start, b.end, zone), b.kind.value, report.kit_of(b.key))
                for b in report.next_bookings])  # fmt: skip
    for line in proof_lines(report.plan):
        show.say(line)


def absent(
    context: typer.Context,
    crew: Annotated[str, typer.Argument(metavar="CREW", help="The crew, as the sheet Crews names it.")],
    first: Annotated[str | None, typer.Option("--from", metavar="DAY", help="The first day away.")] = None,
    last: Annotated[
        str | None, typer.Option("--to", metavar="DAY", help="The last day away; default the first.")
    ] = None,
    heads: Annotated[int | None, typer.Option(min=1, help="How many are away; default all.")] = None,
    reason: Annotated[str | None, typer.Option(help="Why.")] = None,
    back: Annotated[
        str | None,
        typer.Option(
            metavar="DAY", help="Instead: they are back on this day; on its first day an absence is taken back."
        ),
    ] = None,
    json_to: Json = None,
) -> None:
    """Record who is away, or is back sooner.

    Whole days; who was never away is back on the first of them. The next plan takes it into account.

    Example: beamslot absent "Fitters 1" --from 2027-02-01 --to 2027-02-05 --heads 1 --reason ill
    """
    if (first is None) == (back is None) or (back and (last or heads or reason)):
        raise typer.BadParameter("give --from DAY, or --back DAY by itself")
    from tracker.services.people.absences import end_absence, record_absence
    from tracker.words import ENGLISH

    if back:
        done = end_absence(context.obj, crew, _day("--back", back))
    else:
        begin = _day("--from", str(first))
        done = record_absence(context.obj, crew, begin, _day("--to", last) if last else begin, heads, reason)
    show.emit(json_to, done.record(), lambda: show.say(ENGLISH.line(done.message)))


def _day(option: str, text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise typer.BadParameter(f"{option} {text!r} is no day; write it as 2027-02-01") from None


def serve(
    context: typer.Context,
    port: Annotated[int, typer.Option(help="The port on this machine.")] = 8501,
    open_browser: Annotated[bool, typer.Option("--open", help="Open the browser, too.")] = False,
    new: Annotated[bool, typer.Option("--new", help="Make the database, empty, if it is not there.")] = False,
    share: Annotated[bool, typer.Option("--share", help="Serve in the mill's network, to who has an account.")] = False,
    name: Annotated[
        list[str] | None,
        typer.Option(metavar="HOST", help="A name under which browsers may ask, beside those of this machine."),
    ] = None,
    certificate: Annotated[
        Path | None, typer.Option(metavar="FILE", help="With --key: the certificate (PEM), so that nobody listens in.")
    ] = None,
    key: Annotated[Path | None, typer.Option(metavar="FILE", help="The key of the certificate (PEM).")] = None,
    behind_proxy: Annotated[
        str | None, typer.Option(metavar="ADDRESS", help="The address of a proxy that does the encryption.")
    ] = None,
    plain: Annotated[bool, typer.Option("--plain", help="With --share: unprotected in the network.")] = False,
    provider: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Settings of the mill's identity provider (TOML), the other way to sign in."),
    ] = None,
    backup_to: Annotated[
        Path | None, typer.Option(metavar="FOLDER", help="Back up into this folder every night, at 2 in the mill.")
    ] = None,
    keep: Annotated[int, typer.Option(metavar="N", min=1, help="With --backup-to: keep the newest N of them.")] = 14,
) -> None:
    """Show the dashboards in a browser.

    From this machine only (127.0.0.1), unless shared. Ctrl-C ends them. A new mill starts with --new and the screen Load. Once
    somebody has an account (`beamslot people`), they ask everybody to sign in.

    Example: beamslot serve --open
    """
    from tracker.server.nightly import nightly
    from tracker.server.provider_settings import read_settings
    from tracker.server.reach import reach
    from tracker.server.serve import serve as run
    from tracker.services.backups import BackupFolder

    within = reach(share, tuple(name or ()), certificate, key, behind_proxy, plain)
    if provider:
        within = replace(within, provider=read_settings(provider))
    told = lambda url: show.say(f"The dashboards: {url} (Ctrl-C ends them)")  # noqa: E731
    with nightly(context.obj, BackupFolder(backup_to, keep)) if backup_to else nullcontext():
        run(context.obj.database, port, open_browser, told, new, within)
