"""Doubts that the mill has answered."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from tracker.domain.findings import Finding, Severity
from tracker.domain.words import fold
from tracker.scope.review.subject import AS_WRITTEN


def settle(findings: Iterable[Finding], answers: Mapping[str, str]) -> tuple[Finding, ...]:
    """The findings, with each doubt that is answered `as written` under its heading turned into a note."""
    given = {fold(heading): fold(answer) for heading, answer in answers.items()}
    return tuple(_settled(finding) if _answered(finding, given) else finding for finding in findings)


def answered(findings: Iterable[Finding]) -> dict[str, str]:
    """Heading → answer of the findings that `settle` settled."""
    return {finding.heading: AS_WRITTEN for finding in findings if finding.understood == AS_WRITTEN}


def _answered(finding: Finding, given: Mapping[str, str]) -> bool:
    return finding.severity is Severity.DOUBT and given.get(fold(finding.heading)) == AS_WRITTEN


def _settled(finding: Finding) -> Finding:
    return replace(finding, severity=Severity.NOTE, understood=AS_WRITTEN, choices=())
