"""Stages and recorded conversions."""

from collections import defaultdict
from datetime import datetime

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.progress import WHOLE, Conversion, Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.store.models import ConversionRow, OperationMinutesRow, StageRow, WorkDoneRow
from tracker.store.withdrawals import standing_rows, stands


def read_stages(session: Session) -> dict[LoomKey, StageChange]:
    """Loom → its latest recorded stage."""
    return {change.key: change for change in stage_history(session)}


def stage_history(session: Session) -> list[StageChange]:
    """Every recorded stage, oldest first."""
    rows = session.scalars(select(StageRow).where(stands(StageRow)).order_by(StageRow.at, StageRow.id))
    return [StageChange(LoomKey(r.hall, r.loom), Stage(r.stage), r.at, r.who, r.reason) for r in rows]


def read_left_done(session: Session) -> dict[LoomKey, frozenset[str]]:
    """Loom → operations, folded, that a stopped conversion left done: those of its card, or of no card that has another end.
    A loom that was taken back (scoped) since begins anew."""
    told = StageRow.stage.in_((Stage.STOPPED.value, Stage.SCOPED.value))
    query = select(StageRow).where(told, stands(StageRow))
    back: dict[LoomKey, datetime] = {}
    stopped: set[LoomKey] = set()
    for row in session.scalars(query.order_by(StageRow.at, StageRow.id)):
        key = LoomKey(row.hall, row.loom)
        if row.stage == Stage.SCOPED.value:
            back[key] = row.at
            stopped.discard(key)
        else:
            stopped.add(key)
    return {key: done for key in stopped if (done := _left_done(session, key, back.get(key)))}


def _left_done(session: Session, key: LoomKey, back: datetime | None) -> frozenset[str]:
    stages: dict[str | None, set[str]] = defaultdict(set)
    done: dict[tuple[str | None, str], bool] = {}
    for row in standing_rows(session, WorkDoneRow, key):
        if row.operation:
            done[row.card, fold(row.operation)] = bool(row.done_by or row.minutes or row.torque_nm)
        elif row.stage and (back is None or (row.ended_at or row.started_at or back) > back):
            stages[row.card].add(row.stage)
    counts = {card for card, of in stages.items() if Stage.STOPPED.value in of}
    if back is None:
        counts |= {card for card, _ in done if not stages[card]}
    return frozenset(operation for (card, operation), is_done in done.items() if is_done and card in counts)


def add_stage(session: Session, change: StageChange) -> None:
    session.add(
        StageRow(hall=change.key.hall, loom=change.key.loom, stage=change.stage.value, at=change.at, who=change.who,
                 reason=change.reason)
    )  # fmt: skip


def read_conversions(session: Session) -> list[Conversion]:
    """Every recorded conversion by start; of those of a loom that began at one moment the last, which corrects the others."""
    minutes: dict[int, dict[str, float]] = {}
    marks: dict[int, set[str]] = {}
    for row in session.scalars(select(OperationMinutesRow)):
        minutes.setdefault(row.conversion_id, {})[row.operation] = row.minutes
        if row.worked_out:
            marks.setdefault(row.conversion_id, set()).add(row.operation)
    query = select(ConversionRow).where(stands(ConversionRow)).order_by(ConversionRow.started_at, ConversionRow.id)
    rows = {(row.hall, row.loom, row.started_at): row for row in session.scalars(query)}
    return [
        Conversion(LoomKey(r.hall, r.loom), r.machine_type, r.crew, r.method_version, r.started_at, r.ended_at,
                   minutes.get(r.id, {}), r.total_min, WindowKind(r.kind) if r.kind else None,
                   tuple((choice, alternative) for choice, alternative in r.choices),
                   frozenset(marks.get(r.id, set()) | ({WHOLE} if r.worked_out else set())))
        for r in rows.values()
    ]  # fmt: skip


def add_conversion(session: Session, done: Conversion) -> None:
    row = ConversionRow(
        hall=done.key.hall, loom=done.key.loom, machine_type=done.machine_type, crew=done.crew,
        method_version=done.method_version, started_at=done.started_at, ended_at=done.ended_at,
        total_min=done.total_min, kind=done.kind.value if done.kind else None,
        choices=[list(choice) for choice in done.choices], worked_out=True if WHOLE in done.worked_out else None,
    )  # fmt: skip
    session.add(row)
    session.flush()
    minutes = [
        {"conversion_id": row.id, "operation": operation, "minutes": taken,
         "worked_out": True if operation in done.worked_out else None}
        for operation, taken in done.operation_minutes.items()
    ]  # fmt: skip
    if minutes:
        session.execute(insert(OperationMinutesRow), minutes)
