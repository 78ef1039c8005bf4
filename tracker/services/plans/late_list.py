"""What is late at a moment, by what the database holds."""

from collections.abc import Sequence
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.tables import Kind
from tracker.forecast.beam_outs import forecast
from tracker.mill_state.late import Late, late
from tracker.mill_state.progress import still_to_come
from tracker.office.writing.sheets import Col, TidySheet
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


def late_sheet(found: Sequence[Late], zone: ZoneInfo) -> TidySheet:
    """As a sheet of the plan workbook; moments are the mill's local time."""
    columns = [Col("Since", Kind.MOMENT), Col("Days", Kind.INTEGER), Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER),
               Col("What"), Col("What follows")]  # fmt: skip
    rows = [
        [one.due.astimezone(zone).replace(tzinfo=None), one.days, one.key.loom if one.key else None,
         one.key.hall if one.key else None, ENGLISH.say(one.what), ENGLISH.say(one.follows)]
        for one in found
    ]  # fmt: skip
    return TidySheet("Late", columns, rows)
