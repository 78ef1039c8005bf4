"""Cards as a workbook to fill in: what is known stands there, what a crew writes down is framed."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.cards import Card
from tracker.domain.own_sheets import CARDS_TITLE
from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet, write_tables

_LOOM = (Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER))
_STAGES = ("in work", "run-in", "signed off", "stopped")
_WHYS = ("found", "set", "adjusted", "visit", "read out")
WORK_DONE = (
    *_LOOM, Col("Card", Kind.IDENTIFIER), Col("Operation", width=66, about="Empty = the whole conversion."),
    Col("Started", Kind.MOMENT, needed=True), Col("Ended", Kind.MOMENT, about="Needed unless it is in work."),
    Col("Crew", Kind.IDENTIFIER), Col("Stage reached", Kind.WORD, words=_STAGES, needed=True),
    Col("Beam-out", Kind.MOMENT), Col("Locked", Kind.MOMENT), Col("Unlocked", Kind.MOMENT), Col("First pick", Kind.MOMENT),
    Col("At speed", Kind.MOMENT), Col("Minutes", Kind.NUMBER, about="May stay empty for an operation."),
    Col("Heads", Kind.INTEGER), Col("Torque read (N·m)", Kind.NUMBER), Col("Done by"), Col("Remark", width=30), Col("Hand over"),
)  # fmt: skip
SET_VALUES = (
    *_LOOM, Col("Side"), Col("Setting", needed=True), Col("Value", Kind.ANY, needed=True), Col("At", Kind.MOMENT, needed=True),
    Col("Who"), Col("Why", Kind.WORD, words=_WHYS), Col("Article", Kind.IDENTIFIER), Col("Waived because"), Col("Waived by"),
    Col("Waived at", Kind.MOMENT),
)  # fmt: skip
CHECK_RESULTS = (
    *_LOOM, Col("Side"), Col("Check", needed=True, width=46), Col("Result", Kind.ANY, needed=True, about="Yes, no or a number."),
    Col("At", Kind.MOMENT, needed=True), Col("Who"), Col("Waived because"), Col("Waived by"), Col("Waived at", Kind.MOMENT),
)  # fmt: skip
PARTS_USED = (
    *_LOOM, Col("Part", Kind.IDENTIFIER, needed=True), Col("Used", Kind.NUMBER, needed=True), Col("Left over", Kind.NUMBER),
    Col("Broken", Kind.NUMBER),
)  # fmt: skip
BOBBINS = (
    *_LOOM, Col("Side", Kind.WORD, words=("left", "right"), needed=True), Col("At", Kind.MOMENT, needed=True),
    Col("Grams left", Kind.NUMBER, needed=True), Col("Tex", Kind.NUMBER),
)  # fmt: skip
STOPS = (
    *_LOOM, Col("From", Kind.MOMENT, needed=True), Col("To", Kind.MOMENT, needed=True), Col("Article", Kind.IDENTIFIER),
    Col("Cause", about="Empty = all."), Col("Stops", Kind.INTEGER, needed=True), Col("Picks", Kind.NUMBER, needed=True),
    Col("Hours", Kind.NUMBER), Col("Efficiency", Kind.FRACTION),
)  # fmt: skip
WASTE = (
    *_LOOM, Col("From", Kind.MOMENT, needed=True), Col("To", Kind.MOMENT, needed=True), Col("Side"),
    Col("Waste width (mm)", Kind.NUMBER, needed=True), Col("Article", Kind.IDENTIFIER),
)  # fmt: skip

_FILLED = {
    "Work done": {"Started", "Ended", "Stage reached", "Beam-out", "Locked", "Unlocked", "First pick", "At speed", "Remark"},
    "Set values": {"Value", "At", "Who"}, "Check results": {"Result", "At", "Who"}, "Parts used": {"Used", "Left over", "Broken"},
    "Bobbins": {"At", "Grams left", "Tex"},
}  # fmt: skip
"""Sheet → the columns that are framed."""
_OF_OPERATION = {"Minutes", "Torque read (N·m)", "Done by", "Remark"}


def write_card_workbook(path: str | Path, cards: Sequence[Card], zone: ZoneInfo) -> None:
    """Write the cards (.xlsx): a sheet that lists them, then the sheets to fill in with a row for all that a card asks for,
    under the headings that a load knows. Nothing is filled in for a crew that only it can know."""
    write_tables(path, [
        _list(cards, zone),
        _sheet("Work done", WORK_DONE, [row for card in cards for row in _work(card)]),
        _sheet("Set values", SET_VALUES, [row for card in cards for row in _settings(card)]),
        _sheet("Check results", CHECK_RESULTS, [[*card.key[::-1], c.side, c.check, *[None] * 6] for card in cards
                                                for c in card.checks]),
        _sheet("Parts used", PARTS_USED, [[*card.key[::-1], part.part, None, None, None] for card in cards
                                          for part in card.parts]),
        _sheet("Bobbins", BOBBINS, [[*card.key[::-1], side, None, None, None] for card in cards for side in _sides(card)]),
        _sheet("Stops", STOPS, []),
        _sheet("Waste", WASTE, []),
    ])  # fmt: skip


def _list(cards: Sequence[Card], zone: ZoneInfo) -> TidySheet:
    columns = [
        Col("Card", Kind.IDENTIFIER), *_LOOM, Col("Machine type"), Col("Start", Kind.MOMENT), Col("End", Kind.MOMENT), Col("Crew"),
        Col("Plan", Kind.INTEGER), Col("Method version", Kind.INTEGER),
    ]  # fmt: skip
    rows = [
        [card.number, card.key.loom, card.key.hall, card.loom.machine_type,
         *(at.astimezone(zone).replace(tzinfo=None) for at in (card.booking.start, card.booking.end)),
         card.booking.crew_names, card.plan, card.method_version]
        for card in cards
    ]  # fmt: skip
    lines = (
        CARDS_TITLE,
        "Fill in the framed cells of the next sheets; a row may stay as it is where nothing is to be said.",
        f"Moments are local times of {zone.key}. The first row of a loom in Work done is its whole conversion.",
    )
    return TidySheet("Cards", columns, rows, lines)


def _sheet(title: str, columns: Sequence[Col], rows: Sequence[Sequence[Any]]) -> TidySheet:
    headings = [column.heading for column in columns]
    framed = {
        number: [i for i, heading in enumerate(headings) if heading in _asked(title, row)]
        for number, row in enumerate(rows)
    }
    return TidySheet(title, columns, rows, framed=framed, frozen=4)


def _asked(title: str, row: Sequence[Any]) -> set[str]:
    if title == "Work done" and row[3] is not None:
        return _OF_OPERATION
    return _FILLED.get(title, set())


def _work(card: Card) -> Iterable[list[Any]]:
    """The whole conversion, then each operation with its heads."""
    yield [*card.key[::-1], card.number, None, None, None, card.crew or None, *[None] * 12]
    for operation in card.operations:
        row = operation.row
        yield [*card.key[::-1], card.number, row.operation, *[None] * 10, row.heads, *[None] * 4]


def _settings(card: Card) -> Iterable[list[Any]]:
    """Each setting as found and as set, on each side that it has."""
    for setting in card.settings:
        for point in (setting.left, setting.right, setting.whole):
            for why in ("found", "set") if point else ():
                assert point
                yield [
                    *card.key[::-1],
                    point.side,
                    setting.setting,
                    None,
                    None,
                    None,
                    why,
                    card.article_in,
                    None,
                    None,
                    None,
                ]


def _sides(card: Card) -> list[str]:
    return [side for side in ("left", "right") if any(getattr(setting, side) for setting in card.settings)]
