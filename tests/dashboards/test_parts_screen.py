"""Kits and needs: what purchasing sees and does. In the small mill A-7 is booked firm on Wed 6 January 2027, A-10 on the 7th, each
with one RAIL of 28 days' lead time; here none is on hand and none on order, and it is Mon 4 January, 06:00."""

from dataclasses import replace
from datetime import date

import pytest
from looking import as_role, look, press
from opened import here
from screen_mill import AS_OF, SEVEN, TEN, put, small_mill, small_plan
from screen_texts import words

from tracker.domain.mill import Receipt
from tracker.domain.people import Role
from tracker.services.own_clock import give_own_clock
from tracker.services.parts.stockroom import read_stockroom
from tracker.store import open_store


@pytest.fixture
def bare(tmp_path, monkeypatch):
    """No rail at all."""
    mill = small_mill()
    mill = replace(mill, parts={"RAIL": replace(mill.parts["RAIL"], on_hand=0)}, receipts=())
    path = put(tmp_path / "bare.db", mill, small_plan(mill))
    give_own_clock(here(path), AS_OF)
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


def field(fields, label: str):
    return next(one for one in fields if one.label.startswith(label))


def held(db: str) -> dict[str, float]:
    with here(db).reading() as uow:
        return {key.loom: quantity for key, quantity in read_stockroom(uow).reserved("RAIL").items()}


def lines(db: str) -> tuple[Receipt, ...]:
    with here(db).reading() as uow:
        return uow.mill().receipts


def test_purchasings_day(bare):
    """Ordered today both rails come after 28 days, on Mon 1 February: late for both looms. One comes before, and goes to the loom
    that is booked first; it is taken for the other."""
    app = look("needs")
    said = words(app)
    assert "To order by the end of this week" in said and "late by" in said and "Supplier A" in said
    assert "Kits that lack parts" in said and "1 pc of RAIL" in said
    assert app.checkbox[0].value is True and "RAIL" in app.checkbox[0].label
    assert (app.number_input[0].value, app.date_input[0].value) == (2, date(2027, 2, 1))

    press(app, "Enter it as ordered")
    assert "the order line of part RAIL has no number" in app.error[0].value and not lines(bare)
    app.number_input[0].set_value(0)
    field(app.text_input, "Number of the order").set_value("70-10")
    press(app, "Enter it as ordered")
    assert "part RAIL: 0 cannot be on order" in app.error[0].value
    drawn = [one.type for one in app.main if one.type in ("date_input", "error", "text_input")]
    assert drawn == ["date_input", "error", "text_input"]  # below its line, above the number of the order
    assert field(app.text_input, "Number of the order").value == "70-10"  # what was typed stays
    app.number_input[0].set_value(2)
    press(app, "Enter it as ordered")
    assert app.success[0].value.replace("\\", "") == "Order 70-10: 2 pc of RAIL expected on Mon 1 Feb 2027."
    assert [(line.order, line.quantity) for line in lines(bare)] == [("70-10", 2)]
    assert "Nothing: stock and open orders cover every need." in words(app)

    app.radio(key="parts area").set_value("receipts").run()
    assert app.query_params["show"] == "receipts" or app.query_params["show"] == ["receipts"]
    app.number_input[0].set_value(1)
    press(app, "Book in")
    assert [line.quantity for line in lines(bare)] == [1] and held(bare) == {"A-7": 1}
    field(app.date_input, "Comes on").set_value(date(2027, 1, 5))
    press(app, "Expect it so")
    assert "expected on Tue 5 Jan 2027" in app.success[0].value

    app.radio(key="parts area").set_value("kits").run()
    said = words(app)
    assert "Loom A-7 (Hall 1) gives 1 pc of RAIL to loom A-10 (Hall 1) and then lacks 1 pc" in said
    press(app, "Take it")
    assert "then lacks" in app.warning[0].value and held(bare) == {"A-7": 1}  # asked first
    press(app, "Yes: Take it")
    assert held(bare) == {"A-10": 1}


def test_what_may_be_taken_back_slips_and_counts(bare):
    app = look("needs", show="stock")
    app.number_input[0].set_value(3)
    press(app, "Book the count")
    assert held(bare) == {"A-7": 1, "A-10": 1}  # three were found: one for each, and one is free
    app = look("needs", show="kits")
    field(app.selectbox, "Of").select_index(1).run()  # A-10, which is booked second
    press(app, "Release")
    assert "gives up 1 pc of RAIL" in app.warning[0].value and held(bare) == {"A-7": 1, "A-10": 1}  # asked first
    press(app, "Yes: Release")
    assert held(bare) == {"A-7": 1}
    app = look("needs", show="kits")
    press(app, "Issue")
    with open_store(bare).reading() as uow:
        assert read_stockroom(uow).holds(SEVEN) == {"RAIL": 1}


def test_what_if_an_order_slips_changes_nothing(tmp_path, monkeypatch):
    """One rail is there, for A-7. A-10 of Thu 7 January has the line of Tue 5 January; a week later it comes on the 12th."""
    mill = small_mill()
    line = Receipt("PO-1", "RAIL", 1, date(2027, 1, 5))
    mill = replace(mill, parts={"RAIL": replace(mill.parts["RAIL"], on_hand=1)}, receipts=(line,))
    path = put(tmp_path / "slip.db", mill, small_plan(mill))
    give_own_clock(here(path), AS_OF)
    monkeypatch.setenv("BEAMSLOT_DB", path)
    app = press(look("needs", show="receipts"), "Who falls?")
    said = app.success[0].value.replace("\\", "")
    assert str(TEN) in said and "A-7" not in said and lines(path) == (line,)


@pytest.mark.parametrize("area", ["orders", "kits"])
def test_who_may_not_book_in_the_stockroom_sees_all_and_finds_no_form(bare, monkeypatch, area):
    as_role(monkeypatch, Role.VIEWER)
    app = look("needs", show=area)
    assert not app.button and "RAIL" in words(app)


def test_a_mill_that_cannot_be_worked_out_says_why(tmp_path, monkeypatch):
    mill = small_mill()
    plan = small_plan(mill)
    odd = replace(plan, bookings=(replace(plan.bookings[0], parts={"GONE": 1}),))
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "odd.db", mill, odd))
    assert "unknown part GONE" in look("needs").error[0].value
