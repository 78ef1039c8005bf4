"""Which plan, made and not published, somebody looks at while others make and publish theirs."""

from dataclasses import replace

import pytest
from looking import as_role, look, press
from opened import here
from screen_mill import AS_OF, put, small_mill, small_plan

from dashboards.screens import bookings as bookings_screen
from tracker.domain.people import Role
from tracker.services.own_clock import give_own_clock
from tracker.services.screens.proposed import looked_at
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    """Plan 1 of the planner is in force; its clock stands at Mon 4 Jan 2027 06:00."""
    path = put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))
    give_own_clock(here(path), AS_OF)
    return path


def made(db: str, who: str, published: bool = False, cost: float = 7500, scenario: str | None = None) -> None:
    with open_store(db).unit_of_work(who, at=lambda: AS_OF) as uow:
        uow.save_plan(replace(small_plan(small_mill()), objective=cost), published=published, scenario=scenario)
        uow.commit()


def seen(db: str, who: str, kept: int | None = None) -> tuple[int | None, ...]:
    """Numbers of the plan looked at, of the one in force that overtook it, of the newer one, of the own one that was left."""
    found = looked_at(here(db), who, kept)
    return tuple(one.number if one else None for one in (found.plan, found.published, found.newer, found.own))


def test_what_somebody_looks_at_stays_until_another_is_chosen(db):
    assert seen(db, "Ann") == (None, None, None, None)
    made(db, "Ann")  # 2
    made(db, "Ben")  # 3
    made(db, "Cleo", scenario="three crews")  # 4, which is nobody's proposal
    assert seen(db, "Ann", 2) == seen(db, "Ann") == (2, None, 3, None)
    assert seen(db, "Ann", 3) == (3, None, None, 2)  # went to that of Ben, and may go back
    assert seen(db, "Ben", 2) == (3, None, None, None)  # his own is the newer
    assert seen(db, "Vera") == (3, None, None, None) and seen(db, "Vera", 2) == (2, None, 3, None)
    made(db, "Ann")  # 5
    assert seen(db, "Ann", 2) == seen(db, "Ann", 3) == (5, None, None, None)


def test_a_plan_that_was_published_meanwhile_stands_beside_it_and_not_in_its_place(db):
    made(db, "Ann")  # 2
    made(db, "Ben", published=True)  # 3
    assert seen(db, "Ann", 2) == (2, 3, None, None)
    assert seen(db, "Ann", 3) == (None, None, None, None)  # went to the one in force
    assert seen(db, "Ann") == (None, None, None, None)  # comes anew: what is in force counts
    assert seen(db, "Ben", 2) == (None, None, None, None)  # who publishes goes on by that
    made(db, "Cleo")  # 4
    assert seen(db, "Ann", 2) == (2, 3, 4, None) and seen(db, "Ben", 2) == (4, None, None, None)


def test_both_are_named_and_who_looks_goes_to_the_newer_one_and_back(db, monkeypatch):
    """The costs of a plan without moves are its objective; the hand-made plan has none."""
    monkeypatch.setenv("BEAMSLOT_DB", db)
    monkeypatch.setattr(bookings_screen, "_hall", lambda *_: None)
    as_role(monkeypatch, Role.PLANNER, name="Ann")
    made(db, "Ann", cost=7400)
    app = look("bookings")
    heads = [one.value for one in app.header]
    assert "Plan 2, made and not published" in heads
    made(db, "Ben", cost=7300)
    app.run()
    of_ann = "plan 2 by Ann of Mon 4 Jan 2027 06:00, which costs 7,400 EUR without moves"
    of_ben = "plan 3 by Ben of Mon 4 Jan 2027 06:00, which costs 7,300 EUR without moves"
    assert [one.value for one in app.header] == heads
    assert (
        app.info[0].value
        == f"There is a newer plan, not published either: {of_ben}. You are still looking at {of_ann}."
    )
    press(app, "Go to plan 3")
    assert "Plan 3, made and not published" in [one.value for one in app.header]
    press(app, "Go to plan 2")
    assert [one.value for one in app.header] == heads
    made(db, "Ben", cost=7200, published=True)
    app.run()
    now = "plan 4 by Ben of Mon 4 Jan 2027 06:00, which costs 7,200 EUR without moves"
    assert [one.value for one in app.header] == heads
    assert app.warning[0].value.startswith(
        f"Meanwhile another plan is in force: {now}. What you are looking at was made before it: {of_ann}."
    )
    press(app, "Publish plan 2")
    assert app.warning[1].value.startswith(
        "Plan 2 was made before the one in force and comes in its place. What lies ahead stays where it has it"
    )
    press(app, "No, leave it")
    press(app, "Go to plan 4")
    assert "Plan 2, made and not published" not in [one.value for one in app.header] and not app.warning
