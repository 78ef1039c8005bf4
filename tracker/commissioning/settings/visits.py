"""Follow-up visits after sign-off: which are due, which are overdue."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey

USUAL_DAYS = (1, 7, 30)
"""Days after sign-off."""


@dataclass(frozen=True, slots=True)
class Visit:
    key: LoomKey
    after_days: int
    due_on: date
    """Local day."""
    done_on: date | None
    """The first day on which it was done; None = not yet."""

    def is_due(self, today: date) -> bool:
        return self.done_on is None and self.due_on <= today

    def is_overdue(self, today: date) -> bool:
        """Its day is over."""
        return self.done_on is None and self.due_on < today


def visits(
    signed_off: Mapping[LoomKey, datetime],
    made: Mapping[LoomKey, Iterable[datetime]],
    zone: ZoneInfo,
    after_days: Sequence[int] = USUAL_DAYS,
) -> list[Visit]:
    """All visits of the signed-off looms, by due day. A visit made counts for the due day nearest to it (the earlier of
    two), so that one on the sixth day is that of day 7; before sign-off it counts for none."""
    found = []
    for key, at in signed_off.items():
        signed_on = at.astimezone(zone).date()
        days = sorted((m.astimezone(zone).date() - signed_on).days for m in made.get(key, ()) if m > at)
        served: dict[int, int] = {}
        for day in days:
            served.setdefault(min(after_days, key=lambda due, day=day: (abs(due - day), due)), day)
        for due in after_days:
            done = served.get(due)
            found.append(
                Visit(key, due, signed_on + timedelta(due), None if done is None else signed_on + timedelta(done))
            )
    return sorted(found, key=lambda visit: (visit.due_on, visit.key.sort_key))
