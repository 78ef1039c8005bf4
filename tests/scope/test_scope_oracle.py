"""Scoping by combinations of outcomes gives what judging every row for every loom gives."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from plain_scoping import plain_scope
from small_mill import METHOD, loom, mill, operation

from sample_data.big import make_mill
from tracker.domain.method import Alternative
from tracker.scope.content import scope_looms


def clever(content):
    rows = [tuple(map(id, of)) for of in (content.operations, content.kit_lines, content.setpoints, content.checks)]
    return (*rows, round(content.on_loom_min, 6), round(sum(content.labour_min.values()), 6))


def agrees(one):
    scopes = scope_looms(one)
    for key, of in one.looms.items():
        for kind, plain in plain_scope(one, of).items():
            assert {clever(content) for content in scopes[key].contents[kind]} == set(plain)


@pytest.mark.parametrize("seed", [1, 2])
def test_on_a_hall_of_the_samples_makes(seed):
    agrees(make_mill(60, 12, 2, halls=2, seed=seed))


cells = st.sampled_from(["-", "", "left", "left, both", "not(right)", "right, left"])
numbers = st.sampled_from(["-", "<= 12", "> 12", "[8..16)", "not([8..16])", "8, > 14"])
windows = st.sampled_from(["-", "mid-warp", "not(mid-warp)", "repeat, style"])
works = st.sampled_from(["-", "drill", "not(drill)", "as it is, new rail"])
operations = st.builds(
    lambda step, minutes, heads, side, frames, window, work: operation(
        2, step, f"Op {step}", minutes, heads=heads, side=side, frames=frames, window=window, rail_work=work
    ),
    st.integers(1, 4).map(lambda n: n * 10),
    st.integers(1, 60),
    st.integers(1, 2),
    cells,
    numbers,
    windows,
    works,
)
looms = st.builds(
    lambda side, rail, frames: (side, rail, frames),
    st.sampled_from(["left", "right", "both"]),
    st.sampled_from(["drilled", "undrilled"]),
    st.integers(4, 20),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(operations, max_size=8), st.lists(looms, min_size=1, max_size=6))
def test_on_any_method(rows, of):
    always = operation(2, 5, "Always", 10)
    method = replace(METHOD, operations=(always, *sorted(rows, key=lambda row: row.step)))
    agrees(mill(*(loom(str(i), *values) for i, values in enumerate(of)), method=method))


def test_on_choices_that_hang_together():
    more = (
        Alternative("jig", "small", {"rail work": "drill"}),
        Alternative("jig", "none", {"rail work": "not(drill)"}),
    )
    rows = (*METHOD.operations, operation(20, 80, "Set the jig", 5, jig="small"))
    method = replace(METHOD, operations=rows, alternatives=(*METHOD.alternatives, *more))
    agrees(mill(loom("1"), loom("2", rail="undrilled"), method=method))


@settings(max_examples=100, deadline=None)
@given(st.lists(operations, min_size=1, max_size=6), st.sampled_from(["left", "right", "both"]), st.integers(4, 20))
def test_to_survey_exactly_where_some_value_would_change_the_scope(rows, side, frames):
    """With the side missing: every side is tried by hand, and any other word."""
    always = operation(2, 5, "Always", 10)
    method = replace(METHOD, operations=(always, *rows), kit_lines=(), setpoints=(), checks=())
    one = mill(loom("1", None, "drilled", frames), method=method)
    tried = [loom("1", word, "drilled", frames) for word in ("left", "right", "both", "other")]
    seen = {str(plain_scope(one, of)) for of in tried}
    (scope,) = scope_looms(one).values()
    assert scope.to_survey == (len(seen) > 1)
