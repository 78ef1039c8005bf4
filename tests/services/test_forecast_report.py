import csv
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from opened import here
from said import lines

from tracker.domain.mill import LoomKey
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message, message
from tracker.services.loading.load import load
from tracker.services.work.forecast import ForecastReport, forecast

ZONE = ZoneInfo("Europe/Vienna")
AT = datetime(2027, 3, 27, 12, tzinfo=UTC)
KEY = LoomKey("Hall 1", "7")
WINDOW = Window(
    key=KEY, number=1, kind=WindowKind.STYLE, reading_at=AT, mean_running_h=24.0, spread_h=0.04, mean_at=AT,
    p10_at=AT, p50_at=AT + timedelta(hours=12), p90_at=AT + timedelta(hours=24), starts_at=AT, ends_at=None,
    article_out="A", article_in="B", warp_rate_m_per_h=10, warp_value_per_m=2, contribution_per_h=5,
    ordinary_change_h=5,
)  # fmt: skip


def report(*windows: Window, missing: dict[LoomKey, Message] | None = None) -> ForecastReport:
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
    said = lines(
        report(
            replace(WINDOW, state="stale"),
            replace(WINDOW, key=other, state="overdue"),
            missing={other: message("warp-never-read")},
        )
    )
    assert said == [
        "2 windows of 2 looms up to Sat 19 Jun 2027.",
        "1 loom has a reading older than three days; read the warp left again: 7 (Hall 1).",
        "1 loom should have run out by its reading; look whether a new warp is in: 8 (Hall 1).",
        "loom 8 (Hall 1): no forecast, the warp left was never read",
    ]


@pytest.mark.parametrize(("windows", "says"), [((), "0 windows of 0 looms up to Sat 19 Jun 2027.")])
def test_an_empty_mill_has_an_empty_forecast(windows: tuple[Window, ...], says: str) -> None:
    assert lines(report(*windows)) == [says]


def test_the_looms_are_named_up_to_ten() -> None:
    """Twelve looms with two windows each: ten by name in the order of the windows, two by their number."""
    keys = [LoomKey("Hall 1", str(i)) for i in range(1, 13)]
    windows = [replace(WINDOW, key=key, number=n, state="stale") for key in keys for n in (1, 2)]
    ten = ", ".join(f"{i} (Hall 1)" for i in range(1, 11))
    said = lines(report(*windows, missing=dict.fromkeys(keys, message("warp-never-read"))))
    assert said[:2] == [
        "24 windows of 12 looms up to Sat 19 Jun 2027.",
        f"12 looms have a reading older than three days; read the warp left again: {ten} and 2 more.",
    ]
    assert len(said) == 2 + 10 + 1
    assert said[2] == "loom 1 (Hall 1): no forecast, the warp left was never read"
    assert said[-1] == "no forecast for 2 more looms: 11 (Hall 1), 12 (Hall 1)"


def test_the_reason_names_the_loom_once() -> None:
    why = message("warp-value", loom=KEY, warp=1, article="A", what=message("set-length-missing"))
    assert lines(report(missing={KEY: why}))[1:] == [
        "loom 7 (Hall 1): no forecast, warp 1, article A: a warp that follows needs a set length; give it in metres"
    ]


def loaded(tmp_path, read_at: str) -> ForecastReport:
    """Loom 1 with 3,000 m left: 600·60·0.9/2000·1.08 = 17.496 m of warp an hour, so 171.5 h."""
    sheets = {
        "looms": [["Loom", "Hall", "Machine type", "Speed (picks/min)", "Efficiency (%)"], ["1", "H", "AJ", 600, 90]],
        "articles": [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A", 20, 8]],
        "warps": [["Loom", "Hall", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"],
                  ["1", "H", 0, "A", 3000, 3000, read_at]],
        "terms": [["Term", "Value"], ["start", "2027-01-04"], ["horizon (days)", 7]],
    }  # fmt: skip
    for name, rows in sheets.items():
        with (tmp_path / f"{name}.csv").open("w", newline="") as file:
            csv.writer(file).writerows(rows)
    assert load(here(tmp_path / "mill.db"), sorted(tmp_path.glob("*.csv"))).written
    return forecast(here(tmp_path / "mill.db"), as_of=datetime(2027, 1, 4, tzinfo=UTC))


def test_a_loom_without_a_window_says_why(tmp_path) -> None:
    """Read at the end of the horizon of 4 to 11 January, 3,000 m last until the 17th."""
    assert lines(loaded(tmp_path, "2027-01-10 06:00")) == [
        "0 windows of 0 looms up to Mon 11 Jan 2027.",
        "loom 1 (H): no window, its warp was read on Sun 10 Jan 2027 06:00, later than Mon 4 Jan 2027 00:00, and lasts past "
        "the horizon; correct the day if it is a slip",
    ]


def test_a_loom_that_weaves_on_past_the_horizon_says_so(tmp_path) -> None:
    """171.5 h from midnight of the 4th are 03:28 on the 11th, past midnight."""
    assert lines(loaded(tmp_path, "2027-01-04 00:00"))[1:] == [
        "loom 1 (H): no window, neither a beam-out nor a standing time falls within the horizon"
    ]
