"""A kept rehearsal in words and rows, for the screens that show one. Shares are told in percent, moments as local days."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

import pandas as pd

from dashboards.speaking import SPEAKER, day, moment, money, number, say, share
from dashboards.tables import Cell, Head, loom_cell
from tracker.domain.mill import LoomKey
from tracker.services.plans.rehearsal_says import POLICIES, cause_of, ground_words, grounds_of, source_of
from tracker.services.plans.tuning_says import ways_said

Record = Mapping[str, Any]
Rows = list[list[Cell | str]]
SHARES = ("p10", "p50", "p80", "p90")
SPREAD = tuple(Head(each.upper(), right=True) for each in SHARES)


def policy_word(name: str) -> str:
    return say(POLICIES[name])


def spread_rows(result: Record) -> Rows:
    """Finish and cost of what was played first, P10 to P90."""
    cost, currency = result["policies"][0]["cost"], result["currency"]
    last = _last_promised(result)
    rows: Rows = [[say("rehearsal-cost-row"), *(money(cost[each], currency) for each in SHARES)]]
    if last:
        rows.insert(0, [say("rehearsal-done-by", looms=last["looms"]), *(_day(last[each]).text for each in SHARES)])
    return rows


def done_rows(result: Record) -> Rows:
    return [
        [Cell(number(line["looms"]), line["looms"]), _percent(line["reached"]), *(_day(line[each]) for each in SHARES)]
        for line in result["milestones"]
    ]


def policy_rows(result: Record) -> Rows:
    rows: Rows = []
    for of in result["policies"]:
        amounts = [*(of["cost"][each] for each in SHARES), of["mean_cost"]["mean"], of["terms"]["lost"]]
        rows.append([
            _played(of), Cell(number(of["runs"]), of["runs"]),
            *(Cell(money(amount), amount) for amount in amounts), Cell(number(of["idle_h"]), of["idle_h"]),
        ])  # fmt: skip
    return rows


def tuned_rows(result: Record) -> Rows:
    """How was planned, on paper, in the hall, and what more than without with its interval; in the order tried."""
    return [
        [SPEAKER.say(ways_said(one)), *(Cell(money(amount), amount) for amount in (one["paper"], one["kept"])),
         *(_amount(one["more"][each]) for each in ("mean", "low", "high"))]
        for one in result["tried"]
    ]  # fmt: skip


def worry_rows(result: Record) -> Rows:
    """Those of which something is known."""
    return [
        [SPEAKER.say(source_of(worry)), *(_amount(worry[field]) for field in ("mean", "low", "high")),
         say("rehearsal-sure") if worry["sure"] else say("rehearsal-not-settled", runs=worry["more_runs"])]
        for worry in result["worries"] if worry["mean"] is not None
    ]  # fmt: skip


def risk_rows(result: Record, zone: Any) -> Rows:
    """The bookings at risk, the likeliest to fail first."""
    return [
        [loom_cell(LoomKey(of["hall"], of["loom"])), of["hall"], _moment(of["start"], zone), _percent(of["on_time"]),
         _percent(of["lost"]), SPEAKER.say(cause_of(of))]
        for of in result["bookings"]
    ]  # fmt: skip


def ground_rows(result: Record) -> Rows:
    """From where each figure comes that was drawn by."""
    return [[SPEAKER.say(word) if word else "" for word in ground_words(of)] for of in grounds_of(result)]


def cost_frame(result: Record) -> pd.DataFrame:
    """policy, p10, p50, p90, says: what each way costs."""
    return pd.DataFrame([
        {"policy": _played(of), **{each: of["cost"][each] for each in ("p10", "p50", "p90")},
         "says": say("rehearsal-p50-says", cost=of["cost"]["p50"], currency=result["currency"])}
        for of in result["policies"]
    ])  # fmt: skip


def figures_of(result: Record) -> Sequence[tuple[str, str, str]]:
    first, last, currency = result["policies"][0], _last_promised(result), result["currency"]
    cost = first["cost"]
    says, never = result["plan_says"], say("rehearsal-never")
    more = say("rehearsal-promise-more", looms=last["looms"], half=_day(last["p50"]).text) if last else ""
    return [
        (say("rehearsal-most-done"), say("rehearsal-some-of", some=first["most_done"], all=result["to_do"]),
         say("rehearsal-at-least")),
        (say("rehearsal-promise"), _day(last["p80"]).text if last else never, more),
        (say("rehearsal-cost-p50"), money(cost["p50"], currency), say("rehearsal-cost-range", low=cost["p10"], high=cost["p90"])),
        (say("rehearsal-plan-says"), money(says["cost"], currency), say("rehearsal-all-by", day=_day(says["finish"]).text)),
    ]  # fmt: skip


def _last_promised(result: Record) -> Record | None:
    """The most looms that are done in 80 of 100 runs."""
    return next((line for line in reversed(result["milestones"]) if line["p80"]), None)


def _played(of: Record) -> str:
    """The policy in words."""
    return policy_word(of["policy"])


def _day(at: str | None) -> Cell:
    """`never` sorts last."""
    if at is None:
        return Cell(say("rehearsal-never"), datetime.max.isoformat())
    return Cell(day(datetime.fromisoformat(at).date()), at)


def _moment(at: str, zone: Any) -> Cell:
    return Cell(moment(datetime.fromisoformat(at), zone), at)


def _percent(part: float) -> Cell:
    return Cell(share(part), part)


def _amount(amount: float | None) -> Cell | str:
    return "" if amount is None else Cell(money(amount), amount)
