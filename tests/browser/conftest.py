"""A browser, and pages of it that have settled."""

import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from machine import CHROMIUM, no_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "dashboards"))


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


@pytest.fixture
def open_page(browser) -> Iterator[Callable]:
    """open_page(url, width, height, zone) waits until the screen has settled; errors of the page fail the test."""
    contexts, errors = [], []

    def opened(url: str, width: int = 1280, height: int = 800, zone: str = "Europe/Vienna", wait_for: str = "h1"):
        context = browser.new_context(viewport={"width": width, "height": height}, timezone_id=zone)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: errors.append(str(error)))
        page.on("console", lambda said: errors.append(said.text) if "Content Security Policy" in said.text else None)
        page.goto(url)
        settle(page, wait_for)
        return page

    yield opened
    for context in contexts:
        context.close()
    assert errors == []


def settle(page, wait_for: str = "h1") -> None:
    """Until the script has run and the figures are drawn."""
    page.wait_for_selector(wait_for, timeout=60_000)
    page.wait_for_selector('[data-testid="stApp"][data-test-script-state="notRunning"]', timeout=60_000)
    page.wait_for_timeout(600)
