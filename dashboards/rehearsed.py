"""A kept rehearsal in words and rows, for the screens that show one. Shares are told in percent, moments as local days."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

import pandas as pd

from dashboards.speaking import SPEAKER, count, day, moment, money
from dashboards.tables import Cell, Head, loom_cell
from tracker.domain.mill import LoomKey
from tracker.services.plans.rehearsal_says import cause_of, source_of

Record = Mapping[str, Any]
Rows = list[list[Cell | str]]
SHARES = ("p10", "p50", "p80", "p90")
SPREAD = tuple(Head(share.upper(), right=True) for share in SHARES)
POLICY_WORDS = {
    "kept": "the plan, kept", "never-cut": "the plan, no warp ever cut", "rule-of-thumb": "no plan, beam-outs as they come",
}  # fmt: skip


def spread_rows(result: Record) -> Rows:
    """Finish and cost of what was played first, P10 to P90."""
    cost, currency = result["policies"][0]["cost"], result["currency"]
    last = _last_promised(result)
    rows: Rows = [["cost", *(money(cost[share], currency) for share in SHARES)]]
    if last:
        rows.insert(
            0, [f"{count(last['looms'], 'so-many-looms')} done by", *(_day(last[share]).text for share in SHARES)]
        )
    return rows


def done_rows(result: Record) -> Rows:
    return [
        [Cell(f"{line['looms']:,}", line["looms"]), _percent(line["reached"]), *(_day(line[share]) for share in SHARES)]
        for line in result["milestones"]
    ]


def policy_rows(result: Record) -> Rows:
    rows: Rows = []
    for of in result["policies"]:
        amounts = [*(of["cost"][share] for share in SHARES), of["mean_cost"]["mean"], of["terms"]["lost"]]
        rows.append([
            _played(of), Cell(f"{of['runs']:,}", of["runs"]),
            *(Cell(money(amount), amount) for amount in amounts), Cell(f"{of['idle_h']:,.0f}", of["idle_h"]),
        ])  # fmt: skip
    return rows


def worry_rows(result: Record) -> Rows:
    """Those of which something is known."""
    return [
        [SPEAKER.say(source_of(worry)), *(_amount(worry[field]) for field in ("mean", "low", "high")),
         "sure" if worry["sure"] else f"not settled; about {worry['more_runs']:,} runs more would"]
        for worry in result["worries"] if worry["mean"] is not None
    ]  # fmt: skip


def risk_rows(result: Record, zone: Any) -> Rows:
    """The bookings at risk, the likeliest to fail first."""
    return [
        [loom_cell(LoomKey(of["hall"], of["loom"])), of["hall"], _moment(of["start"], zone), _percent(of["on_time"]),
         _percent(of["lost"]), SPEAKER.say(cause_of(of))]
        for of in result["bookings"]
    ]  # fmt: skip


def cost_frame(result: Record) -> pd.DataFrame:
    """policy, p10, p50, p90, says: what each way costs."""
    return pd.DataFrame([
        {"policy": _played(of), **{s: of["cost"][s] for s in ("p10", "p50", "p90")},
         "says": f"P50 {money(of['cost']['p50'], result['currency'])}"}
        for of in result["policies"]
    ])  # fmt: skip


def figures_of(result: Record) -> Sequence[tuple[str, str, str]]:
    first, last, currency = result["policies"][0], _last_promised(result), result["currency"]
    cost = first["cost"]
    sure = ("Promise no sooner than", _day(last["p80"]).text, f"{count(last['looms'], 'so-many-looms')}, in 80 of 100 runs; "
            f"{_day(last['p50']).text} in half of them") if last else ("Promise no sooner than", "never", "")  # fmt: skip
    return [
        ("Done before the horizon", f"{first['most_done']:,} of {result['to_do']:,}", "at least, in 80 of 100 runs"),
        sure,
        ("Cost, P50", money(cost["p50"], currency), f"{money(cost['p10'])} to {money(cost['p90'])} in 80 of 100 runs"),
        ("The plan says", money(result["plan_says"]["cost"], currency), f"all by {_day(result['plan_says']['finish']).text}"),
    ]  # fmt: skip


def _last_promised(result: Record) -> Record | None:
    """The most looms that are done in 80 of 100 runs."""
    return next((line for line in reversed(result["milestones"]) if line["p80"]), None)


def _played(of: Record) -> str:
    """The policy in words."""
    return POLICY_WORDS[of["policy"]]


def _day(at: str | None) -> Cell:
    """`never` sorts last."""
    if at is None:
        return Cell("never", datetime.max.isoformat())
    return Cell(day(datetime.fromisoformat(at).date()), at)


def _moment(at: str, zone: Any) -> Cell:
    return Cell(moment(datetime.fromisoformat(at), zone), at)


def _percent(share: float) -> Cell:
    return Cell(f"{share:.0%}", share)


def _amount(amount: float | None) -> Cell | str:
    return "" if amount is None else Cell(money(amount), amount)
