"""Which moves along the stages need a reason: those out of order, and those that cannot have been as told."""

from tracker.domain.progress import BESIDE, Stage
from tracker.errors import Message, message

ORDER = (
    Stage.SURVEYED, Stage.SCOPED, Stage.BOOKED, Stage.KITTED, Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF,
)  # fmt: skip
"""Stages move along this order, one after the other."""
RECORDED = (Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF, *BESIDE, Stage.SCOPED)
"""Stages that are recorded; `scoped` takes a loom back among those to be planned."""


def out_of_order(before: Stage, wanted: Stage, kit_issued: bool, more_to_tell: bool = False) -> Message | None:
    """What a move from one stage to another does out of order; None where nothing.

    `kit_issued`: the loom's kit was handed out. `more_to_tell`: the stage is recorded again with the conversion behind it.
    """
    if wanted in BESIDE or (before in BESIDE and wanted is Stage.SCOPED):
        return None
    if before in BESIDE:
        return message("odd-beside", stage=before)
    here, there = ORDER.index(before), ORDER.index(wanted)
    if there == here:
        return None if more_to_tell else message("odd-already", stage=before)
    if there < here:
        return message("odd-back", stage=before)
    if wanted is Stage.IN_WORK:
        return _unready(before, kit_issued)
    skipped = [stage for stage in ORDER[here + 1 : there] if stage in RECORDED]
    return message("odd-skipped", first=skipped[0], second=next(iter(skipped[1:]), None)) if skipped else None


def _unready(before: Stage, kit_issued: bool) -> Message | None:
    if before not in (Stage.BOOKED, Stage.KITTED):
        return message("odd-not-booked")
    return None if kit_issued else message("odd-no-kit")
