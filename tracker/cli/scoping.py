"""The command `scope`: what each loom needs, why, and how many hours."""

from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json, checked
from tracker.domain.words import natural_key
from tracker.errors import message
from tracker.words.formats import count, number


def add_commands(app: typer.Typer) -> None:
    app.command()(scope)


def scope(
    context: typer.Context,
    loom: Annotated[str | None, typer.Argument(metavar="LOOM", help="One loom, with the reason of every row.")] = None,
    hall: Annotated[str | None, typer.Option(help="The hall, where a loom number stands in several.")] = None,
    survey: Annotated[
        Path | None,
        typer.Option(
            metavar="F.xlsx", callback=checked, help="Write the list to walk the hall with; filled in, load it."
        ),
    ] = None,
    hours: Annotated[bool, typer.Option("--hours", help="The hours of every variant, not of the types alone.")] = False,
    json_to: Json = None,
) -> None:
    """What each loom needs and why, and how many hours.

    Hours per machine type and variant, per trade and kind of window; what must be surveyed.

    Example: beamslot scope 007 --hall "Hall 1"
    """
    from tracker.services.work import scope as service

    report = service.scope(context.obj, loom, hall)
    if survey:
        service.write_survey_list(report, survey, context.obj.language)
    show.emit(json_to, report.record(), lambda: _print_loom(report) if report.loom else _print_hall(report, hours))
    if survey and json_to != "-":
        show.say(
            f"Wrote {survey}: {count(len(report.survey.rows), 'so-many-looms')}. Fill it in, then: beamslot load {survey}"
        )


def _hours(value: float) -> str:
    return f"{value:,.1f}"


def _print_hall(report, by_variant: bool) -> None:
    rows = [row for row in report.hours if by_variant or not row.variant]
    hours_of = {trade: sum(row.trades.get(trade, 0.0) for row in rows) for row in rows for trade in row.trades}
    trades = sorted(hours_of, key=lambda trade: (-hours_of[trade], natural_key(trade)))
    show.table(
        f"Person-hours for one loom by machine type{' and variant' if by_variant else ''}",
        ["Type", *(["Variant"] if by_variant else []), "Window", ">Looms", ">First", ">Next", ">Last",
         *(f"?>{trade.capitalize()}" for trade in trades), "?>P10–P90", "?>On loom (h)",
         f"?>Parts ({report.currency})", "?Hours are"],
        [
            (h.machine_type, *([h.variant or "all"] if by_variant else []), ", ".join(h.kinds), h.looms, _hours(h.first_h),
             _hours(h.next_h), _hours(h.last_h), *(_hours(h.trades.get(trade, 0.0)) for trade in trades),
             f"{_hours(h.low_h)}–{_hours(h.high_h)}", _hours(h.on_loom_h), show.money(h.parts_cost), h.source)
            for h in rows
        ],
        most=500,
    )  # fmt: skip
    show.say("First: a crew's first loom of the type; next: as the next plan counts it, also by trade; last: the last one "
             "if one crew did them all.")  # fmt: skip
    if not by_variant:
        _print_variants(report)
    show.tell(report.messages())


def _print_variants(report) -> None:
    show.table(
        "Variants",
        ["Variant", ">Looms", "Types", ">Person-hours", f">Parts ({report.currency})", "?More than the commonest", "?Less"],
        [
            (v.name, len(v.looms), ", ".join(v.machine_types), _hours(v.labour_h), show.money(v.parts_cost),
             _some(v.more), _some(v.less))
            for v in report.variants
        ],
        most=15,
    )  # fmt: skip


def _some(names, most: int = 3) -> str:
    return ", ".join(names[:most]) + (f" and {len(names) - most} more" if len(names) > most else "")


def _print_loom(report) -> None:
    from tracker.words import ENGLISH

    loom = report.loom
    said = [] if loom.unknown else [loom.variant]
    said += [ENGLISH.say(loom.obstacle)] if loom.obstacle else []
    show.say(f"Loom {loom.key}, {loom.machine_type}: {'; '.join(filter(None, said))}")
    if loom.unknown:
        show.tell([message("survey-the-loom")])
    for work in loom.work:
        kinds = ", ".join(kind.value for kind in work.kinds)
        choices = ", ".join(f"{choice}: {taken}" for choice, taken in work.choices.items())
        show.table(
            f"Window {kinds}" + (f"; {choices}" if choices else ""),
            [">Step", "Operation", ">Method (min)", ">Planned (min)", "Trade", ">Heads", "?Tool", "?Place", "Why"],
            [
                (o.row.step, o.row.operation, _hours(o.row.minutes), _hours(o.planned_min), o.row.trade, o.row.heads,
                 o.row.tool, o.row.place, o.reason)
                for o in work.operations
            ],
            most=200,
        )  # fmt: skip
        show.table("Kit", ["Part", ">Quantity", "Comes back", "Why"],
                   [(k.row.part, number(k.row.quantity, digits=2), "yes" if k.row.comes_back else "", k.reason)
                    for k in work.kit_lines], most=200)  # fmt: skip
        trades = ", ".join(f"{trade} {_hours(hours)} h" for trade, hours in work.trades.items())
        show.say(
            f"{_hours(work.on_loom_h)} h on the loom; {_hours(work.labour_h)} person-hours ({trades}; P10–P90 "
            f"{_hours(work.low_h)}–{_hours(work.high_h)}); parts {show.money(work.parts_cost, report.currency)}; "
            f"learning factor {loom.learning_factor:.2f}, {loom.source}."
        )
