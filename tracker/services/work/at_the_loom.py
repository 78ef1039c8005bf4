"""What a crew tells at the loom, tap by tap: each is a record as a filled card would bring it, by the same way and with the same
refusals."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from typing import Any

from tracker.domain.cards import SIX_TIMES, TIME_FIELDS
from tracker.domain.mill import LoomKey
from tracker.domain.photos import Photo
from tracker.errors import DataError, InputRefused, Message, message
from tracker.office.photos import kept_photo
from tracker.services.context import Context
from tracker.services.loading.load_report import LoadReport
from tracker.services.work.entering import ONCE, HowTold, enter_records
from tracker.store import UnitOfWork

Rows = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class AtLoom:
    """The conversion that is told of."""

    key: LoomKey
    card: str | None
    """Under which its records stand."""
    crew: str
    who: str
    """Who does it."""
    started_at: datetime | None = None
    """UTC, as it was recorded; None before it has begun."""
    times: Mapping[str, datetime] | None = None
    """What was told of the six times, UTC; they go on to the row of a later stage."""


@dataclass(frozen=True, slots=True)
class ToldRemark:
    text: str
    operation: str | None = None
    """None = on the whole conversion."""
    before: str = ""
    """What was remarked on it already; it stays in front."""
    photo: bytes | None = None
    """The file as it was sent."""


def begin(context: Context, here: AtLoom, why: str = "", beam_out: datetime | None = None) -> Message:
    """The loom is stopped now and the work begins. `why`: where that is out of order, as without its kit."""
    now = _now(context)
    row = _whole(here, "in work", now) | {"beam_out_at": beam_out, "remark": why.strip() or None}
    return _enter(context, here, "work_done", row, message("told-begun"))


def note_time(context: Context, here: AtLoom, name: str, at: datetime | None, again: str = "") -> Message:
    """One of the six times, now or at the moment told. `again`: the reason, where another was told before."""
    row = _whole(here, "in work", here.started_at) | dict(here.times or {}) | {name: at or _now(context)}
    said = message("told-time", name=message(SIX_TIMES[TIME_FIELDS.index(name)]))
    return _enter(context, here, "work_done", row, said, HowTold(again or None))


def tick(context: Context, here: AtLoom, operation: str, torque_nm: float | None = None) -> Message:
    """An operation is done, with the torque that was read where it has one."""
    row = {"operation": operation, "card": here.card, "done_by": here.who, "torque_nm": torque_nm}
    return _enter(context, here, "work_done", row, _as_told(operation))


def remark(context: Context, here: AtLoom, told: ToldRemark, again: str = "") -> Message:
    """A remark on an operation, or on the whole, with its photo. `again`: the reason, where there was one before. DataError for
    a photo that cannot be kept, or that nothing is said of."""
    text, about = told.text.strip(), told.operation
    if told.photo is not None and not text:
        raise DataError("photo-without-remark")
    also = None if told.photo is None else partial(_keep_photo, here, about, text, kept_photo(told.photo))
    row = {"operation": about, "card": here.card} if about else _whole(here, "in work", here.started_at)
    row["remark"] = " · ".join(filter(None, [told.before, text])) if text else None
    return _enter(
        context, here, "work_done", row, message("told-remark", photo=also is not None), HowTold(again or None, also)
    )


def _keep_photo(
    here: AtLoom, about: str | None, text: str, picture: bytes, uow: UnitOfWork, _report: LoadReport
) -> None:
    begun = here.started_at or uow.now()
    uow.add_photo(Photo(here.key, here.card, begun, about, text, uow.now(), here.who), picture)


def hand_over(context: Context, here: AtLoom, to: str, again: str = "") -> Message:
    """Somebody else goes on."""
    row = _whole(here, "in work", here.started_at) | {"hand_over": to.strip() or None}
    return _enter(context, here, "work_done", row, message("told-hand-over", to=to.strip()), HowTold(again or None))


def set_value(context: Context, here: AtLoom, setting: str, side: str | None, value: Any, why: str) -> Message:
    """A setting as it was found or set."""
    row = {"setting": setting, "side": side, "value": value, "why": why, "who": here.who}
    return _enter(context, here, "set_values", row, _as_told(setting, side, value))


def check(context: Context, here: AtLoom, name: str, side: str | None, result: Any) -> Message:
    """What a check gave."""
    row = {"check": name, "side": side, "result": result, "who": here.who}
    return _enter(context, here, "check_results", row, _as_told(name, side, result))


def bobbin(context: Context, here: AtLoom, side: str, grams: float | None) -> Message:
    """What is left on a leno bobbin, as weighed now."""
    row = {"side": side, "grams_left": grams, "at": _now(context)}
    return _enter(context, here, "bobbins", row, message("told-bobbin", side=side, grams=grams))


def part_used(context: Context, here: AtLoom, row: Mapping[str, float | str], again: str = "") -> Message:
    """What became of a part of its kit: `part`, `used`, `left_over`, `broken`. The stockroom gets back what is left over."""
    return _enter(
        context, here, "parts_used", {**row, "card": here.card}, _as_told(str(row["part"])), HowTold(again or None)
    )


def waive(context: Context, here: AtLoom, table: str, row: Mapping[str, Any], why: str, by: str) -> Message:
    """A setting or check may be signed off as it stands: for a reason, by somebody who answers for it."""
    name = row.get("setting") or row.get("check")
    told = {**row, "who": here.who, "waived_because": why.strip() or None, "waived_by": by.strip() or None}
    told["waived_at"] = told["at"] = _now(context)
    return _enter(context, here, table, told, message("told-waived", what=name))


def finish(context: Context, here: AtLoom) -> Message:
    """The loom runs again; its run-in begins."""
    row = _whole(here, "run-in", here.started_at) | dict(here.times or {}) | {"ended_at": _now(context)}
    return _enter(context, here, "work_done", row, message("told-run-in"))


def break_off(context: Context, here: AtLoom, why: str) -> Message:
    """The conversion is stopped, for a reason; the loom comes again in the next plan."""
    row = _whole(here, "stopped", here.started_at) | {"ended_at": _now(context), "remark": why.strip() or None}
    return _enter(context, here, "work_done", row, message("told-stopped"))


def _as_told(name: str, side: str | None = None, value: Any = None) -> Message:
    return message("told-of", name=name, side=side, value=value)


def _now(context: Context) -> datetime:
    """To the second: a card has no finer times."""
    return context.now().replace(microsecond=0)


def _whole(here: AtLoom, stage: str, started: datetime | None) -> dict[str, Any]:
    return {"card": here.card, "stage": stage, "started_at": started, "crew": here.crew}


def _enter(
    context: Context, here: AtLoom, table: str, row: Mapping[str, Any], what: Message, how: HowTold = ONCE
) -> Message:
    """InputRefused with a finding for each field that cannot be."""
    zone_less = {name: value for name, value in row.items() if not isinstance(value, datetime)}
    moments = {name: value for name, value in row.items() if isinstance(value, datetime)}
    key = here.key
    report = enter_records(context, key.loom, key.hall, {table: [zone_less]}, moments, how)
    if report.refusal:
        raise InputRefused(report.refusal.code, report.refused, **report.refusal.params)
    return message("told", loom=key, what=what)
