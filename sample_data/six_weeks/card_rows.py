"""What the crews wrote on the cards of their conversions, as rows of the sheets of records."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta
from random import Random
from typing import Any

from sample_data.six_weeks.jobs import NOW, Job
from sample_data.weaving import ZONE, local
from tracker.domain.method import Check, Operation, Setpoint
from tracker.domain.progress import Stage
from tracker.domain.windows import WindowKind

Row = dict[str, Any]
"""Field → value; moments in the mill's local time."""
FITTERS = ("M. Berg", "T. Aydin", "L. Costa", "P. Novak")
ELECTRICIANS = ("S. Lind", "H. Roth")
FOREMAN = "K. Falk"
HELD_UP = "motor cable drawn too short, a longer one comes on Monday"
BROKEN_OFF = "thread of a support stripped, the support is broken; the loom weaves on with its old gear"
WAIVED, WAIVED_RESULT = "Fringe (mm)", 8.5
WAIVED_BECAUSE = "the customer trims it, to be set at the next style change"


def local_time(at: datetime) -> datetime:
    return at.astimezone(ZONE).replace(tzinfo=None)


def _of(job: Job) -> Row:
    return {"loom": job.key.loom, "hall": job.key.hall}


def work_done(jobs: Iterable[Job]) -> Iterator[Row]:
    """The whole conversions, then what has a name to it: hold points and torques."""
    for job in jobs:
        yield from _whole(job)
        done = [row for row in job.content.operations if row.place != "bench before"]
        if job.stage in (Stage.STOPPED, Stage.IN_WORK):
            done = done[: len(done) // 3]
        yield from (_operation(job, row) for row in done if _told(row) or job.stage is Stage.STOPPED)


def _whole(job: Job) -> Iterator[Row]:
    change = job.booking.kind in (WindowKind.REPEAT, WindowKind.STYLE)
    row = _of(job) | {
        "started_at": local_time(job.started_at), "crew": job.crew, "heads": 2,
        "beam_out_at": local_time(job.started_at - timedelta(minutes=10)) if change else None,
        "locked_at": local_time(job.started_at + timedelta(minutes=15)),
    }  # fmt: skip
    if job.stage is Stage.IN_WORK:
        yield row | {"stage": "in work", "remark": HELD_UP, "hand_over": FITTERS[0]}
        return
    if job.stage is Stage.STOPPED:
        yield row | {"stage": "stopped", "ended_at": local_time(job.over_at), "remark": BROKEN_OFF}
        return
    speed = job.over_at
    yield row | {
        "stage": "run-in", "ended_at": local_time(min(speed + timedelta(minutes=25), NOW)),
        "unlocked_at": local_time(speed - timedelta(minutes=95)), "at_speed_at": local_time(speed),
        "first_pick_at": local_time(speed - timedelta(minutes=20)),
    }  # fmt: skip
    if job.signed_at:
        signed = {"stage": "signed off", "ended_at": local_time(job.signed_at), "done_by": FOREMAN}
        yield _of(job) | {"started_at": row["started_at"], "crew": job.crew} | signed


def _told(row: Operation) -> bool:
    return row.waivable is False or (row.torque_nm is not None and row.place == "on loom")


def _operation(job: Job, row: Operation) -> Row:
    rng = job.random(row.operation)
    who = rng.choice(ELECTRICIANS if row.trade == "electrician" else FITTERS)
    torque = row.torque_nm and row.torque_nm + rng.randint(-2, 2)
    return _of(job) | {"operation": row.operation, "torque_nm": torque, "done_by": who}


def check_results(jobs: Sequence[Job]) -> Iterator[Row]:
    """Of the looms that were signed off; one result lies outside and was waived."""
    signed = [job for job in jobs if job.signed_at]
    for i, job in enumerate(signed):
        for check in job.content.checks:
            at = local_time(job.over_at + timedelta(minutes=10))
            row = _of(job) | {"side": check.side, "check": check.check, "at": at, "who": FITTERS[i % len(FITTERS)]}
            if check.check == WAIVED and i == len(signed) // 2:
                waiver = {
                    "waived_because": WAIVED_BECAUSE,
                    "waived_by": FOREMAN,
                    "waived_at": local_time(job.signed_at or NOW),
                }
                yield row | {"result": WAIVED_RESULT} | waiver
            else:
                yield row | {"result": _result(check, job.random(f"{check.check} {check.side}"))}


def _result(check: Check, rng: Random) -> bool | float:
    if check.kind == "yes/no":
        return True
    low = check.low or 0.0
    high = check.high if check.high is not None else low * 1.5
    return round(rng.uniform(low + 0.3 * (high - low), low + 0.7 * (high - low)), 2 if high < 1 else 0)


def parts_used(jobs: Iterable[Job]) -> Iterator[Row]:
    """Of the conversion that was stopped: all goes back but the support that broke."""
    for job in jobs:
        if job.stage is Stage.STOPPED:
            broken = next(part for part in job.booking.parts if part.startswith("SUP-"))
            for part, quantity in job.booking.parts.items():
                gone = 1 if part == broken else 0
                yield _of(job) | {"part": part, "used": 0, "left_over": quantity - gone, "broken": gone or None}


# ---- settings

READ_AGAIN = ("crossing angle", "yarn tension")
DRIFTING = {1: ("yarn tension", "left", -2.5), 4: ("crossing angle", "right", 1.5)}
"""Of the signed-off looms, in order: which setting drifts, on which side, by how much a week."""
STALE = {7, 8}
"""Signed-off looms that nobody has visited since."""
PER_DEVIATION = 2.77
"""Repeatability over the deviation of one reading, ISO 5725."""


def set_values(jobs: Sequence[Job]) -> Iterator[Row]:
    """As set, at the visits a day and a week later, and read out every Friday."""
    signed = [job for job in jobs if job.signed_at]
    for i, job in enumerate(signed):
        for point in job.content.setpoints:
            drift = DRIFTING.get(i)
            slope = drift[2] if drift and drift[:2] == (point.setting, point.side) else 0.0
            yield from _series(job, point, slope, i not in STALE)


def _series(job: Job, point: Setpoint, slope: float, visited: bool) -> Iterator[Row]:
    rng = job.random(f"{point.setting} {point.side}")
    row = _of(job) | {"side": point.side, "setting": point.setting}
    set_at = job.over_at - timedelta(minutes=30)
    if not isinstance(point.target, int | float):
        yield row | {"value": point.target, "at": local_time(set_at), "who": FITTERS[0], "why": "set"}
        return
    deviation = (point.repeatability or 1) / PER_DEVIATION
    as_set = round(point.target + rng.gauss(0, deviation))
    yield row | {"value": _shown(as_set, point), "at": local_time(set_at), "who": FITTERS[0], "why": "set"}
    if point.setting not in READ_AGAIN:
        return
    for at, why in _read_again(job, visited):
        weeks = (at - set_at) / timedelta(weeks=1)
        value = round(as_set + slope * weeks + rng.gauss(0, deviation))
        yield row | {"value": _shown(value, point), "at": local_time(at), "who": FITTERS[1], "why": why}


def _read_again(job: Job, visited: bool) -> Iterator[tuple[datetime, str]]:
    assert job.signed_at
    due = [job.signed_at + timedelta(days=days, hours=2) for days in (1, 7)] if visited else []
    day = job.signed_at.astimezone(ZONE).date()
    first = day + timedelta(days=(4 - day.weekday()) % 7)
    fridays = [local(first + timedelta(weeks=n), 10) for n in range(6)]
    read = [(at, "visit") for at in due] + [(at, "read out") for at in fridays if at > job.signed_at]
    yield from sorted((at, why) for at, why in read if at < NOW)


def _shown(value: int, point: Setpoint) -> int:
    return value % 360 if point.unit == "deg" else value


def bobbins(jobs: Sequence[Job]) -> Iterator[Row]:
    """What was left on the leno bobbins on the last Friday."""
    friday = NOW - timedelta(days=2, hours=20)
    for job in jobs:
        for side in ("left", "right") if job.signed_at and job.signed_at < friday else ():
            grams = job.random(f"bobbin {side}").randrange(200, 900, 10)
            yield _of(job) | {"side": side, "at": local_time(friday), "grams_left": grams}
