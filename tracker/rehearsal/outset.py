"""Where a run begins: looms to come, conversions in work, parts on the way, types that are open."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.windows import Window
from tracker.domain.work import WorkContent
from tracker.planning.checks.case import Hold
from tracker.planning.checks.order import pilot_end
from tracker.rehearsal.drawing import BEAM_OUTS, World
from tracker.rehearsal.hall import Hall, Shape
from tracker.rehearsal.loom import FAR, PlayedLoom, Work


class Arrival(NamedTuple):
    """What comes in of a part, and what people know of it before."""

    slot: int
    """From which it can be used."""
    part: str
    quantity: float
    """Infinite for what can be had to order from then on."""
    day: int
    """For which it is promised, days from today."""
    promised: float
    """How much of it."""
    known: int = 0
    """The slot from which on anybody knows of it."""
    supplier: str = ""


class Outset:
    """The looms of a hall as they meet a world."""

    def __init__(self, hall: Hall, world: World):
        self.hall, self.world = hall, world

    def types(self) -> dict[str, int]:
        """Machine type → the slot from which it is open to looms other than its pilot."""
        case, opens = self.hall.case, {}
        for machine_type in {loom.machine_type for loom in case.mill.looms.values()}:
            ended = pilot_end(case, machine_type)
            if not case.terms.soak_days:
                opens[machine_type] = 0
            elif ended:
                opens[machine_type] = self.hall.slot(ended + timedelta(days=case.terms.soak_days))
            else:
                opens[machine_type] = FAR
        return opens

    def arrivals(self) -> list[Arrival]:
        """What comes in, the latest first. What a line lacks is ordered anew on the day on which it came."""
        found = []
        for line in self.hall.supplies:
            day, endless = line.day + self.world.late.get(line.line, 0), line.quantity == float("inf")
            share = 1.0 if endless else self.world.short.get(line.line, 1.0)
            came = line.quantity if share == 1.0 else float(int(line.quantity * share))
            slot = self.hall.midnight(day + 1)
            supplier = line.supplier or ""
            found.append(Arrival(slot, line.part, came, line.day, line.quantity, supplier=supplier))
            if came < line.quantity:
                again, lacks = day + int(line.lead_days), line.quantity - came
                found.append(Arrival(self.hall.midnight(again + 1), line.part, lacks, again, lacks, slot, supplier))
        return sorted(found, reverse=True)

    def booked(self) -> Iterator[PlayedLoom]:
        """The looms that the plan books and that are still to come."""
        to_plan = set(self.hall.problem.planned)
        for booking in self.hall.plan.bookings:
            window = self.hall.window_of(booking)
            content = self.hall.booked_content(window, booking) if window else None
            if booking.key in to_plan and window and content:
                yield self.taken_up(booking, window, content, self.hall.first)

    def taken_up(self, booking: Booking, window: Window, content: WorkContent, t: int) -> PlayedLoom:
        """A loom that is booked from slot `t` on."""
        key = booking.key
        loom = PlayedLoom(key, self.hall.place[key.hall], booking, window, content, 0, None, 0, ())
        self.follow(loom, booking, window, content, t)
        return loom

    def follow(self, loom: PlayedLoom, booking: Booking, window: Window, content: WorkContent, t: int) -> None:
        """Turn a loom to a booking; no crew comes before slot `t`."""
        loom.booking, loom.window, loom.content = booking, window, content
        loom.due = max(t, self.hall.slot(booking.start))
        loom.order = loom.due, loom.key.sort_key
        loom.moves += booking.cost.moves
        self._waits_anew(loom)
        mean_at = self.hall.at_outset(window).mean_at
        later = (i for i, chance in enumerate(self.hall.chances.get(loom.key, ())) if chance.mean_at > mean_at)
        loom.next_chance = next(later, FAR)

    def _waits_anew(self, loom: PlayedLoom) -> None:
        self.beam(loom)
        loom.closes, loom.waits_from, loom.gave_up, loom.cut_at = FAR, None, False, None

    def unbooked(self) -> Iterator[PlayedLoom]:
        """Every loom that can be converted, at the first of its chances."""
        hall = self.hall
        for key, chances in hall.chances.items():
            content = hall.content_of(chances[0], None) if chances else None
            if content and key not in hall.problem.unplannable:
                loom = PlayedLoom(key, hall.place[key.hall], None, chances[0], content, 0, None, 0, ())
                if self.next_chance(loom, hall.first):
                    yield loom

    def next_chance(self, loom: PlayedLoom, t: int) -> bool:
        """Turn to the loom's next chance that is still to be had; False where there is none."""
        chances = self.hall.chances.get(loom.key, ())
        while loom.next_chance < len(chances):
            window = chances[loom.next_chance]
            loom.next_chance += 1
            if not self._gone(loom, window, t):
                self._meet(loom, window)
                return True
        return False

    def _gone(self, loom: PlayedLoom, window: Window, t: int) -> bool:
        """Whether a chance has gone by: its span is over, or its beam came while the loom waited for another chance."""
        if window.ends_at:
            return self.hall.slot(window.ends_at) <= t
        return loom.booking is not None and self.hall.slot(self.hall.beam_out(window, self.world, loom.later_h)) < t

    def _meet(self, loom: PlayedLoom, window: Window) -> None:
        content = self.hall.booked_content(window, loom.booking)
        assert content  # a chance is one only where it can be converted
        loom.window, loom.content = window, content
        self._waits_anew(loom)
        loom.due = max(self.hall.first, loom.out if loom.out_at else self.hall.slot(window.starts_at))
        loom.order = loom.due, loom.key.sort_key

    def beam(self, loom: PlayedLoom) -> None:
        """When the beam that it waits for is out."""
        loom.out_at = self._out_at(loom)
        loom.out = 0 if loom.out_at is None else self.hall.slot(loom.out_at)

    def _out_at(self, loom: PlayedLoom) -> datetime | None:
        return self.hall.beam_out(loom.window, self.world, loom.later_h) if loom.window.kind in BEAM_OUTS else None

    def in_work(self) -> Iterator[Work]:
        """Conversions that have begun before today: what is left of them."""
        keys = {item.key for item in self.hall.problem.in_work}
        return (self._left(hold) for hold in self.hall.case.holds if hold.key in keys)

    def _left(self, hold: Hold) -> Work:
        hall, n, key = self.hall, len(hold.slots), hold.key
        window = next(iter(hall.problem.windows.get(key, ())), None)
        needs = hall.shape(hold.content, window).needs if hold.content and window else ()
        left = Shape((n,), (needs + ((),) * (n + hold.skipped))[hold.skipped : hold.skipped + n], 0.0)
        resume = hall.slot(hold.pause[1]) if hold.pause and hold.pause[1] > hold.start else 0
        return Work(None, key, hall.place[key.hall], None, left, left, hall.first, n, resume=resume)


def machine_type(hall: Hall, key: LoomKey) -> str:
    return hall.case.mill.looms[key].machine_type
