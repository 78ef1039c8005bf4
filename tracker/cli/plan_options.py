"""What `plan` is told of single bookings and of a scenario that is put in force."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.options import moment, pairs

if TYPE_CHECKING:
    from tracker.services.context import Context
    from tracker.services.plans.decided import Span
    from tracker.services.plans.plan import PlanRequest

RuleOut = Annotated[
    list[str] | None,
    typer.Option(metavar="LOOM=FROM/TO", help="Do not start this loom in that span, nor in later plans; several allowed."),
]  # fmt: skip
Allow = Annotated[
    list[str] | None, typer.Option(metavar="LOOM", help="Book this loom again where it was ruled out; several allowed.")
]
Place = Annotated[
    list[str] | None,
    typer.Option(metavar="LOOM=START", help="Take this one of --dates, and leave all others where they are."),
]
Enter = Annotated[
    bool, typer.Option("--enter", help="Make no plan: enter what the scenario has otherwise as the mill's own data.")
]
Said = Annotated[
    list[str] | None, typer.Option(metavar="ORDER", help="With --enter: the supplier has said so of this order.")
]
LeaveOut = Annotated[
    bool, typer.Option("--leave-out", help="With --enter: order lines of which no supplier has said so stay out.")
]


def with_decisions(
    here: "Context", request: "PlanRequest", rule_out: Sequence[str], allow: Sequence[str], place: Sequence[str]
) -> "PlanRequest":
    """The request with windows ruled out, windows allowed again and dates taken."""
    from tracker.services.plans.decided import dates_taken, windows_ruled_out

    hall = request.firm.hall
    spans = [_span(here, loom, text) for loom, text in pairs(rule_out, "LOOM=FROM/TO")]
    wanted = [(loom, _at(here, text)) for loom, text in pairs(place, "LOOM=START")]
    return replace(
        request,
        ruled_out=windows_ruled_out(here, spans, allow, hall),
        placed=dates_taken(here, wanted, hall),
    )


def _span(here: "Context", loom: str, text: str) -> "Span":
    """An interval as ISO 8601 writes it; where its end is a day, all of that day belongs to it."""
    first, slash, until = text.partition("/")
    if not slash:
        raise typer.BadParameter(f"{text!r} is no span like 2027-01-11/2027-01-15")
    whole_day = timedelta(days=1) if len(until) == len("2027-01-15") else timedelta()
    return loom, _at(here, first), _at(here, until) + whole_day


def _at(here: "Context", text: str) -> datetime:
    at = moment(here, text)
    assert at
    return at


def enter_scenario(here: "Context", file: Path, said: Sequence[str], leave_out: bool, json_to: str | None) -> None:
    from tracker.services.plans.put_in_force import put_in_force, would_put_in_force
    from tracker.services.plans.scenario import read_scenario

    scenario = read_scenario(file)
    found = would_put_in_force(here, scenario, str(scenario.get("name") or file.stem), said)
    done = put_in_force(here, found, leave_out)
    show.emit(json_to, done.record(), lambda: show.tell(done.messages()))
