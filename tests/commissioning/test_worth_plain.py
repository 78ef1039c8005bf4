"""Before and after without the season: ratios, strata, picks still needed; worked out by hand."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tracker.commissioning.worth.observed import (
    Observed,
    SideWidth,
    Standstill,
    StopCount,
    efficiencies_of,
    stops_of,
    widths_of,
)
from tracker.commissioning.worth.panel import panel
from tracker.commissioning.worth.plain import (
    Estimated,
    as_log,
    exact_ratio,
    one_by_one,
    picks_still_needed,
    pooled,
    strata,
)
from tracker.commissioning.worth.savings import Converted, payback, savings
from tracker.domain.mill import LoomKey

MONDAY = datetime(2027, 1, 4, tzinfo=UTC)
WEEK = timedelta(weeks=1)
ONE, TWO = LoomKey("H", "1"), LoomKey("H", "2")
DONE = Standstill(MONDAY + 2 * WEEK, MONDAY + 2 * WEEK + timedelta(days=1))


def week(key, number, stops, article="A", picks=1e5):
    return Observed(key, MONDAY + number * WEEK, MONDAY + (number + 1) * WEEK, article, stops, picks)


def seen(*observed, settling_days=3):
    return panel(observed, {ONE: DONE, TWO: DONE}, ZoneInfo("UTC"), settling_days)


def test_the_week_of_the_conversion_and_the_settling_time_are_left_out():
    """Weeks 0 and 1 before; week 2 holds the conversion and is dropped, week 3 begins 6 days after the restart: it counts at 3
    days of settling and not at 7."""
    weeks = [week(ONE, n, 10 * (n + 1)) for n in range(4)]
    assert seen(*weeks).phase.tolist() == [-1, -1, 1]
    assert seen(*weeks, settling_days=7).phase.tolist() == [-1, -1]


def test_a_loom_that_does_not_weave_again_has_nothing_after():
    conversions = {ONE: Standstill(DONE.started_at, None)}
    assert panel([week(ONE, n, 1) for n in range(4)], conversions, ZoneInfo("UTC")).phase.tolist() == [-1, -1]


def test_one_loom_is_told_on_the_article_that_it_wove_both_times():
    """Of A 100 in 100,000 before, 50 in 100,000 after: half. B was woven afterwards only."""
    (one,) = one_by_one(seen(week(ONE, 0, 100), week(ONE, 3, 50), week(ONE, 4, 999, "B")), True, 0.1)
    assert (one.article, one.before, one.after, one.told.estimate) == ("A", 100, 50, 0.5)


def test_weeks_that_differ_widen_the_interval_of_a_loom():
    """Before 40 and 160 about a mean of 100: (60² + 60²) / 100 = 72 on one degree of freedom; after 50 and 50: 0 on one;
    the dispersion is 72 / 2 = 36."""
    rows = [week(ONE, 0, 40), week(ONE, 1, 160), week(ONE, 3, 50), week(ONE, 4, 50)]
    (one,) = one_by_one(seen(*rows), True, 0.1)
    assert one.dispersion == pytest.approx(36)
    narrow = exact_ratio(100, 2e5, 200, 2e5)
    assert one.told.low < narrow.low < narrow.high < one.told.high


def test_picks_still_needed_by_hand():
    """A fall by 10 % is 0.10536 on the log scale; at 80 % power the error must be 0.10536 / (1.95996 + 0.84162) = 0.037607. At
    0.0752146 it is twice that, so four times the picks are needed: three times as many more. At half of it none."""
    assert as_log(0.1) == pytest.approx(0.10536, abs=1e-5)
    assert picks_still_needed(1e6, 0.0752146, as_log(0.1)) == pytest.approx(3e6, rel=1e-4)
    assert picks_still_needed(1e6, 0.0188, as_log(0.1)) == 0


def test_looms_as_strata_are_not_misled_by_who_weaves_how_much():
    """Both fall to 80 %: 1 from 100 to 80 in 100,000 each, 2 from 1,000 in 100,000 to 8,000 in 1,000,000. Each its own
    stratum gives 0.8 exactly; pooled, 8,080 in 1,100,000 against 1,100 in 200,000 is 1.3355."""
    rows = [week(ONE, 0, 100), week(ONE, 3, 80), week(TWO, 0, 1000), week(TWO, 3, 8000, picks=1e6)]
    told = strata(one_by_one(seen(*rows), True, 0.1), True)
    assert told is not None and told.estimate == pytest.approx(0.8)
    plain = pooled(seen(*rows), True)
    assert plain is not None and plain.estimate == pytest.approx(8080 / 1.1e6 / (1100 / 2e5))


def test_what_is_measured_is_told_as_a_difference():
    """60 and 62 before, 50 and 48 after: 49 − 61 = −12."""
    rows = [week(ONE, n, width, picks=1) for n, width in ((0, 60), (1, 62), (3, 50), (4, 48))]
    (one,) = one_by_one(seen(*rows), False, 0.1)
    assert one.told.estimate == -12 and one.told.low < -12 < one.told.high < 0


def count(cause, stops, number=0, **more):
    return StopCount(ONE, MONDAY + number * WEEK, MONDAY + (number + 1) * WEEK, "A", cause, stops, 1e5, **more)


def test_a_cause_without_a_row_in_a_reported_period_is_0_and_picks_count_once():
    counts = [count("warp", 4), count("weft", 6), count("weft", 3, 1), count(None, 9, 2)]
    assert [(o.value, o.picks) for o in stops_of(counts, "Warp")] == [(4, 1e5), (0, 1e5)]
    assert [o.value for o in stops_of(counts)] == [10, 3, 9]


def test_an_efficiency_counts_once_a_period_and_widths_of_both_sides_are_added():
    counts = [count("warp", 4, efficiency=0.9), count("weft", 6, efficiency=0.9), count("weft", 1, 1)]
    assert [o.value for o in efficiencies_of(counts)] == [0.9]
    widths = [SideWidth(ONE, MONDAY, MONDAY + WEEK, side, mm, "A") for side, mm in (("left", 30.0), ("right", 31.0))]
    assert [o.value for o in widths_of(widths)] == [61]


def test_savings_by_hand():
    """A loom of 1,000,000 picks a month, 20 tex at 3 a kilogram, an hour worth 9: 12 mm less on each pick are 1e6 × 0.012 × 20
    / 1e6 = 0.24 kg and 0.72. Its conversion cost 720: 1,000 months. 2 a day are 2 × 365.25 / 12 = 60.875 claimed."""

    class Width:
        class told:
            estimate, low, high = -12.0, -15.0, -9.0

    loom = Converted(ONE, 1e6, 2.0, 720.0, 20.0, 3.0, 9.0)
    told = savings([loom], None, Width(), 2.0)  # type: ignore[arg-type]
    assert told is not None and told.weft_kg is not None and told.money is not None and told.payback is not None
    assert told.weft_kg.estimate == pytest.approx(0.24)
    assert (told.money.low, told.money.estimate, told.money.high) == pytest.approx((0.54, 0.72, 0.90))
    assert told.payback.estimate == pytest.approx(1000)
    assert told.claimed == pytest.approx(60.875)
    assert told.share == pytest.approx(0.72 / 60.875)


def test_hours_saved_by_hand():
    """100 stops in 1,000,000 picks were expected, 80 came: 20 fewer a month at 1,000,000 picks, of 3 minutes: 1 h, worth 9."""

    class Stops:
        expected, picks = 100.0, 1e6

        class told:
            estimate, low, high = 0.8, 0.7, 0.9

    told = savings([Converted(ONE, 1e6, None, 0.0, None, None, 9.0)], Stops(), None, 3.0)  # type: ignore[arg-type]
    assert told is not None and told.hours is not None and told.hours_money is not None
    assert (told.hours.low, told.hours.estimate, told.hours.high) == pytest.approx((0.5, 1.0, 1.5))
    assert told.hours_money.estimate == pytest.approx(9)
    assert (told.weft_money, told.claimed, told.unclaimed) == (None, 0, 1)


@pytest.mark.parametrize(
    ("money", "expected"),
    [(Estimated(10, 5, 20), (10, 5, 20)), (Estimated(10, -1, 20), (10, 5, float("inf"))), (Estimated(-1, -2, 1), None)],
)
def test_payback_has_its_range(money, expected):
    """100 at 10 a month; at 20 and at 5; never where nothing may be saved at all."""
    months = payback(100, money)
    assert (months and (months.estimate, months.low, months.high)) == expected
