"""What the figures mean, in plain words."""

from dashboards.speaking import SPEAKER, decimal, say
from tracker.domain.plan import Plan, PlanStatus

LEAST = 0.01
"""Percent, below which a share has no figures."""


def proof(plan: Plan) -> str:
    """How good the published plan is known to be."""
    if plan.status is PlanStatus.INFEASIBLE:
        return say("proof-none", reasons=" ".join(map(SPEAKER.line, plan.reasons)))
    told = {"cost": plan.objective, "currency": plan.currency}
    if plan.objective <= plan.bound:
        return say("proof-least", **told)
    told |= {"bound": plan.bound, "saves": plan.objective - plan.bound, "share": share(plan.gap)}
    if plan.status is PlanStatus.OPTIMAL:
        return say("proof-within", **told)
    return say("proof-open", how="stopped" if plan.status is PlanStatus.TIMED_OUT else "feasible", **told)


def share(fraction: float) -> str:
    """`0.08 %`; what is not nothing is never shown as `0.00 %`."""
    percent = fraction * 100
    if 0 < percent < LEAST:
        return say("share-least", share=f"{decimal(LEAST, 2)} %")
    return f"{decimal(percent, 2)} %"


def cost_parts(plan: Plan, booked: float) -> str:
    """What the plan's cost consists of."""
    left = plan.objective - booked
    return say("cost-parts", booked=booked, bookings=len(plan.bookings), left=left, looms=len(plan.left_over),
               currency=plan.currency)  # fmt: skip
