"""Commands for the plan: plan, verify."""

import threading
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.options import AsOf, Hall, Json, moment
from tracker.cli.plan_options import Allow, Enter, LeaveOut, Place, RuleOut, Said, enter_scenario, with_decisions
from tracker.errors import message
from tracker.words.formats import count, number, span, who_and_when

if TYPE_CHECKING:
    from tracker.services.context import Context
    from tracker.services.plans.plan import PlanRequest

MOST_PRICES = 10
MOST_BROKEN = 10
MOST_ORDERS = 10


def add_commands(app: typer.Typer) -> None:
    app.command()(plan)
    app.command()(verify)


def plan(
    context: typer.Context,
    publish: Annotated[bool, typer.Option("--publish", help="Make it the plan in force and reserve its kits.")] = False,
    scenario: Annotated[
        list[Path] | None, typer.Option(metavar="F", help="Plan as if: a TOML file of changes; several are compared.")
    ] = None,
    time_limit: Annotated[
        float | None, typer.Option(metavar="S", min=0.1, help="Seconds after which the best plan is kept.")
    ] = None,
    as_of: AsOf = None,
    move_firm: Annotated[
        bool, typer.Option("--move-firm", help="Let bookings of the firm period be moved, too.")
    ] = False,
    release: Annotated[
        list[str] | None, typer.Option(metavar="LOOM", help="Let this loom's firm booking be moved; several allowed.")
    ] = None,
    hold: Annotated[
        list[str] | None, typer.Option(metavar="LOOM", help="Keep this loom's booking where it is; several allowed.")
    ] = None,
    calm: Annotated[
        int | None, typer.Option(metavar="N", min=0, help="Move at most N bookings more than the data make necessary.")
    ] = None,
    rule_out: RuleOut = None,
    allow: Allow = None,
    place: Place = None,
    shown: Annotated[bool, typer.Option("--show", help="Make no plan: show the published one.")] = False,
    listed: Annotated[bool, typer.Option("--list", help="Make no plan: list all that were made.")] = False,
    made: Annotated[
        int | None,
        typer.Option("--number", metavar="N", help="Make no plan: --show or --publish that one of the list."),
    ] = None,
    dates: Annotated[
        str | None, typer.Option(metavar="LOOM", help="Make no plan: a loom's other dates and what they would cost.")
    ] = None,
    hall: Hall = None,
    baseline: Annotated[
        bool, typer.Option("--baseline", help="Make no plan: what taking each beam-out as it comes would cost.")
    ] = False,
    enter: Enter = False,
    said: Said = None,
    leave_out: LeaveOut = False,
    json_to: Json = None,
) -> None:
    """Book every conversion at the least cost, with proof.

    The plan is compared with the last published one. Ctrl-C stops the search and keeps the best plan found.

    Example: beamslot plan --publish
    """
    others = (("--show", shown), ("--list", listed), ("--dates", dates), ("--baseline", baseline))
    instead = [name for name, given in others if given]
    decided = bool(rule_out or allow or place)
    asks = bool(scenario or move_firm or release or hold or decided) or calm is not None
    if len(instead) > 1 or (instead and (publish or asks)):
        raise typer.BadParameter(f"{instead[0]} makes no plan and goes alone")
    if made is not None and (publish == shown or asks or instead not in ([], ["--show"])):
        raise typer.BadParameter("--number goes with --show or with --publish")
    if (hold or calm is not None) and len(scenario or ()) > 1:
        raise typer.BadParameter("--hold and --calm go with one scenario; several are compared as they are")
    if decided and len(scenario or ()) > 1:
        raise typer.BadParameter(
            "--rule-out, --allow and --place go with one scenario; several are compared as they are"
        )
    if enter and (len(scenario or ()) != 1 or publish or decided or move_firm or release or hold or calm is not None):
        raise typer.BadParameter("--enter makes no plan and goes with one --scenario alone")
    if (said or leave_out) and not enter:
        raise typer.BadParameter("--said and --leave-out go with --enter")
    if hall is not None and not (release or dates or hold or decided):
        raise typer.BadParameter(
            "--hall says where a loom of --hold, --release, --rule-out, --allow, --place or --dates stands; "
            "a plan is of all halls"
        )
    at = moment(context.obj, as_of)
    if listed:
        _list(context.obj, json_to)
    elif made is not None and publish:
        _publish_made(context.obj, made, at, json_to)
    elif shown:
        _show(context.obj, made, json_to)
    elif dates:
        _dates(context.obj, dates, hall, json_to)
    elif enter:
        enter_scenario(context.obj, (scenario or [])[0], said or (), leave_out, json_to)
    elif baseline:
        _baseline(context.obj, at, json_to)
    else:
        from tracker.services.plans.plan import Firm, PlanRequest

        firm = Firm(not move_firm, tuple(release or ()), hall)
        if len(scenario or ()) > 1 and not publish:
            _compare(context.obj, scenario or [], time_limit, at, firm, json_to)
        else:
            request = PlanRequest(publish, (scenario or [None])[0], at, firm, tuple(hold or ()), calm)
            request = with_decisions(context.obj, request, rule_out or (), allow or (), place or ())
            _make(context.obj, request, time_limit, json_to)


def _make(here: "Context", request: "PlanRequest", time_limit: float | None, json_to: str | None) -> None:
    from tracker.services.plans.plan import Search
    from tracker.services.plans.plan import plan as make

    stopped = threading.Event()
    with show.progress() as progress, show.interrupt(stopped):
        report = make(here, request, Search(time_limit, progress, stopped.is_set))
    show.emit(json_to, report.record(), lambda: _print_report(report))


def _show(here: "Context", number: int | None, json_to: str | None) -> None:
    from tracker.services.plans.made_plans import made_plan
    from tracker.services.plans.plan_record import plan_record
    from tracker.services.plans.published import published_plan

    if number is None:
        plan, mill = published_plan(here)
        zone = mill.terms.zone
    else:
        plan, zone = made_plan(here, number)
    show.emit(json_to, plan_record(plan, zone), lambda: _print_plan(plan, zone))


def _list(here: "Context", json_to: str | None) -> None:
    from tracker.services.plans.made_plans import made_plans

    report = made_plans(here)
    show.emit(json_to, report.record(), lambda: _print_list(report))


def _print_list(report) -> None:
    if not report.entries:
        show.say("No plan was made yet; `beamslot plan` makes one.")
        return
    show.table(
        "Plans made, the newest first",
        [">Plan", "Made", "?By", "What", "As of", ">Cost", ">Booked", ">Left over"],
        [
            (e.number, show.moment(e.made_at, report.zone), e.who,
             f"scenario {e.scenario}" if e.scenario else "published" if e.published else "saved",
             show.moment(e.as_of, report.zone), show.money(e.objective, e.currency), e.bookings, e.left_over)
            for e in report.entries
        ],
    )  # fmt: skip


def _publish_made(here: "Context", number: int, at, json_to: str | None) -> None:
    from tracker.services.plans.made_plans import publish_made

    report = publish_made(here, number, at)
    show.emit(json_to, report.record(), lambda: _print_report(report))


def _dates(here: "Context", loom: str, hall: str | None, json_to: str | None) -> None:
    from tracker.services.plans.published import other_dates

    report = other_dates(here, loom, hall)
    show.emit(json_to, report.record(), lambda: _print_dates(report))


def _print_dates(report) -> None:
    from tracker.words import ENGLISH

    if report.booking:
        b = report.booking
        show.say(
            f"Loom {report.key} is booked {span(b.start, b.end, report.zone)}, window {b.kind.value}, {_choices(b)}."
        )
    if report.left_over:
        show.say(f"Loom {report.key} is left over: {ENGLISH.line(report.left_over.why)}.")
    if not report.dates:
        show.say("The plan lists no other date for it.")
        return
    show.table(
        "Its cheapest other dates, if it alone moved",
        ["Start to end", "Window", "Choices", f">Dearer by ({report.currency})"],
        [
            (span(o.start, o.end, report.zone), o.kind.value, _choices(o), show.money(o.extra_cost))
            for o in report.dates
        ],
    )


def _baseline(here: "Context", at, json_to: str | None) -> None:
    from tracker.services.plans.baseline import baseline

    report = baseline(here, at)
    show.emit(json_to, report.record(), lambda: show.tell(report.messages()))


def _compare(here: "Context", files: list[Path], time_limit: float | None, at, firm, json_to: str | None) -> None:
    from tracker.services.plans.plan import Search
    from tracker.services.plans.scenarios import plan_scenarios

    stopped = threading.Event()
    with show.progress() as progress, show.interrupt(stopped):
        report = plan_scenarios(here, files, at, firm, Search(time_limit, progress, stopped.is_set))
    show.emit(json_to, report.record(), lambda: _print_compared(report))


def _print_compared(report) -> None:
    from tracker.words import ENGLISH

    show.table(
        f"Plans side by side ({report.currency})",
        ["Plan", ">Cost without moves", ">Moves", ">Gap", ">Booked", ">Left over", "Last one ends", ">Looms stopped (h)",
         "?>Of the cost: bookings", "?>looms left over"],
        [
            (line.name, show.money(line.comparable), show.money(line.cost.moves), f"{line.plan.gap:.2%}", len(line.plan.bookings),
             len(line.plan.left_over), show.day(line.finish_on), number(line.stopped_h), show.money(line.cost.total),
             show.money(line.left_over_cost))
            for line in report.compared
        ],
    )  # fmt: skip
    for made in report.plans:
        for note in made.notes:
            show.say(f"{made.scenario}: {ENGLISH.line(note)}")
    show.say("The scenarios are saved for comparison; none of them is published.")


def _print_report(report) -> None:
    from tracker.words import ENGLISH

    _print_plan(report.plan, report.zone)
    for note in report.notes:
        show.say(ENGLISH.line(note))
    _print_orders(report)
    show.late(report.late, report.zone)
    if report.previous:
        _print_changes(report)
    state = "published; its kits are reserved." if report.published else "saved, not published."
    show.say(f"Plan {report.number}{f', {report.scenario},' if report.scenario else ''} is {state}")
    if not report.published and not report.scenario:
        show.say(f"`beamslot plan --publish --number {report.number}` makes it the plan in force.")


def _print_orders(report) -> None:
    from tracker.words import ENGLISH

    if not report.orders:
        return
    show.table(
        "Orders not placed yet that the plan relies on",
        ["Order by", "Part", ">Quantity", "In store by", "Without it", "?Looms that fall"],
        [
            (show.day(line.order_by), line.part, number(line.quantity, line.unit, 2), show.day(line.expected),
             ENGLISH.say(message("looms-fall", looms=len(line.falls))), ", ".join(str(key) for key in line.falls))
            for line in report.orders
        ],
        most=MOST_ORDERS,
    )  # fmt: skip
    looms = {key for line in report.orders for key in line.falls}
    first = report.orders[0]
    rely = message("bookings-rely", bookings=len(looms), orders=len(report.orders), first=first.order_by)
    show.say(ENGLISH.line(rely))


def _print_changes(report) -> None:
    from tracker.words import ENGLISH

    if report.broken:
        lines = [(ENGLISH.line(each),) for each in report.broken]
        show.table("What of the published plan does not hold any more", ["What"], lines,
                   most=MOST_BROKEN)  # fmt: skip
    if not report.moves:
        show.say("Every booking is as in the last published plan.")
        return
    show.table(
        "Against the last published plan",
        ["Hall", "Loom", "What", "?Before", "Now", f"?>Dearer by ({report.plan.currency})", "?>Staying would cost", "Why"],
        [
            (m.key.hall, m.key.loom, m.what, show.moment(m.before.start, report.zone) if m.before else "",
             show.moment(m.after.start, report.zone) if m.after else "",
             show.money(m.dearer), show.money(m.price), ENGLISH.line(m.why))
            for m in report.moves
        ],
    )  # fmt: skip
    before, now = (show.money(plan.paid, plan.currency) for plan in (report.previous, report.plan))
    show.say(f"The published plan cost {before} when it was made, this one costs {now}.")


def _print_plan(plan, zone) -> None:
    from tracker.words import ENGLISH

    show.table(
        "Bookings",
        ["Hall", "Loom", "Start to end", "Window", "Crew", "Note", f">Cost ({plan.currency})", "?>Person-hours",
         "?Who from when to when", "?Choices"],
        [
            (b.key.hall, b.key.loom, span(b.start, b.end, zone), b.kind.value, b.crew_names,
             " ".join(word for word, holds in (("firm", b.firm), ("pilot", b.pilot)) if holds), show.money(b.cost.total),
             f"{b.labour_h:.1f}", who_and_when(b, zone), _choices(b))
            for b in plan.bookings
        ],
        most=200,
    )  # fmt: skip
    if plan.left_over:
        show.table(f"Left over: {count(len(plan.left_over), 'so-many-looms')}", ["Hall", "Loom", "Why"],
                   [(item.key.hall, item.key.loom, ENGLISH.line(item.why)) for item in plan.left_over])  # fmt: skip
    _print_prices(plan)
    for line in proof_lines(plan):
        show.say(line)


def _print_prices(plan) -> None:
    from tracker.words import ENGLISH

    dearest = sorted(plan.prices, key=lambda price: -price.price)[:MOST_PRICES]
    if dearest:
        show.table(
            "What is scarce: one more of it in that week would save, by the prices of the relaxed plan",
            ["One more", "Week", f">Would save ({plan.currency})"],
            [(ENGLISH.say(p.what), p.week, number(p.price, digits=0 if p.price >= 10 else 2)) for p in dearest],
        )


def _choices(one) -> str:
    return ", ".join(alternative for _, alternative in one.choices)


def proof_lines(plan) -> list[str]:
    """Status, cost, bound and gap in plain words."""
    from tracker.services.plans.kept import keeping_told
    from tracker.words import ENGLISH

    return [
        f"{plan.status.value.capitalize()}: cost {show.money(plan.objective, plan.currency)}; no plan can cost less than "
        f"{show.money(plan.bound, plan.currency)} (gap {plan.gap:.2%}). {plan.seconds:.1f} s.",
        *map(ENGLISH.line, keeping_told(plan)),
        *_crew_changes(plan),
        *map(ENGLISH.line, plan.reasons),
    ]


def _crew_changes(plan) -> list[str]:
    if not plan.crew_changes:
        return []
    times = count(plan.crew_changes, "so-many-times")
    return [
        f"A loom changes its crew {times} while the first is still at work, since crews of one hall stand beside others."
    ]


def verify(context: typer.Context, json_to: Json = None) -> None:
    """Recompute the published plan without the solver.

    Says, too, when history was changed behind the program's back.

    Example: beamslot verify
    """
    from tracker.services.plans.verify import verify as run

    report = run(context.obj)
    show.emit(json_to, report.record(), lambda: show.tell(report.messages()))
    if not report.sound:
        raise typer.Exit(1)
