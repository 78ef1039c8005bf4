"""The ledger refuses what no stockroom can do, and is never rewritten."""

import re
from datetime import UTC, date, datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from refusals import refused
from sqlalchemy import insert, select

from tracker.domain.mill import LoomKey, Receipt
from tracker.domain.rows import Change
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.errors import DataError
from tracker.store import open_store
from tracker.store.models import MovementRow, RowChangeRow
from tracker.store.stock import change_reservations, set_open

L1, L2 = LoomKey("Hall 1", "1"), LoomKey("Hall 1", "2")
AT = datetime(2027, 1, 4, 5, tzinfo=UTC)


def added(table, *key, **values):
    return Change(table, key, "", None, values)


@pytest.fixture
def uow(tmp_path):
    rows = [
        *(added("looms", key.loom, key.hall, hall=key.hall, loom=key.loom, machine_type="AJ-190") for key in (L1, L2)),
        added("parts", "RAIL", part="RAIL", on_hand=5.0),
        added("receipts", "PO-1", "RAIL", order="PO-1", part="RAIL", quantity=8.0, due=date(2027, 2, 1)),
    ]
    with open_store(tmp_path / "mill.db", make=True).unit_of_work("planner") as uow:
        uow.load_writer(at=AT).write(rows, {})
        yield uow


def entry(kind, quantity, loom: LoomKey | None = L1, why="", part="RAIL"):
    return Movement(part, kind, quantity, AT, "store", why, loom)


@pytest.mark.parametrize(
    ("movement", "says"),
    [
        (entry(MovementKind.ISSUE, -6), "part RAIL: 6 asked for, 5 on hand"),
        (entry(MovementKind.ISSUE, 1), "-1 is no quantity for an entry of kind issue; give one above 0"),
        (entry(MovementKind.RECEIPT, -1), "-1 is no quantity for an entry of kind receipt; give one above 0"),
        (entry(MovementKind.RECEIPT, 0), "0 is no quantity for an entry of kind receipt"),
        (entry(MovementKind.RECEIPT, float("nan")), "nan is no quantity"),
        (entry(MovementKind.RETURN, 1), r"1 to be returned from loom 1 \(Hall 1\), which holds 0"),
        (entry(MovementKind.RETURN, 1, loom=None), "a return needs the loom"),
        (entry(MovementKind.ADJUSTMENT, -1, why=" "), "an adjustment of -1 needs its reason"),
        (entry(MovementKind.ADJUSTMENT, -6, why="bent"), "6 asked for, 5 on hand"),
        (entry(MovementKind.ISSUE, -1, part="NUT"), "unknown part NUT"),
    ],
)
def test_impossible_entries_are_refused(uow, movement, says):
    with refused(DataError, says):
        uow.add_movements([movement])
    assert len(uow.movements()) == 1


def test_one_impossible_entry_refuses_them_all(uow):
    with refused(DataError, "3 asked for, 2 on hand"):
        uow.add_movements([entry(MovementKind.ISSUE, -3), entry(MovementKind.ISSUE, -3)])
    assert len(uow.movements()) == 1


def test_returns_are_no_more_than_issued_to_that_loom(uow):
    uow.add_movements([entry(MovementKind.ISSUE, -2), entry(MovementKind.ISSUE, -3, L2)])
    uow.add_movements([entry(MovementKind.RETURN, 1.5)])
    with refused(DataError, "1 to be returned from loom 1"):
        uow.add_movements([entry(MovementKind.RETURN, 1)])
    assert uow.mill().parts["RAIL"].on_hand == 1.5


def test_issue_and_return_in_one_go(uow):
    uow.add_movements([entry(MovementKind.ISSUE, -2), entry(MovementKind.RETURN, 2)])
    assert uow.mill().parts["RAIL"].on_hand == 5


def test_no_more_is_reserved_than_is_on_hand(uow):
    change_reservations(uow.session, {(L1, "RAIL"): 3}, AT, "store")
    with refused(DataError, "part RAIL: 6 would be reserved, 5 on hand"):
        change_reservations(uow.session, {(L2, "RAIL"): 3}, AT, "store")
    with refused(DataError, "-1 cannot be reserved for loom 2"):
        change_reservations(uow.session, {(L2, "RAIL"): -1}, AT, "store")
    assert uow.reservations() == [Reservation(L1, "RAIL", 3)]


def test_changing_one_reservation_leaves_the_others_and_is_logged_with_its_reason(uow):
    change_reservations(uow.session, {(L1, "RAIL"): 3, (L2, "RAIL"): 2}, AT, "store")
    change_reservations(uow.session, {(L1, "RAIL"): 1}, AT, "planner", "rail cut")
    assert set(uow.reservations()) == {Reservation(L1, "RAIL", 1), Reservation(L2, "RAIL", 2)}
    last = uow.session.scalars(select(RowChangeRow).order_by(RowChangeRow.id.desc())).first()
    assert (last.who, last.key, last.kind) == ("planner", "Hall 1 | 1", "rail cut")
    assert last.values == {"RAIL": [3, 1]}


def test_an_order_line_stays_open_for_what_has_not_come(uow):
    line = Receipt("PO-1", "RAIL", 8, date(2027, 2, 1))
    set_open(uow.session, line, 3, AT, "store", "5 received")
    assert [receipt.quantity for receipt in uow.mill().receipts] == [3]
    set_open(uow.session, line, 0, AT, "store", "3 received")
    assert uow.mill().receipts == ()


kinds = st.sampled_from([MovementKind.RECEIPT, MovementKind.ISSUE, MovementKind.RETURN, MovementKind.ADJUSTMENT])


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.tuples(kinds, st.integers(-9, 9), st.sampled_from([L1, L2])), max_size=15))
def test_whatever_is_tried_stock_is_the_sum_never_below_zero_and_nothing_more_comes_back_than_went_out(uow, tried):
    with uow.session.begin_nested() as savepoint:
        for kind, quantity, loom in tried:
            before = uow.movements()
            try:
                uow.add_movements([entry(kind, quantity, loom, "tried")])
            except DataError:
                assert uow.movements() == before
            else:
                assert uow.movements()[:-1] == before
            assert uow.mill().parts["RAIL"].on_hand == sum(m.quantity for m in uow.movements()) >= 0
            for each in (L1, L2):
                out = [m.quantity for m in uow.movements() if m.key == each and m.kind in ("issue", "return")]
                assert sum(out) <= 0
        savepoint.rollback()


def test_an_entry_of_an_unknown_kind_is_named(uow):
    # as a later version, or a hand in the database, may have written it; entry 1 is the opening stock
    values = {"part": "RAIL", "kind": "melted", "quantity": -1.0, "at": AT, "who": "store", "why": ""}
    uow.session.execute(insert(MovementRow), values)
    says = (
        "entry 2 of the stockroom's book, of part RAIL, is of the kind 'melted'; this version knows opening, receipt, "
        "issue, return, recovered, adjustment, count; update Beamslot"
    )
    with refused(DataError, re.escape(says)):
        uow.movements()
