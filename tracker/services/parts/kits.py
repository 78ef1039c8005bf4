"""The kits of the booked looms, the pick lists, and the price of the choices that the plan took."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.needs import ChoicePrice, KitState, PickLine
from tracker.domain.work import Choices, labour_cost, parts_cost
from tracker.errors import DataError, Message, message
from tracker.kits.choices import choice_prices
from tracker.kits.picking import pick_lines
from tracker.mill_state.stockroom import Stockroom, part_units
from tracker.planning.model.pools import trade_rates
from tracker.scope.content import scope_looms
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.stockroom import read_stockroom

STATES = ("issued", "complete", "reserved", "short")
"""In the words of the trade; `reserved`: what lacks is on order and due in time."""


@dataclass(frozen=True, slots=True)
class KitsReport:
    zone: ZoneInfo
    kits: tuple[KitState, ...]
    """In booking order."""
    units: Mapping[str, str]
    """Part → unit."""

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it: one entry per booked loom."""
        return [_kit_record(kit, self.zone) for kit in self.kits]

    def messages(self) -> list[Message]:
        """What a person should know beside the table."""
        counts = Counter(kit.state for kit in self.kits)
        return [message("kits-counted", kits=len(self.kits), **{state: counts[state] for state in STATES})]


@dataclass(frozen=True, slots=True)
class PickReport:
    first: date
    last: date
    picks: tuple[PickLine, ...]
    """By day and kit; within a kit shortages first, then by location."""

    def record(self) -> list[dict[str, Any]]:
        return [
            {"day": line.day.isoformat(), "hall": line.key.hall, "loom": line.key.loom, "location": line.location,
             "part": line.part, "description": line.description, "unit": line.unit, "quantity": line.quantity,
             "short": line.short}
            for line in self.picks
        ]  # fmt: skip

    def messages(self) -> list[Message]:
        """What a person should know beside the list."""
        last = None if self.first == self.last else self.last
        kits, short = {line.key for line in self.picks}, {line.key for line in self.picks if line.short}
        return [message("kits-to-pick", first=self.first, last=last, kits=len(kits), short=len(short))]


@dataclass(frozen=True, slots=True)
class ChoicesReport:
    currency: str
    prices: tuple[ChoicePrice, ...]
    """By booking; one entry for each combination of choices that was not taken."""

    def record(self) -> list[dict[str, Any]]:
        return [
            {"hall": p.key.hall, "loom": p.key.loom, "taken": dict(p.taken), "other": dict(p.other), "parts": p.parts,
             "labour": p.labour, "on_loom_min": p.on_loom_min, "extra_cost": p.extra_cost}
            for p in self.prices
        ]  # fmt: skip

    def messages(self) -> list[Message]:
        """How often each alternative was taken, and what its rival would have cost in parts and labour."""
        found: dict[tuple[Choices, Choices], list[ChoicePrice]] = {}
        for price in self.prices:
            found.setdefault((price.taken, price.other), []).append(price)
        said = [_choice(taken, other, prices, self.currency) for (taken, other), prices in found.items()]
        return said or [message("no-choices")]


def kits(
    context: Context, loom: str | None = None, hall: str | None = None, as_of: datetime | None = None
) -> KitsReport:
    """The kit of every booked loom of the published plan, or of one loom. DataError where there is none."""
    room = _room(context, as_of)
    found = room.kits
    if loom is not None:
        key = find_loom(room.mill, loom, hall)
        found = tuple(kit for kit in found if kit.key == key)
        if not found:
            raise DataError("loom-without-booking", loom=key, then="kit")
    return KitsReport(room.mill.terms.zone, found, part_units(room.mill))


def pick_list(context: Context, first: date | None = None, days: int = 1, as_of: datetime | None = None) -> PickReport:
    """What to pick for the conversions that start on `days` local days from `first` (default: the day of `as_of`)."""
    room = _room(context, as_of)
    begin = first or planning_moment(room.mill.terms, as_of, context.now()).astimezone(room.mill.terms.zone).date()
    last = begin + timedelta(days=days - 1)
    return PickReport(begin, last, pick_lines(room.kits, room.mill, begin, last))


def prices_of_choices(context: Context) -> ChoicesReport:
    """Which alternatives the published plan took for which loom, and what the others would have cost."""
    room = _room(context)
    assert room.plan
    contents = {key: scope.contents for key, scope in scope_looms(room.mill).items()}
    rates = trade_rates(room.mill)
    prices = choice_prices(
        room.plan,
        contents,
        lambda content: parts_cost(content, room.mill.parts),
        lambda content: labour_cost(content, rates),
    )
    return ChoicesReport(room.mill.terms.currency, prices)


def _room(context: Context, as_of: datetime | None = None) -> Stockroom:
    with context.reading() as uow:
        room = read_stockroom(uow, as_of, context.now())
    if room.plan is None:
        raise DataError("no-kits-yet")
    return room


def _choice(taken: Choices, other: Choices, prices: list[ChoicePrice], currency: str) -> Message:
    parts, labour = sum(p.parts for p in prices), sum(p.labour for p in prices)
    return message(
        "choice-taken", taken=_named(taken), other=_named(other), looms=len(prices),
        parts=_against(parts, currency), labour=_against(labour, currency),
    )  # fmt: skip


def _named(choices: Choices) -> list[str]:
    return [alternative for _, alternative in choices]


def _against(amount: float, currency: str) -> Message:
    how = "same" if not round(amount) else "dearer" if amount > 0 else "cheaper"
    return message("money-against", how=how, amount=abs(amount), currency=currency)


def _kit_record(kit: KitState, zone: ZoneInfo) -> dict[str, Any]:
    return {
        "hall": kit.key.hall,
        "loom": kit.key.loom,
        "start": kit.start.astimezone(zone).isoformat(timespec="minutes"),
        "state": kit.state,
        "complete": kit.complete,
        "needed": dict(kit.needed),
        "reserved": dict(kit.reserved),
        "issued": dict(kit.issued),
        "short": dict(kit.short),
        "expected": {part: due.isoformat() for part, due in kit.expected.items()},
    }
