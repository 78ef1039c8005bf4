"""The records of a load: what of them cannot be, and what follows from them for stages, conversions and the stockroom."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cached_property
from typing import Any

from tracker.cards.faults import NOT_IN_WORK, Known, faults, key_of_loom, whole_rows
from tracker.domain.card_numbers import card_place
from tracker.domain.faults import Fault, placed
from tracker.domain.findings import Finding, Severity
from tracker.domain.method import Method
from tracker.domain.mill import LoomKey
from tracker.domain.progress import CONVERTED, UNDER_WAY, Conversion, Stage, StageChange
from tracker.domain.rows import Change, RowKey, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.errors import Message, TrackerError, message
from tracker.services.moments import began
from tracker.services.parts.reservations import follow_stages
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.given_back import UsedRow, give_back
from tracker.services.work.method_then import MethodThen
from tracker.services.work.sign_off import begun_at, content_of, open_of, sign_off_message
from tracker.services.work.stage_moves import Step, is_issued, odd_move, refuse_stop, stage_now
from tracker.services.work.taken import Taken, conversion_of
from tracker.services.work.working_out import Noted, work_out
from tracker.store import UnitOfWork

Row = Mapping[str, Any]
WORK, PARTS = "work_done", "parts_used"


@dataclass(frozen=True, slots=True)
class StageMove:
    """What a row of Work done does to its loom."""

    change: StageChange
    conversion: Conversion | None = None


class Records:
    """The records among the rows of a load, inside its unit of work. `findings` first; then `write`, once the rows are."""

    def __init__(
        self, uow: UnitOfWork, rows: Iterable[TypedRow], changes: Iterable[Change], tables: Sequence[SourceTable]
    ):
        self.uow, self.tables = uow, tables
        self.rows = [row for row in rows if TABLES[row.table].history]
        self.new = {(change.table, change.key): not change.field for change in changes if TABLES[change.table].history}
        self.before: dict[tuple[str, RowKey], dict[str, Any]] = {}
        """(table, key) of rows that are completed or corrected → field → what stood there."""
        for change in changes:
            if change.field and TABLES[change.table].history:
                self.before.setdefault((change.table, change.key), {})[change.field] = change.old
        self.moves: list[StageMove] = []
        self.used: list[UsedRow] = []
        self.touched: dict[LoomKey, None] = {}
        """Looms of whose work done rows were added or changed."""

    def findings(self) -> list[Finding]:
        """What stands against rows that add to what is stored; nothing is written."""
        if not self.new:
            return []
        found: list[Finding] = []
        waiting: dict[LoomKey, list[TypedRow]] = {}
        for row in self._new_rows:
            against = [
                placed(fault, row, self.tables[row.source]) for fault in faults(row.table, row.values, self.known)
            ]
            if any(finding.code == NOT_IN_WORK for finding in against):
                waiting.setdefault(key_of_loom(row.values), []).append(row)
                continue
            found += against
            if not any(finding.severity is Severity.REFUSED for finding in against):
                self._follow(row, found)
        found += (self._waits(key, rows) for key, rows in waiting.items())
        return found

    def _waits(self, key: LoomKey, rows: Sequence[TypedRow]) -> Finding:
        """One finding for all rows of a loom that wait for the first line of its card."""
        said = message(NOT_IN_WORK, loom=key, more=len(rows) - 1 or None)
        finding = placed(Fault(said, "loom", Severity.REFUSED), rows[0], self.tables[rows[0].source])
        return replace(finding, rows=tuple((row.source, row.number) for row in rows))

    def _follow(self, row: TypedRow, found: list[Finding]) -> None:
        if row.table == PARTS:
            self.used.append(UsedRow(row.values, self._stood(row, ("left_over", "broken"))))
        if row.table == WORK and not row.values.get("operation") and self._is_added(row):
            found += [placed(fault, row, self.tables[row.source]) for fault in self._take(row.values)]
        elif row.table == WORK:
            self.touched[key_of_loom(row.values)] = None

    def _stood(self, row: TypedRow, names: Iterable[str]) -> Row:
        """Fields of a row as they stood before the load."""
        if self._is_added(row):
            return dict.fromkeys(names)
        before = self.before.get((row.table, _key(row)), {})
        return {name: before.get(name, row.values.get(name)) for name in names}

    @cached_property
    def _new_rows(self) -> list[TypedRow]:
        """Rows that are added or completed; whole conversions first and by their time, so that what follows finds them."""
        rows = [row for row in self.rows if (row.table, _key(row)) in self.new]
        return sorted(rows, key=lambda row: (row.table != WORK, *_order(row.values)) if row.table == WORK else (True,))

    def _is_added(self, row: TypedRow) -> bool:
        return self.new[row.table, _key(row)]

    # ---- what is known

    @cached_property
    def known(self) -> Known:
        mill = self.room.mill
        cards: dict[int, dict[int, LoomKey]] = {}

        def card_of(plan: int, place: int) -> LoomKey | None:
            if plan not in cards:
                made = self.uow.plan(plan) if plan in self._published else None
                cards[plan] = card_place(booking.key for booking in made.bookings) if made else {}
            return cards[plan].get(place)

        begun = frozenset(key for key, change in self.stages.items() if change.stage in (*UNDER_WAY, *CONVERTED))
        return Known(
            self._methods, frozenset(crew.crew for crew in mill.crews), frozenset(mill.parts), self._local(self.uow.now()),
            card_of, self._held, begun,
            self._of_loom(WORK), self._of_loom("stops"), self._of_loom("waste"),
        )  # fmt: skip

    def _methods(self, key: LoomKey) -> tuple[Method, ...]:
        """That under which the loom's conversion began, and that in force."""
        began, today = self._then.mill(self._begun.get(key)).method, self.room.mill.method
        return (today,) if began is today else (began, today)

    def _held(self, key: LoomKey) -> dict[str, float]:
        """Part → what a loom got, with what rows that are corrected now had given back."""
        held = dict(self.room.issued.get(key, {}))
        for row in self._corrected_parts.get(key, ()):
            stood = self._stood(row, ("left_over", "broken"))
            held[row.values["part"]] = held.get(row.values["part"], 0.0) + sum(q or 0.0 for q in stood.values())
        return held

    @cached_property
    def _corrected_parts(self) -> dict[LoomKey, list[TypedRow]]:
        """Loom → rows of Parts used that stood there before with other values."""
        found: dict[LoomKey, list[TypedRow]] = {}
        for row in self.rows:
            if row.table == PARTS and (PARTS, _key(row)) in self.before:
                found.setdefault(key_of_loom(row.values), []).append(row)
        return found

    @cached_property
    def _published(self) -> frozenset[int]:
        return frozenset(entry.number for entry in self.uow.plan_entries() if entry.published)

    @cached_property
    def room(self) -> Any:
        return read_stockroom(self.uow)

    @cached_property
    def stages(self) -> dict[LoomKey, StageChange]:
        """Loom → its stage, as the rows gone through so far leave it."""
        return dict(self.uow.stages())

    @cached_property
    def _converted(self) -> dict[LoomKey, Conversion]:
        return {done.key: done for done in self.uow.conversions()}

    @cached_property
    def _begun(self) -> dict[LoomKey, datetime]:
        return begun_at(self.uow.stage_history())

    @cached_property
    def _then(self) -> MethodThen:
        return MethodThen(self.uow, self.room.mill)

    @cached_property
    def _bookings(self) -> Mapping[LoomKey, Any]:
        return self.uow.last_bookings({key_of_loom(row.values) for row in self.rows if row.table == WORK})

    def _of_loom(self, table: str) -> dict[LoomKey, tuple[Row, ...]]:
        """Loom → its rows of a table, stored ones completed by those of the load."""
        if all(row.table != table for row in self.rows):
            return {} if table != WORK else self._by_loom(self.uow.rows(table))
        stored = self.uow.rows(table)
        for row in self.rows:
            if row.table == table:
                given = {name: value for name, value in row.values.items() if value is not None}
                stored[_key(row)] = _empty(table) | stored.get(_key(row), {}) | given
        return self._by_loom(stored)

    def _by_loom(self, rows: Mapping[RowKey, Row]) -> dict[LoomKey, tuple[Row, ...]]:
        found: dict[LoomKey, list[Row]] = {}
        for row in rows.values():
            found.setdefault(key_of_loom(row), []).append(row)
        return {key: tuple(of) for key, of in found.items()}

    @cached_property
    def _told(self) -> dict[str, dict[LoomKey, tuple[Row, ...]]]:
        """What a sign-off asks for, table by table."""
        return {WORK: dict(self.known.work)} | {
            name: self._by_loom(self.uow.rows(name))
            if all(row.table != name for row in self.rows)
            else self._of_loom(name)
            for name in ("set_values", "check_results")
        }

    def _local(self, at: datetime) -> datetime:
        return at.astimezone(self.room.mill.terms.zone).replace(tzinfo=None)

    def _utc(self, at: datetime) -> datetime:
        return at.replace(tzinfo=self.room.mill.terms.zone)

    # ---- what follows from a conversion

    def _take(self, row: Row) -> Iterator[Fault]:
        """Go through the stages that the row tells; a fault ends it."""
        key = key_of_loom(row)
        for stage, at, name in self._path(row, self.stages.get(key)):
            fault = self._move(row, key, stage, at, name)
            if fault:
                yield fault
                return

    def _path(self, row: Row, before: StageChange | None) -> list[tuple[Stage, datetime, str]]:
        """The stages still to be recorded, each with its moment and the field that tells it."""
        wanted, now = Stage(row["stage"]), before.stage if before else None
        begins = (Stage.IN_WORK, row["started_at"], "started_at")
        if wanted is Stage.IN_WORK:
            return [] if now in UNDER_WAY else [begins]
        path: list[tuple[Stage, datetime, str]] = [] if now in (*UNDER_WAY, *CONVERTED) else [begins]
        if wanted is Stage.SIGNED_OFF and now is not Stage.RUN_IN:
            path.append((Stage.RUN_IN, over_at(row), "ended_at"))
        return [*path, (wanted, row["ended_at"], "ended_at")]

    def _move(self, row: Row, key: LoomKey, stage: Stage, at: datetime, name: str) -> Fault | None:
        moment, before = self._utc(at), self.stages.get(key)
        if before and before.at > moment:
            said = message("stage-later-known", loom=key, stage=before.stage, at=self._local(before.at))
            return Fault(said, name, Severity.REFUSED)
        now = stage_now(self.room, key, before)
        try:
            refuse_stop(key, now, stage)
            done = self._conversion(row, key) if stage in CONVERTED and key not in self._converted else None
        except TrackerError as error:
            return Fault(error.message, "stage" if stage is Stage.STOPPED else "crew", Severity.REFUSED)
        why = (row.get("remark") or "").strip() or None
        step = Step(now, stage, is_issued(self.room, key), done is not None)
        odd = odd_move(self.room, step, self._first, moment)
        if odd and not why:
            return Fault(message("record-needs-remark", loom=key, stage=stage, odd=odd), "remark", Severity.REFUSED)
        if stage is Stage.SIGNED_OFF and (open_ones := self._open(key, at)):
            return Fault(open_ones, "stage", Severity.REFUSED)
        change = StageChange(key, stage, moment, self.uow.who, why if odd or stage is Stage.STOPPED else None)
        self.moves.append(StageMove(change, done))
        self.stages[key] = change
        if stage is Stage.IN_WORK:
            self._begun[key] = moment
        if done:
            self._converted[key] = done
        return None

    @cached_property
    def _first(self) -> Any:
        return began(self.uow, self.room.mill.terms)

    def _conversion(self, row: Row, key: LoomKey) -> Conversion:
        booking = self._bookings.get(key)
        begun = self._begun.get(key, self._utc(row["started_at"]))
        mill, scope = self._then.mill(begun), self._then.scope(key, begun)
        crew = row.get("crew") or (booking.crews[0].crew if booking and booking.crews else "")
        start, over, ended = (self._utc(at) for at in (row["started_at"], over_at(row), row["ended_at"]))
        told = [one for one in self.known.work.get(key, ()) if one["operation"] and one["card"] == row.get("card")]
        minutes = {one["operation"]: one["minutes"] for one in told if one["minutes"] is not None}
        content = content_of(scope, booking)
        noted = Noted(crew, start, over, minutes, row.get("minutes"))
        out = work_out(mill, key, noted, booking, content)
        taken = Taken(crew, start, out.operation_min, out.total_min, worked_out=out.worked_out)
        return conversion_of(mill, key, taken, ended, None, booking)

    def _worked_out_again(self) -> Iterator[Conversion]:
        """Conversions of which rows were completed or corrected after they had been recorded, as they are now."""
        taken_now = {move.conversion.key for move in self.moves if move.conversion}
        for key in self.touched:
            done = self._converted.get(key)
            if done is None or key in taken_now:
                continue
            whole = [row for row in whole_rows(self.known.work.get(key, ())) if Stage(row["stage"]) in CONVERTED]
            row = next((row for row in whole if self._utc(row["started_at"]) == done.started_at), None)
            again = self._conversion(row, key) if row else done
            again = replace(again, machine_type=done.machine_type, method_version=done.method_version, kind=done.kind,
                            choices=done.choices)  # fmt: skip
            if again != done:
                yield again

    def _open(self, key: LoomKey, at: datetime) -> Message | None:
        rows = {name: of.get(key, ()) for name, of in self._told.items()}
        begun = self._begun.get(key)
        since = self._local(begun) if begun else datetime.min
        points = open_of(self._then.scope(key, begun), self._bookings.get(key), rows, since, at)
        return sign_off_message(key, points)

    # ---- writing

    def write(self) -> None:
        """Write the stages, the conversions and what the stockroom gets back; once the rows are there."""
        again = list(self._worked_out_again())
        for move in self.moves:
            self.uow.add_stage(move.change)
            if move.conversion:
                self.uow.add_conversion(move.conversion)
        for conversion in again:
            self.uow.add_conversion(conversion)
        self.uow.session.flush()
        follow_stages(self.uow, [move.change for move in self.moves])
        give_back(self.uow, self.used)


def over_at(row: Row) -> datetime:
    """When the loom ran again: at speed, else the first pick, else the end."""
    return row.get("at_speed_at") or row.get("first_pick_at") or row["ended_at"]


def _key(row: TypedRow) -> RowKey:
    return tuple(row.values.get(name) for name in TABLES[row.table].key)


def _empty(table: str) -> dict[str, Any]:
    return {column.field: None for column in TABLES[table].columns}


def _order(row: Row) -> tuple[Any, ...]:
    """Whole conversions by start and stage, then operations."""
    if row.get("operation"):
        return (True,)
    return (False, row["started_at"], list(Stage).index(Stage(row["stage"])))
