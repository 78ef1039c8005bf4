"""Sheets in the words of a language: names, headings, hints and sentences by codes of the catalogue, days and shares as it writes
them."""

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.columns import Kind, word_named
from tracker.errors import Message, message
from tracker.office.writing.sheets import Col, SheetWords, TidySheet
from tracker.words import Speaker, formats
from tracker.words.values import names_of_days


class Wording:
    """`zone`: in which moments of sentences are written; without one as they stand."""

    def __init__(self, language: str = "en", zone: ZoneInfo | None = None):
        self.language, self.zone = language, zone
        self.speaker = Speaker(language, zone)

    def say(self, code: str, /, **params: object) -> str:
        return self.speaker.say(message(code, **params))

    def line(self, what: Message) -> str:
        """What happened and what to do."""
        return self.speaker.line(what)

    def word(self, word: str) -> str:
        """A word that our sheets and lists know: `firm`, `short`, a kind of window."""
        return self.speaker.say(word_named(word))

    def col(self, code: str, kind: Kind = Kind.TEXT, *, unit: str = "", about: str = "", **looks: Any) -> Col:
        """A column by the codes of its heading and of its hint, its unit behind the heading."""
        heading = self.say(code)
        if unit:
            heading = self.say("name-with-unit", name=heading, unit=unit)
        return Col(heading, kind, about=self.say(about) if about else "", **looks)

    def where(self) -> list[Col]:
        """Which loom: its number, its hall, its type."""
        places = [self.col(code, Kind.IDENTIFIER) for code in ("heading-loom", "heading-hall")]
        return [*places, self.col("heading-machine-type")]

    def sheet(
        self, title: str, columns: Sequence[Col], rows: Sequence[Sequence[Any]], lines: Iterable[str] = (), **looks: Any
    ) -> TidySheet:
        """`title`: its code. `lines` are said already."""
        return self.named(self.say(title), columns, rows, lines, **looks)

    def named(
        self, title: str, columns: Sequence[Col], rows: Sequence[Sequence[Any]], lines: Iterable[str] = (), **looks: Any
    ) -> TidySheet:
        """A sheet whose title is said already."""
        return TidySheet(title, columns, rows, tuple(lines), words=self.of_a_sheet, **looks)

    @property
    def of_a_sheet(self) -> SheetWords:
        if self.language == "en":
            return SheetWords()
        days = names_of_days(self.language)["shortDays"]
        return SheetWords(
            self.say("book-total"), self.say("book-page"), self.say("word-yes"), self.say("word-no"), self.say("book-allowed"),
            self.say("book-usual"), self.say("book-or-more"), self.say("book-day"),
            (*days[1:], days[0]),
        )  # fmt: skip

    # ---- values in sentences and cells of text

    def day(self, on: date | None) -> str:
        return formats.day(on, self.language)

    def moment(self, at: datetime | None) -> str:
        return formats.moment(at, self.zone, self.language) if self.zone else formats.shown(at, self.language)

    def number(self, value: float | None, unit: str = "", digits: int = 0) -> str:
        return formats.number(value, unit, digits, self.language)

    def money(self, amount: float | None, currency: str = "") -> str:
        return formats.money(amount, currency, self.language)

    def count(self, how_many: int, code: str) -> str:
        return formats.count(how_many, code, self.language)

    def listed(self, names: Iterable[object]) -> str:
        return formats.listed(names, language=self.language)
