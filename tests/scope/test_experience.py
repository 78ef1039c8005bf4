"""Learning from recorded conversions: which curve, which factor, what is said."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from math import log2

import pytest
from said import said
from small_mill import METHOD, TERMS, key, loom, mill, operation

from tracker.domain.mill import Crew
from tracker.domain.progress import Conversion
from tracker.domain.windows import WindowKind
from tracker.scope.experience import learn, learning_factors
from tracker.scope.learning import Curve, fit_curve

START = datetime(2027, 1, 4, 6, tzinfo=UTC)
STANDARD = Curve(0.9, 0.6)
LOOMS = [loom(str(n)) for n in range(1, 13)]
"""All drilled and left: one operation on the loom, "Fit left", 30 × 1.15 = 34.5 min."""


def done(n, minutes=None, crew="F1", machine_type="AJ", operations=None, version=1):
    at = START + timedelta(days=n)
    return Conversion(key(str(n)), machine_type, crew, version, at, at, operations or {}, minutes)


def test_the_floor_holds_the_curve():
    # 0.9^4 = 0.6561 at n = 16; 0.9^5 = 0.59049 at n = 32, below the floor.
    assert STANDARD.factor(16) == pytest.approx(0.6561)
    assert STANDARD.factor(32) == 0.6


def test_a_fit_finds_the_curve_that_made_the_figures():
    numbers = [1, 2, 3, 4, 5, 6]
    curve = fit_curve(STANDARD, numbers, [1.3 * n ** log2(0.85) for n in numbers])
    assert (curve.rate, curve.level, curve.fitted) == (pytest.approx(0.85), pytest.approx(1.3), True)
    assert curve.factor(8) == pytest.approx(1.3 * 0.85**3)


def test_by_hand_a_fit_of_scattered_figures():
    # ln n: 0, .6931, 1.3863, 0, .6931 (mean .5545); ln ratio: 0, -.1054, -.2231, .0953, -.0513 (mean -.0569).
    # Sxy = -.5545·.0569 - .1386·.0485 - .8318·.1662 - .5545·.1522 + .1386·.0056 = -.2601; Sxx = 1.3451;
    # b = -.1935, rate 2^b = .8745; ln a = -.0569 + .1935·.5545 = .0504, a = 1.0517.
    curve = fit_curve(STANDARD, [1, 2, 4, 1, 2], [1.0, 0.9, 0.8, 1.1, 0.95])
    assert curve.rate == pytest.approx(0.8745, abs=5e-4)
    assert curve.level == pytest.approx(1.0517, abs=5e-4)


def test_four_conversions_are_too_few():
    assert fit_curve(STANDARD, [1, 2, 3, 4], [2.0, 2.0, 2.0, 2.0]) is STANDARD


def test_five_crews_with_one_each_fit_the_level_alone():
    curve = fit_curve(STANDARD, [1] * 5, [1.2] * 5)
    assert (curve.rate, curve.level, curve.fitted) == (0.9, pytest.approx(1.2), True)


def test_slower_each_time_is_no_learning():
    curve = fit_curve(STANDARD, [1, 2, 3, 4, 5], [1.0, 1.1, 1.2, 1.3, 1.4])
    assert curve.rate == 1
    assert curve.factor(6) == pytest.approx((1.0 * 1.1 * 1.2 * 1.3 * 1.4) ** 0.2)


def test_nothing_recorded_teaches_nothing():
    assert learn([], mill(*LOOMS)) == {}
    assert learn([replace(done(1, 34.5), ended_at=None)], mill(*LOOMS)) == {}


def test_the_standard_curve_counts_conversions_of_the_crew():
    learned = learn([done(1), done(2), done(3)], mill(*LOOMS))
    assert learning_factors(learned) == {"AJ": pytest.approx(4 ** log2(0.9))}  # the fourth: 0.81
    assert said(learned["AJ"].says) == (
        "AJ: 3 conversions recorded; a fit needs 5 more with their minutes, so the curve of the terms holds (90%); "
        "the next is estimated at 81% of the method's minutes (standard)."
    )


def test_another_crew_of_the_lead_trade_starts_anew():
    two = replace(mill(*LOOMS), crews=(Crew("F1", "fitter", 2), Crew("F2", "fitter", 2), Crew("E1", "electrician", 1)))
    assert learn([done(1), done(2), done(3)], two)["AJ"].factor == pytest.approx((0.81 + 1) / 2)


def test_a_trade_is_one_however_it_is_written():
    # F2 is listed as "Fitter " and has not done one yet: (0.81 + 1) / 2, as above
    two = replace(mill(*LOOMS), crews=(Crew("F1", "fitter", 2), Crew("F2", "Fitter ", 2)))
    assert learn([done(1), done(2), done(3)], two)["AJ"].factor == pytest.approx((0.81 + 1) / 2)
    elsewhere = replace(two, crews=(Crew("F1", "fitter", 2), Crew("F2", "fitter", 2, hall="H2")))
    assert learn([done(1), done(2), done(3)], elsewhere)["AJ"].factor == pytest.approx(0.81)


def test_another_type_starts_anew():
    learned = learn([done(1), done(2), done(3, machine_type="RA")], mill(*LOOMS))
    assert [one.factor for one in learned.values()] == [pytest.approx(3 ** log2(0.9)), pytest.approx(0.9)]


def test_the_fitted_curve_is_used_and_said():
    minutes = {n: 34.5 * 1.2 * n ** log2(0.8) for n in range(1, 9)}
    learned = learn([done(n, m) for n, m in minutes.items()], mill(*LOOMS))["AJ"]
    assert learned.curve.source == "fitted"
    assert learned.curve.rate == pytest.approx(0.8)
    assert said(learned.says) == (
        "AJ: 8 conversions recorded; each doubling takes 80% of the time, the first took 120% of the method's minutes; "
        "the next is estimated at 72% of the method's minutes (fitted)."
    )  # 1.2 × 9^log2(.8) = .591 lies below 1.2 × the floor .6 = .72


def test_minutes_of_side_by_side_operations_count_once():
    # Both sides: 34.5 and 23 min side by side; recorded 40 and 50, so the step took 50 min: ratio 50 / 34.5.
    both = [loom(str(n), side="both") for n in range(1, 6)]
    records = [done(n, operations={"Fit left": 40, "Fit right": 50}) for n in range(1, 6)]
    assert learn(records, mill(*both))["AJ"].curve.level == pytest.approx(50 / 34.5)


def test_a_conversion_without_minutes_counts_but_does_not_fit():
    learned = learn([done(n, operations={"Wire": 5}) for n in range(1, 7)], mill(*LOOMS))["AJ"]
    assert (learned.used, learned.curve.fitted) == (0, False)


def test_a_conversion_is_measured_by_the_window_and_the_choices_it_was_done_with():
    # New rail in a mid-warp stop: 40 + 30 + 50 = 120 min, × 1.15 = 138. Drilled in a beam change it were 90 × 1.15.
    undrilled = [loom(str(n), rail="undrilled") for n in range(1, 6)]
    taken = {"kind": WindowKind.MID_WARP, "choices": (("rail work", "new rail"),)}
    records = [replace(done(n, 138), **taken) for n in range(1, 6)]
    assert learn(records, mill(*undrilled))["AJ"].curve.level == pytest.approx(1)


def test_an_operation_that_runs_over_is_named():
    # No learning (the same 45 min each time), so 45 / 34.5 = 1.304.
    learned = learn([done(n, operations={"Fit left": 45, "Watch": 11.5}) for n in range(1, 6)], mill(*LOOMS))["AJ"]
    assert learned.biases[0].operation == "Fit left"
    assert learned.biases[0].ratio == pytest.approx(45 / 34.5)
    assert said(learned.says).endswith("Against the method: Fit left +30%.")


def test_each_conversion_is_measured_by_its_own_version():
    # Version 1 said 30 min, the method in force says 60: 34.5 recorded is 100 % of what was asked then.
    longer = replace(METHOD, version=2, operations=(operation(4, 30, "Fit left", 60, side="left, both"),))
    records = [done(n, 34.5) for n in range(1, 6)]
    learned = learn(records, mill(*LOOMS, method=longer), {1: METHOD})["AJ"]
    assert learned.curve.level == pytest.approx(1)
    assert TERMS.allowance == 0.15
