"""The manager's day through the real server, signed in: how it stands, whether it was worth it, and the report of a past week as a
PDF. A-7 and A-10 were booked in the first week of 2027; it is Mon 18 January, two weeks later."""

from datetime import timedelta

import pytest
from conftest import settle
from machine import needs, pdf_text
from opened import here
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from screen_mill import AS_OF, put, small_mill, small_plan
from served import served
from somebody import Somebody

from tracker.services.own_clock import give_own_clock
from tracker.services.people.accounts import add_person

pytestmark = [pytest.mark.browser, pytest.mark.long, needs("pdftotext", "poppler-utils")]


def test_the_managers_day(browser, tmp_path, quick_passwords):  # noqa: F811
    context = here(put(tmp_path / "mill.db", small_mill(), small_plan(small_mill())))
    give_own_clock(context, AS_OF + timedelta(weeks=2))
    add_person(context, "Max", PASSWORD, ["viewer"])
    with served(context.database) as screens:
        max_ = Somebody(browser, screens.url, "Max")
        page = max_.page
        assert "/status" in page.url
        max_.sees("Late")

        # the report of the week before last, in which both were to be done
        page.get_by_test_id("stSelectbox").filter(has_text="Week").locator("input").click()
        page.get_by_role("option", name="2027-W01").click()
        settle(page)
        with page.expect_download() as file:
            page.get_by_role("button", name="One-page report (PDF)").click()
        report = tmp_path / file.value.suggested_filename
        file.value.save_as(report)
        said = pdf_text(report)
        assert "2027-W01" in report.name and "Small programme" in said and "4 Jan 2027" in said

        # nothing of the planner's or of purchasing's is offered on the way
        max_.opens(f"{screens.url}/worth")
        max_.sees("Worth")
        assert page.get_by_role("button", name="Take over").count() == 0
        max_.opens(f"{screens.url}/needs")
        assert page.get_by_role("button", name="Enter it as ordered").count() == 0
        max_.opens(f"{screens.url}/scenarios")
        assert page.get_by_role("button", name="Put it in force").count() == 0
        max_.goes()
