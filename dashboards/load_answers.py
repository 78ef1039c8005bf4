"""The answers that a load asks for, and others that a person wants to give."""

from collections.abc import Callable, Sequence

import streamlit as st

from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.domain.findings import Choice
from tracker.errors import Message, TrackerError
from tracker.services.loading.load_report import LoadReport
from tracker.services.loading.questions import Question, questions, together
from tracker.words.findings import in_words

Answers = dict[str, str]
Try = Callable[[Answers], object]
"""Reads the files with these answers; TrackerError for one that fits nothing."""


def ask(report: LoadReport, answers: Answers, dry_run: Try) -> None:
    """One form with all open questions; what is chosen is added to `answers`."""
    if not report.questions:
        return
    asked = questions(report.findings)
    st.header(say("load-questions-title"))
    with st.form("questions"):
        given = [answer for number, question in enumerate(asked) if (answer := _question(question, number))]
        sent = st.form_submit_button(say("load-use-answers"), type="primary")
    if sent:
        _use(_by_heading(given), answers, dry_run)


def answer_more(report: LoadReport, answers: Answers, dry_run: Try) -> None:
    """A form for any heading or sheet: what a note invites to, or nobody asked for."""
    with st.expander(say("load-answer-other")), st.form("other answer", border=False):
        about_at, answer_at = st.columns(2)
        about = about_at.selectbox(
            say("load-heading-or-sheet"),
            _names(report),
            index=None,
            placeholder=say("load-choose-or-write"),
            accept_new_options=True,
        )  # fmt: skip
        answer = answer_at.text_input(say("load-answer"), placeholder=say("load-answer-such-as"))
        if st.form_submit_button(say("load-use-answer")):
            _use({about: answer.strip()} if about and answer.strip() else {}, answers, dry_run)
    if answers:
        given = [say("load-answer-for", answer=answer, about=about) for about, answer in answers.items()]
        st.caption(literal(say("load-answers-given", answers=", ".join(given))))
        if st.button(say("load-forget-answers")):
            answers.clear()
            st.rerun()


def _names(report: LoadReport) -> list[str]:
    """Every heading and sheet that was read or found something about."""
    sources = [found.source for found in report.tables]
    headings = [column.heading for source in sources for column in source.columns]
    found = [name for finding in report.findings for name in (finding.heading, finding.sheet)]
    return list(dict.fromkeys(name for name in [*headings, *(source.sheet for source in sources), *found] if name))


def _use(given: Answers, answers: Answers, dry_run: Try) -> None:
    if not given:
        st.warning(say("load-no-answer"))
        return
    new = together(answers, given)
    try:
        dry_run(new)
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        return
    answers.update(new)
    st.rerun()


def _question(question: Question, number: int) -> Choice | None:
    """The answer chosen or written; None where there is none yet."""
    finding, said = question.finding, in_words(question.finding, SPEAKER).message
    where = " ".join(filter(None, [finding.file, finding.sheet, finding.cell]))
    label, key = f"**{literal(said)}**  \n{literal(where)}", f"{number} {said}"
    labels = {_label(choice, question): choice for choice in question.choices}
    other = say("load-something-else")
    chosen = st.radio(label, [*labels, other], index=None, key=f"radio {key}", horizontal=True, format_func=literal)
    written = st.text_input(
        say("load-write-answer"),
        key=f"text {key}", placeholder=say("load-only-where"),
    )  # fmt: skip
    if chosen in (None, other):
        return Choice(question.choices[0].about, written.strip()) if written.strip() else None
    return labels[chosen]


def _label(choice: Choice, question: Question) -> str:
    """The answer, with what the value would be then; where several headings may be meant, the heading."""
    several = len({other.about for other in question.choices}) > 1
    meaning = SPEAKER.say(choice.meaning) if isinstance(choice.meaning, Message) else choice.meaning
    return choice.about if several else f"{choice.answer} ({meaning})" if meaning else choice.answer


def _by_heading(given: Sequence[Choice]) -> Answers:
    """Heading → its answers, parted by semicolons where there are several questions about it."""
    found: dict[str, list[str]] = {}
    for choice in given:
        found.setdefault(choice.about, []).append(choice.answer)
    return {about: ";".join(answers) for about, answers in found.items()}
