"""Two people in each other's way, each in a browser of the own: whoever saves second hears both values."""

from datetime import date

import pytest
from opened import here
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import AS_OF, put, small_mill, small_plan
from served import served
from somebody import Somebody

from tracker.services.own_clock import give_own_clock
from tracker.services.people.accounts import add_person

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
