"""The newest plan that was made and not published: what it would move, why, and at what price."""

from dataclasses import replace

from tracker.domain.plan import PlanEntry
from tracker.mill_state.planning import prepare
from tracker.services.context import Context
from tracker.services.parts.needs import orders_relied_on
from tracker.services.plans.plan import PlanReport, Saved, report_of
from tracker.services.plans.planning_data import read_happened, read_planning_data


def proposed_number(context: Context) -> int | None:
    """Its number; None where the plan in force is newer, or none was made."""
    with context.reading() as uow:
        entries, now = uow.plan_entries(), uow.published_number() or 0
    newer = (e.number for e in entries if not e.published and e.scenario is None and e.number > now)
    return max(newer, default=None)


def published_since(context: Context, number: int) -> PlanEntry | None:
    """The plan in force where it was published after the plan `number` was made; else None."""
    with context.reading() as uow:
        entries, now = uow.plan_entries(), uow.published_number() or 0
    return next((entry for entry in entries if entry.number == now > number), None)


def proposed(context: Context) -> PlanReport | None:
    """That plan beside the one in force, by the data as they stand; None where there is none."""
    number = proposed_number(context)
    if number is None:
        return None
    with context.reading() as uow:
        made = uow.plan(number)
    assert made
    data = read_planning_data(context)
    problem = prepare(data, made.as_of).asked(made.asked)
    report = report_of(made, data, problem, read_happened(context, data, made.as_of), Saved(number, published=False))
    return replace(report, orders=orders_relied_on(context, made, data.mill))
