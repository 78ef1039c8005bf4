"""What a rehearsal says to who must promise a date or spend money, by codes."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from typing import Any

from tracker.errors import Message, message
from tracker.rehearsal.rests_on import USE_OF_WARP
from tracker.rehearsal.sources import OF_SOURCE, Spreads, is_share

Record = Mapping[str, Any]
POLICIES = {
    "kept": "rehearsal-kept",
    "replanned": "rehearsal-replanned",
    "never-cut": "rehearsal-never-cut",
    "rule-of-thumb": "rehearsal-rule-of-thumb",
}
"""Way to run the hall → its code."""


def said(result: Record) -> tuple[Message, ...]:
    """Everything, the promise first."""
    return (basis(result), *promise(result), *money(result), *worry_lines(result), *rests_on(result))


def basis(result: Record) -> Message:
    how = "stopped" if result["stopped"] else "whole"
    return message("rehearsal-basis", plan=result["plan"], runs=result["runs"], asked=result["runs_asked"], how=how,
                   as_of=datetime.fromisoformat(result["as_of"]), to_do=result["to_do"])  # fmt: skip


def promise(result: Record) -> Iterator[Message]:
    """By when how many looms are done."""
    first, to_do = result["policies"][0], result["to_do"]
    plan_says = _day(result["plan_says"]["finish"])
    yield message("rehearsal-done", looms=first["most_done"], to_do=to_do, end=plan_says)
    reached = [line for line in result["milestones"] if line["p80"]]
    if reached:
        last = reached[-1]
        yield message("rehearsal-date", looms=last["looms"], half=_day(last["p50"]), sure=_day(last["p80"]))
    if target := result["target"]:
        yield message("rehearsal-target", day=date.fromisoformat(target["day"]), looms=target["looms_in_80"], to_do=to_do,
                      percent=round(100 * target["all_done"]))  # fmt: skip


def money(result: Record) -> Iterator[Message]:
    first, currency = result["policies"][0], result["currency"]
    cost = first["cost"]
    yield message("rehearsal-cost", low=cost["p10"], middle=cost["p50"], high=cost["p90"], says=result["plan_says"]["cost"],
                  mean=first["mean_cost"]["mean"], currency=currency)  # fmt: skip
    yield message("rehearsal-lost", cost=first["terms"]["lost"], looms=result["to_do"] - first["done"]["p50"],
                  currency=currency)  # fmt: skip
    for other in result["differences"]:
        if other["mean"] is not None:
            yield _against(other, first["policy"], result)


def _against(other: Record, policy: str, result: Record) -> Message:
    how = "open" if not other["sure"] else "dearer" if other["mean"] > 0 else "cheaper"
    limit = result["waiting_limit_h"] if other["policy"] == "rule-of-thumb" else None
    return message("rehearsal-against", other=other["policy"], policy=policy, how=how, by=abs(other["mean"]), runs=other["runs"],
                   more=other["more_runs"], limit=limit, currency=result["currency"], **_bounds(other))  # fmt: skip


def worry_lines(result: Record) -> Iterator[Message]:
    """What is worth money to remove: what is sure, the dearest first, then what is not settled."""
    found = [worry for worry in result["worries"] if worry["mean"] is not None]
    for worry in (w for w in found if w["sure"] and w["mean"] > 0):
        yield message("rehearsal-worry", source=worry["source"], crew=worry["crew"], worth=worry["mean"], runs=worry["runs"],
                      currency=result["currency"], **_bounds(worry))  # fmt: skip
    if rest := _names(w for w in found if not (w["sure"] and w["mean"] > 0)):
        yield message("rehearsal-worries-open", names=rest)


def rests_on(result: Record) -> Iterator[Message]:
    """From where the figures come that were drawn by: for what the mill's own records say some, then those that were asked for,
    then the usual ones for want of either, each named with its value. All of them stand in a table beside (`ground_words`)."""
    grounds = grounds_of(result)
    sources = dict.fromkeys(ground["source"] for ground in grounds if ground["by"] == "records")
    if sources:
        named = tuple(message("rehearsal-varies", source=source) for source in sources)
        yield message("rehearsal-rests-on-records", names=named)
    for by, code in (("asked", "rehearsal-rests-on-asked"), ("usual", "rehearsal-rests-on")):
        if names := tuple(_whole(ground) for ground in grounds if ground["by"] == by):
            yield message(code, names=names)


def grounds_of(result: Record) -> Sequence[Record]:
    """The figures with where they come from; of a rehearsal that was kept before that was said, those that are usual."""
    if "rests_on" in result:
        return result["rests_on"]
    usual, off = Spreads(), set(result.get("off", ()))
    return [
        {"source": OF_SOURCE[name].value, "name": name, "value": value, "by": "usual", "kind": "mill", "names": [],
         "together": False, "count": 0, "since": None}
        for name, value in result.get("spreads", {}).items()
        if value == getattr(usual, name, None) and OF_SOURCE[name].value not in off
    ]  # fmt: skip


def ground_words(ground: Record) -> tuple[Message, Message, Message, Message | None]:
    """What varies and how much, for whom it was taken, from where it comes, and how many records since when; None without any."""
    what, names = ground["name"].replace("_", "-"), tuple(ground["names"]) or None
    records = None
    if ground["by"] == "records":
        records = message(
            "rehearsal-records", what=what, count=ground["count"], since=date.fromisoformat(ground["since"])
        )
    return (
        figure_of(ground), message("rehearsal-whose", kind=ground["kind"], names=names),
        message("rehearsal-from", by="together" if ground["together"] else ground["by"]), records,
    )  # fmt: skip


def figure_of(ground: Record) -> Message:
    """What varies, and how much."""
    name, value = ground["name"], ground["value"]
    own = ground["by"] == "records" or (name == "work_cv" and ground["by"] == "asked")
    code = name.replace("_", "-") + ("-own" if own and name in ("work_cv", USE_OF_WARP) else "")
    return message("rehearsal-usual", name=code, value=value * (100 if is_share(name) else 1))


def _whole(ground: Record) -> Message:
    names = tuple(ground["names"]) or None
    return message("rehearsal-usual-of", figure=figure_of(ground), names=names) if names else figure_of(ground)


def cause_of(risk: Record) -> Message:
    return message("rehearsal-cause", cause=risk["cause"] or "nothing")


def source_of(worry: Record) -> Message:
    return message("rehearsal-source", source=worry["source"], crew=worry["crew"])


def finish_line(result: Record, made: date) -> Message:
    """For who asks how the programme stands: when it will be done as the hall has it."""
    first = result["policies"][0]
    looms, half, sure = promised(result) or (None,) * 3
    return message("rehearsed", made=made, runs=result["runs"], to_do=result["to_do"], done=first["most_done"], looms=looms,
                   half=half, sure=sure, cost=first["cost"]["p50"], most=first["cost"]["p80"],
                   currency=result["currency"])  # fmt: skip


def promised(result: Record) -> tuple[int, date, date] | None:
    """The most looms that are done in 80 of 100 runs, and the days by which they are in 50 and in 80."""
    reached = [line for line in result["milestones"] if line["p80"]]
    return (reached[-1]["looms"], _day(reached[-1]["p50"]), _day(reached[-1]["p80"])) if reached else None


def _names(found: Iterator[Record]) -> Sequence[Message]:
    return tuple(source_of(worry) for worry in found)


def _bounds(found: Record) -> dict[str, float | None]:
    """The 95 % interval as amounts, the smaller first."""
    low, high = found["low"], found["high"]
    if low is None or high is None or not found["sure"]:
        return {"low": low, "high": high}
    return dict(zip(("low", "high"), sorted((abs(low), abs(high))), strict=True))


def _day(at: str) -> date:
    return datetime.fromisoformat(at).date()
