"""What a tuning says to a planner, by codes."""

from collections.abc import Mapping
from typing import Any

from tracker.domain.tables import TERM_COLUMNS
from tracker.errors import Message, message
from tracker.services.plans.rehearsal_says import rests_on

Record = Mapping[str, Any]
COLUMNS = {column.field: column for column in TERM_COLUMNS}
KINDS = {"usual_absence": "share", "receipts_later_days": "days", "pilots_for_type": "yes", "patience_h": "hours"}


def tuning_said(result: Record) -> tuple[Message, ...]:
    """What was tried, and what it is worth."""
    return tuning_basis(result), tuning_verdict(result), *(rests_on(result) if "rests_on" in result else ())


def tuning_basis(result: Record) -> Message:
    judged = result["judged"] is not None and result["runs"] > 0
    light = ("judged" if judged else "only") if result.get("light") else "no"
    return message("tuning-basis", tried=len(result["tried"]), worlds=result["tune_on"], runs=result["runs"],
                   light=light, stopped=bool(result["stopped"]))  # fmt: skip


def tuning_verdict(result: Record) -> Message:
    """Whether the best is cheaper in worlds that had no say in it."""
    best, without, judged, currency = (result[name] for name in ("best", "without", "judged", "currency"))
    ways = ways_of(best)
    if judged is None or judged["low"] is None:
        return message("tuning-unjudged", ways=ways)
    more = best["paper"] - without["paper"]
    on_paper = {"ways": ways, "by": abs(more), "paper": "dearer" if more > 0 else "cheaper", "currency": currency}
    if not result["helps"]:
        return message("tuning-open", low=judged["low"], high=judged["high"], **on_paper)
    return message(
        "tuning-helps", saves=-judged["mean"], low=-judged["high"], high=-judged["low"], kept=best["kept_elsewhere"],
        without=without["kept_elsewhere"], **on_paper,
    )  # fmt: skip


def ways_said(tried: Record) -> Message:
    """How a plan was made, in one."""
    return message("tuning-ways", ways=ways_of(tried))


def ways_of(tried: Record) -> tuple[Message, ...]:
    """How a plan was made: the terms that are on, and which of the plans that are as good."""
    on = [
        (name, value) for name, value in tried["terms"].items() if value or (name == "patience_h" and value is not None)
    ]
    said = [
        message("tuning-term", name=COLUMNS[name].named, kind=KINDS.get(name, "times"),
                value=100 * value if KINDS.get(name) == "share" else value)
        for name, value in on
    ]  # fmt: skip
    said += [message("tuning-variant", variant=str(tried["variant"]))] if tried["variant"] else []
    return tuple(said) or (message("tuning-without"),)
