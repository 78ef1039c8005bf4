"""Where, for whom and when a service works: the store, the actor, the language, the clock.

Services take one of these and open nothing by themselves. The store is opened once, when it is first needed.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from getpass import getuser
from typing import TYPE_CHECKING, Any

from tracker.domain.clock import now
from tracker.domain.people import EVERY_ROLE, Act, Role, in_order
from tracker.errors import NotAllowed
from tracker.services.people.permissions import May, allowed, who_may
from tracker.store import Store, UnitOfWork, open_store
from tracker.store.opening import is_new
from tracker.store.own_clock import own_clock
from tracker.store.people import any_account
from tracker.store.place import is_missing
from tracker.store.unit_of_work import user

if TYPE_CHECKING:
    from tracker.services.ground import OnTheForm


@dataclass(frozen=True, slots=True)
class Actor:
    """Who does it, and what the roles allow."""

    name: str
    roles: frozenset[Role] = EVERY_ROLE
    """By default every one: whoever can open the database without the screens has everything."""
    through: str = "command"
    """By what: `command`, `screen` or `interface`."""
    by_environment: bool = False
    """Whether the name is only told by the environment; it counts for nothing once there are accounts."""

    session: int | None = None
    """The number of the session of who signed in."""

    def may(self, what: May) -> bool:
        return what in allowed(self.roles)


def at_the_keyboard(through: str = "command") -> Actor:
    """The user of this computer, under the name that the environment may tell."""
    return Actor(user(), through=through, by_environment=user() != getuser())


@dataclass(frozen=True)
class Context:
    database: str
    """An SQLite file or a SQLAlchemy URL."""
    actor: Actor = field(default_factory=at_the_keyboard)
    told: str = ""
    """Who is told to have done it, for what is written; empty = the actor."""
    language: str = "en"
    make: bool = False
    """Whether a database that is not there may be made."""
    shown: tuple["OnTheForm", ...] = ()
    """What the form showed from which something is saved (`tracker/services/ground.py`)."""
    clock: Callable[[], datetime] | None = None
    """Another clock than the programme's own and the machine's, for tests and what-ifs."""

    @cached_property
    def store(self) -> Store:
        """The database, brought to the newest schema. DataError where it is not there, TrackerError where it cannot be
        opened."""
        return open_store(self.database, make=self.make)

    def making(self) -> "Context":
        """The same, allowed to make a database where there is none."""
        return self if self.make else self._with(make=True)

    def telling(self, name: str | None) -> "Context":
        """The same, where the actor writes down what somebody else did; None changes nothing."""
        return self._with(told=name) if name else self

    def having_shown(self, *shown: "OnTheForm") -> "Context":
        """The same for a save that rests on what was shown: its unit of work refuses, by ChangedSince, once it is not so."""
        return self._with(shown=(*self.shown, *shown))

    def acting(self, actor: Actor) -> "Context":
        """The same, where somebody else acts."""
        return self._with(actor=actor)

    def _with(self, **changes: Any) -> "Context":
        """The same but for this; a store that is open stays the one: another of a database in memory would be empty."""
        other = replace(self, **changes)
        if "store" in self.__dict__:
            other.__dict__["store"] = self.store
        return other

    @property
    def is_missing(self) -> bool:
        """Whether the file of an SQLite database is not there."""
        return is_missing(self.database)

    def now(self) -> datetime:
        """This moment, UTC."""
        if self.clock:
            return self.clock()
        return self.own_clock or now()

    def computers_now(self) -> datetime:
        """This moment by the computer's clock, UTC, also where the programme has its own, which stands."""
        return self.clock() if self.clock else now()

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

    def require(self, what: May) -> None:
        """Refuse what none of the actor's roles may do: NotAllowed."""
        if not self.actor.may(what):
            raise NotAllowed("not-allowed", who=self.actor.name, what=what, roles=who_may(what))

    def unit_of_work(self, what: May, details: Mapping[str, Any] | None = None) -> UnitOfWork:
        """For writing, all of it or nothing; every change carries who did it and this context's moment, and the account of who
        did what has a line of it. NotAllowed for who may not do `what`."""
        self.require(what)
        who, actor = self._name(), self.actor
        act = Act(who, in_order(actor.roles), actor.through, what.value, details or {})
        return self.store.unit_of_work(self.told or who, self.now, act, self._refuse_moved if self.shown else None)

    def _refuse_moved(self, uow: UnitOfWork) -> None:
        from tracker.services.ground import refuse_moved

        refuse_moved(uow, self.shown)

    def signing(self, what: str, person: str, address: str, **more: Any) -> UnitOfWork:
        """For writing what happens at the door: nobody has a role there yet. `more` is kept beside the address."""
        return self.store.unit_of_work(person, self.now, Act(person, (), "screen", what, {"address": address, **more}))

    def noting(self) -> UnitOfWork:
        """For writing when an open page was last touched, which is nobody's act and no history."""
        return self.store.unit_of_work()

    def _name(self) -> str:
        """Of the actor; who has an account of the programme is not somebody else because the environment says so."""
        if self.actor.by_environment:
            with self.reading() as uow:
                return getuser() if any_account(uow.session) else self.actor.name
        return self.actor.name
