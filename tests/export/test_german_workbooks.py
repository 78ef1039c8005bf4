"""Workbooks and papers for a person are whole in German: sheets, headings, hints, states, days."""

from dataclasses import replace
from datetime import datetime

import openpyxl
from export_samples import A2, MILL, NEEDS, ORDERS, PICKS, PLAN, at

from tracker.domain.needs import Cash, MonthCash
from tracker.domain.plan import CrewTurn, Need
from tracker.export.orders import OrdersOf, write_orders
from tracker.export.picks import write_picks
from tracker.export.plan_workbook import BesideThePlan, write_plan

NEEDS_OF_A2 = (Need("electrician", "trade", 2, at(5, 8), at(5, 10)),)
NAMED = replace(
    PLAN,
    crew_changes=0,
    bookings=tuple(
        replace(b, crews=(CrewTurn("Fitters 1", b.start, b.end),), needs=NEEDS_OF_A2 if b.key == A2 else ())
        for b in PLAN.bookings
    ),
)
ALIKE = {"P10", "P50", "P90"}
"""Headings that German has too."""


def texts(path):
    """Sheet → headings and what hangs on them, below the sentences."""
    found = {}
    for sheet in openpyxl.load_workbook(path):
        rows = [row for row in sheet.iter_rows() if sum(cell.value is not None for cell in row) > 1]
        found[sheet.title] = {cell.value: cell.comment and cell.comment.text for cell in rows[0]}
    return found


def shared(write):
    """What a workbook says in English and in German alike, weeks and names of the mill left out."""
    english, german = write("en"), write("de")
    both = [
        set().union(*each.values()) | {note for one in each.values() for note in one.values()}
        for each in (english, german)
    ]
    return {text for text in both[0] & both[1] if text and not text.startswith("20")} | (english.keys() & german.keys())


def test_the_plan_shares_no_heading_hint_or_sheet_with_the_english_one(tmp_path):
    def write(language):
        write_plan(tmp_path / f"{language}.xlsx", NAMED, MILL, BesideThePlan(NEEDS), language)
        return texts(tmp_path / f"{language}.xlsx")

    assert shared(write) <= ALIKE | {"Plan"}


def test_orders_and_pick_lists_share_none_either(tmp_path):
    def orders(language):
        cash = Cash((MonthCash("2027-01", 250, 100),))
        write_orders(tmp_path / f"{language}.xlsx", ORDERS, OrdersOf("EUR", cash=cash), language)
        return texts(tmp_path / f"{language}.xlsx")

    def picks(language):
        write_picks(tmp_path / f"{language}.xlsx", PICKS, MILL, language)
        return texts(tmp_path / f"{language}.xlsx")

    assert shared(orders) == shared(picks) == set()


def test_states_and_days_are_german_and_a_moment_stays_a_moment(tmp_path):
    write_plan(tmp_path / "p.xlsx", NAMED, MILL, BesideThePlan(NEEDS), "de")
    book = openpyxl.load_workbook(tmp_path / "p.xlsx")
    heads, first, *_ = book["Mannschaft Fitters 1"].iter_rows(min_row=4)
    crew = {head.value: cell for head, cell in zip(heads, first, strict=True)}
    # Tuesday 5 January 2027, 05:00 UTC, in Vienna an hour later
    assert (crew["Tag"].value, crew["Datum"].number_format) == ("Di", "dd.mm.yyyy")
    assert (crew["Was"].value, crew["Zeichen"].value) == ("beginnen, fertig machen", "fest, Pilot")
    assert crew["Gelegenheit"].value == "anderer Artikel"
    start = next(cell for cell in book["Termine"][2] if cell.number_format == "dd.mm.yyyy hh:mm")
    assert start.value == datetime(2027, 1, 5, 6)
    assert book["Plan"]["A1"].value == "Hall renewal: Plan, Stand Mo. 4. Jan. 2027 06:00"
    assert book["Termine"].cell(4, 1).value == "Summe"
