"""Windows: the chances to convert a loom, as the forecast sees them."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from tracker.domain.mill import LoomKey


class WindowKind(StrEnum):
    REPEAT = "repeat"
    STYLE = "style"
    STANDING = "standing"
    MID_WARP = "mid-warp"


@dataclass(frozen=True, slots=True)
class Window:
    """One chance to convert a loom. All moments UTC.

    A beam-out (`repeat`, `style`) has a spread: running hours of weaving from `reading_at` to the beam-out are inverse
    Gaussian with mean `mean_running_h` and shape `mean_running_h**2 / spread_h`, so their variance is mean × spread_h;
    `stops_h` of ordinary changes between its warps come on top, without spread. `mean_at` has both in it: quantiles
    of a firmed spread are laid around it on the running calendar. spread_h may be 0 (no spread).
    A standing window is the span `starts_at` to `ends_at`; a mid-warp window is a span in which a stop may be
    booked (one for all warps on end that cost the same to stop). Both have no spread.
    """

    key: LoomKey
    number: int
    """1, 2 … for the loom's beam-outs in order; standing windows count on from there; 0 for the
    mid-warp window of the warp in work, those of later warps count on from the standing ones."""
    kind: WindowKind
    reading_at: datetime
    mean_running_h: float
    spread_h: float
    """s² of MODEL.md, in hours: 24·cv²; 0 for standing and mid-warp."""
    mean_at: datetime
    p10_at: datetime
    p50_at: datetime
    p90_at: datetime
    starts_at: datetime
    ends_at: datetime | None
    """End of a standing or mid-warp window; None for a beam-out."""
    article_out: str | None
    article_in: str | None
    warp_rate_m_per_h: float
    """Of the warp that runs out (mid-warp: the one in work), m of warp per running hour."""
    warp_value_per_m: float
    contribution_per_h: float
    """Currency per running hour of the warp that comes in (mid-warp: of the one in work)."""
    ordinary_change_h: float
    """Clock hours on the running calendar that the ordinary beam change would take; 0 for mid-warp, and for standing
    unless the loom stands without a warp."""
    meanwhile_h: float = 0.0
    """Of the ordinary change, what others do while a conversion goes on."""
    stops_h: float = 0.0
    """Hours on the running calendar of the ordinary changes (and waits for a warp that is not ready) before this
    window; 0 for the first."""
    state: str = "ok"
    """`ok`, `stale` (reading older than three days) or `overdue` (the reading says the warp should be gone)."""
    warp_in_at: datetime | None = None
    """Standing without a warp: when the next one would be in. None = its warp is in, or nothing is known of it."""

    @property
    def brings_warp(self) -> bool:
        """Whether an ordinary change comes with it, between the parts of a conversion."""
        return self.kind in (WindowKind.REPEAT, WindowKind.STYLE) or self.warp_in_at is not None
