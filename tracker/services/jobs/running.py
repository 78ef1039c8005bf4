"""A job under way: its process, how far it is, and the one who writes down what came of it."""

import traceback
from contextlib import suppress
from dataclasses import replace
from threading import Lock, Thread
from time import monotonic, sleep
from typing import Any

from tracker.domain.jobs import JobEnd, JobState, LongJob
from tracker.errors import Message, TrackerError, message
from tracker.services.apart import APART
from tracker.services.context import Context
from tracker.services.jobs.allowed import needed_for
from tracker.services.jobs.work import JobWork, Kept
from tracker.services.jobs.worker import Said, do
from tracker.store.jobs import end_job

TRIES, PAUSE_S = 10, 3
"""To write down what came of it while others hold the database, or it is away for a moment."""
BUSY = "database-silent"


class RunningJob:
    """One process, followed by one thread of the server."""

    def __init__(self, context: Context, job: LongJob, work: JobWork):
        self._context, self._began = context, monotonic()
        self._work: JobWork | None = work
        self._seen = replace(job, message=message("job-begins"))
        self._found: Any = None
        self._sending = Lock()
        self._line, theirs = APART.Pipe()
        self._process = APART.Process(target=do, args=(theirs,), name=f"job {job.number}")
        self._process.start()
        theirs.close()
        self._thread = Thread(target=self._follow, name=f"job {job.number}", daemon=True)
        self._thread.start()

    @property
    def seen(self) -> LongJob:
        """As it is at this moment."""
        return self._seen

    @property
    def pid(self) -> int | None:
        """Of its process."""
        return self._process.pid

    def stop(self, who: str) -> None:
        """Ask for its end with the best so far."""
        if self._seen.stopped_by is None:
            self._seen = replace(self._seen, stopped_by=who)
            Thread(target=self._send, args=(None,), daemon=True).start()  # its work may still be on the way to it

    def wait(self, seconds: float | None = None) -> bool:
        """Until what came of it is written down; False where that takes longer."""
        self._thread.join(seconds)
        return not self._thread.is_alive()

    def kill(self) -> None:
        """End its process at once; it counts as broken off."""
        self._process.kill()

    def _send(self, what: Any) -> None:
        with self._sending, suppress(OSError):
            self._line.send(what)

    def _follow(self) -> None:
        try:
            self._send(self._work)
            self._close(self._heard())
        except Exception:
            traceback.print_exc()
            self._over(JobEnd(JobState.BROKEN, message("job-not-written"), self._context.computers_now()))
        finally:
            self._line.close()
            self._work = self._found = None  # large, and needed no more

    def _heard(self) -> JobEnd | None:
        """Follow it to its end; None where there is something to keep."""
        try:
            while True:
                said, what = self._line.recv()
                match said:
                    case Said.AT:
                        self._at(*what)
                    case Said.FOUND:
                        self._found = what
                        return None
                    case Said.REFUSED:
                        return self._end(JobState.REFUSED, what)
                    case _:
                        return self._end(JobState.BROKEN, message("job-failed", fault=what))
        except (EOFError, OSError):
            self._process.join()
            return self._end(JobState.BROKEN, message("job-process-lost", code=self._process.exitcode or 0))

    def _at(self, what: Message, fraction: float) -> None:
        gaps, gap = self._seen.gaps, what.params.get("gap")
        if isinstance(gap, float) and (not gaps or round(gap, 1) < round(gaps[-1][1], 1)):
            gaps = (*gaps, (monotonic() - self._began, gap))
        self._seen = replace(self._seen, message=what, fraction=fraction, gaps=gaps)

    def _end(self, state: JobState, says: Message, kept: Kept | None = None) -> JobEnd:
        return JobEnd(state, says, self._context.computers_now(), self._seen.stopped_by, kept.result if kept else {})

    def _close(self, end: JobEnd | None) -> None:
        """Write down the end, with what came of it in the same transaction; what is refused there is the end, too."""
        for tried in range(1, TRIES + 1):
            try:
                self._over(self._written(end))
                return
            except TrackerError as error:
                if error.message.code == BUSY and tried < TRIES:
                    sleep(PAUSE_S)
                elif end is not None or error.message.code == BUSY:
                    raise
                else:
                    end = self._end(JobState.REFUSED, error.message)

    def _written(self, end: JobEnd | None) -> JobEnd:
        with self._context.unit_of_work(needed_for(self._seen.kind, self._context.actor)) as uow:
            if end is None:
                assert self._work
                stopped = self._seen.stopped_by is not None
                kept = self._work.keep(uow, self._found, stopped)
                end = self._end(JobState.STOPPED if stopped else JobState.DONE, kept.message, kept)
            end_job(uow.session, self._seen.number, end)
            uow.commit()
        return end

    def _over(self, end: JobEnd) -> None:
        self._seen = replace(
            self._seen, state=end.state, message=end.message, fraction=1.0, stopped_by=end.stopped_by, ended_at=end.at,
            result=end.result,
        )  # fmt: skip
