"""Amounts and moments that no stockroom knows are refused, and leave the book as it was."""

from datetime import UTC, datetime, timedelta

import pytest
from opened import here
from openpyxl import Workbook
from refusals import refused
from stock_room_samples import AT, PLAN, added, fill

from tracker.domain.clock import now
from tracker.errors import DataError, UsageError
from tracker.services.loading.load import load
from tracker.services.looms import LoomName
from tracker.services.parts.ledger import ledger
from tracker.services.parts.reservations import reserve, take
from tracker.services.parts.stock import adjust, count, give_back, issue, issue_kit, movements, receive
from tracker.services.parts.stock_entry import Told
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    start = added("terms", "start", term="start", value="2026-01-05")
    return fill(str(tmp_path / "mill.db"), PLAN, start)


def on_hand(db, part):
    with open_store(db).reading() as uow:
        return uow.mill().parts[part].on_hand


ENTRIES = {
    "receive": lambda db, q: receive(here(db), "NUT", q, told=Told("found")),
    "return": lambda db, q: give_back(here(db), "1", "NUT", q),
    "adjust": lambda db, q: adjust(here(db), "NUT", q, Told("found")),
    "count": lambda db, q: count(here(db), "NUT", q),
    "reserve": lambda db, q: reserve(here(db), "1", part="NUT", quantity=q),
    "take": lambda db, q: take(here(db), "NUT", LoomName("1"), LoomName("2"), q),
}


@pytest.mark.parametrize("entry", ENTRIES.values(), ids=ENTRIES.keys())
@pytest.mark.parametrize(
    ("quantity", "says"),
    [(1e308, "more than 10,000,000 pc"), (1e20, "more than 10,000,000 pc"), (0.5, "no whole number of pc")],
)
def test_amounts_out_of_bounds_are_refused(db, entry, quantity, says):
    issue(here(db), "1", part="NUT", quantity=4)
    before = movements(here(db))
    with refused(DataError, f"part NUT: .* is {says}"):
        entry(db, quantity)
    assert movements(here(db)) == before


def test_many_entries_cannot_pass_the_bound_together(db):
    """9,999,990 and what is there are within it, as much again is not."""
    adjust(here(db), "NUT", 9000000, Told("found"))
    with refused(DataError, "10,000,000 pc"):
        adjust(here(db), "NUT", 9000000, Told("found"))


def test_tenths_of_a_metre_add_up_exactly(db):
    start = on_hand(db, "CABLE")
    for _ in range(3):
        adjust(here(db), "CABLE", 0.1, Told("found"))
    assert on_hand(db, "CABLE") == start + 0.3
    with refused(DataError, r"part CABLE: 0\.0004 is finer than 0\.001 m"):
        adjust(here(db), "CABLE", 0.0004, Told("found"))


@pytest.mark.parametrize(
    ("sheet", "heading", "row", "cell"),
    [
        ("Parts", ("Part", "On hand", "Unit"), ("NUT", 7.5, "pc"), "B2"),
        ("Parts", ("Part", "On hand", "Unit"), ("SCREW", 1.25, "pc"), "B2"),
        ("Parts", ("Part", "On hand", "Unit"), ("OIL", 1e9, "ml"), "B2"),
        ("Receipts", ("Order", "Part", "Quantity", "Due"), ("PO-7", "NUT", 0.5, AT.date()), "C2"),
        ("Receipts", ("Order", "Part", "Quantity", "Due"), ("PO-7", "NUT", 2e7, AT.date()), "C2"),
    ],
)
def test_a_load_refuses_them_with_their_cell(db, tmp_path, sheet, heading, row, cell):
    book = Workbook()
    book.active.title = sheet
    book.active.append(heading)
    book.active.append(row)
    book.save(tmp_path / "in.xlsx")
    before = movements(here(db))
    report = load(here(db), [tmp_path / "in.xlsx"])
    assert (report.written, [finding.cell for finding in report.refused]) == (False, [cell])
    assert movements(here(db)) == before


EARLY = datetime(2000, 1, 1, tzinfo=UTC)


@pytest.mark.parametrize(
    "entry",
    [
        lambda db, why: receive(here(db), order="PO-1", told=Told(why, at=EARLY)),
        lambda db, why: issue_kit(here(db), "1", told=Told(why, at=EARLY)),
        lambda db, why: count(here(db), "NUT", 3, Told(why, at=EARLY)),
    ],
)
def test_an_entry_from_before_the_programme_needs_its_reason(db, entry):
    """The programme of the samples starts in 2026: a year typed wrong is the usual cause."""
    before = movements(here(db))
    with refused(UsageError, r"Sat 1 Jan 2000 .* lies before the programme, which began on Mon 5 Jan 2026; .*--why"):
        entry(db, "")
    assert movements(here(db)) == before
    entry(db, "booked late")
    assert movements(here(db))[-1].at == EARLY


def test_without_a_moment_no_reason_is_asked(db):
    count(here(db), "NUT", 3)
    assert now() - movements(here(db))[-1].at < timedelta(minutes=5)


def test_what_is_handed_out_is_a_quantity_too(db):
    with refused(DataError, r"part NUT: -?0\.5 is no whole number of pc"):
        issue(here(db), "1", part="NUT", quantity=0.5)
    with refused(DataError, "1e\\+308 asked for loom 1"):
        issue(here(db), "1", part="NUT", quantity=1e308)


def test_an_entry_keeps_when_it_was_written_down_beside_when_it_happened(db):
    happened = now() - timedelta(days=3)
    before = now()
    count(here(db), "NUT", 3, Told(at=happened))
    entry = movements(here(db))[-1]
    assert entry.at == happened
    assert entry.entered_at is not None and before <= entry.entered_at <= now()
    (line,) = [line for line in ledger(here(db), "NUT").record() if line["kind"] == "count"]
    assert line["entered_at"][:10] >= before.date().isoformat() > line["at"][:10]


def test_what_a_load_brings_keeps_it_too(db):
    opening = movements(here(db))[0]
    assert opening.entered_at == opening.at
