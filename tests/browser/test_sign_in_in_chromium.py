"""Signing in as a person does, and going on after the session has ended with what was typed still there."""

import pytest
from conftest import settle
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from screen_mill import put, small_mill, small_plan
from served import served

from tracker.services.context import Context
from tracker.services.people.accounts import add_person, change_password

pytestmark = pytest.mark.browser


@pytest.fixture
def page(browser):
    """A page of a browser of its own, whose cookies are nobody else's."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    yield context.new_page()
    context.close()


def sign_in(page, password):
    page.get_by_label("Name").fill("Ann")
    page.get_by_label("Password").fill(password)
    page.get_by_role("button", name="Sign in").click()


def test_what_was_typed_outlives_the_session(tmp_path, page, quick_passwords):  # noqa: F811
    mill = Context(put(tmp_path / "mill.db", small_mill(), small_plan(small_mill())))
    add_person(mill, "Ann", PASSWORD, ["planner"])
    with served(mill.database) as screens:
        page.goto(f"{screens.url}/bookings")
        sign_in(page, PASSWORD)
        settle(page)
        assert page.url.endswith("/bookings")
        assert "Ann (planner)" in page.inner_text(".who")
        sought = page.get_by_label("Loom, in any week")
        sought.fill("A-1")
        change_password(mill, "Ann", OTHER)
        page.wait_for_selector("#session-over:not([hidden])", timeout=60_000)
        page.wait_for_selector("text=Connection error", timeout=60_000)  # the library's, over all but our bar
        with page.context.expect_page() as opened:
            page.locator("#session-over a").click()
        other = opened.value
        sign_in(other, OTHER)
        other.wait_for_selector("text=You are signed in")
        page.bring_to_front()
        page.wait_for_selector("#session-over[hidden]", state="attached", timeout=60_000)
        assert sought.input_value() == "A-1"
        sought.press("Enter")
        rows = "[...document.querySelectorAll('.sheet tbody tr')].filter(row => row.checkVisibility())"
        page.wait_for_function(f"{rows}.length === 1", timeout=60_000)
