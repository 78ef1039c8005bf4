"""Two people in each other's way, each in a browser of the own: whoever saves second hears both values."""

from datetime import date

import pytest
from card_mill import LOOM, card_mill
from conftest import settle
from opened import here
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import AS_OF, put, small_mill, small_plan
from served import served
from somebody import Somebody
from three_looms import at

from tracker.services.context import Context
from tracker.services.own_clock import give_own_clock
from tracker.services.people.accounts import add_person
from tracker.store import open_store

pytestmark = [pytest.mark.browser, pytest.mark.long]


@pytest.fixture
def two(browser, quick_passwords):  # noqa: F811
    """Two of a role before the screens of a mill."""
    there: list[Somebody] = []

    def come(context, url: str, role: str) -> list[Somebody]:
        for name in ("Ann", "Ben"):
            add_person(context, name, PASSWORD, [role])
        there.extend(Somebody(browser, url, name) for name in ("Ann", "Ben"))
        return there

    yield come
    for one in there:
        one.goes()


def test_two_say_otherwise_when_one_order_line_comes(two, tmp_path):
    """PO-1, one RAIL, is due on Fri 8 January 2027."""
    context = here(put(tmp_path / "mill.db", small_mill(), small_plan(small_mill())))
    give_own_clock(context, AS_OF)
    with served(context.database) as screens:
        ann, ben = two(context, screens.url, "purchasing")
        for one, day in ((ann, 12), (ben, 14)):
            one.opens(f"{screens.url}/needs?show=receipts")
            one.dates("Comes on", date(2027, 1, day))
        ann.presses("Expect it so")
        ann.sees("Order PO-1: 1 pc of RAIL expected on Tue 12 Jan 2027.")
        ben.presses("Expect it so")
        said = ben.sees("by Ann on")
        assert "Due: Fri 8 Jan 2027 then, Tue 12 Jan 2027 now" in said
        with context.reading() as uow:
            assert [line.due for line in uow.mill().receipts] == [date(2027, 1, 12)]


def test_who_has_the_same_card_open_sees_that_the_other_began(two, tmp_path):
    """Loom 1 of the card mill is F1's on Tuesday 5 January from 08:00."""
    context = give_own_clock(Context(card_mill(str(tmp_path / "mill.db"))), at(1, 8))
    start = "Start: the loom is stopped now"
    with served(context.database) as screens:
        ann, ben = two(context, screens.url, "fitter")
        for one in (ann, ben):
            one.opens(f"{screens.url}/today?crew=F1")
            one.presses("Loom 1 (H) · today")
            one.sees(start)
        ann.presses(start)
        ann.sees("Loom 1 (H): begun.")
        ben.sees("✓ Stopped Tue 5 Jan 2027 08:00")
        ben.until(lambda: ben.page.get_by_role("button", name=start).count() == 0)
    with context.reading() as uow:
        began = [(change.stage.value, change.who) for change in uow.stage_history() if change.key == LOOM]
    assert began == [("in work", "Ann")]


def test_a_plan_that_is_overtaken_stays_with_what_is_being_typed_below_it(two, tmp_path):
    """Plans 2 and 3 book as plan 1 does, which is in force."""
    plan = small_plan(small_mill())
    context = here(put(tmp_path / "mill.db", small_mill(), plan))
    give_own_clock(context, AS_OF)

    def made(who: str, published: bool) -> None:
        with open_store(context.database).unit_of_work(who) as uow:
            uow.save_plan(plan, published=published)
            uow.commit()

    with served(context.database) as screens:
        ann, ben = two(context, screens.url, "planner")
        made("Ann", published=False)
        for one in (ann, ben):
            one.opens(f"{screens.url}/bookings")
            one.sees("Plan 2, made and not published")
        ann.page.get_by_role("tab", name="Who is away").click()
        settle(ann.page)
        ann.field("Reason").click()
        ann.page.keyboard.type("ill since")  # and she goes on in a moment
        for published, said in ((False, "There is a newer plan"), (True, "Meanwhile another plan is in force")):
            made("Ben", published)
            ann.sees(said)
            settle(ann.page)
            assert ann.field("Reason").input_value() == "ill since"
            assert ann.page.get_by_role("tab", selected=True).inner_text() == "Who is away"
            ann.sees("Plan 2, made and not published")
        ben.until(lambda: ben.page.get_by_text("made and not published").count() == 0)  # what he published himself
        ann.presses("Go to plan 4")
        ann.until(lambda: ann.page.get_by_text("made and not published").count() == 0)
        assert ann.field("Reason").input_value() == "ill since"
