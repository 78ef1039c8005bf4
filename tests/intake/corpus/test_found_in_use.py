"""Numbered cases that take more than one load, an old workbook, or the words of a question."""

import shutil
import struct
from collections.abc import Mapping
from datetime import date
from pathlib import Path

import olefile
import pytest
from opened import here
from said import refusal_of

from tracker.services.loading.export import export_records, export_workbook
from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.load_report import LoadReport
from tracker.words.findings import in_words

from .draft import Draft
from .files import write
from .found import changed, finished, put, ten_looms
from .found_cases import CASES
from .verdict import TODAY

XLS = Path(__file__).parents[2] / "office" / "files" / "tezgahlar.xls"
POLISH = {"loom": "Krosno", "hall": "Hala", "machine_type": "Typ maszyny", "reed_width_cm": "Szerokość płochy",
          "speed_ppm": "Obroty", "efficiency": "Wydajność", "rail": "Belka"}  # fmt: skip
SAID = {"loom": "loom", "hall": "hall", "machine_type": "machine type", "reed_width_cm": "reed width", "speed_ppm": "speed",
        "efficiency": "efficiency"}  # fmt: skip


def loaded(db: Path, path: Path, answers: Mapping[str, str] | None = None, **more: bool) -> LoadReport:
    return load(here(db), [path], LoadRequest(answers=answers or {}, today=TODAY, **more))


def file_of(draft: Draft, folder: Path) -> Path:
    return write(finished("", draft).files[0], folder)


def with_heading(name: str, heading: str, language: str = "en") -> Draft:
    draft = ten_looms(language)
    draft.column(name).heading, draft.column(name).unit = heading, ""
    return draft


def speeds(db: Path) -> list[float | None]:
    return [record["speed_ppm"] for record in export_records(here(db))]


# the speeds of the ten looms, as found.LOOMS writes them
SPEEDS = [640, 655, 340, 625, 355, 645, 330, 660, 635, 345]


# 2.4
def test_a_question_about_two_equal_headings_offers_answers_that_differ(tmp_path):
    path = write(CASES["2.4 Speed twice"]().files[0], tmp_path)
    (question,) = loaded(tmp_path / "a.db", path, dry_run=True).questions
    offered = [(choice.about, choice.answer) for choice in question.choices]
    assert len(offered) == 2 and len(set(offered)) == 2, offered


# 10.1
@pytest.mark.parametrize("key", ["Veloc.", "veloc"])
def test_an_answer_by_the_short_form_of_a_heading_takes_effect_in_the_load_that_gave_it(tmp_path, key):
    path, db = file_of(with_heading("speed_ppm", "Veloc. / pass/min", "it"), tmp_path), tmp_path / "a.db"
    assert not loaded(db, path, {key: "speed"}).refusal
    assert speeds(db) == SPEEDS


def test_an_answer_by_the_whole_heading_takes_effect_in_the_load_that_gave_it(tmp_path):
    path, db = file_of(with_heading("speed_ppm", "Veloc. / pass/min", "it"), tmp_path), tmp_path / "a.db"
    assert not loaded(db, path, {"Veloc. / pass/min": "speed"}).refusal
    assert speeds(db) == SPEEDS


# 10.2
def test_a_list_in_a_ninth_language_is_told_once_what_its_headings_are(tmp_path):
    draft, db = ten_looms(), tmp_path / "a.db"
    for column in draft.columns:
        column.heading, column.unit = POLISH[column.name], ""
    path = file_of(draft, tmp_path)
    first = loaded(db, path)
    assert first.refusal and "Krosno" in refusal_of(first) + " ".join(in_words(f).line() for f in first.findings)
    assert not loaded(db, path, {POLISH[name]: answer for name, answer in SAID.items()}).refusal
    records = export_records(here(db))
    assert [record["speed_ppm"] for record in records] == SPEEDS
    assert {record["attributes"]["Belka"] for record in records} == {"drilled", "undrilled"}
    again = loaded(db, path)
    assert not again.refusal and (again.tables[0].rows.unchanged, again.tables[0].rows.added) == (10, 0)


# 10.3
def test_a_column_that_is_told_to_be_a_field_leaves_its_old_place_and_the_own_export_changes_nothing(tmp_path):
    path, db = file_of(with_heading("speed_ppm", "Obroty", "en"), tmp_path), tmp_path / "a.db"
    first = loaded(db, path)  # a reader that asks at once what Obroty is has no old place to leave
    if first.refusal:
        loaded(db, path, {"Obroty": "own column"})
    assert not loaded(db, path, {"Obroty": "speed"}).refusal
    assert speeds(db) == SPEEDS
    assert all("Obroty" not in record["attributes"] for record in export_records(here(db)))
    export_workbook(here(db), tmp_path / "own.xlsx")
    again = loaded(db, tmp_path / "own.xlsx")
    assert not again.refusal and not again.changes


# 11: old workbooks that are damaged, and a question that says nothing
def damaged(folder: Path, change) -> Path:
    """The old workbook with its records changed: `change(stream, place of a record, number, length)`."""
    path = folder / "old.xls"
    shutil.copy(XLS, path)
    with olefile.OleFileIO(str(path), write_mode=True) as compound:
        stream = bytearray(compound.openstream("Workbook").read())
        at = 0
        while at + 4 <= len(stream):
            record, length = struct.unpack_from("<HH", stream, at)
            if (record, length) == (0, 0) or change(stream, at, record, length):
                break
            at += 4 + length
        compound.write_stream("Workbook", bytes(stream))
    return path


XF, FONT, NOTHING_KNOWN = 0xE0, 0x31, 0x5555
"""Records of cell formats and fonts; one that no reader knows."""


def without_a_format(stream, at, record, length) -> bool:
    """Cells that had the general format (164 here) name number format 60, which differs by country and has no text."""
    if record == XF and struct.unpack_from("<H", stream, at + 6)[0] == 164:
        struct.pack_into("<H", stream, at + 6, 60)
    return False


def with_a_short_font(stream, at, record, length) -> bool:
    """A font record that ends too early."""
    if record != FONT:
        return False
    struct.pack_into("<HH", stream, at, FONT, 2)
    struct.pack_into("<HH", stream, at + 6, NOTHING_KNOWN, length - 6)
    return True


def with_a_wild_date_mode(stream, at, record, length) -> bool:
    """A date mode (record 0x22) that is neither of the two."""
    if record != 0x22:
        return False
    stream[at + 4 : at + 4 + length] = b"\xff" * length
    return True


def test_an_old_workbook_whose_number_format_is_missing_is_read_or_refused(tmp_path):
    report = loaded(tmp_path / "a.db", damaged(tmp_path, without_a_format), {"Eski": "ignore"})
    if not report.refusal:  # 600 to 605 picks/min, as the file was written
        assert speeds(tmp_path / "a.db") == [600, 601, 602, 603, 604, 605]


def test_an_old_workbook_with_a_record_that_ends_early_is_refused(tmp_path):
    report = loaded(tmp_path / "a.db", damaged(tmp_path, with_a_short_font))
    assert refusal_of(report).startswith("old.xls: ")


def test_a_refusal_of_an_old_workbook_says_why(tmp_path):
    report = loaded(tmp_path / "a.db", damaged(tmp_path, with_a_wild_date_mode))
    assert report.refusal and "()" not in refusal_of(report)


def test_a_question_about_numbers_turned_into_dates_names_two_readings_that_differ(tmp_path):
    """1 January reads alike day first and month first; 7 February may be 7/2 or 2/7."""

    def turned(draft: Draft) -> None:
        for key, day in enumerate((date(2026, 1, 1), date(2026, 2, 7), date(2026, 3, 9))):
            put(key, "loom", day)(draft)
            draft.codes[key, "loom"] = "d/m"

    made = changed("", turned)
    (question,) = loaded(tmp_path / "a.db", write(made.files[0], tmp_path), dry_run=True).questions
    said = in_words(question).message
    assert "1/1" not in said and "7/2" in said and "2/7" in said
