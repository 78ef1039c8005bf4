"""Which columns belong to which loom of a row. What each heading line means is worked out by hand."""

import pytest

from tracker.intake.layout.side_by_side import groups_of


@pytest.mark.parametrize(
    "line, groups",
    [
        ("Hall Loom Type Rail Loom Type Rail", [("123", "0"), ("456", "0")]),
        ("Loom Type Speed Loom Type Speed Loom Type Speed", [("012", ""), ("345", ""), ("678", "")]),
        ("Hall Type Loom Speed Type Loom Speed", [("123", "0"), ("456", "0")]),  # the type stands before each loom
        ("Hall Loom Type Speed Loom Type", [("123", "0"), ("45", "0")]),  # the last loom has fewer columns
        ("Hall Loom Type Loom Type Remarks", [("12", "05"), ("34", "05")]),  # what stands behind both is shared
        ("Loom Type Speed Loom Type Efficiency", [("012", ""), ("345", "")]),
        ("East Loom Type West Loom Type", [("012", ""), ("345", "")]),  # a label before each loom
        ("Loom Type Date Loom Repair Hours", []),  # a log of repairs beside the list
        ("Loom Hall Type Speed", []),
    ],
)
def test_the_columns_of_each_loom_and_those_that_all_share(line, groups):
    headings = dict(enumerate(line.split()))
    found = groups_of(list(headings), headings)
    assert [("".join(map(str, own)), "".join(map(str, shared))) for own, shared in found] == groups
