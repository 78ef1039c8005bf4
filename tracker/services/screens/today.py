"""What a crew does today and tomorrow, and what each of these conversions still lacks."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.mill import Absence, LoomKey, Mill
from tracker.domain.plan import Booking, Need, Plan
from tracker.domain.progress import UNDER_WAY, Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold, natural_key
from tracker.errors import Message, message
from tracker.forecast.beam_outs import forecast
from tracker.kits.state import missing
from tracker.mill_state.stockroom import Stockroom, part_units
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom
from tracker.store import UnitOfWork


class Due(StrEnum):
    """Why a conversion stands in the list of today; in the order in which they stand."""

    IN_WORK = "under way"
    EARLY = "beam-out early"
    OVERDUE = "overdue"
    TODAY = "today"
    TOMORROW = "tomorrow"


BEAM_OUTS = (WindowKind.REPEAT, WindowKind.STYLE)


@dataclass(frozen=True, slots=True)
class DueLoom:
    key: LoomKey
    machine_type: str
    due: Due
    stage: str
    booking: Booking
    start: datetime
    """Of the crew's own turn, as is the end; UTC. Of another trade: from when it is needed first, and until when last."""
    end: datetime
    beam_out: datetime | None
    """By today's readings; None where it is booked for none, or the forecast no longer knows it."""
    lacks: Mapping[str, float] = field(default_factory=dict)
    """Part → what was neither handed out nor is held for it."""
    kit_issued: bool = False
    missing: tuple[Message, ...] = ()
    """People and tools that are not there as booked."""
    needs: tuple[Need, ...] = ()
    """When the crew is needed, where its trade is another than the one that converts."""


@dataclass(frozen=True, slots=True)
class Today:
    zone: ZoneInfo
    as_of: datetime
    crews: tuple[str, ...]
    """Those that the plan books, those of who is under way, and those of other trades that they need; in natural order."""
    crew: str | None
    converts: bool
    """Whether it is of the trade that converts: such crews have their own bookings, the others are needed in them."""
    looms: tuple[DueLoom, ...]
    units: Mapping[str, str]
    """Part → unit."""
    planned: bool
    """A plan is published."""
    any_loom: bool


def today(context: Context, crew: str | None, as_of: datetime | None = None) -> Today:
    """The looms of a crew: under way, with a beam-out that came early, overdue, of today and of tomorrow; for a crew of another
    trade, such as electricians, the looms that need it. Without a crew, or with one that nothing needs, only the crews to choose
    from."""
    with context.reading() as uow:
        room, stages = read_stockroom(uow, as_of, context.now()), uow.stages()
        mill, plan = room.mill, room.plan
        zone, at = mill.terms.zone, planning_moment(mill.terms, as_of, context.now())
        bookings = _bookings(uow, plan, stages)
        crews = _crews(mill, bookings.values())
        mine = next((one for one in crews if crew is not None and fold(one) == fold(crew)), None)
        trade = crews[mine] if mine else None
        own = _turns(mill, bookings, mine, trade) if mine else {}
        looms = tuple(_due_looms(room, plan, own, stages, at)) if plan else ()
    looms = tuple(sorted(looms, key=_order))
    return Today(
        zone, at, tuple(crews), mine, trade is None, looms, part_units(mill), plan is not None, bool(mill.looms)
    )


def _bookings(uow: UnitOfWork, plan: Plan | None, stages: Mapping[LoomKey, StageChange]) -> dict[LoomKey, Booking]:
    """Those of the plan that are not done or put aside, and the last ones of looms under way, which a newer plan need not book."""
    over = {key for key, change in stages.items() if change.stage not in (*UNDER_WAY, Stage.STOPPED, Stage.SCOPED)}
    under_way = {key for key, change in stages.items() if change.stage in UNDER_WAY}
    booked = {one.key: one for one in plan.bookings if one.key not in over} if plan else {}
    return uow.last_bookings(under_way - booked.keys()) | booked


def _crews(mill: Mill, bookings: Collection[Booking]) -> dict[str, str | None]:
    """Crew → its trade, where that is another than the one that converts."""
    booked = {turn.crew for one in bookings for turn in one.crews}
    needed = {fold(need.what) for one in bookings for need in one.needs if need.kind == "trade"}
    others = {crew.crew: crew.trade for crew in mill.crews if fold(crew.trade) in needed}
    found = dict.fromkeys(booked) | {crew: trade for crew, trade in others.items() if crew not in booked}
    return {crew: found[crew] for crew in sorted(found, key=natural_key)}


@dataclass(frozen=True, slots=True)
class _Turn:
    """What a conversion has of a crew, from when to when (UTC)."""

    booking: Booking
    start: datetime
    end: datetime
    needs: tuple[Need, ...] = ()


def _turns(mill: Mill, bookings: Mapping[LoomKey, Booking], crew: str, trade: str | None) -> dict[LoomKey, _Turn]:
    """`trade`: where it is another than the one that converts."""
    if trade is None:
        return {
            key: _Turn(one, turn.start, turn.end)
            for key, one in bookings.items()
            for turn in [turn for turn in one.crews if turn.crew == crew][:1]
        }
    halls = {one.hall for one in mill.crews if one.crew == crew}
    there = {key: one for key, one in bookings.items() if None in halls or key.hall in halls}
    needs = {key: _needs(one, trade) for key, one in there.items()}
    return {key: _Turn(bookings[key], of[0].start, max(need.end for need in of), of) for key, of in needs.items() if of}


def _needs(booking: Booking, trade: str) -> tuple[Need, ...]:
    """When a booking needs a trade, in order of time."""
    found = [need for need in booking.needs if need.kind == "trade" and fold(need.what) == fold(trade)]
    return tuple(sorted(found, key=lambda need: need.start))


def _due_looms(
    room: Stockroom, plan: Plan, own: Mapping[LoomKey, _Turn],
    stages: Mapping[LoomKey, StageChange], at: datetime,
) -> Iterator[DueLoom]:  # fmt: skip
    mill = room.mill
    alone = replace(mill, looms={key: mill.looms[key] for key in own if key in mill.looms})
    windows = forecast(alone, plan.as_of, plan.horizon_end)
    for key in alone.looms:
        turn, booking = own[key], own[key].booking
        window, change = booking.nearest(windows.get(key, ())), stages.get(key)
        stage = change.stage if change and change.stage in UNDER_WAY else None
        out = window.p50_at if window and window.kind in BEAM_OUTS else None
        due = _due(stage, turn, out, at, mill.terms.zone)
        if due is None:
            continue
        issued = room.issued.get(key, {})
        yield DueLoom(
            key, mill.looms[key].machine_type, due, stage.value if stage else Stage.BOOKED.value, booking, turn.start, turn.end,
            out, missing(booking.parts, room.held(key), issued),
            not missing(booking.parts, {}, issued), tuple(_missing(mill, booking)), turn.needs,
        )  # fmt: skip


def _due(stage: Stage | None, turn: _Turn, out: datetime | None, at: datetime, zone: ZoneInfo) -> Due | None:
    if stage is not None:
        return Due.IN_WORK
    today, day = at.astimezone(zone).date(), turn.start.astimezone(zone).date()
    if day < today:
        return Due.OVERDUE
    if out is not None and out <= at < turn.start and day > today:
        return Due.EARLY
    return Due.TODAY if day == today else Due.TOMORROW if day == today + timedelta(days=1) else None


def _order(loom: DueLoom) -> tuple[object, ...]:
    return list(Due).index(loom.due), loom.start, loom.key.sort_key


def _missing(mill: Mill, booking: Booking) -> Iterator[Message]:
    """Crews that are away, or short, on days of their turns; other trades of which somebody is away; tools that are not there."""
    zone = mill.terms.zone

    def days(start: datetime, end: datetime) -> tuple[date, date]:
        return start.astimezone(zone).date(), end.astimezone(zone).date()

    for turn in booking.crews:
        yield from _away(mill.absences, {turn.crew}, *days(turn.start, turn.end))
    for need in booking.needs:
        if need.kind == "tool":
            tool = next((tool for tool in mill.tools.values() if fold(tool.tool) == fold(need.what)), None)
            if tool is None or tool.how_many < need.amount:
                yield message(
                    "today-tool-missing", tool=need.what, wanted=need.amount, there=tool.how_many if tool else 0
                )
        else:
            of_trade = {crew.crew for crew in mill.crews if fold(crew.trade) == fold(need.what)}
            yield from _away(mill.absences, of_trade, *days(need.start, need.end))


def _away(absences: Iterable[Absence], crews: set[str], first: date, last: date) -> Iterator[Message]:
    for away in absences:
        if away.crew in crews and away.heads != 0 and away.from_on <= last and first <= away.to_on:
            yield message("today-away", crew=away.crew, heads=away.heads, first=away.from_on, last=away.to_on)
