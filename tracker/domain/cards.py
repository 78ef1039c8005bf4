"""A card: what a crew holds in hand to convert one booked loom, and what it writes down."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.method import Check, Operation, Setpoint
from tracker.domain.mill import Loom, LoomKey
from tracker.domain.plan import Booking

SIX_TIMES = (
    "card-time-beam-out", "card-time-stopped", "card-time-locked", "card-time-unlocked", "card-time-first-pick",
    "card-time-at-speed",
)  # fmt: skip
"""What a crew notes of every conversion; codes of the catalogue, as are the cautions and blanks below."""
TIME_FIELDS = ("beam_out_at", "started_at", "locked_at", "unlocked_at", "first_pick_at", "at_speed_at")
"""The same as the sheet Work done has them."""
USUAL_CAUTIONS = (
    "card-caution-locks", "card-caution-dead", "card-caution-stored", "card-caution-moves", "card-caution-supply",
    "card-caution-lifting", "card-caution-drilling", "card-caution-fire", "card-caution-signs", "card-caution-power",
    "card-caution-slow-run", "card-caution-circuits",
)  # fmt: skip
"""On every card, whatever the method says."""
BLANKS = (
    "card-blank-isolating-points", "card-blank-waiting-time", "card-blank-rail-weight", "card-blank-state-of-warp",
    "card-blank-parameter-file", "card-blank-backup", "card-blank-wrench", "card-blank-old-gear", "card-blank-stopping-points",
    "card-blank-telephones",
)  # fmt: skip
"""What a crew must know beside it; the loom list may have it in a column of that name, else it is written in by hand."""


@dataclass(frozen=True, slots=True)
class CardOperation:
    row: Operation
    minutes: float
    """Elapsed, as the plan counts them: with allowance and learning."""
    cautions: tuple[int, ...] = ()
    """Numbers of `Card.cautions`, from 1."""

    @property
    def is_hold(self) -> bool:
        return self.row.waivable is False


@dataclass(frozen=True, slots=True)
class CardCaution:
    """A caution of the method and the steps that it stands at."""

    text: str
    steps: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CardTool:
    """A tool, the steps that take it, and the spans (UTC) in which it is booked for the loom."""

    tool: str
    how_many: int
    steps: tuple[int, ...]
    spans: tuple[tuple[datetime, datetime], ...] = ()


@dataclass(frozen=True, slots=True)
class CardPart:
    part: str
    description: str
    unit: str
    location: str
    """`` where it has none."""
    quantity: float
    comes_back: bool
    short: float
    """Of the quantity, what is neither reserved nor issued yet."""


@dataclass(frozen=True, slots=True)
class CardSetting:
    """A setting of both sides, or of the loom as a whole."""

    setting: str
    unit: str
    left: Setpoint | None = None
    right: Setpoint | None = None
    whole: Setpoint | None = None


@dataclass(frozen=True, slots=True)
class Card:
    number: str
    plan: int
    method_version: int
    key: LoomKey
    loom: Loom
    booking: Booking
    article: str | None
    """On the loom when its window comes; the next is the one that comes in there (the same where no warp is changed)."""
    article_in: str | None
    beam_out: datetime | None
    """P50 by the forecast of today."""
    cautions: tuple[CardCaution, ...]
    tools: tuple[CardTool, ...]
    parts: tuple[CardPart, ...]
    """By store location."""
    operations: tuple[CardOperation, ...]
    """On the bench, on the loom, after the restart; within each by step."""
    settings: tuple[CardSetting, ...]
    checks: tuple[Check, ...]
    """Those that nothing waives first."""

    @property
    def sides(self) -> tuple[str, ...]:
        """Those at which something is set."""
        return tuple(side for side in ("left", "right") if any(getattr(one, side) for one in self.settings))

    @property
    def crew(self) -> str:
        """The crew that begins; `` where none is named."""
        return self.booking.crews[0].crew if self.booking.crews else ""


def is_held(check: Check) -> bool:
    """Whether nothing is signed off without this check."""
    return not check.waivable if check.waivable is not None else check.safety
