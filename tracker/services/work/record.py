"""Record where a loom stands and what its conversion took."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import BESIDE, CONVERTED, Conversion, Stage, StageChange
from tracker.domain.words import fold
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.moments import began, refuse_ahead
from tracker.services.parts.reservations import follow_stage
from tracker.services.parts.stock_report import parts_listed
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.people.permissions import May
from tracker.services.work.method_then import MethodThen
from tracker.services.work.sign_off import begun_at, refuse_open
from tracker.services.work.stage_moves import (
    RECORDED,
    WITH_REASON,
    Step,
    is_issued,
    odd_move,
    refuse_stop,
    stage_now,
)
from tracker.services.work.taken import Taken, conversion_of
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class RecordedStage:
    change: StageChange
    before: str | None
    """The stage recorded before, None where there was none."""
    conversion: Conversion | None
    freed: Mapping[str, float]
    """Part → what was held for the loom and is free again."""

    @property
    def message(self) -> Message:
        """What was recorded, for a person."""
        return message(
            "stage-recorded", loom=self.change.key, stage=self.change.stage, before=self.before,
            crew=self.conversion.crew if self.conversion else None, freed=parts_listed(self.freed) or None,
        )  # fmt: skip

    def record(self) -> dict[str, Any]:
        key, done = self.change.key, self.conversion
        return {
            "hall": key.hall, "loom": key.loom, "stage": self.change.stage.value, "before": self.before,
            "at": self.change.at.isoformat(), "why": self.change.reason, "freed": dict(self.freed),
            "conversion_recorded": done is not None,
            "conversion": None if done is None else {
                "crew": done.crew, "method_version": done.method_version, "started_at": done.started_at.isoformat(),
                "total_min": done.total_min, "window": done.kind.value if done.kind else None,
                "choices": dict(done.choices), "operation_minutes": dict(done.operation_minutes),
            },
        }  # fmt: skip


@dataclass(frozen=True, slots=True)
class StageTold:
    """What is told with a stage."""

    at: datetime | None = None
    """The moment the stage began, for a conversion its end; None = now."""
    why: str | None = None
    taken: Taken | None = None
    """The conversion behind it."""


NOTHING_MORE = StageTold()


def record_stage(
    context: Context, loom: str, stage: str, hall: str | None = None, told: StageTold = NOTHING_MORE
) -> RecordedStage:
    """Append a stage to a loom's history and the conversion behind it, where one is told.

    Stopped, put off and left out need a reason, as does a move out of order (see `out_of_order`) and a moment before the
    programme; a conversion is recorded with run-in or signed off, once. Nothing is signed off while points are open
    (`sign_off`). What is held for a loom that no longer gets its kit is free again.
    """
    taken, reason = told.taken, (told.why or "").strip() or None
    wanted, moment = _stage(stage, reason, taken), told.at or context.now()
    with context.unit_of_work(needed_for(wanted)) as uow:
        room = read_stockroom(uow)
        zone = room.mill.terms.zone
        refuse_ahead(uow, moment)
        key = find_loom(room.mill, loom, hall)
        before = uow.stages().get(key)
        if before and before.at > moment:
            raise DataError("stage-later-known", loom=key, stage=before.stage, at=before.at.astimezone(zone))
        first = min(moment, (taken and taken.started_at) or moment)
        now, start = stage_now(room, key, before), began(uow, room.mill.terms)
        refuse_stop(key, now, wanted)
        odd = odd_move(room, Step(now, wanted, is_issued(room, key), bool(taken)), start, first)
        if odd and not reason:
            raise DataError("stage-needs-reason", loom=key, stage=wanted, odd=odd)
        if wanted is Stage.SIGNED_OFF:
            refuse_open(uow, room.mill, key, moment)
        change = StageChange(key, wanted, moment, uow.who, reason)
        done = _conversion(uow, room.mill, key, taken, moment) if taken else None
        uow.add_stage(change)
        if done:
            uow.add_conversion(done)
        freed = follow_stage(uow, change)
        uow.commit()
    return RecordedStage(change, before.stage.value if before else None, done, freed)


def needed_for(wanted: Stage) -> May:
    """To put a loom off, leave it out or take it back is the planner's."""
    return May.PLAN if wanted in (*BESIDE, Stage.SCOPED) else May.RECORD


def _stage(stage: str, why: str | None, taken: Taken | None) -> Stage:
    wanted = next((s for s in RECORDED if s.value == fold(stage)), None)
    if wanted is None:
        raise UsageError("stage-unknown", stage=stage, stages=RECORDED)
    if wanted in WITH_REASON and not why:
        raise UsageError("stage-without-reason", stage=wanted)
    if taken and wanted not in CONVERTED:
        raise UsageError("conversion-not-finished", first=CONVERTED[0], second=CONVERTED[1], stage=wanted)
    return wanted


def _conversion(uow: UnitOfWork, mill: Mill, key: LoomKey, taken: Taken, ended_at: datetime) -> Conversion:
    earlier = next((done for done in uow.conversions() if done.key == key), None)
    mill = MethodThen(uow, mill).mill(begun_at(uow.stage_history()).get(key) or taken.started_at)
    return conversion_of(mill, key, taken, ended_at, earlier, uow.last_bookings({key}).get(key))
