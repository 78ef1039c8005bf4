"""The store keeps what it is given, all of it or nothing."""

import re
from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from refusals import refused
from sqlalchemy import insert, select, text
from sqlalchemy.exc import IntegrityError

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Asked, Booking, CostTerms, LeftOver, Plan, PlanStatus, ScarcityPrice, Undo
from tracker.domain.progress import Stage, StageChange
from tracker.domain.rows import Change, SourceColumn, SourceTable
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, TrackerError, as_it_stands, message
from tracker.store import connecting, open_store
from tracker.store.base import Base
from tracker.store.loads import RowPlace
from tracker.store.models import LeftOverRow, PlanRow, PriceRow, RowChangeRow
from tracker.store.rows import check_models
from tracker.words import ENGLISH

LOOM = LoomKey("Hall 1", "007")
AT = datetime(2027, 1, 4, 5, tzinfo=UTC)


@pytest.fixture
def store(tmp_path):
    return open_store(tmp_path / "mill.db", make=True)


def add(uow, *changes):
    writer = uow.load_writer(at=AT)
    source = SourceTable(
        "list.xlsx", "Looms", "looms", 3, (SourceColumn("No.", "A3", "loom"), SourceColumn("Rail", "D3", ""))
    )
    writer.begin(["list.xlsx"], [source])
    writer.write(changes, {(change.table, change.key): RowPlace(0, 9) for change in changes})


def loom_row(**more):
    values = {"hall": "Hall 1", "loom": "007", "machine_type": "AJ-190"} | more
    return Change("looms", ("007", "Hall 1"), "", None, values)


def part_row(on_hand):
    return Change("parts", ("RAIL",), "", None, {"part": "RAIL", "on_hand": on_hand})


def test_every_field_of_the_tables_has_a_column():
    assert check_models() == []


def test_the_migration_makes_exactly_the_models(store):
    with store.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_nothing_is_written_without_commit(store):
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
    with store.unit_of_work("planner") as uow:
        assert uow.mill().looms == {}


def test_a_loom_keeps_its_number_and_attributes(store):
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row(Rail="undrilled", efficiency=0.88, protected_until=date(2027, 2, 1)))
        uow.commit()
    with store.unit_of_work("planner") as uow:
        loom = uow.mill().looms[LOOM]
        assert (loom.loom, loom.efficiency, loom.protected_until) == ("007", 0.88, date(2027, 2, 1))
        assert loom.attributes == {"Rail": "undrilled"}
        assert uow.rows("looms")["007", "Hall 1"]["Rail"] == "undrilled"


def test_a_changed_attribute_leaves_the_others_and_is_logged(store):
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row(Rail="undrilled", Creel="none"))
        add(uow, Change("looms", ("007", "Hall 1"), "Rail", "undrilled", "drilled"))
        uow.commit()
    with store.unit_of_work("planner") as uow:
        assert uow.mill().looms[LOOM].attributes == {"Rail": "drilled", "Creel": "none"}
        newest, first = uow.origin("looms", ("007", "Hall 1"), "Rail")
        assert (newest.file, newest.sheet, newest.cell, newest.old, newest.new) == (
            "list.xlsx",
            "Looms",
            "D9",
            "undrilled",
            "drilled",
        )
        assert (first.old, first.new, first.who) == (None, "undrilled", "planner")


def test_moments_are_local_outside_and_utc_inside(store):
    reading = {"hall": "Hall 1", "loom": "007", "read_at": datetime(2027, 7, 1, 6), "warp_left_m": 1200.0}
    with store.unit_of_work("planner") as uow:
        add(uow, Change("terms", ("time zone",), "", None, {"term": "time zone", "value": "Europe/Paris"}))
        uow.commit()
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row(), Change("readings", ("007", "Hall 1", datetime(2027, 7, 1, 6)), "", None, reading))
        uow.commit()
    with store.unit_of_work("planner") as uow:
        assert uow.mill().readings[LOOM][0].read_at == datetime(2027, 7, 1, 4, tzinfo=UTC)  # summer time: UTC + 2 h
        assert ("007", "Hall 1", datetime(2027, 7, 1, 6)) in uow.rows("readings")


def test_stock_on_hand_is_the_sum_of_the_ledger(store):
    with store.unit_of_work("planner") as uow:
        add(uow, part_row(6.0))
        uow.add_movements([Movement("RAIL", MovementKind.ISSUE, -2, AT, "store", "kit")])
        add(uow, Change("parts", ("RAIL",), "on_hand", 4.0, 5.0))
        uow.commit()
    with store.unit_of_work("planner") as uow:
        assert uow.mill().parts["RAIL"].on_hand == 5  # 6 - 2, then counted as 5
        assert [(m.kind, m.quantity) for m in uow.movements("RAIL")] == [("opening", 6), ("issue", -2), ("count", 1)]


def test_stock_never_falls_below_zero(store):
    with store.unit_of_work("planner") as uow:
        add(uow, part_row(1.0))
        with refused(DataError, "part RAIL: 2 asked for, 1 on hand"):
            uow.add_movements([Movement("RAIL", MovementKind.ISSUE, -2, AT, "store")])


def test_a_change_of_reservations_is_logged(store):
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row(), part_row(3.0))
        uow.set_reservations([Reservation(LOOM, "RAIL", 2)])
        uow.set_reservations([])
        assert uow.reservations() == []
        log = uow.session.scalars(select(RowChangeRow.values).where(RowChangeRow.table == "reservations"))
        assert list(log) == [{"RAIL": [None, 2]}, {"RAIL": [2, None]}]


def test_history_is_never_rewritten(store):
    with store.unit_of_work("planner") as uow:
        add(uow, part_row(1.0))
        entry = uow.session.scalars(select(RowChangeRow)).first()
        entry.who = "somebody else"
        with pytest.raises(IntegrityError, match="row_changes is history, which is only ever added to"):
            uow.session.flush()


def test_the_latest_stage_counts(store):
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        uow.add_stage(StageChange(LOOM, Stage.IN_WORK, AT, "fitter"))
        uow.add_stage(StageChange(LOOM, Stage.RUN_IN, AT, "fitter", "restarted"))
        uow.session.flush()
        assert uow.stages()[LOOM].stage is Stage.RUN_IN
        assert len(uow.stage_history()) == 2


def test_a_published_plan_comes_back_as_it_was(store):
    booking = Booking(LOOM, 1, WindowKind.STYLE, (("rail", "new rail"),), AT, AT.replace(hour=9), AT, 8, 12.5,
                      {"RAIL": 1}, CostTerms(100, 2.5, 300, 310, 40, 0), pilot=True)  # fmt: skip
    plan = Plan(PlanStatus.OPTIMAL, 752.5, 752.0, 1.5, "EUR", AT, AT.replace(month=3), (booking,),
                (LeftOver(LOOM, as_it_stands("no window"), 9000),), start=date(2027, 1, 4),
                asked=Asked(held=frozenset({LOOM}), again=7),
                undoing=(Undo(LOOM, 12.5, message("too-little", kind="crews", what="fitter", at=AT), (LOOM,)),
                         Undo(LOOM, None)))  # fmt: skip
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        uow.save_plan(plan, published=True)
        uow.save_plan(plan, published=False)
        uow.commit()
    with store.unit_of_work("planner") as uow:
        assert uow.published_plan() == plan


def test_what_a_plan_says_comes_back_by_its_code(store):
    zone = ZoneInfo("Europe/Vienna")
    why = message("left-no-kit", part="RAIL", needed=1.0, had=0.5, usable=AT.astimezone(zone))
    firm = message("firm-let-go", loom=LOOM, start=AT.astimezone(zone), why=why, now=None)
    days = message("crew-short-of-heads", crew="A", heads=2, days=(date(2027, 1, 4), date(2027, 1, 5)))
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 1, "EUR", AT, AT.replace(month=3), (), (LeftOver(LOOM, why, 9000),),
                (ScarcityPrice(message("scarce-hour", what="hoist"), "2027-W01", 2.5),), reasons=(firm, days))  # fmt: skip
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        uow.save_plan(plan, published=True)
        uow.commit()
    with store.reading() as uow:
        assert uow.published_plan() == plan
        assert uow.session.scalars(select(LeftOverRow.why)).all() == ["left-no-kit"]
        kept = uow.session.scalars(select(PlanRow.reasons)).one()
    assert kept[1] == {
        "code": "crew-short-of-heads",
        "params": {"crew": "A", "heads": 2, "days": [{"day": "2027-01-04"}, {"day": "2027-01-05"}]},
    }
    assert kept[0]["params"]["loom"] == {"loom": LOOM.loom, "hall": LOOM.hall}


def test_a_plan_kept_before_messages_had_codes_is_said_as_it_stands(store):
    """The rows as version 0007 of the schema wrote them."""
    head = {"made_at": AT, "who": "planner", "published": True, "status": "infeasible", "objective": 0, "bound": 0,
            "seconds": 1, "currency": "EUR", "as_of": AT, "horizon_end": AT, "terms": {},
            "reasons": ["No crew works in Hall 1."]}  # fmt: skip
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        uow.session.flush()
        number = uow.session.execute(insert(PlanRow).values(head)).inserted_primary_key[0]
        why = {"plan_id": number, "hall": LOOM.hall, "loom": LOOM.loom, "why": "put off: no {rail}", "cost": 1}
        uow.session.execute(insert(LeftOverRow).values(why))
        uow.session.execute(insert(PriceRow).values(plan_id=number, what="fitter crew-hour", week="2027-W01", price=2))
        uow.commit()
    with store.reading() as uow:
        plan = uow.published_plan()
    said = [*plan.reasons, plan.left_over[0].why, plan.prices[0].what]
    assert [ENGLISH.line(one) for one in said] == ["No crew works in Hall 1.", "put off: no {rail}", "fitter crew-hour"]


def test_crews_read_with_their_shifts_and_defaults(store):
    row = {"crew": "A", "trade": "fitter", "heads": 2, "weekdays": None, "shift_start": time(6), "shift_end": time(14),
           "rate_per_head_h": 34.0, "hall": None, "from_on": None, "to_on": None}  # fmt: skip
    with store.unit_of_work("planner") as uow:
        add(uow, Change("crews", ("A", None, time(6), None), "", None, row))
        crew = uow.mill().crews[0]
        assert (crew.weekdays, crew.shift_end, crew.hall) == (frozenset(range(5)), time(14), None)


def test_a_folder_is_no_database(tmp_path):
    with refused(TrackerError, "is a folder; name the database in it"):
        open_store(tmp_path)


def test_a_database_that_fails_meanwhile_is_one_line_and_nothing_is_written(store):
    says = f"the database {store.place.name} does not answer: no such table: nowhere; nothing was written"
    with refused(TrackerError, re.escape(says)), store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        uow.session.execute(text("SELECT * FROM nowhere"))
        uow.commit()
    with store.reading() as uow:
        assert uow.mill().looms == {}


def test_who_waits_too_long_for_another_writer_is_told_so(store, monkeypatch):
    monkeypatch.setattr(connecting, "WAIT_S", 0)
    second = open_store(store.place.url.render_as_string(), make=True)
    says = r"does not answer: somebody else has been writing to it for \d+ s, try again; nothing was written"
    with store.unit_of_work("planner"), refused(TrackerError, says), second.unit_of_work():
        pass


def test_the_last_booking_of_a_loom_is_that_of_the_last_published_plan_that_books_it(store):
    # Published: slots 8, then 9, then a plan without the loom; a plan with 10 was only made.
    def plan(*slots):
        bookings = [Booking(LOOM, 1, WindowKind.STYLE, (), AT, AT, None, n, 8.0, {}, CostTerms()) for n in slots]
        return Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT, tuple(bookings))

    other = LoomKey("Hall 1", "008")
    with store.unit_of_work("planner") as uow:
        add(uow, loom_row())
        for made, published in ((plan(8), True), (plan(9), True), (plan(10), False), (plan(), True)):
            uow.save_plan(made, published)
        assert {key: booking.slots for key, booking in uow.last_bookings({LOOM, other}).items()} == {LOOM: 9}
        assert uow.last_bookings({other}) == {}
