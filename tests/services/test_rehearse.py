"""Rehearsing the published plan: what is kept with it, what is said, what is refused.

Three looms (three_looms.py), every day of the week worked. Where nothing varies every run is the plan: loom 3, whose
warp lasts, is stopped on Monday 06:00 and takes ten hours with its beam; loom 1 runs out on Tuesday 08:00 and takes six; loom
2 on Wednesday 16:00, two hours before the shift ends, and takes four more from 06:00.
"""

from dataclasses import replace

import pytest
from opened import here
from openpyxl import load_workbook
from refusals import refused
from three_looms import MONDAY, at, make

from tracker.domain.progress import Stage
from tracker.errors import DataError, UsageError
from tracker.rehearsal.sources import Source
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.rehearsal_book import write_rehearsal_workbook
from tracker.services.plans.rehearsal_says import rests_on
from tracker.services.plans.rehearse import RehearsalRequest, last_rehearsal, rehearse
from tracker.services.screens.status import status
from tracker.services.work.record import StageTold, record_stage
from tracker.words import ENGLISH

STILL = tuple(source.value for source in Source)
FEW = RehearsalRequest(runs=3, policies=("kept",), off=STILL, jobs=1, as_of=MONDAY)


@pytest.fixture
def published(tmp_path):
    db = make(str(tmp_path / "mill.db"))
    return db, plan(here(db), PlanRequest(publish=True, as_of=MONDAY)).plan


def test_where_nothing_varies_it_says_what_the_plan_says(published):
    db, made = published
    result = rehearse(here(db), FEW).result
    done = [at(0, 16), at(1, 14), at(3, 10)]
    shares = ("p10", "p50", "p80", "p90")
    assert [[line[share] for share in shares] for line in result["milestones"]] == [
        [end.isoformat(timespec="minutes")] * 4 for end in done
    ]
    assert result["policies"][0]["cost"]["p80"] == pytest.approx(made.objective)
    assert result["plan_says"]["cost"] == pytest.approx(made.objective)
    assert [booking["on_time"] for booking in result["bookings"]] == [1.0] * len(made.bookings)


def test_it_is_kept_with_the_plan_and_stands_on_the_status(published):
    db, _ = published
    assert status(here(db)).rehearsal_says is None
    report = rehearse(here(db), FEW)
    kept = last_rehearsal(here(db))
    assert kept and (kept.number, kept.plan, kept.result) == (report.number, 1, report.result)
    said = status(here(db)).rehearsal_says
    assert said and "3 runs" in ENGLISH.say(said)
    plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    assert last_rehearsal(here(db)) is None  # the new plan was never rehearsed
    assert status(here(db)).rehearsal_says is None


def test_it_is_written_as_a_workbook(published, tmp_path):
    """Loom 3 is done on Monday 16:00, loom 1 on Tuesday 14:00, loom 2 on Thursday 10:00; nothing holds any of them up."""
    db, made = published
    with refused(DataError, "was not rehearsed yet"):
        write_rehearsal_workbook(here(db), tmp_path / "r.xlsx")
    rehearse(here(db), replace(FEW, off=STILL[1:], worries=True))
    write_rehearsal_workbook(here(db), tmp_path / "r.xlsx")
    book = load_workbook(tmp_path / "r.xlsx")
    assert book.sheetnames == ["Done by", "Costs", "Worries", "Bookings at risk", "Rests on"]
    done, costs, worries, risks, grounds = ([[cell.value for cell in row] for row in sheet.rows] for sheet in book)
    # one of three is a third, so a quarter of three looms is one, three quarters are three
    ends = [at(day, hour).replace(tzinfo=None) for day, hour in ((0, 16), (1, 14), (3, 10))]
    assert done[-3:] == [[looms, 100, *[end] * 4] for looms, end in enumerate(ends, 1)]
    assert costs[-1][0] == "the plan, kept" and costs[-1][6] == pytest.approx(made.objective)
    assert worries[-1][0] == "beam-outs as forecast" and worries[-1][1] == 0
    assert {(row[3], row[4]) for row in risks[-3:]} == {(100, 0)}
    assert grounds[-2:] == [
        [
            "use of warp varying by 0 % from day to day where a loom has too few daily readings",
            "the mill",
            "as asked for, or by the terms",
            None,
        ],
        ["readings of warps wrong by 2 %", "the mill", "usual", None],
    ]


def test_the_usual_figures_that_it_rests_on_are_named(published):
    """The mill was asked nothing of people and orders; of receipts one figure was given; nothing else varies."""
    db, _ = published
    off = ("beam-outs", "work", "failures")
    report = rehearse(here(db), replace(FEW, off=off, worries=False, spreads=(("late share", 0.5), ("late days", 3.0))))
    assert ENGLISH.say(report.lines[-1]) == (
        "Taken as is usual, for want of figures of the mill's own: 4 % of days away unforeseen, absences of 3 days, 2 % of "
        "deliveries short, looms protected at short notice: 1 a week, protected for 14 days."
    )


def test_of_one_run_the_mean_is_known_and_how_sure_it_is_is_not(published):
    db, made = published
    mean = rehearse(here(db), replace(FEW, runs=1)).result["policies"][0]["mean_cost"]
    assert mean == {"mean": pytest.approx(made.objective), "low": None, "high": None}


@pytest.mark.long  # the default run has one and four in tests/rehearsal
def test_two_processes_say_what_one_says(published):
    db, _ = published
    ask = RehearsalRequest(runs=12, jobs=1, as_of=MONDAY)
    two = RehearsalRequest(runs=12, jobs=2, as_of=MONDAY)
    assert rehearse(here(db), ask).result == rehearse(here(db), two).result


def test_a_stop_keeps_what_is_done_and_nothing_where_nothing_is(published):
    db, _ = published
    many = RehearsalRequest(runs=100, policies=("kept",), worries=False, jobs=1, as_of=MONDAY)
    with refused(DataError, "stopped before the first run was done; nothing was kept"):
        rehearse(here(db), many, stop=lambda: True)
    assert last_rehearsal(here(db)) is None
    asked = iter([False] * 2 + [True] * 100)  # batches of five
    result = rehearse(here(db), many, stop=lambda: next(asked)).result
    assert (result["stopped"], result["runs"], result["runs_asked"]) == (True, 10, 100)


@pytest.mark.parametrize(
    ("asked", "kind", "says"),
    [
        (
            RehearsalRequest(policies=("hope",)),
            UsageError,
            "no policy hope; there are kept, replanned, never-cut, rule-of-thumb",
        ),
        (RehearsalRequest(off=("weather",)), UsageError, "weather is nothing that varies"),
        (RehearsalRequest(spreads=(("luck", 1.0),)), UsageError, "nothing varies by the name luck"),
        (RehearsalRequest(spreads=(("late share", 1.5),)), DataError, "late share is 1.5; it must lie between 0 and 1"),
        (RehearsalRequest(runs=0), UsageError, "1 to 100,000 runs, not 0"),
    ],
)
def test_what_cannot_be_played_is_refused(published, asked, kind, says):
    with refused(kind, says):
        rehearse(here(published[0]), asked)
    assert last_rehearsal(here(published[0])) is None


def test_without_a_plan_or_work_to_do_there_is_nothing_to_rehearse(tmp_path):
    db = make(str(tmp_path / "mill.db"))
    with refused(DataError, "no plan is published yet"):
        rehearse(here(db), FEW)
    plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    for loom in "123":
        record_stage(here(db, clock=lambda: MONDAY), loom, Stage.LEFT_OUT.value, told=StageTold(MONDAY, "sold"))
    with refused(DataError, "no booking of the published plan is still to come"):
        rehearse(here(db), FEW)


def test_of_one_that_was_kept_before_records_were_asked_the_usual_figures_are_named():
    """Orders were off, and 6 % of days away were asked for."""
    kept = {
        "spreads": {"away_share": 0.06, "away_days": 3.0, "late_share": 0.2, "protected_days": 14.0},
        "off": ["orders"],
    }
    assert [ENGLISH.say(line) for line in rests_on(kept)] == [
        "Taken as is usual, for want of figures of the mill's own: absences of 3 days, 20 % of deliveries late."
    ]
