"""A rehearsal as a workbook: what it says, by when how many looms are done, what it costs, the worries, the bookings."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet

SHARES = ("p10", "p50", "p80", "p90")


def rehearsal_sheets(
    result: Mapping[str, Any], says: Sequence[str], worries: Sequence[str], causes: Sequence[str]
) -> list[TidySheet]:
    """Sheets of a rehearsal as it is kept; `says` are its sentences, `worries` and `causes` the words of each worry and
    booking, in their order. Moments are local, money is in the currency of the plan."""
    sheets = [_done(result, says), _costs(result), _worries(result, worries), _bookings(result, causes)]
    return [sheet for sheet in sheets if sheet.rows]


def _done(result: Mapping[str, Any], says: Sequence[str]) -> TidySheet:
    columns = [Col("Looms done", Kind.INTEGER), Col("Reached (% of runs)", Kind.FRACTION),
               *(Col(share.upper(), Kind.MOMENT, about="Empty: not before the horizon.") for share in SHARES)]  # fmt: skip
    rows = [
        [line["looms"], line["reached"], *(_moment(line[share]) for share in SHARES)] for line in result["milestones"]
    ]
    lines = ["The plan played many times, from today to its horizon: estimates, not promises.", *says]
    return TidySheet("Done by", columns, rows, lines)


def _costs(result: Mapping[str, Any]) -> TidySheet:
    cash = result["currency"]
    terms = list(result["policies"][0]["terms"])
    amounts = [*(share.upper() for share in SHARES), "Mean", *(f"Of it {term.replace('_', ' ')}" for term in terms)]
    columns = [Col("Played"), Col("Runs", Kind.INTEGER), *(Col(f"{name} ({cash})", Kind.NUMBER, digits=0) for name in amounts),
               Col("Crews waiting for beams (h)", Kind.NUMBER, digits=1), Col("Crews idle (h)", Kind.NUMBER, digits=1)]  # fmt: skip
    rows = [
        [of["policy"], of["runs"], *(of["cost"][share] for share in SHARES), of["mean_cost"]["mean"],
         *(of["terms"][term] for term in terms), of["waited_h"], of["idle_h"]]
        for of in result["policies"]
    ]  # fmt: skip
    says = result["plan_says"]
    return TidySheet("Costs", columns, rows, [f"The plan itself says {says['cost']:,.2f} {cash}."])


def _worries(result: Mapping[str, Any], words: Sequence[str]) -> TidySheet:
    amounts = (
        Col(f"{name} ({result['currency']})", Kind.NUMBER, digits=0) for name in ("Saves", "At least", "At most")
    )
    columns = [Col("If it were certain"), *amounts, Col("Sure", Kind.YES_NO), Col("Runs", Kind.INTEGER)]
    rows = [
        [word, of["mean"], of["low"], of["high"], of["sure"], of["runs"]]
        for word, of in zip(words, result["worries"], strict=True)
    ]
    return TidySheet("Worries", columns, rows, ["What the programme would cost less, with its 95 % interval."])


def _bookings(result: Mapping[str, Any], causes: Sequence[str]) -> TidySheet:
    columns = [Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER), Col("Start", Kind.MOMENT),
               Col("Within a day (% of runs)", Kind.FRACTION), Col("Lost (% of runs)", Kind.FRACTION), Col("Held up most by"),
               Col("That in (% of these)", Kind.FRACTION)]  # fmt: skip
    rows = [
        [of["loom"], of["hall"], _moment(of["start"]), of["on_time"], of["lost"], cause, of["of_cause"]]
        for cause, of in zip(causes, result["bookings"], strict=True)
    ]
    return TidySheet("Bookings at risk", columns, rows, ["The likeliest to fail first."])


def _moment(at: str | None) -> datetime | None:
    """Local, as a workbook cell holds it."""
    return datetime.fromisoformat(at).replace(tzinfo=None) if at else None
