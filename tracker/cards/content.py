"""One booked loom's card."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field

from tracker.domain.card_numbers import card_number, card_place
from tracker.domain.cards import Card, CardCaution, CardOperation, CardPart, CardSetting, CardTool, is_held
from tracker.domain.method import PLACES, Check, Operation, Setpoint
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import Quantities
from tracker.domain.plan import Booking, Plan
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold, natural_key
from tracker.domain.work import WorkContent

_CHANGES = (WindowKind.REPEAT, WindowKind.STYLE)
Minutes = Callable[[Operation], float]
"""Elapsed minutes of an operation as the next plan counts them."""


def card_numbers(plan: Plan, number: int) -> dict[LoomKey, str]:
    """The number of each booked loom's card. A published plan does not change, and so its numbers do not either."""
    places = card_place(booking.key for booking in plan.bookings)
    return {key: card_number(number, place) for place, key in places.items()}


@dataclass(frozen=True, slots=True)
class BookedLoom:
    """A booking and what today's data say of it."""

    booking: Booking
    content: WorkContent
    """Its work by today's method."""
    short: Quantities = field(default_factory=dict)
    """Part → what is neither reserved nor issued yet."""
    window: Window | None = None
    """The one that it was made for, where the forecast still knows it."""


def make_card(number: str, plan: int, mill: Mill, booked: BookedLoom, minutes: Minutes) -> Card:
    """The card of a booking of plan number `plan`."""
    booking, content, window = booked.booking, booked.content, booked.window
    cautions = _cautions(content.operations)
    warps = mill.warps.get(booking.key, ())
    article = (window.article_out if window else None) or (warps[0].article if warps else None)
    changes = booking.kind in _CHANGES
    return Card(
        number, plan, mill.method.version, booking.key, mill.looms[booking.key], booking, article,
        window.article_in if window and changes else None if changes else article,
        window.p50_at if window and changes else booking.beam_out_p50,
        cautions, _tools(content.operations, booking), _parts(content, mill, booked.short),
        _operations(content, booking, minutes, cautions), _settings(content.setpoints), _checks(content.checks),
    )  # fmt: skip


def _cautions(operations: Iterable[Operation]) -> tuple[CardCaution, ...]:
    steps: dict[str, dict[int, None]] = {}
    for row in _in_order(operations):
        if row.caution and row.caution.strip():
            steps.setdefault(row.caution.strip(), {})[row.step] = None
    return tuple(CardCaution(text, tuple(at)) for text, at in steps.items())


def _in_order(operations: Iterable[Operation]) -> list[Operation]:
    places = {place: i for i, place in enumerate(PLACES)}
    return sorted(operations, key=lambda row: (places.get(row.place, len(places)), row.step))


def _operations(
    content: WorkContent, booking: Booking, minutes: Minutes, cautions: Sequence[CardCaution]
) -> tuple[CardOperation, ...]:
    share = booking.learned_since(content)
    numbers = {caution.text: i for i, caution in enumerate(cautions, 1)}
    return tuple(
        CardOperation(
            row,
            minutes(row) * (share if row.learns and row.place == "on loom" else 1.0),
            (numbers[row.caution.strip()],) if row.caution and row.caution.strip() else (),
        )
        for row in _in_order(content.operations)
    )


def _tools(operations: Iterable[Operation], booking: Booking) -> tuple[CardTool, ...]:
    steps: dict[str, dict[int, None]] = {}
    names: dict[str, str] = {}
    for row in _in_order(operations):
        if row.tool:
            steps.setdefault(fold(row.tool), {})[row.step] = None
            names.setdefault(fold(row.tool), row.tool)
    booked: dict[str, list] = {}
    for need in booking.needs:
        if need.kind == "tool":
            booked.setdefault(fold(need.what), []).append(need)
    return tuple(
        CardTool(names[tool], max((need.amount for need in booked.get(tool, ())), default=1), tuple(at),
                 tuple((need.start, need.end) for need in booked.get(tool, ())))
        for tool, at in steps.items()
    )  # fmt: skip


def _parts(content: WorkContent, mill: Mill, short: Quantities) -> tuple[CardPart, ...]:
    back = {line.part for line in content.kit_lines if line.comes_back}
    found = [_part(name, quantity, mill, name in back, short) for name, quantity in content.parts.items()]
    return tuple(sorted(found, key=lambda p: (not p.location, natural_key(p.location), natural_key(p.part))))


def _part(name: str, quantity: float, mill: Mill, comes_back: bool, short: Quantities) -> CardPart:
    known = mill.parts.get(name)
    described = (known.description or "", known.unit or "", known.location or "") if known else ("", "", "")
    return CardPart(name, *described, quantity, comes_back, short.get(name, 0.0))


def _settings(setpoints: Iterable[Setpoint]) -> tuple[CardSetting, ...]:
    lines: dict[tuple[str, str], list[dict[str, Setpoint]]] = {}
    for row in setpoints:
        side = fold(row.side or "")
        side = side if side in ("left", "right") else "whole"
        of_setting = lines.setdefault((row.setting, row.unit or ""), [])
        free = next((line for line in of_setting if side not in line), None)
        if free is None:
            of_setting.append(free := {})
        free[side] = row
    return tuple(CardSetting(setting, unit, **line) for (setting, unit), many in lines.items() for line in many)


def _checks(checks: Iterable[Check]) -> tuple[Check, ...]:
    return tuple(sorted(checks, key=lambda check: not is_held(check)))
