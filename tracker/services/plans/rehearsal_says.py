"""What a rehearsal says to who must promise a date or spend money, by codes."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from typing import Any

from tracker.errors import Message, message
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
    """The usual figures that were taken for want of any of the mill's own, each named with its value."""
    usual, off = Spreads(), set(result["off"])
    names = [name for name, value in result["spreads"].items() if value == getattr(usual, name, None)]
    taken = [name for name in names if OF_SOURCE[name].value not in off]
    if taken:
        yield message("rehearsal-rests-on", names=tuple(
            message("rehearsal-usual", name=name.replace("_", "-"), value=result["spreads"][name] * (100 if is_share(name) else 1))
            for name in taken
        ))  # fmt: skip


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
