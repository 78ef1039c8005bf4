"""Where, for whom and when a service works: the store, the actor, the language, the clock.

Services take one of these and open nothing by themselves. The store is opened once, when it is first needed.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property

from tracker.domain.clock import now
from tracker.store import Store, UnitOfWork, open_store
from tracker.store.opening import is_new
from tracker.store.own_clock import own_clock
from tracker.store.place import is_missing
from tracker.store.unit_of_work import user


@dataclass(frozen=True, slots=True)
class Actor:
    """Who does it, for the log."""

    name: str

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True)
class Context:
    database: str
    """An SQLite file or a SQLAlchemy URL."""
    actor: Actor = field(default_factory=lambda: Actor(user()))
    language: str = "en"
    make: bool = False
    """Whether a database that is not there may be made."""
    clock: Callable[[], datetime] | None = None
    """Another clock than the programme's own and the machine's, for tests and what-ifs."""

    @cached_property
    def store(self) -> Store:
        """The database, brought to the newest schema. DataError where it is not there, TrackerError where it cannot be
        opened."""
        return open_store(self.database, make=self.make)

    def making(self) -> "Context":
        """The same, allowed to make a database where there is none."""
        return replace(self, make=True)

    def acting_as(self, name: str | None) -> "Context":
        """The same, by somebody else; None changes nothing."""
        return replace(self, actor=Actor(name)) if name else self

    @property
    def is_missing(self) -> bool:
        """Whether the file of an SQLite database is not there."""
        return is_missing(self.database)

    def now(self) -> datetime:
        """This moment, UTC."""
        if self.clock:
            return self.clock()
        return self.own_clock or now()

    @cached_property
    def own_clock(self) -> datetime | None:
        """Where the programme's own clock stands, as a demo has one; None where the computer's counts."""
        if is_new(self.database):
            return None
        with self.reading() as uow:
            return own_clock(uow.session)

    def reading(self) -> UnitOfWork:
        """One consistent view of the database, which waits for nobody."""
        return self.store.reading()

    def unit_of_work(self) -> UnitOfWork:
        """For writing, all of it or nothing; every change carries the actor and this context's moment."""
        return self.store.unit_of_work(self.actor.name, self.now)
