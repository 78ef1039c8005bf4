"""The days of purchasing: working days of the mill, and when a delivery can be used."""

from collections.abc import Callable
from datetime import date, datetime, timedelta
from functools import lru_cache
from math import ceil

from tracker.domain.mill import Mill
from tracker.domain.shifts import can_convert, crews_of

ONE_DAY = timedelta(days=1)
LOOK_FOR = 400
"""Days after which the search for a working day gives up and takes the day as it is."""


class Days:
    """Local days of a mill. A receipt is usable from the first working slot of the next working day, so exactly the
    conversions that start on a later local day than the one on which it is due can use it."""

    def __init__(self, mill: Mill):
        self._zone = mill.terms.zone
        self._mill, self._crews = mill, crews_of(mill, mill.terms.lead_trade)
        self._shut = _shut(mill)
        self.works: Callable[[date], bool] = lru_cache(maxsize=None)(self._works)

    def local(self, at: datetime) -> date:
        """The mill's local day of a moment."""
        return at.astimezone(self._zone).date()

    def _works(self, day: date) -> bool:
        if day in self._shut:
            return False
        if not self._crews:
            return day.weekday() < 5
        return any(can_convert(self._mill, crew, day) for crew in self._crews)

    def back(self, day: date) -> date:
        """The last working day on or before `day`."""
        return self._seek(day, -ONE_DAY)

    def on(self, day: date) -> date:
        """The first working day on or after `day`."""
        return self._seek(day, ONE_DAY)

    def usable_on(self, due: date) -> date:
        """The first working day on which a delivery of `due` can be used."""
        return self.on(due + ONE_DAY)

    def due_for(self, needed_on: date) -> date:
        """The last working day on which a delivery is in time for a conversion that starts on `needed_on`."""
        return self.back(needed_on - ONE_DAY)

    def order_by(self, due: date, lead_time_days: float) -> date:
        """The last working day on which to order what must be in on `due`; the lead time counts calendar days."""
        return self.back(due - timedelta(days=ceil(lead_time_days)))

    def soonest_delivery(self, today: date, lead_time_days: float) -> date:
        """The working day on which what is ordered today (or the next working day) comes."""
        return self.on(self.on(today) + timedelta(days=ceil(lead_time_days)))

    def _seek(self, day: date, step: timedelta) -> date:
        return next((day + i * step for i in range(LOOK_FOR) if self.works(day + i * step)), day)


def _shut(mill: Mill) -> set[date]:
    """Days on which nobody converts: closed for all halls at once, or for each hall by itself."""
    halls = {key.hall for key in mill.looms}
    shut: dict[date, set[str | None]] = {}
    for closure in mill.closures:
        if closure.stops != "weaving" and closure.whole_day:
            shut.setdefault(closure.on, set()).add(closure.hall)
    return {day for day, closed in shut.items() if None in closed or (halls and halls <= closed)}
