"""Alarms that were seen stay quiet until the value that they rest on changes."""

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from tracker.commissioning.settings.alarms import Alarm, Review
from tracker.domain.seen_alarm import SeenAlarm
from tracker.domain.words import fold


class QuietAlarm(NamedTuple):
    alarm: Alarm
    seen: SeenAlarm


def apart(review: Review, seen: Iterable[SeenAlarm]) -> tuple[Review, tuple[QuietAlarm, ...]]:
    """The review with the alarms that nobody has seen as they stand now, and those that somebody has. Where one was seen more
    than once the last time counts."""
    last = {_place(s.key, s.setting, s.side, s.kind): s for s in seen}
    loud: list[Alarm] = []
    quiet: list[QuietAlarm] = []
    for alarm in review.alarms:
        one = alarm.series
        found = last.get(_place(one.key, one.setting, one.side, alarm.kind.value))
        if found is not None and found.value == alarm.value.value:
            quiet.append(QuietAlarm(alarm, found))
        else:
            loud.append(alarm)
    return replace(review, alarms=tuple(loud)), tuple(quiet)


def _place(key: object, setting: str, side: str | None, kind: str) -> tuple:
    return key, fold(setting), fold(side or ""), kind
