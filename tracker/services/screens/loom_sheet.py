"""Everything about one loom on one sheet, and the list of looms to choose from."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import takewhile
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import horizon_end, planning_moment
from tracker.domain.mill import Loom, LoomKey, Mill, Warp
from tracker.domain.needs import KitState
from tracker.domain.plan import Booking, LeftOver, OtherDate, Plan
from tracker.domain.progress import CONVERTED, Conversion, StageChange
from tracker.domain.tables import LOOMS, Kind
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message, TrackerError
from tracker.forecast.beam_outs import forecast, unforecast
from tracker.mill_state.stockroom import Stockroom, part_units
from tracker.services.context import Context
from tracker.services.loading.origins import ValueOrigin, origins_of
from tracker.services.looms import find_loom
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.screens.status import stages_now
from tracker.services.work.scope import LoomReport, learning, scope_report
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class LoomLine:
    """A loom in the list."""

    key: LoomKey
    machine_type: str
    stage: str
    booking: Booking | None
    row: str | None
    place: str | None


@dataclass(frozen=True, slots=True)
class LoomList:
    zone: ZoneInfo
    looms: tuple[LoomLine, ...]
    """In natural order."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A value of the loom list and where it came from."""

    heading: str
    field: str
    """Of the table of looms; the heading itself for an attribute."""
    value: Any
    """None where the list has none; a fraction where `unit` is %, money where it is the currency."""
    unit: str
    origin: ValueOrigin | None
    """The newest event that set it; None where it was never set."""


@dataclass(frozen=True, slots=True)
class LoomSheet:
    zone: ZoneInfo
    currency: str
    as_of: datetime
    key: LoomKey
    loom: Loom
    facts: tuple[Fact, ...]
    stage: str
    history: tuple[StageChange, ...]
    """Recorded stages, oldest first."""
    conversions: tuple[Conversion, ...]
    """What was recorded of its conversions, the newest first."""
    warps: tuple[Warp, ...]
    scope: LoomReport | None
    no_scope: Message | None
    """Why there is no scope: no method is loaded, or it cannot be read."""
    windows: tuple[Window, ...]
    """Beam-outs and standing spans up to the end of the horizon."""
    no_forecast: Message | None
    booking: Booking | None
    left_over: LeftOver | None
    kit: KitState | None
    other_dates: tuple[OtherDate, ...]
    """Cheapest first."""
    planned: bool
    """A plan is published."""
    units: Mapping[str, str]
    """Part → unit."""

    @property
    def converted_at(self) -> datetime | None:
        """Since when the loom is run-in or signed off; None where it is neither."""
        stands = takewhile(lambda change: change.stage in CONVERTED, reversed(self.history))
        return min((change.at for change in stands), default=None)

    @property
    def beam_outs_ahead(self) -> tuple[Window, ...]:
        """Those expected; of a converted loom the ones up to its conversion have gone, whatever an older reading says."""
        outs = tuple(window for window in self.windows if window.kind in (WindowKind.REPEAT, WindowKind.STYLE))
        if self.converted_at is None:
            return outs
        since = max(self.as_of, self.converted_at)
        return tuple(window for window in outs if window.p50_at > since)


def loom_list(context: Context) -> LoomList:
    """Every loom with its stage and booking."""
    with context.reading() as uow:
        room, stages = read_stockroom(uow), uow.stages()
        plan = uow.published_plan()
    stage = stages_now(room.mill, plan, room.kits, stages)
    booked = {booking.key: booking for booking in plan.bookings} if plan else {}
    lines = (
        LoomLine(key, loom.machine_type, stage[key], booked.get(key), loom.row, loom.place)
        for key, loom in room.mill.looms.items()
    )
    return LoomList(room.mill.terms.zone, tuple(lines))


def loom_sheet(context: Context, loom: str, hall: str | None = None, as_of: datetime | None = None) -> LoomSheet:
    """The sheet of one loom. DataError where there is none of that number, or several and no hall says which."""
    with context.reading() as uow:
        room, plan, stages = read_stockroom(uow), uow.published_plan(), uow.stages()
        key = find_loom(room.mill, loom, hall)
        facts = tuple(_facts(uow, room.mill, key))
        history = tuple(change for change in uow.stage_history() if change.key == key)
        conversions = tuple(done for done in reversed(uow.conversions()) if done.key == key)
        scope, no_scope = _scope(uow, room.mill, key)
    mill, at = room.mill, planning_moment(room.mill.terms, as_of, context.now())
    alone = replace(mill, looms={key: mill.looms[key]})
    return LoomSheet(
        zone=mill.terms.zone,
        currency=mill.terms.currency,
        as_of=at,
        key=key,
        loom=mill.looms[key],
        facts=facts,
        stage=stages_now(mill, plan, room.kits, stages)[key],
        history=history,
        conversions=conversions,
        warps=mill.warps.get(key, ()),
        scope=scope,
        no_scope=no_scope,
        windows=_windows(alone, key, at),
        no_forecast=unforecast(alone, at).get(key),
        booking=next((b for b in plan.bookings if b.key == key), None) if plan else None,
        left_over=next((item for item in plan.left_over if item.key == key), None) if plan else None,
        kit=_kit(room, key),
        other_dates=_other_dates(plan, key),
        planned=plan is not None,
        units=part_units(mill),
    )


def _facts(uow: UnitOfWork, mill: Mill, key: LoomKey) -> Iterator[Fact]:
    loom = mill.looms[key]
    for column in LOOMS.columns:
        unit = "%" if column.kind is Kind.FRACTION else column.unit or ""
        unit = mill.terms.currency if column.field == "saving_per_day" else unit
        yield Fact(
            column.heading, column.field, getattr(loom, column.field), unit, _origin(uow, mill, key, column.field)
        )
    headings = dict.fromkeys(heading for other in mill.looms.values() for heading in other.attributes)
    for heading in headings:
        yield Fact(heading, heading, loom.attributes.get(heading), "", _origin(uow, mill, key, heading))


def _origin(uow: UnitOfWork, mill: Mill, key: LoomKey, field: str) -> ValueOrigin | None:
    return next(iter(origins_of(uow, mill, key, field)), None)


def _scope(uow: UnitOfWork, mill: Mill, key: LoomKey) -> tuple[LoomReport | None, Message | None]:
    try:
        return scope_report(mill, learning(uow, mill), key).loom, None
    except TrackerError as error:
        return None, error.message


def _windows(mill: Mill, key: LoomKey, at: datetime) -> tuple[Window, ...]:
    windows = forecast(mill, at, horizon_end(mill.terms, at))[key]
    return tuple(window for window in windows if window.kind is not WindowKind.MID_WARP)


def _kit(room: Stockroom, key: LoomKey) -> KitState | None:
    return next((kit for kit in room.kits if kit.key == key), None)


def _other_dates(plan: Plan | None, key: LoomKey) -> tuple[OtherDate, ...]:
    found = [other for other in plan.other_dates if other.key == key] if plan else []
    return tuple(sorted(found, key=lambda other: (other.extra_cost, other.start)))
