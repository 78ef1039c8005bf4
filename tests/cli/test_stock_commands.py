"""The stockroom's commands on the sample mill with a plan published: what they book, print and refuse.

The sample has 4 RAIL-N on hand and an open line 4100127-10 of 8; loom 007, a pilot, has its whole kit reserved.
"""

import re
from datetime import date

import pytest
from openpyxl import load_workbook

from sample_data.mill import sample_mill
from tracker.store import open_store
from tracker.words.formats import day


def on_hand(tmp_path, part="RAIL-N"):
    with open_store(tmp_path / "mill.db").reading() as uow:
        return uow.mill().parts[part].on_hand


def test_receive_an_order_line_books_all_that_is_open(planned, tmp_path):
    ran = planned("stock", "receive", "--order", "4100127-10", "--json", "-")
    assert ran.json["stock"][0]["on_hand"] == 12  # 4 + 8
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert "4100127-10" not in {receipt.order for receipt in uow.mill().receipts}


def test_receive_a_part_of_an_order_line_leaves_the_rest_open_unless_it_is_the_last(planned, tmp_path):
    planned("stock", "receive", "RAIL-N", "3", "--order", "4100127-10")
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert [r.quantity for r in uow.mill().receipts if r.order == "4100127-10"] == [5]  # 8 − 3
    planned("stock", "receive", "RAIL-N", "2", "--order", "4100127-10", "--last")
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert not [r for r in uow.mill().receipts if r.order == "4100127-10"]
    assert on_hand(tmp_path) == 9  # 4 + 3 + 2


def test_an_entry_says_what_it_leaves(planned):
    ran = planned("stock", "adjust", "RAIL-N", "-1", "--why", "bent", "--who", "Store keeper")
    assert ran.code == 0
    heading, row = ran.out.splitlines()[1:3]
    assert heading.split() == ["Part", "Booked", "On", "hand", "Reserved", "Free", "Unit"]
    assert row.split()[:3] == ["RAIL-N", "-1", "3"] and row.split()[-1] == "pc"


def test_the_book_has_the_newest_entry_first_and_the_stock_after_each(planned):
    planned("stock", "adjust", "RAIL-N", "-1", "--why", "bent", "--who", "Store keeper")
    planned("stock", "count", "RAIL-N", "5")
    book = planned("stock", "moves", "RAIL-N", "--json", "-").json
    assert [(e["kind"], e["quantity"], e["on_hand"]) for e in book] == [
        ("opening", 4, 4), ("adjustment", -1, 3), ("count", 2, 5)]  # fmt: skip
    assert (book[1]["who"], book[1]["why"]) == ("Store keeper", "bent")
    printed = planned("stock", "moves", "RAIL-N").out.splitlines()
    assert [line.split()[6] for line in printed[2:5]] == ["count", "adjustment", "opening"]


def test_issue_return_and_recover_a_kit(planned):
    assert planned("stock", "issue", "007").code == 0
    again = planned("stock", "issue", "007")
    assert (again.code, again.line) == (1, "nothing is reserved for loom 007 (Hall 1); its kit was issued")
    recovered = planned("stock", "recover", "007", "--json", "-").json
    assert [(m["part"], m["quantity"]) for m in recovered["movements"]] == [("CARD", 1), ("TRANSPORT-LOCK", 2)]
    back = planned("stock", "return", "007", "DEV-L", "1", "--why", "wrong hand", "--json", "-").json
    assert back["kits"][0]["state"] == "complete"  # what came back is held for it again


def test_release_reserve_and_take(planned):
    released = planned("stock", "release", "007", "DEV-L", "--json", "-").json
    assert released["kits"][0]["short"] == {"DEV-L": 1}
    assert planned("stock", "reserve", "007").code == 0
    kits = planned("kits", "--json", "-").json
    lacking = next(k for k in kits if "DEV-R" in k["short"])
    taken = planned("stock", "take", "DEV-R", "--from", "007", "--to", lacking["loom"], "--json", "-").json
    short = {kit["loom"]: kit["short"].get("DEV-R") for kit in taken["kits"]}
    assert short == {"007": 1, lacking["loom"]: None}


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (("receive", "BOLT", "3", "--why", "x"), 1, "unknown part BOLT; `beamslot needs` lists the parts"),
        (("receive", "RAIL-N", "3"), 2, "part RAIL-N: a receipt without an order line needs its reason"),
        (("receive", "--order", "9"), 1, "no open order line 9; open are 4100102-10"),
        (("adjust", "RAIL-N", "-5", "--why", "bent"), 1, "part RAIL-N: 5 asked for, 4 on hand; count the stock or book"),
        (("adjust", "RAIL-N", "nan", "--why", "bent"), 1, "part RAIL-N: nan is no quantity for an entry of kind adjustment"),
        (("adjust", "RAIL-N", "1", "--why", " "), 1, "part RAIL-N: an adjustment of +1 needs its reason"),
        (("return", "007", "RAIL-N", "1"), 1, "part RAIL-N: 1 to be returned from loom 007 (Hall 1), which holds 0"),
        (("count", "TAPPING-OIL", "5", "--unit", "l"), 1, "part TAPPING-OIL is kept in ml, not in l"),
        (("issue", "999"), 1, "there is no loom 999; `beamslot scope` lists the looms"),
        (("issue", "007", "RAIL-W", "1"), 1, "part RAIL-W: 1 asked for loom 007 (Hall 1), 0 free of 0 on hand"),
        (("take", "DEV-R", "--from", "007", "--to", "007"), 1, "part DEV-R: loom 007 (Hall 1) lacks none of it"),
        (("moves", "BOLT"), 1, "unknown part BOLT"),
        (("count", "RAIL-N", "3", "--at", "2099-01-01"), 2, "Thu 1 Jan 2099 00:00 is still to come"),
    ],
)  # fmt: skip
def test_a_refusal_is_one_line_and_books_nothing(planned, tmp_path, arguments, code, says):
    ran = planned("stock", *arguments)
    assert (ran.code, ran.out) == (code, "")
    assert ran.line.startswith(says)
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert {movement.kind.value for movement in uow.movements()} == {"opening"}


@pytest.mark.parametrize(
    "arguments",
    [("what-if",), ("what-if", "--slip", "4100127-10"), ("what-if", "--slip", "4100127-10=1.5"),
     ("what-if", "--scrap", "RAIL-N=many"), ("adjust", "RAIL-N", "-1"), ("count", "RAIL-N"), ("take", "RAIL-N")],
)  # fmt: skip
def test_wrong_use_ends_with_2(planned, arguments):
    assert planned("stock", *arguments).code == 2


def test_a_slip_makes_bookings_fall(planned):
    # The first 24 DEV-L come on 19 Jan; a year later they are of no use to anybody within the horizon.
    pytest.importorskip("tracker.planning.planner")
    ran = planned("stock", "what-if", "--slip", "4100102-10=365")
    assert ran.code == 0
    assert "falls: it lacks" in ran.out
    none = planned("stock", "what-if", "--slip", "4100102-10=0")
    # Some bookings wait for an order that is still to be placed, slip or no slip.
    assert re.fullmatch(r"No booking falls\.\n(\d+ bookings?) lacked parts already before the change\.\n", none.out)


def test_the_pick_list_is_written_and_told(planned, tmp_path):
    kits = planned("kits", "--json", "-").json
    first = kits[0]["start"][:10]  # in booking order
    at_once = [kit for kit in kits if kit["start"][:10] == first]
    short = sum(kit["state"] in ("short", "reserved") for kit in at_once)
    ran = planned("kits", "--pick", "picks.xlsx", "--day", first)
    many = "1 kit" if len(at_once) == 1 else f"{len(at_once)} kits"
    told = f"{many} to pick, {short or 'none'} short.\nWrote picks.xlsx.\n"
    assert ran.out == f"{day(date.fromisoformat(first))}: {told}"
    sheet = load_workbook(tmp_path / "picks.xlsx")["Pick list"]
    assert at_once[0]["loom"] in [cell.value for row in sheet.iter_rows() for cell in row]
    assert planned("kits", "--pick", "picks.pdf", "--day", "2027-01-05", "--days", "5").code == 0
    assert (tmp_path / "picks.pdf").read_bytes().startswith(b"%PDF")
    refused = planned("kits", "--pick", "picks.txt")
    assert (refused.code, refused.line) == (2, "picks.txt: the name must end in .xlsx")
    assert planned("kits", "--pick", "picks.pdf", "--day", "tomorrow").code == 2


def test_the_price_of_choices(planned):
    ran = planned("kits", "--choices")
    assert ran.out.startswith("What the other choice would have cost beyond the one taken (EUR; + dearer)")
    assert any(line.startswith("drill, old duct taken for ") for line in ran.out.splitlines())


def test_the_order_list_and_the_suppliers_workbooks(planned, tmp_path):
    ran = planned("needs", "--orders", "--out", "orders.xlsx")
    assert ran.out.splitlines()[-1] == "Wrote orders.xlsx."
    assert load_workbook(tmp_path / "orders.xlsx").sheetnames == ["Orders", "Cash by month"]
    ran = planned("needs", "--send", "orders", "--json", "-")
    suppliers = {line["supplier"] for line in ran.json["orders"]}
    written = {path.name for path in (tmp_path / "orders").iterdir()}
    assert suppliers and written == {"order list.xlsx", *(f"order {name}.xlsx" for name in suppliers)}
    assert planned("needs", "--out", "orders.xlsx").code == 2
    assert planned("needs", "--orders", "--out", "orders.xlsx", "--send", "orders").code == 2


def test_needs_has_a_line_for_each_part_and_one_part_week_by_week(planned):
    told = planned("needs", "--json", "-").json
    lines = planned("needs").out.splitlines()
    there = len(sample_mill().parts)
    assert len({week["part"] for week in told}) == there
    assert [line.split()[0] for line in lines[2 : 2 + there]] == list(dict.fromkeys(week["part"] for week in told))
    rail = planned("needs", "RAIL-N", "--json", "-").json
    assert rail == [week for week in told if week["part"] == "RAIL-N"]
    printed = planned("needs", "RAIL-N").out.splitlines()
    assert printed[0] == "Needs of RAIL-N by week (pc)" and printed[2].split()[0] == rail[0]["week"]
    refused = planned("needs", "BOLT")
    assert (refused.code, refused.line) == (1, "unknown part BOLT; `beamslot needs` lists the parts")


@pytest.mark.parametrize("listed", [("--send", "orders"), ("--orders",)])
def test_the_order_list_is_of_all_parts_and_a_part_beside_it_writes_nothing(planned, listed, tmp_path):
    ran = planned("needs", "RAIL-X", *listed)
    assert ran.code == 2 and "the order list is of all parts" in " ".join(ran.err.replace("│", " ").split())
    assert not (tmp_path / "orders").exists()


def test_an_order_is_entered_expected_anew_and_ended(planned, tmp_path):
    """The sample has its own year 2027; the computer's clock is before it, so any day of 2027 is to come."""
    entered = planned("stock", "order", "4500-10", "RAIL-N", "4", "--due", "2027-03-01", "--json", "-").json
    assert entered["lines"][0]["due"] == "2027-03-01"
    told = planned("stock", "expect", "4500-10", "--due", "2027-03-08", "--why", "the supplier wrote")
    assert told.out.splitlines()[0] == "Order 4500-10: 4 pc of RAIL-N expected on Mon 8 Mar 2027."
    assert planned("stock", "expect", "4500-10", "--quantity", "0").code == 0
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert "4500-10" not in {receipt.order for receipt in uow.mill().receipts}
    assert "the supplier wrote" in planned("audit", "--json", "-").out
