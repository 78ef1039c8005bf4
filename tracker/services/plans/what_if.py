"""What if a receipt slips, a delivery is short, a part is scrapped: which bookings fall, and the plan that follows."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.needs import Fallen, StockChange
from tracker.domain.plan import Plan
from tracker.errors import DataError, Message, message
from tracker.kits.falls import changed_mill, fallen
from tracker.mill_state.planning import prepare
from tracker.planning.planner import Progress
from tracker.planning.planner import plan as solve
from tracker.services.context import Context
from tracker.services.parts.stock_report import parts_listed
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.plans.moves import Move, differences
from tracker.services.plans.plan import check
from tracker.services.plans.planning_data import read_planning_data


@dataclass(frozen=True, slots=True)
class WhatIfReport:
    """Nothing of it is saved."""

    as_of: datetime
    zone: ZoneInfo
    currency: str
    before: tuple[Fallen, ...]
    """Bookings of the published plan that lack something already without the change."""
    fallen: tuple[Fallen, ...]
    """Bookings that fall by the change, in booking order."""
    replan: Plan | None
    """The best plan after the change; None where it was not asked for."""
    moves: tuple[Move, ...]
    """How it differs from the published one."""
    cost_before: float
    """Objective of the published plan."""

    def messages(self) -> list[Message]:
        """The answer."""
        found = [_fall(fall, self.zone) for fall in self.fallen] or [message("no-booking-falls")]
        if self.before:
            found.append(message("lacked-before", many=len(self.before)))
        if self.replan:
            found.append(message("plan-that-follows", moves=len(self.moves), left_over=len(self.replan.left_over),
                                 cost=self.replan.objective, before=self.cost_before, currency=self.currency))  # fmt: skip
        return found

    def record(self) -> dict[str, Any]:
        return {
            "before": [_fallen_record(fall, self.zone) for fall in self.before],
            "fallen": [_fallen_record(fall, self.zone) for fall in self.fallen],
            "cost_before": self.cost_before,
            "replan": None if self.replan is None else {
                "status": self.replan.status.value, "objective": self.replan.objective, "bound": self.replan.bound,
                "bookings": len(self.replan.bookings), "left_over": len(self.replan.left_over),
                "moves": [{"hall": m.key.hall, "loom": m.key.loom, "what": m.what,
                           "before": _local(m.before.start, self.zone) if m.before else None,
                           "after": _local(m.after.start, self.zone) if m.after else None} for m in self.moves],
            },
        }  # fmt: skip


def what_if(
    context: Context,
    changes: Sequence[StockChange],
    as_of: datetime | None = None,
    replan: bool = False,
    time_limit_s: float | None = None,
    progress: Progress | None = None,
) -> WhatIfReport:
    """What the changes do to the published plan. With `replan`, the plan that follows: fallen bookings are free to move,
    firm ones that stand stay. DataError for an unknown order line or part, or where no plan is published."""
    with context.reading() as uow:
        room = read_stockroom(uow, as_of, context.now())
    if room.plan is None:
        raise DataError("nothing-can-fall")
    at = planning_moment(room.mill.terms, as_of, context.now())
    changed = changed_mill(room.mill, changes)
    before = fallen(room.plan, room.with_returns(room.mill), room.issued, room.coming_back, room.held_beside)
    after = fallen(room.plan, room.with_returns(changed), room.issued, room.coming_back, room.held_beside)
    made, moves = None, ()
    if replan:
        data = read_planning_data(context).with_mill(changed)
        prepared = prepare(data, at)
        free = frozenset(fall.key for fall in after) & changed.looms.keys()
        prepared = replace(prepared, problem=replace(prepared.problem, released=free))
        made = solve(prepared.problem, time_limit_s=time_limit_s, progress=progress)
        check(made, prepared.problem)
        moves = differences(data.previous, made, data.mill, data.stages) if data.previous else ()
    fell = tuple(fall for fall in after if fall not in before)
    terms = room.mill.terms
    return WhatIfReport(at, terms.zone, terms.currency, before, fell, made, moves, room.plan.objective)


def _fall(fall: Fallen, zone: ZoneInfo) -> Message:
    start, lacks = fall.start.astimezone(zone), parts_listed(fall.lacks)
    return message("booking-falls", loom=fall.key, start=start, parts=lacks, usable=fall.usable_on)


def _fallen_record(fall: Fallen, zone: ZoneInfo) -> dict[str, Any]:
    return {
        "hall": fall.key.hall,
        "loom": fall.key.loom,
        "start": _local(fall.start, zone),
        "lacks": dict(fall.lacks),
        "usable_on": fall.usable_on.isoformat() if fall.usable_on else None,
    }


def _local(at: datetime, zone: ZoneInfo) -> str:
    return at.astimezone(zone).isoformat(timespec="minutes")
