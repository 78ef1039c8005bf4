"""What came of a rehearsal, as it is kept and written for a program."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from datetime import datetime
from math import ceil, isfinite
from typing import Any

from tracker.domain.clock import start_of_day
from tracker.domain.plan import Booking, Plan
from tracker.domain.terms import Terms
from tracker.planning.checks.case import SLOT
from tracker.rehearsal.rehearsing import Ask, Rehearsed
from tracker.rehearsal.rests_on import Ground
from tracker.rehearsal.results import (
    Difference,
    MeanInterval,
    OfPolicy,
    Spread,
    difference,
    of_policy,
    risks,
    when_done,
    worries,
)
from tracker.rehearsal.runs import Outcome, quantile
from tracker.rehearsal.sources import OF_SOURCE
from tracker.services.plans.plan_record import local

SHARES = (0.25, 0.5, 0.75, 0.9, 1.0)
"""Parts of the booked looms for which it is said when they are done."""


@dataclass(frozen=True, slots=True)
class Basis:
    """What was played."""

    number: int
    plan: Plan
    bookings: tuple[Booking, ...]
    """Those still to come."""
    terms: Terms
    as_of: datetime
    grounds: tuple[Ground, ...] = ()
    """From where each figure comes that was drawn by."""

    def at(self, slot: float) -> str | None:
        """A slot as a local moment; None = never."""
        zone = self.terms.zone
        first = start_of_day(self.as_of.astimezone(zone).date(), self.terms)
        return local(first + int(slot) * SLOT, zone) if isfinite(slot) else None

    def moments(self, slots: Spread) -> dict[str, str | None]:
        return {share: self.at(slot) for share, slot in asdict(slots).items()}


def record_of(found: Rehearsed, ask: Ask, basis: Basis) -> dict[str, Any]:
    """Moments local with offset, None = never; money in the currency of the plan; shares 0 to 1."""
    first = ask.policies[0].name
    runs = {name: of for (name, source, _), of in found.runs.items() if source is None}
    main, to_do = runs[first], len(basis.bookings)
    without = {(source, crew): of for (_, source, crew), of in found.runs.items() if source is not None}
    spreads = {name: getattr(ask.spreads, name) for name in OF_SOURCE}
    return {
        "plan": basis.number, "as_of": local(basis.as_of, basis.terms.zone), "currency": basis.plan.currency,
        "runs": len(main), "runs_asked": ask.runs, "seed": ask.seed, "stopped": found.stopped,
        "spreads": spreads, "rests_on": grounds_record(basis.grounds), "off": sorted(ask.spreads.off),
        "waiting_limit_h": found.limit_h, "to_do": to_do,
        "plan_says": _plan_says(basis),
        "policies": [_policy(of_policy(name, of, to_do), basis) for name, of in runs.items()],
        "milestones": [_milestone(main, looms, basis) for looms in _milestones(main, to_do)],
        "target": _target(main, basis),
        "differences": [{"policy": name} | _difference(difference(of, main)) for name, of in runs.items() if name != first],
        "worries": [{"source": w.source.value, "crew": w.crew} | _difference(w.worth) for w in worries(main, without)],
        "bookings": _risks(main, basis),
    }  # fmt: skip


def grounds_record(grounds: Iterable[Ground]) -> list[dict[str, Any]]:
    """From where each figure comes: `by` records, asked or usual."""
    return [
        asdict(ground) | {"source": ground.source.value, "names": list(ground.names),
                          "since": ground.since.isoformat() if ground.since else None}
        for ground in grounds
    ]  # fmt: skip


def _plan_says(basis: Basis) -> dict[str, Any]:
    """Cost and end of the bookings to come, as the plan reckons them."""
    left = sum(item.cost for item in basis.plan.left_over)
    ends = max(booking.end for booking in basis.bookings)
    cost = sum(booking.cost.paid for booking in basis.bookings) + left
    return {"cost": cost, "finish": local(ends, basis.terms.zone), "left_over": len(basis.plan.left_over)}


def _policy(of: OfPolicy, basis: Basis) -> dict[str, Any]:
    moments = {"finish": basis.moments(of.finish), "all_done": basis.moments(of.all_done)}
    return asdict(of) | moments | {"mean_cost": _interval(of.mean_cost), "without_lost": _interval(of.without_lost)}


def _interval(of: MeanInterval) -> dict[str, float | None]:
    """Ends are None where one run alone says nothing of them."""
    low, high = (each if isfinite(each) else None for each in (of.low, of.high))
    return {"mean": of.mean, "low": low, "high": high}


def _milestones(runs: Sequence[Outcome], to_do: int) -> Iterable[int]:
    """Parts of the looms, and the most that can be promised: those done in 80 of 100 runs."""
    most = -int(quantile([-len(run.ends) for run in runs], 0.8))
    return sorted({ceil(share * to_do) for share in SHARES} | ({most} - {0}))


def _milestone(runs: Sequence[Outcome], looms: int, basis: Basis) -> dict[str, Any]:
    reached = sum(len(run.ends) >= looms for run in runs) / len(runs)
    return {"looms": looms, "reached": reached} | basis.moments(when_done(runs, looms))


def _target(runs: Sequence[Outcome], basis: Basis) -> dict[str, Any] | None:
    """How many looms are done by the end of the day that the mill has set itself; None without one."""
    day = basis.terms.target_finish
    if day is None:
        return None
    first = start_of_day(basis.as_of.astimezone(basis.terms.zone).date(), basis.terms)
    done = [sum((first + end * SLOT).astimezone(basis.terms.zone).date() <= day for end in run.ends) for run in runs]
    enough = sum(each >= len(basis.bookings) for each in done) / len(runs)
    return {"day": day.isoformat(), "all_done": enough, "looms_in_80": -int(quantile([-each for each in done], 0.8))}


def _difference(found: Difference | None) -> dict[str, Any]:
    """What it costs more, with its 95 % interval; nothing where no run was played both ways."""
    if found is None:
        return {"runs": 0, "mean": None, "low": None, "high": None, "sure": False, "more_runs": None}
    cost = found.cost
    return {"runs": found.runs} | _interval(cost) | {"sure": cost.is_sure, "more_runs": found.more_runs}


def _risks(runs: Sequence[Outcome], basis: Basis) -> list[dict[str, Any]]:
    """Of each booking to come, the likeliest to fail first; empty where the policy follows no plan."""
    if not runs[0].looms:
        return []
    to_do = {booking.key for booking in basis.bookings}
    found = [risk for risk in risks(basis.plan.bookings, runs) if risk.booking.key in to_do]
    found.sort(key=lambda risk: (risk.on_time, risk.booking.start, risk.booking.key.sort_key))
    return [
        {"hall": r.booking.key.hall, "loom": r.booking.key.loom, "start": local(r.booking.start, basis.terms.zone),
         "on_time": r.on_time, "lost": r.lost, "cause": r.cause, "of_cause": r.of_cause}
        for r in found
    ]  # fmt: skip
