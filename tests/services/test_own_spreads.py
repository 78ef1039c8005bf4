"""How much things vary is read from what was entered day by day: order lines and what came of them, absences, protected looms.

The stockroom is that of `stock_room_samples`, on Mon 5 Jan 2026: one fitters' crew F1 of two, rails of A Works, nuts of B Works.
"""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest
from opened import here
from stock_room_samples import AT, fill_with_method
from three_looms import MONDAY, make

from tracker.domain.past import Notice, PastAbsence, PastLine
from tracker.domain.rows import Change
from tracker.rehearsal.sources import CREWS, SUPPLIERS, Figure, Whose
from tracker.services.parts.ordering import Ordered, expect, place
from tracker.services.parts.stock import receive
from tracker.services.parts.stock_entry import Told
from tracker.services.people.absences import end_absence, record_absence
from tracker.services.people.audit import deeds
from tracker.services.people.permissions import May
from tracker.services.plans.own_spreads import own_spreads
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.planning_data import read_planning_data
from tracker.services.plans.rehearsal_says import ground_words
from tracker.services.plans.rehearse import RehearsalRequest, rehearsal_task, rehearse
from tracker.services.plans.tune import tuning_task
from tracker.services.undoing.undo import undo
from tracker.words import ENGLISH

ORDERED = date(2026, 1, 5)


@pytest.fixture
def db(tmp_path):
    return fill_with_method(str(tmp_path / "mill.db"))


def on(db, day: date):
    """The mill on a day, at 9."""
    return here(db, clock=lambda: AT + timedelta(days=(day - AT.date()).days, hours=4))


def past(db):
    with here(db).reading() as uow:
        return uow.past()


def figures(db, day: date):
    context = on(db, day)
    return own_spreads(context, read_planning_data(context), context.now())


def come(db, order: str, due: date, came: date, part: str = "RAIL", **less) -> None:
    place(on(db, ORDERED), [Ordered(order, part, 4, due)])
    receive(on(db, came), order=order, **less)


def test_order_lines_are_held_against_the_day_that_was_promised_first(db):
    due, day = date(2026, 1, 12), timedelta(days=1)
    come(db, "A-1", due, due)
    place(on(db, ORDERED), [Ordered("A-2", "RAIL", 4, due)])
    expect(on(db, due), "A-2", due=due + 7 * day, why="the supplier wrote")
    receive(on(db, due + 6 * day), order="A-2")
    come(db, "A-3", due, due + day, quantity=3)
    receive(on(db, due + 9 * day), order="A-3")
    come(db, "A-4", due, due + 2 * day, quantity=3, rest_comes=False)
    place(on(db, ORDERED), [Ordered("A-5", "RAIL", 4, due)])
    expect(on(db, due), "A-5", quantity=0)
    come(db, "B-1", due, due - day, "NUT")
    receive(on(db, due + 3 * day), "RAIL", 1, told=Told("found behind the shelf"))
    told = {(line.supplier, (line.came_on - due).days if line.came_on else None, line.short, line.open)
            for line in past(db).lines if line.promised == due}  # fmt: skip
    assert told == {
        ("A Works", 0, False, False), ("A Works", 6, False, False), ("A Works", 1, True, False), ("A Works", 2, True, False),
        ("A Works", None, False, False), ("B Works", -1, False, False),
    }  # fmt: skip
    assert {line.told_on for line in past(db).lines} == {ORDERED}
    # PO-1, of the list that was loaded, is still waited for
    assert [line for line in past(db).lines if line.promised == date(2026, 1, 21)] == [
        PastLine("RAIL", "A Works", date(2026, 1, 21), ORDERED, open=True)
    ]


def test_a_receipt_that_was_undone_has_not_come(db):
    come(db, "A-1", date(2026, 1, 12), date(2026, 1, 14))
    context = on(db, date(2026, 1, 14))
    undo(context, max(deed.act for deed in deeds(context).deeds if deed.act))
    (line,) = (line for line in past(db).lines if line.promised == date(2026, 1, 12))
    assert (line.came_on, line.open) == (None, True)


def test_ten_lines_of_a_supplier_count_and_nine_do_not(db):
    """A Works: PO-1, waited for since the 21st, and eight lines of which four are three days late; then one more that is."""
    for i in range(8):
        due = date(2026, 1, 12) + timedelta(days=i % 2)
        come(db, f"A-{i}", due, due + timedelta(days=3 * (i % 2)))
    today = date(2026, 2, 2)
    assert figures(db, today)["late_share"] == {}
    come(db, "A-9", date(2026, 1, 13), date(2026, 1, 16))
    # of 10 lines six are late: (6 + ½) ÷ 11
    share = Figure(6.5 / 11, 10, date(2026, 1, 12))
    assert figures(db, today)["late_share"] == {Whose("supplier", "A Works"): share, SUPPLIERS: share}
    assert figures(db, date(2026, 1, 12))["late_share"] == {}


def test_absences_are_those_that_were_not_known_before(db):
    monday = date(2026, 2, 2)
    record_absence(on(db, monday), "F1", monday, monday + timedelta(days=1), reason="ill")
    record_absence(on(db, monday), "F1", date(2026, 3, 2), date(2026, 3, 6), reason="holiday")
    record_absence(on(db, date(2026, 3, 10)), "F1", date(2026, 3, 9), date(2026, 3, 12), 1)
    record_absence(on(db, date(2026, 4, 6)), "F1", date(2026, 4, 6), date(2026, 4, 8))
    end_absence(on(db, date(2026, 4, 6)), "F1", date(2026, 4, 6))
    told = past(db).absences
    assert told == (
        PastAbsence("F1", monday, date(2026, 2, 3), None, monday),
        PastAbsence("F1", date(2026, 3, 2), date(2026, 3, 6), None, monday),
        PastAbsence("F1", date(2026, 3, 9), date(2026, 3, 12), 1, date(2026, 3, 10)),
    )
    # one head of two away is as good as both, since a conversion takes two; the holiday does not count
    for i in range(9):
        day = date(2026, 5, 4) + timedelta(days=7 * i)
        record_absence(on(db, day), "F1", day, day)
    # since 4 February, to 5 July: 152 days, 4 + 9 of them away
    share = figures(db, date(2026, 7, 6))["away_share"][CREWS]
    assert share == Figure(pytest.approx(13 / 152), 10, date(2026, 2, 4))


def test_protected_looms_are_those_that_were_not_before(db):
    def protect(loom: str, day: date, old: date | None, until: date | None) -> None:
        with on(db, day).unit_of_work(May.LOAD) as uow:
            uow.load_writer().write([Change("looms", (loom, "Hall 1"), "protected_until", old, until)], {})
            uow.commit()

    first, longer, again = date(2026, 2, 2), date(2026, 2, 20), date(2026, 3, 20)
    protect("1", first, None, date(2026, 2, 10))
    protect("1", date(2026, 2, 9), date(2026, 2, 10), longer)
    protect("1", date(2026, 3, 2), longer, again)
    protect("1", date(2026, 3, 3), again, None)
    assert past(db).notices == (Notice(first, date(2026, 2, 10)), Notice(date(2026, 3, 2), again))
    assert past(db).listed_on == ORDERED


def test_what_the_records_say_goes_with_the_task_and_what_was_asked_for_wins(tmp_path):
    """Ten absences of crew F1 of two days each, after one of a day on 5 January; the plan is made in the year after."""
    mill = make(str(tmp_path / "mill.db"))
    year = datetime(2026, 1, 5, 9, tzinfo=MONDAY.tzinfo)
    for i in range(11):
        then = year + timedelta(days=30 * i)
        record_absence(here(mill, clock=lambda at=then: at), "F1", then.date(), then.date() + timedelta(days=min(i, 1)))
    context = here(mill, clock=lambda: MONDAY)
    plan(context, PlanRequest(publish=True, as_of=MONDAY))
    request = RehearsalRequest(runs=2, policies=("kept",), worries=False, jobs=1, as_of=MONDAY)
    share = Figure(20 / 363, 10, date(2026, 1, 6))
    assert rehearsal_task(context, request).ask.spreads.recorded("away_share", CREWS) == share
    assert tuning_task(context, request).ask.spreads.recorded("away_share", CREWS) == share
    report = rehearse(context, request)
    told = {ground["name"]: ground for ground in report.result["rests_on"] if ground["by"] == "records"}
    assert {name: (of["value"], of["count"], of["since"], of["names"]) for name, of in told.items()} == {
        "away_share": (20 / 363, 10, "2026-01-06", ["F1"]), "away_days": (2.0, 10, "2026-01-06", ["F1"]),
    }  # fmt: skip
    assert ENGLISH.say(report.lines[-3]).startswith("From the mill's own records: absences. ")
    assert [[ENGLISH.say(word) for word in ground_words(ground) if word] for ground in told.values()] == [
        ["5.5 % of days away unforeseen", "F1", "own records", "10 absences since Tue 6 Jan 2026"],
        ["absences of 2 days", "F1", "own records", "10 absences since Tue 6 Jan 2026"],
    ]
    asked = replace(request, spreads=(("away share", 0.2), ("away days", 3.0)))
    says = [ENGLISH.say(line) for line in rehearse(context, asked).lines]
    assert not any("own records:" in line for line in says)
    assert "20 % of days away unforeseen, absences of 3 days" in says[-2]
    assert rehearsal_task(context, asked).ask.spreads.of("away_share", CREWS) == 0.2
