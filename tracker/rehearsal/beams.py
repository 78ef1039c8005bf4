"""A crew that waits for a beam, and what becomes of the warp (MODEL.md, section 3)."""

from datetime import datetime, timedelta

from tracker.planning.checks.case import ROUNDING
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.loom import PlayedLoom
from tracker.rehearsal.people import People
from tracker.rehearsal.policies import Policy

DUST_H = 1e-6


class Beams:
    """Whether work could begin as far as the beam goes."""

    def __init__(self, hall: Hall, policy: Policy, people: People):
        self.hall, self.policy, self.people = hall, policy, people
        self.patience = timedelta(hours=hall.terms.patience_h)
        self.waited_h = 0.0

    def is_out(self, loom: PlayedLoom, t: int) -> bool:
        """Whether the beam is out, or its rest was cut; a crew that is there waits for it up to the patience."""
        if loom.out_at is None or loom.cut_at:
            return True
        if loom.waits_from and not loom.gave_up:
            return self._waits(loom, loom.waits_from, loom.out_at, t)
        if loom.out <= t:
            return True
        if loom.booking and not loom.gave_up and self.people.crews_free(loom.hall, t) > 0:
            loom.waits_from = self.hall.case.begin(t)
            self._stands_by(loom, t)
        return False

    def _waits(self, loom: PlayedLoom, since: datetime, out_at: datetime, t: int) -> bool:
        until = since + self.patience
        if out_at <= until:
            if loom.out <= t:
                self._waited(loom, since, (out_at - since).total_seconds() / 3600)
                loom.waits_from = None
                return True
        elif self.hall.case.begin(t) >= until - ROUNDING:
            self._patience_over(loom, since, out_at)
            return loom.cut_at is not None or loom.out <= t
        self._stands_by(loom, t)
        return False

    def _stands_by(self, loom: PlayedLoom, t: int) -> None:
        loom.hold_up("beam-out")
        self.people.wait(loom.hall, t)

    def _waited(self, loom: PlayedLoom, since: datetime, hours: float) -> None:
        self.waited_h += hours
        loom.late += self.hall.prices.crew_rate(loom.key.hall, since) * hours

    def _patience_over(self, loom: PlayedLoom, since: datetime, out_at: datetime) -> None:
        """The rest of the warp is cut, or the crew goes to the next loom."""
        self._waited(loom, since, self.hall.terms.patience_h)
        running, until, window = self.hall.case.running(loom.key.hall), since + self.patience, loom.window
        left_h = running.hours_between(since, out_at) - running.hours_between(since, until)
        rest = left_h * window.warp_rate_m_per_h * window.warp_value_per_m
        reckoned_h = max(0.0, running.hours_between(until, window.mean_at))
        cheap = left_h <= reckoned_h + DUST_H or rest <= self._price_of_passing(loom)
        if self.policy.always_cuts or (self.policy.cuts and cheap):
            loom.cut_at = until
            loom.late += rest
        else:
            loom.gave_up = True

    def _price_of_passing(self, loom: PlayedLoom) -> float:
        """What it costs to wait for the loom's next chance, as a person reckons it: the saving until then, or the price of
        leaving the loom over."""
        chances = self.hall.chances.get(loom.key, ())
        if loom.next_chance >= len(chances):
            return self.hall.left_over(loom.key)
        wait = chances[loom.next_chance].mean_at - loom.window.mean_at
        return self.hall.saving(loom.key) * wait.total_seconds() / 86400
