from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tracker.domain.mill import LoomKey
from tracker.domain.windows import Window, WindowKind
from tracker.services.forecast import ForecastReport

ZONE = ZoneInfo("Europe/Vienna")
AT = datetime(2027, 3, 27, 12, tzinfo=UTC)
KEY = LoomKey("Hall 1", "7")
WINDOW = Window(
    key=KEY, number=1, kind=WindowKind.STYLE, reading_at=AT, mean_running_h=24.0, spread_h=0.04, mean_at=AT,
    p10_at=AT, p50_at=AT + timedelta(hours=12), p90_at=AT + timedelta(hours=24), starts_at=AT, ends_at=None,
    article_out="A", article_in="B", warp_rate_m_per_h=10, warp_value_per_m=2, contribution_per_h=5,
    ordinary_change_h=5,
)  # fmt: skip


def report(*windows: Window, missing: dict[LoomKey, str] | None = None) -> ForecastReport:
    return ForecastReport(AT, AT + timedelta(days=84), ZONE, windows, missing or {})


def test_times_are_local_with_their_offset() -> None:
    """Central Europe goes from UTC+1 to UTC+2 on 28 March 2027 at 01:00 UTC (by hand)."""
    record = report(WINDOW).record()[0]
    assert (record["p10"], record["p50"], record["p90"]) == (
        "2027-03-27T13:00:00+01:00", "2027-03-28T01:00:00+01:00", "2027-03-28T14:00:00+02:00"
    )  # fmt: skip
    assert {name: record[name] for name in ("loom", "hall", "window", "kind", "mean_running_h")} == {
        "loom": "7", "hall": "Hall 1", "window": 1, "kind": "style", "mean_running_h": 24.0
    }  # fmt: skip


def test_stale_overdue_and_missing_looms_are_told() -> None:
    other = LoomKey("Hall 1", "8")
    said = report(
        replace(WINDOW, state="stale"), replace(WINDOW, key=other, state="overdue"), missing={other: "was never read"}
    ).lines()
    assert said == [
        "2 windows of 2 looms up to 2027-06-19.",
        "1 loom has a reading older than three days: read the warp left again.",
        "1 loom should have run out by its reading: look whether a new warp is in.",
        "loom 8 (Hall 1): no forecast, was never read",
    ]


@pytest.mark.parametrize(("windows", "says"), [((), "0 windows of 0 looms up to 2027-06-19.")])
def test_an_empty_mill_has_an_empty_forecast(windows: tuple[Window, ...], says: str) -> None:
    assert report(*windows).lines() == [says]
