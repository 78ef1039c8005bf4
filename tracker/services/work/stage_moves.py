"""Which moves along the stages need a reason: those out of order, and those that cannot have been as told."""

from dataclasses import dataclass
from datetime import date, datetime

from tracker.domain.days import Days
from tracker.domain.mill import LoomKey
from tracker.domain.progress import BEFORE_BOOKING, BESIDE, UNDER_WAY, Stage, StageChange
from tracker.errors import DataError, Message, message
from tracker.kits.state import missing
from tracker.mill_state.stockroom import Stockroom
from tracker.services.moments import is_before

ORDER = (
    Stage.SURVEYED, Stage.SCOPED, Stage.BOOKED, Stage.KITTED, Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF,
)  # fmt: skip
"""Stages move along this order, one after the other."""
RECORDED = (Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF, Stage.STOPPED, *BESIDE, Stage.SCOPED)
"""Stages that are recorded; `scoped` takes a loom back among those to be planned."""
WITH_REASON = (Stage.STOPPED, *BESIDE)
"""Stages that are recorded with a reason only."""


@dataclass(frozen=True, slots=True)
class Step:
    """From one stage to another."""

    before: Stage
    wanted: Stage
    kit_issued: bool
    """The loom's kit was handed out."""
    more_to_tell: bool = False
    """The stage is recorded again with the conversion behind it."""


def out_of_order(step: Step) -> Message | None:
    """What a move does out of order; None where nothing."""
    before, wanted = step.before, step.wanted
    if wanted is Stage.STOPPED or wanted in BESIDE or (before in BESIDE and wanted is Stage.SCOPED):
        return None
    if before in BESIDE:
        return message("odd-beside", stage=before)
    here, there = ORDER.index(before), ORDER.index(wanted)
    if there == here:
        return None if step.more_to_tell else message("odd-already", stage=before)
    if there < here:
        return message("odd-back", stage=before)
    if wanted is Stage.IN_WORK:
        return _unready(before, step.kit_issued)
    skipped = [stage for stage in ORDER[here + 1 : there] if stage in RECORDED]
    return message("odd-skipped", first=skipped[0], second=next(iter(skipped[1:]), None)) if skipped else None


def refuse_stop(key: LoomKey, before: Stage, wanted: Stage) -> None:
    """DataError where a conversion is to be stopped that is not under way; no reason mends that."""
    if wanted is Stage.STOPPED and before not in UNDER_WAY:
        raise DataError("stopped-not-begun", loom=key, stage=before)


def _unready(before: Stage, kit_issued: bool) -> Message | None:
    if before not in (Stage.BOOKED, Stage.KITTED):
        return message("odd-not-booked")
    return None if kit_issued else message("odd-no-kit")


def stage_now(room: Stockroom, key: LoomKey, recorded: StageChange | None) -> Stage:
    """The stage by which a move is judged; a loom whose conversion was stopped is booked, or to be planned, again."""
    if recorded and recorded.stage not in (*BEFORE_BOOKING, Stage.STOPPED):
        return recorded.stage
    return Stage.BOOKED if room.booked(key) else Stage.SCOPED


def is_issued(room: Stockroom, key: LoomKey) -> bool:
    """Whether the loom's whole kit was handed out."""
    booking = room.booked(key)
    return bool(booking) and not missing(booking.parts, {}, room.issued.get(key, {}))


def odd_move(room: Stockroom, step: Step, began: date | None, at: datetime) -> Message | None:
    """What is odd about a move, so that it needs a reason: its order, or a moment before the programme `began`, of which a year
    typed wrong is the usual cause."""
    odd = out_of_order(step)
    if odd or step.wanted in (*WITH_REASON, Stage.SCOPED) or not is_before(at, began, room.mill.terms):
        return odd
    return message("odd-before-programme", on=Days(room.mill).local(at), first=began)
