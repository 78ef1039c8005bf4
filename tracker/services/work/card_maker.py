"""Makes the cards of a plan's bookings; what all of them need is read and worked out once."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field, replace

from tracker.cards.content import BookedLoom, card_numbers, make_card
from tracker.domain.cards import Card
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import BESIDE, UNDER_WAY, StageChange
from tracker.domain.scopes import LoomScope
from tracker.domain.windows import Window
from tracker.forecast.beam_outs import forecast
from tracker.kits.state import missing
from tracker.mill_state.stockroom import Stockroom
from tracker.scope.content import scope_looms
from tracker.scope.experience import learning_factors
from tracker.scope.loads import Loader
from tracker.services.work.method_then import MethodThen
from tracker.services.work.scope import learning
from tracker.services.work.sign_off import begun_at
from tracker.store import UnitOfWork


@dataclass(slots=True)
class CardMaker:
    """Makes cards; what all of them need is worked out once."""

    plan: Plan
    number: int
    mill: Mill
    factors: Mapping[str, float]
    room: Stockroom
    aside: frozenset[LoomKey] = frozenset()
    """Looms that were put off or left out since: nobody is to convert them by a card."""
    earlier: Mapping[LoomKey, Mill] = field(default_factory=dict)
    """Looms whose conversion began by another version of the method than today's, with the mill of that."""
    _scopes: dict[int, Mapping[LoomKey, LoomScope]] = field(default_factory=dict)
    """By version of the method."""
    _windows: Mapping[LoomKey, Iterable[Window]] | None = None
    _numbers: Mapping[LoomKey, str] | None = None

    @classmethod
    def read(
        cls, uow: UnitOfWork, room: Stockroom, plan: Plan, number: int, of: Collection[LoomKey] | None = None
    ) -> "CardMaker":
        """For the plan of that number; `of`: looms that are looked at alone, so that no others are worked out."""
        mill, stages = room.mill, uow.stages()
        alone = mill if of is None else replace(mill, looms={key: mill.looms[key] for key in of if key in mill.looms})
        aside = frozenset(key for key, change in stages.items() if change.stage in BESIDE)
        factors = learning_factors(learning(uow, mill))
        return cls(
            plan,
            number,
            alone,
            factors,
            room,
            aside,
            _begun_by_another(uow, alone, stages),
        )

    @property
    def bookings(self) -> tuple[Booking, ...]:
        return tuple(booking for booking in self.plan.bookings if booking.key not in self.aside)

    def card(self, booking: Booking) -> Card | None:
        """None where the loom is not to be had any more as it was booked."""
        if self._numbers is None:
            self._numbers = card_numbers(self.plan, self.number)
        mill = self.earlier.get(booking.key, self.mill)
        scope, loom = self._scoped(mill).get(booking.key), mill.looms.get(booking.key)
        contents = scope.contents.get(booking.kind, ()) if scope else ()
        content = next((c for c in contents if c.choices == booking.choices), None)
        if content is None or loom is None:
            return None
        loader = Loader(self.mill.terms.allowance, self.factors.get(loom.machine_type, 1.0))
        window = self.window(booking)
        key = booking.key
        short = missing(booking.parts, self.room.held(key), self.room.issued.get(key, {}))
        booked = BookedLoom(booking, content, short, window)
        return make_card(self._numbers[booking.key], self.number, mill, booked, loader.minutes)

    def window(self, booking: Booking) -> Window | None:
        """The window that it was booked for, by today's readings."""
        if self._windows is None:
            self._windows = forecast(self.mill, self.plan.as_of, self.plan.horizon_end)
        return booking.nearest(self._windows.get(booking.key, ()))

    def _scoped(self, mill: Mill) -> Mapping[LoomKey, LoomScope]:
        version = mill.method.version
        if version not in self._scopes:
            self._scopes[version] = scope_looms(mill, self.factors) if self.factors else scope_looms(mill)
        return self._scopes[version]

    def language(self, crew: str) -> str:
        """The first that the crew's rows name, else that of the terms."""
        named = (row.language for row in self.mill.crews if row.crew == crew and row.language)
        return next(named, self.mill.terms.language_of_cards)


def _begun_by_another(uow: UnitOfWork, mill: Mill, stages: Mapping[LoomKey, StageChange]) -> dict[LoomKey, Mill]:
    """Looms under way that began by another version of the method → the mill of that: their cards stay as they were."""
    then, begun = MethodThen(uow, mill), begun_at(uow.stage_history())
    under_way = (key for key, change in stages.items() if change.stage in UNDER_WAY)
    return {key: then.mill(begun.get(key)) for key in under_way if then.version(begun.get(key)) != mill.method.version}
