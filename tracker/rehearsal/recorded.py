"""How much things vary by what the mill has recorded (MODEL.md, section 8).

A figure is taken from records only where at least `ENOUGH` of what it is the mean of were recorded, the share of something rare
only from `ENOUGH_RARE` on; of one crew or supplier first, else of all of them together. What is missing has the usual figure.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import exp, log, sqrt
from statistics import fmean
from typing import NamedTuple
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey
from tracker.domain.past import Notice, PastAbsence, PastLine
from tracker.domain.progress import CONVERTED, Stage, StageChange
from tracker.rehearsal.sources import CREWS, MILL, OTHERS, SUPPLIERS, Figure, Whose

ENOUGH = 10
ENOUGH_RARE = 50
MOST_AWAY = 0.9
"""Share of days, the most that a crew is reckoned to be away unforeseen."""
FITTED = 2
"""Figures of the learning curve that were fitted to the same conversions."""
_A_DAY = timedelta(days=1)
Own = Mapping[str, Mapping[Whose, Figure]]
"""Name of a figure of `Spreads` → whose → what the records say."""


class Worked(NamedTuple):
    """Conversions of a machine type."""

    ratios: Sequence[float]
    """Recorded minutes ÷ those that the learning curve fitted to them says; above 0."""
    since: date


@dataclass(frozen=True, slots=True)
class CrewThere:
    """A crew, and in which days it could be away."""

    crew: str
    heads: int
    lead: bool
    """Whether of the lead trade: it is away as a whole."""
    needed: int = 1
    """Heads that a conversion takes of it; fewer are as good as none."""
    from_on: date | None = None
    to_on: date | None = None


def of_work(worked: Mapping[str, Worked]) -> Own:
    """The coefficient of variation of a conversion's time by machine type: only the spread, since how long it takes on average is
    what the plan has learned. It is that of the lognormal factor that is drawn, √(e^s² − 1) with s² = Σ(ln r − mean)² ÷ (n − 2)."""
    found = {}
    for machine_type, (ratios, since) in worked.items():
        if len(ratios) >= ENOUGH:
            logs = [log(ratio) for ratio in ratios]
            mean = fmean(logs)
            variance = sum((each - mean) ** 2 for each in logs) / (len(logs) - FITTED)
            found[Whose("type", machine_type)] = Figure(sqrt(exp(variance) - 1), len(ratios), since)
    return {"work_cv": found}


# ---- deliveries


def of_receipts(lines: Iterable[PastLine], today: date) -> Own:
    """Shares of order lines that came late and short, and by how many days the late ones were late.

    A line counts once the day for which it was promised first is over, where it was written down by that day (of a list that is
    loaded late only those are left that are late) and has come or is still waited for. It is late by the calendar days from that
    day to its first receipt; one that is still waited for is late by more than the days that are over, and the mean is the one
    that makes all of that likeliest (of a geometric time: all days waited ÷ lines that came late). It is short where that receipt
    brought less than was still to come.
    """
    counted = [line for line in lines if line.told_on <= line.promised < today and (line.came_on or line.open)]
    found: dict[str, dict[Whose, Figure]] = {"late_share": {}, "late_days": {}, "short_share": {}}
    by_supplier = defaultdict(list)
    for line in counted:
        by_supplier[line.supplier].append(line)
    groups = {Whose("supplier", name): some for name, some in by_supplier.items() if name} | {SUPPLIERS: counted}
    for whose, some in groups.items():
        for name, figure in _deliveries(some, today):
            found[name][whose] = figure
    return found


def _deliveries(lines: Sequence[PastLine], today: date) -> Iterator[tuple[str, Figure]]:
    late = [line for line in lines if line.came_on is None or line.came_on > line.promised]
    came_late = [line for line in late if line.came_on]
    came = [line for line in lines if line.came_on]
    if len(lines) >= ENOUGH:
        yield "late_share", Figure(share(len(late), len(lines)), len(lines), _first(lines))
    if len(came_late) >= ENOUGH:
        waited = sum(((line.came_on or today - _A_DAY) - line.promised).days for line in late)
        yield "late_days", Figure(waited / len(came_late), len(came_late), _first(came_late))
    if len(came) >= ENOUGH_RARE:
        yield "short_share", Figure(share(sum(line.short for line in came), len(came)), len(came), _first(came))


def _first(lines: Iterable[PastLine]) -> date:
    return min(line.promised for line in lines)


def share(of_them: int, all_of_them: int) -> float:
    """What a share is thought to be after so many: (k + ½) ÷ (n + 1), so that what did not happen yet in a few is not taken for
    impossible (Jeffreys' mean; L. Brown, T. Cai, A. DasGupta, Statistical Science 16, 2001)."""
    return (of_them + 0.5) / (all_of_them + 1)


# ---- people


class _Away(NamedTuple):
    """What is known of some crews, or heads, that are away by themselves."""

    absences: int
    days: float
    """On which they were away, each by itself; up to yesterday."""
    ended: float
    """Absences that are over, each by itself."""
    span: float
    """Days, each by itself."""


def of_people(crews: Iterable[CrewThere], absences: Iterable[PastAbsence], today: date) -> Own:
    """Shares of days on which crews of the lead trade (of other trades: heads) were away unforeseen, and for how long at a time.

    An absence counts where it was written down on its first day or later: one that was known before is in the roster, and would
    otherwise be in it and drawn as well. Of the lead trade it counts where it leaves fewer heads than a conversion takes. The first
    of all only says since when they are written down, and is not counted itself. Days are calendar days up to yesterday; one that
    is not over has lasted at least so long, and the mean is the one that makes all of that likeliest.
    """
    past = [one for one in absences if one.told_on >= one.from_on < today]
    if not past:
        return {}
    since = min(past, key=lambda one: one.from_on).to_on + _A_DAY
    found: dict[str, dict[Whose, Figure]] = {"away_share": {}, "away_days": {}}
    together: dict[Whose, list[_Away]] = {CREWS: [], OTHERS: []}
    for crew in crews:
        if away := _away_of(crew, past, (since, today)):
            together[CREWS if crew.lead else OTHERS].append(away)
            _told(found, Whose("crew", crew.crew), away, since)
    for whose, some in together.items():
        if some:
            count, days, ended, span = (sum(each) for each in zip(*some, strict=True))
            _told(found, whose, _Away(int(count), days, ended, span), since)
    return found


def _away_of(crew: CrewThere, absences: Iterable[PastAbsence], span: tuple[date, date]) -> _Away | None:
    """None where it was not there in that span, the last day not included."""
    first, past = max(span[0], crew.from_on or span[0]), min(span[1], crew.to_on + _A_DAY if crew.to_on else span[1])
    if past <= first:
        return None
    count, ended, days = 0, 0.0, 0.0
    for one in absences:
        heads = crew.heads if one.heads is None else min(one.heads, crew.heads)
        whole = crew.heads - heads < crew.needed
        if one.crew != crew.crew or not first <= one.from_on < past or (crew.lead and not whole):
            continue
        each = 1 if crew.lead else heads
        count += 1
        ended += each if one.to_on < past else 0
        days += each * (min(one.to_on + _A_DAY, past) - one.from_on).days
    return _Away(count, days, ended, (1 if crew.lead else crew.heads) * (past - first).days)


def _told(found: dict[str, dict[Whose, Figure]], whose: Whose, away: _Away, since: date) -> None:
    if away.absences >= ENOUGH and away.ended:
        found["away_share"][whose] = Figure(min(MOST_AWAY, away.days / away.span), away.absences, since)
        found["away_days"][whose] = Figure(away.days / away.ended, away.absences, since)


# ---- failures and orders at short notice


def of_failures(history: Iterable[StageChange], zone: ZoneInfo) -> Own:
    """The share of conversions that were stopped half way, of those that ended either way and were not taken back. `history`:
    oldest first."""
    stage: dict[LoomKey, Stage] = {}
    ended: dict[LoomKey, list[StageChange]] = defaultdict(list)
    for change in history:
        was_converted = stage.get(change.key) in CONVERTED
        if change.stage is Stage.STOPPED or (change.stage in CONVERTED and not was_converted):
            ended[change.key].append(change)
        elif change.stage is Stage.SCOPED and was_converted:
            ended[change.key].pop()
        stage[change.key] = change.stage
    every = [change for of_loom in ended.values() for change in of_loom]
    if len(every) < ENOUGH_RARE:
        return {}
    stopped = sum(change.stage is Stage.STOPPED for change in every)
    since = min(change.at for change in every).astimezone(zone).date()
    return {"fail_share": {MILL: Figure(share(stopped, len(every)), len(every), since)}}


def of_orders(notices: Iterable[Notice], listed_on: date | None, today: date) -> Own:
    """Looms a week that were protected at short notice, and for how many days, both days included. The day on which the looms were
    first listed, and today, are left out."""
    some = [notice for notice in notices if listed_on and listed_on < notice.on < today]
    if len(some) < ENOUGH or listed_on is None:
        return {}
    weeks = (today - listed_on - _A_DAY).days / 7
    days = fmean((notice.until - notice.on).days + 1 for notice in some)
    since = min(notice.on for notice in some)
    return {
        "protected_per_week": {MILL: Figure(len(some) / weeks, len(some), since)},
        "protected_days": {MILL: Figure(days, len(some), since)},
    }
