"""Commands for what comes in and goes out: demo, load, template, export."""

from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json, checked, pairs
from tracker.errors import NotTold
from tracker.words.formats import count

if TYPE_CHECKING:
    from tracker.services.context import Context


def add_commands(app: typer.Typer) -> None:
    app.command()(demo)
    app.command()(load)
    app.command()(template)
    app.command()(export)


def demo(
    directory: Annotated[Path, typer.Option("--dir", help="Folder for the database and the files.")] = Path("."),
    json_to: Json = None,
) -> None:
    """Run the whole job on the invented sample mill.

    Load, scope, forecast, plan, verify, kits, needs, export.

    Example: beamslot demo --dir beamslot-demo
    """
    from tracker.services.demo import run_demo

    with show.progress() as progress:
        report = run_demo(directory, progress)
    show.emit(json_to, report.record(), lambda: show.tell(report.messages()))


def load(
    context: typer.Context,
    files: Annotated[
        list[Path] | None, typer.Argument(metavar="FILE...", help="Spreadsheets: xlsx, xls, ods, csv.")
    ] = None,
    dry_run: Annotated[bool, typer.Option("--dry-run", help="Say what would change and write nothing.")] = False,
    partial: Annotated[bool, typer.Option("--partial", help="Leave refused rows out and load the rest.")] = False,
    answer: Annotated[
        list[str] | None,
        typer.Option("--answer", metavar="HEADING=ANSWER", help="Settle a doubt: a unit, an order, a field, ignore."),
    ] = None,
    marked: Annotated[
        Path | None,
        typer.Option("--marked", metavar="F", help="Write a copy of each file that has findings, its cells marked."),
    ] = None,
    replaces: Annotated[
        list[str] | None,
        typer.Option(
            "--replaces",
            metavar="SHEET",
            help="Warps, Standing, Absences, Overtime or Receipts: the whole list; rows that are gone have ended.",
        ),
    ] = None,
    origin: Annotated[
        tuple[str, str] | None,
        typer.Option("--origin", metavar="LOOM FIELD", help="Say where a loom's value came from; loads nothing."),
    ] = None,
    hall: Annotated[
        str | None, typer.Option(help="With --origin: the hall, where the number stands in several.")
    ] = None,
    json_to: Json = None,
) -> None:
    """Read the mill's spreadsheets into the database.

    All of them are one load: all of it is written, or nothing and the reasons are told.

    Example: beamslot load looms.xlsx --answer "Reed width=inch"
    """
    if origin:
        _print_origins(context.obj, *origin, hall, json_to)
        return
    if not files:
        raise typer.BadParameter("name at least one spreadsheet")
    from tracker.services.loading.load import LoadRequest
    from tracker.services.loading.load import load as run

    settled = dict(pairs(answer, "HEADING=ANSWER"))
    request = LoadRequest(dry_run, partial, settled, marked, replaces=replaces or ())
    with show.progress() as progress:
        report = run(context.obj, files, request, progress, None if json_to == "-" else _show_before)
    tell_load(report, json_to)


def tell_load(report, json_to: str | None) -> None:
    """Tell what a load did; a refused one ends the command."""
    if not report.written and json_to != "-":
        _print_mapping(report)
    show.emit(json_to, report.record(), lambda: _print_load(report))
    if report.refusal:
        from tracker.words.findings import refusal_line

        said = refusal_line(report.refusal, report.quoted)
        show.err.print(f"beamslot: {said}", soft_wrap=True, markup=False)
        raise typer.Exit(1)


def _print_origins(here: "Context", loom: str, field: str, hall: str | None, json_to: str | None) -> None:
    from tracker.services.loading.origins import origins

    found = origins(here, loom, field, hall)
    columns = ["When", "?Who", "File", "Sheet", "Cell", "Before", "After"]
    columns += ["Comment"] if any(o.comment for o in found) else []
    rows = [
        (show.moment(o.at, o.zone), o.who, o.file, o.sheet, o.cell, o.old, o.new, o.comment)[: len(columns)]
        for o in found
    ]
    show.emit(json_to, [o.record() for o in found], lambda: show.table(f"{field} of loom {loom}", columns, rows))


def _show_before(report) -> None:
    """Show what would be written. Where nobody can be told the load goes on; what is told after it says so."""
    with suppress(OSError, NotTold):
        _print_mapping(report)


def _print_mapping(report) -> None:
    show.tell(report.mapping())


def _print_load(report) -> None:
    from tracker.domain.tables import TABLES
    from tracker.words.findings import in_words

    show.table(
        "Tables read" if report.written else "Tables read; nothing was written",
        ["File", "Sheet", "Table", ">Added", ">Changed", ">Unchanged", ">Refused", ">Passed over"],
        [
            (t.source.file, t.source.sheet, TABLES[t.source.table].sheet, t.rows.added, t.rows.changed, t.rows.unchanged,
             t.rows.refused, t.rows.ignored)
            for t in report.tables
        ],
    )  # fmt: skip
    listed = report.listed
    for finding in listed[: show.MOST_ROWS]:
        show.say(in_words(finding).line())
    if len(listed) > show.MOST_ROWS:
        show.say(f"… and {len(listed) - show.MOST_ROWS} more findings; all of them with --json FILE or --marked F")
    show.tell(report.messages())


def template(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(metavar="F", callback=checked, help="The workbook to write (.xlsx).")],
    scenario: Annotated[
        bool, typer.Option("--scenario", help="A scenario file (.toml) with every entry instead of the workbook.")
    ] = False,
) -> None:
    """Write an empty workbook, or a scenario file.

    The workbook has every sheet with its headings, notes and drop-downs, the scenario file every entry and what it may hold.

    Example: beamslot template our-mill.xlsx
    """
    if scenario:
        from tracker.services.plans.scenario_template import write_scenario_template

        write_scenario_template(target)
        show.say(f"Wrote {target}. Take the # off the lines that you want, then: beamslot plan --scenario {target}")
        return
    from tracker.services.loading.export import template as run

    run(target, context.obj.language)
    show.say(f"Wrote {target}. Fill in what you have, leave out what you have not, then: beamslot load {target}")


def export(
    context: typer.Context,
    target: Annotated[
        Path | None,
        typer.Argument(metavar="F", callback=checked, help="The workbook (.xlsx) or one table (.csv)."),
    ] = None,
    what: Annotated[
        list[str] | None,
        typer.Option(
            help="A table, such as looms (several allowed), or a report: hours, plan (the published one), rehearsal."
        ),
    ] = None,
    json_to: Json = None,
) -> None:
    """Write what the database holds, as a workbook.

    The tables come in the shape that loads back; the reports do not load.

    Example: beamslot export mill.xlsx
    """
    if target is None and json_to is None:
        raise typer.BadParameter("say where to: a workbook F, or --json FILE")
    if what == ["hours"]:
        _export_hours(context.obj, target, json_to)
    elif what == ["plan"]:
        _export_plan(context.obj, target, json_to)
    elif what == ["rehearsal"]:
        _export_rehearsal(context.obj, target, json_to)
    else:
        _export_tables(context.obj, target, what or [], json_to)


def _export_tables(here: "Context", target: Path | None, what: list[str], json_to: str | None) -> None:
    from tracker.services.loading.export import export_records, export_workbook

    if target:
        counts = export_workbook(here, target, what)
        _wrote(
            target,
            ", ".join(f"{rows} {name.replace('_', ' ')}" for name, rows in counts.items() if rows) or "no rows",
            json_to,
        )
    if json_to:
        show.emit(json_to, export_records(here, what), lambda: None)


def _export_hours(here: "Context", target: Path | None, json_to: str | None) -> None:
    from tracker.services.work.hours import hours_records, write_hours

    if target:
        _wrote(target, count(write_hours(here, target), "so-many-rows") + " of hours", json_to)
    if json_to:
        show.emit(json_to, hours_records(here), lambda: None)


def _export_plan(here: "Context", target: Path | None, json_to: str | None) -> None:
    from tracker.services.plans.plan_record import plan_record
    from tracker.services.plans.published import published_plan, write_plan_workbook

    if target:
        _wrote(target, count(len(write_plan_workbook(here, target).bookings), "so-many-bookings"), json_to)
    if json_to:
        plan, mill = published_plan(here)
        show.emit(json_to, plan_record(plan, mill.terms.zone), lambda: None)


def _export_rehearsal(here: "Context", target: Path | None, json_to: str | None) -> None:
    from tracker.services.plans.rehearsal_book import kept_rehearsal, write_rehearsal_workbook

    if target:
        _wrote(target, count(write_rehearsal_workbook(here, target).result["runs"], "so-many-runs"), json_to)
    if json_to:
        kept = kept_rehearsal(here)
        show.emit(json_to, {"number": kept.number} | dict(kept.result), lambda: None)


def _wrote(target: Path, what: str, json_to: str | None) -> None:
    if json_to != "-":
        show.say(f"Wrote {target}: {what}.")
