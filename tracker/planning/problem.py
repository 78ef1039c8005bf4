"""What a plan is made from, checked once at the door."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from functools import cached_property

from tracker.domain.clock import horizon_end
from tracker.domain.mill import Crew, Loom, LoomKey, Mill
from tracker.domain.plan import Booking, Placed, Plan, RuledOut
from tracker.domain.shifts import crews_of, overlaps
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import natural_key
from tracker.domain.work import WorkContent
from tracker.errors import DataError, Message

Contents = Mapping[WindowKind, tuple[WorkContent, ...]]


@dataclass(frozen=True, slots=True)
class InWork:
    """A loom whose conversion is going on."""

    key: LoomKey
    remaining_slots: int
    """Working slots of 30 min still to do, from the first working slot at or after `as_of`; ≥ 0."""
    content: WorkContent | None = None
    """What it holds besides its crew: the last `remaining_slots` of this content. None = its crew only."""
    crew: str | None = None
    """The crew at work on it, where it is known."""
    pause: tuple[datetime, datetime] | None = None
    """From the end of its first part to the start of its second, as booked; None = in one piece."""


@dataclass(frozen=True)
class PlanningProblem:
    """All that the planner knows. Moments are aware datetimes (UTC), money is in the currency of the terms.

    Raises `DataError`, naming the loom or part, the value and what to do, where the data cannot carry a plan.
    """

    mill: Mill
    """Scenario changes (heads, receipts, closures, terms) are made here beforehand."""
    windows: Mapping[LoomKey, tuple[Window, ...]]
    """Chances of each loom, as the forecast sees them; a loom without any is left over."""
    contents: Mapping[LoomKey, Contents]
    """Work of each loom by kind of window, one content per combination of choices."""
    as_of: datetime
    """No booking starts before this moment, nor before the programme's start."""
    unplannable: Mapping[LoomKey, Message] = field(default_factory=dict)
    """Why a loom has no contents or no forecast."""
    variants: Mapping[LoomKey, int] = field(default_factory=dict)
    """Looms of one number get the same rows of the method; of the commonest of a machine type its pilot is chosen."""
    previous: Plan | None = None
    """The last published plan: its firm bookings stay, moving another costs the move cost."""
    hold_firm: bool = True
    """False = no booking is firm, all may move (at the move cost)."""
    released: frozenset[LoomKey] = frozenset()
    """Looms whose firm booking may move all the same."""
    held: frozenset[LoomKey] = frozenset()
    """Looms whose booking keeps its start and its choices, firm or not."""
    held_as: Plan | None = None
    """The plan whose bookings are held; None = the last published one."""
    again: int | None = None
    """Its number."""
    ruled_out: tuple[RuledOut, ...] = ()
    """Spans in which looms are not to be booked."""
    placed: tuple[Placed, ...] = ()
    """Of the bookings of `held_as`, those that stand elsewhere than in the last published plan."""
    calm: int | None = None
    """At most so many moves more than any plan needs by these data; None = as many as pay."""
    in_work: tuple[InWork, ...] = ()
    converted: Mapping[LoomKey, datetime] = field(default_factory=dict)
    """End of the conversion of looms in run-in or signed off. They are not planned again."""
    signed_off: frozenset[LoomKey] = frozenset()
    """Those of `converted` that are signed off; one such loom opens its type without soak."""
    put_off: Mapping[LoomKey, Message] = field(default_factory=dict)
    """Looms not to be planned now, and why; they are listed as left over."""
    left_out: frozenset[LoomKey] = frozenset()
    """Looms outside the programme; they appear nowhere."""
    stopped: frozenset[LoomKey] = frozenset()
    """Looms whose conversion was broken off: it is recorded what became of their bookings, and they are planned again."""
    issued: Mapping[LoomKey, Mapping[str, float]] = field(default_factory=dict)
    """Parts already taken out of stock for a loom that is still to be planned; it needs so much less."""
    taken: Mapping[str, float] = field(default_factory=dict)
    """Stock held for looms that this problem does not plan."""

    _attended: dict[int, tuple[WorkContent, WorkContent]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def __post_init__(self) -> None:
        _aware(self)
        _known(self)
        _crews(self)
        _contents(self)

    @property
    def planned(self) -> list[LoomKey]:
        """The looms to plan, in natural order of hall and number."""
        busy = {work.key for work in self.in_work} | self.converted.keys() | self.put_off.keys() | self.left_out
        return sorted((key for key in self.mill.looms if key not in busy), key=lambda key: key.sort_key)

    def attended(self, content: WorkContent) -> WorkContent:
        """A content when whoever stays with a pilot is there throughout; always the same object."""
        if id(content) not in self._attended:
            self._attended[id(content)] = content, content.attended_by(self.mill.terms.pilot_trade)
        return self._attended[id(content)][1]

    @property
    def previous_bookings(self) -> tuple[Booking, ...]:
        """Those of the last published plan."""
        return self.previous.bookings if self.previous else ()

    @property
    def keeps(self) -> bool:
        """Whether bookings of the last published plan are to be kept beyond what the terms ask for."""
        return (bool(self.held) and self.held_as is None) or self.calm is not None

    @property
    def to_move(self) -> dict[LoomKey, Booking]:
        """The bookings of the last published plan that a plan may move: those of looms that are to be planned."""
        to_plan = set(self.planned)
        return {booking.key: booking for booking in self.previous_bookings if booking.key in to_plan}

    @cached_property
    def held_bookings(self) -> Mapping[LoomKey, Booking]:
        """The bookings to be held, of those looms that have one."""
        bookings = self.held_as.bookings if self.held_as else self.previous_bookings
        return {booking.key: booking for booking in bookings if booking.key in self.held}

    @cached_property
    def beside(self) -> Mapping[LoomKey, tuple[LoomKey, ...]]:
        """The looms before and after each in its row, by their places; none where rows or places are not listed."""
        rows: dict[tuple[str, str], list[Loom]] = {}
        for loom in self.mill.looms.values():
            if loom.row and loom.place:
                rows.setdefault((loom.hall, loom.row), []).append(loom)
        found: dict[LoomKey, tuple[LoomKey, ...]] = {}
        for looms in rows.values():
            keys = [loom.key for loom in sorted(looms, key=lambda loom: natural_key(loom.place or ""))]
            for i, key in enumerate(keys):
                found[key] = (*keys[max(0, i - 1) : i], *keys[i + 1 : i + 2])
        return found

    @cached_property
    def overlaps(self) -> tuple[tuple[Crew, Crew, datetime], ...]:
        """Two rows of one crew whose hours overlap before the horizon, and the first moment at which they do."""
        terms = self.mill.terms
        first, last = (at.astimezone(terms.zone).date() for at in (self.as_of, horizon_end(terms, self.as_of)))
        return tuple(overlaps(self.mill, first, last))


def _aware(problem: PlanningProblem) -> None:
    if problem.as_of.tzinfo is None:
        raise DataError("as-of-without-zone", at=problem.as_of)


def _known(problem: PlanningProblem) -> None:
    named = (
        *problem.windows, *problem.contents, *problem.converted, *problem.put_off, *(w.key for w in problem.in_work)
    )  # fmt: skip
    for key in named:
        if key not in problem.mill.looms:
            raise DataError("loom-not-listed", loom=key)
    for work in problem.in_work:
        if work.remaining_slots < 0:
            raise DataError("remaining-slots", loom=work.key, slots=work.remaining_slots)


def _crews(problem: PlanningProblem) -> None:
    trade = problem.mill.terms.lead_trade
    if not crews_of(problem.mill, trade):
        raise DataError("no-lead-crew", trade=trade)
    for one, other, at in problem.overlaps:
        if one.hall and other.hall and one.hall != other.hall:
            raise DataError(
                "crew-in-two-halls",
                crew=one.crew,
                hall=one.hall,
                other=other.hall,
                at=at.astimezone(problem.mill.terms.zone),
            )


def _contents(problem: PlanningProblem) -> None:
    seen: set[int] = set()
    for key, kinds in problem.contents.items():
        for content in (content for contents in kinds.values() for content in contents):
            if id(content) not in seen:
                seen.add(id(content))
                _parts(problem.mill, key, content)


def _parts(mill: Mill, key: LoomKey, content: WorkContent) -> None:
    for part, quantity in content.parts.items():
        if part not in mill.parts:
            raise DataError("kit-part-unlisted", loom=key, part=part)
        if quantity < 0:
            raise DataError("kit-quantity", loom=key, quantity=quantity, part=part)
