"""What a user meets when something cannot be done: a code and its parameters, no prose.

The words of a code stand in the catalogue (`tracker/words`) and are said at the edge: the command, a screen.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Message:
    """Something to be said to a person.

    `code` stands in the catalogue, kebab-case. `params` are plain values as they are (numbers, days, moments, names,
    lists of them, other messages); the speaker writes them in its language.
    """

    code: str
    params: Mapping[str, object] = field(default_factory=dict)

    def __hash__(self) -> int:
        """Equal messages have one code; their parameters may be lists."""
        return hash(self.code)

    def __str__(self) -> str:
        """For a log or a debugger, never for a user."""
        return " ".join([self.code, *(f"{name}={value!r}" for name, value in self.params.items())])


def message(code: str, /, **params: object) -> Message:
    """`message("loom-unknown", loom="A-07")`."""
    return Message(code, params)


def as_it_stands(text: str) -> Message:
    """A text that was kept before messages had codes."""
    return Message("as-it-stands", {"text": text})


class TrackerError(Exception):
    """Something the user can mend; the command says it and ends with 1."""

    def __init__(self, code: str, /, **params: object):
        super().__init__(code)
        self.message = Message(code, params)

    def __str__(self) -> str:
        return str(self.message)


class UsageError(TrackerError):
    """The command or call was put wrongly; the command ends with 2."""


class NotTold(TrackerError):
    """The work is done and saved, but what there is to tell could not be written; the command ends with 3."""


class DataError(TrackerError):
    """The stored data cannot carry what was asked: an unknown loom, an article without pick density, no crew."""


class ChangedSince(TrackerError):
    """Somebody changed meanwhile what this would overwrite; nothing was written. `findings` name one value each, who changed it
    and when, and both values."""

    def __init__(self, code: str, findings: tuple[Message, ...], /, **params: object):
        super().__init__(code, first=findings[0], many=len(findings), more=len(findings) - 1, **params)
        self.findings = findings


class NotAllowed(TrackerError):
    """None of the roles of who asks may do this; nothing was written."""


class InputRefused(TrackerError):
    """A file was refused as a whole or in part; nothing was written. `findings` says why, cell by cell."""

    def __init__(self, code: str, findings: tuple = (), /, **params: object):
        super().__init__(code, **params)
        self.findings = findings


class PlanRefused(TrackerError):
    """A plan that the solver-free check rejects, or none within the limits; the message says which limit to lift. `findings`
    name one booking each, where several are refused."""

    def __init__(self, code: str, findings: tuple[Message, ...] = (), /, **params: object):
        super().__init__(code, **params)
        self.findings = findings
