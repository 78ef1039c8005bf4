"""Decision cells against the OMG Decision Model and Notation standard.

Sources: the grammar of simple unary tests, DMN 1.3 clause 9 (S-FEEL), rules 5 to 14 (quoted: seen as printed on a public
grammar page); the loan example of chapter 11 with its tables and the expected results for one applicant, as encoded in the
standard's technology compatibility kit, test cases 0004-lending and 0006-simpletable-P1 (seen).
"""

from datetime import date

import pytest

from tracker.errors import DataError
from tracker.scope.cells import parse_cell


def taken(table, *inputs):
    """Outputs of the rules of which every cell holds."""
    return [rule[-1] for rule in table if all(parse_cell(c).holds(v) for c, v in zip(rule[:-1], inputs, strict=True))]


RISK_SCORE = [
    ("[18..21]", "-", "-", 32), ("[22..25]", "-", "-", 35), ("[26..35]", "-", "-", 40), ("[36..49]", "-", "-", 43),
    (">=50", "-", "-", 48), ("-", '"S"', "-", 25), ("-", '"M"', "-", 45), ("-", "-", '"UNEMPLOYED"', 15),
    ("-", "-", '"EMPLOYED"', 45), ("-", "-", '"SELF-EMPLOYED"', 36), ("-", "-", '"STUDENT"', 18),
]  # fmt: skip
PRE_BUREAU_RISK = [
    ("false", "<100", "HIGH"), ("false", "[100..120)", "MEDIUM"), ("false", "[120..130)", "LOW"),
    ("false", ">130", "VERY LOW"), ("true", "<80", "DECLINE"), ("true", "[80..90)", "HIGH"),
    ("true", "[90..110]", "MEDIUM"), ("true", ">110", "LOW"),
]  # fmt: skip
BUREAU_CALL = [('"HIGH","MEDIUM"', "FULL"), ('"LOW"', "MINI"), ('"VERY LOW","DECLINE"', "NONE")]
POST_BUREAU_RISK = [
    ("true", "<=100", "<580", "HIGH"), ("true", "<=100", "[580..600]", "MEDIUM"), ("true", "<=100", ">600", "LOW"),
    ("true", ">100", "<590", "HIGH"), ("true", ">100", "[590..615]", "MEDIUM"), ("true", ">100", ">615", "LOW"),
]  # fmt: skip
CONTINGENCY = [('"HIGH", "DECLINE"', 0.6), ('"MEDIUM"', 0.7), ('"LOW", "VERY LOW"', 0.8)]
ELIGIBILITY = [("DECLINE", "-", "-", "INELIGIBLE"), ("-", "false", "-", "INELIGIBLE"), ("-", "-", "<18", "INELIGIBLE")]
STRATEGY = [
    ('"INELIGIBLE"', "-", "DECLINE"), ('"ELIGIBLE"', '"FULL","MINI"', "BUREAU"), ('"ELIGIBLE"', '"NONE"', "THROUGH"),
]  # fmt: skip


def test_the_loan_example_of_the_standard():
    """Test case 001 of 0004-lending: age 35, married, employed, existing customer, credit score 649."""
    assert sum(taken(RISK_SCORE, 35, "M", "EMPLOYED")) == 130
    assert taken(PRE_BUREAU_RISK, True, 130) == ["LOW"]
    assert taken(BUREAU_CALL, "LOW") == ["MINI"]
    assert taken(POST_BUREAU_RISK, True, 130, 649) == ["LOW"]
    assert taken(CONTINGENCY, "LOW") == [0.8]
    assert taken(ELIGIBILITY, "LOW", True, 35) == []
    assert taken(STRATEGY, "ELIGIBLE", "MINI") == ["BUREAU"]


def test_each_table_of_the_example_gives_one_answer_over_its_whole_range():
    """The tables are marked unique: no score may be given two answers. For a new customer none is given at 130."""
    for score in range(60, 160):
        assert len(taken(PRE_BUREAU_RISK, True, score)) == 1
        assert len(taken(PRE_BUREAU_RISK, False, score)) == (score != 130)


APPROVAL = [
    (">=18", '"Medium","Low"', "true", "Approved"), ("<18", "-", "-", "Declined"),
    ("-", '"High"', "-", "Declined"), ("-", "-", "false", "Declined"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("age", "risk", "answer"), [(18, "Medium", "Approved"), (17, "Medium", "Declined"), (18, "High", "Declined")]
)
def test_the_simple_priority_table_of_the_compatibility_kit(age, risk, answer):
    """Test cases 001 to 003 of 0006-simpletable-P1, all affordable."""
    assert taken(APPROVAL, age, risk, True)[0] == answer


@pytest.mark.parametrize(
    ("cell", "below", "low", "inside", "high", "above"),
    [
        ("[5..10]", False, True, True, True, False),  # rules 8, 10: closed start, closed end
        ("(5..10)", False, False, True, False, False),  # rules 7, 9: open start, open end
        ("]5..10[", False, False, True, False, False),  # the other writing of the same
        ("[5..10)", False, True, True, False, False),
        ("]5..10]", False, False, True, True, False),
    ],
)
def test_open_and_closed_ends(cell, below, low, inside, high, above):
    assert [parse_cell(cell).holds(v) for v in (4.9, 5, 7, 10, 10.1)] == [below, low, inside, high, above]


def test_rule_12_a_list_holds_where_one_of_its_tests_does():
    assert [parse_cell("1, [5..7], > 9").holds(v) for v in (1, 2, 6, 9, 10)] == [True, False, True, False, True]


def test_rule_12_not_holds_where_none_of_the_list_does():
    assert [parse_cell("not(1, [5..7], > 9)").holds(v) for v in (1, 2, 6, 9, 10)] == [False, True, False, True, False]


def test_rule_12_a_dash_holds_always():
    assert parse_cell("-").holds("anything") is True


@pytest.mark.parametrize("cell", ["not(not(1))", "not(-)", "1, -", "not(1), 2", "= 1", "!= 1"])
def test_what_the_grammar_does_not_have(cell):
    with pytest.raises(DataError):
        parse_cell(cell)


def test_literals():
    """Numeric literal: digits with an optional minus and point, or a point and digits; Boolean; string; date."""
    assert parse_cell("-1220.12").holds(-1220.12)
    assert parse_cell(".12").holds(0.12)
    assert parse_cell("true").holds(True) and not parse_cell("true").holds(False)
    assert parse_cell('"FOO"').holds("FOO")
    assert parse_cell('[date("2017-01-01")..date("2017-12-31")]').holds(date(2017, 6, 1))
    assert not parse_cell('< date("2017-01-01")').holds(date(2017, 1, 1))


def test_comparing_unlike_kinds_is_neither_true_nor_false():
    """Clause 10.3.2.7, semantics of comparison (from memory): comparing values of different kinds gives null."""
    assert parse_cell("< 10").holds("ten") is None
