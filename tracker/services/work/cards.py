"""Cards of the published plan: of one loom, or of a week by crew; their files."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any

from tracker.domain.calendars import iso_week
from tracker.domain.cards import Card
from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, Message, message
from tracker.export.cards.packs import Pack, PackLine, write_notes, write_packs
from tracker.export.cards.workbook import write_card_workbook
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.moments import monday_of
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.card_maker import CardMaker


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
        number = uow.published_number() or 0
        maker = CardMaker.read(uow, room, plan, number) if plan else None
    if maker is None:
        raise DataError("no-plan-no-cards")
    at = planning_moment(mill.terms, as_of, context.now())
    if loom is not None:
        return CardsReport(mill, None, (_one(maker, find_loom(mill, loom, hall)),))
    wanted = iso_week(monday_of(week)) if week else iso_week(at.astimezone(mill.terms.zone).date())
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
    report: CardsReport,
    pdf: Path | None = None,
    workbook: Path | None = None,
    notes: Path | None = None,
    language: str = "en",
) -> None:
    """Write the cards as PDF and as a workbook to fill in, and a weaver's note for each (.pdf). DataError where there are none
    to write."""
    if not report.packs:
        raise DataError("no-cards", week=report.week)
    terms = report.mill.terms
    if pdf:
        write_packs(pdf, report.packs, terms.zone, terms.programme, report.week, terms.address_of_screens)
    if workbook:
        write_card_workbook(workbook, report.cards, terms.zone, language)
    if notes:
        write_notes(notes, report.packs, terms.zone, terms.programme)


def _one(maker: CardMaker, key: LoomKey) -> Pack:
    booking = next((b for b in maker.bookings if b.key == key), None)
    if booking is None:
        raise DataError("not-booked-no-card", loom=key)
    card = maker.card(booking)
    if card is None:
        raise DataError("card-not-as-booked", loom=key)
    return Pack(card.crew, maker.language(card.crew), (PackLine(booking, booking.start, booking.end, card),))


def _packs(maker: CardMaker, week: str) -> tuple[Pack, ...]:
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
