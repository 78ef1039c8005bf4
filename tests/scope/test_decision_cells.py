"""Decision cells: what holds, what is unknown, what is refused and how."""

import re
from datetime import date, datetime

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from refusals import refused

from tracker.errors import DataError
from tracker.scope.cells import Equal, Interval, Limit, UnaryTest, parse_cell


@pytest.mark.parametrize(
    ("cell", "yes", "no"),
    [
        ("undrilled", ["undrilled", " Undrilled "], ["drilled", 3]),
        ("left, both", ["left", "both"], ["right"]),
        ("horizontal creel", ["Horizontal  creel"], ["vertical creel"]),
        ("not(left, right)", ["both"], ["left", "right"]),
        ("yes", [True, "yes", "TRUE"], [False, "no"]),
        ("no", [False, "No"], [True]),
        ("007", ["007"], ["7", 7]),
        ("7", [7, 7.0, "7"], ["007", 7.5]),
        ('"7, left"', ["7, left"], [7]),
        ("rapier (single)", ["rapier (single)"], ["rapier"]),
        ("2027-01-04", [date(2027, 1, 4), datetime(2027, 1, 4, 6)], [date(2027, 1, 5)]),
        ('>= date("2027-01-04")', [date(2027, 1, 4)], [date(2027, 1, 3)]),
        ("< 4, [8..16]", [3, 8, 16], [4, 7.9, 17]),
        ("≤ 12", [12], [12.5]),
        ("[01..05]", [1, 5], [6]),
        ("Öffner", ["offner"], ["schliesser"]),
    ],
)
def test_what_a_cell_holds_for(cell, yes, no):
    test = parse_cell(cell)
    assert [test.holds(value) for value in yes] == [True] * len(yes)
    assert [test.holds(value) for value in no] == [False] * len(no)


@pytest.mark.parametrize("cell", ["", " ", "-", "–"])
def test_any_holds_even_for_a_missing_value(cell):
    assert parse_cell(cell).holds(None) is True


@pytest.mark.parametrize("cell", ["undrilled", "<= 12", "not(left)", "[1..2]"])
@pytest.mark.parametrize("value", [None, "", "   ", float("nan")])
def test_a_missing_value_leaves_the_test_unknown(cell, value):
    assert parse_cell(cell).holds(value) is None


def test_a_text_cannot_be_put_in_order_with_a_number():
    assert parse_cell("<= 12").holds("many") is None
    assert parse_cell("not(<= 12)").holds("many") is None
    assert parse_cell("many, <= 12").holds("many") is True  # one item settles the list


def test_yes_is_not_the_number_one():
    assert parse_cell("1").holds(True) is False
    assert parse_cell("yes").holds(1) is False


@pytest.mark.parametrize(
    ("cell", "advice"),
    [
        ("= 5", "without the equals sign"),
        ("<> left", "write not(left)"),
        ("!= left", "write not(left)"),
        ("[2,5..3,5]", "decimals take a point"),
        ("<= 12 cm", "without a unit"),
        ("< left", "a text in quotes"),
        ("left,", "empty item"),
        ("left,,right", "cannot be read"),
        ("not()", "empty item"),
        ("not(left), right", "enclose the whole cell"),
        ("not(-)", "cannot be read"),
        ("[8..16", "cannot be read"),
        ('"left', "cannot be read"),
        ("(left", "cannot be read"),
        ('date("4.1.2027")', "is no day"),
        ('["a"..3]', "both be numbers"),
        ("< yes", "in quotes"),
        ('< "yes"', "have no order"),
        ("9" * 400, "no value that can be compared"),
        ("a" * 1001, "1,000 is the limit"),
    ],
)
def test_an_unreadable_cell_says_what_to_write(cell, advice):
    with refused(DataError, re.escape(advice)):
        parse_cell(cell)


def test_never_is_an_interval_without_values():
    assert [parse_cell(c).never for c in ("[16..8]", "(8..8]", "[8..8]", "[16..8], 3", "not([16..8])")] == [
        True, True, False, False, False,
    ]  # fmt: skip


@given(st.text(max_size=60) | st.text(alphabet='ab1.,-[]()<>="\\ not', max_size=25))
@example("(" * 30)
@example("a" + " " * 900 + '"')
def test_any_text_is_read_or_refused_and_what_is_read_prints_as_itself(cell):
    try:
        test = parse_cell(cell)
    except DataError:
        return
    assert parse_cell(str(test)) == test
    assert test.holds(None) in (None, True)


numbers = st.floats(allow_nan=False, allow_infinity=False).filter(lambda x: 1e-9 < abs(x) < 1e15)


positive = st.one_of(
    numbers.map(Equal),
    st.booleans().map(Equal),
    st.dates().map(Equal),
    st.builds(Limit, st.sampled_from(["<", "<=", ">", ">="]), numbers | st.dates()),
    st.builds(Interval, numbers, numbers, st.booleans(), st.booleans()),
)


@given(st.lists(positive, min_size=1, max_size=4), st.booleans())
def test_every_test_prints_as_a_cell_that_reads_back(tests, negated):
    test = UnaryTest(tuple(tests), negated)
    assert parse_cell(str(test)) == test
