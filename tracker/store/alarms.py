"""Keep which alarms were seen and read them back."""

from collections.abc import Iterable
from dataclasses import asdict

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.seen_alarm import SeenAlarm
from tracker.store.models import SeenAlarmRow
from tracker.store.withdrawals import stands


def add_seen_alarms(session: Session, alarms: Iterable[SeenAlarm]) -> None:
    for alarm in alarms:
        fields = asdict(alarm)
        key = fields.pop("key")
        session.add(SeenAlarmRow(hall=key.hall, loom=key.loom, **fields))
    session.flush()


def seen_alarms(session: Session) -> list[SeenAlarm]:
    """In the order in which they were seen."""
    return [
        SeenAlarm(LoomKey(row.hall, row.loom), row.setting, row.side, row.kind, row.value, row.why, row.at, row.who)
        for row in session.scalars(select(SeenAlarmRow).where(stands(SeenAlarmRow)).order_by(SeenAlarmRow.id))
    ]
