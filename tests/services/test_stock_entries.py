"""The stockroom's book, entry by entry. The sample's stock and kits are in `stock_room_samples`."""

from datetime import UTC, date, datetime, timedelta

import pytest
from opened import here
from refusals import refused
from said import lines
from stock_room_samples import AT, booking, fill, fill_with_method, key, plan_of

from tracker.domain.progress import Stage, StageChange
from tracker.domain.stock import MovementKind
from tracker.errors import DataError, UsageError
from tracker.services.looms import LoomName
from tracker.services.parts.reservations import release, reserve, reserve_plan, take
from tracker.services.parts.stock import adjust, count, give_back, issue, issue_kit, movements, receive, recover, scrap
from tracker.services.parts.stock_entry import Told
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.screens.status import status
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.words import ENGLISH


@pytest.fixture
def db(tmp_path):
    return fill(str(tmp_path / "mill.db"))


def room(db):
    with open_store(db).reading() as uow:
        return read_stockroom(uow)


def held(db, part):
    return {key.loom: quantity for key, quantity in room(db).reserved(part).items()}


def on_hand(db, part):
    return room(db).mill.parts[part].on_hand


def test_publishing_reserves_by_booking_date(db):
    assert held(db, "RAIL") == {"1": 1, "2": 1}
    assert held(db, "NUT") == {"1": 8, "2": 8, "10": 4}
    assert held(db, "CABLE") == {"1": 2.5, "2": 2.5}
    assert [(kit.key.loom, kit.state) for kit in room(db).kits] == [
        ("1", "complete"),
        ("2", "complete"),
        ("10", "short"),
    ]


def test_a_new_plan_reserves_anew_and_leaves_a_loom_in_work_its_parts(db):
    # Loom 2 is in work and no longer planned: it keeps its rail; loom 10 now comes before loom 1 and gets the other.
    plan = plan_of(*(booking(loom, date(2026, 1, day), {"RAIL": 1.0}) for loom, day in (("10", 12), ("1", 13))))
    with open_store(db).unit_of_work("planner") as uow:
        uow.add_stage(StageChange(key("2"), Stage.IN_WORK, AT, "fitter"))
        uow.save_plan(plan, published=True)
        report = reserve_plan(uow, plan)
        uow.commit()
    assert (held(db, "RAIL"), held(db, "NUT")) == ({"2": 1, "10": 1}, {"2": 8})
    assert [(kit.key.loom, kit.short) for kit in report.kits] == [("10", {}), ("1", {"RAIL": 1})]


def test_a_receipt_on_an_order_line_goes_to_the_kit_that_lacks_it_and_the_rest_stays_open(db):
    report = receive(here(db), order="PO-1", quantity=3)
    assert (on_hand(db, "RAIL"), held(db, "RAIL")) == (5, {"1": 1, "2": 1, "10": 1})
    assert [receipt.quantity for receipt in room(db).mill.receipts] == [1]
    (stock,) = report.stock
    assert (stock.part, stock.on_hand, stock.reserved, stock.free) == ("RAIL", 5, 3, 2)
    assert [(m.kind, m.quantity, m.order) for m in report.movements] == [(MovementKind.RECEIPT, 3, "PO-1")]
    assert [kit.key for kit in report.short] == [key("10")]  # its nuts


def test_a_receipt_takes_the_whole_line_by_default_and_closes_it(db):
    receive(here(db), order="PO-1")
    assert (on_hand(db, "RAIL"), room(db).mill.receipts) == (6, ())
    with refused(DataError, "no open order line PO-1; open are none"):
        receive(here(db), order="PO-1")


def test_a_short_delivery_may_be_the_last(db):
    receive(here(db), order="PO-1", quantity=1, rest_comes=False)
    assert room(db).mill.receipts == ()


def test_issuing_a_whole_kit(db):
    report = issue_kit(here(db), "1")
    assert {m.part: m.quantity for m in report.movements} == {"RAIL": -1, "NUT": -8, "CABLE": -2.5, "GAUGE": -1}
    assert (on_hand(db, "RAIL"), held(db, "RAIL")) == (1, {"2": 1})
    assert [kit.state for kit in report.kits] == ["issued"]
    with refused(DataError, r"nothing is reserved for loom 1 \(Hall 1\); its kit was issued"):
        issue_kit(here(db), "1")


def test_a_short_kit_is_issued_only_when_told(db):
    with refused(DataError, r"the kit of loom 10 \(Hall 1\) lacks 4 NUT, 1 RAIL"):
        issue_kit(here(db), "10")
    (kit,) = issue_kit(here(db), "10", incomplete=True).kits
    assert (kit.issued, kit.short, kit.state) == ({"NUT": 4}, {"RAIL": 1, "NUT": 4}, "short")


def test_an_issue_leaves_alone_what_others_have_reserved(db):
    with refused(DataError, r"part RAIL: 1 asked for loom 10 \(Hall 1\), 0 free of 2 on hand \(1 for loom 1"):
        issue(here(db), "10", part="RAIL")
    assert (len(room(db).movements), on_hand(db, "RAIL")) == (4, 2)


def test_an_issue_beyond_the_stock(db):
    with refused(DataError, "part NUT: 21 asked for loom 1"):
        issue(here(db), "1", part="NUT", quantity=21)


def test_more_than_the_kit_needs_may_be_issued_from_what_is_free(db):
    # 10 m on hand, 5 reserved: loom 1 gets its 2.5 and 5 more.
    issue(here(db), "1", part="CABLE", quantity=7.5)
    assert (on_hand(db, "CABLE"), held(db, "CABLE")) == (2.5, {"2": 2.5})


def test_a_return_goes_back_to_stock_and_never_exceeds_the_issue(db):
    issue_kit(here(db), "1")
    report = give_back(here(db), "1", "GAUGE", 1)
    assert (on_hand(db, "GAUGE"), report.movements[0].quantity) == (3, 1)
    with refused(DataError, r"part GAUGE: 1 to be returned from loom 1 \(Hall 1\), which holds 0"):
        give_back(here(db), "1", "GAUGE", 1)
    with refused(DataError, "above 0"):
        give_back(here(db), "1", "RAIL", -1)


def test_a_whole_kit_goes_back_and_is_held_for_the_loom_again(db):
    issue_kit(here(db), "1")
    report = give_back(here(db), "1", told=Told("the loom weaves on"))
    assert {m.part: m.quantity for m in report.movements} == {"RAIL": 1, "NUT": 8, "CABLE": 2.5, "GAUGE": 1}
    assert (on_hand(db, "RAIL"), held(db, "RAIL")) == (2, {"1": 1, "2": 1})
    assert [(kit.key.loom, kit.state) for kit in report.kits] == [("1", "complete")]
    with refused(DataError, r"loom 1 \(Hall 1\) has nothing of what was issued to it"):
        give_back(here(db), "1")


def test_of_a_kit_goes_back_what_did_not_come_back_already(tmp_path):
    db = fill_with_method(str(tmp_path / "mill.db"))
    issue_kit(here(db), "1")
    give_back(here(db), "1", "NUT", 3)
    recover(here(db), "1", part="GAUGE")
    assert {m.part: m.quantity for m in give_back(here(db), "1", "NUT").movements} == {"NUT": 5}  # 8 issued, 3 back
    assert {m.part: m.quantity for m in give_back(here(db), "1").movements} == {"RAIL": 1, "CABLE": 2.5}
    with refused(DataError, "has nothing of part GAUGE of what was issued"):
        give_back(here(db), "1", "GAUGE")


def test_a_part_that_breaks_on_a_loom_is_gone_and_its_kit_needs_it_again(db):
    # 2 rails: one was issued to loom 1 and broke, the other is held for loom 2; one is on order.
    issue_kit(here(db), "1")
    report = scrap(here(db), "1", "RAIL", 1, told=Told("bent"))
    assert [(m.kind, m.quantity, m.key, m.why) for m in report.movements] == [
        ("return", 1, key("1"), "bent"), ("adjustment", -1, key("1"), "bent")]  # fmt: skip
    assert (on_hand(db, "RAIL"), held(db, "RAIL")) == (1, {"2": 1})
    assert [(kit.key.loom, kit.short) for kit in report.short] == [("1", {"RAIL": 1})]
    receive(here(db), order="PO-1", quantity=1)
    assert held(db, "RAIL") == {"1": 1, "2": 1}


def test_what_is_scrapped_on_a_loom_stays_in_what_was_spent(db):
    # Kit of loom 1 at the list: rail 300, 8 nuts at 0.50, the rest without a price: 304. The second rail: 300 more.
    issue_kit(here(db), "1")
    assert status(here(db), AT).parts_issued_cost == 304
    scrap(here(db), "1", "RAIL", 1, told=Told("bent"))
    assert status(here(db), AT).parts_issued_cost == 304
    receive(here(db), order="PO-1", quantity=1)
    issue_kit(here(db), "1")
    assert status(here(db), AT).parts_issued_cost == 604


def test_what_is_held_for_a_loom_put_off_goes_to_the_others(db):
    # Loom 2 gives up 1 rail and 8 nuts; loom 10 lacked just 1 rail and 4 nuts.
    done = record_stage(here(db), "2", "put off", told=StageTold(why="no warp"))
    assert (held(db, "RAIL"), held(db, "NUT")) == ({"1": 1, "10": 1}, {"1": 8, "10": 8})
    assert ENGLISH.line(done.message) == (
        "Loom 2 (Hall 1) is put off. What was held for it is free again: 2.5 CABLE, 8 NUT, 1 RAIL."
    )
    with refused(DataError, r"loom 2 \(Hall 1\) is put off, so nothing is held for it; record it as scoped"):
        reserve(here(db), "2", part="NUT", quantity=1)
    record_stage(here(db), "2", "scoped")
    assert (held(db, "RAIL"), held(db, "CABLE")["2"]) == ({"1": 1, "10": 1}, 2.5)


def test_what_is_held_by_hand_for_a_loom_that_is_taken_back_is_free_again(db):
    receive(here(db), order="PO-1", quantity=2)
    reserve(here(db), "3", part="RAIL", quantity=1)
    record_stage(here(db), "3", "in work", told=StageTold(why="begun without a booking"))
    assert held(db, "RAIL")["3"] == 1
    record_stage(here(db), "3", "scoped", told=StageTold(why="it was another loom"))
    assert "3" not in held(db, "RAIL")


def test_a_scrapped_part_makes_the_latest_booked_kit_short(db):
    report = adjust(here(db), "RAIL", -1, Told("bent"))
    assert held(db, "RAIL") == {"1": 1}
    assert [(kit.key.loom, kit.short, kit.state) for kit in report.short] == [("2", {"RAIL": 1}, "short")]
    # PO-1 is due on Wed 21 Jan, two days after the start of loom 2.


def test_an_entry_in_words(db):
    assert lines(adjust(here(db), "RAIL", -1, Told("bent"))) == [
        "RAIL: 1 pc on hand, 1 reserved, 0 free.",
        "Loom 2 (Hall 1) lacks 1 RAIL (short).",
    ]


def test_a_count_books_the_difference_even_where_there_is_none(db):
    count(here(db), "NUT", 24)
    count(here(db), "NUT", 24)
    assert [(m.kind, m.quantity) for m in movements(here(db), "NUT")] == [("opening", 20), ("count", 4), ("count", 0)]
    assert held(db, "NUT") == {"1": 8, "2": 8, "10": 8}


def test_reserving_what_a_kit_lacks(db):
    receive(here(db), order="PO-1", quantity=1)
    assert held(db, "RAIL")["10"] == 1
    release(here(db), "10", part="RAIL")
    assert "10" not in held(db, "RAIL")
    reserve(here(db), "10", part="RAIL")
    assert held(db, "RAIL")["10"] == 1


def test_all_that_a_kit_lacks_is_reserved_or_nothing(db):
    receive(here(db), part="NUT", quantity=4, told=Told("found behind the shelf"))
    release(here(db), "10")
    with refused(DataError, "part RAIL: 1 asked for loom 10"):
        reserve(here(db), "10")
    assert held(db, "NUT") == {"1": 8, "2": 8}


def test_safety_stock_is_reserved_only_when_told(db):
    with refused(DataError, r"part CABLE: 3 asked for loom 10 \(Hall 1\), 1 free of 10 on hand \(.*4 safety stock\)"):
        reserve(here(db), "10", part="CABLE", quantity=3)
    reserve(here(db), "10", part="CABLE", quantity=3, use_safety_stock=True)
    assert held(db, "CABLE")["10"] == 3


def test_taking_from_one_kit_for_another_shows_who_is_short_now(db):
    report = take(here(db), "RAIL", LoomName("2"), LoomName("10"))
    assert held(db, "RAIL") == {"1": 1, "10": 1}
    assert [(kit.key.loom, kit.short) for kit in report.short] == [("2", {"RAIL": 1}), ("10", {"NUT": 4})]
    with refused(DataError, r"part RAIL: 1 to be taken from loom 2 \(Hall 1\), which has 0 reserved"):
        take(here(db), "RAIL", LoomName("2"), LoomName("1"), quantity=1)


@pytest.mark.parametrize("quantity", [-1, 0, 2, float("nan")])
def test_no_more_is_scrapped_than_the_loom_has(db, quantity):
    issue_kit(here(db), "1")
    with refused(DataError, r"cannot be scrapped from loom 1 \(Hall 1\), which has 1 of what was issued"):
        scrap(here(db), "1", "RAIL", quantity, told=Told("bent"))
    with refused(DataError, "needs its reason"):
        scrap(here(db), "1", "RAIL", 1, told=Told(" "))
    assert on_hand(db, "RAIL") == 1


@pytest.mark.parametrize(
    ("call", "error", "says"),
    [
        (lambda db: receive(here(db), part='BOLT', quantity=1, told=Told('x')), DataError, "unknown part BOLT"),
        (lambda db: receive(here(db), part="NUT", quantity=1), UsageError, "part NUT: a receipt without an order line needs"),
        (lambda db: receive(here(db), "NUT", -1, told=Told("x")), DataError, "part NUT: -1 is no quantity for .* above 0"),
        (
            lambda db: receive(here(db), part='NUT', quantity=1, told=Told('x', unit='box')),
            DataError,
            "part NUT is kept in pc, not in box",
        ),
        (lambda db: receive(here(db), order="PO-9"), DataError, "no open order line PO-9; open are PO-1"),
        (lambda db: receive(here(db)), UsageError, "say what came"),
        (lambda db: issue(here(db), "1", part="BOLT", quantity=1), DataError, "unknown part BOLT"),
        (lambda db: issue(here(db), "1", part="NUT", quantity=-2), DataError, "part NUT: -2 cannot be issued"),
        (lambda db: issue_kit(here(db), "99"), DataError, "there is no loom 99"),
        (lambda db: issue_kit(here(db), "3"), DataError, "loom 3 .* is not booked"),
        (lambda db: give_back(here(db), "1"), DataError, "loom 1 .* has nothing of what was issued to it"),
        (lambda db: scrap(here(db), "1", "NUT", 1, told=Told("x")), DataError,
         "part NUT: 1 cannot be scrapped from loom 1 .*, which has 0"),
        (lambda db: scrap(here(db), '1', 'BOLT', 1, told=Told('x')), DataError, "unknown part BOLT"),
        (lambda db: adjust(here(db), 'NUT', -1, Told('')), DataError, "part NUT: an adjustment of -1 needs its reason"),
        (lambda db: adjust(here(db), 'NUT', -21, Told('lost')), DataError, "part NUT: 21 asked for, 20 on hand"),
        (lambda db: count(here(db), "NUT", -1), UsageError, "part NUT: -1 cannot be counted"),
        (lambda db: reserve(here(db), "1"), DataError, "the kit of loom 1 .* lacks nothing"),
        (lambda db: reserve(here(db), "10", part="NUT", quantity=-1), DataError, "say how much to reserve, above 0"),
        (lambda db: release(here(db), "3"), DataError, "nothing is reserved for loom 3"),
        (lambda db: take(here(db), "NUT", LoomName("10"), LoomName("10"), 1), UsageError, "cannot take from itself"),
    ],
)  # fmt: skip
def test_refused_entries_write_nothing(db, call, error, says):
    before = room(db)
    with refused(error, says):
        call(db)
    after = room(db)
    assert (after.movements, after.reservations) == (before.movements, before.reservations)
    assert after.mill.receipts == before.mill.receipts


def test_nothing_is_booked_in_the_future(db):
    with refused(UsageError, "is still to come"):
        count(here(db), "NUT", 1, Told(at=datetime.now(UTC) + timedelta(hours=1)))
