"""A fitter's whole day on a tablet, through the real server: from the list of today to the sign-off, by taps."""

import re
from io import BytesIO

import pytest
from card_mill import LOOM, card_mill
from conftest import settle
from PIL import Image
from served import served
from three_looms import at

from tracker.services.context import Context
from tracker.services.own_clock import give_own_clock, set_clock

pytestmark = [pytest.mark.browser, pytest.mark.long]
TABLET = (820, 1180)
SMALL = """() => [...document.querySelectorAll('[class*=st-key-touch] button')]
    .map(e => e.getBoundingClientRect()).filter(r => r.width > 0 && (r.width < 44 || r.height < 44)).length"""


@pytest.fixture
def mill(tmp_path) -> Context:
    db = card_mill(str(tmp_path / "mill.db"))
    return give_own_clock(Context(db), at(1, 8))


def photo() -> bytes:
    file = BytesIO()
    Image.new("RGB", (400, 300), "red").save(file, "PNG")
    return file.getvalue()


def test_from_the_list_of_today_to_the_sign_off(mill, open_page):
    with served(mill.database) as screens:
        page = open_page(f"{screens.url}/today", *TABLET)

        def buttons(label: str):
            exactly = re.compile(rf"^\s*{re.escape(label)}\s*$")
            return page.locator("button:visible, [role=radio]:visible").filter(has_text=exactly)

        def tap(label: str, nth: int = 0) -> None:
            buttons(label).nth(nth).click()
            settle(page)

        def show(part: str, waits: str) -> None:
            tap(part)
            page.get_by_text(waits).first.wait_for(timeout=60_000)

        def says(text: str) -> None:
            page.get_by_text(text).first.wait_for(timeout=60_000)

        tap("F1")
        page.wait_for_url("**crew=F1**", timeout=60_000)
        tap("Loom 1 (H) · today")
        says("the rail by two people or a rated sling at its lifting points")
        tap("Start: the loom is stopped now")
        says("Loom 1 (H): begun.")

        set_clock(mill, at(1, 8.25))
        tap("Locked: now")
        says("✓ Locked Tue 5 Jan 2027 08:15")
        assert page.evaluate(SMALL) == 0 and page.evaluate("document.documentElement.scrollWidth") <= TABLET[0]

        show("Operations", "Mount")
        field = page.locator('input[type="number"]').first
        field.fill("60")
        field.press("Tab")
        tap("Done")
        says("60 N·m cannot be: the method asks for 40 N·m, and a bolt bears no more than 53.3 N·m")
        assert field.input_value().startswith("60")
        field.fill("41")
        field.press("Tab")
        tap("Done")
        says("41 N·m")
        tap("Done", nth=1)
        says("Electrics")

        show("Settings", "crossing angle")
        field = page.locator('input[type="number"]').first
        field.fill("320")
        field.press("Tab")
        tap("Set so")
        says("■ 320 lies outside the limits")
        tap("Set so", nth=1)
        says("✓ set 310")
        page.get_by_test_id("stPopoverButton").filter(has_text="Waive").first.click()
        page.get_by_label("Why it may stay as it is").fill("the frame allows no more")
        page.get_by_test_id("stBaseButton-primaryFormSubmit").filter(has_text="Waive").click()
        says("the frame allows no more")

        set_clock(mill, at(1, 12))
        show("Checks", "Guards are refitted")
        tap("Yes")
        says("✓ yes")
        field = page.locator('input[type="number"]').first
        field.fill("5")
        field.press("Tab")
        tap("Note the value")
        says("✓ 5")

        show("Remarks, end", "The loom is at speed: run-in begins")
        page.locator("textarea").first.fill("the rail is bent")
        page.locator('input[type="file"]').set_input_files(
            {"name": "rail.png", "mimeType": "image/png", "buffer": photo()}
        )
        page.get_by_text("rail.png").wait_for(timeout=60_000)
        tap("Note the remark")
        says("remark and photo noted")
        page.get_by_alt_text("the rail is bent").wait_for(timeout=60_000)
        tap("The loom is at speed: run-in begins")
        says("✓ Nothing is open.")
        tap("Sign off")
        says("everything on its card counts as done")
        tap("Yes: Sign off")
        says("signed off")
    with mill.reading() as uow:
        assert uow.stages()[LOOM].stage.value == "signed off"
