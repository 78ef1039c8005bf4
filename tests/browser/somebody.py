"""Somebody with an account, a browser of the own and hands."""

from collections.abc import Callable
from datetime import date

from conftest import settle
from quick_passwords import PASSWORD

PATIENT_MS = 60_000


class Somebody:
    """Signs in at once, and is where the role lands."""

    def __init__(self, browser, url: str, name: str):
        self.page = browser.new_context(viewport={"width": 1280, "height": 900}, accept_downloads=True).new_page()
        self.page.set_default_timeout(PATIENT_MS)
        self.errors: list[str] = []
        self.page.on("pageerror", lambda error: self.errors.append(str(error)))
        self.page.goto(url)
        self.page.get_by_label("Name").fill(name)
        self.page.get_by_label("Password").fill(PASSWORD)
        self.page.get_by_role("button", name="Sign in").click()
        settle(self.page)

    def opens(self, url: str) -> None:
        self.page.goto(url)
        settle(self.page)

    def presses(self, label: str, nth: int = 0) -> None:
        self.page.get_by_role("button", name=label, exact=True).nth(nth).click()
        settle(self.page)

    def chooses(self, word: str) -> None:
        """Of a row of words to choose from."""
        self.page.get_by_test_id("stRadio").get_by_text(word, exact=True).first.click()
        settle(self.page)

    def field(self, label: str):
        """Of text or a number; the button that explains it has the same label."""
        fields = '[data-testid="stTextInput"], [data-testid="stNumberInput"]'
        return self.page.locator(fields).filter(has_text=label).locator("input").first

    def types(self, label: str, text: str) -> None:
        field = self.field(label)
        field.fill(text)
        field.press("Tab")
        settle(self.page)

    def dates(self, label: str, day: date) -> None:
        """Year, month and day are typed one after the other; each field goes on to the next."""
        self.page.get_by_role("spinbutton", name=f"year, {label}").first.click()
        self.page.keyboard.type(f"{day:%Y%m%d}")
        self.page.keyboard.press("Tab")
        settle(self.page)

    def sees(self, text: str) -> str:
        """Waits for it; the whole text in which it stands."""
        found = self.page.get_by_text(text).first
        found.wait_for()
        return found.inner_text()

    def until(self, holds: Callable[[], bool]) -> None:
        """What was clicked has been done, however slow the machine is."""
        for _ in range(PATIENT_MS // 500):
            if holds():
                return
            self.page.wait_for_timeout(500)
        assert holds()

    def goes(self) -> None:
        self.page.context.close()
        assert self.errors == []
