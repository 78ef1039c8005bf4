"""Record where a loom stands and what its conversion took."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from math import inf
from typing import Any

from tracker.domain.clock import now
from tracker.domain.formats import moment as shown_moment
from tracker.domain.formats import number
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Conversion, Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices
from tracker.errors import DataError, UsageError
from tracker.services.looms import find_loom
from tracker.store import UnitOfWork, open_store
from tracker.store.unit_of_work import user

RECORDED = (Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF, Stage.PUT_OFF, Stage.LEFT_OUT, Stage.SCOPED)
"""Stages that are recorded; `scoped` takes a loom back among those to be planned."""
NEEDS_REASON = (Stage.PUT_OFF, Stage.LEFT_OUT)
CONVERTED = (Stage.RUN_IN, Stage.SIGNED_OFF)
"""Stages that a finished conversion is recorded with."""


@dataclass(frozen=True, slots=True)
class Taken:
    """What a finished conversion took, as the floor tells it."""

    crew: str
    started_at: datetime | None = None
    operation_minutes: Mapping[str, float] = field(default_factory=dict)
    total_min: float | None = None
    """Elapsed minutes on the loom, for the whole; None = not taken."""
    kind: WindowKind | None = None
    """None = as booked; likewise a choice that is not named."""
    choices: Mapping[str, str] = field(default_factory=dict)


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
        key, done = self.change.key, self.conversion
        return {
            "hall": key.hall, "loom": key.loom, "stage": self.change.stage.value, "before": self.before,
            "at": self.change.at.isoformat(), "conversion_recorded": done is not None,
            "conversion": None if done is None else {
                "crew": done.crew, "method_version": done.method_version, "started_at": done.started_at.isoformat(),
                "total_min": done.total_min, "window": done.kind.value if done.kind else None,
                "choices": dict(done.choices), "operation_minutes": dict(done.operation_minutes),
            },
        }  # fmt: skip


def record_stage(
    db: str,
    loom: str,
    stage: str,
    hall: str | None = None,
    at: datetime | None = None,
    reason: str | None = None,
    taken: Taken | None = None,
    who: str | None = None,
) -> Recorded:
    """Append a stage to a loom's history and, with `taken`, the conversion behind it.

    `at` is the moment the stage began (default now), for a conversion its end. Put off and left out need a reason; a
    conversion is recorded with run-in or signed off, once.
    """
    wanted = _stage(stage, reason, taken)
    moment = at or now()
    with open_store(db).unit_of_work() as uow:
        mill = uow.mill()
        if moment > now():
            raise UsageError(f"{shown_moment(moment, mill.terms.zone)} is still to come; record what has happened")
        key = find_loom(mill, loom, hall)
        before = uow.stages().get(key)
        if before and before.at > moment:
            since = shown_moment(before.at, mill.terms.zone)
            raise DataError(f"loom {key} is {before.stage.value} since {since}; record a later moment")
        change = StageChange(key, wanted, moment, who or user(), reason)
        done = _conversion(uow, mill, key, taken, moment) if taken else None
        uow.add_stage(change)
        if done:
            uow.add_conversion(done)
        uow.commit()
    return Recorded(change, before.stage.value if before else None, done)


def _stage(stage: str, reason: str | None, taken: Taken | None) -> Stage:
    wanted = next((s for s in RECORDED if s.value == fold(stage)), None)
    if wanted is None:
        raise UsageError(f"stage {stage!r} is not one of: {', '.join(s.value for s in RECORDED)}")
    if wanted in NEEDS_REASON and not (reason or "").strip():
        raise UsageError(f"a loom that is {wanted.value} needs a reason: --reason TEXT")
    if taken and wanted not in CONVERTED:
        stages = " or ".join(s.value for s in CONVERTED)
        raise UsageError(f"a finished conversion is recorded with {stages}, not with {wanted.value}")
    return wanted


def _conversion(uow: UnitOfWork, mill: Mill, key: LoomKey, taken: Taken, ended_at: datetime) -> Conversion:
    crews = {crew.crew for crew in mill.crews}
    if taken.crew not in crews:
        raise DataError(f"there is no crew {taken.crew}; the crews are {', '.join(sorted(crews))}")
    if taken.started_at is None or taken.started_at > ended_at:
        raise UsageError("a conversion needs its start, before its end: --started 2027-01-05T06:00")
    if earlier := _recorded_already(uow, key):
        started = shown_moment(earlier.started_at, mill.terms.zone)
        raise DataError(f"the conversion of loom {key} is recorded already: by {earlier.crew}, begun {started}")
    plan = uow.published_plan()
    booking = next((b for b in plan.bookings if b.key == key), None) if plan else None
    return Conversion(
        key,
        mill.looms[key].machine_type,
        taken.crew,
        mill.method.version,
        taken.started_at,
        ended_at,
        _operation_minutes(mill, taken.operation_minutes),
        _total(taken, (ended_at - taken.started_at).total_seconds() / 60),
        taken.kind or (booking.kind if booking else None),
        _choices(mill, taken.choices, booking),
    )


def _recorded_already(uow: UnitOfWork, key: LoomKey) -> Conversion | None:
    """The loom's conversion, unless the loom was taken back among those to be planned since."""
    taken_back = [change.at for change in uow.stage_history() if change.key == key and change.stage is Stage.SCOPED]
    done = [one for one in uow.conversions() if one.key == key]
    standing = (one for one in done if not taken_back or (one.ended_at or one.started_at) > taken_back[-1])
    return next(standing, None)


def _operation_minutes(mill: Mill, given: Mapping[str, float]) -> dict[str, float]:
    known = {fold(operation.operation): operation.operation for operation in mill.method.operations}
    found = {}
    for operation, minutes in given.items():
        if fold(operation) not in known:
            raise DataError(f"operation {operation!r} is not in the method in force; `beamslot scope LOOM` lists them")
        if not 0 <= minutes < inf:
            raise UsageError(f"operation {operation!r}: {minutes:g} minutes is no time it can take")
        found[known[fold(operation)]] = minutes
    return found


def _total(taken: Taken, elapsed_min: float) -> float | None:
    total = taken.total_min
    if total is not None and not 0 < total <= elapsed_min:
        raise UsageError(
            f"--total {number(total, 'min', 1)}: it must be above 0 and no longer than from start to end, "
            f"{number(elapsed_min, 'min', 1)}"
        )
    return total


def _choices(mill: Mill, given: Mapping[str, str], booking: Booking | None) -> Choices:
    """As booked, with what was taken instead; in the order of the method. None where neither says all."""
    known = {
        (fold(row.choice), fold(row.alternative)): (row.choice, row.alternative) for row in mill.method.alternatives
    }
    taken = dict(booking.choices) if booking else {}
    for choice, alternative in given.items():
        if (fold(choice), fold(alternative)) not in known:
            offered = ", ".join(f"{name}={one}" for name, one in known.values()) or "none"
            raise DataError(f"the method has no choice {choice}={alternative}; it has {offered}")
        name, one = known[fold(choice), fold(alternative)]
        taken[name] = one
    order = list(dict.fromkeys(row.choice for row in mill.method.alternatives))
    return tuple(sorted(taken.items(), key=lambda item: order.index(item[0]) if item[0] in order else len(order)))
