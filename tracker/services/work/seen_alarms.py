"""Alarms that somebody has seen: they stay quiet until their value changes."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.commissioning.settings.alarms import Alarm
from tracker.domain.seen_alarm import SeenAlarm
from tracker.errors import DataError, Message, message
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.work.settings import settings


@dataclass(frozen=True, slots=True)
class AlarmsSeen:
    alarms: tuple[SeenAlarm, ...]

    def messages(self) -> list[Message]:
        return [message("alarms-marked-seen", alarms=len(self.alarms), loom=str(self.alarms[0].key))]

    def record(self) -> list[dict[str, Any]]:
        return [
            {"hall": one.key.hall, "loom": one.key.loom, "setting": one.setting, "side": one.side, "kind": one.kind,
             "value": one.value, "why": one.why, "at": one.at.isoformat(), "who": one.who}
            for one in self.alarms
        ]  # fmt: skip


def mark_seen(context: Context, loom: str, hall: str | None, why: str, as_of: datetime | None = None) -> AlarmsSeen:
    """Write down that all alarms of a loom were seen and what there is to say to them; they speak again once the value that
    they rest on is another one. DataError where there is no such loom, no alarm to see, or no word is said."""
    context.require(May.RECORD)
    if not why.strip():
        raise DataError("alarms-seen-without-why")
    report = settings(context, loom, hall, as_of)
    if not report.review.alarms:
        raise DataError("alarms-none-to-see", loom=loom)
    with context.unit_of_work(May.RECORD) as uow:
        seen = tuple(_seen(alarm, why.strip(), context.now(), uow.who) for alarm in report.review.alarms)
        uow.add_seen_alarms(seen)
        uow.commit()
    return AlarmsSeen(seen)


def _seen(alarm: Alarm, why: str, at: datetime, who: str) -> SeenAlarm:
    one = alarm.series
    return SeenAlarm(one.key, one.setting, one.side, alarm.kind.value, alarm.value.value, why, at, who)
