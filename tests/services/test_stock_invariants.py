"""Whatever the stockroom tries, in whatever order, the book stays sound."""

import shutil
import sqlite3
from collections import Counter
from contextlib import closing

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from opened import here
from stock_room_samples import PARTS, fill

from tracker.errors import TrackerError
from tracker.mill_state.stockroom import Stockroom
from tracker.services.looms import LoomName
from tracker.services.parts.reservations import release, reserve, take
from tracker.services.parts.stock import adjust, count, give_back, issue, issue_kit, receive
from tracker.services.parts.stock_entry import Entry, Told
from tracker.services.parts.stockroom import read_stockroom
from tracker.store import open_store

looms = st.sampled_from(["1", "2", "10", "3"])
parts = st.sampled_from(sorted(PARTS))
amounts = st.sampled_from([-2.0, 0.0, 0.1, 1.0, 2.5, 8.0, 30.0])
maybe = st.one_of(st.none(), amounts)


def calls(service, **arguments):
    return st.tuples(st.just(service), st.fixed_dictionaries(arguments))


acts = st.one_of(
    calls(receive, part=parts, quantity=amounts, told=st.just(Told("found"))),
    calls(receive, order=st.just("PO-1"), quantity=maybe),
    calls(issue_kit, loom=looms, incomplete=st.booleans()),
    calls(issue, loom=looms, part=parts, quantity=maybe),
    calls(give_back, loom=looms, part=parts, quantity=amounts),
    calls(adjust, part=parts, quantity=amounts, told=st.just(Told("bent"))),
    calls(count, part=parts, found=amounts),
    calls(reserve, loom=looms, part=parts, quantity=maybe, use_safety_stock=st.booleans()),
    calls(release, loom=looms),
    calls(take, part=parts, giving=looms.map(LoomName), taking=looms.map(LoomName), quantity=maybe),
)


@pytest.fixture(scope="module")
def filled(tmp_path_factory):
    """A database file that is whole in itself, so that it can be copied."""
    db = fill(str(tmp_path_factory.mktemp("filled") / "mill.db"))
    with closing(sqlite3.connect(db)) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    return db


def room(db):
    with open_store(db).reading() as uow:
        return read_stockroom(uow)


def attempt(act, db, arguments):
    """Whether the entry was made, and the stockroom as its report saw it."""
    reported: list[Stockroom] = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Entry, "report", lambda entry, told=Entry.report: reported.append(entry.room) or told(entry))
        try:
            act(here(db), **arguments)
        except TrackerError:
            return False, reported
    return True, reported


@settings(max_examples=6, deadline=None)
@given(tried=st.lists(acts, min_size=1, max_size=10))
def test_the_book_stays_sound(filled, tmp_path_factory, tried):
    db = str(shutil.copy(filled, tmp_path_factory.mktemp("tried") / "mill.db"))
    before = room(db)
    assert len(before.movements) == len(PARTS)
    for act, arguments in tried:
        done, reported = attempt(act, db, arguments)
        after = room(db)
        if done:  # the sums in memory are those that the database gives when it is read anew
            (said,) = reported
            assert (said.mill, said.movements, said.kits) == (after.mill, after.movements, after.kits)
            assert set(said.reservations) == set(after.reservations)
            assert (said.still_out, said.coming_back) == (after.still_out, after.coming_back)
        assert after.movements[: len(before.movements)] == before.movements
        if not done:
            assert (after.movements, after.reservations) == (before.movements, before.reservations)
        reserved, held = Counter(), Counter()
        for reservation in after.reservations:
            assert reservation.quantity > 0
            reserved[reservation.part] += reservation.quantity
        for movement in after.movements:
            if movement.key:
                held[movement.key, movement.part] -= movement.quantity
        assert min(held.values(), default=0) >= -1e-9
        for name, part in after.mill.parts.items():
            assert part.on_hand == pytest.approx(sum(m.quantity for m in after.movements if m.part == name))
            assert part.on_hand >= -1e-9
            assert reserved[name] <= part.on_hand + 1e-9
        before = after
