"""Plans that were made and not published: which of them somebody looks at and what overtook it; what one would move, why, and at
what price."""

from dataclasses import dataclass, replace
from datetime import datetime

from tracker.domain.plan import PlanEntry
from tracker.mill_state.planning import prepare
from tracker.services.context import Context
from tracker.services.parts.needs import orders_relied_on
from tracker.services.plans.plan import PlanReport, Saved, report_of
from tracker.services.plans.planning_data import read_happened, read_planning_data
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class ToldPlan:
    """A plan as it is told from others."""

    number: int
    who: str
    at: datetime
    """When it was made or published, in the mill's zone."""
    cost: float
    """Without its moves, in `currency`."""
    currency: str


@dataclass(frozen=True, slots=True)
class LookedAt:
    """What somebody looks at, with what overtook it."""

    plan: ToldPlan | None
    """Made and not published; None where there is none to look at."""
    published: ToldPlan | None = None
    """The plan in force, where it was published since that was made."""
    newer: ToldPlan | None = None
    """The newest that is made and not published, where it is newer than both."""
    own: ToldPlan | None = None
    """The newest made by who looks, where it is an older one that can be published."""


def looked_at(context: Context, who: str, kept: int | None) -> LookedAt:
    """What `who` looks at. The plan `kept`, looked at before, stays until `who` makes a newer one or publishes; without one it is
    the newest of `who`, else the newest of all, since the plan in force."""
    with context.reading() as uow:
        entries, now = [entry for entry in uow.plan_entries() if entry.scenario is None], uow.published_number() or 0
        force = next((entry for entry in entries if entry.number == now), None)
        ahead = [entry for entry in entries if entry.number > now]
        mine = next((entry for entry in ahead if entry.who == who), None)
        before = next((entry for entry in entries if entry.number == kept and not entry.published), None)
        if before and force and force.who == who and force.number > before.number:
            before = None
        plan = before or mine or next(iter(ahead), None)
        if plan is None:
            return LookedAt(None)
        if mine and mine.number > plan.number:
            plan = mine
        return LookedAt(
            _named(uow, plan),
            _named(uow, force if now > plan.number else None),
            _named(uow, ahead[0] if ahead and ahead[0].number > plan.number else None),
            _named(uow, mine if mine and mine.number < plan.number else None),
        )


def _named(uow: UnitOfWork, entry: PlanEntry | None) -> ToldPlan | None:
    plan = uow.plan(entry.number) if entry else None
    if entry is None or plan is None:
        return None
    return ToldPlan(entry.number, entry.who, entry.made_at.astimezone(uow.zone), plan.without_moves, entry.currency)


def proposed(context: Context, number: int) -> PlanReport:
    """That plan beside the one in force, by the data as they stand."""
    with context.reading() as uow:
        made = uow.plan(number)
    assert made
    data = read_planning_data(context)
    problem = prepare(data, made.as_of).asked(made.asked)
    report = report_of(made, data, problem, read_happened(context, data, made.as_of), Saved(number, published=False))
    return replace(report, orders=orders_relied_on(context, made, data.mill))
