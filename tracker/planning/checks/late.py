"""How a conversion goes whose beam comes late (MODEL.md, section 5)."""

from datetime import datetime, timedelta

from tracker.domain.plan import Booking
from tracker.domain.windows import Window
from tracker.domain.work import WorkContent
from tracker.planning.checks.case import ROUNDING, SLOT, Case, parts_needed
from tracker.planning.checks.shared import held_by_slot, other_trades


class LateBeams:
    """Walks through the working slots of a hall, each walk once."""

    def __init__(self, case: Case):
        self.case = case
        self._ends: dict[tuple, datetime] = {}
        self._at_work: dict[tuple[str, str, int], frozenset[int]] = {}

    def begins(self, booking: Booking, out: datetime) -> datetime:
        """From which half hour on a conversion can begin whose beam comes at a moment, the crew waiting up to the patience."""
        waited = min(out - booking.start, timedelta(hours=self.case.terms.patience_h))
        return booking.start + max(0, -((ROUNDING - waited) // SLOT)) * SLOT

    def end(self, booking: Booking, window: Window, content: WorkContent, out: datetime) -> datetime:
        """When it ends: as booked where the beam is in time, else its working slots after that comes, never sooner."""
        begins = self.begins(booking, out)
        return booking.end if begins <= booking.start else max(booking.end, self._end(begins, window, content))

    def _end(self, begins: datetime, window: Window, content: WorkContent) -> datetime:
        of_change = window.ordinary_change_h, window.meanwhile_h, window.warp_in_at
        sign = window.key.hall, begins, id(content), parts_needed(content, window), of_change
        if sign not in self._ends:
            self._ends[sign] = self._walked(begins, window, content)
        return self._ends[sign]

    def _walked(self, begins: datetime, window: Window, content: WorkContent) -> datetime:
        """Slot after working slot, each once whoever it needs beside its crew is at work; the horizon where the work would not
        be done before it."""
        case, hall, parts = self.case, window.key.hall, parts_needed(content, window)
        work, needs = case.work(hall), self._needs(content, len(parts) > 1)
        start, i, done = case.works_from(hall, begins), case.position_from(hall, begins), 0
        for part in parts:
            for n in range(done, done + part):
                while i < len(work) and not all(work[i] in self._there(hall, *need) for need in needs.get(n, ())):
                    i += 1
                if i == len(work):
                    return case.horizon_end
                i += 1
            done += part
            if done < sum(parts):
                warp_in = case.warp_in(hall, start, case.begin(work[i - 1] + 1), window)
                i = max(i, case.position_from(hall, warp_in))
        return case.begin(work[i - 1] + 1)

    def _needs(self, content: WorkContent, parted: bool) -> dict[int, set[tuple[str, int]]]:
        """Slot of the conversion → (trade, heads) needed in it, the lead trade left out."""
        needs: dict[int, set[tuple[str, int]]] = {}
        for trade, by_slot in held_by_slot(content, lambda step: other_trades(self.case, step), parted).items():
            for slot, heads in by_slot.items():
                needs.setdefault(slot, set()).add((trade, heads))
        return needs

    def _there(self, hall: str, trade: str, heads: int) -> frozenset[int]:
        if (hall, trade, heads) not in self._at_work:
            self._at_work[hall, trade, heads] = self.case.at_work(trade, heads, hall)
        return self._at_work[hall, trade, heads]
