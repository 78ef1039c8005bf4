"""Units of work: everything inside one is written together or not at all."""

import os
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from datetime import datetime
from getpass import getuser
from sqlite3 import SQLITE_BUSY
from types import TracebackType
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Engine
from sqlalchemy.exc import DBAPIError
from sqlalchemy.orm import Session

from tracker.domain.clock import now
from tracker.domain.method import Method
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.past import Past
from tracker.domain.people import Act
from tracker.domain.photos import Photo
from tracker.domain.plan import Booking, Plan, PlanEntry
from tracker.domain.progress import Conversion, StageChange, not_taken_back
from tracker.domain.rehearsal import KeptRehearsal
from tracker.domain.rows import RowKey
from tracker.domain.seen_alarm import SeenAlarm
from tracker.domain.since import EnteredSince
from tracker.domain.stock import Movement, Reservation
from tracker.domain.tables import TABLES
from tracker.domain.terms import Terms
from tracker.errors import Message, TrackerError, message
from tracker.store import (
    alarms,
    connecting,
    loads,
    mill,
    past,
    people,
    photos,
    plans,
    progress,
    rehearsals,
    since,
    stock,
)
from tracker.store.history import seal
from tracker.store.rows import read_rows
from tracker.store.written import note_written

LOCK_NOT_AVAILABLE = "55P03"
"""The error code of PostgreSQL; https://www.postgresql.org/docs/15/errcodes-appendix.html"""


Moment = Callable[[], datetime]
"""A clock: tells this moment, UTC."""
First = Callable[["UnitOfWork"], None]
"""Looked at under the lock, before anything is done; refuses by its error."""


class UnitOfWork:
    """`with store.unit_of_work() as uow:` rolls back unless `uow.commit()` was called.

    Raises TrackerError where the database fails meanwhile (locked for too long, full, gone), or is given half a letter.
    """

    def __init__(
        self,
        engine: Engine,
        name: str,
        who: str = "",
        at: Moment = now,
        act: Act | None = None,
        first: First | None = None,
    ):
        self.session, self.name, self.who, self.now = Session(engine, expire_on_commit=False), name, who, at
        self.act, self.first = act, first
        self.act_number: int | None = None
        """Under which the account of who did what has it, once it is committed."""

    def __enter__(self) -> "UnitOfWork":
        try:
            self.session.connection()  # begins at once: a writer waits here for its lock
        except DBAPIError as error:
            raise self._failed(error) from error
        if self.first:
            try:
                self.first(self)
            except BaseException as refusal:
                self.__exit__(type(refusal), refusal, refusal.__traceback__)
                raise
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        try:
            self.session.rollback()
            self.session.close()
        except DBAPIError as second:
            error = error or second
        if isinstance(error, DBAPIError):
            raise self._failed(error) from error
        if isinstance(error, UnicodeEncodeError):
            raise TrackerError("text-not-kept", text=repr(error.object)[1:-1]) from error

    def _failed(self, error: DBAPIError) -> TrackerError:
        return TrackerError("database-silent", name=self.name, why=reason(error))

    def commit(self) -> None:
        """Write what was done, with who did it and the seals of what was added to history, all at one moment."""
        self.session.flush()
        at = self.now()
        if self.act:
            self.act_number = people.add_act(self.session, self.act, at)
        seal(self.session.connection(), at)
        self.session.commit()
        note_written()

    # ---- the mill

    def mill(self) -> Mill:
        return mill.read_mill(self.session)

    def method(self, version: int | None = None) -> Method:
        """A version of the method, the newest by default."""
        return mill.read_method(self.session, version)

    def method_versions(self) -> list[tuple[int, datetime]]:
        """Each version of the method with the moment from which it was in force, oldest first."""
        return mill.method_versions(self.session)

    def terms(self) -> Terms:
        return mill.read_terms(self.session)

    def rows(self, table: str) -> dict[RowKey, dict[str, Any]]:
        """Typed records of a table by key, kept headings beside the fields; moments in the mill's local time."""
        return read_rows(self.session, TABLES[table], self.zone)

    @property
    def zone(self) -> ZoneInfo:
        return self.terms().zone

    # ---- loads

    def load_writer(self, at: datetime | None = None) -> loads.LoadWriter:
        return loads.LoadWriter(self.session, self.zone, at or self.now(), self.who)

    def answers(self) -> dict[str, str]:
        return loads.read_answers(self.session)

    def add_answers(self, answers: Mapping[str, str]) -> None:
        loads.add_answers(self.session, answers, self.now(), self.who)

    def origin(self, table: str, key: RowKey, field: str) -> list[loads.Origin]:
        return loads.origin_of(self.session, TABLES[table], key, field)

    # ---- plans and progress

    def published_plan(self, before_it: int = 0) -> Plan | None:
        return plans.last_published(self.session, before_it)

    def published_as_of(self) -> datetime | None:
        """The moment for which the last published plan was made, without reading the plan."""
        return plans.last_published_as_of(self.session)

    def last_bookings(self, keys: Collection[LoomKey], before: int | None = None) -> dict[LoomKey, Booking]:
        return plans.last_bookings(self.session, keys, before)

    def first_bookings(self, keys: Collection[LoomKey], after: int) -> dict[LoomKey, Booking]:
        return plans.first_bookings(self.session, keys, after)

    def plan(self, number: int) -> Plan | None:
        return plans.plan_of(self.session, number)

    def plan_entries(self) -> list[PlanEntry]:
        return plans.plan_entries(self.session)

    def save_plan(
        self, plan: Plan, published: bool, scenario: str | None = None, entries: Mapping[str, Any] | None = None
    ) -> int:
        return plans.add_plan(self.session, plan, plans.Made(self.now(), self.who, published, scenario, entries))

    def since_plan(self, number: int) -> EnteredSince:
        """What was entered since the plan of that number was saved."""
        return since.since_plan(self.session, number, self.zone)

    def past(self) -> Past:
        """How order lines, absences and protected looms went."""
        return past.read_past(self.session, self.zone)

    def published_number(self) -> int | None:
        return rehearsals.published_number(self.session)

    def last_rehearsal(self, plan: int) -> KeptRehearsal | None:
        return rehearsals.last_rehearsal(self.session, plan)

    def last_tuning(self, plan: int) -> KeptRehearsal | None:
        return rehearsals.last_tuning(self.session, plan)

    def save_rehearsal(self, plan: int, result: Mapping[str, Any]) -> int:
        return rehearsals.add_rehearsal(self.session, plan, self.now(), self.who, result)

    def stages(self) -> dict[LoomKey, StageChange]:
        return progress.read_stages(self.session)

    def stage_history(self) -> list[StageChange]:
        return progress.stage_history(self.session)

    def add_stage(self, change: StageChange) -> None:
        progress.add_stage(self.session, change)

    def conversions(self) -> list[Conversion]:
        """Recorded conversions by start, less those of looms that were taken back since."""
        return not_taken_back(progress.read_conversions(self.session), self.stage_history())

    def add_conversion(self, conversion: Conversion) -> None:
        progress.add_conversion(self.session, conversion)

    def photos(self, keys: Collection[LoomKey]) -> list[Photo]:
        """That were told with remarks on some looms, oldest first."""
        return photos.photos_of(self.session, keys)

    def add_photo(self, photo: Photo, picture: bytes) -> None:
        photos.add_photo(self.session, photo, picture)

    def seen_alarms(self) -> list[SeenAlarm]:
        return alarms.seen_alarms(self.session)

    def add_seen_alarms(self, seen: Sequence[SeenAlarm]) -> None:
        alarms.add_seen_alarms(self.session, seen)

    # ---- stock

    def movements(self, part: str | None = None) -> list[Movement]:
        return stock.read_movements(self.session, part)

    def add_movements(self, movements: Sequence[Movement]) -> None:
        stock.add_movements(self.session, movements)

    def reservations(self) -> list[Reservation]:
        return stock.read_reservations(self.session)

    def set_reservations(self, reservations: Iterable[Reservation]) -> None:
        stock.set_reservations(self.session, reservations, self.now(), self.who)


def user() -> str:
    """Who is at the keyboard, for the log."""
    return os.environ.get("BEAMSLOT_USER") or getuser()


def reason(error: Exception) -> str | Message:
    """What the database itself says, in one line, or that somebody else holds it."""
    cause = getattr(error, "orig", None) or error
    if (
        getattr(cause, "sqlite_errorcode", 0) & 0xFF == SQLITE_BUSY
        or getattr(cause, "sqlstate", "") == LOCK_NOT_AVAILABLE
    ):
        return message("database-busy", seconds=connecting.WAIT_S)
    return str(cause).splitlines()[0]
