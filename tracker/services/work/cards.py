"""Cards of the published plan: of one loom, or of a week by crew; their files."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from functools import partial
from pathlib import Path
from typing import Any

from tracker.cards.content import BookedLoom, card_numbers, make_card
from tracker.domain.calendars import iso_week
from tracker.domain.cards import Card
from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import KitState
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import BESIDE, UNDER_WAY, StageChange
from tracker.domain.scopes import LoomScope
from tracker.domain.windows import Window
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, Message, UsageError, message
from tracker.export.cards.packs import Pack, PackLine, write_notes, write_packs
from tracker.export.cards.workbook import write_card_workbook
from tracker.forecast.beam_outs import forecast
from tracker.scope.content import scope_looms
from tracker.scope.experience import learning_factors
from tracker.scope.loads import Loader
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.method_then import MethodThen
from tracker.services.work.scope import learning
from tracker.services.work.sign_off import begun_at
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class CardsReport:
    mill: Mill
    week: str | None
    """ISO week; None where one loom was asked for."""
    packs: tuple[Pack, ...]
    """By crew in natural order."""

    @property
    def cards(self) -> tuple[Card, ...]:
        return tuple(card for pack in self.packs for card in pack.cards)

    @property
    def without(self) -> tuple[LoomKey, ...]:
        """Booked looms that no card can be made for: their list or the method has changed since."""
        return tuple(
            line.booking.key for pack in self.packs for line in pack.lines if not (line.card or line.taken_from)
        )

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "week": self.week,
            "cards": [_record(pack, card, self.mill) for pack in self.packs for card in pack.cards],
            "without": [{"hall": key.hall, "loom": key.loom} for key in self.without],
        }

    def messages(self) -> list[Message]:
        """What a person should know beside the files."""
        found = [message("cards-made", cards=len(self.cards), week=self.week)]
        if self.without:
            found.append(message("cards-without", looms=self.without))
        return found


def _record(pack: Pack, card: Card, mill: Mill) -> dict[str, Any]:
    start, end = (
        at.astimezone(mill.terms.zone).isoformat(timespec="minutes") for at in (card.booking.start, card.booking.end)
    )
    return {"card": card.number, "plan": card.plan, "method_version": card.method_version, "hall": card.key.hall,
            "loom": card.key.loom, "crew": pack.crew, "language": pack.language, "start": start, "end": end,
            "short": {part.part: part.short for part in card.parts if part.short}}  # fmt: skip


def cards(
    context: Context, loom: str | None = None, hall: str | None = None, week: str | None = None, crew: str | None = None,
    as_of: datetime | None = None,
) -> CardsReport:  # fmt: skip
    """The card of a loom, or of every conversion that a crew begins in an ISO week (default: that of `as_of`).

    DataError where no plan is published, the loom is not booked in it, or no crew of that name works in that week.
    """
    with context.reading() as uow:
        room, plan, mill = read_stockroom(uow, as_of, context.now()), uow.published_plan(), uow.mill()
        number = next((entry.number for entry in uow.plan_entries() if entry.published), 0)
        factors, stages = learning_factors(learning(uow, mill)), uow.stages()
        earlier = _begun_by_another(uow, mill, stages)
    if plan is None:
        raise DataError("no-plan-no-cards")
    at = planning_moment(mill.terms, as_of, context.now())
    aside = frozenset(key for key, change in stages.items() if change.stage in BESIDE)
    maker = _Maker(plan, number, mill, factors, {kit.key: kit for kit in room.kits}, aside, earlier)
    if loom is not None:
        return CardsReport(mill, None, (_one(maker, find_loom(mill, loom, hall)),))
    wanted = _week(week) if week else iso_week(at.astimezone(mill.terms.zone).date())
    packs = _packs(maker, wanted)
    if crew is not None:
        packs = _of_crew(packs, crew, wanted)
    return CardsReport(mill, wanted, packs)


def _of_crew(packs: tuple[Pack, ...], crew: str, week: str) -> tuple[Pack, ...]:
    found = tuple(pack for pack in packs if fold(pack.crew) == fold(crew))
    if not packs:
        raise DataError("no-cards", week=week)
    if not found:
        raise DataError("no-cards-of-crew", crew=crew, week=week, crews=[pack.crew for pack in packs])
    return found


def write_cards(
    report: CardsReport, pdf: Path | None = None, workbook: Path | None = None, notes: Path | None = None
) -> None:
    """Write the cards as PDF and as a workbook to fill in, and a weaver's note for each (.pdf). DataError where there are none
    to write."""
    if not report.packs:
        raise DataError("no-cards", week=report.week)
    terms = report.mill.terms
    if pdf:
        write_packs(pdf, report.packs, terms.zone, terms.programme, report.week, terms.address_of_screens)
    if workbook:
        write_card_workbook(workbook, report.cards, terms.zone)
    if notes:
        write_notes(notes, report.packs, terms.zone, terms.programme)


def _week(text: str) -> str:
    try:
        year, _, number = text.upper().partition("-W")
        return iso_week(date.fromisocalendar(int(year), int(number), 1))
    except ValueError:
        raise UsageError("no-week", text=text) from None


@dataclass(slots=True)
class _Maker:
    """Makes cards; what all of them need is worked out once."""

    plan: Plan
    number: int
    mill: Mill
    factors: Mapping[str, float]
    kits: Mapping[LoomKey, KitState]
    aside: frozenset[LoomKey] = frozenset()
    """Looms that were put off or left out since: nobody is to convert them by a card."""
    earlier: Mapping[LoomKey, Mill] = field(default_factory=dict)
    """Looms whose conversion began by another version of the method than today's, with the mill of that."""
    _scopes: dict[int, Mapping[LoomKey, LoomScope]] = field(default_factory=dict)
    """By version of the method."""
    _windows: Mapping[LoomKey, Iterable[Window]] | None = None
    _numbers: Mapping[LoomKey, str] | None = None

    @property
    def bookings(self) -> tuple[Booking, ...]:
        return tuple(booking for booking in self.plan.bookings if booking.key not in self.aside)

    def card(self, booking: Booking) -> Card | None:
        """None where the loom is not to be had any more as it was booked."""
        if self._windows is None:
            self._windows = forecast(self.mill, self.plan.as_of, self.plan.horizon_end)
            self._numbers = card_numbers(self.plan, self.number)
        assert self._numbers is not None
        mill = self.earlier.get(booking.key, self.mill)
        scope, loom = self._scoped(mill).get(booking.key), mill.looms.get(booking.key)
        contents = scope.contents.get(booking.kind, ()) if scope else ()
        content = next((c for c in contents if c.choices == booking.choices), None)
        if content is None or loom is None:
            return None
        loader = Loader(self.mill.terms.allowance, self.factors.get(loom.machine_type, 1.0))
        window = booking.nearest(self._windows.get(booking.key, ()))
        booked = BookedLoom(booking, content, self.kits.get(booking.key), window)
        return make_card(self._numbers[booking.key], self.number, mill, booked, loader.minutes)

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


def _one(maker: _Maker, key: LoomKey) -> Pack:
    booking = next((b for b in maker.bookings if b.key == key), None)
    if booking is None:
        raise DataError("not-booked-no-card", loom=key)
    card = maker.card(booking)
    if card is None:
        raise DataError("card-not-as-booked", loom=key)
    return Pack(card.crew, maker.language(card.crew), (PackLine(booking, booking.start, booking.end, card),))


def _packs(maker: _Maker, week: str) -> tuple[Pack, ...]:
    lines: dict[str, list[PackLine]] = {}
    in_week: Callable[[datetime], bool] = partial(_is_in, week, maker.mill)
    for booking in maker.bookings:
        if not booking.crews and in_week(booking.start):
            lines.setdefault("", []).append(PackLine(booking, booking.start, booking.end, maker.card(booking)))
        told: set[str] = set()
        for turn in booking.crews:
            if turn.crew in told or not in_week(turn.start):
                continue
            told.add(turn.crew)
            first = booking.crews[0].crew
            own = turn.crew == first
            if own and not in_week(booking.start):
                continue  # its card was in the pack of the week before
            card, giver = (maker.card(booking), "") if own else (None, first)
            lines.setdefault(turn.crew, []).append(PackLine(booking, turn.start, turn.end, card, giver))
    return tuple(
        Pack(
            crew,
            maker.language(crew),
            tuple(sorted(lines[crew], key=lambda line: (line.start, line.booking.key.sort_key))),
        )
        for crew in sorted(lines, key=natural_key)
    )


def _is_in(week: str, mill: Mill, at: datetime) -> bool:
    return iso_week(at.astimezone(mill.terms.zone).date()) == week
