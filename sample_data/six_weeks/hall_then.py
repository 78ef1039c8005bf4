"""The hall as it was read for the seventh week: the warps then on the looms, and who had been away."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from random import Random

from sample_data.six_weeks.jobs import NOW, NOW_ON, SEED
from sample_data.weaving import hall_clock, local
from tracker.domain.calendars import Calendar
from tracker.domain.mill import LoomKey, Mill, Warp
from tracker.domain.plan import Booking
from tracker.domain.windows import Window, WindowKind

READ_ON = NOW_ON - timedelta(days=1)
"""The Sunday before, on whose evening the mill reads every warp."""
AHEAD = 70
"""Days after it in which the warps of then run out."""


def warps_then(
    mill: Mill, windows: Mapping[LoomKey, tuple[Window, ...]], bookings: Iterable[Booking]
) -> Iterator[Warp]:
    """The warps of every loom as they stand on `READ_ON`, if they ran out as forecast on the first day. A loom that has run out
    and waits for its conversion still has the end of its warp."""
    waits = {booking.key: booking.beam_out_p50 for booking in bookings if booking.start >= NOW and booking.beam_out_p50}
    halls = {key.hall for key in mill.looms}
    clocks = {hall: hall_clock(mill.running, hall, READ_ON, READ_ON + timedelta(days=AHEAD)) for hall in halls}
    for key, listed in mill.warps.items():
        outs = [w for w in windows.get(key, ()) if w.kind in (WindowKind.REPEAT, WindowKind.STYLE)]
        yield from _of_loom(listed, sorted(outs, key=lambda w: w.number), clocks[key.hall], waits.get(key))


def _of_loom(
    listed: tuple[Warp, ...], outs: list[Window], clock: Calendar, waits_since: datetime | None
) -> Iterator[Warp]:
    rng = Random(f"{SEED} {listed[0].key} warp")
    read_at = local(READ_ON, 19) + timedelta(minutes=rng.randrange(0, 120, 5))
    gone = sum(out.p50_at <= read_at and (waits_since is None or out.p50_at < waits_since) for out in outs)
    queue = [*listed[gone:]] or [replace(listed[-1], change="repeat")]
    on_loom, *after = queue
    if gone < len(outs):
        left_m = max(0.0, clock.hours_between(read_at, outs[gone].p50_at)) * outs[gone].warp_rate_m_per_h
        left_m = min(on_loom.set_length_m or left_m, left_m * rng.uniform(0.97, 1.03) + (on_loom.tail_m or 0))
    else:
        left_m = (on_loom.set_length_m or 0) / 2
    yield replace(on_loom, sequence=0, warp_left_m=float(round(left_m)), read_at=read_at, ready_on=None, change=None)
    for n, warp in enumerate(after or [replace(on_loom, change="repeat")], 1):
        ready = warp.ready_on if warp.ready_on and warp.ready_on >= NOW_ON else None
        yield replace(warp, sequence=n, warp_left_m=None, read_at=None, ready_on=ready)
