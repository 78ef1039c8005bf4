"""Says messages to a person: in a language, in the mill's local time, at a terminal or on a screen."""

from collections.abc import Iterable, Mapping
from datetime import date, time, tzinfo
from enum import Enum, StrEnum
from typing import Any

from tracker.errors import Message, TrackerError
from tracker.words.catalogue import bundle, codes
from tracker.words.values import MOST_LISTED, clock, listed

LONGEST = 1000
"""Characters of one value in a sentence; fluent.runtime refuses more."""


class Edge(StrEnum):
    """Where the reader sits; advice differs, what happened does not."""

    TERMINAL = "terminal"
    SCREEN = "screen"


class Speaker:
    """Turns messages into sentences.

    `language` is one of LANGUAGES; a code that it lacks is said in English. Moments are written in `zone`, without one as
    they stand.
    """

    def __init__(self, language: str = "en", zone: tzinfo | None = None, edge: Edge = Edge.TERMINAL):
        self._language, self.zone, self.edge = language, zone, edge

    @property
    def language(self) -> str:
        return self._language

    def say(self, what: Message | TrackerError) -> str:
        """What happened, in one line."""
        said = _message(what)
        if said.code not in codes():
            return said.code
        return self._written(said, None) or ""

    def advice(self, what: Message | TrackerError) -> str:
        """What to do about it at this edge; empty where nothing can be said."""
        said = _message(what)
        if said.code not in codes():
            return ""
        return self._written(said, str(self.edge)) or self._written(said, "hint") or ""

    def line(self, what: Message | TrackerError) -> str:
        """What happened and what to do, in one line; advice with a small beginning goes on in the same sentence, unless that
        has ended."""
        said, advice = self.say(what), self.advice(what)
        return f"{said}{' ' if advice[0].isupper() or said.endswith('.') else '; '}{advice}" if advice else said

    def own(self, value: object) -> str:
        """A value of the mill's own as it would write it: `190`, `0.5`, `yes`, `Mon 4 Jan 2027`; `` for None. The parts of a
        row's name the one beside the other: `007 Hall 1`."""
        if isinstance(value, list | tuple):
            return " ".join(map(self.own, value))
        return "" if value is None else self.say(Message("own-value", {"value": value}))

    def word(self, value: Enum) -> str:
        """A word of the trade that is a fixed one in the code: a stage, a kind of window."""
        return self.say(Message(f"word-{str(value.value).replace(' ', '-')}"))

    def _written(self, said: Message, part: str | None) -> str | None:
        for language in dict.fromkeys((self.language, "en")):
            kind = codes(language).get(said.code)
            if kind is None:
                continue
            texts = bundle(language, kind)
            found = texts.get_message(said.code)
            pattern = found.value if part is None else found.attributes.get(part)
            if pattern is None:
                continue
            text, errors = texts.format_pattern(pattern, self._ready(said.params))
            if errors:
                raise ValueError(f"{said}: {errors}")
            return str(text)
        return None

    def _ready(self, params: Mapping[str, object]) -> dict[str, Any]:
        return {name: _short(self._value(value)) for name, value in params.items()}

    def _value(self, value: object) -> Any:
        from fluent.runtime.types import FluentType

        from tracker.domain.mill import LoomKey
        from tracker.words.fluent_values import FixedWord, Moment

        match value:
            case None:
                return "none"
            case bool():
                name = "yes" if value else "no"
                return FixedWord(self.say(Message(f"word-{name}")), name)
            case str() if not isinstance(value, Enum):
                return value
            case FluentType():
                return value
            case LoomKey():
                return str(value)
            case Message():
                return self.line(value)
            case Enum():
                return FixedWord(self.word(value), str(value.value))
            case int() | float():
                return value
            case date():
                return Moment(value, self.zone)
            case time():
                return clock(value, self.language)
            case Iterable():
                items = list(value)
                texts = [self._text(item) for item in items[:MOST_LISTED]]
                return listed(texts, self.say(Message("and-more")), language=self.language, of=len(items))
        return str(value)

    def _text(self, item: object) -> str:
        from fluent.runtime.types import FluentType

        ready = self._value(item)
        if isinstance(ready, FluentType | int | float):
            return self._written(Message("just", {"value": item}), None) or ""
        return str(ready)


def _short(ready: Any) -> Any:
    """Without its middle where it is longer than the library of the texts takes."""
    if not isinstance(ready, str) or len(ready) <= LONGEST:
        return ready
    return f"{ready[: LONGEST // 2 - 2]} … {ready[2 - LONGEST // 2 :]}"


def _message(what: Message | TrackerError) -> Message:
    return what.message if isinstance(what, TrackerError) else what


ENGLISH = Speaker()
