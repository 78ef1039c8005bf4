"""Pick lists as workbook and PDF."""

import re
from dataclasses import replace
from datetime import date, datetime

from export_samples import MILL, PICKS
from machine import needs, pdf_text
from python_calamine import CalamineWorkbook
from refusals import refused

from tracker.errors import UsageError
from tracker.export import pdf
from tracker.export.pdf import markup
from tracker.export.picks import write_picks


def test_workbook_shortages_first_then_by_location(tmp_path):
    """Vienna is an hour ahead: 05:00 UTC is 06:00."""
    write_picks(tmp_path / "p.xlsx", reversed(PICKS), MILL)
    rows = CalamineWorkbook.from_path(str(tmp_path / "p.xlsx")).get_sheet_by_index(0).to_python()
    assert rows[1][0] == "2 kits, 3 lines; 1 kit is short."
    heading, *lines = rows[3:]
    table = [dict(zip(heading, line, strict=True)) for line in lines]
    assert [row["Part"] for row in table] == ["RAIL-190", "CABLE-5", "PIN"]
    assert table[0]["Short"] == "short of 1 pc" and table[1]["Short"] == ""
    assert table[0]["Day"] == date(2027, 1, 5) and table[0]["Start"] == datetime(2027, 1, 5, 6)
    assert (table[1]["Location"], table[1]["To pick"], table[1]["Unit"]) == ("A-01", 12.5, "m")


@needs("pdftotext", "poppler-utils")
def test_pdf_has_a_page_per_day(tmp_path):
    write_picks(tmp_path / "p.pdf", PICKS, MILL)
    first, second, *_ = pdf_text(tmp_path / "p.pdf").split("\f")
    assert "Pick list for Tue 5 Jan 2027" in first and "1 kit, 2 lines; 1 kit is short." in first
    assert "Loom A-2 (Hall 1), AJ-190: conversion starts 06:00" in first
    assert first.index("RAIL-190") < first.index("CABLE-5") and "short of 1 pc" in first and "12.5 m" in first
    assert "Pick list for Tue 12 Jan 2027" in second and "no location" in second and "=pin" in second


@needs("pdftotext", "poppler-utils")
def test_pdf_writes_the_languages_of_the_mills(tmp_path):
    """Markup in a description is text; Turkish and Chinese have their letters."""
    words = "<b>Kılavuz şerit</b> & 导轨"
    write_picks(tmp_path / "p.pdf", [replace(PICKS[0], description=words, location="")], MILL)
    text = re.sub(r"\s+", " ", pdf_text(tmp_path / "p.pdf"))
    assert "<b>Kılavuz" in text and "şerit</b> & 导轨" in text


def test_a_long_list_and_an_empty_one(tmp_path):
    many = [replace(PICKS[0], part=f"P-{i}", location=f"A-{i}") for i in range(200)]
    write_picks(tmp_path / "many.pdf", many, MILL)
    assert len(re.findall(rb"/Type /Page\b", (tmp_path / "many.pdf").read_bytes())) >= 4
    write_picks(tmp_path / "none.pdf", [], MILL)
    write_picks(tmp_path / "none.xlsx", [], MILL)
    assert (tmp_path / "none.pdf").read_bytes().startswith(b"%PDF")


def test_other_endings_are_wrong_use(tmp_path):
    with refused(UsageError, r"must end in \.xlsx"):
        write_picks(tmp_path / "p.txt", PICKS, MILL)


def test_characters_without_a_font_are_shown_by_their_code():
    assert markup("a<b>") == "a&lt;b&gt;" and markup("x\U0010fffe") == "x[U+10FFFE]"
    chinese = markup("导轨 1")
    assert re.fullmatch(r'<font name="(STSong-Light|Beamslot-Chinese|Beamslot-Wide)">导轨</font> 1', chinese)


def test_a_pdf_says_where_letters_depend_on_the_reader(tmp_path, monkeypatch):
    """As on a machine without a Chinese font; Latin and Turkish never do."""
    monkeypatch.setattr(pdf, "_CHINESE_FILES", ())
    pdf._fonts.cache_clear()
    for name, words in (("latin", "Kılavuz şerit ğüşöçİ ñ ß"), ("chinese", "导轨")):
        write_picks(tmp_path / f"{name}.pdf", [replace(PICKS[0], description=words)], MILL)
    pdf._fonts.cache_clear()
    assert not pdf.is_borrowed((tmp_path / "latin.pdf").read_bytes())
    assert pdf.is_borrowed((tmp_path / "chinese.pdf").read_bytes())
