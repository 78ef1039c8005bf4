"""Who is there in a slot, who is busy, and who will be, as far as people know (MODEL.md, section 3)."""

from bisect import bisect_left

from tracker.rehearsal.drawing import World
from tracker.rehearsal.hall import CREW, Hall, Shape
from tracker.rehearsal.loom import FAR, PlayedLoom, Work

ONE_CREW = (CREW, 1)
Own = list[list[list[int]]]
"""By pool and hall: how many there are by slot."""
Shared = list[list[int]]
"""By pool: how many all halls share by slot."""
Amounts = tuple[tuple[int, int], ...]
"""(pool, how many) each."""


class People:
    """Crews, other trades and tools of all halls, in the slot that is played."""

    def __init__(self, hall: Hall, world: World, going: list[Work]):
        self.hall, self.going = hall, going
        self.rosters = hall.by_roster
        self.own, self.shared = hall.people(world.away) if world.away else hall.by_roster
        self.used: list[list[int]] = []
        self._nothing = [0] * len(hall.halls)
        self._ahead: dict[tuple[int, int], list[int]] | None = None

    def begin(self) -> None:
        """Nobody is at work yet in this slot."""
        self.used = [[0] * len(self.hall.halls) for _ in self.hall.pools]
        self._ahead = None

    def changed(self) -> None:
        """The work in hand is another."""
        self._ahead = None

    def _free(self, pool: int, hall: int, t: int, own: Own, shared: Shared, used: list[int]) -> int:
        """How many a hall could still take: its own, and what is shared and not lent to the others."""
        of_halls, common = own[pool], shared[pool][t]
        free = of_halls[hall][t] - used[hall]
        if not common:
            return free
        for other, mine in enumerate(of_halls):
            if other != hall and used[other] > mine[t]:
                common -= used[other] - mine[t]
        return free + common if common > 0 else free

    @property
    def crews_there(self) -> list[int]:
        """Crews on shift by slot, in all halls together."""
        return [sum(own) + common for *own, common in zip(*self.own[CREW], self.shared[CREW], strict=True)]

    def crews_free(self, hall: int, t: int) -> int:
        return self._free(CREW, hall, t, self.own, self.shared, self.used[CREW])

    def lacks(self, hall: int, t: int, needs: Amounts) -> str:
        """Who is missing for a conversion to go on in a slot; empty where all are there."""
        if self.crews_free(hall, t) < 1:
            usual = self._free(CREW, hall, t, *self.rosters, self.used[CREW])
            return "crew-away" if usual > 0 else "crew-busy"
        for pool, many in needs:
            if pool < 0 or self._free(pool, hall, t, self.own, self.shared, self.used[pool]) < many:
                return self._kind(pool)
        return ""

    def _kind(self, pool: int) -> str:
        return "crew-busy" if pool == CREW else "other-trades" if pool <= len(self.hall.trades) else "tools"

    def wait(self, hall: int, t: int) -> None:
        """A crew stands by at a loom."""
        if self.crews_free(hall, t) > 0:
            self.used[CREW][hall] += 1
            self._ahead = None

    def use(self, hall: int, needs: Amounts) -> None:
        self.used[CREW][hall] += 1
        for pool, many in needs:
            self.used[pool][hall] += many

    def who_lacks(self, loom: PlayedLoom, planned: Shape, slots: tuple[int, ...], t: int) -> str:
        """Who would be missing were it to go on without a stop; empty where all are there."""
        for slot, needs in zip(slots, planned.needs, strict=True):
            if lacks := self._lacks_then(loom.hall, slot, needs, t):
                return lacks
        return ""

    def _lacks_then(self, hall: int, slot: int, needs: Amounts, t: int) -> str:
        """Who will be missing in a slot, as far as people know in slot `t`: later days go by the roster."""
        ahead = self._in_hand(t)
        there = (self.own, self.shared) if self.hall.day[slot] == self.hall.day[t] else self.rosters
        for pool, many in (ONE_CREW, *needs):
            used = ahead.get((pool, slot)) or self._nothing
            if pool < 0 or self._free(pool, hall, slot, *there, used) < many:
                return self._kind(pool)
        return ""

    def expected_end(self, loom: PlayedLoom, planned: Shape, t: int) -> int | None:
        """The slot past its last, each of its slots done once its people are free; None where that is past the horizon."""
        lies = self.hall.work[loom.hall]
        place, cut = bisect_left(lies, t), planned.parts[0] if len(planned.parts) > 1 else FAR
        for i, needs in enumerate(planned.needs):
            if i == cut:
                place = max(place, bisect_left(lies, self.hall.warp_in(loom.window, t, lies[place - 1] + 1)))
            while place < len(lies) and self._lacks_then(loom.hall, lies[place], needs, t):
                place += 1
            if place == len(lies):
                return None
            place += 1
        return lies[place - 1] + 1

    def _in_hand(self, t: int) -> dict[tuple[int, int], list[int]]:
        """(pool, slot) → what the conversions in hand will use in each hall, as people expect it in this slot."""
        if self._ahead is None:
            self._ahead = {(pool, t): list(used) for pool, used in enumerate(self.used)}
            for work in self.going:
                self._expect(work, t, self._ahead)
        return self._ahead

    def _expect(self, work: Work, t: int, ahead: dict[tuple[int, int], list[int]]) -> None:
        lies = self.hall.work[work.hall]
        planned, cut = len(work.planned.needs), work.planned.parts[0] if len(work.planned.parts) > 1 else FAR
        place = bisect_left(lies, max(t + 1, work.resume))
        done = min(work.done, planned - 1)
        for i in range(done, planned):
            if i == cut and work.done < cut and work.window:
                past = lies[place - 1] + 1 if place else t
                place = bisect_left(lies, self.hall.warp_in(work.window, work.start, past))
            if place >= len(lies):
                return
            for pool, many in (ONE_CREW, *work.planned.needs[i]):
                used = ahead.setdefault((pool, lies[place]), [0] * len(self.hall.halls))
                used[work.hall] += many
            place += 1
