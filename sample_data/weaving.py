"""Invented articles, warps, readings and calendars: enough windows of every kind for twelve weeks."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from datetime import time as clock
from random import Random
from zoneinfo import ZoneInfo

from tracker.domain.calendars import Calendar, weekly_calendar
from tracker.domain.mill import Article, Closure, Loom, LoomKey, OrdinaryChange, Reading, Running, Standing, Warp

START = date(2027, 1, 4)
ZONE = ZoneInfo("Europe/Vienna")
WALKED_ON = date(2027, 1, 2)
"""The Saturday before the start, on which the mill read every warp."""

_ARTICLES = (
    # number, cloth width (cm), picks/cm, take-up (%), basis, contribution and warp value a metre
    ("A-1204", 180, 24, 6, "crimp", 0.56, 0.55), ("A-1207", 180, 21, 5, "crimp", 0.49, 0.45),
    ("A-1218", 180, 28, 7.5, "crimp", 0.71, 0.6), ("A-1231", 200, 34, 8, "crimp", 0.92, 0.8),
    ("A-1240", 200, 40, 8, "crimp", 1.15, 0.9), ("A-1255", 200, 18, 4, "crimp", 0.4, 0.4),
    ("A-1302", 220, 26, 6.5, "contraction", 0.62, 0.65), ("A-1310", 220, 31, 7, "crimp", 0.8, 0.7),
    ("A-1402", 270, 22, 5.5, "crimp", 0.85, 1.05), ("A-1407", 270, 27, 6.5, "crimp", 1.0, 1.2),
    ("A-1412", 290, 24, 6, "crimp", 0.95, 1.15), ("A-1418", 290, 32, 7.5, "contraction", 1.25, 1.4),
    ("A-1431", 330, 20, 5, "crimp", 0.95, 1.1), ("A-1436", 330, 28, 7, "crimp", 1.3, 1.5),
    ("R-2010", 180, 18, 8, "crimp", 0.88, 0.6), ("R-2014", 180, 22, 9, "crimp", 1.1, 0.7),
    ("R-2025", 210, 15, 6, "crimp", 0.7, 0.5), ("R-2031", 210, 26, 10, "crimp", 1.35, 0.85),
    ("R-2042", 222, 20, 8.5, "contraction", 0.98, 0.65), ("R-2050", 222, 30, 11, "crimp", 1.6, 0.9),
    ("R-2110", 310, 16, 7, "crimp", 1.2, 1.3), ("R-2114", 310, 21, 8.5, "crimp", 1.5, 1.6),
    ("R-2131", 330, 18, 8, "contraction", 1.35, 1.5), ("R-2135", 330, 24, 9.5, "crimp", 1.75, 1.9),
    ("R-2150", 350, 15, 7, "crimp", 1.25, 1.4), ("R-2156", 350, 20, 9, "crimp", 1.65, 2.0),
)  # fmt: skip
CLOTH_WIDTH_CM = {article: width for article, width, *_ in _ARTICLES}
WEFT_TEX, WEFT_PRICE_PER_KG = {"A": 20.0, "R": 33.0}, {"A": 3.2, "R": 4.1}
"""By the hall in which an article is woven: cotton from air-jets, blends from rapiers."""


def _family(article: str, picks_per_cm: float) -> str:
    """What is about as dense on the same kind of loom: its settings are compared with each other."""
    return f"{article[0]} {'light' if picks_per_cm < 22 else 'dense'}"


ARTICLES = {
    article: Article(article, picks, take_up / 100, basis, contribution, value, _family(article, picks), WEFT_TEX[article[0]],
                     WEFT_PRICE_PER_KG[article[0]])
    for article, _, picks, take_up, basis, contribution, value in _ARTICLES
}  # fmt: skip
NARROWER_CM = (2, 25)
"""A cloth is so much narrower than the reed of the looms on which it is woven."""


def articles_of(loom: Loom) -> list[Article]:
    """Those that the loom can weave, by its insertion and its width."""
    prefix, reed_cm = "A-" if loom.insertion == "air-jet" else "R-", loom.reed_width_cm or 0.0
    low, high = reed_cm - NARROWER_CM[1], reed_cm - NARROWER_CM[0]
    return [ARTICLES[name] for name, cm in CLOTH_WIDTH_CM.items() if name.startswith(prefix) and low < cm <= high]


CHANGES = (
    OrdinaryChange("repeat", 2.0),
    OrdinaryChange("style", 5.0),
    OrdinaryChange("repeat", 3.0, "RP-W"),
    OrdinaryChange("style", 7.0, "RP-W"),
)

CLOSURES = (
    Closure(date(2026, 12, 24), "both", None, "Christmas"),
    Closure(date(2026, 12, 25), "both", None, "Christmas"),
    Closure(date(2026, 12, 26), "both", None, "Christmas"),
    Closure(date(2027, 1, 1), "both", None, "New Year"),
    Closure(date(2027, 1, 6), "work", None, "Epiphany: the halls weave, the fitters are off"),
    Closure(date(2027, 2, 8), "weaving", "Hall 2", "Yearly service of the air conditioning"),
    Closure(date(2027, 3, 26), "both", None, "Good Friday"),
)


def running(hall: str, insertion: str) -> tuple[Running, ...]:
    """Air-jet halls weave always; rapier halls Monday to Friday and on Saturday morning."""
    if insertion == "air-jet":
        return (Running(hall, frozenset(range(7))),)
    return Running(hall, frozenset(range(5))), Running(hall, frozenset({5}), clock(6), clock(14))


def hall_clock(rows: Iterable[Running], hall: str, first: date, last: date) -> Calendar:
    closed = [c.on for c in CLOSURES if c.stops in ("weaving", "both") and c.hall in (None, hall)]
    pattern = [(row.weekdays, row.start, row.end) for row in rows if row.hall == hall]
    return weekly_calendar(pattern, closed, ZONE, first, last)


def local(day: date, hour: int, minute: int = 0) -> datetime:
    """That local wall-clock moment, UTC."""
    return datetime.combine(day, clock(hour, minute), ZONE).astimezone(UTC)


def warp_rate_m_per_h(loom: Loom, article: Article) -> float:
    """Metres of warp an hour of running: cloth rate n·60·η/(100·p), with the take-up on its basis."""
    speed, efficiency = loom.speed_ppm or 0.0, loom.efficiency or 0.0
    cloth = speed * 60 * efficiency / (100 * article.pick_density_per_cm)
    return cloth * (1 + article.take_up) if article.take_up_basis == "crimp" else cloth / (1 - article.take_up)


def make_warps(rng: Random, loom: Loom, following: int) -> list[Warp]:
    """The warp on the loom as read on the walk, and `following` more."""
    articles = articles_of(loom)
    article = rng.choice(articles)
    first = _new_warp(rng, loom, article, 0)
    share = rng.uniform(0.12, 1.0)
    read_at = local(WALKED_ON, 13) + timedelta(minutes=rng.randrange(0, 120, 5))
    warps = [replace(first, warp_left_m=float(round((first.set_length_m or 0) * share)), read_at=read_at)]
    for sequence in range(1, following + 1):
        style = rng.random() < 0.35
        article = rng.choice([a for a in articles if a is not article]) if style else article
        warp = _new_warp(rng, loom, article, sequence)
        warps.append(replace(warp, change="style" if style else "repeat"))
    return warps


def _new_warp(rng: Random, loom: Loom, article: Article, sequence: int) -> Warp:
    days = rng.triangular(5, 24, 10)
    length_m = min(6000, max(1000, round(warp_rate_m_per_h(loom, article) * 24 * days / 50) * 50))
    tail_m = float(rng.choice((4, 5, 6, 8)))
    return Warp(loom.hall, loom.loom, sequence, article.article, float(length_m), tail_m=tail_m)


def with_ready_day(rng: Random, loom: Loom, warps: Sequence[Warp]) -> list[Warp]:
    """For a third of the looms the day on which the next warp is ready: seldom after the one at work runs out."""
    if len(warps) < 2 or rng.random() > 0.33:
        return list(warps)
    days_left = (warps[0].warp_left_m or 0) / warp_rate_m_per_h(loom, ARTICLES[warps[0].article]) / 24
    ready_on = WALKED_ON + timedelta(days=max(0, round(days_left) - rng.randint(-1, 5)))
    return [warps[0], replace(warps[1], ready_on=ready_on), *warps[2:]]


def later_reading(rng: Random, loom: Loom, warp: Warp, calendar: Calendar) -> Reading:
    """A reading of Sunday evening, a day and a half after the walk."""
    at = local(START - timedelta(days=1), 21) + timedelta(minutes=rng.randrange(0, 60, 5))
    used_m = _used_m(rng, loom, warp, calendar, warp.read_at or at, at, cv=0.04)
    return Reading(loom.hall, loom.loom, at, float(max(0, round((warp.warp_left_m or 0) - used_m))))


def daily_readings(rng: Random, loom: Loom, warp: Warp, calendar: Calendar, days: int, cv: float) -> list[Reading]:
    """Daily readings at 06:00 that lead up to the warp's own reading, drawn backwards from it; `cv` from day to day.

    Going back past the full length, the loom had the last metres of an equal warp before the ordinary change.
    """
    rate = warp_rate_m_per_h(loom, ARTICLES[warp.article])
    left_m, at, found = warp.warp_left_m or 0.0, warp.read_at or local(WALKED_ON, 13), []
    for day in range(days):
        earlier = local(WALKED_ON - timedelta(days=day), 6)
        left_m += _used_m(rng, loom, warp, calendar, earlier, at, cv)
        if left_m > (warp.set_length_m or 0):
            before_change_m = left_m - (warp.set_length_m or 0) - rate * CHANGES[0].hours_h
            left_m = (warp.tail_m or 0) + max(0.0, before_change_m)
        found.append(Reading(loom.hall, loom.loom, earlier, float(round(left_m))))
        at = earlier
    return found[::-1]


def _used_m(rng: Random, loom: Loom, warp: Warp, calendar: Calendar, since: datetime, until: datetime,
            cv: float) -> float:  # fmt: skip
    """Warp used between two moments: mean w·h, standard deviation w·cv·√(24·h)."""
    hours = calendar.hours_between(since, until)
    rate = warp_rate_m_per_h(loom, ARTICLES[warp.article])
    return max(0.0, rate * (hours + rng.gauss(0, cv) * (24 * hours) ** 0.5))


def standing(key: LoomKey, first: date, last: date, reason: str) -> Standing:
    """From 06:00 of `first` to 22:00 of `last`, local time."""
    return Standing(key.hall, key.loom, local(first, 6), local(last, 22), reason)


def by_loom(rows: Sequence) -> dict[LoomKey, tuple]:
    found: dict[LoomKey, list] = {}
    for row in rows:
        found.setdefault(row.key, []).append(row)
    return {key: tuple(values) for key, values in found.items()}
