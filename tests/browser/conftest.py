"""A browser, and the real command serving a database on a free port."""

import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from time import monotonic, sleep

import pytest
from machine import CHROMIUM, no_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "dashboards"))
START_S = 60


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if item.get_closest_marker("browser") and (reason := no_browser()):
            item.add_marker(pytest.mark.skip(reason=reason))


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def answers(url: str) -> bool:
    try:
        with urllib.request.urlopen(f"{url}/_stcore/health", timeout=2):
            return True
    except (urllib.error.URLError, OSError):
        return False


def stop(server: subprocess.Popen) -> None:
    """As a supervisor would: ask first, then end it."""
    server.send_signal(signal.SIGTERM)
    try:
        server.wait(20)
    except subprocess.TimeoutExpired:
        server.kill()
        server.wait()


@contextmanager
def serving(db: str) -> Iterator[str]:
    """The service behind `beamslot serve` on a database, in a process of its own; gives the address."""
    port = free_port()
    call = f"from tracker.services.serve import serve; serve({db!r}, {port})"
    server = subprocess.Popen([sys.executable, "-c", call])
    try:
        url, until = f"http://127.0.0.1:{port}", monotonic() + START_S
        while not answers(url):
            assert server.poll() is None and monotonic() < until, "the screens did not start"
            sleep(0.2)
        yield url
    finally:
        stop(server)
    assert not answers(url), "the screens outlived the command"


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
