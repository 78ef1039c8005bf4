"""Recording stages and conversions: as booked unless said otherwise, once, and nothing that cannot have been."""

import re
from datetime import UTC, date, datetime, time, timedelta

import pytest
from made_once import made_once
from opened import here
from refusals import refused
from stock_room_samples import fill

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.rows import Change, SourceColumn, SourceTable, TypedRow
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, UsageError
from tracker.services.parts.stock import issue, issue_kit
from tracker.services.screens.status import status
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.taken import Taken
from tracker.store import open_store
from tracker.words import ENGLISH

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
    return booked_mill(str(tmp_path / "mill.db"))


@made_once
def booked_mill(path: str) -> str:
    booking = Booking(KEY, 1, WindowKind.STYLE, (("rail", "new rail"), ("duct", "new duct")), START, END, None, 12, 8.0, {},
                      CostTerms())  # fmt: skip
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", START, END + timedelta(days=30), (booking,))
    with open_store(path, make=True).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=START)
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


def told_later(db, loom, stage, at=END, taken=None):
    """As a mill does that records a conversion only when it is done."""
    return record_stage(here(db), loom, stage, told=StageTold(at=at, taken=taken, why="told afterwards"))


def test_window_and_choices_are_as_booked_unless_said_otherwise(db):
    told_later(db, "007", "run-in", taken=Taken("F1", START, {"fit": 40}, choices={"Rail": "Drill"}))
    (done,) = conversions(db)
    assert (done.kind, done.choices) == (WindowKind.STYLE, (("rail", "drill"), ("duct", "new duct")))
    assert done.operation_minutes == {"Fit": 40}


def test_a_later_plan_without_the_loom_does_not_forget_how_it_was_booked(db):
    record_stage(here(db), "007", "in work", told=StageTold(at=START))
    with open_store(db).unit_of_work("planner") as uow:
        uow.save_plan(Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", START, END + timedelta(days=30)), published=True)
        uow.commit()
    record_stage(here(db), "007", "run-in", told=StageTold(at=END, taken=Taken("F1", START)))
    (done,) = conversions(db)
    assert (done.kind, done.choices) == (WindowKind.STYLE, (("rail", "new rail"), ("duct", "new duct")))


def test_the_total_is_never_made_up_from_the_operations(db):
    told_later(db, "007", "signed off", taken=Taken("F1", START, {"Fit": 40}))
    told_later(db, "008", "signed off", taken=Taken("F1", START, total_min=350))
    assert [done.total_min for done in conversions(db)] == [None, 350]
    assert conversions(db)[1].kind is None and conversions(db)[1].choices == ()


def test_a_conversion_is_recorded_once_and_is_gone_when_the_loom_is_taken_back(db):
    told_later(db, "007", "run-in", taken=Taken("F1", START, total_min=350))
    with refused(DataError, "is recorded already: by F1, begun Mon 5 Jan 2026 06:00"):
        record_stage(
            here(db), "007", "signed off", told=StageTold(at=END + timedelta(days=1), taken=Taken("F1", START))
        )
    record_stage(here(db), "007", "signed off", told=StageTold(at=END + timedelta(days=1)))
    record_stage(here(db), "007", "scoped", told=StageTold(at=END + timedelta(days=2), why="it was loom 008"))
    assert conversions(db) == []
    report = status(here(db), END + timedelta(days=3))
    assert (report.labour_recorded_h, [week.done for week in report.weeks]) == (0, [0])
    later = END + timedelta(days=10)
    told_later(db, "007", "signed off", later, Taken("F1", later - timedelta(hours=6)))
    assert [done.ended_at for done in conversions(db)] == [later]


def test_stages_follow_one_another_without_a_reason(db):
    # The booking of 007 takes no parts, so nothing is to be issued.
    for days, stage in enumerate(("in work", "run-in", "signed off")):
        record_stage(here(db), "007", stage, told=StageTold(at=START + timedelta(days=days)))
    with open_store(db).reading() as uow:
        assert [(change.stage, change.reason) for change in uow.stage_history()] == [
            ("in work", None), ("run-in", None), ("signed off", None)]  # fmt: skip


def test_a_stage_told_again_with_the_conversion_needs_no_reason(db):
    record_stage(here(db), "007", "in work", told=StageTold(at=START))
    record_stage(here(db), "007", "run-in", told=StageTold(at=END))
    record_stage(here(db), "007", "run-in", told=StageTold(at=END, taken=Taken("F1", START)))
    assert len(conversions(db)) == 1


def test_a_loom_put_off_is_taken_back_without_a_reason(db):
    record_stage(here(db), "008", "put off", told=StageTold(at=START, why="no rail"))
    record_stage(here(db), "008", "scoped", told=StageTold(at=END))
    with open_store(db).reading() as uow:
        assert uow.stages()[LoomKey("H1", "008")].stage == "scoped"


@pytest.mark.parametrize(
    ("before", "loom", "stage", "at", "says"),
    [
        ((), "008", "in work", END, "loom 008 (H1) is recorded as in work only with a reason, since it is not booked"),
        ((), "007", "run-in", END, "in work was skipped"),
        ((), "007", "signed off", END, "in work and run-in were skipped"),
        (("in work",), "007", "signed off", END, "run-in was skipped"),
        (("in work",), "007", "in work", END, "it is in work already"),
        (("in work",), "007", "scoped", END, "it is in work and goes back"),
        (("in work", "run-in"), "007", "in work", END, "it is run-in and goes back"),
        (("put off",), "007", "in work", END, "it is put off and was not taken back with scoped"),
        ((), "007", "scoped", END, "it is booked and goes back"),
        # the published plan is as of Mon 5 Jan 2026; the year before is a slip
        ((), "007", "in work", END - timedelta(days=365),
         "Sun 5 Jan 2025 lies before the programme, which began on Mon 5 Jan 2026"),
    ],
)  # fmt: skip
def test_what_is_out_of_order_needs_a_reason(db, before, loom, stage, at, says):
    for earlier in before:
        record_stage(here(db), loom, earlier, told=StageTold(at=START, why="no rail" if earlier == "put off" else None))
    with refused(DataError, f"{re.escape(says)}; say it with --why TEXT$"):
        record_stage(here(db), loom, stage, told=StageTold(at=at))
    with open_store(db).reading() as uow:
        assert len(uow.stage_history()) == len(before)
    done = record_stage(here(db), loom, stage, told=StageTold(at=at, why=" the electrician was ill "))
    assert (done.change.stage, done.change.reason) == (stage, "the electrician was ill")


def test_work_may_have_begun_on_the_day_of_the_first_plan_before_it_was_made(db):
    record_stage(here(db), "007", "in work", told=StageTold(at=START - timedelta(hours=1)))


def test_a_conversion_begun_before_the_first_plan_needs_a_reason(db):
    record_stage(here(db), "007", "in work", told=StageTold(at=START))
    with refused(DataError, "Sun 5 Jan 2025 lies before the programme"):
        record_stage(here(db), "007", "run-in", told=StageTold(at=END, taken=Taken("F1", START - timedelta(days=365))))


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
    with refused(error, says):
        record_stage(
            here(db),
            "007",
            stage,
            told=StageTold(at=at, taken=taken, why=None if stage == "put off" else "told afterwards"),
        )
    with open_store(db).reading() as uow:
        assert uow.stages() == {} and uow.conversions() == []


def test_the_status_says_what_its_labour_leaves_out(db):
    # crew F1 is two heads: 350 min are 11.67 person-hours; the other conversion has no time
    told_later(db, "007", "signed off", taken=Taken("F1", START))
    told_later(db, "008", "signed off", taken=Taken("F1", START, total_min=350))
    report = status(here(db), END)
    assert report.labour_recorded_h == pytest.approx(350 / 60 * 2)
    assert (
        report.untimed_says
        and ENGLISH.say(report.untimed_says) == "1 conversion was recorded without a time and not counted."
    )


def test_a_loom_is_in_work_when_its_kit_is_issued(tmp_path):
    db = fill(str(tmp_path / "stores.db"))
    with refused(DataError, "since its kit is not issued; say it with"):
        record_stage(here(db), "1", "in work")
    issue(here(db), "1", part="RAIL")
    with refused(DataError, "since its kit is not issued"):
        record_stage(here(db), "1", "in work")
    issue_kit(here(db), "1")
    assert ENGLISH.line(record_stage(here(db), "1", "in work").message) == "Loom 1 (Hall 1) is in work."


def test_a_crew_in_several_rows_costs_what_it_did_when_it_worked(db):
    # F1 is 2 heads at 30 from 06:00 to 14:00, 3 at 40 from 14:00 to 22:00, 4 at 50 from 6 January on, and an electrician
    # at 90. Monday 5 January 2026 06:00, 6 h: 6 × 2 = 12 person-hours at 30; from 14:00, 4 h: 12 at 40: 360 + 480 = 840
    rows = [
        {"heads": 2, "rate_per_head_h": 30.0, "to_on": date(2026, 1, 5)},
        {"heads": 3, "rate_per_head_h": 40.0, "shift_start": time(14), "shift_end": time(22)},
        {"heads": 4, "rate_per_head_h": 50.0, "from_on": date(2026, 1, 6)},
        {"heads": 1, "rate_per_head_h": 90.0, "trade": "electrician", "shift_start": time(5)},
    ]
    with open_store(db).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=START)
        keys = [("F1", None, row.get("shift_start"), row.get("from_on")) for row in rows]
        gone = Change("crews", ("F1", None, None, None), "heads", 2, 0)
        fresh = [
            Change("crews", key, "", None, {"crew": "F1", "trade": "fitter", "shift_start": time(6), **row})
            for key, row in zip(keys, rows, strict=True)
        ]
        writer.write([gone, *fresh], {})
        uow.commit()
    told_later(db, "007", "signed off", taken=Taken("F1", START, total_min=360))
    late = datetime(2026, 1, 5, 14, tzinfo=UTC)
    told_later(db, "008", "signed off", at=late + timedelta(hours=4), taken=Taken("F1", late, total_min=240))
    report = status(here(db), END)
    assert (report.labour_recorded_h, report.labour_recorded_cost) == (pytest.approx(24), pytest.approx(840))
