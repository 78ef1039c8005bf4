"""No screen keeps anybody out: axe-core finds nothing serious on any of them, in either language, nor at the door."""

import pytest
from conftest import barriers, settle
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import put, small_mill, small_plan
from served import served

from dashboards.navigation import SCREENS
from tracker.services.context import Context
from tracker.services.people.accounts import add_person

pytestmark = [pytest.mark.browser, pytest.mark.long]
"""Every run looks at the screens of `test_screens_in_chromium`; the long run at all."""
SHEET = "looms?loom=A-7&hall=Hall+1"
APART = "Europe/Zurich"
"""A time zone of no other test here: by it the browser keeps the cookie of the language to itself."""


@pytest.fixture(scope="module")
def mill(tmp_path_factory):
    with served(put(tmp_path_factory.mktemp("seen") / "mill.db", small_mill(), small_plan(small_mill()))) as screens:
        yield screens.url


@pytest.mark.parametrize("path", [*(one.path for one in SCREENS), SHEET])
def test_nothing_on_a_screen_keeps_anybody_out(mill, open_page, path):
    page = open_page(f"{mill}/{path}{'&' if '?' in path else '?'}lang=de", zone=APART)
    assert page.locator("html").get_attribute("lang") == "de"
    assert barriers(page) == []


def test_an_empty_mill_and_the_door_keep_nobody_out(tmp_path, browser, quick_passwords):  # noqa: F811
    empty = Context(str(tmp_path / "mill.db"), make=True)
    add_person(empty, "Ann", PASSWORD, ["planner"])
    with served(empty.database) as screens:
        page = browser.new_page()
        page.goto(screens.url)
        assert barriers(page) == []
        page.get_by_label("Name").fill("Ann")
        page.get_by_label("Password").fill(PASSWORD)
        page.keyboard.press("Enter")
        settle(page)
        assert barriers(page) == []
        page.close()


def test_the_keyboard_reaches_the_other_language_and_sorts_a_table(mill, open_page):
    page = open_page(f"{mill}/bookings?lang=en", zone=APART)
    page.get_by_role("button", name="Deutsch").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector("h1:has-text('Termine')")
    settle(page)
    page.locator(".sheet th:visible").first.focus()
    page.keyboard.press("Enter")
    assert page.locator(".sheet th:visible").first.get_attribute("aria-sort") == "ascending"
    page.reload()
    page.wait_for_selector("h1:has-text('Termine')")  # a cookie keeps the language
