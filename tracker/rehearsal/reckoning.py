"""What a conversion cost as it went, by the terms of a plan (tracker/planning/MODEL.md, section 5)."""

from tracker.domain.plan import CostTerms
from tracker.domain.windows import WindowKind
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.loom import PlayedLoom, Work


def cost_of(hall: Hall, loom: PlayedLoom, work: Work, end: int) -> CostTerms:
    """Of a conversion that ended before slot `end`, with what went before it."""
    ended = hall.case.begin(end)
    return CostTerms(
        lost_production=loom.lost + _lost(hall, loom, work, end) + hall.prices.lost_beside(loom.key, loom.content),
        late_beam_out=loom.late,
        labour=loom.labour + work.shape.labour,
        parts=hall.prices.parts(loom.content),
        saving_foregone=hall.saving(loom.key) * (ended - hall.case.start).total_seconds() / 86400,
        moves=loom.moves,
    )


def _lost(hall: Hall, loom: PlayedLoom, work: Work, end: int) -> float:
    """Contribution × running hours stopped beyond the ordinary change."""
    case, window, begun, ended = hall.case, loom.window, hall.case.begin(work.start), hall.case.begin(end)
    running, parted = case.running(loom.key.hall), len(work.shape.parts) > 1
    if loom.out_at is None:
        stops = begun
        if window.kind is WindowKind.STANDING and window.ends_at:
            stops = max(stops, (window.warp_in_at if parted else None) or window.ends_at)
        return hall.earns(loom.window) * (running.hours_between(stops, ended) if stops < ended else 0.0)
    stopped_h = running.hours_between(loom.cut_at or loom.out_at, ended)
    meanwhile_h = min(window.meanwhile_h, max(0.0, running.hours_between(begun, ended)))
    return hall.earns(loom.window) * (stopped_h - (window.ordinary_change_h if parted else meanwhile_h))


def lost_by_standing(hall: Hall, loom: PlayedLoom, until: int) -> float:
    """What it costs that a loom stood from its beam-out for nothing; its later beams come so much later."""
    if loom.out_at is None:
        return 0.0
    running = hall.case.running(loom.key.hall)
    hours = max(0.0, running.hours_between(loom.cut_at or loom.out_at, hall.case.begin(until)))
    loom.later_h += hours
    return hours * hall.earns(loom.window)


def lost_by_failing(hall: Hall, loom: PlayedLoom, work: Work, until: int) -> float:
    """What a conversion that failed has kept its loom from weaving."""
    if loom.out_at is not None:
        return lost_by_standing(hall, loom, until)
    if loom.window.kind is not WindowKind.MID_WARP:
        return 0.0
    running = hall.case.running(loom.key.hall)
    hours = running.hours_between(hall.case.begin(work.start), hall.case.begin(until))
    loom.later_h += hours
    return hours * hall.earns(loom.window)
