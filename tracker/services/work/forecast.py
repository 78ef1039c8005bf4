"""When each warp runs out, and how well that would have been said before."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import horizon_end, planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message, message
from tracker.forecast import backtest as past
from tracker.forecast.beam_outs import forecast as forecast_windows
from tracker.forecast.beam_outs import unforecast
from tracker.services.context import Context
from tracker.services.looms import find_loom


@dataclass(frozen=True, slots=True)
class ForecastReport:
    """The beam-outs and standing windows of the looms up to the end of the horizon."""

    as_of: datetime
    until: datetime
    zone: ZoneInfo
    windows: tuple[Window, ...]
    """By loom in natural order, then by number; mid-warp windows left out, since any day would do."""
    missing: Mapping[LoomKey, Message]
    """Looms that could not be forecast, and why."""
    quiet: Mapping[LoomKey, Message] = field(default_factory=dict)
    """Looms without a window up to `until`, and why."""

    def looms(self, state: str) -> list[LoomKey]:
        """Looms with a window in a state, in order: `ok`, `stale`, `overdue`."""
        return list(dict.fromkeys(window.key for window in self.windows if window.state == state))

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it: one entry per loom and window, times in the mill's zone with their offset."""
        return [_record(window, self.zone) for window in self.windows]

    def messages(self) -> list[Message]:
        """What a person should know beside the table."""
        looms, until = {window.key for window in self.windows}, self.until.astimezone(self.zone).date()
        found = [message("windows-found", windows=len(self.windows), looms=len(looms), until=until)]
        if stale := self.looms("stale"):
            found.append(message("readings-old", many=len(stale), looms=stale))
        if late := self.looms("overdue"):
            found.append(message("warps-overdue", many=len(late), looms=late))
        found += _told("no-forecast", "no-forecast-for-more", self.missing)
        return [*found, *_told("no-window", "no-window-for-more", self.quiet)]


MOST_LOOMS = 10
"""Looms told one by one."""


def _told(one: str, more: str, looms: Mapping[LoomKey, Message]) -> Iterator[Message]:
    """One for each of the first looms, where the loom is named once, and one for all others."""
    for key, why in list(looms.items())[:MOST_LOOMS]:
        yield Message(one, {"loom": key, "why": Message(why.code, {**why.params, "loom": None})})
    if others := list(looms)[MOST_LOOMS:]:
        yield Message(more, {"many": len(others), "looms": others})


@dataclass(frozen=True, slots=True)
class LeadRow:
    """How forecasts about `lead_days` ahead came out."""

    lead_days: int
    forecasts: int
    within: int
    """Beam-outs between P10 and P90."""
    early: int
    """Before P10."""
    late: int
    """After P90."""
    mean_error_h: float
    """Clock hours from P50 to the beam-out, + = later than said."""


@dataclass(frozen=True, slots=True)
class BacktestReport:
    beam_outs: int
    not_compared: int
    share_within: float | None
    """Share of forecasts whose beam-out fell between P10 and P90, 0 to 1; 0.8 is what they promise."""
    rows: tuple[LeadRow, ...]

    def record(self) -> dict[str, Any]:
        rows = [{field: getattr(row, field) for field in LeadRow.__slots__} for row in self.rows]
        return {
            "beam_outs": self.beam_outs,
            "not_compared": self.not_compared,
            "forecasts": sum(row.forecasts for row in self.rows),
            "within": sum(row.within for row in self.rows),
            "share_within": self.share_within,
            "by_lead": rows,
        }

    def messages(self) -> list[Message]:
        if self.share_within is None:
            return [message("backtest-nothing", beam_outs=self.beam_outs)]
        found = [message("backtest-share", beam_outs=self.beam_outs, share=self.share_within)]
        return found + ([message("backtest-left-out", many=self.not_compared)] if self.not_compared else [])


def forecast(
    context: Context, loom: str | None = None, as_of: datetime | None = None, hall: str | None = None
) -> ForecastReport:
    """Forecast all looms, or one. `as_of` defaults to now, or the start of a programme that lies ahead."""
    with context.reading() as uow:
        mill = uow.mill()
    at = planning_moment(mill.terms, as_of, context.now())
    keys = set(mill.looms) if loom is None else {find_loom(mill, loom, hall)}
    until = horizon_end(mill.terms, at)
    windows = forecast_windows(mill, at, until)
    shown = tuple(
        window
        for key in sorted(keys, key=lambda key: key.sort_key)
        for window in windows[key]
        if window.kind is not WindowKind.MID_WARP
    )
    missing = {key: why for key, why in unforecast(mill, at).items() if key in keys}
    silent = keys - missing.keys() - {window.key for window in shown}
    quiet = {key: _why_quiet(mill, key, at) for key in sorted(silent, key=lambda key: key.sort_key)}
    return ForecastReport(at, until, mill.terms.zone, shown, missing, quiet)


def _why_quiet(mill: Mill, key: LoomKey, at: datetime) -> Message:
    """Why a loom that can be forecast has no window within the horizon."""
    read_at, zone = mill.warps[key][0].read_at if mill.warps.get(key) else None, mill.terms.zone
    if read_at and read_at > at:
        return message("reading-ahead", read=read_at.astimezone(zone), as_of=at.astimezone(zone))
    return message("nothing-in-horizon")


def backtest(context: Context) -> BacktestReport:
    """Look back over all readings: how often the true beam-out fell between P10 and P90."""
    with context.reading() as uow:
        found = past.backtest(uow.mill())
    rows = (_lead_row(lead, [look for look in found.looks if look.lead_days == lead]) for lead in past.LEADS_DAYS)
    return BacktestReport(
        found.beam_outs, found.not_compared, found.share_within, tuple(row for row in rows if row.forecasts)
    )


def _lead_row(lead: int, looks: list[past.LookBack]) -> LeadRow:
    errors_h = [(look.true_at - look.p50_at).total_seconds() / 3600 for look in looks]
    return LeadRow(
        lead_days=lead,
        forecasts=len(looks),
        within=sum(look.within for look in looks),
        early=sum(look.true_at < look.p10_at for look in looks),
        late=sum(look.true_at > look.p90_at for look in looks),
        mean_error_h=sum(errors_h) / len(errors_h) if errors_h else 0.0,
    )


def _record(window: Window, zone: ZoneInfo) -> dict[str, Any]:
    def local(at: datetime) -> str:
        return at.astimezone(zone).isoformat(timespec="seconds")

    return {
        "hall": window.key.hall,
        "loom": window.key.loom,
        "window": window.number,
        "kind": window.kind.value,
        "mean_running_h": window.mean_running_h,
        "p10": local(window.p10_at),
        "p50": local(window.p50_at),
        "p90": local(window.p90_at),
        "state": window.state,
        "article_out": window.article_out,
        "article_in": window.article_in,
        "read_at": local(window.reading_at),
    }
