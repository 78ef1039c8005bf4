"""The list to walk the hall with."""

from dataclasses import replace

from small_mill import key, loom, mill, operation, with_operations

from tracker.scope.content import scope_looms
from tracker.scope.survey import survey_rows


def listed(one):
    return survey_rows(one, scope_looms(one))


def test_only_looms_and_columns_that_matter():
    survey = listed(mill(loom("1"), loom("2", side=None), loom("10", rail=None, side="Both"), loom("3", frames=None)))
    assert [row.key.loom for row in survey.rows] == ["2", "3", "10"]
    assert [column.heading for column in survey.columns] == ["Side", "Frames", "Rail"]
    assert [row.asked for row in survey.rows] == [("Side",), ("Frames",), ("Rail",)]
    assert survey.rows[2].values == {"Side": "Both", "Frames": 8, "Rail": None}


def test_drop_downs_hold_what_the_method_names_and_the_list_uses():
    survey = listed(mill(loom("1", side=None, rail=None, frames=None), loom("2", rail="bent")))
    allowed = {column.heading: column.allowed for column in survey.columns}
    assert allowed == {"Side": ("both", "left", "right"), "Frames": (), "Rail": ("bent", "drilled", "undrilled")}
    assert {c.heading: c.asks for c in survey.columns}["Frames"] == "> 12"


def test_yes_or_no():
    one = mill(loom("1"), method=with_operations(operation(20, 80, "Wires", 5, drop_wires="yes")))
    (column,) = listed(one).columns
    assert (column.heading, column.allowed) == ("drop wires", ("yes", "no"))


def test_one_named_word_alone_is_no_choice():
    one = mill(loom("1"), method=with_operations(operation(20, 80, "Close", 5, creel="vertical")))
    assert listed(one).columns[0].allowed == ()


def test_filling_it_in_closes_the_gap():
    one = mill(loom("1", side=None, rail=None))
    (row,) = listed(one).rows
    filled = replace(one.looms[key("1")], attributes=dict.fromkeys(row.asked, "both") | {"Rail": "drilled"})
    assert not scope_looms(mill(filled))[key("1")].to_survey
