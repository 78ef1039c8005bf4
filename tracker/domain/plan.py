"""A plan as it is published: bookings, what is left over, and the proof beside it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import StrEnum

from tracker.domain.mill import LoomKey
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import Choices, WorkContent
from tracker.errors import Message


class PlanStatus(StrEnum):
    OPTIMAL = "proven optimal within tolerance"
    FEASIBLE = "feasible with gap"
    INFEASIBLE = "infeasible"
    TIMED_OUT = "timed out"


@dataclass(frozen=True, slots=True)
class CostTerms:
    """Cost of a booking by term, currency."""

    lost_production: float = 0.0
    late_beam_out: float = 0.0
    labour: float = 0.0
    parts: float = 0.0
    saving_foregone: float = 0.0
    moves: float = 0.0
    surviving: float = 0.0
    """What the term `no second chance` reckons; nobody pays it."""

    @property
    def total(self) -> float:
        return sum([getattr(self, term) for term in self.__slots__])  # plans are summed up by the thousand

    @property
    def paid(self) -> float:
        """Without what is only reckoned so that the plan survives."""
        return self.total - self.surviving


@dataclass(frozen=True, slots=True)
class CrewTurn:
    """A crew at a conversion, from when to when; breaks lie within it, nights do not."""

    crew: str
    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Need:
    """Another trade, or a tool, that a conversion holds from when to when."""

    what: str
    """The trade or the tool, as the method writes it."""
    kind: str
    """`trade` or `tool`."""
    amount: int
    """Heads, or how many of the tool."""
    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Booking:
    """A loom's planned conversion. Moments UTC, half-open."""

    key: LoomKey
    window: int
    kind: WindowKind
    choices: Choices
    start: datetime
    end: datetime
    beam_out_p50: datetime | None
    slots: int
    """Working slots of 30 min."""
    labour_h: float
    """Person-hours, all trades and places."""
    parts: Mapping[str, float]
    cost: CostTerms
    firm: bool = False
    pilot: bool = False
    attended: bool = False
    """Whether one of the trade that the term `with the pilot throughout` names stays from its start to its end."""
    crews: tuple[CrewTurn, ...] = ()
    """Who does it, in order of time; empty in plans made before crews were named."""
    needs: tuple[Need, ...] = ()
    """Other trades, then tools, each in order of time."""
    pause: tuple[datetime, datetime] | None = None
    """From the end of the first part to the start of the second, where the ordinary change comes between the two: the loom
    is stopped, nobody is held. None = in one piece."""

    @property
    def attended_by(self) -> str:
        """The trade of whoever stays with it throughout; empty where nobody does."""
        held: dict[str, timedelta] = {}
        for need in self.needs if self.attended else ():
            if need.kind == "trade":
                held[need.what] = held.get(need.what, timedelta()) + (need.end - need.start)
        return max(held, key=lambda trade: held[trade], default="")

    @property
    def crew_names(self) -> str:
        """`Fitters 1, then Fitters 2`; empty where nobody is named."""
        names = [turn.crew for turn in self.crews]
        return ", then ".join(name for i, name in enumerate(names) if i == 0 or name != names[i - 1])

    def nearest(self, windows: Iterable[Window]) -> Window | None:
        """The window of its kind that lies nearest to the beam-out (or start) that the booking was made for: numbers begin
        again with every new warp."""
        meant = self.beam_out_p50 or self.start
        mine = [window for window in windows if window.kind == self.kind]
        apart = [max(w.p50_at - meant, meant - (w.ends_at or w.p50_at)) for w in mine]
        return mine[apart.index(min(apart))] if mine else None

    def learned_since(self, content: WorkContent) -> float:
        """What share of today's minutes that learn this was booked with: learning stretches all of them alike, and so the
        person-hours tell by how much it has changed since."""
        then_h, now_h = (hours - content.kept_labour_h for hours in (self.labour_h, content.labour_h))
        return then_h / now_h if now_h > 0 and then_h > 0 else 1.0

    def as_booked(self, content: WorkContent) -> WorkContent:
        """Today's content as long as it was when this was booked."""
        return content.scaled(self.learned_since(content))


@dataclass(frozen=True, slots=True)
class OtherDate:
    """Another start the loom could have had, and what it would cost more than its booking."""

    key: LoomKey
    window: int
    kind: WindowKind
    choices: Choices
    start: datetime
    end: datetime
    extra_cost: float


@dataclass(frozen=True, slots=True)
class LeftOver:
    key: LoomKey
    why: Message
    cost: float


@dataclass(frozen=True, slots=True)
class ScarcityPrice:
    """What one more unit of something short would save in a week, from the LP relaxation."""

    what: Message
    """An hour of a crew, a trade, a tool or a place among the looms stopped; one more of a part."""
    week: str
    """ISO week, `2027-W05`."""
    price: float


@dataclass(frozen=True, slots=True)
class RuledOut:
    """A span (half-open) in which no conversion of a loom is to start."""

    key: LoomKey
    from_at: datetime
    until_at: datetime

    def holds(self, key: LoomKey, start: datetime) -> bool:
        return key == self.key and self.from_at <= start < self.until_at


@dataclass(frozen=True, slots=True)
class Placed:
    """The start and the choices that a booking is to have instead of those it has."""

    key: LoomKey
    start: datetime
    choices: Choices


TOLERANCE = 0.001
"""Relative gap within which a plan counts as optimal, unless another is asked for."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What a plan was asked for beside the data: whoever checks it later asks for the same."""

    hold_firm: bool = True
    """False = no booking was firm."""
    released: frozenset[LoomKey] = frozenset()
    """Looms whose firm booking might move all the same."""
    afresh: bool = False
    """As if nothing had been published before."""
    gap: float = TOLERANCE
    """Relative gap at which it was to count as optimal."""
    held: frozenset[LoomKey] = frozenset()
    """Looms whose bookings were to stay where they were."""
    calm: int | None = None
    """How many moves more than the data need there were to be at most; None = as many as pay."""
    again: int | None = None
    """The number of the earlier plan whose bookings were to stay; None = the last published one."""
    ruled_out: tuple[RuledOut, ...] = ()
    """What was not to be booked; the next plan keeps to it unless it is told otherwise."""
    placed: tuple[Placed, ...] = ()
    """Of the looms held: those that were to stay at another start than that of the last published plan."""


@dataclass(frozen=True, slots=True)
class FreePlan:
    """The plan of the same moment that may move what it likes."""

    objective: float
    bound: float
    moves: int
    moves_cost: float
    books: tuple[LoomKey, ...] = ()
    """Looms that it books and that the plan beside it leaves over."""


@dataclass(frozen=True, slots=True)
class Keeping:
    """How much a plan that was to keep bookings moves, and what that costs."""

    moves: int
    """Bookings of the last published plan, of looms to plan, that have another start, other choices, or are gone."""
    moves_cost: float
    """What these moves cost by the terms, currency."""
    fewest: int | None = None
    """No plan by these data moves fewer; None where that was not asked."""
    most: int | None = None
    """As many moves there were to be at most."""
    free: FreePlan | None = None
    """None where the search was stopped before it was found."""

    def dearer(self, objective: float) -> float:
        """What a plan of this objective costs more than the free one, the price of moves left out of both."""
        assert self.free
        return objective - self.moves_cost - (self.free.objective - self.free.moves_cost)


@dataclass(frozen=True, slots=True)
class Undo:
    """What it would take to leave a moved booking where it was, or why it cannot be left there."""

    key: LoomKey
    costs: float | None
    """How much more the best plan found costs that leaves it there, the price of moves counted; None = none was found."""
    short: Message | None = None
    """What there would be too little of; None = its place is free."""
    taken_by: tuple[LoomKey, ...] = ()
    """The looms that have it now."""
    instead: int | None = None
    """How many others it would move, where the plan that leaves it there moves as many or more; None = it moves fewer."""
    limit: Message | None = None
    """What does not let it stay by the data, whatever is booked beside it; None = it could stay."""


@dataclass(frozen=True, slots=True)
class Plan:
    status: PlanStatus
    objective: float
    bound: float
    seconds: float
    currency: str
    as_of: datetime
    horizon_end: datetime
    bookings: tuple[Booking, ...] = ()
    left_over: tuple[LeftOver, ...] = ()
    prices: tuple[ScarcityPrice, ...] = ()
    other_dates: tuple[OtherDate, ...] = ()
    reasons: tuple[Message, ...] = ()
    """Why infeasible, what became of firm bookings, what was taken for granted."""
    start: date | None = None
    """Programme start from which saving foregone counts."""
    terms: Mapping[str, object] = field(default_factory=dict)
    asked: Asked = Asked()
    crew_changes: int | None = None
    """How often a booking changes its crew while the earlier one is still at work; None = crews are not named."""
    keeping: Keeping | None = None
    """Where bookings were to be kept."""
    undoing: tuple[Undo, ...] = ()
    """Of the published bookings that it moves and that lay ahead."""

    @property
    def surviving(self) -> float:
        """What is reckoned in the objective only so that the plan survives; nobody pays it."""
        return sum(booking.cost.surviving for booking in self.bookings)

    @property
    def paid(self) -> float:
        """The objective without that: what a plan costs, to be held against others."""
        return self.objective - self.surviving

    @property
    def without_moves(self) -> float:
        """What it costs without the price of moves too, which only a plan made after a published one has: so plans that were made
        after different ones are held against each other."""
        return self.paid - sum(booking.cost.moves for booking in self.bookings)

    @property
    def gap(self) -> float:
        """(objective − bound) / objective, 0 where the objective is 0."""
        return max(0.0, (self.objective - self.bound) / self.objective) if self.objective > 0 else 0.0


@dataclass(frozen=True, slots=True)
class PlanEntry:
    """A plan in the list of all that were made."""

    number: int
    made_at: datetime
    who: str
    published: bool
    scenario: str | None
    as_of: datetime
    status: PlanStatus
    objective: float
    bound: float
    currency: str
    bookings: int
    left_over: int
