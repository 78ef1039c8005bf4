"""A rehearsal as a workbook: what it says, by when how many looms are done, what it costs, the worries, the bookings."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.tables import Kind
from tracker.export.plan_workbook import COST_TERMS
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet

SHARES = {"p10": "col-p10", "p50": "col-p50", "p80": "col-p80", "p90": "col-p90"}
"""Share of the runs → code of its heading."""

TERMS = COST_TERMS | {"lost": "col-cost-lost", "left_over": "col-cost-of-left-over"}
"""Term of the cost → code of its words."""


@dataclass(frozen=True, slots=True)
class RehearsalWords:
    """What is said of a rehearsal: its sentences, then the words of each worry and booking, in their order."""

    says: Sequence[str]
    worries: Sequence[str]
    causes: Sequence[str]
    policies: Mapping[str, str]
    """How it was played → its words."""
    grounds: Sequence[Sequence[str]]
    """Of each figure that was drawn by: what varies and how much, for whom, from where it comes, how many records."""


def rehearsal_sheets(result: Mapping[str, Any], words: RehearsalWords, write: Wording) -> list[TidySheet]:
    """Sheets of a rehearsal as it is kept. Moments are local, money is in the currency of the plan."""
    sheets = [
        _done(result, words, write), _costs(result, words, write), _worries(result, words, write), _bookings(result, words, write),
        _grounds(words, write),
    ]  # fmt: skip
    return [sheet for sheet in sheets if sheet.rows]


def _done(result: Mapping[str, Any], words: RehearsalWords, write: Wording) -> TidySheet:
    col = write.col
    columns = [col("col-looms-done", Kind.INTEGER), col("col-reached", Kind.FRACTION),
               *(col(code, Kind.MOMENT, about="hint-not-before-horizon") for code in SHARES.values())]  # fmt: skip
    rows = [
        [line["looms"], line["reached"], *(_moment(line[share]) for share in SHARES)] for line in result["milestones"]
    ]
    return write.sheet("book-done-by", columns, rows, [write.say("book-rehearsal-about"), *words.says])


def _costs(result: Mapping[str, Any], words: RehearsalWords, write: Wording) -> TidySheet:
    cash, col = result["currency"], write.col
    terms = [term for term in result["policies"][0]["terms"] if term != "surviving"]
    amounts = [*(col(code, Kind.NUMBER, unit=cash, digits=0) for code in (*SHARES.values(), "col-mean"))]
    of_it = [
        Col(write.say("col-of-it", term=write.say(TERMS[term]), currency=cash), Kind.NUMBER, digits=0) for term in terms
    ]
    hours = [col(code, Kind.NUMBER, unit="h", digits=1) for code in ("col-crews-waiting", "col-crews-idle")]
    columns = [col("col-played"), col("col-runs", Kind.INTEGER), *amounts, *of_it, *hours]
    rows = [
        [words.policies[of["policy"]], of["runs"], *(of["cost"][share] for share in SHARES), of["mean_cost"]["mean"],
         *(of["terms"][term] for term in terms), of["waited_h"], of["idle_h"]]
        for of in result["policies"]
    ]  # fmt: skip
    says = write.say("book-plan-itself", cost=result["plan_says"]["cost"], currency=cash)
    return write.sheet("book-costs", columns, rows, [says])


def _worries(result: Mapping[str, Any], words: RehearsalWords, write: Wording) -> TidySheet:
    col, cash = write.col, result["currency"]
    amounts = (col(code, Kind.NUMBER, unit=cash, digits=0) for code in ("col-saves", "col-at-least", "col-at-most"))
    columns = [col("col-if-certain"), *amounts, col("col-sure", Kind.YES_NO), col("col-runs", Kind.INTEGER)]
    rows = [
        [word, of["mean"], of["low"], of["high"], of["sure"], of["runs"]]
        for word, of in zip(words.worries, result["worries"], strict=True)
    ]
    return write.sheet("book-worries", columns, rows, [write.say("book-worries-about")])


def _bookings(result: Mapping[str, Any], words: RehearsalWords, write: Wording) -> TidySheet:
    col = write.col
    columns = [
        col("heading-loom", Kind.IDENTIFIER), col("heading-hall", Kind.IDENTIFIER), col("heading-start", Kind.MOMENT),
        col("col-within-a-day", Kind.FRACTION), col("col-lost", Kind.FRACTION), col("col-held-up-by"),
        col("col-that-in", Kind.FRACTION),
    ]  # fmt: skip
    rows = [
        [of["loom"], of["hall"], _moment(of["start"]), of["on_time"], of["lost"], cause, of["of_cause"]]
        for cause, of in zip(words.causes, result["bookings"], strict=True)
    ]
    return write.sheet("book-at-risk", columns, rows, [write.say("book-at-risk-about")])


def _grounds(words: RehearsalWords, write: Wording) -> TidySheet:
    columns = [write.col(code) for code in ("col-varies", "col-taken-for", "col-comes-from", "col-records")]
    rows = [list(ground) for ground in words.grounds]
    return write.sheet("book-rests-on", columns, rows, [write.say("book-rests-on-about")])


def _moment(at: str | None) -> datetime | None:
    """Local, as a workbook cell holds it."""
    return datetime.fromisoformat(at).replace(tzinfo=None) if at else None
