"""From what the mill says at one moment to the planner's problem, without a database."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from math import floor

from tracker.domain.clock import horizon_end, start_of_day
from tracker.domain.method import Method
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Asked, Booking, Placed, Plan
from tracker.domain.progress import CONVERTED, UNDER_WAY, Conversion, Stage, StageChange
from tracker.domain.scopes import LoomScope
from tracker.domain.shifts import crews_of, lead_heads, working_calendar
from tracker.domain.stock import Movement, Reservation
from tracker.domain.windows import Window
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.errors import DataError, Message, message
from tracker.forecast.beam_outs import forecast, unforecast
from tracker.kits.state import issued_to
from tracker.planning.checks.case import DUST, SLOT, slots_needed
from tracker.planning.problem import InWork, PlanningProblem
from tracker.scope.content import scope_looms
from tracker.scope.experience import learn, learning_factors


@dataclass(frozen=True)
class PlanningData:
    """What the mill says at one moment: all that a plan rests on, unchangeable, so that it can be handed to another process."""

    mill: Mill
    previous: Plan | None
    """The last published plan."""
    stages: Mapping[LoomKey, StageChange]
    conversions: tuple[Conversion, ...] = ()
    movements: tuple[Movement, ...] = ()
    reservations: tuple[Reservation, ...] = ()
    methods: Mapping[int, Method] = field(default_factory=dict)
    """The method versions by which conversions were done."""
    booked: Mapping[LoomKey, Booking] = field(default_factory=dict)
    """The last published booking of each loom, in whichever plan it stands: a plan made once a loom is in work has it no
    more."""

    def with_mill(self, mill: Mill) -> "PlanningData":
        return replace(self, mill=mill)


@dataclass(frozen=True)
class Prepared:
    """The problem and what it was made from."""

    problem: PlanningProblem
    windows: Mapping[LoomKey, tuple[Window, ...]]
    scopes: Mapping[LoomKey, LoomScope]

    def asked(self, asked: Asked, held_as: Plan | None = None) -> PlanningProblem:
        """The problem with what a plan is asked for; `held_as` is the plan `asked.again`."""
        return replace(
            self.problem, hold_firm=asked.hold_firm, released=asked.released, held=asked.held, calm=asked.calm,
            held_as=self._placed(asked.placed) if asked.placed else held_as, again=asked.again, ruled_out=asked.ruled_out,
            placed=asked.placed,
        )  # fmt: skip

    def _placed(self, placed: Iterable[Placed]) -> Plan | None:
        """The last published plan with these bookings where they are to be."""
        plan, at = self.problem.previous, {one.key: one for one in placed}
        if plan is None:
            return None
        return replace(plan, bookings=tuple(
            replace(b, start=at[b.key].start, choices=at[b.key].choices) if b.key in at else b for b in plan.bookings
        ))  # fmt: skip


def prepare(data: PlanningData, as_of: datetime) -> Prepared:
    """Scope, forecast and put the planner's problem together. DataError where the data cannot carry a plan."""
    mill = data.mill
    _require(mill, as_of)
    scopes = scope_looms(mill, learning_of(data))
    windows = forecast(mill, as_of, horizon_end(mill.terms, as_of))
    stages = {key: change.stage for key, change in data.stages.items()}
    problem = PlanningProblem(
        mill=mill,
        windows=windows,
        contents={key: scope.contents for key, scope in scopes.items() if scope.contents},
        as_of=as_of,
        unplannable=_unplannable(mill, scopes, as_of),
        variants={key: scope.variant for key, scope in scopes.items()},
        previous=data.previous,
        in_work=tuple(_in_work(data, scopes, key, as_of) for key, stage in stages.items() if stage is Stage.IN_WORK),
        converted={key: data.stages[key].at for key, stage in stages.items() if stage in CONVERTED},
        signed_off=frozenset(key for key, stage in stages.items() if stage is Stage.SIGNED_OFF),
        put_off={
            key: message("left-put-off", reason=data.stages[key].reason)
            for key, stage in stages.items()
            if stage is Stage.PUT_OFF
        },
        left_out=frozenset(key for key, stage in stages.items() if stage is Stage.LEFT_OUT),
        stopped=frozenset(key for key, stage in stages.items() if stage is Stage.STOPPED),
        issued=issued_to(data.movements),
        taken=_taken(data, {key for key, stage in stages.items() if stage in UNDER_WAY}),
    )
    return Prepared(problem, windows, scopes)


def learning_of(data: PlanningData) -> dict[str, float]:
    """Machine type → the learning factor of its next conversion: fitted where enough was recorded, else the standard
    curve's place after what was done."""
    return learning_factors(learn(data.conversions, data.mill, data.methods))


def _require(mill: Mill, as_of: datetime) -> None:
    if not mill.looms:
        raise DataError("no-looms")
    if not mill.method.operations:
        raise DataError("no-method")
    end, zone = horizon_end(mill.terms, as_of), mill.terms.zone
    if end <= as_of:
        raise DataError(
            "horizon-past", days=mill.terms.horizon_days, end=end.astimezone(zone), as_of=as_of.astimezone(zone)
        )
    _require_heads(mill)


def _require_heads(mill: Mill) -> None:
    """A conversion keeps one crew from start to end, so at least the largest must do for every operation; the method
    review sees to that, but crews change after it. Smaller ones take no conversion, and the plan says so."""
    lead = mill.terms.lead_trade
    largest = max(crews_of(mill, lead), key=lambda crew: crew.heads, default=None)
    if largest and largest.heads < lead_heads(mill):
        asks = [row for row in mill.method.operations if fold(row.trade) == fold(lead)]
        row = max(asks, key=lambda row: row.heads)
        raise DataError(
            "crews-too-small", crew=largest.crew, heads=largest.heads, step=str(row.step), operation=row.operation,
            need=row.heads, trade=row.trade,
        )  # fmt: skip


def _unplannable(mill: Mill, scopes: Mapping[LoomKey, LoomScope], as_of: datetime) -> dict[LoomKey, Message]:
    without = {key: scope.obstacle for key, scope in scopes.items() if scope.obstacle and not scope.contents}
    return unforecast(mill, as_of) | without


def _taken(data: PlanningData, busy: set[LoomKey]) -> dict[str, float]:
    """Part → what is reserved for looms that are being converted, and so is not to be had for others."""
    taken: dict[str, float] = {}
    for reservation in data.reservations:
        if reservation.key in busy:
            taken[reservation.part] = taken.get(reservation.part, 0.0) + reservation.quantity
    return taken


def _in_work(data: PlanningData, scopes: Mapping[LoomKey, LoomScope], key: LoomKey, as_of: datetime) -> InWork:
    """What is left of a conversion that has begun: its booked slots, less those whole ones that have passed when the next
    one begins."""
    booking = data.booked.get(key)
    content, slots = _work(booking, scopes[key])
    if booking and booking.attended and content:
        content = content.attended_by(data.mill.terms.pilot_trade)
    since, terms = data.stages[key].at, data.mill.terms
    pause = _pause(booking, since)
    origin = start_of_day(as_of.astimezone(terms.zone).date(), terms)
    begins = origin - (origin - as_of) // SLOT * SLOT
    first, last = (at.astimezone(terms.zone).date() for at in (since, begins))
    calendar = working_calendar(data.mill, key.hall, first, last)
    passed_h = calendar.hours_between(since, begins)
    if pause and pause[0] < begins:
        passed_h -= calendar.hours_between(pause[0], min(pause[1], begins))
    remaining = max(1, slots - max(0, floor(passed_h * 2 + DUST)))
    return InWork(key, remaining, content, _crew_at(booking, as_of), pause)


def _pause(booking: Booking | None, since: datetime) -> tuple[datetime, datetime] | None:
    """The pause between the parts as it was booked, moved by as many half hours as the start was."""
    if booking is None or booking.pause is None:
        return None
    moved = round((since - booking.start) / SLOT) * SLOT
    return booking.pause[0] + moved, booking.pause[1] + moved


def _crew_at(booking: Booking | None, as_of: datetime) -> str | None:
    """The crew that has a conversion at a moment, or had it last, by its booking."""
    begun = [turn.crew for turn in (booking.crews if booking else ()) if turn.start <= as_of]
    return begun[-1] if begun else None


def _work(booking: Booking | None, scope: LoomScope) -> tuple[WorkContent | None, int]:
    """The work of a loom in work, by the scope of today, and its slots: as it was booked; where it never was, the longest
    that it can be, so that its crew is not promised to another loom too early."""
    if booking:
        contents = scope.contents.get(booking.kind, ())
        return next((c for c in contents if c.choices == booking.choices), None), booking.slots
    longest = max(
        (c for contents in scope.contents.values() for c in contents), key=lambda c: c.on_loom_min, default=None
    )
    return longest, slots_needed(longest) if longest else 1
