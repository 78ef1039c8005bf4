"""What the figures mean, in plain words."""

from dashboards.speaking import SPEAKER, count, money
from tracker.domain.plan import Plan, PlanStatus


def proof(plan: Plan) -> str:
    """How good the published plan is known to be."""
    cost, bound = money(plan.objective, plan.currency), money(plan.bound, plan.currency)
    saves = money(plan.objective - plan.bound, plan.currency)
    if plan.status is PlanStatus.INFEASIBLE:
        return "No plan keeps all limits. " + " ".join(map(SPEAKER.line, plan.reasons))
    if plan.objective <= plan.bound:
        return f"This plan costs {cost}, and it is proven that none for the same data costs less."
    room = f"no plan for the same data can cost less than {bound}, so a better one would save at most {saves} ({share(plan.gap)})."
    if plan.status is PlanStatus.OPTIMAL:
        return f"This plan costs {cost}. It is proven: {room}"
    stopped = " The search was stopped by its time limit." if plan.status is PlanStatus.TIMED_OUT else ""
    return f"This plan costs {cost} and is not yet proven best: {room}{stopped} Planning again with more time may close this."


def share(fraction: float) -> str:
    """`0.08 %`; what is not nothing is never shown as `0.00 %`."""
    percent = fraction * 100
    return "less than 0.01 %" if 0 < percent < 0.01 else f"{percent:.2f} %"


def cost_parts(plan: Plan, booked: float) -> str:
    """What the plan's cost consists of."""
    left = plan.objective - booked
    says = f"{money(booked, plan.currency)} for {count(len(plan.bookings), 'so-many-bookings')}"
    if plan.left_over:
        says += f" and {money(left, plan.currency)} for {count(len(plan.left_over), 'so-many-looms')} left over"
    return says + "."
