"""The command `forecast`: when each warp runs out, and how well that would have been said before."""

from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, Loom, moment
from tracker.words.formats import span


def add_commands(app: typer.Typer) -> None:
    app.command()(forecast)


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
    from tracker.services.work import forecast as service

    if backtest:
        past = service.backtest(context.obj)
        show.emit(json_to, past.record(), lambda: _print_backtest(past))
        return
    report = service.forecast(context.obj, loom, moment(context.obj, as_of), hall)
    show.emit(json_to, report.record(), lambda: _print_forecast(report))


def _print_forecast(report) -> None:
    show.table(
        "Windows",
        ["Hall", "Loom", "?>No.", "Kind", "P50", "P10 to P90", "Reading"],
        [
            (w.key.hall, w.key.loom, w.number, w.kind.value, show.moment(w.p50_at, report.zone),
             span(w.p10_at, w.p90_at, report.zone), w.state)
            for w in report.windows
        ],
    )  # fmt: skip
    show.tell(report.messages())


def _print_backtest(past) -> None:
    show.table(
        "Past forecasts against what happened",
        [">Days ahead", ">Forecasts", ">P10 to P90", ">Earlier", ">Later", ">Mean error (h)"],
        [(r.lead_days, r.forecasts, r.within, r.early, r.late, f"{r.mean_error_h:+.1f}") for r in past.rows],
    )
    show.tell(past.messages())
