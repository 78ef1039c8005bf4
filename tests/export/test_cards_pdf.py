"""Cards and weavers' notes on paper."""

import re
from dataclasses import replace
from urllib.parse import parse_qs, urlsplit

import pytest
from card_samples import BOOKING, CONTENT, KEY, MILL, OPERATIONS, WINDOW, at
from machine import needs, pdf_text

from tracker.cards.content import BookedLoom, make_card
from tracker.domain.cards import USUAL_CAUTIONS
from tracker.domain.mill import Loom
from tracker.domain.plan import CrewTurn, Need
from tracker.domain.tables import CARD_LANGUAGES
from tracker.export.cards.packs import Pack, PackLine, leads_to, write_notes, write_packs
from tracker.export.cards.words import CardWords

ZONE = MILL.terms.zone


def card(content=CONTENT, mill=MILL):
    return make_card("C3-0001-2", 3, mill, BookedLoom(BOOKING, content, window=WINDOW), lambda row: row.minutes)


def pack(made, language="en", crew="Fitters 1"):
    return Pack(crew, language, (PackLine(BOOKING, BOOKING.start, BOOKING.end, made),))


def written(tmp_path, packs, week=None, address=None):
    """Number of pages as told, as counted in the file, and the file."""
    path = tmp_path / "cards.pdf"
    told = write_packs(path, packs, ZONE, "Hall renewal", week, address)
    assert len(re.findall(rb"/Type /Page\b", path.read_bytes())) == told
    return told, path


def text_of(path):
    return re.sub(r"\s+", " ", pdf_text(path, layout=False))


@needs("pdftotext", "poppler-utils")
def test_what_stands_on_a_card(tmp_path):
    """Vienna is an hour ahead in winter: 05:00 UTC is 06:00."""
    pages, path = written(tmp_path, [pack(card())])
    text = text_of(path)
    assert pages <= 2
    for said in (
        "Loom 007", "Hall 1 · Row 3 · Place 12", "AJ-190", "C3-0001-2", "Start Tue 5 Jan 2027 06:00", "Fitters 1 06:00–07:00",
        "Article coming in B-in", "1 electrician 07:00–08:00", "rail work: new rail", "Beam-out about Tue 5 Jan 2027 04:00",
        "Six times", "At speed", "Two people and a rated sling. (Step 20, 30)", "HOLD Test every emergency stop",
        "Step 40: Test every emergency stop", "RAIL-190, cross rail 190 cm", "transport lock (comes back)", "no location",
        "310 (305 – 315)", "Guards are refitted", "Bond of the rail, 0 – 0.1", "Electrician", "Method version 4",
    ):  # fmt: skip
        assert said in text, said
    assert (
        text.index("Cautions")
        < text.index("Kit")
        < text.index("Operations")
        < text.index("Settings")
        < text.rindex("Checks")
    )
    assert "31.5" in text, "what the loom list knows is not asked again"


@needs("pdftotext", "poppler-utils")
def test_hours_of_the_next_day_say_which_day(tmp_path):
    # by Vienna's clock: on Tuesday 5 January from 06:00, on Wednesday from 06:00 to 07:00, the electrician with it
    turns = (BOOKING.crews[0], CrewTurn("Fitters 1", at(6, 5), at(6, 6)))
    needs = (Need("electrician", "trade", 1, at(6, 5), at(6, 6)),)
    longer = replace(BOOKING, end=at(6, 6), crews=turns, needs=needs)
    made = make_card("C3-0001-2", 3, MILL, BookedLoom(longer, CONTENT, window=WINDOW), lambda row: row.minutes)
    for language, day in (("en", "Wed"), ("de", "Mi")):
        of_one = Pack("Fitters 1", language, (PackLine(longer, longer.start, longer.end, made),))
        (tmp_path / language).mkdir()
        _, path = written(tmp_path / language, [of_one], week="2027-W01")
        text = " ".join(text_of(path).split())
        assert f"Fitters 1 06:00–07:00; Fitters 1 {day} 06:00–07:00" in text
        assert f"1 electrician {day} 06:00–07:00" in text


@needs("pdftotext", "poppler-utils")
def test_a_pilot_s_card_says_who_stays_with_it(tmp_path):
    # the electrician from 06:00 to 08:00 in Vienna, all of the conversion; on the sheet of the pack and on the card
    there = tuple(replace(need, start=BOOKING.start) if need.kind == "trade" else need for need in BOOKING.needs)
    pilot = replace(BOOKING, pilot=True, attended=True, needs=there)
    made = make_card("C3-0001-2", 3, MILL, BookedLoom(pilot, CONTENT, window=WINDOW), lambda row: row.minutes)
    _, path = written(
        tmp_path, [Pack("Fitters 1", "en", (PackLine(pilot, pilot.start, pilot.end, made),))], week="2027-W01"
    )
    assert text_of(path).count("electrician there from start to end") == 2
    alone = replace(pilot, attended=False)
    assert (pilot.attended_by, alone.attended_by) == ("electrician", "")


@pytest.mark.parametrize("language", CARD_LANGUAGES)
@needs("pdftotext", "poppler-utils")
def test_the_usual_cautions_are_on_every_card_in_its_language(tmp_path, language):
    words = CardWords(language, ZONE)
    bare = replace(CONTENT, operations=tuple(replace(row, caution=None) for row in OPERATIONS))
    _, path = written(tmp_path, [pack(card(bare), language)])
    text = re.sub(r"\s+", "", pdf_text(path))
    for code in (*USUAL_CAUTIONS, "card-defers", "card-holds-always"):
        # two columns are printed line by line, so each word is looked for
        assert all(word in text for word in words(code).split()) if language != "zh" else words(code)[:6] in text, code


@needs("pdftotext", "poppler-utils")
def test_a_page_never_breaks_inside_an_operation(tmp_path):
    """Eighty operations of three lines each: the last word of one stands on the page of its first."""
    rows = tuple(
        replace(OPERATIONS[0], step=100 + i, operation=f"begin{i} {'turn the bracket and look again ' * 8} end{i}")
        for i in range(80)
    )
    pages, path = written(tmp_path, [pack(card(replace(CONTENT, operations=rows)))])
    sheets = pdf_text(path).split("\f")
    assert pages > 2
    for i in range(80):
        assert [n for n, sheet in enumerate(sheets) if re.search(rf"\bbegin{i}\b", sheet)] == [
            n for n, sheet in enumerate(sheets) if re.search(rf"\bend{i}\b", sheet)
        ]  # fmt: skip


@needs("pdftotext", "poppler-utils")
def test_a_text_longer_than_a_page_is_printed_whole(tmp_path):
    long = replace(OPERATIONS[0], operation="word " * 3000 + "lastword")
    _, path = written(tmp_path, [pack(card(replace(CONTENT, operations=(long,))))])
    assert pdf_text(path).count("word ") + pdf_text(path).count("word\n") >= 3000 and "lastword" in pdf_text(path)


@needs("pdftotext", "poppler-utils")
def test_a_loom_without_a_row_and_names_of_other_letters(tmp_path):
    mill = replace(MILL, looms={KEY: Loom("Salon Ğ", "007", "jakarlı ŞÖ", attributes={"Çağlık": "dikey"})})
    _, path = written(tmp_path, [pack(card(mill=mill), "tr", "Ekip Şükrü")], "2027-W01")
    text = text_of(path)
    assert "jakarlı ŞÖ" in text and "Çağlık: dikey" in text and "Ekip Şükrü" in text and "Sıra" not in text


@needs("pdftotext", "poppler-utils")
def test_contents_name_the_page_of_each_card_and_who_has_it(tmp_path):
    lines = (
        PackLine(BOOKING, BOOKING.start, BOOKING.end, card()),
        PackLine(BOOKING, BOOKING.start, BOOKING.end, None, "Fitters 9"),
        PackLine(BOOKING, BOOKING.start, BOOKING.end),
        PackLine(BOOKING, BOOKING.start, BOOKING.end, replace(card(), number="C3-0002-4")),
    )
    _, path = written(tmp_path, [Pack("Fitters 1", "en", lines)], "2027-W01")
    sheets = pdf_text(path).split("\f")
    assert "Cards of week 2027-W01" in sheets[0] and "takes over from Fitters 9" in text_of(path)
    second = next(n for n, sheet in enumerate(sheets, 1) if "C3-0002-4" in sheet and n > 1)
    assert re.search(rf"^\s*{second}\s.*C3-0002-4", sheets[0], re.M) and re.search(
        r"^\s*2\s.*C3-0001-2", sheets[0], re.M
    )
    assert "page 1 of" in sheets[1] and f"of {second - 2}" in sheets[1]


def test_the_square_code_leads_to_the_loom_or_names_the_card():
    made = replace(card(), key=KEY._replace(loom="3/12 ş"))
    assert leads_to(made, None) == "C3-0001-2"
    address = urlsplit(leads_to(made, "http://office:8501/"))
    assert (address.netloc, address.path) == ("office:8501", "/looms")
    assert parse_qs(address.query) == {"loom": ["3/12 ş"], "hall": ["Hall 1"]}


@needs("pdftotext", "poppler-utils")
def test_the_weavers_note(tmp_path):
    write_notes(tmp_path / "n.pdf", [pack(card()), pack(card(), "de")], ZONE, "Hall renewal")
    english, german, *_ = pdf_text(tmp_path / "n.pdf").split("\f")
    assert "It may move by itself while the loom stands." in english and "Tue 5 Jan 2027 08:00" in english
    assert "Nicht" not in english and "Winkel und Feder nicht verstellen" in german
    assert b"/MediaBox [ 0 0 297.6378 419.5276 ]" in (tmp_path / "n.pdf").read_bytes(), "A6: 105 × 148 mm"
