"""The blocks of a card, in the order in which they stand on it."""

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Spacer, Table, TableStyle

from tracker.domain.cards import BLANKS, SIX_TIMES, USUAL_CAUTIONS, Card, CardOperation, CardPart, CardSetting, is_held
from tracker.domain.method import PLACES, Check
from tracker.domain.plan import Need
from tracker.domain.words import fold
from tracker.export.cards.paper import SMALL, WIDTH, SquareCode, heading, pair, ruled, shaded, small
from tracker.export.cards.words import CardWords
from tracker.export.pdf import TickBox

_WARP = {"out": "card-warp-out", "in": "card-warp-in"}
_CODE = 24 * mm


def head(card: Card, words: CardWords, leads_to: str) -> list[Flowable]:
    """Which loom, where, when and who; what the loom list says of it. `leads_to` is what the square code holds."""
    loom, booking = card.loom, card.booking
    title = [small(f"{words('card-loom')} {card.key.loom}", 18, bold=True)]
    if booking.pilot:
        title.append(small(words("card-pilot"), 9, bold=True))
    if booking.attended_by:
        title.append(small(words("card-attended", trade=booking.attended_by), 9, bold=True))
    where = [("card-hall", card.key.hall), ("card-row", loom.row), ("card-place", loom.place)]
    at = " · ".join(_named(words(code), value) for code, value in where if value)
    from_plan = f"{words('card-plan')} {card.plan} · {words('card-method')} {card.method_version}"
    title += [small(at, 9), pair(words("card-machine-type"), loom.machine_type, 9), small(from_plan, SMALL)]
    number = [SquareCode(leads_to, _CODE), small(card.number, 8, bold=True)]
    top = Table([[title, _facts(card, words), number]], colWidths=[58 * mm, WIDTH - 58 * mm - _CODE - 4, _CODE + 4])
    top.setStyle(TableStyle([("VALIGN", (0, 0), (-1, -1), "TOP"), *[(f"{side}PADDING", (0, 0), (-1, -1), 0) for side in
                                                                   ("LEFT", "RIGHT", "TOP", "BOTTOM")]]))  # fmt: skip
    return [top, *_as_listed(card, words)]


def _named(label: str, value: str) -> str:
    """`Row 3`; `Hall 1`, not `Hall Hall 1`."""
    return value if fold(value).startswith(fold(label)) else f"{label} {value}"


def _facts(card: Card, words: CardWords) -> list[Flowable]:
    booking = card.booking
    lines = [
        ("card-start", words.moment(booking.start)),
        ("card-end", words.moment(booking.end)),
        ("card-crew", "; ".join(f"{turn.crew} {words.hours(turn.start, turn.end, booking.start)}" for turn in booking.crews)
         or words("card-no-crew")),
        ("card-needs", "; ".join(_need(need, booking.start, words) for need in booking.needs)),
        ("card-window", words.kind(booking.kind)),
        ("card-beam-out", words.moment(card.beam_out) if card.beam_out else ""),
        ("card-choices", "; ".join(f"{choice}: {taken}" for choice, taken in booking.choices)),
        ("card-article", card.article or ""),
        ("card-article-in", card.article_in or words("card-unknown")),
    ]  # fmt: skip
    return [pair(words(code), value) for code, value in lines if value]


def _need(need: Need, begun: datetime, words: CardWords) -> str:
    return f"{need.amount} {need.what} {words.hours(need.start, need.end, begun)}"


def _as_listed(card: Card, words: CardWords) -> list[Flowable]:
    known = {**card.loom.attributes, **{name: value for name, value in _core(card) if value is not None}}
    blanks = _blank_names(words)
    said = "; ".join(f"{name}: {words.value(value)}" for name, value in known.items()
                     if value is not None and fold(name) not in blanks)  # fmt: skip
    return [pair(words("card-as-listed") + ".", said, SMALL)] if said else []


def _core(card: Card) -> list[tuple[str, Any]]:
    return [("reed width (cm)", card.loom.reed_width_cm), ("frames", card.loom.frames)]


# ---------------------------------------------------------------------- before the start


def blanks(card: Card, words: CardWords) -> list[Flowable]:
    """What must be known before it; in by hand where the loom list has no column of that name."""
    names = {fold(name): value for name, value in card.loom.attributes.items()}
    english = CardWords("en", words.zone)
    cells = []
    for code in BLANKS:
        value = next((names[fold(w(code))] for w in (words, english) if names.get(fold(w(code))) is not None), None)
        cells.append(
            [small(words(code), SMALL, bold=True), *([small(words.value(value))] if value is not None else [])]
        )
    half = (len(cells) + 1) // 2
    rows = [[cells[i] for i in range(half)], [cells[i] for i in range(half, len(cells))]]
    return [
        heading(words("card-blanks")),
        ruled(rows, [WIDTH / half] * half, heads=0, low=7.5 * mm),
        heading(words("card-times")),
        ruled([[small(words(code), SMALL, bold=True) for code in SIX_TIMES]], [WIDTH / 6] * 6, heads=0, low=7.5 * mm),
    ]


def _blank_names(words: CardWords) -> set[str]:
    return {fold(w(code)) for code in BLANKS for w in (words, CardWords("en", words.zone))}


def cautions(card: Card, words: CardWords) -> list[Flowable]:
    """The usual cautions in two columns, those of the method with their steps, the hold points."""
    usual = [small(f"– {words(code)}", SMALL) for code in USUAL_CAUTIONS]
    half = (len(usual) + 1) // 2
    two = ruled([[usual[:half], usual[half:]], [small(words("card-defers"), SMALL, bold=True), ""]], [WIDTH / 2] * 2, heads=0,
                more=[("SPAN", (0, 1), (-1, 1))])  # fmt: skip
    step = words("card-step")
    own = [
        [small(f"!{i}", SMALL, bold=True), small(f"{caution.text} ({step} {_listed(caution.steps)})", SMALL)]
        for i, caution in enumerate(card.cautions, 1)
    ]
    found: list[Flowable] = [heading(words("card-cautions")), two]
    if own:
        found.append(ruled(_in_columns(own, 2), [7 * mm, WIDTH / 2 - 7 * mm] * 2, heads=0))
    return [*found, *_holds(card, words)]


def _holds(card: Card, words: CardWords) -> list[Flowable]:
    """What is held whatever the method says, the operations that it holds with room to sign, the checks that it holds."""
    step, signed = words("card-step"), small(words("card-signed"), SMALL)
    held = [
        [small(f"{step} {o.row.step}: {o.row.operation}", SMALL, bold=True), signed]
        for o in card.operations
        if o.is_hold
    ]
    checks = "; ".join(_check_text(check, words) for check in card.checks if is_held(check))
    found: list[Flowable] = [
        CondPageBreak(40),
        heading(words("card-holds"), keep=False),
        ruled(
            [
                [small(words("card-holds-always"), bold=True), ""],
                [small(words("card-holds-electrical"), bold=True), signed],
            ],
            [WIDTH - 36 * mm, 36 * mm],
            heads=0,
            more=[("SPAN", (0, 0), (-1, 0))],
        ),
    ]
    if held:
        found.append(ruled(_in_columns(held, 2), [WIDTH / 2 - 20 * mm, 20 * mm] * 2, heads=0))
    return [*found, *([ruled([[pair(words("card-checks"), checks, SMALL)]], [WIDTH], heads=0)] if checks else [])]


def _listed(steps: Sequence[int]) -> str:
    return ", ".join(map(str, steps))


# ---------------------------------------------------------------------- what it takes


def tools(card: Card, words: CardWords) -> list[Flowable]:
    if not card.tools:
        return []
    rows = []
    for tool in card.tools:
        booked = "; ".join(words.hours(start, end, card.booking.start) for start, end in tool.spans)
        rows.append([TickBox(7), small(f"{tool.how_many} × {tool.tool}"), small(booked),
                     small(f"{words('card-step')} {_listed(tool.steps)}")])  # fmt: skip
    return [heading(words("card-tools")), ruled(rows, [6 * mm, 50 * mm, 60 * mm, WIDTH - 116 * mm], heads=0)]


def kit(card: Card, words: CardWords) -> list[Flowable]:
    """In two columns, down the left one first, by store location."""
    if not card.parts:
        return []
    rows = _in_columns([_part(part, words) for part in card.parts], 2)
    return [
        CondPageBreak(40),
        heading(words("card-kit"), keep=False),
        ruled(rows, [5 * mm, 13 * mm, WIDTH / 2 - 34 * mm, 16 * mm] * 2, heads=0),
    ]


def _in_columns(rows: Sequence[list[Any]], columns: int) -> list[list[Any]]:
    """The rows in columns, down the left one first."""
    high = -(-len(rows) // columns)
    filled = [*rows, *[[""] * len(rows[0])] * (columns * high - len(rows))]
    return [[cell for i in range(columns) for cell in filled[i * high + row]] for row in range(high)]


def _part(part: CardPart, words: CardWords) -> list[Any]:
    said = [part.part + (f", {part.description}" if part.description else "")]
    if part.comes_back:
        said.append(f"({words('card-comes-back')})")
    text = [small(" ".join(said), SMALL)]
    if part.short:
        text.append(small(words("card-short", quantity=words.quantity(part.short, part.unit)), bold=True))
    return [TickBox(7), small(part.location or words("card-no-location"), SMALL), text,
            small(words.quantity(part.quantity, part.unit), right=True)]  # fmt: skip


# ---------------------------------------------------------------------- what is done


def operations(card: Card, words: CardWords) -> list[Flowable]:
    codes = (
        "card-step",
        "card-operation",
        "card-trade",
        "card-heads",
        "card-minutes",
        "card-torque",
        "card-done",
        "card-taken",
    )
    rows: list[list[Any]] = [[small(words(code), SMALL, bold=True) for code in codes]]
    heads: list[tuple] = []
    place = ""
    for operation in card.operations:
        if operation.row.place != place:
            place = operation.row.place
            heads += shaded(len(rows))
            rows.append(
                [small(words(PLACES[place]) if place in PLACES else place, bold=True), *[""] * (len(codes) - 1)]
            )
        rows.append(_operation(operation, words))
    widths = [11 * mm, WIDTH - 86 * mm, 18 * mm, 12 * mm, 9 * mm, 9 * mm, 11 * mm, 16 * mm]
    return [CondPageBreak(40), heading(words("card-operations"), keep=False), ruled(rows, widths, more=heads)]


def _operation(operation: CardOperation, words: CardWords) -> list[Any]:
    row = operation.row
    marks = [words("card-hold")] if operation.is_hold else []
    marks += [f"!{number}" for number in operation.cautions]
    notes = [words(_WARP[row.warp])] if row.warp in _WARP else []
    notes += [row.tool] if row.tool else []
    notes += [words("card-neighbours")] if row.stops_neighbours else []
    text = pair(" ".join(marks), row.operation + (f" ({'; '.join(notes)})" if notes else ""))
    figures = (str(row.heads), f"{operation.minutes:.0f}", words.value(row.torque_nm))
    return [
        small(str(row.step)),
        text,
        small(row.trade),
        *(small(figure, right=True) for figure in figures),
        TickBox(7),
        "",
    ]


# ---------------------------------------------------------------------- what is set and checked


def settings(card: Card, words: CardWords) -> list[Flowable]:
    if not card.settings:
        return []
    target, found, put = words("card-target"), words("card-found"), words("card-set")
    rows: list[list[Any]] = [
        [small(words("card-setting"), SMALL, bold=True),
         *(small(f"{words(side)}: {text}" if text == target else text, SMALL, bold=True)
           for side in ("card-left", "card-right") for text in (target, found, put))]
    ]  # fmt: skip
    rows += [_setting(setting, words) for setting in card.settings]
    side = [32 * mm, 20 * mm, 18 * mm]
    return [
        CondPageBreak(40),
        heading(words("card-settings"), keep=False),
        ruled(rows, [WIDTH - 140 * mm, *side, *side]),
    ]


def _setting(setting: CardSetting, words: CardWords) -> list[Any]:
    name = setting.setting + (f" ({setting.unit})" if setting.unit else "")
    if setting.whole and not (setting.left or setting.right):
        return [small(name), small(f"{words('card-whole')}: {words.target(setting.whole)}"), "", "", "", "", ""]
    left, right = (words.target(row) for row in (setting.left, setting.right))
    if setting.whole:
        name += f"; {words('card-whole')}: {words.target(setting.whole)}"
    return [small(name), small(left or "—"), "", "", small(right or "—"), "", ""]


def checks(card: Card, words: CardWords) -> list[Flowable]:
    """In two columns, those that nothing waives first."""
    if not card.checks:
        return []
    rows = _in_columns([_check(check, words) for check in card.checks], 2)
    return [
        CondPageBreak(40),
        heading(words("card-checks"), keep=False),
        ruled(rows, [WIDTH / 2 - 22 * mm, 22 * mm] * 2, heads=0),
    ]


def _check(check: Check, words: CardWords) -> list[Any]:
    text = pair(words("card-hold"), _check_text(check, words)) if is_held(check) else small(_check_text(check, words))
    if check.kind == "number":
        return [text, ""]
    boxes = Table(
        [[TickBox(7), small(words("card-yes")), TickBox(7), small(words("card-no"))]], colWidths=[10, 20, 10, 20]
    )
    boxes.setStyle(TableStyle([(f"{side}PADDING", (0, 0), (-1, -1), 0) for side in ("LEFT", "RIGHT", "TOP", "BOTTOM")]))
    return [text, boxes]


def _check_text(check: Check, words: CardWords) -> str:
    limits = words.limits(check)
    return ", ".join(text for text in (check.check, words.side(check.side), limits) if text)


def names(card: Card, words: CardWords) -> list[Flowable]:
    """Room for remarks, beside it who did it and when."""
    roles = [words(code) for code in ("card-fitter", "card-electrician", "card-weaver")]
    heads = [small(text, SMALL, bold=True) for text in (words("card-remarks"), words("card-names"))]
    named = [small(role, SMALL, bold=True) for role in roles]
    more = [("SPAN", (1, 0), (-1, 0)), ("SPAN", (0, 0), (0, 1))]
    boxes = ruled(
        [[heads[0], heads[1], "", ""], ["", *named]], [WIDTH / 2, *[WIDTH / 6] * 3], 0, more, low=(3.2 * mm, 10 * mm)
    )
    return [KeepTogether([Spacer(1, 3), boxes])]


ALL = (blanks, cautions, tools, kit, operations, settings, checks, names)
"""What follows the head."""
