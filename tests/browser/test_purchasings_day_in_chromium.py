"""Purchasing's day through the real server, signed in: what must be ordered, a number, a receipt in part, another day for the
rest, and a part taken from another kit. No rail is on hand and none on order; A-7 is booked on Wed 6 January 2027, A-10 on the
7th, each with one."""

from dataclasses import replace
from datetime import date

import pytest
from opened import here
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import AS_OF, put, small_mill, small_plan
from served import served
from somebody import Somebody

from tracker.services.own_clock import give_own_clock
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.people.accounts import add_person

pytestmark = [pytest.mark.browser, pytest.mark.long]


def held(context) -> dict[str, float]:
    with context.reading() as uow:
        return {key.loom: quantity for key, quantity in read_stockroom(uow).reserved("RAIL").items()}


def test_purchasings_day(browser, tmp_path, quick_passwords):  # noqa: F811
    mill = small_mill()
    mill = replace(mill, parts={"RAIL": replace(mill.parts["RAIL"], on_hand=0)}, receipts=())
    context = here(put(tmp_path / "mill.db", mill, small_plan(mill)))
    give_own_clock(context, AS_OF)
    add_person(context, "Pia", PASSWORD, ["purchasing"])
    with served(context.database) as screens:
        pia = Somebody(browser, screens.url, "Pia")
        assert "/needs" in pia.page.url
        pia.sees("Kits that lack parts")

        # ordered today both rails come after 28 days; what is refused stands at its field, and what was typed stays
        pia.presses("Enter it as ordered")
        refusal, number = pia.page.get_by_text("has no number").first, pia.field("Number of the order")
        assert abs(refusal.bounding_box()["y"] - number.bounding_box()["y"]) < 120
        pia.types("Number of the order", "70-10")
        pia.types("Quantity of RAIL", "0")
        pia.presses("Enter it as ordered")
        pia.sees("part RAIL: 0 cannot be on order")
        assert pia.field("Number of the order").input_value() == "70-10"
        pia.types("Quantity of RAIL", "2")
        with pia.page.expect_download() as file:
            pia.presses("The order as a workbook")
        assert file.value.suggested_filename == "order Supplier A.xlsx"
        pia.presses("Enter it as ordered")
        pia.sees("Order 70-10: 2 pc of RAIL expected on Mon 1 Feb 2027.")

        # one comes now, the other on another day
        pia.chooses("On order, receipts")
        pia.types("What came", "1")
        pia.presses("Book in")
        pia.page.get_by_role(
            "cell", name="1 pc", exact=True
        ).first.wait_for()  # drawn anew, so that nothing typed is lost
        assert held(context) == {"A-7": 1}
        pia.dates("Comes on", date(2027, 1, 5))
        pia.presses("Expect it so")
        pia.sees("Order 70-10: 1 pc of RAIL expected on Tue 5 Jan 2027.")
        with context.reading() as uow:
            assert [(line.quantity, line.due) for line in uow.mill().receipts] == [(1, date(2027, 1, 5))]

        # until then the one that came goes to the loom that is booked second, once what that costs was read
        pia.chooses("Kits")
        pia.presses("Take it")
        pia.sees("Loom A-7 (Hall 1) gives 1 pc of RAIL to loom A-10 (Hall 1) and then lacks 1 pc")
        assert held(context) == {"A-7": 1}
        pia.presses("Yes: Take it")
        pia.until(lambda: held(context) == {"A-10": 1})
        pia.goes()
