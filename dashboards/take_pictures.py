"""Take the pictures of the README from the real screens: `python -m dashboards.take_pictures [DEMO_DIR]`.

Without a folder the demo is run in a temporary one first. A scenario is planned in the demo's database, the published
plan is rehearsed, and a short loom list of a third hall is read, not loaded. Needs Chromium (CHROMIUM, default /usr/bin/chromium).
"""

import os
import socket
import sys
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tracker.server.port import ADDRESS
from tracker.server.serve import serving
from tracker.services.context import Actor, Context
from tracker.services.demo import run_demo
from tracker.services.plans.plan import PlanRequest, Search, plan
from tracker.services.plans.rehearse import RehearsalRequest, rehearse
from tracker.services.plans.scenario_draft import DraftEntry, scenario_text
from tracker.words import ENGLISH

PICTURES = Path(__file__).parent / "pictures"
CHROMIUM = os.environ.get("CHROMIUM", "/usr/bin/chromium")
SCREENS = {"status": "status", "today": "today?crew=Fitters+1", "beam_outs": "beam-outs",
           "bookings": "bookings", "load": "load", "looms": "looms?loom=007", "needs": "needs", "worth": "worth",
           "scenarios": "scenarios", "rehearsal": "rehearsal"}  # fmt: skip
"""Picture → path of the screen."""
WIDTH, HEIGHT, TALLEST = 1280, 800, 1400
COLOURS = 255
"""Enough for text and flat areas, at a third of the size."""
SCENARIO = scenario_text("without the second crew", (DraftEntry("heads", {"Fitters 2": "0"}),))
LOOM_LIST = """Loom;Hall;Machine type;Reed width;Speed (picks/min);Leno side
301;Hall 3;RP-N;110;420;both
302;Hall 3;RP-N;130;430;left
303;Hall 3;RP-W;143;4300;both
304;Hall 3;RP-W;143;430;?
"""
"""A width without unit, a speed that cannot be, a cell that nobody filled in."""


def main(folder: str | None) -> None:
    with TemporaryDirectory() as made:
        if folder is None:
            run_demo(Path(made), lambda what, _fraction: print(ENGLISH.say(what)))
        take(Path(folder or made) / "beamslot.db", Path(made))


def take(database: Path, scratch: Path) -> None:
    """Serve the database, take every picture, stop."""
    scenario, looms = scratch / "scenario.toml", scratch / "looms of hall 3.csv"
    scenario.write_text(SCENARIO, encoding="utf-8")
    looms.write_text(LOOM_LIST, encoding="utf-8")
    plan(Context(str(database)), PlanRequest(scenario=scenario), Search(time_limit_s=30))
    rehearse(Context(str(database), Actor("planner")), RehearsalRequest())

    with serving(str(database), free_port()) as (url, _), sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT}, timezone_id="Europe/Vienna")
        for name, path in SCREENS.items():
            open_screen(page, f"{url}/{path}")
            if name == "today":
                page.get_by_role("button", name="· today").first.click()
                page.wait_for_selector("text=Hold points", timeout=60_000)
            if name == "bookings":
                page.get_by_text("4 weeks").click()
            if name == "load":
                page.set_input_files("input[type=file]", looms)
                page.wait_for_selector("text=Write it", timeout=60_000)
            picture(page, PICTURES / f"{name}.png")
        browser.close()


def open_screen(page: Page, url: str) -> None:
    page.set_viewport_size({"width": WIDTH, "height": HEIGHT})
    page.goto(url)
    page.wait_for_selector("h1", timeout=60_000)


def picture(page: Page, target: Path) -> None:
    """The screen from its top, as tall as it is up to a limit."""
    page.wait_for_selector('[data-testid="stApp"][data-test-script-state="notRunning"]', timeout=60_000)
    page.wait_for_timeout(1500)
    height = page.evaluate("document.querySelector('.stMain').scrollHeight")
    page.set_viewport_size({"width": WIDTH, "height": min(height, TALLEST)})
    page.wait_for_timeout(1500)
    with Image.open(BytesIO(page.screenshot())) as taken:
        taken.convert("RGB").quantize(COLOURS, Image.Quantize.MAXCOVERAGE).save(target, optimize=True)
    print(target)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind((ADDRESS, 0))
        return probe.getsockname()[1]


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else None)
