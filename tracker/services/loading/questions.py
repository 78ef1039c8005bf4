"""The questions that a load leaves open, with the answers that may be chosen."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tracker.domain.findings import Choice, Finding, Severity

AS_WRITTEN = "as written"


@dataclass(frozen=True, slots=True)
class Question:
    """One doubt about a heading or a sheet."""

    finding: Finding
    choices: tuple[Choice, ...]
    """At least `as written`; another answer about the same may be written where none fits."""


def questions(findings: Iterable[Finding]) -> tuple[Question, ...]:
    """The open questions among the findings, in their order."""
    return tuple(_question(finding) for finding in findings if finding.severity is Severity.DOUBT)


def _question(finding: Finding) -> Question:
    return Question(finding, finding.choices or (Choice(finding.heading or finding.sheet, AS_WRITTEN),))


def together(before: Mapping[str, str], more: Mapping[str, str]) -> dict[str, str]:
    """Answers by heading, several parted by semicolons. The later ones stand first, since of two answers to the same
    question the first is taken; those to other questions about the heading stay."""
    return {**before, **{about: _first(answer, before.get(about, "")) for about, answer in more.items()}}


def _first(new: str, old: str) -> str:
    return ";".join(dict.fromkeys(part.strip() for part in [*new.split(";"), *old.split(";")] if part.strip()))
