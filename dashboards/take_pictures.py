"""Take the pictures of the README from the real screens: `python -m dashboards.take_pictures [DEMO_DIR]`.

Without a folder the demo is run in a temporary one first. Needs Chromium (CHROMIUM, default /usr/bin/chromium).
"""

import os
import socket
import sys
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tracker.services.demo import run_demo
from tracker.services.serve import ADDRESS, serve

PICTURES = Path(__file__).parent / "pictures"
CHROMIUM = os.environ.get("CHROMIUM", "/usr/bin/chromium")
SCREENS = {"status": "", "bookings": "bookings", "looms": "looms?loom=007", "needs": "needs"}
"""Picture → path of the screen."""
WIDTH, HEIGHT, TALLEST = 1280, 800, 1500
COLOURS = 128
"""Enough for text and flat areas, at a third of the size."""


def main(folder: str | None) -> None:
    if folder:
        take(Path(folder) / "beamslot.db")
        return
    with TemporaryDirectory() as made:
        run_demo(Path(made), lambda text, _fraction: print(text))
        take(Path(made) / "beamslot.db")


def take(database: Path) -> None:
    """Serve the database, take every picture, stop."""

    def pictures(url: str) -> None:
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
            page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT}, timezone_id="Europe/Vienna")
            for name, path in SCREENS.items():
                picture(page, f"{url}/{path}", PICTURES / f"{name}.png")
            browser.close()
        raise KeyboardInterrupt

    serve(str(database), free_port(), ready=pictures)


def picture(page: Page, url: str, target: Path) -> None:
    page.set_viewport_size({"width": WIDTH, "height": HEIGHT})
    page.goto(url)
    page.wait_for_selector("h1", timeout=60_000)
    page.wait_for_selector('[data-testid="stApp"][data-test-script-state="notRunning"]', timeout=60_000)
    page.wait_for_timeout(1500)
    height = page.evaluate("document.querySelector('.stMain').scrollHeight")
    page.set_viewport_size({"width": WIDTH, "height": min(height, TALLEST)})
    page.wait_for_timeout(1500)
    with Image.open(BytesIO(page.screenshot())) as taken:
        taken.convert("RGB").quantize(COLOURS).save(target, optimize=True)
    print(target)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind((ADDRESS, 0))
        return probe.getsockname()[1]


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else None)
