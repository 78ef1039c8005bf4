"""Cards from the command line, on the sample mill with a plan published: loom 007 is a pilot in the programme's first week."""

import re

from openpyxl import load_workbook

from tracker.domain.card_numbers import read_card_number


def pages(path):
    return len(re.findall(rb"/Type /Page\b", path.read_bytes()))


def test_a_looms_card_and_the_weavers_note(planned, tmp_path):
    ran = planned("cards", "007", "--out", "card.pdf", "--notes", "note.pdf", "--json", "-")
    assert ran.code == 0
    (card,) = ran.json["cards"]
    assert (card["loom"], card["hall"], card["plan"]) == ("007", "Hall 1", read_card_number(card["card"])[0])
    assert pages(tmp_path / "card.pdf") <= 2 and pages(tmp_path / "note.pdf") == 1


def test_a_weeks_pack_as_paper_and_as_workbook(planned, tmp_path):
    week = planned("cards", "--week", "2027-W02", "--json", "-").json
    ran = planned("cards", "--week", "2027-W02", "--out", "week.pdf", "--xlsx", "week.xlsx")
    assert (
        ran.code == 0
        and f"{len(week['cards'])} cards of week 2027-W02" in ran.out
        and "Wrote week.pdf, week.xlsx." in ran.out
    )
    crews = {card["crew"] for card in week["cards"]}
    assert len(week["cards"]) > 1 and pages(tmp_path / "week.pdf") >= len(week["cards"]) + len(crews)
    listed = [row[0].value for row in load_workbook(tmp_path / "week.xlsx")["Cards"].iter_rows(min_row=6)]
    assert listed == [card["card"] for card in week["cards"]]


def test_what_is_put_wrongly(planned, tmp_path):
    assert planned("cards", "--week", "W2").code == 2
    assert planned("cards", "007", "--crew", "Fitters 1").code == 2
    assert planned("cards", "007", "--out", "card.txt").code == 2
    assert planned("cards", "--week", "2040-W02", "--out", "card.pdf").code == 1
    assert planned("cards", "--crew", "Nobody", "--week", "2027-W02").code == 1
    assert not list(tmp_path.glob("card*"))


def test_without_a_plan_it_says_how_to_get_one(mill):
    ran = mill("cards")
    assert ran.code == 1 and "`beamslot plan --publish`" in ran.err
