"""Withdraw what was recorded of a loom by mistake: it stays in the history and counts no more, nor does what hung on it."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import CONVERTED, Stage, StageChange
from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.stock_entry import Entry
from tracker.services.people.permissions import May
from tracker.services.work.given_back import UsedRow, give_back
from tracker.services.work.record import needed_for
from tracker.services.work.sign_off import begun_at, open_then
from tracker.store import UnitOfWork
from tracker.store.models import ConversionRow, PhotoRow, StageRow
from tracker.store.rows import MODELS, read_rows
from tracker.store.withdrawals import standing_rows, withdraw_rows

WITH_MOMENT = ("set_values", "check_results")
"""Tables whose rows of a conversion are known by when they were read."""


@dataclass(frozen=True, slots=True)
class RowMeant:
    """Which row of a sheet of records is meant: a table and the fields that tell it from the loom's others."""

    table: str
    fields: Mapping[str, Any] = field(default_factory=dict)
    """None = whatever it is; moments UTC."""


@dataclass(frozen=True, slots=True)
class Withdrawn:
    key: LoomKey
    what: Message
    rows: Mapping[str, int]
    """Table → rows that count no more."""
    stage: Stage | None
    """Where the loom stands by the records now; None = nothing is recorded any more."""

    @property
    def message(self) -> Message:
        many = sum(self.rows.values())
        return message("withdrawn", loom=self.key, what=self.what, rows=many, stage=self.stage)

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {"hall": self.key.hall, "loom": self.key.loom, "rows": dict(self.rows),
                "stage": self.stage.value if self.stage else None}  # fmt: skip


def withdraw_stage(
    context: Context, loom: str, why: str, hall: str | None = None, stage: str | None = None
) -> Withdrawn:
    """Withdraw the last stage recorded of a loom (`stage` says which it is taken to be), with what hung on it.

    In work: the whole conversion, all that its card told and all that was read since; run-in or signed off: the conversion
    that was recorded with it; stopped: the parts that went back by it. DataError where another stage was recorded after it, where
    there is none, or where the stockroom no longer has what had come back.
    """
    reason = _reason(why)
    with context.unit_of_work(May.RECORD) as uow:
        mill = uow.mill()
        key = find_loom(mill, loom, hall)
        history = [change for change in uow.stage_history() if change.key == key]
        change = _last(history, key, stage, mill)
        context.require(needed_for(change.stage))
        found = _Gathered(uow, key)
        found.stage(change)
        if change.stage is Stage.IN_WORK:
            found.conversion_since(change.at)
        else:
            found.end(change)
        rows = found.withdraw(reason)
        uow.session.flush()
        settle_kit(Entry(uow), key)
        left = uow.stages().get(key)
        uow.commit()
    return Withdrawn(key, message("withdrawn-stage", stage=change.stage), rows, left.stage if left else None)


def _last(history: Sequence[StageChange], key: LoomKey, stage: str | None, mill: Mill) -> StageChange:
    if not history:
        raise DataError("withdraw-nothing", loom=key)
    wanted = fold(stage) if stage else history[-1].stage.value
    change = next((one for one in reversed(history) if one.stage.value == wanted), None)
    if change is None:
        raise DataError("withdraw-no-stage", loom=key, stage=stage or "", stages=[one.stage for one in history])
    if change is not history[-1]:
        at = history[-1].at.astimezone(mill.terms.zone)
        raise DataError("withdraw-later-first", loom=key, stage=change.stage, later=history[-1].stage, at=at)
    return change


def withdraw_reading(context: Context, loom: str, why: str, reading: RowMeant, hall: str | None = None) -> Withdrawn:
    """Withdraw one row of a sheet of records. DataError where no row or several are meant, and where the sign-off of the loom
    builds on it."""
    reason = _reason(why)
    with context.unit_of_work(May.RECORD) as uow:
        mill = uow.mill()
        key = find_loom(mill, loom, hall)
        local = {
            n: v.astimezone(uow.zone).replace(tzinfo=None) if isinstance(v, datetime) else v
            for n, v in reading.fields.items()
        }
        stands = uow.stages().get(key)
        signed_at = stands.at if stands and stands.stage is Stage.SIGNED_OFF else None
        open_before = open_then(uow, mill, key, signed_at) if signed_at else ()
        found = _Gathered(uow, key)
        row = found.one(reading.table, local)
        rows = found.withdraw(reason)
        if signed_at and len(open_then(uow, mill, key, signed_at)) > len(open_before):
            raise DataError("withdraw-sign-off-first", loom=key)
        uow.commit()
    said = message("withdrawn-row", table=TABLES[reading.table].named, row=_named(row))
    return Withdrawn(key, said, rows, stands.stage if stands else None)


def _reason(why: str) -> str:
    if not why.strip():
        raise UsageError("withdraw-without-reason")
    return why.strip()


def _named(row: Mapping[str, Any]) -> list[str]:
    """What tells a row from the loom's others, as a person reads it."""
    return [
        f"{value:%Y-%m-%d %H:%M}" if isinstance(value, datetime) else str(value)
        for value in row.values()
        if value is not None
    ]


def settle_kit(entry: Entry, key: LoomKey) -> None:
    """A loom that is to be converted again wants its kit again, one that is signed off again none."""
    if key in entry.room.without_kit:
        entry.hold({(key, part): 0.0 for part in entry.room.held(key)}, "record withdrawn")
    elif booking := entry.room.booked(key):
        entry.settle(booking.parts, "record withdrawn")


class _Gathered:
    """The rows that are to be withdrawn, gathered inside a unit of work."""

    def __init__(self, uow: UnitOfWork, key: LoomKey):
        self.uow, self.key, self.zone = uow, key, uow.zone
        self.rows: dict[str, set[int]] = {}
        self.used: list[UsedRow] = []

    def stage(self, change: StageChange) -> None:
        rows = self._of(StageRow)
        self._take("stage_changes", [r for r in rows if (r.stage, r.at) == (change.stage.value, change.at)][-1:])

    def conversion_since(self, begun: datetime) -> None:
        """All that was told of the conversion that began then."""
        work = self._of(MODELS["work_done"])
        whole = [row for row in work if not row.operation and row.started_at >= begun]
        parts = self._of(MODELS["parts_used"])
        earlier = {row.card for row in work if not row.operation and row.started_at < begun}
        cards = {row.card for row in (*work, *parts)} - earlier
        self._take("work_done", [*whole, *(row for row in work if row.operation and row.card in cards)])
        for table in WITH_MOMENT:
            self._take(table, [row for row in self._of(MODELS[table]) if row.at >= begun])
        self._parts(cards)
        self._take("remark_photos", [row for row in self._of(PhotoRow) if row.begun_at >= begun])
        self._take("conversions", [row for row in self._of(ConversionRow) if row.started_at >= begun])

    def end(self, change: StageChange) -> None:
        """What told that the conversion reached a later stage."""
        work = self._of(MODELS["work_done"])
        whole = [row for row in work if not row.operation and row.stage == change.stage.value]
        told = [row for row in whole if change.at == row.ended_at or change.stage is not Stage.SIGNED_OFF]
        self._take("work_done", told[-1:] and [row for row in told if row.started_at == told[-1].started_at])
        if change.stage is Stage.STOPPED:
            self._parts({row.card for row in told[-1:]})
        history = [one for one in self.uow.stage_history() if one.key == self.key]
        before = history[-2].stage if len(history) > 1 else None
        if change.stage in CONVERTED and before not in CONVERTED:
            begun = begun_at(history).get(self.key)
            self._take("conversions", [r for r in self._of(ConversionRow) if begun is None or r.started_at >= begun])

    def one(self, table: str, wanted: Mapping[str, Any]) -> dict[str, Any]:
        """The one row in force that is meant, with those that it completed or corrected."""
        stored = read_rows(self.uow.session, TABLES[table], self.zone, self.key)
        given = {name: value for name, value in wanted.items() if value is not None}
        meant = [key for key, row in stored.items() if all(_same(row.get(n), v) for n, v in given.items())]
        fields = [name for name in TABLES[table].key if name not in ("loom", "hall")]
        named = [dict(zip(TABLES[table].key, key, strict=True)) for key in meant]
        told = [{name: one[name] for name in fields} for one in named]
        if len(meant) != 1:
            code = "withdraw-several" if meant else "withdraw-no-row"
            rows = [message("withdraw-row", row=_named(one)) for one in told[:6]]
            raise DataError(code, loom=self.key, table=TABLES[table].named, rows=rows or None)
        if table == "parts_used":
            self._back(stored[meant[0]])
        self._take(table, [row for row in self._of(MODELS[table]) if _is(row, named[0], self.zone)])
        if table == "work_done":
            self._photos_with(stored[meant[0]])
        return told[0]

    def _photos_with(self, row: Mapping[str, Any]) -> None:
        """Those of the remark of a row of Work done."""
        at, place = row["started_at"], (row["card"], row["operation"])
        photos = [one for one in self._of(PhotoRow) if (one.card, one.operation) == place]
        self._take("remark_photos", [one for one in photos if at in (None, _local(one.begun_at, self.zone))])

    def _of(self, model: Any) -> list[Any]:
        return standing_rows(self.uow.session, model, self.key)

    def _take(self, table: str, rows: Iterable[Any]) -> None:
        self.rows.setdefault(table, set()).update(row.id for row in rows)

    def _parts(self, cards: set[str | None]) -> None:
        """What the stockroom got back by these cards."""
        self._take("parts_used", [row for row in self._of(MODELS["parts_used"]) if row.card in cards])
        for row in read_rows(self.uow.session, TABLES["parts_used"], self.zone, self.key).values():
            if row["card"] in cards:
                self._back(row)

    def _back(self, row: Mapping[str, Any]) -> None:
        told = {name: row[name] for name in ("left_over", "broken")}
        self.used.append(UsedRow(dict(row) | dict.fromkeys(told, 0.0), told))

    def withdraw(self, why: str) -> dict[str, int]:
        """Table → how many of its rows are withdrawn now."""
        found = {table: sorted(numbers) for table, numbers in self.rows.items() if numbers}
        withdraw_rows(self.uow.session, self.key, found, self.uow.now(), self.uow.who, why)
        self.uow.session.flush()
        give_back(self.uow, self.used)
        return {table: len(numbers) for table, numbers in found.items()}


def _same(stored: Any, wanted: Any) -> bool:
    return fold(stored) == fold(wanted) if isinstance(stored, str) and isinstance(wanted, str) else stored == wanted


def _is(row: Any, named: Mapping[str, Any], zone: ZoneInfo) -> bool:
    """Whether a row of the database has these values of its key, moments local."""
    return all(_local(getattr(row, name), zone) == value for name, value in named.items())


def _local(value: Any, zone: ZoneInfo) -> Any:
    """A moment in the mill's local time, anything else as it is."""
    return value.astimezone(zone).replace(tzinfo=None) if isinstance(value, datetime) else value
