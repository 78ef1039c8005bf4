"""A conversion that began before a change of the method keeps the version of its card, and is signed off by it."""

import pytest
from card_mill import CHECKS, KIT, LOOM, SETPOINTS, card_mill, fill_cards, now_here, well_done
from three_looms import OPERATIONS, at

from tracker.domain.rows import SourceColumn, SourceTable, TypedRow
from tracker.services.loading.load import LoadRequest, load
from tracker.services.work.cards import cards
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.words.findings import refusal_line

NEW_CHECK = {"check": "Cover is on", "safety": True}

CARDS = LoadRequest(records_only=True)


@pytest.fixture
def db(tmp_path):
    return card_mill(str(tmp_path / "mill.db"))


def change_method(db, when):
    """Version 2 calls the mounting by another name and asks for one more check that nothing waives."""
    operations = [
        row | ({"operation": "Mount the rail"} if row["operation"] == "Mount" else {}) for row in OPERATIONS[1:]
    ]
    tables = {"operations": operations, "setpoints": SETPOINTS, "checks": [*CHECKS, NEW_CHECK], "kit_lines": KIT}
    first = {"operations": "step", "setpoints": "setting", "checks": "check", "kit_lines": "part"}
    sources = [SourceTable("method.xlsx", n, n, 1, (SourceColumn(f, "A1", f),)) for n, f in first.items()]
    typed = {
        name: [TypedRow(name, row, {}, list(tables).index(name), number) for number, row in enumerate(rows, 2)]
        for name, rows in tables.items()
    }
    with open_store(db).unit_of_work("planner") as uow:
        version = uow.load_writer(at=when).write_method(typed, sources)
        uow.commit()
    return version


def test_a_job_begun_before_the_change_is_signed_off_by_its_card(db, tmp_path):
    """Begun on Tuesday at eight; the method changes at nine. The card names the old operation and knows no check of the cover."""
    card = fill_cards(db, tmp_path / "card.xlsx", well_done)
    version = cards(now_here(db), "1").cards[0].method_version
    record_stage(now_here(db), "1", "in work", told=StageTold(at=at(1, 8)))
    assert change_method(db, at(1, 9)) == version + 1
    again = cards(now_here(db), "1").cards[0]
    assert again.method_version == version and "Mount" in {one.row.operation for one in again.operations}
    report = load(now_here(db), [card], CARDS)
    assert report.written, refusal_line(report.refusal, report.quoted)
    with open_store(db).reading() as uow:
        (done,) = uow.conversions()
        assert uow.stages()[LOOM].stage == "signed off"
    assert done.method_version == version and done.operation_minutes["Mount"] == 150


def test_a_job_begun_after_it_is_judged_by_the_new_one(db, tmp_path):
    """The same card, but the method had changed at seven: the cover was not looked at."""
    card = fill_cards(
        db, tmp_path / "card.xlsx", lambda sheet, row: {} if row.get("Operation") == "Mount" else well_done(sheet, row)
    )
    change_method(db, at(1, 7))
    report = load(now_here(db), [card], CARDS)
    assert not report.written
    assert "Cover is on" in refusal_line(report.refusal, report.quoted)
