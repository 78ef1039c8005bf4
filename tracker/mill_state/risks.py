"""What may go wrong with the conversions of the next fortnight, each with its reason."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from tracker.domain.clock import start_of_day
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import KitState, OrderLine
from tracker.domain.plan import Booking
from tracker.domain.risks import DOUBTFUL, FORTNIGHT_DAYS, RiskAhead
from tracker.domain.windows import Window
from tracker.errors import message


@dataclass(frozen=True, slots=True)
class RiskSigns:
    """By what a risk is known."""

    kits: Iterable[KitState] = ()
    orders: Iterable[OrderLine] = ()
    """Not placed yet."""
    windows: Mapping[LoomKey, tuple[Window, ...]] = field(default_factory=dict)
    """By today's forecast."""
    rehearsed: Iterable[Mapping[str, Any]] = ()
    """The bookings of a rehearsal as it is kept."""


def risks(mill: Mill, bookings: Iterable[Booking], signs: RiskSigns, as_of: datetime) -> tuple[RiskAhead, ...]:
    """Of the bookings that start in the fourteen days after `as_of`, the next first: a kit that nothing on order makes whole in
    time, a beam-out by a reading that is stale, a start that rehearsal says is doubtful; and the orders to place by then without
    which bookings fall. What is late already is told as that."""
    until = as_of + timedelta(days=FORTNIGHT_DAYS)
    ahead = {booking.key: booking for booking in bookings if as_of <= booking.start <= until}
    found = [
        *_of_kits(signs.kits, ahead, mill), *_of_readings(signs.windows, ahead, mill),
        *_of_rehearsal(signs.rehearsed, ahead, mill), *_of_orders(signs.orders, until, mill),
    ]  # fmt: skip
    return tuple(sorted(found, key=lambda risk: (risk.at, str(risk.key), risk.kind)))


Ahead = Mapping[LoomKey, Booking]


def _of_kits(kits: Iterable[KitState], ahead: Ahead, mill: Mill) -> Iterator[RiskAhead]:
    for kit in kits:
        if kit.key in ahead and kit.state == "short":
            lacks = [message("part-quantity", quantity=kit.short[part], part=part) for part in sorted(kit.short)]
            start = kit.start.astimezone(mill.terms.zone)
            yield RiskAhead(kit.start, message("risk-kit", loom=kit.key, start=start, parts=lacks), "kit", kit.key)


def _of_readings(windows: Mapping[LoomKey, tuple[Window, ...]], ahead: Ahead, mill: Mill) -> Iterator[RiskAhead]:
    zone = mill.terms.zone
    for key, booking in ahead.items():
        stale = [one for one in windows.get(key, ()) if one.state == "stale" and one.brings_warp]
        if booking.beam_out_p50 and stale:
            read, start = stale[0].reading_at.astimezone(zone), booking.start.astimezone(zone)
            yield RiskAhead(booking.start, message("risk-reading", loom=key, start=start, read=read), "reading", key)


def _of_rehearsal(rehearsed: Iterable[Mapping[str, Any]], ahead: Ahead, mill: Mill) -> Iterator[RiskAhead]:
    for of in rehearsed:
        key = LoomKey(of["hall"], of["loom"])
        if key in ahead and of["on_time"] < DOUBTFUL:
            start, cause = ahead[key].start, message("rehearsal-cause", cause=of["cause"] or "nothing")
            what = message("risk-rehearsed", loom=key, start=start.astimezone(mill.terms.zone),
                           percent=round(100 * of["on_time"]), cause=cause)  # fmt: skip
            yield RiskAhead(start, what, "rehearsed", key)


def _of_orders(orders: Iterable[OrderLine], until: datetime, mill: Mill) -> Iterator[RiskAhead]:
    for line in orders:
        by = start_of_day(line.order_by, mill.terms)
        if line.falls and by <= until:
            what = message("risk-order", part=line.part, quantity=line.quantity, unit=line.unit or None, by=line.order_by,
                           many=len(line.falls), looms=sorted(line.falls, key=lambda key: key.sort_key))  # fmt: skip
            yield RiskAhead(by, what, "order")
