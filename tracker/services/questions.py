"""The questions that a load leaves open, with the answers that may be chosen."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from tracker.domain.findings import Finding, Severity

AS_WRITTEN = "as written"
OFFERED = re.compile(r'"([^"]+)=([^"=]+)"')
"""An answer as hints write it: `"Reed width=inch"`."""


@dataclass(frozen=True, slots=True)
class Question:
    """One doubt about a heading or a sheet."""

    finding: Finding
    about: str
    """What the answer must name: the heading or the sheet."""
    answers: tuple[str, ...]
    """What may be chosen, at least `as written`; another answer may be written where none fits."""


def questions(findings: Iterable[Finding]) -> tuple[Question, ...]:
    """The open questions among the findings, in their order."""
    return tuple(_question(finding) for finding in findings if finding.severity is Severity.DOUBT)


def _question(finding: Finding) -> Question:
    offered = OFFERED.findall(finding.hint)
    about = offered[0][0] if offered else finding.heading or finding.sheet
    answers = tuple(dict.fromkeys(answer for name, answer in offered if name == about))
    return Question(finding, about, answers or (AS_WRITTEN,))
