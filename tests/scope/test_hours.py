"""Hours per machine type and variant: first, next and last conversion, range, trades, kinds of window."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from math import log2

import pytest
from small_mill import METHOD, key, loom, mill, operation, with_operations

from tracker.domain.progress import Conversion
from tracker.domain.windows import WindowKind
from tracker.scope.content import scope_looms
from tracker.scope.experience import learn
from tracker.scope.hours import hours_table
from tracker.scope.variants import variants

NOT_MID_WARP = (WindowKind.REPEAT, WindowKind.STYLE, WindowKind.STANDING)


def table(*looms, method=METHOD, conversions=()):
    one = mill(*looms, method=method)
    scopes = scope_looms(one)
    names = {variant.number: variant.name for variant in variants(one, scopes)}
    return hours_table(one, scopes, names, learn(conversions, one))


def test_a_type_with_one_variant_in_both_kinds_of_window():
    # 20 + 30 + 10 = 60 min × 1.15 = 1.15 h; mid-warp 2 × 40 min more = 140 min × 1.15.
    rows = table(loom("1"), loom("2"))
    assert [(row.variant, row.kinds, row.looms) for row in rows] == [
        ("", NOT_MID_WARP, 2), ("", (WindowKind.MID_WARP,), 2),
        ("every loom", NOT_MID_WARP, 2), ("every loom", (WindowKind.MID_WARP,), 2),
    ]  # fmt: skip
    assert [row.next_h for row in rows[:2]] == [pytest.approx(1.15), pytest.approx(140 * 1.15 / 60)]
    assert (rows[0].on_loom_h, rows[0].bench_h, rows[0].after_restart_h) == (
        pytest.approx(0.575), pytest.approx(23 / 60), pytest.approx(11.5 / 60),
    )  # fmt: skip
    assert rows[0].parts_cost == 100


def test_a_type_is_the_mean_of_its_variants():
    # loom 1: 60 min; loom 3: both sides and wiring, 110 min, of which 30 electrician.
    mean = table(loom("1"), loom("3", side="both", frames=16))[0]
    assert mean.next_h == pytest.approx((60 + 110) / 2 * 1.15 / 60)
    assert mean.trades == {"electrician": pytest.approx(15 * 1.15 / 60), "fitter": pytest.approx(70 * 1.15 / 60)}


def test_first_and_last_by_the_standard_curve():
    row = table(*(loom(str(n)) for n in range(1, 9)))[0]
    assert (row.first_h, row.next_h) == (pytest.approx(1.15), pytest.approx(1.15))
    assert (row.last_number, row.last_h) == (8, pytest.approx(1.15 * 0.9**3))
    assert row.source == "standard"


def test_the_next_one_after_recorded_conversions():
    at = datetime(2027, 1, 4, tzinfo=UTC)
    done = [Conversion(key(str(n)), "AJ", "F1", 1, at, at + timedelta(days=n)) for n in (1, 2, 3)]
    row = table(*(loom(str(n)) for n in range(1, 9)), conversions=done)[0]
    assert row.next_h == pytest.approx(1.15 * 4 ** log2(0.9))


def test_the_range_comes_from_three_figures():
    # "Set" 30 (20 to 70): expected 35, variance (50/6)² = 69.44; with the 60 min of certain work 95 min;
    # P10 and P90 lie 1.28155 × 8.3333 = 10.680 min away; × 1.15 / 60.
    row = table(loom("1"), method=with_operations(operation(9, 70, "Set", 30, minutes_low=20, minutes_high=70)))[0]
    assert row.next_h == pytest.approx(95 * 1.15 / 60)
    assert (row.low_h, row.high_h) == (
        pytest.approx((95 - 10.680) * 1.15 / 60, abs=1e-4), pytest.approx((95 + 10.680) * 1.15 / 60, abs=1e-4),
    )  # fmt: skip


def test_types_sort_naturally_and_looms_to_survey_are_left_out():
    rows = table(
        loom("1", machine_type="AJ-190"), loom("2", machine_type="AJ-20"), loom("3", rail=None, machine_type="B")
    )
    assert [row.machine_type for row in rows if not row.variant and WindowKind.REPEAT in row.kinds] == [
        "AJ-20",
        "AJ-190",
    ]


def test_the_whole_type_shares_a_row_of_kinds_only_where_all_its_looms_do():
    method = replace(with_operations(operation(9, 70, "Tie in", 6, window="style", side="right")))
    rows = [row for row in table(loom("1"), loom("2", side="right"), method=method) if not row.variant]
    assert [row.kinds for row in rows] == [
        (WindowKind.REPEAT, WindowKind.STANDING), (WindowKind.STYLE,), (WindowKind.MID_WARP,),
    ]  # fmt: skip
