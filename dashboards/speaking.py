"""Says everything that the screens say, in the language of whoever looks: messages with the advice of a screen, never with an
option of the command; days, moments, numbers and counts as `tracker.words.formats` writes them."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import date, datetime
from zoneinfo import ZoneInfo

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from tracker.domain.plan import Booking
from tracker.errors import message
from tracker.words import Edge, Speaker, formats
from tracker.words.choosing import ASKED, KEPT, SPOKEN, chosen

FOUND = "found-language"
"""On the library's own object for the run of a page."""
_AFTER = ContextVar("language-after-the-run", default="en")


def language() -> str:
    """Of whoever looks; where no page is run, that of `speaking_in`. Looked up once for an address in a run: a screen asks for
    every word and number, thousands of times."""
    run = get_script_run_ctx(suppress_warning=True)
    if run is None:
        return _AFTER.get()
    known = getattr(run, FOUND, None)
    if known is None or known[0] != run.query_string:
        known = run.query_string, _asked_for()
        setattr(run, FOUND, known)
    return known[1]


@contextmanager
def speaking_in(spoken: str) -> Iterator[None]:
    """For what is written after the run of a page, as a download once it is clicked; else that is English."""
    before = _AFTER.set(spoken)
    try:
        yield
    finally:
        _AFTER.reset(before)


def _asked_for() -> str:
    if asked := st.query_params.get(ASKED):
        st.session_state[ASKED] = asked
    kept = st.context.cookies.get(KEPT)
    return chosen(st.session_state.get(ASKED), kept, accepts=st.context.headers.get("Accept-Language", ""))


class _ScreenSpeaker(Speaker):
    """Of the language that is looked up whenever something is said: one process serves many."""

    @property
    def language(self) -> str:
        return language()


SPEAKER = _ScreenSpeaker(edge=Edge.SCREEN)


def say(code: str, /, **params: object) -> str:
    """The words of a code, without advice: a label, a heading, a help."""
    return SPEAKER.say(message(code, **params))


def languages() -> list[tuple[str, str]]:
    """The languages to choose from, each by its own name: `("de", "Deutsch")`."""
    return [(one, Speaker(one).say(message("language-name"))) for one in SPOKEN]


def day(on: date | None) -> str:
    return formats.day(on, language())


TYPED_DAYS = {"de": "DD.MM.YYYY"}


def typed_day() -> str:
    """How a day is written in a field, as the screen library has it."""
    return TYPED_DAYS.get(language(), "YYYY-MM-DD")


def month(named: str) -> str:
    """`Jan 2027` of `2027-01`."""
    return formats.month(named, language())


def moment(at: datetime | None, zone: ZoneInfo) -> str:
    return formats.moment(at, zone, language())


def number(value: float | None, unit: str = "", digits: int = 0) -> str:
    return formats.number(value, unit, digits, language())


def decimal(value: float, digits: int) -> str:
    """`0.50`: so many decimals."""
    return formats.decimal(value, digits, language())


def money(amount: float | None, currency: str = "") -> str:
    return formats.money(amount, currency, language())


def share(fraction: float | None) -> str:
    """`87 %`."""
    return formats.share(fraction, language())


def shown(value: object) -> str:
    return formats.shown(value, language())


def span(start: datetime, end: datetime, zone: ZoneInfo) -> str:
    return formats.span(start, end, zone, language())


def who_and_when(booking: Booking, zone: ZoneInfo) -> str:
    return formats.who_and_when(booking, zone, language())


def count(how_many: int, code: str) -> str:
    return formats.count(how_many, code, language())


def listed(names: Iterable[object], most: int = 10) -> str:
    return formats.listed(names, most, language())
