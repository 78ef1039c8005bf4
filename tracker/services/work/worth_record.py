"""What `worth --json` writes."""

from dataclasses import asdict
from math import isfinite
from typing import Any

from tracker.commissioning.worth.plain import Estimated
from tracker.commissioning.worth.stepped import CannotTell, Stepped
from tracker.services.work.worth import Measure, WorthReport
from tracker.services.work.worth_says import beside, savings_messages, verdict_message
from tracker.words import Speaker


def worth_record(report: WorthReport) -> dict[str, Any]:
    """Ratios for stops (after ÷ expected); differences for what is measured, widths in mm, efficiencies as fractions."""
    speaker = Speaker(zone=report.terms.zone)
    saved = report.savings
    return {
        "as_of": report.as_of.astimezone(report.terms.zone).isoformat(timespec="minutes"),
        "order_decided_on": report.decided_on.isoformat() if report.decided_on else None,
        "measures": [
            _measure(one) | {"says": speaker.line(verdict_message(one, report.terms.worth_knowing))}
            for one in report.measures
        ],
        "savings": None if saved is None else _plain(asdict(saved)) | {"share_of_claimed": saved.share},
        "share_of_saving": report.terms.share_of_saving,
        "minutes_per_stop": report.minutes_per_stop,
        "currency": report.terms.currency,
        "says": [speaker.line(one) for one in (*beside(report), *savings_messages(report))],
    }


def _measure(one: Measure) -> dict[str, Any]:
    verdict = one.verdict
    return {
        "measure": one.name, "cause": one.cause, "verdict": verdict.word.value,
        "why": verdict.why.value if verdict.why else None, "more_picks": verdict.more_picks,
        "stepped": _stepped(verdict.whole),
        "without_latest_weeks": _stepped(verdict.without_latest),
        "without_deciding_weeks": _stepped(verdict.without_deciding),
        "pooled_by_loom": _told(one.strata), "plain_before_and_after": _told(one.plain),
        "looms": [
            {"hall": loom.key.hall, "loom": loom.key.loom, **_plain({
                "article": loom.article, "before": loom.before, "after": loom.after, "picks_before": loom.picks_before,
                "picks_after": loom.picks_after, "dispersion": loom.dispersion, "picks_needed": loom.picks_needed,
            }), **_told(loom.told)}
            for loom in one.looms
        ],
    }  # fmt: skip


def _stepped(one: Stepped | CannotTell | None) -> dict[str, Any] | str | None:
    if not isinstance(one, Stepped):
        return one.value if one else None
    return _told(one.told) | {
        "observed": one.observed, "expected": one.expected, "picks": one.picks, "converted": one.converted,
        "unconverted": one.unconverted, "silent": one.silent,
        "by_weeks_since": [{"from_week": s.first, "to_week": s.last} | _told(s) for s in one.since],
    }  # fmt: skip


def _told(one: Estimated | None) -> dict[str, Any]:
    return {} if one is None else _plain({"estimate": one.estimate, "low": one.low, "high": one.high})


def _plain(value: Any) -> Any:
    """Without infinities, which JSON has not: null."""
    if isinstance(value, dict):
        return {name: _plain(item) for name, item in value.items()}
    return None if isinstance(value, float) and not isfinite(value) else value
