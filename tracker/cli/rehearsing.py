"""The command for what a hall does to a plan: rehearse."""

import threading
from datetime import datetime
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Json, moment, numbers

MOST_RISKS = 15


def add_commands(app: typer.Typer) -> None:
    app.command()(rehearse)


def rehearse(
    context: typer.Context,
    runs: Annotated[
        int, typer.Option(metavar="N", min=1, help="Times to play it; half as often what it is held against.")
    ] = 100,
    policy: Annotated[
        list[str] | None,
        typer.Option(
            metavar="NAME", help="kept, replanned, never-cut or rule-of-thumb; several are held against the first."
        ),
    ] = None,
    seed: Annotated[int, typer.Option(min=0, help="Another number draws other worlds.")] = 1,
    jobs: Annotated[int | None, typer.Option(min=1, max=256, help="Processes; default one a core.")] = None,
    cluster: Annotated[
        str | None,
        typer.Option(
            envvar="BEAMSLOT_CLUSTER",
            metavar="ADDRESS",
            help="Let a Dask cluster play, as tcp://10.0.0.5:8786 (extra 'cluster').",
        ),
    ] = None,
    until_sure: Annotated[
        float | None,
        typer.Option(metavar="AMOUNT", min=0, help="Enough once the mean cost is known as closely as this."),
    ] = None,
    varies: Annotated[
        list[str] | None,
        typer.Option(
            "--varies",
            metavar="NAME=VALUE",
            help="A figure of your own before records and what is usual, as 'away share=0.06'; several.",
        ),
    ] = None,
    off: Annotated[
        list[str] | None, typer.Option(metavar="SOURCE", help="Let it not vary, as receipts; several allowed.")
    ] = None,
    worries: Annotated[
        bool | None,
        typer.Option(help="Find out what each worry is worth; without a say, not where replanned comes first."),
    ] = None,
    tune: Annotated[
        bool, typer.Option("--tune", help="Look for terms that let a plan survive the hall, judged in N other runs.")
    ] = False,
    tune_on: Annotated[
        int | None, typer.Option(metavar="K", min=2, help="Play what is tried for --tune in K runs; default 30.")
    ] = None,
    accept: Annotated[
        bool, typer.Option("--accept", help="Take over what --tune found: sets the terms and makes the plan by them.")
    ] = False,
    as_of: AsOf = None,
    json_to: Json = None,
) -> None:
    """Play the published plan many times: dates, cost, risks.

    Beam-outs, work, people, deliveries, failures and orders are drawn anew in each run. What comes of it is kept with the
    plan, and `beamslot status` shows it. Ctrl-C keeps what is done. The policy replanned makes a plan anew each Monday, from what
    is known by then: half a minute a run; at most 20 runs of it are held against another.

    Example: beamslot rehearse --runs 200
    """
    from tracker.services.plans.rehearse import RehearsalRequest
    from tracker.services.plans.rehearse import rehearse as run

    usual = RehearsalRequest()
    request = RehearsalRequest(
        runs, tuple(policy or usual.policies), seed, tuple(numbers(varies, "NAME=VALUE")), tuple(off or ()), worries, until_sure,
        jobs, cluster, moment(context.obj, as_of),
    )  # fmt: skip
    stopped = threading.Event()
    if tune or accept or tune_on:
        _tune(context.obj, request, tune or bool(tune_on), tune_on, accept, json_to, stopped)
        return
    with show.progress() as progress, show.interrupt(stopped):
        report = run(context.obj, request, progress, stopped.is_set)
    show.emit(json_to, report.record(), lambda: _print(report))


def _tune(here, request, look: bool, tune_on: int | None, accept: bool, json_to: str | None, stopped) -> None:
    """Tune, take over, or both."""
    from tracker.services.plans.tune import TUNE_ON, accept_tuning, tune_plan

    told: dict[str, object] = {}
    lines = []
    helps = True
    if look:
        with show.progress() as progress, show.interrupt(stopped):
            found = tune_plan(here, request, tune_on or TUNE_ON, progress, stopped.is_set)
        told, lines, helps = found.record(), list(found.lines), bool(found.result["helps"])
    if accept and (helps or not look):
        taken = accept_tuning(here)
        told |= {"accepted": taken.record()}
        lines.append(taken.message)
    show.emit(json_to, told, lambda: _print_tuning(told, lines))


def _print_tuning(told, lines) -> None:
    from tracker.services.plans.tuning_says import ways_said
    from tracker.words import ENGLISH

    if tried := told.get("tried"):
        show.table(
            f"Ways to plan ({told['currency']})",
            ["Planned with", ">On paper", ">In the hall", ">More than without", ">From", ">To", ">Looms booked"],
            [(ENGLISH.say(ways_said(one)), show.money(one["paper"]), show.money(one["kept"]),
              *(show.money(one["more"][each]) for each in ("mean", "low", "high")), one["booked"])
             for one in tried],
        )  # fmt: skip
        _print_grounds(told)
    show.tell(lines)


def _print(report) -> None:
    from tracker.services.plans.rehearsal_says import cause_of
    from tracker.words import ENGLISH

    result = report.result
    show.table(
        "When so many looms are done", [">Looms", ">Reached", "P10", "P50", "P80", "P90"],
        [(line["looms"], f"{line['reached']:.0%}", *(_day(line[share]) for share in ("p10", "p50", "p80", "p90")))
         for line in result["milestones"]],
    )  # fmt: skip
    show.table(
        "Bookings at risk", ["Hall", "Loom", "Start", ">Within a day", ">Lost", "Held up most by"],
        [(b["hall"], b["loom"], show.moment(datetime.fromisoformat(b["start"]), report.zone), f"{b['on_time']:.0%}",
          f"{b['lost']:.0%}", ENGLISH.say(cause_of(b)))
         for b in result["bookings"]],
        most=MOST_RISKS,
    )  # fmt: skip
    _print_grounds(result)
    show.tell(report.lines, report.zone)


def _print_grounds(result) -> None:
    from tracker.services.plans.rehearsal_says import ground_words, grounds_of
    from tracker.words import ENGLISH

    rows = [[ENGLISH.say(word) if word else "" for word in ground_words(ground)] for ground in grounds_of(result)]
    show.table("What it rests on", ["What varies, and how much", "Taken for", "Comes from", "Records"], rows, len(rows))


def _day(at: str | None) -> str:
    return show.day(datetime.fromisoformat(at).date()) if at else "never"
