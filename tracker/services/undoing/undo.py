"""Undo a load or a record: a new recorded change that brings back what was there before. Nothing is ever removed from history.

Where somebody changed some of it since, or something that came later rests on it, all of it is refused and that is named;
`rest` undoes the others. An undo can itself be undone.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.words import natural_key
from tracker.errors import ChangedSince, DataError, Message, message
from tracker.services.context import Context
from tracker.services.moved import Moved, value_of
from tracker.services.parts.stock_entry import Entry
from tracker.services.people.permissions import May
from tracker.services.plans.plan_record import in_json
from tracker.services.undoing.kinds import DOES, kept_kind
from tracker.services.undoing.method_back import MethodBack
from tracker.services.undoing.records_back import RecordsBack
from tracker.services.undoing.stock_back import HeldBack, StockBack
from tracker.services.undoing.values_back import ValuesBack
from tracker.services.work.withdrawing import settle_kit
from tracker.store import UnitOfWork
from tracker.store.undoing import Written, plan_since, undone_by, written_by
from tracker.words import ENGLISH

NAMED = 3
"""Of many that are brought back."""


@dataclass(frozen=True, slots=True)
class TakenBack:
    """What an undo brings back, or would."""

    number: int
    """Of what is undone, as the account of who did what has it."""
    by: int | None
    """Number of the undo itself; None as long as it was only looked at."""
    who: str
    at: datetime
    """By whom and when that was done which is undone."""
    back: Sequence[Message]
    """What of each kind comes back or goes: `3 values`."""
    left: Sequence[Moved]
    """What stays as it is, since somebody changed it."""
    stays: Sequence[Message]
    """What cannot be brought back and is told."""
    zone: ZoneInfo

    @property
    def message(self) -> Message:
        return message("undone", number=self.number, back=list(self.back), by=self.by, left=len(self.left))

    @property
    def question(self) -> Message:
        """Asked before it is done."""
        at = self.at.astimezone(self.zone)
        return message("undo-question", number=self.number, who=self.who, at=at, back=list(self.back))

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {"undone": self.number, "by": self.by, "back": [in_json(one) for one in self.back],
                "left": [one.record(self.zone) for one in self.left], "stays": [in_json(one) for one in self.stays]}  # fmt: skip


def undo(context: Context, number: int, rest: bool = False) -> TakenBack:
    """Undo what was loaded or recorded under that number of the account of who did what. DataError where it cannot be undone
    at all, where others changed some of it since (unless `rest`), and where nothing of it is left to undo; nothing is written
    then."""
    with context.unit_of_work(May.UNDO, {DOES: number}) as uow:
        found = _Undoing(uow, number)
        found.refuse(rest)
        found.apply()
        uow.commit()
        return found.says(uow.act_number)


def would_undo(context: Context, number: int) -> TakenBack:
    """What that would bring back, and what stands against it; DataError where it cannot be undone at all."""
    with context.reading() as uow:
        return _Undoing(uow, number).says(None)


class _Undoing:
    """One undo inside a unit of work: looked at as a whole, then written."""

    def __init__(self, uow: UnitOfWork, number: int):
        self.uow, self.number = uow, number
        self.written = _undoable(uow, number)
        self.values, self.method = ValuesBack(uow, self.written), MethodBack(uow, self.written)
        self.records = RecordsBack(uow, self.written)
        self.stock = StockBack(uow, self.written, self.records.rows)
        by_hand = not self.stock.entries and not self.records.rows and not self.values.parts
        self.held = HeldBack(uow, self.values.stories.get("reservations", {}) if by_hand else {})
        self.moved = [one for piece in self._pieces for one in piece.moved]
        ties = frozenset(one.tie for one in self.moved if one.tie)
        for piece in (self.values, self.records, self.stock):
            piece.leave(ties)

    @property
    def _pieces(self) -> tuple[Any, ...]:
        return self.values, self.method, self.records, self.stock, self.held

    def refuse(self, rest: bool) -> None:
        named = tuple(one.says(self.uow.zone) for one in self.moved)
        if named and not rest:
            raise ChangedSince("undo-changed-since", named, number=self.number)
        if not self._back():
            raise DataError("undo-nothing-left", number=self.number, moved=named[0] if named else None)

    def _back(self) -> list[Message]:
        changes, records = self.values.changes, self.records
        kinds: Mapping[str, Sequence[object]] = {
            "values": [value_of(one.table, one.key, one.field) for one in changes if one.field],
            "rows-in": [value_of(one.table, one.key) for one in changes if not one.field],
            "rows-out": [value_of(table, key) for table, rows in self.values.out.items() for key in rows],
            "withdrawn": [key for key, of in records.out.items() for ids in of.values() for _ in ids],
            "counting": [key for key, ids in records.back.items() for _ in ids],
            "entries": [entry.part for entry in self.stock.entries],
            "held": [part for _, part in self.held.hold], "answers": list(self.method.answers),
        }  # fmt: skip
        said = [_so_many(what, of) for what, of in kinds.items() if of]
        version = self.method.version
        return said + ([message("undo-method-back", version=version)] if version is not None else [])

    def apply(self) -> None:
        why = ENGLISH.say(message("undo-why", number=self.number))
        self.values.apply()
        self.records.apply(why)
        entry = Entry(self.uow)
        self.stock.apply(entry, why)
        self.held.apply(entry, why)
        entry.settle(sorted(self.stock.parts | self.values.parts, key=natural_key), why)
        for key in sorted(self.records.looms):
            settle_kit(entry, key)
        self.method.apply()

    def says(self, by: int | None) -> TakenBack:
        act = self.written.act
        stays = (*self.values.stays, *self.method.stays, *self._planned_since())
        return TakenBack(self.number, by, act.who, act.at, tuple(self._back()), tuple(self.moved), stays, self.uow.zone)

    def _planned_since(self) -> Iterator[Message]:
        """The plan that was made by what is undone."""
        if number := plan_since(self.uow.session, self.written):
            yield message("undo-plan-again", plan=str(number))


def _so_many(what: str, of: Sequence[object]) -> Message:
    """How many, and the first of them by name."""
    named: list[object] = []
    for one in of:
        if one not in named:
            named.append(one)
        if len(named) > NAMED:
            break
    return message("undo-so-many", what=what, n=len(of), of=named[:NAMED], more=len(named) - len(named[:NAMED]))


def _undoable(uow: UnitOfWork, number: int) -> Written:
    """What was written under a number. DataError where there is none, it is undone already, or cannot be undone at all."""
    written = written_by(uow.session, number)
    if written is None:
        raise DataError("undo-unknown", number=number)
    if by := undone_by(uow.session, May.UNDO).get(number):
        raise DataError("undone-already", number=number, by=by.id, who=by.who, at=by.at.astimezone(uow.zone))
    if kind := kept_kind(written.act, written.first):
        raise DataError("undo-never", number=number, kind=kind)
    return written
