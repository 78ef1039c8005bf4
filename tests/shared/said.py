"""Messages as a person at a terminal reads them."""

from typing import Protocol

from tracker.errors import Message
from tracker.words import ENGLISH


class Report(Protocol):
    def messages(self) -> list[Message]: ...


def said(what: Message | None) -> str:
    """Without advice; `` for None."""
    return ENGLISH.say(what) if what else ""


def lines(report: Report) -> list[str]:
    """What a report says, with the advice of a terminal."""
    return [ENGLISH.line(each) for each in report.messages()]
