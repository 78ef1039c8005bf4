"""What became of the bookings of the first six weeks: who was ill, what took longer, what failed."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from random import Random

from sample_data.weaving import CLOSURES, START, ZONE, local
from tracker.domain.mill import Absence, LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Stage
from tracker.domain.scopes import LoomScope
from tracker.domain.work import WorkContent

SEED = 1502
NOW_ON = START + timedelta(weeks=6)
NOW = local(NOW_ON, 6)
"""Monday of the seventh week, before the early crew begins."""
ILL = Absence("Fitters 1", date(2027, 1, 25), date(2027, 1, 29), 1, "ill")
"""A week in which the early crew is one too few for a conversion."""
LATE_ORDER = "4100140-10"
"""The order line that has not come by the seventh week, though it was due in the sixth."""
FAILS_FROM = local(date(2027, 2, 1), 0)
"""The first conversion that begins in this week is stopped."""
LONGER_AT_FIRST, FASTER, SETTLED = 1.3, -0.2, 0.95
"""The first conversion of a machine type takes so much longer; each later one less, down to a share of the plan."""
FIVE_MIN = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Job:
    """One conversion as it went. Moments UTC."""

    booking: Booking
    content: WorkContent
    started_at: datetime
    over_at: datetime
    """At speed, or when it was broken off."""
    signed_at: datetime | None
    """None = not yet."""
    stage: Stage = Stage.SIGNED_OFF
    """Where it stands in the seventh week."""

    @property
    def key(self) -> LoomKey:
        return self.booking.key

    @property
    def crew(self) -> str:
        return self.booking.crews[0].crew

    def random(self, what: str) -> Random:
        """Chance for one thing of this loom, whatever else is drawn."""
        return Random(f"{SEED} {self.key} {what}")


def jobs_of(mill: Mill, bookings: Iterable[Booking], scopes: Mapping[LoomKey, LoomScope]) -> list[Job]:
    """The bookings that came up for work before the seventh week and whose crew was there, in order of time."""
    free: dict[str, datetime] = {}
    done: Counter[str] = Counter()
    found = []
    for booking in sorted(bookings, key=lambda one: (one.start, one.key.sort_key)):
        content = _content(booking, scopes)
        if booking.start >= NOW or content is None or not booking.crews or _ill(booking):
            continue
        done[mill.looms[booking.key].machine_type] += 1
        job = _job(booking, content, free.get(booking.crews[0].crew), done[mill.looms[booking.key].machine_type])
        free[job.crew] = job.over_at
        found.append(job)
    return found


def _content(booking: Booking, scopes: Mapping[LoomKey, LoomScope]) -> WorkContent | None:
    return next((c for c in scopes[booking.key].contents.get(booking.kind, ()) if c.choices == booking.choices), None)


def _ill(booking: Booking) -> bool:
    turns = ((turn.crew, turn.start.astimezone(ZONE).date()) for turn in booking.crews)
    return any(crew == ILL.crew and ILL.from_on <= day <= ILL.to_on for crew, day in turns)


def _job(booking: Booking, content: WorkContent, free: datetime | None, nth: int) -> Job:
    rng = Random(f"{SEED} {booking.key} times")
    share = max(SETTLED, LONGER_AT_FIRST * nth**FASTER) * rng.uniform(0.97, 1.04)
    started = max(booking.start + rng.randrange(0, 3) * FIVE_MIN, free or booking.start)
    longer = round(booking.slots * 6 * (share - 1)) * FIVE_MIN
    over = booking.end + (started - booking.start) + longer
    signed = _next_workday(over)
    return Job(booking, content, started, over, signed if signed < NOW else None)


def _next_workday(at: datetime) -> datetime:
    """One o'clock of the first day after, on which the fitters work."""
    closed = {closure.on for closure in CLOSURES if closure.stops != "weaving"}
    day = at.astimezone(ZONE).date() + timedelta(days=1)
    while day.weekday() > 4 or day in closed:
        day += timedelta(days=1)
    return local(day, 13)


def endings(jobs: Sequence[Job]) -> list[Job]:
    """How each stands in the seventh week: one was stopped, the last is still in work, those of the last day run in."""
    failed = next((job for job in jobs if job.started_at >= FAILS_FROM), None)
    return [_ending(job, job is failed, job is jobs[-1]) for job in jobs]


def _ending(job: Job, failed: bool, last: bool) -> Job:
    if failed:
        half = (job.over_at - job.started_at) / 2
        return replace(
            job, over_at=job.started_at + round(half / FIVE_MIN) * FIVE_MIN, signed_at=None, stage=Stage.STOPPED
        )
    if last:
        return replace(job, signed_at=None, stage=Stage.IN_WORK)
    return job if job.signed_at else replace(job, stage=Stage.RUN_IN)
