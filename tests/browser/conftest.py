"""A browser, and pages of it that have settled."""

import sys
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest
from machine import CHROMIUM, no_browser
from served import Served, served

sys.path.insert(0, str(Path(__file__).parents[1] / "dashboards"))
from screen_mill import put, small_mill, small_plan


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if item.get_closest_marker("browser") and (reason := no_browser()):
            item.add_marker(pytest.mark.skip(reason=reason))


@pytest.fixture(scope="session")
def browser():
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def small(tmp_path_factory) -> Iterator[Served]:
    """The screens of the small mill with its plan, for all tests that only look: a server and its first page take ten seconds."""
    mill = small_mill()
    with served(put(tmp_path_factory.mktemp("small") / "mill.db", mill, small_plan(mill))) as screens:
        yield screens


@pytest.fixture(scope="session")
def context_of(browser) -> Callable:
    """The browser as somebody in a time zone has it, who keeps what is fetched once: of 3 s for a page 1 s is its scripts."""
    return cache(lambda zone: browser.new_context(timezone_id=zone))


@pytest.fixture
def open_page(context_of) -> Iterator[Callable]:
    """open_page(url, width, height, zone) waits until the screen has settled; errors of the page fail the test."""
    pages, errors = [], []

    def opened(url: str, width: int = 1280, height: int = 800, zone: str = "Europe/Vienna", wait_for: str = "h1"):
        page = context_of(zone).new_page()
        pages.append(page)
        page.set_viewport_size({"width": width, "height": height})
        page.on("pageerror", lambda error: errors.append(str(error)))
        page.on("console", lambda said: errors.append(said.text) if "Content Security Policy" in said.text else None)
        page.goto(url)
        drawn(page, wait_for)
        return page

    yield opened
    for page in pages:
        page.close()
    assert errors == []


def barriers(page) -> list[str]:
    """What axe-core finds on a page that keeps somebody out or makes it hard: its serious and critical findings, with an element
    of each. WCAG 2.2 at level AA is among what it looks for: contrast of 4.5 to 1, labels, what a keyboard reaches."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page).response["violations"]
    return [
        f"{one['id']} ({len(one['nodes'])}×): {one['nodes'][0]['html'][:200]}"
        for one in found
        if one["impact"] in ("serious", "critical")
    ]


FIGURES_DRAWN = """() => [...document.querySelectorAll('[data-testid="stVegaLiteChart"]')].every(
  one => one.querySelector("svg.marks"))"""


def drawn(page, wait_for: str = "h1") -> None:
    """Until the script has run and the figures are drawn."""
    page.wait_for_selector(wait_for, timeout=60_000)
    page.wait_for_selector('[data-testid="stApp"][data-test-script-state="notRunning"]', timeout=60_000)
    page.wait_for_function(FIGURES_DRAWN, timeout=60_000)


def settle(page, wait_for: str = "h1") -> None:
    """The same once something was done on the page, whose script may run a second time at once."""
    drawn(page, wait_for)
    page.wait_for_timeout(600)
