"""The card of one loom with what was told of its conversion so far, and what stands against its sign-off."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.cards.sign_off import AS_SET, is_waived, meets, passes
from tracker.domain.cards import TIME_FIELDS, Card, CardOperation, is_held
from tracker.domain.method import Check, Setpoint
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import CONVERTED, UNDER_WAY, Stage
from tracker.domain.tables import TABLES
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, Message
from tracker.mill_state.stockroom import Stockroom
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.screens.remarks import Remark, remarks_of
from tracker.services.work.at_the_loom import AtLoom
from tracker.services.work.card_maker import CardMaker
from tracker.services.work.sign_off import begun_at, local_time, open_then
from tracker.services.work.stage_moves import is_issued
from tracker.store import UnitOfWork
from tracker.store.rows import read_rows

EARLIER = 3
"""Conversions of the same machine type whose remarks are shown."""
Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class OperationLine:
    operation: CardOperation
    row: Row
    """Of Work done; empty where nothing was told."""
    electrical: bool
    """A hold point of another trade than the one that converts."""

    @property
    def done_by(self) -> str:
        return self.row.get("done_by") or ""


@dataclass(frozen=True, slots=True)
class SettingLine:
    point: Setpoint
    found: Any
    value: Any
    """As it was set or read since; None = not yet."""
    within: bool
    waived: Row | None


@dataclass(frozen=True, slots=True)
class CheckLine:
    check: Check
    result: Any
    passed: bool
    waived: Row | None

    @property
    def held(self) -> bool:
        """Nothing waives it."""
        return is_held(self.check)


@dataclass(frozen=True, slots=True)
class PartLine:
    part: str
    unit: str
    issued: float
    """What the kit holds of it, less what came back."""
    row: Row
    """Of Parts used; empty where nothing was told."""


@dataclass(frozen=True, slots=True)
class WorkCard:
    zone: ZoneInfo
    card: Card
    stage: Stage | None
    """Of its conversion as recorded: in work, run-in, signed off; None = not begun, or broken off and to come again."""
    number: str | None
    """Under which its records stand: the card's, or none where it was begun without a card."""
    started_at: datetime | None
    """When it began, UTC; None before."""
    whole: Row
    """The row of Work done of the whole conversion, local moments; empty before it has begun."""
    kit_issued: bool
    operations: tuple[OperationLine, ...]
    settings: tuple[SettingLine, ...]
    checks: tuple[CheckLine, ...]
    parts: tuple[PartLine, ...]
    bobbins: Mapping[str, Row]
    """Side → its bobbin as it was weighed last since the conversion began."""
    open_points: tuple[Message, ...]
    """What stands against its sign-off now."""
    remarks: tuple[Remark, ...]
    """On this conversion."""
    earlier: tuple[Remark, ...]
    """Of the last three conversions of this machine type, the newest first."""

    @property
    def begun(self) -> bool:
        return self.stage is not None

    def remarked(self, about: str | None) -> str:
        """What was remarked already on an operation, or on the whole (None)."""
        row = next((one.row for one in self.operations if one.operation.row.operation == about), self.whole)
        return row.get("remark") or ""

    def operation_named(self, name: str | None) -> str | None:
        """As the card has it, where it has it."""
        names = [one.operation.row.operation for one in self.operations]
        return name and next((one for one in names if fold(one) == fold(name)), name)

    def at_loom(self, crew: str, who: str) -> AtLoom:
        """The conversion for what is told of it; `crew` where it was not begun yet."""
        told = {name: at.replace(tzinfo=self.zone) for name in TIME_FIELDS if (at := self.whole.get(name))}
        begun = self.whole.get("crew") or crew or self.card.crew
        return AtLoom(self.card.key, self.number, begun, who, self.started_at, told)


def work_card(context: Context, loom: str, hall: str | None) -> WorkCard:
    """DataError where there is no such loom, no published plan has booked it, or no card can be made of it any more."""
    with context.reading() as uow:
        room = read_stockroom(uow, None, context.now())
        mill, key = room.mill, find_loom(room.mill, loom, hall)
        plan, booking, number = _booked(uow, key)
        maker = CardMaker.read(uow, room, plan, number, [key])
        card, alone = maker.card(booking), maker.mill
        if card is None:
            raise DataError("card-not-as-booked", loom=key)
        change, begun = uow.stages().get(key), begun_at(uow.stage_history()).get(key)
        stage = change.stage if change else None
        under_way = begun is not None and stage in (*UNDER_WAY, *CONVERTED)
        since = local_time(begun, uow.zone) if begun and under_way else None
        rows = {name: list(read_rows(uow.session, TABLES[name], uow.zone, key).values())
                for name in ("work_done", "set_values", "check_results", "parts_used", "bobbins")}  # fmt: skip
        whole = _whole(rows["work_done"], since)
        open_points = open_then(uow, alone, key, context.now()) if under_way else ()
        issued = is_issued(room, key) if room.booked(key) else True  # under way by a plan before it: then it was
        own = remarks_of(key, rows["work_done"], uow.photos([key]), uow.zone) if since else ()
        earlier = tuple(_earlier(uow, mill, key))
    told = whole.get("card", card.number) if whole else card.number
    return WorkCard(
        mill.terms.zone, card, stage if under_way else None, told, begun if under_way else None, whole, issued,
        tuple(_operations(card, rows["work_done"] if since else (), told, mill.terms.lead_trade)),
        tuple(_settings(card, rows["set_values"], since)), tuple(_checks(card, rows["check_results"], since)),
        tuple(_parts(room, key, [row for row in rows["parts_used"] if row["card"] == told])),
        _bobbins(rows["bobbins"], since), open_points,
        tuple(one for one in own if one.at == since), earlier,
    )  # fmt: skip


def _booked(uow: UnitOfWork, key: LoomKey) -> tuple[Plan, Booking, int]:
    """The newest published plan that books the loom, its booking there, and the plan's number."""
    for entry in uow.plan_entries():
        plan = uow.plan(entry.number) if entry.published else None
        booking = next((one for one in plan.bookings if one.key == key), None) if plan else None
        if plan and booking:
            return plan, booking, entry.number
    raise DataError("not-booked-no-card", loom=key)


def _whole(work: Sequence[Row], since: datetime | None) -> Row:
    """What was told of the whole conversion, a later stage's row over an earlier one."""
    found: dict[str, Any] = {}
    for row in work:
        if since and not row["operation"] and row["started_at"] == since:
            found |= {name: value for name, value in row.items() if value is not None or name not in found}
    return found


def _operations(card: Card, work: Sequence[Row], told: str | None, lead: str) -> Iterator[OperationLine]:
    rows = {fold(row["operation"]): row for row in work if row["operation"] and row["card"] == told}
    for one in card.operations:
        electrical = one.is_hold and fold(one.row.trade) != fold(lead)
        yield OperationLine(one, rows.get(fold(one.row.operation), {}), electrical)


def _settings(card: Card, values: Sequence[Row], since: datetime | None) -> Iterator[SettingLine]:
    rows = sorted(values, key=lambda row: row["at"])
    for line in card.settings:
        for point in filter(None, (line.left, line.right, line.whole)):
            of_it = [row for row in rows if _place(row, "setting") == (fold(point.setting), fold(point.side or ""))]
            found = next((row["value"] for row in reversed(of_it) if row["why"] == "found"), None)
            row = next((row for row in reversed(of_it) if row["why"] in AS_SET and since and row["at"] >= since), None)
            value = row["value"] if row else None
            within = value is not None and meets(point, value)
            yield SettingLine(point, found, value, within, row if row and is_waived(row) else None)


def _checks(card: Card, results: Sequence[Row], since: datetime | None) -> Iterator[CheckLine]:
    rows = sorted(results, key=lambda row: row["at"])
    for check in card.checks:
        place = fold(check.check), fold(check.side or "")
        row = next((r for r in reversed(rows) if _place(r, "check") == place and since and r["at"] >= since), None)
        result = row["result"] if row else None
        passed = result is not None and passes(check, result)
        yield CheckLine(check, result, passed, row if row and is_waived(row) else None)


def _parts(room: Stockroom, key: LoomKey, told: Sequence[Row]) -> Iterator[PartLine]:
    rows, issued = {row["part"]: row for row in told}, room.issued.get(key, {})
    for part in sorted(issued.keys() | rows.keys(), key=natural_key):
        yield PartLine(part, room.part(part).unit or "", issued.get(part, 0.0), rows.get(part, {}))


def _bobbins(rows: Sequence[Row], since: datetime | None) -> dict[str, Row]:
    return {row["side"]: row for row in sorted(rows, key=lambda row: row["at"]) if since and row["at"] >= since}


def _place(row: Row, name: str) -> tuple[str, str]:
    return fold(row[name]), fold(row["side"] or "")


def _earlier(uow: UnitOfWork, mill: Mill, key: LoomKey) -> Iterator[Remark]:
    """Remarks of other looms' last conversions, by the rows of Work done."""
    like = {one for one, loom in mill.looms.items() if loom.machine_type == mill.looms[key].machine_type and one != key}
    by_loom: dict[LoomKey, list[Row]] = {}
    for row in uow.rows("work_done").values():
        of = LoomKey(row["hall"], row["loom"])
        if of in like:
            by_loom.setdefault(of, []).append(row)
    begun = {of: at for of, rows in by_loom.items() if (at := _last_start(rows))}
    last = sorted(begun, key=lambda one: begun[one], reverse=True)[:EARLIER]
    photos = uow.photos(last)
    for of in last:
        yield from remarks_of(of, by_loom[of], photos, uow.zone)


def _last_start(rows: Iterable[Row]) -> datetime | None:
    return max((row["started_at"] for row in rows if row["started_at"]), default=None)
