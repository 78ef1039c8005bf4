"""Messages as a person at a terminal reads them."""

from collections.abc import Iterable
from typing import Protocol

from tracker.errors import Message
from tracker.services.loading.load_report import LoadReport
from tracker.words import ENGLISH
from tracker.words.findings import refusal_line


class Report(Protocol):
    def messages(self) -> list[Message]: ...


def said(what: Message | None) -> str:
    """Without advice; `` for None."""
    return ENGLISH.say(what) if what else ""


def lines(report: Report) -> list[str]:
    """What a report says, with the advice of a terminal."""
    return [ENGLISH.line(each) for each in report.messages()]


def texts(messages: Iterable[Message]) -> tuple[str, ...]:
    """Each as a line, likewise."""
    return tuple(ENGLISH.line(each) for each in messages)


def refusal_of(report: LoadReport) -> str:
    """Why a load wrote nothing, in one line; `` where it wrote."""
    return refusal_line(report.refusal, report.quoted)
