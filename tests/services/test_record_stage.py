"""Recording stages and conversions: as booked unless said otherwise, once, and nothing that cannot have been."""

from datetime import UTC, datetime, timedelta

import pytest

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.rows import Change, SourceColumn, SourceTable, TypedRow
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, UsageError
from tracker.services.record import Taken, record_stage
from tracker.services.status import status
from tracker.store import open_store

KEY = LoomKey("H1", "007")
START, END = datetime(2026, 1, 5, 6, tzinfo=UTC), datetime(2026, 1, 5, 12, tzinfo=UTC)
SOURCES = [
    SourceTable("m.xlsx", "Operations", "operations", 1, (SourceColumn("Step", "A1", "step"),)),
    SourceTable("m.xlsx", "Choices", "choices", 1, (SourceColumn("Choice", "A1", "choice"),)),
]


def operation(step, name):
    values = {"step": step, "operation": name, "minutes": 30.0, "trade": "fitter", "heads": 1}
    return TypedRow("operations", values, {}, 0, step)


def alternative(choice, name):
    return TypedRow("choices", {"choice": choice, "alternative": name}, {}, 1, 2)


def loom(number):
    return Change("looms", (number, "H1"), "", None, {"hall": "H1", "loom": number, "machine_type": "AJ"})


@pytest.fixture
def db(tmp_path):
    path = str(tmp_path / "mill.db")
    booking = Booking(KEY, 1, WindowKind.STYLE, (("rail", "new rail"), ("duct", "new duct")), START, END, None, 12, 8.0, {},
                      CostTerms())  # fmt: skip
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", START, END + timedelta(days=30), (booking,))
    with open_store(path, make=True).unit_of_work() as uow:
        writer = uow.load_writer(at=START, who="planner")
        looms = [loom("007"), loom("008")]
        crew = Change("crews", ("F1", None, None, None), "", None, {"crew": "F1", "trade": "fitter", "heads": 2})
        writer.write([*looms, crew], {})
        choices = [alternative("rail", "new rail"), alternative("rail", "drill"), alternative("duct", "new duct")]
        writer.write_method({"operations": [operation(10, "Fit"), operation(20, "Drill")], "choices": choices}, SOURCES)
        uow.save_plan(plan, published=True)
        uow.commit()
    return path


def conversions(db):
    with open_store(db).reading() as uow:
        return uow.conversions()


def test_window_and_choices_are_as_booked_unless_said_otherwise(db):
    record_stage(db, "007", "run-in", at=END, taken=Taken("F1", START, {"fit": 40}, choices={"Rail": "Drill"}))
    (done,) = conversions(db)
    assert (done.kind, done.choices) == (WindowKind.STYLE, (("rail", "drill"), ("duct", "new duct")))
    assert done.operation_minutes == {"Fit": 40}


def test_the_total_is_never_made_up_from_the_operations(db):
    record_stage(db, "007", "signed off", at=END, taken=Taken("F1", START, {"Fit": 40}))
    record_stage(db, "008", "signed off", at=END, taken=Taken("F1", START, total_min=350))
    assert [done.total_min for done in conversions(db)] == [None, 350]
    assert conversions(db)[1].kind is None and conversions(db)[1].choices == ()


def test_a_conversion_is_recorded_once_until_the_loom_is_taken_back(db):
    record_stage(db, "007", "run-in", at=END, taken=Taken("F1", START))
    with pytest.raises(DataError, match="is recorded already: by F1, begun Mon 5 Jan 2026 06:00"):
        record_stage(db, "007", "signed off", at=END + timedelta(days=1), taken=Taken("F1", START))
    record_stage(db, "007", "scoped", at=END + timedelta(days=2))
    later = END + timedelta(days=10)
    record_stage(db, "007", "signed off", at=later, taken=Taken("F1", later - timedelta(hours=6)))
    assert len(conversions(db)) == 2


@pytest.mark.parametrize(
    ("stage", "at", "taken", "error", "says"),
    [
        ("put off", END, Taken("F1", START), UsageError, "put off needs a reason"),
        ("in work", END, Taken("F1", START), UsageError, "recorded with run-in or signed off, not with in work"),
        ("run-in", END, Taken("F2", START), DataError, "there is no crew F2; the crews are F1"),
        ("run-in", END, Taken("F1"), UsageError, "needs its start, before its end"),
        ("run-in", START, Taken("F1", END), UsageError, "needs its start, before its end"),
        ("run-in", END, Taken("F1", START, {"Weld": 3}), DataError, "operation 'Weld' is not in the method in force"),
        ("run-in", END, Taken("F1", START, {"Fit": -3}), UsageError, "-3 minutes is no time it can take"),
        ("run-in", END, Taken("F1", START, {"Fit": float("nan")}), UsageError, "nan minutes is no time"),
        # 6 h from start to end are 360 min
        ("run-in", END, Taken("F1", START, total_min=361), UsageError, "no longer than from start to end, 360 min"),
        ("run-in", END, Taken("F1", START, choices={"rail": "weld"}), DataError, "it has rail=new rail, rail=drill, duct=new duct"),
        ("run-in", datetime(2999, 1, 1, tzinfo=UTC), None, UsageError, "Tue 1 Jan 2999 00:00 is still to come"),
    ],
)  # fmt: skip
def test_what_cannot_have_been_is_refused_and_nothing_is_written(db, stage, at, taken, error, says):
    with pytest.raises(error, match=says):
        record_stage(db, "007", stage, at=at, taken=taken)
    with open_store(db).reading() as uow:
        assert uow.stages() == {} and uow.conversions() == []


def test_the_status_says_what_its_labour_leaves_out(db):
    # crew F1 is two heads: 350 min are 11.67 person-hours; the other conversion has no time
    record_stage(db, "007", "signed off", at=END, taken=Taken("F1", START))
    record_stage(db, "008", "signed off", at=END, taken=Taken("F1", START, total_min=350))
    report = status(db, END)
    assert report.labour_recorded_h == pytest.approx(350 / 60 * 2)
    assert report.untimed_says == "1 conversion was recorded without a time and not counted."
