"""Record where a loom stands and what its conversion took."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.clock import now
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import Conversion, Stage, StageChange
from tracker.domain.words import fold
from tracker.errors import DataError, UsageError
from tracker.store import open_store
from tracker.store.unit_of_work import user

RECORDED = (Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF, Stage.PUT_OFF, Stage.LEFT_OUT, Stage.SCOPED)
"""Stages that are recorded; `scoped` takes a loom back among those to be planned."""
NEEDS_REASON = (Stage.PUT_OFF, Stage.LEFT_OUT)


@dataclass(frozen=True, slots=True)
class Recorded:
    change: StageChange
    before: str | None
    """The stage recorded before, None where there was none."""
    conversion: Conversion | None

    @property
    def says(self) -> str:
        """One line for a person."""
        was = f" (was {self.before})" if self.before else ""
        tail = f"; its conversion by {self.conversion.crew} is recorded" if self.conversion else ""
        return f"Loom {self.change.key} is {self.change.stage.value}{was}{tail}."

    def record(self) -> dict[str, Any]:
        key = self.change.key
        return {"hall": key.hall, "loom": key.loom, "stage": self.change.stage.value, "before": self.before,
                "at": self.change.at.isoformat(), "conversion_recorded": self.conversion is not None}  # fmt: skip


def find_loom(mill: Mill, loom: str, hall: str | None = None) -> LoomKey:
    """The loom of that number; DataError where there is none, or several and no hall says which."""
    found = [key for key in mill.looms if key.loom == loom and (hall is None or fold(key.hall) == fold(hall))]
    if len(found) == 1:
        return found[0]
    if not found:
        raise DataError(
            f"there is no loom {loom}" + (f" in {hall}" if hall else "") + "; `beamslot scope` lists the looms"
        )
    raise DataError(f"loom {loom} stands in {', '.join(key.hall for key in found)}; say which with --hall")


def record_stage(
    db: str,
    loom: str,
    stage: str,
    hall: str | None = None,
    at: datetime | None = None,
    reason: str | None = None,
    crew: str | None = None,
    started_at: datetime | None = None,
    operation_minutes: Mapping[str, float] | None = None,
    who: str | None = None,
) -> Recorded:
    """Append a stage to a loom's history and, with `crew`, the conversion behind it.

    `at` is the moment the stage began (default now), for a conversion its end. Put off and left out need a reason.
    """
    wanted = next((s for s in RECORDED if s.value == fold(stage)), None)
    if wanted is None:
        raise UsageError(f"stage {stage!r} is not one of: {', '.join(s.value for s in RECORDED)}")
    if wanted in NEEDS_REASON and not reason:
        raise UsageError(f"a loom that is {wanted.value} needs a reason: --reason TEXT")
    moment = at or now()
    if moment > now():
        raise UsageError(f"{moment:%Y-%m-%d %H:%M} UTC is still to come; record what has happened")
    with open_store(db).unit_of_work() as uow:
        mill = uow.mill()
        key = find_loom(mill, loom, hall)
        before = uow.stages().get(key)
        if before and before.at > moment:
            raise DataError(
                f"loom {key} is {before.stage.value} since {before.at:%Y-%m-%d %H:%M} UTC; record a later moment"
            )
        change = StageChange(key, wanted, moment, who or user(), reason)
        uow.add_stage(change)
        done = _conversion(mill, key, crew, started_at, moment, operation_minutes or {}) if crew else None
        if done:
            uow.add_conversion(done)
        uow.commit()
    return Recorded(change, before.stage.value if before else None, done)


def _conversion(
    mill: Mill, key: LoomKey, crew: str, started_at: datetime | None, ended_at: datetime, minutes: Mapping[str, float]
) -> Conversion:
    if crew not in {c.crew for c in mill.crews}:
        raise DataError(f"there is no crew {crew}; the crews are {', '.join(sorted({c.crew for c in mill.crews}))}")
    known = {operation.operation for operation in mill.method.operations}
    for operation, taken in minutes.items():
        if operation not in known:
            raise DataError(f"operation {operation!r} is not in the method in force")
        if taken < 0:
            raise DataError(f"operation {operation!r}: {taken:g} minutes is below 0")
    if started_at is None or started_at > ended_at:
        raise UsageError("a conversion needs its start, before its end: --started 2027-01-05T06:00")
    return Conversion(key, mill.looms[key].machine_type, crew, mill.method.version, started_at, ended_at, dict(minutes),
                      sum(minutes.values()) or None)  # fmt: skip
