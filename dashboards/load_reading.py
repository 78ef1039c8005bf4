"""Long lists are read by a job, so that the page may be left meanwhile and others need not wait."""

from collections.abc import Mapping, Sequence
from pathlib import Path

import streamlit as st

from dashboards import access, job_parts
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.domain.jobs import JobKind
from tracker.errors import TrackerError
from tracker.services.jobs import desk
from tracker.services.loading.readings import is_read

LONG_BYTES = 400_000
"""Files of so many in all are long: a list of some 1,500 looms, which takes seconds."""


def read_first(files: Sequence[Path], answers: Mapping[str, str]) -> bool:
    """Whether the files can be looked at; else the screen says how far a job is that reads them."""
    if sum(file.stat().st_size for file in files) < LONG_BYTES or is_read(access.context(), files, answers):
        return True
    begun = st.session_state.setdefault("readings", {})
    asked = tuple(map(str, files)), tuple(sorted(answers.items()))
    if asked not in begun and (number := _begun(files, answers)):
        begun[asked] = number
    runs = job_parts.show(JobKind.READING, number=begun.get(asked))
    if not runs and st.button(say("load-read-again")):
        begun.pop(asked, None)
        st.rerun()
    return False


def _begun(files: Sequence[Path], answers: Mapping[str, str]) -> int | None:
    try:
        return desk.start(access.context(), JobKind.READING, {"files": [*map(str, files)], "answers": dict(answers)})
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        return None
