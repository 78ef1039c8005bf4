"""Undo: what a load or record did is taken back by a change of its own, whole or, told so, but for what others changed since."""

import shutil
from datetime import UTC, date, datetime, timedelta
from functools import cache

import pytest
from card_mill import LOOM, card_mill, fill_cards, well_done
from postgres_server import new_database
from refusals import refused
from stock_room_samples import PLAN, fill
from three_looms import at

from tracker.domain.people import Role
from tracker.domain.progress import Stage
from tracker.errors import ChangedSince, DataError
from tracker.services.context import Actor, Context
from tracker.services.loading.load import LoadRequest, load
from tracker.services.parts.ordering import Ordered, expect, place
from tracker.services.parts.reservations import release
from tracker.services.parts.stock import count, issue_kit, receive
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.people.audit import check_history, deeds
from tracker.services.undoing.kinds import kept_kind
from tracker.services.undoing.undo import undo, would_undo
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.withdrawing import withdraw_stage
from tracker.store.models import ActRow
from tracker.words import Speaker

NOON = datetime(2027, 1, 4, 12, tzinfo=UTC)
A = "Loom;Hall;Machine type;Speed (picks/min)\n1;H;AJ-190;600\n2;H;AJ-190;610\n3;H;AJ-190;620\n"
B = "Loom;Hall;Machine type;Speed (picks/min)\n1;H;AJ-190;500\n2;H;AJ-190;510\n3;H;AJ-190;520\n"
C = "Loom;Hall;Machine type;Speed (picks/min)\n2;H;AJ-190;555\n"
MORE = "Loom;Hall;Machine type;Speed (picks/min)\n4;H;AJ-190;640\n"


@pytest.fixture(params=["sqlite", "postgresql"])
def empty(request, tmp_path):
    return str(tmp_path / "mill.db") if request.param == "sqlite" else new_database(request.getfixturevalue("postgres"))


@cache
def opened(db):
    """Open once: what an engine has learned of its statements is most of the time of these tests."""
    context = Context(db, make=True)
    return context if context.store else None


def by(db, name="Pat", hours=0, clock=NOON):
    return opened(db)._with(
        actor=Actor(name, frozenset({Role.PLANNER, Role.ELECTRICIAN})), clock=lambda: clock + timedelta(hours=hours)
    )


def loaded(context, folder, text, name="list.csv", request=LoadRequest()):  # noqa: B008
    file = folder / name
    file.write_text(text)
    report = load(context, [file], request)
    assert report.written, [str(finding) for finding in report.findings]


def speeds(db):
    with opened(db).reading() as uow:
        return {key.loom: loom.speed_ppm for key, loom in uow.mill().looms.items()}


def number(db, which=0):
    """Under which the newest thing was done, or one of those before it."""
    seen = list(dict.fromkeys(deed.act for deed in deeds(by(db)).deeds))
    return seen[which]


def says(message):
    return Speaker(zone=UTC).say(message)


def test_a_load_of_which_somebody_changed_one_value_since(empty, tmp_path):
    """A brings 600, 610, 620; B makes 500, 510, 520 of them; Ann loads 555 for loom 2. Undone are loom 1 and loom 3."""
    loaded(by(empty), tmp_path, A)
    loaded(by(empty, hours=1), tmp_path, B, "b.csv")
    wrong = number(empty)
    loaded(by(empty, "Ann", 2), tmp_path, C, "c.csv")
    with refused(ChangedSince, r"Looms \(2, H\) Speed: 510 then, 555 now \(by Ann on Mon 4 Jan 2027 14:00\)\. Nothing"):
        undo(by(empty, hours=3), wrong)
    assert speeds(empty) == {"1": 500, "2": 555, "3": 520}
    done = undo(by(empty, "Bo", 3), wrong, rest=True)
    assert speeds(empty) == {"1": 600, "2": 555, "3": 620}
    said = "2 values as before (Looms (1, H) Speed, Looms (3, H) Speed)"
    assert says(done.message) == f"{wrong} is undone: {said}; one other stays, since it was changed since."
    told = [(d.who, says(d.what)) for d in deeds(by(empty)).deeds if d.act == done.by]
    assert sorted(told) == [
        ("Bo", "Looms 1, H: Speed (picks/min) 500 → 600"),
        ("Bo", "Looms 3, H: Speed (picks/min) 520 → 620"),
        ("Bo", f"undid {wrong}"),
    ]
    assert check_history(by(empty)).last_hash
    with refused(DataError, f"was undone already: by Bo on Mon 4 Jan 2027 15:00, under the number {done.by}"):
        undo(by(empty), wrong, rest=True)
    undo(by(empty, hours=4), done.by or 0)
    assert speeds(empty) == {"1": 500, "2": 555, "3": 520}
    undo(by(empty, hours=5), wrong, rest=True)  # the undo was undone, so it can be done again
    assert speeds(empty) == {"1": 600, "2": 555, "3": 620}
    assert check_history(by(empty)).last_hash


def test_rows_that_a_load_added_go_and_come_again_with_what_they_held(empty, tmp_path):
    loaded(by(empty), tmp_path, A)
    loaded(by(empty), tmp_path, MORE)
    added = number(empty)
    first = undo(by(empty), added)
    assert speeds(empty).keys() == {"1", "2", "3"}
    undo(by(empty), first.by or 0)
    assert speeds(empty)["4"] == 640
    record_stage(by(empty), "4", "put off", told=StageTold(why="no order"))
    with refused(ChangedSince, r"Looms \(4, H\): empty then, in use by what was done with it now"):
        undo(by(empty), added)


@pytest.fixture
def room(tmp_path):
    """Looms 1, 2 and 10 booked with their kits: 2 RAIL, 20 NUT; 4 RAIL to come by order PO-1."""
    return fill(str(tmp_path / "mill.db"), PLAN)


def stock(db, part):
    with opened(db).reading() as uow:
        store = read_stockroom(uow)
        return store.part(part).on_hand, {r.key.loom: r.quantity for r in store.reservations if r.part == part}


def still_to_come(db):
    with opened(db).reading() as uow:
        return {line.order: (line.quantity, line.due.isoformat()) for line in uow.mill().receipts}


def test_a_receipt_goes_back_with_its_order_line_and_what_it_gave_to_kits(room):
    """Of the 2 RAIL looms 1 and 2 have one each; the 4 that come in give loom 10 its own, and close the order line."""
    before = stock(room, "RAIL"), still_to_come(room)
    receive(by(room), order="PO-1")
    assert (stock(room, "RAIL"), still_to_come(room)) == ((6, {"1": 1, "2": 1, "10": 1}), {})
    received = number(room)
    done = undo(by(room), received)
    assert (stock(room, "RAIL"), still_to_come(room)) == before == ((2, {"1": 1, "2": 1}), {"PO-1": (4, "2026-01-21")})
    undo(by(room), done.by or 0)
    assert (stock(room, "RAIL"), still_to_come(room)) == ((6, {"1": 1, "2": 1, "10": 1}), {})


def test_an_order_that_was_placed_and_one_that_was_put_off_go_back(room):
    due, later = date(2027, 3, 1), date(2027, 3, 8)
    place(by(room), [Ordered("PO-7", "RAIL", 3, due)])
    placed = number(room)
    expect(by(room), "PO-7", due=later)
    with refused(ChangedSince, r"Receipts \(PO-7, RAIL\) Due: Mon 1 Mar 2027 then, Mon 8 Mar 2027 now"):
        undo(by(room), placed)
    undo(by(room), number(room))
    assert still_to_come(room)["PO-7"] == (3, "2027-03-01")
    done = undo(by(room), placed)
    assert "PO-7" not in still_to_come(room)
    undo(by(room), done.by or 0)
    assert still_to_come(room)["PO-7"] == (3, "2027-03-01")


def test_a_part_that_was_counted_since_stays(room):
    receive(by(room), order="PO-1")
    received = number(room)
    count(by(room, "Ann", 1), "RAIL", 5)
    with refused(ChangedSince, r"stock of RAIL: 6 then, 5 now \(by Ann on Mon 4 Jan 2027 13:00\)"):
        undo(by(room), received)
    with refused(DataError, "nothing is left to undo: stock of RAIL"):
        undo(by(room), received, rest=True)
    assert stock(room, "RAIL")[0] == 5 and still_to_come(room) == {}


def test_a_kit_that_was_handed_out_comes_back_and_one_released_is_held_again(room):
    """The kit of loom 1: 1 RAIL, 8 NUT, 2.5 m CABLE, 1 GAUGE."""
    issue_kit(by(room), "1")
    assert stock(room, "NUT") == (12, {"2": 8, "10": 4})
    undo(by(room), number(room))
    assert stock(room, "NUT") == (20, {"1": 8, "2": 8, "10": 4})
    release(by(room), "1", part="RAIL")
    assert stock(room, "RAIL") == (2, {"2": 1})
    undo(by(room), number(room))
    assert stock(room, "RAIL") == (2, {"1": 1, "2": 1})


@pytest.fixture(scope="module")
def carded(tmp_path_factory):
    folder = tmp_path_factory.mktemp("carded")
    db = card_mill(str(folder / "mill.db"))
    return db, fill_cards(db, folder / "card.xlsx", well_done)


def at_six(db, name="tester"):
    return by(db, name, clock=at(2, 6))


def stands(db):
    with opened(db).reading() as uow:
        store = read_stockroom(uow)
        return (
            [change.stage for change in uow.stage_history()], len(uow.conversions()), len(uow.rows("work_done")),
            len(uow.rows("set_values")), store.part("PIN").on_hand, store.holds(LOOM).get("PIN", 0.0),
        )  # fmt: skip


def test_a_card_is_undone_as_a_whole_and_counts_again(carded, tmp_path):
    """Handed out were 4 PIN of 10. By the card one is back and one scrapped: 7 there, 2 at the loom; before it 6 and 4."""
    db = str(tmp_path / "mill.db")
    shutil.copy(carded[0], db)
    before = stands(db)
    assert before == ([], 0, 0, 0, 6, 4)
    assert load(at_six(db), [carded[1]], LoadRequest(records_only=True)).written
    told = stands(db)
    assert told == ([Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF], 1, 4, 4, 7, 2)
    card = number(db)
    done = undo(at_six(db), card)
    assert stands(db) == before
    undo(at_six(db), done.by or 0)
    assert stands(db) == told
    withdraw_stage(at_six(db, "Ann"), "1", "it runs in", stage="signed off")
    taken_back = number(db)
    with refused(ChangedSince, r"by Ann"):
        undo(at_six(db), card)
    undo(at_six(db), taken_back)
    assert stands(db) == told
    assert check_history(at_six(db)).last_hash


def test_a_stage_under_a_later_one_is_named(room):
    record_stage(by(room), "1", "in work", told=StageTold(why="before its kit"))
    begun = number(room)
    record_stage(by(room, "Ann", 1), "1", "stopped", told=StageTold(why="rail bent"))
    with refused(ChangedSince, r"stage of loom 1 \(Hall 1\): in work then, stopped now \(by Ann"):
        undo(by(room, hours=2), begun)
    undo(by(room, hours=2), number(room))
    undo(by(room, hours=2), begun)
    with opened(room).reading() as uow:
        assert uow.stages() == {}


def test_what_cannot_be_undone_says_why_and_what_to_do(room, tmp_path):
    from stock_room_samples import fill_method

    from tracker.services.plans.plan import save

    with refused(DataError, "nothing was done under the number 99"):
        undo(by(room), 99)
    count(by(room), "NUT", 21)
    counted = number(room)
    save(by(fill_method(room)), PLAN, True, None, PLAN)
    assert [says(one) for one in would_undo(by(room), counted).stays] == [
        "plan 2 was published since, by what is undone now"
    ]
    with refused(DataError, r"published a plan, which is not undone.*`beamslot plan --number N --publish`"):
        undo(by(room), number(room))


METHOD = "Step;Operation;Minutes;Trade;Heads\n10;Mount;{};fitter;2\n"


def test_method_terms_and_answers_of_a_load_come_back(empty, tmp_path):
    loaded(by(empty), tmp_path, A)
    loaded(by(empty), tmp_path, METHOD.format(60), "Operations.csv")
    loaded(by(empty), tmp_path, METHOD.format(90), "Operations.csv")
    with opened(empty).reading() as uow:
        assert uow.method().operations[0].minutes == 90
    second = number(empty)
    would = would_undo(by(empty), second)
    assert says(would.question) == f"Undo {second}, by Pat on Mon 4 Jan 2027 12:00: the method as in version 1?"
    undo(by(empty), second)
    with opened(empty).reading() as uow:
        assert uow.method().operations[0].minutes == 60
    with refused(ChangedSince, r"version of the method: 1 then, 3 now \(by Pat"):
        undo(by(empty), number(empty, 2))


@pytest.mark.parametrize(("tables", "kind"), [(["jobs"], "nothing"), (["job_ends"], "nothing"), ([], "nothing"),
                                              (["jobs", "row_changes"], None)])  # fmt: skip
def test_of_work_that_began_or_ended_there_is_nothing_to_undo(tables, kind):
    assert kept_kind(ActRow(details={}), tables) == kind
