"""What people do in the hall (MODEL.md, section 2). A policy sees what a person would: rosters, stock, work in hand, and
whether a beam is out; never what is still to come."""

from dataclasses import dataclass

from tracker.planning.baseline.walk import LIMITS_H

HELD_SLOTS = 32
"""Working slots for which a loom whose beam is out, or whose booked start has passed, is kept for its crew; as long as a
plan may let one wait."""


@dataclass(frozen=True, slots=True)
class Policy:
    name: str
    follows_plan: bool = True
    """False = each beam-out is taken as it comes."""
    looks_ahead: bool = True
    """Whether a start is made only where people, tools and rules allow for the whole conversion, by the roster and the work
    in hand."""
    cuts: bool = True
    """Whether the rest of a late warp may be cut once a crew has waited its patience; else the loom is passed over."""
    always_cuts: bool = False
    """As the plan reckons: after the patience, whatever it costs."""
    limit_h: float | None = None
    """Clock hours that a beam-out is waited for without a plan; None = as long as with one."""
    replanned: bool = False
    """Whether the planner runs anew each Monday, and on a day on which a firm booking is broken."""


KEPT = Policy("kept")
NEVER_CUT = Policy("never-cut", cuts=False)
REPLANNED = Policy("replanned", replanned=True)
AS_RECKONED = Policy("as-reckoned", looks_ahead=False, always_cuts=True)
"""What a plan's own figures assume; with it the model is held against them."""
RULE = Policy("rule-of-thumb", follows_plan=False)


def rule_of_thumb(limit_h: float) -> Policy:
    return Policy(RULE.name, follows_plan=False, limit_h=limit_h)


RULE_LIMITS_H = tuple(limit for limit in LIMITS_H if limit >= 4)
"""Limits on waiting that are tried for the rule of thumb."""
