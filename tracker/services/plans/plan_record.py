"""A plan as commands write it for a program."""

from dataclasses import asdict
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.messages import kept
from tracker.domain.plan import Booking, CostTerms, Keeping, Plan
from tracker.errors import Message
from tracker.words import ENGLISH


def plan_record(plan: Plan, zone: ZoneInfo) -> dict[str, Any]:
    """The plan; moments local with offset, money in its currency."""
    return {
        "status": plan.status.value,
        "objective": plan.objective,
        "bound": plan.bound,
        "gap": plan.gap,
        "seconds": plan.seconds,
        "currency": plan.currency,
        "as_of": local(plan.as_of, zone),
        "horizon_end": local(plan.horizon_end, zone),
        "keeping": _keeping_record(plan.keeping) if plan.keeping else None,
        "reasons": [in_json(reason) for reason in plan.reasons],
        "crew_changes": plan.crew_changes,
        "bookings": [_booking_record(booking, zone) for booking in plan.bookings],
        "left_over": [
            {"hall": item.key.hall, "loom": item.key.loom, "why": in_json(item.why), "cost": item.cost} for item in plan.left_over
        ],
        "prices": [{"what": in_json(p.what), "week": p.week, "price": p.price} for p in plan.prices],
        "other_dates": [
            {"hall": o.key.hall, "loom": o.key.loom, "window": o.window, "kind": o.kind.value, "choices": dict(o.choices),
             "start": local(o.start, zone), "end": local(o.end, zone), "extra_cost": o.extra_cost}
            for o in plan.other_dates
        ],
    }  # fmt: skip


def _keeping_record(keeping: Keeping) -> dict[str, Any]:
    free = keeping.free
    return {
        "moves": keeping.moves, "moves_cost": keeping.moves_cost, "fewest_moves": keeping.fewest, "most_moves": keeping.most,
        "free": asdict(free) if free else None,
    }  # fmt: skip


def _booking_record(booking: Booking, zone: ZoneInfo) -> dict[str, Any]:
    cost = booking.cost
    return {
        "hall": booking.key.hall,
        "loom": booking.key.loom,
        "window": booking.window,
        "kind": booking.kind.value,
        "choices": dict(booking.choices),
        "start": local(booking.start, zone),
        "end": local(booking.end, zone),
        "pause": {"from": local(booking.pause[0], zone), "to": local(booking.pause[1], zone)}
        if booking.pause
        else None,
        "beam_out_p50": local(booking.beam_out_p50, zone) if booking.beam_out_p50 else None,
        "slots": booking.slots,
        "labour_h": booking.labour_h,
        "firm": booking.firm,
        "pilot": booking.pilot,
        "attended": booking.attended,
        "crews": [{"crew": t.crew, "from": local(t.start, zone), "to": local(t.end, zone)} for t in booking.crews],
        "needs": [
            {n.kind: n.what, "how_many": n.amount, "from": local(n.start, zone), "to": local(n.end, zone)}
            for n in booking.needs
        ],
        "cost": {term: getattr(cost, term) for term in CostTerms.__slots__},
    }


def in_json(message: Message) -> dict[str, Any]:
    """Code, parameters and words."""
    return kept(message) | {"words": ENGLISH.line(message)}


def local(at: datetime, zone: ZoneInfo) -> str:
    """The moment in the mill's local time, ISO 8601 with offset."""
    return at.astimezone(zone).isoformat(timespec="minutes")
