"""Load: what a spreadsheet holds, what is doubtful in it, what it would change; then write it, all or nothing."""

from collections.abc import Sequence
from pathlib import Path

import streamlit as st

from dashboards import access
from dashboards.load_parts import load_figures, show_changes, show_findings, show_tables
from dashboards.parts import figures, literal
from dashboards.uploads import ENDINGS, kept
from tracker.domain.formats import count
from tracker.errors import TrackerError
from tracker.services.load import LoadReport, load
from tracker.services.marking import Marking
from tracker.services.questions import Question, questions

OTHER = "something else"
Answers = dict[str, str]


def page() -> None:
    st.title("Load")
    st.caption("Nothing is written before you have seen what would change. The same file loaded again changes nothing.")
    if done := st.session_state.pop("loaded", None):
        st.success("\n".join(f"- {literal(line)}" for line in done))
    sent = st.file_uploader(
        "Spreadsheets of the mill: looms, warps, readings, articles, parts, crews, the method …",
        type=ENDINGS, accept_multiple_files=True, key=f"files {st.session_state.get('loads', 0)}",
    )  # fmt: skip
    if not sent:
        st.info(
            "Drop the mill's own loom list here: any layout, language and units. An empty workbook with every sheet: "
            "`beamslot template our-mill.xlsx`."
        )
        return
    files = kept(sent)
    answers = _answers_for(files)
    report = _dry_run(files, answers)
    figures(load_figures(report))
    if report.questions:
        _ask(questions(report.findings), files, answers)
    show_findings(report)
    _offer_marked(report, files)
    if report.tables:
        show_tables(report)
        show_changes(report)
    _write(report, files, answers)


def _answers_for(files: Sequence[Path]) -> Answers:
    """The answers given for these files in this session."""
    return st.session_state.setdefault("answers", {}).setdefault(tuple(map(str, files)), {})


def _dry_run(files: Sequence[Path], answers: Answers) -> LoadReport:
    return access.ask(load, tuple(files), dry_run=True, answers=dict(answers))


# ---- questions


def _ask(asked: Sequence[Question], files: Sequence[Path], answers: Answers) -> None:
    st.header("Questions")
    with st.form("questions"):
        given = [_question(question, number) for number, question in enumerate(asked)]
        if not st.form_submit_button("Use these answers", type="primary"):
            return
    new = answers | _by_heading(asked, given)
    try:
        _dry_run(files, new)
    except TrackerError as error:
        st.error(literal(error))
        return
    answers.update(new)
    st.rerun()


def _question(question: Question, number: int) -> str | None:
    """The answer chosen or written; None where there is none yet."""
    finding, key = question.finding, f"{number} {question.finding.message}"
    where = " ".join(filter(None, [finding.file, finding.sheet, finding.cell]))
    label = f"**{literal(finding.message)}**  \n{literal(where)}"
    chosen = st.radio(label, [*question.answers, OTHER], index=None, key=f"radio {key}", horizontal=True)
    written = st.text_input(
        "Something else: a unit, an order, the field that the column is, or *ignore*",
        key=f"text {key}", placeholder="only where none of the answers above fits",
    )  # fmt: skip
    return written.strip() or None if chosen in (None, OTHER) else chosen


def _by_heading(asked: Sequence[Question], given: Sequence[str | None]) -> Answers:
    """Heading → its answers, parted by semicolons where there are several questions about it."""
    found: dict[str, list[str]] = {}
    for question, answer in zip(asked, given, strict=True):
        if answer:
            found.setdefault(question.about, []).append(answer)
    return {about: ";".join(answers) for about, answers in found.items()}


# ---- the marked copy, and the writing


def _offer_marked(report: LoadReport, files: Sequence[Path]) -> None:
    """Offer a copy of each workbook with its cells marked."""
    for file in files:
        if any(finding.file in ("", file.name) for finding in report.findings):
            target = file.with_name(f"{file.stem} marked{'.xlsm' if file.suffix.lower() == '.xlsm' else '.xlsx'}")
            st.download_button(
                f"Copy of {file.name} with these cells marked", lambda f=file, t=target: _copy(f, t, report),
                file_name=target.name, key=f"marked {file}",
            )  # fmt: skip


def _copy(file: Path, target: Path, report: LoadReport) -> bytes:
    Marking([file], target).write(report.findings)
    return target.read_bytes()


def _write(report: LoadReport, files: Sequence[Path], answers: Answers) -> None:
    st.header("Write it")
    if report.questions:
        st.info("Answer the questions above first; nothing is written before.")
        return
    if report.refusal and not report.tables:
        st.error(literal(report.refusal))
        return
    partial = bool(report.refusal) and _leave_out(report)
    if st.button("Write to the database", type="primary", disabled=bool(report.refusal) and not partial):
        done = load(access.database(), list(files), partial=partial, answers=answers)
        if done.refusal:
            st.error(literal(done.refusal))
            return
        st.session_state["loads"] = st.session_state.get("loads", 0) + 1
        access.show_again("loaded", done.lines())


def _leave_out(report: LoadReport) -> bool:
    st.warning(
        f"{count(len(report.refused), 'refusal')} stand against it. Mend the cells and give the file again, or leave these "
        "rows out."
    )
    return st.checkbox("leave the refused rows out and load the rest")
