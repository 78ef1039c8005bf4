"""Cards as a workbook to fill in: what is known stands there, what a crew writes down is framed."""

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.cards import Card
from tracker.domain.columns import Kind, Table
from tracker.domain.record_tables import RECORD_TABLES
from tracker.export.wording import Wording
from tracker.export.workbook import in_words, template_column
from tracker.office.writing.sheets import TidySheet, rows_of, write_tables

Asked = Mapping[str, Any]
"""Field → what stands in the row before it is filled in."""

_FILLED = {
    "work_done": {"started_at", "ended_at", "stage", "beam_out_at", "locked_at", "unlocked_at", "first_pick_at", "at_speed_at",
                  "done_by", "remark", "hand_over"},
    "set_values": {"value", "at", "who"}, "check_results": {"result", "at", "who"},
    "parts_used": {"used", "left_over", "broken"}, "bobbins": {"at", "grams_left", "tex"},
}  # fmt: skip
"""Table → the fields that are framed."""
_OF_OPERATION = {"minutes", "torque_nm", "done_by", "remark"}


def write_card_workbook(path: str | Path, cards: Sequence[Card], zone: ZoneInfo, language: str = "en") -> None:
    """Write the cards (.xlsx): a sheet that lists them, then the sheets to fill in with a row for all that a card asks for,
    under the headings that a load knows. Nothing is filled in for a crew that only it can know."""
    asked = {
        "work_done": [row for card in cards for row in _work(card)],
        "set_values": [row for card in cards for row in _settings(card)],
        "check_results": [{**_loom(card), "side": c.side, "check": c.check} for card in cards for c in card.checks],
        "parts_used": [{**_loom(card), "card": card.number, "part": p.part} for card in cards for p in card.parts],
        "bobbins": [{**_loom(card), "side": side} for card in cards for side in card.sides],
    }
    write = Wording(language, zone)
    sheets = [_sheet(table, asked.get(table.name, []), write) for table in RECORD_TABLES]
    write_tables(path, [_list(cards, zone, write), *sheets])


def _loom(card: Card) -> Asked:
    return {"loom": card.key.loom, "hall": card.key.hall}


def _list(cards: Sequence[Card], zone: ZoneInfo, write: Wording) -> TidySheet:
    col = write.col
    columns = [
        col("heading-card", Kind.IDENTIFIER), *write.where(), col("heading-start", Kind.MOMENT), col("heading-end", Kind.MOMENT),
        col("heading-crew"), col("col-plan", Kind.INTEGER), col("col-method-version", Kind.INTEGER),
    ]  # fmt: skip
    rows = [
        [card.number, card.key.loom, card.key.hall, card.loom.machine_type,
         *(at.astimezone(zone).replace(tzinfo=None) for at in (card.booking.start, card.booking.end)),
         card.booking.crew_names, card.plan, card.method_version]
        for card in cards
    ]  # fmt: skip
    lines = (write.say("book-cards-title"), write.say("book-cards-fill"), write.say("book-cards-times", zone=zone.key))
    return write.sheet("book-cards", columns, rows, lines)


def _sheet(table: Table, asked: Sequence[Asked], write: Wording) -> TidySheet:
    fields = [column.field for column in table.columns]
    framed = {
        number: [i for i, field in enumerate(fields) if field in _framed(table, row)]
        for number, row in enumerate(asked)
    }
    columns = [template_column(column, write) for column in table.columns]
    rows = rows_of(fields, (in_words(table, row, write) for row in asked))
    return write.named(write.speaker.say(table.named), columns, rows, framed=framed, frozen=4)


def _framed(table: Table, row: Asked) -> set[str]:
    return _OF_OPERATION if row.get("operation") else _FILLED.get(table.name, set())


def _work(card: Card) -> Iterable[Asked]:
    """The whole conversion, then each operation with its heads."""
    of_card = {**_loom(card), "card": card.number}
    yield {**of_card, "crew": card.crew or None}
    for operation in card.operations:
        yield {**of_card, "operation": operation.row.operation, "heads": operation.row.heads}


def _settings(card: Card) -> Iterable[Asked]:
    """Each setting as found and as set, on each side that it has."""
    for setting in card.settings:
        for point in (setting.left, setting.right, setting.whole):
            for why in ("found", "set") if point else ():
                assert point
                yield {
                    **_loom(card),
                    "side": point.side,
                    "setting": setting.setting,
                    "why": why,
                    "article": card.article_in,
                }
