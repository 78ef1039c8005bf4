"""The two main screens in a real browser: readable at two sizes, in any time zone, with a large mill."""

import pytest
from conftest import barriers, settle
from openpyxl import Workbook, load_workbook
from playwright.sync_api import TimeoutError as PlaywrightTimeout
from screen_mill import AS_OF, busy_plan, put, small_mill, small_plan
from served import served

from sample_data.big import make_mill
from tracker.store import open_store

pytestmark = pytest.mark.browser
JOB_MS = 180_000
"""Until a job's process has begun and ended on a machine that is busy with others."""
SIZES = [(1280, 800), (768, 1024)]


@pytest.fixture(scope="module")
def large(tmp_path_factory):
    mill = make_mill(1000, 26, 10, halls=4)
    with served(put(tmp_path_factory.mktemp("large") / "mill.db", mill, busy_plan(mill, AS_OF, 26))) as screens:
        yield screens.url


DRAWN = "svg.marks"


@pytest.mark.parametrize(
    ("path", "drawn"),
    [
        ("", DRAWN),
        ("needs", ".sheet"),
        *(pytest.param(one, DRAWN, marks=pytest.mark.long) for one in ("bookings", "scenarios")),
    ],
)
def test_no_screen_is_wider_than_the_window_or_keeps_anybody_out(small, open_page, path, drawn):
    for page, width in at_each_size(open_page, f"{small.url}/{path}"):
        page.wait_for_selector(drawn, state="attached")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        for figure in page.locator(".figure .value").all():
            assert figure.evaluate("e => e.scrollWidth <= e.clientWidth"), figure.inner_text()
        if width == SIZES[-1][0]:
            assert barriers(page) == []


@pytest.mark.parametrize(
    "path",
    [
        "looms?loom=A-7&hall=Hall+1",
        *(pytest.param(one, marks=pytest.mark.long) for one in ("looms", "looms?loom=A-9")),
    ],
)
def test_loom_sheets_fit_the_window(small, open_page, path):
    for page, width in at_each_size(open_page, f"{small.url}/{path}"):
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.get_by_text("failed").count() == 0


def at_each_size(open_page, url):
    """A page opened at the first size, then turned and made smaller as one does with a tablet; each size with its width."""
    page = open_page(url, *SIZES[0])
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        yield page, width


def test_a_loom_sought_leads_to_its_sheet_and_is_still_sought_on_the_way_back(small, open_page):
    page = open_page(f"{small.url}/bookings")
    page.get_by_label("Loom, in any week").fill("A-10")
    page.keyboard.press("Enter")
    settle(page)
    page.get_by_role("link", name="A-10").click()
    page.wait_for_selector("h1:has-text('Loom A-10, Hall 1')")
    page.go_back()
    page.wait_for_selector("h1:has-text('Bookings')")
    settle(page)
    assert page.get_by_label("Loom, in any week").input_value() == "A-10"
    assert page.locator(".sheet tbody tr:visible").count() == 1
    page.get_by_role("link", name="A-10").click()
    page.wait_for_selector("h1:has-text('Loom A-10, Hall 1')")
    page.get_by_role("link", name="all looms").click()
    page.wait_for_selector("h1:has-text('Looms')")


def test_an_unknown_loom_is_one_clear_line_and_a_way_on(small, open_page):
    page = open_page(f"{small.url}/looms?loom=A-99")
    assert page.get_by_text("There is no loom A-99.").is_visible()
    page.get_by_role("link", name="all looms").click()
    page.wait_for_selector("h1:has-text('Looms')")


def test_on_a_narrow_screen_hall_times_window_and_kit_need_no_scrolling(small, open_page):
    page = open_page(f"{small.url}/bookings", 834, 1000)
    for heading in ("Loom", "Hall", "Start", "End", "Window", "Kit"):
        box = page.locator(".sheet th", has_text=heading).first.bounding_box()
        assert box and box["x"] + box["width"] <= 834, heading


def test_a_day_stands_in_one_line_on_a_narrow_screen(small, open_page):
    page = open_page(f"{small.url}/needs", 834, 1000)
    days = page.locator(".sheet td span", has_text="Jan 2027").all()
    assert days and all(len(day.evaluate("e => [...e.getClientRects()]")) == 1 for day in days)


def test_the_navigation_leads_from_screen_to_screen(small, open_page):
    page = open_page(small.url)
    assert page.title() == "Programme status"
    page.get_by_text("Plan", exact=True).first.click()
    page.get_by_role("menuitem", name="Bookings").click()
    page.wait_for_selector("h1:has-text('Bookings')")
    assert page.url.endswith("/bookings")


def test_a_click_on_a_heading_sorts_naturally_and_again_backwards(small, open_page):
    page = open_page(f"{small.url}/bookings")
    first = page.locator(".sheet tbody tr td:first-child:visible")
    heading = page.locator(".sheet th:visible").first
    heading.click()
    assert first.all_inner_texts() == ["A-7", "A-10"]
    heading.click()
    assert first.all_inner_texts() == ["A-10", "A-7"]
    assert heading.get_attribute("aria-sort") == "descending"


@pytest.mark.parametrize("zone", ["Asia/Shanghai", pytest.param("America/New_York", marks=pytest.mark.long)])
def test_times_are_the_mills_wherever_the_browser_stands(small, open_page, zone):
    page = open_page(f"{small.url}/bookings", zone=zone)
    assert "Wed 6 Jan 2027 06:00" in page.locator(".sheet:visible").first.inner_text()
    drawn = axis_labels(page)
    assert len(drawn) == 7 and drawn[0].startswith("Mon 4 Jan") and drawn[-1].startswith("Sun 10 Jan")


def axis_labels(page) -> list[str]:
    """The labels of the first figure's axes that name a day."""
    page.wait_for_selector("svg.marks .role-axis-label text", state="attached")
    labels = page.locator("svg.marks").first.locator(".role-axis-label text").all()
    return [text for text in (label.text_content() or "" for label in labels) if "Jan" in text]


@pytest.mark.long
def test_a_thousand_looms_stay_usable(large, open_page):
    page = open_page(f"{large}/bookings")
    assert "1,000 bookings of 1,000 looms" in page.inner_text("body")
    # 1,000 bookings in 130 working days: 38 or 39 in a week, hall after hall
    assert page.locator(".sheet tbody tr:visible").count() < 60
    page.get_by_role("radio", name="4 weeks").or_(page.get_by_role("button", name="4 weeks")).first.click()
    settle(page)
    page.get_by_text("Page, by start").first.wait_for()
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280


def test_the_marked_copy_is_the_users_own_workbook_with_the_findings_in_front(small, open_page, tmp_path):
    book = Workbook()
    book.worksheets[0].title = "Looms"
    for row in (("Loom", "Hall", "Machine type", "Speed (picks/min)"), ("007", "Hall 1", "AJ-N", 6000)):
        book.worksheets[0].append(row)
    book.save(tmp_path / "our list.xlsx")
    page = open_page(f"{small.url}/load")
    page.set_input_files("input[type=file]", tmp_path / "our list.xlsx")
    with page.expect_download(timeout=60_000) as download:
        page.get_by_role("button", name="Copy of our list.xlsx with these cells marked").click(timeout=60_000)
    assert download.value.suggested_filename == "our list marked.xlsx"
    download.value.save_as(tmp_path / "marked.xlsx")
    marked = load_workbook(tmp_path / "marked.xlsx")
    assert marked.sheetnames[-1] == "Looms" and len(marked.sheetnames) == 2
    assert "6000" in marked["Looms"]["D2"].comment.text


BOTH = """() => new MutationObserver(() => {
  const shown = what => document.querySelector(`.stMain [data-testid="${what}"]`);
  if (shown("stProgress")) window.ran = true;
  if (shown("stProgress") && shown("stAlertContentError")) window.both = true;
}).observe(document.body, {childList: true, subtree: true})"""


def choose(page, label, option, tries=5):
    """The list of options closes where the page is drawn anew while it is open; then it is opened again."""
    settle(page)
    page.get_by_role("combobox", name=label).click()
    try:
        page.get_by_role("option", name=option, exact=True).click(timeout=5_000)
    except PlaywrightTimeout:
        if tries == 1:
            raise
        page.keyboard.press("Escape")
        choose(page, label, option, tries - 1)
    settle(page)


@pytest.mark.long
def test_an_older_fault_goes_when_a_scenario_is_planned_anew(small, open_page):
    page = open_page(f"{small.url}/scenarios")
    choose(page, "What is to be otherwise", "Heads of a crew")
    choose(page, "Crew", "Fitters")
    page.get_by_label("Instead").fill("0")
    page.get_by_role("button", name="Add it").click()
    settle(page)
    page.get_by_label("Name").fill("nobody")
    page.get_by_role("button", name="Plan it").click()
    page.wait_for_selector('.stMain [data-testid="stAlertContentError"]', timeout=JOB_MS)
    settle(page)
    page.evaluate(BOTH)
    page.get_by_label("Name").fill("nobody again")
    page.get_by_role("button", name="Plan it").click()
    page.wait_for_function("window.ran", timeout=JOB_MS)
    settle(page)
    assert not page.evaluate("window.both === true")


@pytest.mark.long
def test_a_plan_published_elsewhere_shows_without_a_touch(tmp_path, open_page):
    mill = small_mill()
    db = put(tmp_path / "mill.db", mill)
    with served(db) as screens:
        page = open_page(screens.url)
        assert "No plan is published yet" in page.inner_text("body")
        with open_store(db).unit_of_work("planner") as uow:
            uow.save_plan(small_plan(mill), published=True)
            uow.commit()
        page.wait_for_selector("text=How good the plan is", timeout=40_000)
