"""How long a crew is kept free after a conversion (MODEL.md, section 8)."""

from math import floor, hypot, sqrt

from tracker.domain.terms import Terms
from tracker.domain.work import WorkContent, time_variation
from tracker.planning.model.contents import SLOT_MIN
from tracker.planning.model.numbered import BEAM_OUTS


def room_slots(content: WorkContent, terms: Terms) -> int:
    """Working slots: the term `room between bookings` × the standard deviation of its work and, in a beam change, of a wait that
    may be anything up to the patience; rounded to whole slots."""
    wait_min = terms.patience_h * 60 / sqrt(12) if content.kind in BEAM_OUTS else 0.0
    spread_min = hypot(time_variation(content) * content.on_loom_min, wait_min)
    return floor(terms.room * spread_min / SLOT_MIN + 0.5)
