"""Commands for the work itself: scope, forecast, plan, verify."""

import threading
from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, Loom, moment


def add_commands(app: typer.Typer) -> None:
    app.command()(forecast)
    app.command()(plan)
    app.command()(verify)


def forecast(
    context: typer.Context,
    loom: Loom = None,
    hall: Hall = None,
    as_of: AsOf = None,
    backtest: Annotated[
        bool, typer.Option("--backtest", help="How well past beam-outs would have been forecast.")
    ] = False,
    json_to: Json = None,
) -> None:
    """Beam-outs with P10, P50 and P90: when each warp runs out.

    Example: beamslot forecast 007 --hall "Hall 1"
    """
    from tracker.services import forecast as service

    if backtest:
        past = service.backtest(context.obj)
        show.emit(json_to, past.record(), lambda: _print_backtest(past))
        return
    report = service.forecast(context.obj, loom, moment(context.obj, as_of), hall)
    show.emit(json_to, report.record(), lambda: _print_forecast(report))


def _print_forecast(report) -> None:
    show.table(
        "Windows",
        ["Hall", "Loom", ">No.", "Kind", "P10", "P50", "P90", "Reading"],
        [
            (w.key.hall, w.key.loom, w.number, w.kind.value, *(show.moment(t, report.zone) for t in (w.p10_at, w.p50_at, w.p90_at)),
             w.state)
            for w in report.windows
        ],
    )  # fmt: skip
    for line in report.lines():
        show.say(line)


def _print_backtest(past) -> None:
    show.table(
        "Past forecasts against what happened",
        [">Days ahead", ">Forecasts", ">P10 to P90", ">Earlier", ">Later", ">Mean error (h)"],
        [(r.lead_days, r.forecasts, r.within, r.early, r.late, f"{r.mean_error_h:+.1f}") for r in past.rows],
    )
    if past.share_within is None:
        show.say("No beam-out can be compared yet: it takes readings from before and after a warp has run out.")
    else:
        show.say(
            f"{past.beam_outs} beam-outs; {past.share_within:.0%} of the forecasts held between P10 and P90 (promised: 80 %)."
        )


def plan(
    context: typer.Context,
    publish: Annotated[bool, typer.Option("--publish", help="Make it the plan in force and reserve its kits.")] = False,
    scenario: Annotated[
        list[Path] | None, typer.Option(metavar="F", help="Plan as if: a TOML file of changes; several are compared.")
    ] = None,
    time_limit: Annotated[
        float | None, typer.Option(metavar="S", help="Seconds after which the best plan is kept.")
    ] = None,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Book every conversion at the least cost, with proof.

    The plan is compared with the last published one.

    Ctrl-C stops the search and keeps the best plan found. Example: beamslot plan --publish
    """
    at, stopped = moment(context.obj, as_of), threading.Event()
    from tracker.services import plan as service

    with show.progress() as progress, show.interrupt(stopped):
        report = service.plan(context.obj, publish, (scenario or [None])[0], time_limit, at, progress, stopped.is_set)
    show.emit(json_to, report.record(), lambda: print_plan(report))


def print_plan(report) -> None:
    plan, zone = report.plan, report.zone
    show.table(
        "Bookings",
        ["Hall", "Loom", "Start", "End", "Window", "Choices", ">Person-hours", f">Cost ({plan.currency})", "Note"],
        [
            (b.key.hall, b.key.loom, show.moment(b.start, zone), show.moment(b.end, zone), b.kind.value,
             ", ".join(alternative for _, alternative in b.choices), f"{b.labour_h:.1f}", show.money(b.cost.total),
             " ".join(word for word, holds in (("firm", b.firm), ("pilot", b.pilot)) if holds))
            for b in plan.bookings
        ],
    )  # fmt: skip
    if plan.left_over:
        show.table(f"Left over: {len(plan.left_over)}", ["Hall", "Loom", "Why"],
                   [(item.key.hall, item.key.loom, item.why) for item in plan.left_over])  # fmt: skip
    if report.moves:
        show.table("Against the last published plan", ["Hall", "Loom", "What", "Before", "Now"],
                   [(m.key.hall, m.key.loom, m.what, show.moment(m.before.start, zone) if m.before else "-",
                     show.moment(m.after.start, zone) if m.after else "-") for m in report.moves])  # fmt: skip
    for line in proof_lines(plan):
        show.say(line)
    show.say(f"Plan {report.number} is " + ("published; its kits are reserved." if report.published else
             "saved, not published; `beamslot plan --publish` makes it the plan in force."))  # fmt: skip


def proof_lines(plan) -> list[str]:
    """Status, cost, bound and gap in plain words."""
    return [
        f"{plan.status.value.capitalize()}: cost {show.money(plan.objective, plan.currency)}; no plan can cost less than "
        f"{show.money(plan.bound, plan.currency)} (gap {plan.gap:.2%}). {plan.seconds:.1f} s.",
        *plan.reasons,
    ]


def verify(context: typer.Context, json_to: Json = None) -> None:
    """Recompute the published plan without the solver.

    Example: beamslot verify
    """
    from tracker.services.verify import verify as run

    report = run(context.obj)
    show.emit(json_to, report.record(), lambda: show.say("\n".join(report.lines())))
    if not report.sound:
        raise typer.Exit(1)
