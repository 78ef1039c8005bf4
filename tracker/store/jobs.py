"""Keep that jobs began and ended, and read them back."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain import messages
from tracker.domain.jobs import JobEnd, JobKind, JobState, LongJob
from tracker.store.models import JobEndRow, JobRow


def add_job(
    session: Session, kind: JobKind, arguments: Mapping[str, Any], who: str, at: datetime, server: str
) -> LongJob:
    row = JobRow(kind=kind.value, arguments=dict(arguments), who=who, began_at=at, server=server)
    session.add(row)
    session.flush()
    return _job(row, None)


def end_job(session: Session, number: int, end: JobEnd) -> None:
    session.add(JobEndRow(
        job_id=number, state=end.state.value, message=messages.kept(end.message), at=end.at, stopped_by=end.stopped_by,
        result=dict(end.result),
    ))  # fmt: skip
    session.flush()


def open_jobs(session: Session) -> list[LongJob]:
    """Those that have not ended, oldest first."""
    query = select(JobRow).outerjoin(JobEndRow, JobEndRow.job_id == JobRow.id).where(JobEndRow.id.is_(None))
    return [_job(row, None) for row in session.scalars(query.order_by(JobRow.id))]


def last_jobs(session: Session, most: int) -> list[LongJob]:
    """The newest first."""
    query = select(JobRow, JobEndRow).outerjoin(JobEndRow, JobEndRow.job_id == JobRow.id)
    return [_job(row, end) for row, end in session.execute(query.order_by(JobRow.id.desc()).limit(most))]


def _job(row: JobRow, end: JobEndRow | None) -> LongJob:
    began = row.id, JobKind(row.kind), row.arguments, row.who, row.began_at, row.server
    if end is None:
        return LongJob(*began)
    return LongJob(
        *began, JobState(end.state), messages.read(end.message), 1.0, stopped_by=end.stopped_by, ended_at=end.at,
        result=end.result,
    )  # fmt: skip
