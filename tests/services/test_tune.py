"""Tuning the plan in force: what is kept, what is refused, and what taking over writes. The mill is that of three_looms.py."""

import pytest
from opened import here
from refusals import refused
from three_looms import MONDAY, make

from tracker.errors import DataError, UsageError
from tracker.rehearsal import tuning
from tracker.rehearsal.sources import Source
from tracker.services.people.absences import record_absence
from tracker.services.people.audit import deeds
from tracker.services.people.permissions import May
from tracker.services.plans.made_plans import publish_made
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.rehearse import RehearsalRequest, last_rehearsal
from tracker.services.plans.tune import accept_tuning, last_tuning, tune_plan
from tracker.services.plans.verify import verify
from tracker.services.undoing.undo import undo
from tracker.words import ENGLISH

STILL = RehearsalRequest(runs=2, off=tuple(source.value for source in Source), jobs=1, as_of=MONDAY)


@pytest.fixture
def published(tmp_path, monkeypatch):
    monkeypatch.setattr(tuning, "STEPS", {"receipts_later_days": (5,), "pilots_for_type": (True,)})
    db = here(make(str(tmp_path / "mill.db")))
    plan(db, PlanRequest(publish=True, as_of=MONDAY))
    return db


def care(db):
    with db.reading() as uow:
        return uow.terms().care


def test_what_helps_nothing_is_kept_and_cannot_be_taken_over(published):
    with refused(DataError, "nobody has looked yet for terms that let the plan in force survive"):
        accept_tuning(published)
    before = care(published)
    report = tune_plan(published, STILL, 2)
    kept = last_tuning(published)
    assert kept and (kept.number, kept.result) == (report.number, report.result)
    assert last_rehearsal(published) is None
    assert "in 2 other worlds" in ENGLISH.say(report.lines[0])
    assert ENGLISH.say(report.lines[1]).startswith("Nothing helps for sure; leave the terms at nothing. The best, ")
    with refused(DataError, "nothing helps for sure; the terms stay as they are"):
        accept_tuning(published)
    assert care(published) == before


def test_what_is_taken_over_sets_the_terms_and_makes_the_plan(published):
    # nothing varies in this mill, so that it is told by hand that five days more for deliveries and half a last chance help
    result = tune_plan(published, STILL, 2).result
    terms = result["best"]["terms"] | {"receipts_later_days": 5, "no_second_chance": 0.5, "usual_absence": 0.04}
    judged = {"mean": -300.0, "low": -400.0, "high": -200.0}
    told = result | {"helps": True, "judged": judged, "best": result["best"] | {"terms": terms, "variant": 0}}
    with published.unit_of_work(May.PLAN) as uow:
        uow.save_rehearsal(1, told)
        uow.commit()
    record_absence(published, "F1", MONDAY.date(), MONDAY.date())  # so that the booking of that day moves
    before = care(published)
    with refused(DataError, "what was tuned is overtaken") as caught:
        accept_tuning(published)
    assert care(published) == before
    told["best"] |= {"paper": caught.value.message.params["now"]}
    with published.unit_of_work(May.PLAN) as uow:
        uow.save_rehearsal(1, told)
        uow.commit()
    taken = accept_tuning(published)
    now = care(published)
    assert (now.receipts_later_days, now.no_second_chance, now.usual_absence) == (5, 0.5, 0.04)
    assert taken.number == 2 and taken.plan.surviving > 0
    with published.reading() as uow:
        assert uow.published_number() == 1
        assert [entry.published for entry in uow.plan_entries()] == [False, True]
    assert "saves 300 EUR in the hall, between 200 EUR and 400 EUR" in ENGLISH.say(taken.plan.reasons[0])
    of_terms = max(deed.act for deed in deeds(published).deeds if deed.act)
    publish_made(published, 2)
    assert verify(published).violations == ()
    undo(published, of_terms)
    assert care(published) == before


def test_what_cannot_be_asked(published, tmp_path):
    with refused(UsageError, "2 to 10,000 worlds"):
        tune_plan(published, STILL, 1)
    with refused(DataError, "stopped before two ways of planning were compared"):
        tune_plan(published, STILL, 2, stop=lambda: True)
    with refused(DataError, "no plan is published"):
        tune_plan(here(make(str(tmp_path / "other.db"))), STILL, 2)
    assert last_tuning(published) is None
