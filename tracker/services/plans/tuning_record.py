"""What came of a tuning, as it is kept and written for a program."""

from collections.abc import Mapping
from dataclasses import asdict
from math import isfinite
from typing import Any

from tracker.domain.terms import Care
from tracker.rehearsal.rests_on import rests_on
from tracker.rehearsal.results import MeanInterval, interval
from tracker.rehearsal.tuning import AskTuning, Candidate, Tried, Tuned
from tracker.services.plans.plan import PlanTask
from tracker.services.plans.plan_record import local
from tracker.services.plans.rehearsal_record import grounds_record

KIND = "tuning"


def tuning_record(found: Tuned, ask: AskTuning, task: PlanTask, number: int) -> dict[str, Any]:
    """Money in the currency of the plan. `paper` is what a plan says that it costs, `kept` what it cost in the hall on average."""
    first, without_care, best, terms = found.tried[0], found.without, found.best, task.data.mill.terms
    assert best and without_care
    without, with_care = found.kept or (None, None)
    return {
        "kind": KIND, "plan": number, "as_of": local(task.as_of, terms.zone), "currency": terms.currency, "seed": ask.seed,
        "afresh": task.request.afresh, "tune_on": ask.tune_on, "runs": found.runs, "runs_asked": ask.runs,
        "off": sorted(ask.spreads.off), "rests_on": grounds_record(rests_on(task.problem, ask.spreads)),
        "stopped": found.stopped, "helps": found.helps,
        "light": found.light, "without": _tried(without_care, without_care) | {"kept_elsewhere": without},
        "best": _tried(best, without_care) | {"kept_elsewhere": with_care},
        "judged": _interval(found.judged) if found.judged else None,
        "tried": [_tried(one, first) for one in found.tried],
    }  # fmt: skip


def candidate_of(result: Mapping[str, Any]) -> Candidate:
    """The best of a kept tuning."""
    return Candidate(Care(**result["best"]["terms"]), result["best"]["variant"])


def _tried(one: Tried, first: Tried) -> dict[str, Any]:
    more = interval([mine - theirs for mine, theirs in zip(one.costs, first.costs, strict=True)])
    return {
        "terms": asdict(one.candidate.care), "variant": one.candidate.variant, "paper": one.plan.paid,
        "booked": len(one.plan.bookings), "gap": one.plan.gap, "kept": one.kept, "more": _interval(more),
    }  # fmt: skip


def _interval(of: MeanInterval) -> dict[str, float | None]:
    low, high = (each if isfinite(each) else None for each in (of.low, of.high))
    return {"mean": of.mean, "low": low, "high": high}
