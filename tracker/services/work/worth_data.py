"""What was stored of stops, widths and conversions, as the comparison wants it; what converted looms weave and cost."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any

from tracker.commissioning.settings.bobbins import LENO_PER_CLOTH
from tracker.commissioning.worth.observed import SideWidth, Standstill, StopCount
from tracker.commissioning.worth.savings import MONTH_DAYS, Converted
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import UNDER_WAY
from tracker.domain.words import fold
from tracker.errors import DataError
from tracker.forecast.rates import rate_of
from tracker.services.work.spent import elapsed_min, labour_recorded, parts_issued
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which periods count: of one article, from and to a moment (UTC); None = all. Nothing after `as_of` is known."""

    article: str | None
    from_at: datetime | None
    to_at: datetime | None
    as_of: datetime

    def takes(self, row: Mapping[str, Any]) -> bool:
        """Whether a row whose moments carry a zone counts."""
        last = min(self.to_at or self.as_of, self.as_of)
        first = self.from_at is None or row["from_at"] >= self.from_at
        mine = self.article is None or fold(row["article"] or "") == fold(self.article)
        return first and row["to_at"] <= last and mine


def read_stops(uow: UnitOfWork, wanted: Wanted) -> list[StopCount]:
    return [
        StopCount(LoomKey(r["hall"], r["loom"]), r["from_at"], r["to_at"], r["article"], r["cause"], r["stops"], r["picks"],
                  r["hours_h"], r["efficiency"])
        for r in _rows(uow, "stops", wanted)
    ]  # fmt: skip


def read_widths(uow: UnitOfWork, wanted: Wanted) -> list[SideWidth]:
    return [
        SideWidth(LoomKey(r["hall"], r["loom"]), r["from_at"], r["to_at"], r["side"], r["waste_width_mm"], r["article"])
        for r in _rows(uow, "waste", wanted)
    ]


def _rows(uow: UnitOfWork, table: str, wanted: Wanted) -> Iterable[dict[str, Any]]:
    zone = uow.zone
    for row in uow.rows(table).values():
        zoned = row | {name: row[name].replace(tzinfo=zone) for name in ("from_at", "to_at")}
        if wanted.takes(zoned):
            yield zoned


def read_conversions(uow: UnitOfWork, as_of: datetime) -> dict[LoomKey, Standstill]:
    """Of every loom that was stopped for its conversion by `as_of`: one still in work has not woven again."""
    found = {
        key: Standstill(change.at, None)
        for key, change in uow.stages().items()
        if change.stage in UNDER_WAY and change.at <= as_of
    }
    for done in uow.conversions():
        if done.started_at <= as_of:
            found[done.key] = Standstill(done.started_at, done.ended_at)
    return found


def decided_on(uow: UnitOfWork, mill: Mill) -> date | None:
    """The day on which the order was decided: the term, else that of the first published plan."""
    published = [min(plan.made_at, plan.as_of) for plan in uow.plan_entries() if plan.published]
    if mill.terms.order_decided or not published:
        return mill.terms.order_decided
    return min(published).astimezone(mill.terms.zone).date()


def minutes_per_stop(stops: Sequence[StopCount], mill: Mill) -> float:
    """By the hours recorded with stops, else the term."""
    timed = [one for one in stops if one.hours_h is not None]
    many = sum(one.stops for one in timed)
    return sum(one.hours_h or 0.0 for one in timed) * 60 / many if many else mill.terms.minutes_per_stop


def converted_looms(
    uow: UnitOfWork,
    mill: Mill,
    stops: Sequence[StopCount],
    conversions: Mapping[LoomKey, Standstill],
    settling: timedelta,
) -> list[Converted]:
    """The converted looms that have figures since, by loom."""
    woven: dict[LoomKey, dict[tuple, StopCount]] = defaultdict(dict)
    for one in stops:
        done = conversions.get(one.key)
        settled = done and done.counts_from(settling)
        if settled and one.from_at >= settled:
            woven[one.key][one.from_at, one.to_at] = one
    cost = _costs(uow, mill)
    return [
        _converted(mill, key, list(woven[key].values()), cost.get(key, 0.0))
        for key in sorted(woven, key=lambda key: key.sort_key)
    ]


def _converted(mill: Mill, key: LoomKey, periods: Sequence[StopCount], cost: float) -> Converted:
    days = sum((one.to_at - one.from_at) / timedelta(days=1) for one in periods)
    picks = sum(one.picks for one in periods) / days * MONTH_DAYS
    name = next((one.article for one in reversed(periods) if one.article), _on_loom(mill, key))
    article = mill.articles.get(name or "")
    leno = None
    if article and mill.terms.leno_yarn_tex:
        cloth_m = picks / article.pick_density_per_cm / 100
        leno = cloth_m * LENO_PER_CLOTH * 2 * mill.terms.leno_yarn_tex / 1e6
    return Converted(
        key, picks, mill.looms[key].saving_per_day, cost, article.weft_tex if article else None,
        article.weft_price_per_kg if article else None, contribution_per_h(mill, key), leno,
    )  # fmt: skip


def _on_loom(mill: Mill, key: LoomKey) -> str | None:
    return next((warp.article for warp in mill.warps.get(key, ())), None)


def contribution_per_h(mill: Mill, key: LoomKey) -> float | None:
    """What an hour of weaving earns with what is on the loom; 0 where its capacity is unsold, None where nobody can say."""
    loom, warp = mill.looms[key], next(iter(mill.warps.get(key, ())), None)
    if loom.capacity_unsold:
        return 0.0
    article = mill.articles.get(warp.article) if warp else None
    if warp is None or article is None or article.contribution_per_m is None:
        return None
    try:
        return article.contribution_per_m * rate_of(mill, loom, warp).cloth_m_per_h
    except DataError:
        return None


def _costs(uow: UnitOfWork, mill: Mill) -> dict[LoomKey, float]:
    """Parts issued, labour recorded, and the recorded hours at what an hour of weaving earns."""
    done = uow.conversions()
    found = defaultdict(float, parts_issued(uow.movements(), mill))
    for labour in labour_recorded(done, mill):
        found[labour.key] += labour.cost
    for one in done:
        found[one.key] += elapsed_min(one) / 60 * (contribution_per_h(mill, one.key) or 0.0)
    return found
