"""Variants: who belongs together, what they are called, what they cost against the commonest."""

from dataclasses import replace

import pytest
from said import said
from small_mill import METHOD, key, loom, mill, operation, with_operations

from tracker.domain.windows import WindowKind
from tracker.scope.cells import parse_cell
from tracker.scope.classes import Classes
from tracker.scope.content import scope_looms
from tracker.scope.variants import variants


def found(*looms, method=METHOD, kind=WindowKind.REPEAT):
    one = mill(*looms, method=method)
    return variants(one, scope_looms(one), kind)


def test_the_commonest_comes_first_and_the_others_are_named_against_it():
    of = found(
        loom("1"), loom("2"), loom("3", side="both", frames=16), loom("4", rail="undrilled"), loom("5", rail=None)
    )
    assert [(v.name, [k.loom for k in v.looms]) for v in of] == [
        ("side left, frames <= 12, rail drilled", ["1", "2"]),
        ("side both, frames > 12", ["3"]),
        ("rail undrilled", ["4"]),
        ("to survey", ["5"]),
    ]
    assert said(of[-1].obstacle) == "unknown: rail"


def test_hours_cost_and_differences():
    # Loom 3: bench 20, on the loom 30 (both) + 30 wiring, after 10; labour 20 + 30 + 20 + 30 + 10 = 110 min × 1.15.
    _, both = found(loom("1"), loom("2"), loom("3", side="both", frames=16))
    assert both.labour_h == pytest.approx(110 * 1.15 / 60)
    assert (both.on_loom_h, both.bench_h, both.after_restart_h) == (
        pytest.approx(60 * 1.15 / 60), pytest.approx(20 * 1.15 / 60), pytest.approx(10 * 1.15 / 60),
    )  # fmt: skip
    assert both.parts_cost == 200
    assert both.more == ("step 30 Fit right", "step 50 Wire", "DEVICE 1 → 2")
    assert both.less == ()


def test_less_than_the_commonest():
    _, one = found(loom("1", side="both"), loom("2", side="both"), loom("3", side="right"))
    assert one.less == ("step 30 Fit left", "DEVICE 2 → 1")


def test_other_alternatives_count_as_a_difference():
    _, one = found(loom("1"), loom("2"), loom("3", rail="undrilled"))
    assert one.more == ("step 40 Drill", "rail work: drill", "rail work: new rail")
    assert one.less == ("rail work: as it is",)


def test_the_choice_with_the_least_labour_counts():
    # drill 60 min by one against two for 50 min: 60 < 100 person-minutes
    (one,) = found(loom("1", rail="undrilled"))
    assert one.labour_h == pytest.approx((20 + 30 + 60 + 10) * 1.15 / 60)
    assert one.parts_cost == 100


def test_one_variant_is_every_loom():
    assert [v.name for v in found(loom("1"), loom("2", machine_type="RA"))] == ["every loom"]
    assert found(loom("1"), loom("2", machine_type="RA"))[0].machine_types == ("AJ", "RA")


def test_a_loom_with_an_obstacle_is_a_variant_that_says_so():
    of = found(loom("1"), loom("2"), loom("3", rail="bent"))
    assert (of[1].name, of[1].labour_h, said(of[1].obstacle)) == (
        "rail bent",
        0,
        "no alternative is left of rail work (any window)",
    )


def test_names_stay_apart():
    # Looms 3 and 4 differ from the commonest in nothing that they do not share with it: creel matters only with frames
    # above 12, so that "frames > 12" alone names two variants.
    method = with_operations(operation(20, 80, "Close", 5, creel="vertical", frames="> 12"))
    looms = [loom("1", creel="none"), loom("2", creel="vertical"), loom("3", creel="none", frames=13)]
    names = [v.name for v in found(*looms, loom("4", creel="vertical", frames=13), method=method)]
    assert names == ["frames <= 12", "frames > 12, creel none", "frames > 12, creel vertical"]


def test_no_looms_no_variants():
    assert found() == ()


@pytest.mark.parametrize(
    ("cells", "value", "words"),
    [
        (["<= 12", "> 12"], 8, "x <= 12"),
        (["<= 12", "> 12"], 16, "x > 12"),
        (["<= 230", "(230..300]", "> 300", "<= 340"], 280, "x > 230 to 300"),
        (["<= 230", "(230..300]", "> 300", "<= 340"], 320, "x > 300 to 340"),
        (["[8..16)"], 9, "x >= 8 to below 16"),
        (["8"], 8, "x 8"),
        (["8"], 4, "x < 8"),
        (["8"], 12, "x > 8"),
        (["1", "2", ">= 3"], 4, "x >= 3"),
        (["yes"], True, "x"),
        (["yes"], False, "no x"),
        (["vertical x"], "Vertical x", "Vertical x"),
        (["vertical"], "vertical", "x vertical"),
        (["vertical"], None, "x unknown"),
    ],
)
def test_words_for_a_class_of_values(cells, value, words):
    classes = Classes("x", [parse_cell(cell) for cell in cells])
    assert classes.words({classes.outcome(value)}) == words


def test_several_words():
    classes = Classes("creel", [parse_cell("none")])
    outcomes = {classes.outcome(value) for value in ("round", "square")}
    assert classes.words(outcomes) == "creel round or square"


def test_looms_alike_share_a_variant_whatever_their_reasons():
    rows = [operation(20, 80, "Close", 5, creel="vertical"), operation(21, 80, "Close", 5, creel="horizontal")]
    of = found(loom("1", creel="vertical"), loom("2", creel="horizontal"), method=with_operations(*rows))
    assert [v.looms for v in of] == [(key("1"), key("2"))]
    assert replace(of[0], values={}).name == "every loom"
