"""Where a run begins: looms to come, conversions in work, parts on the way, types that are open."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.windows import Window
from tracker.domain.work import WorkContent
from tracker.planning.checks.case import Hold
from tracker.planning.checks.order import pilot_end
from tracker.rehearsal.drawing import BEAM_OUTS, World
from tracker.rehearsal.hall import Hall, Shape
from tracker.rehearsal.loom import FAR, PlayedLoom, Work


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

    def arrivals(self) -> list[tuple[int, str, float]]:
        """(slot from which it can be used, part, quantity), the latest first. What a line lacks is ordered anew on the day on
        which it came."""
        found = []
        for line in self.hall.supplies:
            day, endless = line.day + self.world.late.get(line.line, 0), line.quantity == float("inf")
            share = 1.0 if endless else self.world.short.get(line.line, 1.0)
            came = line.quantity if share == 1.0 else float(int(line.quantity * share))
            found.append((self.hall.midnight(day + 1), line.part, came))
            if came < line.quantity:
                again = self.hall.midnight(day + 1 + int(line.lead_days))
                found.append((again, line.part, line.quantity - came))
        return sorted(found, reverse=True)

    def booked(self) -> Iterator[PlayedLoom]:
        """The looms that the plan books and that are still to come."""
        to_plan = set(self.hall.problem.planned)
        for booking in self.hall.plan.bookings:
            window = self.hall.window_of(booking)
            content = self.hall.booked_content(window, booking) if window else None
            if booking.key in to_plan and window and content:
                yield self._booked(booking, window, content)

    def _booked(self, booking: Booking, window: Window, content: WorkContent) -> PlayedLoom:
        hall, key = self.hall, booking.key
        due = max(hall.first, hall.slot(booking.start))
        loom = PlayedLoom(key, hall.place[key.hall], booking, window, content, due, None, 0, (due, key.sort_key))
        self._beam(loom)
        later = (i for i, chance in enumerate(hall.chances.get(key, ())) if chance.mean_at > window.mean_at)
        loom.next_chance = next(later, FAR)
        return loom

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
            if window.ends_at is None or self.hall.slot(window.ends_at) > t:
                self._meet(loom, window)
                return True
        return False

    def _meet(self, loom: PlayedLoom, window: Window) -> None:
        content = self.hall.booked_content(window, loom.booking)
        assert content  # a chance is one only where it can be converted
        loom.window, loom.content = window, content
        self._beam(loom)
        loom.due = max(self.hall.first, loom.out if loom.out_at else self.hall.slot(window.starts_at))
        loom.order = loom.due, loom.key.sort_key
        loom.closes, loom.waits_from, loom.gave_up, loom.cut_at = FAR, None, False, None

    def _beam(self, loom: PlayedLoom) -> None:
        loom.out_at = self._out_at(loom)
        loom.out = 0 if loom.out_at is None else self.hall.slot(loom.out_at)

    def _out_at(self, loom: PlayedLoom) -> datetime | None:
        window = loom.window
        if window.kind not in BEAM_OUTS:
            return None
        hours = self.world.warps.get((loom.key, window.number), 0.0) + loom.later_h
        running = self.hall.case.running(loom.key.hall)
        return running.after(window.mean_at, hours) if hours else window.mean_at

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
