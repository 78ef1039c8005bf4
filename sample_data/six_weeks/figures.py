"""Stops and waste of all looms week by week, before and after their conversions, as made up here: what `worth` should find."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from random import Random

from sample_data.six_weeks.card_rows import Row, local_time
from sample_data.six_weeks.jobs import NOW_ON, SEED, Job
from sample_data.weaving import hall_clock, local
from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.domain.windows import Window

WEEKS = 12
"""The six weeks, and the six before the programme, by which a loom is compared with itself."""
STOPS_PER_100K = {"selvedge": 1.8, "yarn": 3.2}
"""Cause → stops per 100,000 picks of a usual loom before it is converted."""
EFFECT = {"selvedge": 0.6, "yarn": 0.96}
"""Cause → stops of a converted loom, as a share of what it would have had."""
OVERDISPERSION = 3
WIDTH_MM, NARROWER_MM = 64, 17
"""Waste selvedge of both sides, and by how much a conversion narrows it."""


def weeks() -> list[tuple[datetime, datetime]]:
    """Monday to Monday, local midnight, UTC."""
    firsts = [NOW_ON - timedelta(weeks=n) for n in range(WEEKS, 0, -1)]
    return [(local(day, 0), local(day + timedelta(weeks=1), 0)) for day in firsts]


def stops(mill: Mill, jobs: Iterable[Job], windows: Mapping[LoomKey, tuple[Window, ...]]) -> Iterator[Row]:
    """A row for each loom, week and cause."""
    over = {job.key: job for job in jobs if job.signed_at}
    clocks = {
        hall: hall_clock(mill.running, hall, NOW_ON - timedelta(weeks=WEEKS + 1), NOW_ON) for hall in _halls(mill)
    }
    for loom in mill.looms.values():
        level = {cause: Random(f"{SEED} {loom.key} {cause}").lognormvariate(0, 0.3) for cause in STOPS_PER_100K}
        for n, (first, last) in enumerate(weeks()):
            hours = clocks[loom.hall].hours_between(first, last)
            job = over.get(loom.key)
            if job and first <= job.started_at < last:
                hours -= (min(job.over_at, last) - job.started_at) / timedelta(hours=1)
            row = _period(loom.key, first, last) | {"article": _article(mill, loom, windows, first)}
            yield from _week(row, loom, n, hours, level, bool(job and job.over_at <= first))


def _week(row: Row, loom: Loom, n: int, hours: float, level: Mapping[str, float], converted: bool) -> Iterator[Row]:
    rng = Random(f"{SEED} {loom.key} week {n}")
    efficiency = round((loom.efficiency or 0) * rng.gauss(1.008 if converted else 1, 0.01), 3)
    picks = round((loom.speed_ppm or 0) * 60 * hours * efficiency, -3)
    for cause, usual in STOPS_PER_100K.items():
        season = Random(f"{SEED} {loom.hall} {cause} week {n}").lognormvariate(0, 0.1)
        mean = picks / 1e5 * usual * level[cause] * season * (EFFECT[cause] if converted else 1)
        many = max(0, round(rng.gauss(mean, (OVERDISPERSION * mean) ** 0.5)))
        yield row | {"cause": cause, "stops": many, "picks": picks, "efficiency": min(1.0, efficiency)}


def waste(mill: Mill, jobs: Iterable[Job]) -> Iterator[Row]:
    """Every other week, both sides together."""
    over = {job.key: job.over_at for job in jobs if job.signed_at}
    for loom in mill.looms.values():
        rng = Random(f"{SEED} {loom.key} waste")
        usual = rng.gauss(WIDTH_MM, 4)
        for first, last in weeks()[1::2]:
            converted = loom.key in over and over[loom.key] <= first
            yield _period(loom.key, first, last) | {
                "waste_width_mm": round(usual - (NARROWER_MM if converted else 0) + rng.gauss(0, 1))
            }


def _period(key: LoomKey, first: datetime, last: datetime) -> Row:
    return {"loom": key.loom, "hall": key.hall, "from_at": local_time(first), "to_at": local_time(last)}


def _article(mill: Mill, loom: Loom, windows: Mapping[LoomKey, tuple[Window, ...]], at: datetime) -> str | None:
    out = next(
        (w for w in windows.get(loom.key, ()) if w.warp_in_at is None and w.mean_running_h and w.p50_at > at), None
    )
    return out.article_out if out else mill.warps[loom.key][0].article


def _halls(mill: Mill) -> list[str]:
    return list(dict.fromkeys(key.hall for key in mill.looms))
