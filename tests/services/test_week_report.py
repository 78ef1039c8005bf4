"""The report of a week. Looms 1, 2 and 10 of `stock_room_samples` are booked for the Mondays 12, 19 and 26 January 2026 (weeks 3,
4 and 5), here at 100 for labour and 300 for parts each; the second plan, of Tue 20 January, puts loom 10 off to 2 February."""

import re
from dataclasses import replace
from datetime import UTC, date, datetime

import pytest
from opened import here
from refusals import refused
from stock_room_samples import AT, KITS, booking, fill, key, plan_of

from tracker.domain.plan import CostTerms
from tracker.domain.progress import Stage
from tracker.errors import DataError, UsageError
from tracker.export.week_page import week_pdf
from tracker.services.parts.stock import issue
from tracker.services.people.audit import check_history
from tracker.services.people.permissions import May
from tracker.services.screens.week_page import page_of, week_file, weeks_begun
from tracker.services.screens.week_report import week_report
from tracker.services.work.record import StageTold, record_stage


def moment(day: int, hour: int = 12) -> datetime:
    return datetime(2026, 1, day, hour, tzinfo=UTC)


def booked(loom: str, day: date):
    return booking(loom, day, KITS[loom][1], cost=CostTerms(labour=100, parts=300))


def publish(db: str, at: datetime, *bookings) -> None:
    with here(db, clock=lambda: at).unit_of_work(May.PLAN) as uow:
        uow.save_plan(replace(plan_of(*bookings), as_of=at), published=True)
        uow.commit()


@pytest.fixture(scope="module")
def lived(tmp_path_factory):
    """Loom 1 was done on its day, with 8 nuts at 0.50; loom 2 was begun on the 19th and has not come to its end."""
    db = fill(str(tmp_path_factory.mktemp("weeks") / "mill.db"), None)
    publish(db, AT, *(booked(loom, day) for loom, (day, _) in KITS.items()))
    issue(here(db, clock=lambda: moment(12)), "1", "NUT")
    for day, loom, stage in ((12, "1", "in work"), (12, "1", "run-in"), (13, "1", "signed off"), (19, "2", "in work")):
        record_stage(here(db, clock=lambda day=day: moment(day)), loom, stage, told=StageTold(why="as it was"))
    publish(db, moment(20), booked("10", date(2026, 2, 2)))
    return here(db, clock=lambda: moment(28))


def test_a_week_that_is_over_tells_how_it_stood_at_its_end(lived):
    report = week_report(lived, "2026-W03")
    assert (report.first, report.last, report.is_over) == (date(2026, 1, 12), date(2026, 1, 18), True)
    assert (report.done, report.count.done, report.count.planned, report.missed) == (1, 1, 1, ())
    assert (report.plan, report.finish_on) == (1, date(2026, 1, 26))
    assert (report.money.planned, report.money.spent, report.money.spent_in_week) == (400, 4, 4)
    assert report.money.on_order is None and report.late == report.risks == ()


def test_what_was_planned_for_a_week_and_not_signed_off_is_named_with_its_stage(lived):
    report = week_report(lived, "2026-W04")
    assert [(b.key, stage) for b, stage in report.missed] == [(key("2"), Stage.IN_WORK)]
    assert (report.plan, report.finish_on, report.money.spent_in_week) == (2, date(2026, 2, 2), 0)


def test_this_week_is_told_as_it_stands(lived):
    report = week_report(lived)
    # 4 rails at 300 of PO-1 were due on 21 January and have not come
    assert (report.week, report.is_over, report.money.on_order) == ("2026-W05", False, 1200)
    assert any(one.what.code == "late-receipt" for one in report.late)
    assert weeks_begun(report.counts, date(2026, 1, 28)) == ["2026-W05", "2026-W04", "2026-W03"]
    assert weeks_begun(report.counts[:1], date(2026, 1, 28)) == [
        "2026-W05",
        "2026-W04",
        "2026-W03",
    ]  # also where nothing was


@pytest.mark.parametrize(("week", "kind", "says"), [
    ("2026-W06", DataError, "week 2026-W06 begins on Mon 2 Feb 2026 and has not begun yet"),
    ("2026-W60", UsageError, "2026-W60 is no week like 2027-W02"), ("soon", UsageError, "soon is no week"),
])  # fmt: skip
def test_a_week_that_has_not_begun_or_is_none_is_refused(lived, week, kind, says):
    with refused(kind, says):
        week_report(lived, week)


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_page_is_one_and_ends_with_the_last_hash_of_the_history(lived, language):
    pdf = week_file(lived, "2026-W04", language)
    assert len(re.findall(rb"/Type /Page\b", pdf)) == 1
    page = page_of(week_report(lived, "2026-W04"), language)
    assert page.seal == check_history(lived).last_hash != ""
    said = {"en": "Planned for this week and not signed off", "de": "Für diese Woche geplant und nicht abgenommen"}
    assert page.notes[-1].title == said[language] and "2 (Hall 1)" in page.notes[-1].lines[0]


def test_a_page_with_more_than_it_holds_is_still_one(lived):
    report = week_report(lived, "2026-W04")
    long = replace(report, programme="Programme of a long name " * 12, missed=report.missed * 200)
    assert len(re.findall(rb"/Type /Page\b", week_pdf(page_of(long, "de")))) == 1
