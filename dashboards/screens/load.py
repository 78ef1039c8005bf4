"""Load: what a spreadsheet holds, what is doubtful in it, what it would change; then write it, all or nothing."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

import streamlit as st

from dashboards import access
from dashboards.downloads import download
from dashboards.load_answers import Answers, answer_more, ask
from dashboards.load_parts import load_figures, show_account, show_changes, show_findings, show_tables, within_files
from dashboards.load_reading import read_first
from dashboards.parts import figures, heads, literal, table
from dashboards.speaking import SPEAKER, language, moment, say
from dashboards.tables import Cell
from dashboards.uploads import ENDINGS, Sent, kept
from tracker.domain.tables import TABLES
from tracker.errors import TrackerError
from tracker.services.context import Context
from tracker.services.loading.export import EXPORT, TEMPLATE, export_file, template_file
from tracker.services.loading.load import LoadReport, LoadRequest, code_pages, load
from tracker.services.loading.marking import Marking
from tracker.services.loading.replacing import REPLACEABLE
from tracker.services.people.audit import loads
from tracker.services.people.permissions import May
from tracker.services.screens.next_step import lacking
from tracker.words import Edge, Speaker
from tracker.words.findings import refusal_line


def page() -> None:
    st.title(say("screen-load"))
    st.caption(say("load-about"))
    if done := st.session_state.pop("loaded", None):
        st.success("\n".join(f"- {literal(line)}" for line in done))
        _next()
    sent = st.file_uploader(
        say("load-files"), type=ENDINGS, accept_multiple_files=True, key=f"files {st.session_state.get('loads', 0)}",
    )  # fmt: skip
    if not sent:
        st.info(say("load-drop"))
        _templates()
        _history()
        return
    examine(sent)


def examine(sent: Sequence[Sent]) -> None:
    """What files that a browser sent hold and would change, their questions, and the button that writes them; `loaded` is said by
    the screen once that was done."""
    files = kept(sent)
    answers = _answers_for(files)
    if not read_first(files, answers):
        return
    replaces = _whole_lists(_dry_run(files, answers), files)
    dry_run = partial(_dry_run, files, replaces=replaces)
    report = dry_run(answers)
    if report.refusal and not report.tables:
        st.error(literal(refusal_line(report.refusal, report.quoted, SPEAKER)))
    else:
        figures(load_figures(report))
    if report.tables:
        show_tables(report)
    ask(report, answers, dry_run)
    show_findings(report)
    answer_more(report, answers, dry_run)
    _offer_marked(report, files, answers)
    if report.tables:
        show_account(report)
        show_changes(report)
        _write(report, files, answers, replaces)


def _whole_lists(report: LoadReport, files: Sequence[Path]) -> tuple[str, ...]:
    """The tables that are said to be the whole list, so that rows gone from them have ended."""
    there = list(dict.fromkeys(found.source.table for found in report.tables if found.source.table in REPLACEABLE))
    if not there:
        return ()
    return tuple(st.multiselect(
        say("load-whole"), there, format_func=lambda name: TABLES[name].sheet, key=f"whole {files}",
        placeholder=say("load-whole-none"),
    ))  # fmt: skip


def _answers_for(files: Sequence[Path]) -> Answers:
    """The answers given for these files in this session."""
    return st.session_state.setdefault("answers", {}).setdefault(tuple(map(str, files)), {})


def _dry_run(files: Sequence[Path], answers: Answers, replaces: tuple[str, ...] = ()) -> LoadReport:
    return access.ask(load, tuple(files), LoadRequest(dry_run=True, answers=dict(answers), replaces=replaces))


# ---- the marked copy, and the writing


def _offer_marked(report: LoadReport, files: Sequence[Path], answers: Answers) -> None:
    """Offer a copy of each workbook with its cells marked; of a file that cannot be read there is none."""
    found = within_files(report)
    for file in files:
        if any(finding.file in ("", file.name) for finding in found):
            target = file.with_name(f"{file.stem} marked{'.xlsm' if file.suffix.lower() == '.xlsm' else '.xlsx'}")
            download(
                literal(say("load-marked", file=file.name)), lambda c, f=file, t=target: _copy(c, f, t, report, answers),
                target.name, key=f"marked {file}",
            )  # fmt: skip


def _copy(context: Context, file: Path, target: Path, report: LoadReport, answers: Answers) -> bytes:
    Marking([file], target, SPEAKER).write(report.findings, code_pages(context, answers))
    return target.read_bytes()


def _write(report: LoadReport, files: Sequence[Path], answers: Answers, replaces: tuple[str, ...]) -> None:
    st.header(say("load-write-title"))
    if report.questions:
        st.info(say("load-answer-first"))
        return
    leave_out = bool(report.refusal) and _leave_out(report)
    if st.button(say("load-write"), type="primary", disabled=bool(report.refusal) and not leave_out):
        try:
            done = load(
                access.context(), list(files), LoadRequest(partial=leave_out, answers=answers, replaces=replaces)
            )
        except (
            TrackerError
        ) as error:  # whose sheets they are not, a database that is busy: the files stay to be tried again
            st.error(literal(SPEAKER.line(error)))
            return
        if done.refusal:
            st.error(literal(refusal_line(done.refusal, done.quoted, SPEAKER)))
            return
        st.session_state["loads"] = st.session_state.get("loads", 0) + 1
        access.show_again("loaded", [SPEAKER.line(each) for each in done.messages()])


def _leave_out(report: LoadReport) -> bool:
    st.warning(say("refusals-stand", refusals=len(report.refused)))
    return st.checkbox(say("load-leave-out"))


# ---- before a file is there: what to fill in, what was loaded before


def _templates() -> None:
    st.header(say("load-templates"))
    st.caption(say("load-templates-about"))
    with st.container(horizontal=True):
        spoken = language()
        st.download_button(say("load-template"), lambda: template_file(spoken), file_name=TEMPLATE)
        download(say("load-export"), export_file, EXPORT)


def _history() -> None:
    found = access.ask(loads)
    st.header(say("load-history"))
    if not found.deeds:
        st.caption(say("load-history-none"))
        return
    speaker, mine = Speaker(language(), found.zone, Edge.SCREEN), access.may(May.UNDO)
    columns = [*heads("load-history-number", right=True), *heads("load-history-when", whole=True),
               *heads("load-history-who", "load-history-what", "load-history-undo")]  # fmt: skip
    table(columns, [
        [str(d.act or ""), Cell(moment(d.at, found.zone), (d.at, -i)), d.who, speaker.say(d.what),
         Cell(say("load-undo"), href=f"changes?undo={d.act}") if mine and d.act in found.undoable else ""]
        for i, d in enumerate(found.deeds)
    ])  # fmt: skip


def _next() -> None:
    """What to do after a load: what a plan still lacks, or the plan."""
    lacks = access.ask(lacking)
    st.info(say("load-next-lacks", what=lacks) if lacks else say("load-next-plan"))
