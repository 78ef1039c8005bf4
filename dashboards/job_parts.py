"""Long work on a screen: started, seen by everybody who looks, stopped.

    job_parts.show(JobKind.PLAN)
    if forms.allowed(May.PLAN):
        with Form("plan") as form:
            form.act(say("…"), lambda: job_parts.begin(JobKind.PLAN, {"publish": True}))

`show` says how far a job is that runs, who began it and how its gap falls, with a button that stops it; of the newest that has
ended, what came of it. It looks anew by itself.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.domain.clock import now
from tracker.domain.jobs import JobKind, JobState, LongJob
from tracker.errors import Message, TrackerError, message
from tracker.services.jobs import desk
from tracker.services.jobs.allowed import needed_for

OFTEN, SELDOM = "1s", "5s"
"""How often a page looks while something runs, and while nothing does."""
NEWS = timedelta(days=1)
"""For so long what came of a job is said on its screen; that it was broken off, until another begins."""
MOST_GAPS = 6
"""Of a gap that falls, as many of its values are said."""
ENDED = {JobState.DONE: st.success, JobState.STOPPED: st.warning, JobState.REFUSED: st.error, JobState.BROKEN: st.error}


def begin(kind: JobKind, arguments: Mapping[str, Any] | None = None) -> Message:
    """Start a job for who looks; what is said of it, as a form says it."""
    desk.start(access.context(), kind, arguments)
    return message("jobs-begun")


def show(*kinds: JobKind, number: int | None = None) -> bool:
    """What runs of these kinds, or the one of that number, else what came of the newest; gives whether something runs."""
    which = ShownJobs(kinds, number)
    runs = [job.number for job in which.of(desk.look(access.context())).jobs if job.runs]
    st.fragment(_shown, run_every=OFTEN if runs else SELDOM)(which, runs)
    return bool(runs)


@dataclass(frozen=True, slots=True)
class ShownJobs:
    kinds: tuple[JobKind, ...]
    number: int | None

    def of(self, found: desk.Jobs) -> desk.Jobs:
        jobs = (job for job in found.jobs if job.kind in self.kinds and self.number in (None, job.number))
        return desk.Jobs(tuple(jobs), found.zone)


def _shown(which: ShownJobs, ran: list[int]) -> None:
    """Once something has begun or ended, the whole screen is shown anew: what came of it stands elsewhere on it."""
    found = which.of(desk.look(access.context()))
    going = [job for job in found.jobs if job.runs]
    if [job.number for job in going] != ran:
        st.rerun()
    for job in going:
        _going(job, found)
    if found.jobs and not going:
        _ended(found.jobs[0], found)


def _going(job: LongJob, found: desk.Jobs) -> None:
    at = SPEAKER.say(job.message or message("job-begins"))
    st.progress(job.fraction, literal(say("jobs-at", kind=job.kind.value, at=at)))
    st.caption(literal(say("jobs-began", who=job.who, at=job.began_at.astimezone(found.zone))))
    if len(job.gaps) > 1:
        st.caption(say("jobs-gaps", gaps=[say("jobs-gap", seconds=s, gap=gap) for s, gap in _some(job.gaps)]))
    if job.stopped_by:
        st.caption(literal(say("jobs-stopping", who=job.stopped_by)))
    elif _may(job) and st.button(say("jobs-stop"), key=f"stop job {job.number}", help=say("jobs-stop-help")):
        _do(lambda: desk.stop(access.context(), job.number))


def _some(gaps: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """Some of them, the first and the last among them."""
    step = max(1, -(-(len(gaps) - 1) // (MOST_GAPS - 1)))
    return [*gaps[:-1:step], gaps[-1]]


def _ended(job: LongJob, found: desk.Jobs) -> None:
    old = job.ended_at is not None and now() - job.ended_at > NEWS
    if job.message is None or (old and job.state is not JobState.BROKEN):
        return
    ENDED[job.state](literal(SPEAKER.line(job.message)))
    ended = job.ended_at.astimezone(found.zone) if job.ended_at else None
    who = {"who": job.who, "began": job.began_at.astimezone(found.zone), "stopped_by": job.stopped_by}
    st.caption(literal(say("jobs-ended", kind=job.kind.value, ended=ended, **who)))
    again = job.state is JobState.BROKEN and job.kind is not JobKind.READING
    if again and _may(job) and st.button(say("jobs-again"), key=f"job {job.number} again"):
        _do(lambda: desk.again(access.context(), job))


def _may(job: LongJob) -> bool:
    return access.may(needed_for(job.kind, access.context().actor))


def _do(what: Any) -> None:
    try:
        what()
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        return
    st.rerun()
