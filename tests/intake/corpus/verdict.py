"""Load a list, answer what it asks, and say what came of it."""

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from enum import Enum
from pathlib import Path
from typing import Any

from opened import here
from said import refusal_of

from tracker.domain.findings import Finding, Severity
from tracker.domain.tables import TABLES
from tracker.errors import UsageError
from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.load_report import LoadReport

from .compare import Error, errors_of, is_loud, names_one_of
from .draft import Finished, Question
from .files import write
from .mills import FIELDS

TODAY = date(2026, 11, 25)
MOST_TRIES = 24
"""Spellings of the answers that are tried."""


class Outcome(Enum):
    RIGHT = "right"
    ASKED = "asked rightly"
    REFUSED = "refused rightly"
    NEEDLESS = "asked or refused without need"
    UNTOLD = "right, but what must be told is not"
    UNANSWERED = "asked rightly, and no answer is taken"
    UNASKED = "not asked or refused as it must be"
    WRONG = "wrong"
    BROKE = "broke"

    @property
    def good(self) -> bool:
        return self in (Outcome.RIGHT, Outcome.ASKED, Outcome.REFUSED)


@dataclass
class Verdict:
    made: Finished
    outcome: Outcome
    why: str = ""
    errors: list[Error] = field(default_factory=list)
    silent: int = 0
    """Values that are wrong, and looms missing or too many, without a finding, although the load ended as done; one at least
    where it should have asked or refused."""

    def line(self) -> str:
        """What came of the list, for a person."""
        return (
            f"{self.made.name} ({', '.join(self.made.traits)}): {self.outcome.value}, {self.silent} silent: {self.why}"
        )


def judge(made: Finished, folder: Path, db: str) -> Verdict:
    """Load the list (a dry run, into a database without looms) and judge what came of it."""
    folder.mkdir(exist_ok=True)
    paths = [write(file, folder) for file in made.files]
    try:
        return _Trial(made, paths, db).verdict()
    except Exception as error:  # whatever it is, the list broke the reader
        return Verdict(made, Outcome.BROKE, f"{type(error).__name__}: {error}")


@dataclass
class _Trial:
    made: Finished
    paths: Sequence[Path]
    db: str
    findings: list[Finding] = field(default_factory=list)
    """Those of every load."""

    def load(self, partial: bool = False, answers: Mapping[str, str] | None = None) -> LoadReport:
        report = load(
            here(self.db), self.paths, LoadRequest(dry_run=True, partial=partial, answers=answers or {}, today=TODAY)
        )
        self.findings += report.findings
        return report

    def verdict(self) -> Verdict:
        truth, report = self.made.truth, self.load()
        if not report.refusal:
            must = truth.refused or any(question.required for question in truth.questions)
            return self.compared(report, Outcome.UNASKED if must else Outcome.RIGHT)
        if truth.may_stop:
            return self.said(Outcome.ASKED if report.questions else Outcome.REFUSED, refusal_of(report))
        if any(finding.code == "file-refused" for finding in report.findings):
            return self.said(Outcome.NEEDLESS, refusal_of(report))
        return self.after_questions(report) if report.questions else self.after_refusals(report, Outcome.REFUSED, {})

    def after_questions(self, report: LoadReport) -> Verdict:
        """The verdict on a load that asks: are these the questions, and does it load with the answers?"""
        truth = self.made.truth
        asked = [question for question in truth.questions if self.was_asked(question, report)]
        if missing := [question for question in truth.questions if question.required and question not in asked]:
            return self.said(Outcome.UNASKED, f"no question: {missing[0].about}; {refusal_of(report)}")
        if any(not question.answers for question in asked) and (truth.asking_will_do or not truth.refused):
            return self.said(Outcome.ASKED)
        report, answers = self.answered(asked, report)
        if report.questions:
            meant = [tag for question in asked for tag in question.at]
            needless = not all(names_one_of(finding, meant, self.made) for finding in report.questions)
            return self.said(Outcome.NEEDLESS if needless else Outcome.UNANSWERED, refusal_of(report))
        return self.after_refusals(report, Outcome.ASKED, answers)

    def after_refusals(self, report: LoadReport, outcome: Outcome, answers: Mapping[str, str]) -> Verdict:
        """The verdict where no question is open: are these the rows to be refused, and does the rest load?"""
        meant = self.made.truth.refused
        if not all(names_one_of(finding, self.rows_of(meant), self.made) for finding in report.refused):
            return self.said(Outcome.NEEDLESS, refusal_of(report))
        if missing := [tag for tag in meant if not self.is_against(tag)]:
            return self.said(Outcome.UNASKED, f"not refused: {missing[0]}")
        return self.compared(self.load(partial=True, answers=answers) if report.refused else report, outcome)

    def said(self, outcome: Outcome, why: str = "") -> Verdict:
        return Verdict(self.made, outcome, why)

    def is_against(self, tag: Any) -> bool:
        """Does a refusal or a doubt name the row of a cell?"""
        return any(names_one_of(finding, self.rows_of([tag]), self.made) for finding in self.against)

    @property
    def against(self) -> list[Finding]:
        return [f for f in self.findings if f.severity is not Severity.NOTE]

    def rows_of(self, tags: Sequence[Any]) -> list[Any]:
        """All cells of the looms that the tags are about."""
        keys = {tag[0] for tag in tags}
        return [tag for tag in self.made.places if isinstance(tag, tuple) and tag[0] in keys]

    def was_asked(self, question: Question, report: LoadReport) -> bool:
        """A question about a file or a sheet names no cell."""
        about_file = not question.at and any(not f.cell for f in report.questions)
        return about_file or any(names_one_of(f, question.at, self.made) for f in report.questions)

    def answered(self, asked: Sequence[Question], report: LoadReport) -> tuple[LoadReport, dict[str, str]]:
        """Load with the answers, in one spelling after the other until no question stays open."""
        first, given = report, {}
        for mix in itertools.islice(itertools.product(*(q.answers for q in asked)), MOST_TRIES):
            given = self.named(answer for answers in mix for answer in answers)
            try:
                report = self.load(answers=given)
            except UsageError:
                continue
            if not report.questions:
                return report, given
        return first, given

    def named(self, answers: Any) -> dict[str, str]:
        """Heading or address of the cell → answer."""
        given: dict[str, str] = {}
        for what, answer in answers:
            key = what if isinstance(what, str) else self.made.places[what][0][1]
            given[key] = f"{given[key]}; {answer}" if key in given else answer
        return given

    def compared(self, report: LoadReport, outcome: Outcome) -> Verdict:
        """The verdict on what a load that ends as done, or should, would write."""
        errors = errors_of(self.made.truth, looms_of(report))
        if report.refusal:
            return Verdict(self.made, Outcome.NEEDLESS, refusal_of(report), errors)
        silent = sum(not is_loud(error, self.against, self.made) for error in errors)
        told = [any(names_one_of(f, [tag], self.made) for f in self.findings) for tag in self.made.truth.told]
        if outcome is Outcome.UNASKED:
            silent = max(silent, 1)
        elif errors:
            outcome = Outcome.WRONG
        elif not all(told):
            outcome = Outcome.UNTOLD
        why = f"{len(errors)} wrong: " + "; ".join(error.text for error in errors[:3]) if errors else ""
        return Verdict(self.made, outcome, why, errors, silent)


_OF_LOOMS = frozenset(column.field for column in TABLES["looms"].columns)


def looms_of(report: LoadReport) -> list[dict[str, Any]]:
    """The looms that a load would add, as canonical records."""
    added = [change.new for change in report.changes if change.table == "looms" and not change.field]
    return [
        {name: new.get(name) or None for name in FIELDS}
        | {"attributes": {h: v for h, v in new.items() if h not in _OF_LOOMS}}
        for new in added
    ]
