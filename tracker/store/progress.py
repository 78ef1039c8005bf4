"""Stages and recorded conversions."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.progress import WHOLE, Conversion, Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.store.models import ConversionRow, OperationMinutesRow, StageRow


def read_stages(session: Session) -> dict[LoomKey, StageChange]:
    """Loom → its latest recorded stage."""
    return {change.key: change for change in stage_history(session)}


def stage_history(session: Session) -> list[StageChange]:
    """Every recorded stage, oldest first."""
    rows = session.scalars(select(StageRow).order_by(StageRow.at, StageRow.id))
    return [StageChange(LoomKey(r.hall, r.loom), Stage(r.stage), r.at, r.who, r.reason) for r in rows]


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
    query = select(ConversionRow).order_by(ConversionRow.started_at, ConversionRow.id)
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
    session.add_all(
        OperationMinutesRow(
            conversion_id=row.id,
            operation=operation,
            minutes=minutes,
            worked_out=True if operation in done.worked_out else None,
        )
        for operation, minutes in done.operation_minutes.items()
    )
