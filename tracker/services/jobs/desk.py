"""Start jobs, look at them, stop them: for every screen, and for whoever looks.

`start(context, kind, arguments)` gives the number of a new job and returns at once. `arguments` by kind, all of them may be
left out but `text`:

| kind | arguments |
|---|---|
| `plan` | `plan_arguments(PlanRequest(…), time_limit_s)` of `kinds` writes them |
| `scenario` | `text` (a scenario file, TOML, with its `name`), `time_limit_s`, `as_of` |
| `rehearsal` | `runs`, `policies` [NAME …], `seed`, `off` [SOURCE …], `worries`, `until_sure`, `jobs`, `as_of` |
| `reading` | `files` [PATH …], `answers`: what a load of them need not read once more then |

They are what `PlanRequest` and `RehearsalRequest` hold, in JSON's types; the result is that of the command. `look(context)`
gives the jobs, the newest first, each as it is at this moment; `stop(context, number)` asks for the end with the best so
far. `dashboards/job_parts.py` shows them on a screen.
"""

import atexit
import os
import socket
from dataclasses import dataclass, replace
from time import monotonic
from zoneinfo import ZoneInfo

import psutil

from tracker.domain.jobs import JobEnd, JobKind, JobState, LongJob
from tracker.errors import DataError, TrackerError, message
from tracker.services.context import Context
from tracker.services.jobs.allowed import needed_for
from tracker.services.jobs.running import RunningJob
from tracker.services.jobs.work import Arguments
from tracker.store import UnitOfWork
from tracker.store.jobs import add_job, end_job, last_jobs, open_jobs
from tracker.store.unit_of_work import user

SHOWN = 20
"""The newest jobs that are looked at."""
BY_SEVERAL = {JobKind.READING}
"""Kinds of which each person may have one; of the others there is one at a time in a mill."""
_RUNNING: dict[tuple[str, int], RunningJob | None] = {}
"""Those of this process, by database and number; None while one begins."""


@dataclass(frozen=True, slots=True)
class Jobs:
    jobs: tuple[LongJob, ...]
    """The newest first."""
    zone: ZoneInfo
    """Of the mill."""


def start(context: Context, kind: JobKind | str, arguments: Arguments | None = None) -> int:
    """Begin a job; gives its number. NotAllowed for who may not plan, DataError while another of its kind runs, and whatever the
    arguments are refused for at once."""
    from tracker.services.jobs.kinds import KINDS  # brings the planner, for which a server that starts need not wait

    kind, given = JobKind(kind), dict(arguments or {})
    context.require(needed_for(kind, context.actor))
    work = KINDS[kind](context, **given)
    _forget()
    with context.unit_of_work(needed_for(kind, context.actor)) as uow:
        _break_off(uow, context)
        _refuse_second(uow, kind)
        job = add_job(uow.session, kind, given, uow.who, context.computers_now(), _this_process())
        _RUNNING[context.database, job.number] = None
        uow.commit()
    try:
        _RUNNING[context.database, job.number] = RunningJob(context, job, work)
    except OSError as error:
        del _RUNNING[context.database, job.number]
        raise TrackerError("job-not-begun", why=error.strerror or str(error)) from error
    return job.number


def look(context: Context) -> Jobs:
    """The newest jobs, each as it is at this moment."""
    with context.reading() as uow:
        found, zone = last_jobs(uow.session, SHOWN), uow.zone
        older = [job for job in open_jobs(uow.session) if job.number < found[-1].number] if found else []
    found += reversed(older)  # whatever runs is seen, however many were begun since
    return Jobs(tuple(_as_it_is(context, job) for job in found), zone)


def refuse_second(context: Context, kind: JobKind) -> None:
    """DataError while one of a kind runs of which a mill has one at a time: for who writes before a job is begun."""
    found = look(context)
    for job in found.jobs:
        if job.kind is kind and job.runs:
            raise _runs_already(job, found.zone)


def stop(context: Context, number: int) -> None:
    """Ask for the end of a job with the best so far; nothing where it has ended. One that another server looked after, which is
    not there any more, is broken off. DataError while such a server of this machine runs."""
    context.require(needed_for(JobKind.READING, context.actor))  # who may do none of the kinds
    with context.reading() as uow:
        job = next((job for job in open_jobs(uow.session) if job.number == number), None)
    if job is None:
        return
    context.require(needed_for(job.kind, context.actor))
    if running := _RUNNING.get((context.database, number)):
        running.stop(context.actor.name)
        return
    if _lives(job, context) and not _is_elsewhere(job.server):
        raise DataError("job-of-another-server", process=job.server.split("/")[1])
    with context.unit_of_work(needed_for(job.kind, context.actor)) as uow:
        _break_off(uow, context, number)
        uow.commit()


def again(context: Context, job: LongJob) -> int:
    """Start a job once more, as it was started."""
    return start(context, job.kind, job.arguments)


def wait(context: Context, number: int, seconds: float | None = None) -> bool:
    """Until a job of this process has ended; False where that takes longer."""
    running = _RUNNING.get((context.database, number))
    return running is None or running.wait(seconds)


def break_off_dead(context: Context) -> None:
    """When a server starts: jobs whose server is no more are said to be broken off."""
    with context.reading() as uow:
        dead = [job for job in open_jobs(uow.session) if not _lives(job, context)]
    if dead and not context.store.place.read_only:
        with context.noting() as uow:
            _break_off(uow, context)
            uow.commit()


def end_all(seconds: float = 5.0) -> None:
    """When a server ends: every job is asked for its end by the user who ran it, and what is not kept by then is broken off."""
    going = [running for running in list(_RUNNING.values()) if running and running.seen.runs]
    for running in going:
        running.stop(user())
    end = monotonic() + seconds
    for running in going:
        if not running.wait(max(0.0, end - monotonic())):
            running.kill()
            running.wait(seconds)


def _as_it_is(context: Context, job: LongJob) -> LongJob:
    if not job.runs:
        return job
    if (context.database, job.number) in _RUNNING:
        running = _RUNNING[context.database, job.number]
        return running.seen if running else replace(job, message=message("job-begins"))
    if _lives(job, context):
        return replace(job, message=message("job-elsewhere"))
    return replace(job, state=JobState.BROKEN, message=message("job-server-lost"))


def _refuse_second(uow: UnitOfWork, kind: JobKind) -> None:
    """DataError while one of the kind runs."""
    for job in open_jobs(uow.session):
        if job.kind is kind and (kind not in BY_SEVERAL or job.who == uow.who):
            raise _runs_already(job, uow.zone)


def _runs_already(job: LongJob, zone: ZoneInfo) -> DataError:
    return DataError("job-runs-already", kind=job.kind.value, who=job.who, since=job.began_at.astimezone(zone))


def _break_off(uow: UnitOfWork, context: Context, number: int | None = None) -> None:
    """Write down of jobs whose server is no more, and of the one with that number, that they are broken off."""
    for job in open_jobs(uow.session):
        if job.number == number or not _lives(job, context):
            end_job(
                uow.session, job.number, JobEnd(JobState.BROKEN, message("job-server-lost"), context.computers_now())
            )


def _lives(job: LongJob, context: Context) -> bool:
    """Whether the server that looks after a job may still be there. An SQLite file is worked on by one machine at a time, so that
    the server of another is no more, as after a restore; of PostgreSQL's nobody can tell."""
    if job.server == _this_process():
        key = context.database, job.number
        running = _RUNNING.get(key)
        return running.seen.runs if running else key in _RUNNING
    if _is_elsewhere(job.server):
        return context.store.place.file is None
    _, number, began = job.server.split("/")
    try:
        return _began(int(number)) == began
    except psutil.Error:
        return False


def _forget() -> None:
    """Those that have ended."""
    for key, running in list(_RUNNING.items()):
        if running and not running.seen.runs:
            del _RUNNING[key]


def _is_elsewhere(server: str) -> bool:
    return not server.startswith(f"{socket.gethostname()}/")


def _this_process() -> str:
    return f"{socket.gethostname()}/{os.getpid()}/{_began(os.getpid())}"


def _began(process: int) -> str:
    """By which a process is told from a later one of the same number."""
    return f"{psutil.Process(process).create_time():.2f}"


atexit.register(end_all)
