"""Findings in words: what was found, what to do about it, the line for a person, the record for a program."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass

from tracker.domain.findings import Choice, Finding, Severity
from tracker.errors import Message
from tracker.words.speaker import ENGLISH, Speaker


@dataclass(frozen=True, slots=True)
class FindingInWords:
    """A finding as a person reads it."""

    code: str
    severity: Severity
    file: str
    sheet: str
    cell: str
    heading: str
    raw: str
    understood: str
    message: str
    """What was found, in one line."""
    hint: str
    """What to do at the reader's edge; `` where there is nothing to do."""

    def line(self) -> str:
        """`doubt: looms.xlsx Looms D1: … Answer …`."""
        where = " ".join(part for part in (self.file, self.sheet, self.cell) if part)
        return ": ".join(part for part in (self.severity, where, f"{self.message} {self.hint}".rstrip()) if part)

    def record(self) -> dict[str, str]:
        """As the `--json` contract writes it, and the database keeps it."""
        return {name: str(value) for name, value in asdict(self).items()}


def in_words(finding: Finding, speaker: Speaker = ENGLISH) -> FindingInWords:
    """The finding in the speaker's language, with the advice of the speaker's edge."""
    said = _message(finding, speaker)
    return FindingInWords(
        finding.code, finding.severity, finding.file, finding.sheet, finding.cell, finding.heading, finding.raw,
        _text(finding.understood, speaker), speaker.say(said), _hint(finding, said, speaker),
    )  # fmt: skip


def refusal_line(refusal: Message | None, quoted: Finding | None, speaker: Speaker = ENGLISH) -> str:
    """Why nothing was written, in one line; `` where the load went through. `quoted`: the one finding that stands against
    the load, which stands in the line whole; of several it says how many and where."""
    if refusal is None:
        return ""
    said = in_words(quoted, speaker) if quoted else None
    what = f": {said.message} {said.hint}".rstrip() if said else ""
    return speaker.line(Message(refusal.code, {**refusal.params, "what": what}))


def _hint(finding: Finding, said: Message, speaker: Speaker) -> str:
    own = speaker.advice(said)
    if own or finding.severity is not Severity.DOUBT or not finding.choices:
        return own
    return speaker.advice(Message("answer-one", said.params))


def _message(finding: Finding, speaker: Speaker) -> Message:
    fields = {name: getattr(finding, name) for name in ("file", "sheet", "cell", "heading", "raw", "understood")}
    params = {**fields, **_choices(finding.choices, speaker), **finding.params}
    return Message(finding.code, {name: _in_one_line(value) for name, value in params.items()})


def _in_one_line(value: object) -> object:
    """Line breaks and control characters of a cell's text as blanks."""
    if not isinstance(value, str) or value.isprintable():
        return value
    return " ".join("".join(sign if sign.isprintable() else " " for sign in value).split())


def _choices(choices: Sequence[Choice], speaker: Speaker) -> dict[str, str | None]:
    """The answers to choose from as they are given at the speaker's edge, and what they say; None where there are none."""

    def joined(texts: Iterable[str]) -> str | None:
        return speaker.say(Message("or")).join(dict.fromkeys(filter(None, texts))) or None

    return {
        "options": joined(speaker.advice(_option(choice)) for choice in choices),
        "answers": joined(choice.answer for choice in choices),
        "subjects": joined(choice.about for choice in choices),
        "meanings": joined(_text(choice.meaning, speaker) for choice in choices),
    }


def _option(choice: Choice) -> Message:
    return Message("answer-option", {"about": choice.about, "answer": choice.answer, "meaning": choice.meaning or None})


def _text(what: str | Message, speaker: Speaker) -> str:
    return speaker.say(what) if isinstance(what, Message) else what
