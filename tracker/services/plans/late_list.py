"""What is late at a moment, by what the database holds."""

from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.late import Late
from tracker.forecast.beam_outs import forecast
from tracker.mill_state.late import late
from tracker.mill_state.progress import still_to_come
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom
from tracker.words import ENGLISH


def late_now(context: Context, at: datetime) -> tuple[Late, ...]:
    """By the plan in force and the records; empty where nothing was published."""
    with context.reading() as uow:
        mill, plan = uow.mill(), uow.published_plan()
        booked, stages, room = uow.last_bookings(mill.looms.keys()), uow.stages(), read_stockroom(uow)
    if plan is None:
        return ()
    recorded = {key: change.stage for key, change in stages.items()}
    return late(mill, still_to_come(plan, recorded, booked), recorded, forecast(mill, at, at), room.wanting, at)


def late_record(one: Late, zone: ZoneInfo) -> dict[str, Any]:
    """As `--json` writes it; moments local with offset."""
    key = one.key
    return {"code": one.what.code, "hall": key.hall if key else None, "loom": key.loom if key else None,
            "due": one.due.astimezone(zone).isoformat(timespec="minutes"), "days": one.days,
            "what": ENGLISH.say(one.what), "follows": ENGLISH.say(one.follows)}  # fmt: skip
