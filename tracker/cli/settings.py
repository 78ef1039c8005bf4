"""The command `settings`: what was set and read at the looms, what is odd about it, which visits are due."""

from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, Loom, checked, moment
from tracker.domain.words import fold
from tracker.errors import UsageError


def add_commands(app: typer.Typer) -> None:
    app.command()(settings)


def settings(
    context: typer.Context,
    loom: Loom = None,
    hall: Hall = None,
    alarms: Annotated[bool, typer.Option("--alarms", help="Only what is odd, with its figures.")] = False,
    visits: Annotated[bool, typer.Option("--visits", help="Only the follow-up visits, due and to come.")] = False,
    out: Annotated[
        Path | None, typer.Option("--out", metavar="F.xlsx", callback=checked, help="Write all of it as a workbook.")
    ] = None,
    propose: Annotated[
        Path | None,
        typer.Option(metavar="F.xlsx", callback=checked, help="Write what looms taught as a change of the method."),
    ] = None,
    seen: Annotated[
        str | None, typer.Option(metavar="WHY", help="Mark the loom's alarms as seen: quiet until their value changes.")
    ] = None,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Settings as found, set and read since.

    Alarms with their figures, left against right, follow-up visits, metres on the bobbins. --json always has all of it.

    Example: beamslot settings 007 --hall "Hall 1"
    """
    from tracker.services.work.settings import settings as run

    if seen is not None:
        _mark_seen(context.obj, loom, hall, seen, any((alarms, visits, out, propose, as_of)), json_to)
        return
    report = run(context.obj, loom, hall, moment(context.obj, as_of))

    proposed = _write(context.obj, report, out, propose)

    def person() -> None:
        both = alarms == visits
        if both:
            _print_series(report)
            _print_bobbins(report)
        if both or visits:
            _print_visits(report, report.visits if visits else report.overdue)
            show.tell(report.visit_messages())
        if both or alarms:
            show.tell(report.messages(), report.zone)
        if alarms:
            show.tell(report.quiet_messages(), report.zone)
        show.tell(proposed)
        for file in filter(None, (out, propose)):
            show.say(f"Wrote {file}.")

    show.emit(json_to, report.record(), person)


def _mark_seen(here, loom: str | None, hall: str | None, why: str, narrowed: bool, json_to: str | None) -> None:
    from tracker.services.work.seen_alarms import mark_seen

    if loom is None or narrowed:
        raise UsageError("alarms-seen-alone")
    seen = mark_seen(here, loom, hall, why)
    show.emit(json_to, seen.record(), lambda: show.tell(seen.messages()))


def _write(here, report, out: Path | None, propose: Path | None) -> list:
    """The files asked for; what is to be said of the proposal."""
    from tracker.services.work.settings_files import write_proposal, write_settings

    proposed = write_proposal(here, propose, report) if propose else []
    if out:
        write_settings(out, report, here.language)
    return proposed


def _print_series(report) -> None:
    if not report.series:
        return
    columns = ["Hall", "Loom", "Setting", "Side", "?>Found", "?>Set", ">Now", ">Setpoint", "?>Low", "?>High",
               "?>Left less right", "Unit"]  # fmt: skip
    apart = report.left_less_right()
    show.table("Settings", columns, [_row(report, one, apart) for one in report.series])


def _row(report, one, apart):
    read = map(_value, (one.found, report.set_value(one), one.now))
    limits = map(_number, (one.limits.target, one.limits.low, one.limits.high))
    difference = _number(apart.get((one.key, fold(one.setting))))
    return one.key.hall, one.key.loom, one.setting, one.side, *read, *limits, difference, one.unit


def _value(value):
    return value and _number(value.value)


def _number(value):
    return f"{value:g}" if isinstance(value, float) else value


def _print_bobbins(report) -> None:
    if not report.bobbins:
        return
    rows = [
        (key.hall, key.loom, *map(_metres, (b.left_m, b.right_m, b.left_more_m, b.cloth_to_change_m())))
        for key, b in report.bobbins.items()
    ]
    columns = ["Hall", "Loom", ">Left", ">Right", ">Left less right", ">Cloth to the next change"]
    show.table("Metres on the bobbins", columns, rows)


def _metres(length_m):
    return None if length_m is None else f"{length_m:,.0f}"


def _print_visits(report, visits) -> None:
    title = "Follow-up visits" if visits != report.overdue else "Overdue visits"
    rows = [(v.key.hall, v.key.loom, show.day(v.due_on), v.after_days, _state(report, v)) for v in visits]
    if rows:
        show.table(title, ["Hall", "Loom", "Due", ">Days after sign-off", "State"], rows)


def _state(report, visit) -> str:
    return f"done {show.day(visit.done_on)}" if visit.done_on else report.state_of(visit)
