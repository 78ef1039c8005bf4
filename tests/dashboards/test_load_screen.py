"""The Load screen: look, answer, see what would change, write; all or nothing."""

import os
from io import BytesIO

import pytest
from held_work import Waiting
from opened import here
from openpyxl import Workbook
from quick_jobs import quick_jobs  # noqa: F401
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from dashboards import load_reading
from dashboards.speaking import SPEAKER
from tracker.domain.findings import Choice, Finding, Severity
from tracker.domain.jobs import JobKind
from tracker.domain.mill import LoomKey
from tracker.services.jobs import desk, kinds
from tracker.services.loading import readings
from tracker.services.loading.export import export_file, template_file
from tracker.services.loading.questions import questions, together
from tracker.store import open_store
from tracker.words.findings import in_words

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
HEADINGS = ("Loom", "Hall", "Machine type", "Reed width", "Speed (picks/min)")
INCHES = [
    ("007", "Hall 1", "AJ-N", 110, 640),
    ("A-7", "Hall 1", "AJ-N", 130, 640),
    ("A-10", "Hall 1", "AJ-N", 143, 640),
]
"""Widths that can be cm (110 to 143) or inches (279 to 363 cm): the reader has to ask."""


def book(*rows: tuple) -> bytes:
    made = Workbook()
    sheet = made.worksheets[0]
    sheet.title = "Looms"
    for row in (HEADINGS, *rows):
        sheet.append(row)
    target = BytesIO()
    made.save(target)
    return target.getvalue()


@pytest.fixture
def store(tmp_path, monkeypatch):
    path = tmp_path / "mill.db"
    monkeypatch.setenv("BEAMSLOT_DB", str(path))
    return open_store(path, make=True)


def given(name: str, content: bytes) -> AppTest:
    app = AppTest.from_string("from dashboards.screens import load\nload.page()\n", default_timeout=60).run()
    app.file_uploader[0].set_value([(name, content, XLSX)])
    return app.run()


def looms(store):
    with store.reading() as uow:
        return uow.mill().looms


def test_a_question_is_asked_answered_and_then_written(store):
    app = given("looms.xlsx", book(*INCHES))
    assert not app.exception
    assert app.radio[0].options == ["cm", "inch", "something else"] and app.radio[0].value is None
    assert "Answer the questions above first" in app.info[-1].value
    assert not [button for button in app.button if button.label == "Write to the database"]

    app.radio[0].set_value("inch")
    app.button[0].click().run()
    assert "0 questions" in words(app) and not looms(store)

    next(button for button in app.button if button.label == "Write to the database").click().run()
    assert "3 rows added" in app.success[0].value
    # 110 inches of 2.54 cm
    assert looms(store)[LoomKey("Hall 1", "007")].reed_width_cm == pytest.approx(279.4)


def test_an_answer_can_be_written_and_a_wrong_one_is_refused_in_one_line(store):
    app = given("looms.xlsx", book(*INCHES))
    app.text_input[0].set_value("furlongs")
    app.button[0].click().run()
    assert "furlongs" in app.error[0].value
    app.text_input[0].set_value("cm")
    app.button[0].click().run()
    assert "0 questions" in words(app)


def test_a_refused_row_stops_the_load_unless_it_is_left_out(store):
    app = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640), ("008", "Hall 1", "AJ-N", "190 cm", 6000)))
    said = words(app)
    # the second row's speed stands in E3
    assert "✕ refused | looms.xlsx | Looms | E3" in said and "2,500 picks/min" in said
    write = next(button for button in app.button if button.label == "Write to the database")
    assert write.disabled
    app.checkbox[0].check().run()
    next(button for button in app.button if button.label == "Write to the database").click().run()
    assert set(looms(store)) == {LoomKey("Hall 1", "007")}


def test_what_changes_is_shown_old_and_new_and_the_same_file_changes_nothing(store):
    first = book(("007", "Hall 1", "AJ-N", "190 cm", 640))
    app = given("looms.xlsx", first)
    next(button for button in app.button if button.label == "Write to the database").click().run()

    assert "Nothing: the database says the same already." in words(given("looms.xlsx", first))

    said = words(given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 655))))
    assert "Speed (picks/min) | 640 | 655" in said and "0 new, 1 changed" in said


def test_what_is_no_workbook_is_refused_in_one_line(store):
    app = given("looms.xlsx", b"PK not a workbook at all")
    assert not app.exception
    assert "looms.xlsx" in app.error[0].value
    assert not looms(store)


def test_a_new_loom_is_named_and_one_that_looks_like_a_known_one_is_warned_of(store):
    app = given("looms.xlsx", book(("003", "Hall 1", "AJ-N", "190 cm", 640)))
    next(button for button in app.button if button.label == "Write to the database").click().run()
    app = given("looms.xlsx", book(("O03", "Hall 1", "AJ-N", "190 cm", 640), ("004", "Hall 1", "AJ-N", "190 cm", 640)))
    assert "New looms: O03 Hall 1, 004 Hall 1." in words(app)
    (warning,) = app.warning
    assert warning.value.startswith("looms.xlsx Looms A2: Loom 'O03' is new, and differs from 003 (Hall 1)")


def test_of_many_new_looms_the_first_are_named(store):
    rows = [(f"{i:03}", "Hall 1", "AJ-N", "190 cm", 640) for i in range(1, 36)]
    said = words(given("looms.xlsx", book(*rows)))
    # 35 looms, 30 are listed
    assert "030 Hall 1 and 5 more." in said and "031 Hall 1" not in said


def test_where_all_rows_are_refused_it_says_so(store):
    said = words(given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 6000))))
    assert "Nothing: 1 row is refused, and there are no others." in said
    assert "says the same already" not in said


def test_what_is_no_workbook_is_told_once_and_has_no_marked_copy(store):
    app = given("looms.xlsx", b"PK not a workbook at all")
    assert len(app.error) == 1 and "looms.xlsx" not in words(app) and "refused" not in words(app)
    assert not app.get("download_button")


def test_using_no_answer_is_said(store):
    app = given("looms.xlsx", book(*INCHES))
    next(button for button in app.button if button.label == "Use these answers").click().run()
    assert "No answer was given yet" in app.warning[0].value


def test_a_note_can_be_answered_too_without_the_words_of_the_command(store):
    app = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640)))
    answer(app, "Reed width", "own column")
    assert "Answers given: “own column” for Reed width." in words(app)
    # the column is kept under its own heading, so no width is read
    next(button for button in app.button if button.label == "Write to the database").click().run()
    loom = looms(store)[LoomKey("Hall 1", "007")]
    assert loom.reed_width_cm is None and loom.attributes == {"Reed width": "190 cm"}


def test_answers_can_be_taken_back(store):
    app = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640)))
    answer(app, "Reed width", "ignore")
    next(button for button in app.button if button.label == "Forget these answers").click().run()
    assert "Answers given" not in words(app)


def answer(app: AppTest, about: str, said: str) -> None:
    app.selectbox[0].set_value(about)
    next(text for text in app.text_input if text.label == "Answer").set_value(said)
    next(button for button in app.button if button.label == "Use this answer").click().run()


def test_a_hostile_name_stays_inside_the_folder_of_the_session(store, tmp_path):
    app = given("../../../looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640)))
    assert not app.exception
    assert "1 new, 0 changed" in words(app)


# ---- questions


def doubt(*choices: Choice, heading: str = "Reed width") -> Finding:
    params = {"field": "Reed width", "headed": None}
    return Finding("unit-doubt", Severity.DOUBT, heading=heading, choices=choices, params=params)


def test_the_answers_of_a_question_are_those_of_its_finding():
    choices = Choice("Reed width", "cm"), Choice("Reed width", "inch")
    assert questions([doubt(*choices)])[0].choices == choices


def test_a_doubt_without_answers_may_stand_as_written():
    assert questions([doubt(heading="creel")])[0].choices == (Choice("creel", "as written"),)
    assert questions([Finding("sheet-is-hall", Severity.DOUBT, sheet="Old list")])[0].choices[0].about == "Old list"


def test_the_screen_says_what_to_do_without_the_option_of_the_command():
    asked = doubt(Choice("Reed width", "cm"), Choice("Reed width", "inch"))
    assert in_words(asked, SPEAKER).hint == "Answer “cm” for Reed width or “inch” for Reed width."
    assert in_words(asked).hint == 'Answer --answer "Reed width=cm" or --answer "Reed width=inch".'


def test_later_answers_stand_before_earlier_ones_and_keep_the_others():
    before = {"Breite": "reed width;cm", "Datum": "day first"}
    assert together(before, {"Breite": "inch"}) == {"Breite": "inch;reed width;cm", "Datum": "day first"}


def test_notes_and_refusals_are_no_questions():
    assert questions([Finding("placeholder", Severity.NOTE), Finding("not-a-date", Severity.REFUSED)]) == ()


def test_the_app_has_the_screen(store):
    assert not AppTest.from_file(APP, default_timeout=30).run().exception


def test_what_a_new_method_changes_is_told_row_by_row_and_for_which_looms(store):
    """Two looms; operation 10 takes 67 instead of 7 minutes: 60 min × 1.15 = 1.15 h more for each."""
    heads = ["Step", "Operation", "Minutes", "Trade", "Heads", "Place"]

    def workbook(minutes: int) -> bytes:
        made = Workbook()
        sheet = made.worksheets[0]
        sheet.title = "Operations"
        for row in (heads, [10, "Fit", minutes, "fitter", 1, "on loom"]):
            sheet.append(row)
        target = BytesIO()
        made.save(target)
        return target.getvalue()

    def write(name: str, content: bytes) -> AppTest:
        app = given(name, content)
        next(button for button in app.button if button.label == "Write to the database").click().run()
        return app

    write("looms.xlsx", book(("1", "H", "AJ", 190, 600), ("2", "H", "AJ", 190, 600)))
    write("method.xlsx", workbook(7))
    said = words(given("method.xlsx", workbook(67)))
    assert "step 10 Fit: minutes 7 → 67" in said and "2 looms (1, 2): +1.15 labour hours each" in said


def test_a_long_list_is_read_by_a_job_and_not_once_more(store, monkeypatch, quick_jobs):  # noqa: F811
    monkeypatch.setattr(load_reading, "LONG_BYTES", 1)
    app = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", 190, 640)))
    assert not app.exception
    assert desk.wait(here(os.environ["BEAMSLOT_DB"]), 1, 60)
    monkeypatch.setattr(readings, "read_files", None)  # nobody reads them any more
    app.run()
    assert not app.exception and "What would change" in words(app)
    next(button for button in app.button if button.label == "Write to the database").click().run()
    assert not app.exception and looms(store).keys() == {LoomKey("Hall 1", "007")}


def test_a_reading_that_was_stopped_can_be_begun_again(store, monkeypatch, quick_jobs):  # noqa: F811
    monkeypatch.setattr(load_reading, "LONG_BYTES", 1)
    monkeypatch.setitem(kinds.KINDS, JobKind.READING, lambda *_, **given: Waiting())
    app, here_ = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", 190, 640))), here(os.environ["BEAMSLOT_DB"])
    next(button for button in app.button if button.label == "Stop").click().run()
    assert desk.wait(here_, 1, 60)
    app.run()
    next(button for button in app.button if button.label == "Read them again").click().run()
    assert [job.number for job in desk.look(here_).jobs] == [2, 1] and not app.exception


def test_an_empty_mill_finds_templates_and_after_a_load_what_a_plan_still_needs(store):
    app = AppTest.from_string("from dashboards.screens import load\nload.page()\n", default_timeout=60).run()
    assert not app.exception and "Nothing yet." in [one.value for one in app.caption]
    assert len(app.get("download_button")) == 2
    app = given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640)))
    # what a column was taken for stands before the questions and findings
    heads = [one.value for one in app.header]
    assert heads.index("Recognised tables") < heads.index("Findings")
    next(button for button in app.button if button.label == "Write to the database").click().run()
    assert "A plan still needs a method (sheet Operations)" in app.info[0].value
    # the history has the load, with the way to take it back
    assert "looms.xlsx" in words(app) and 'href="changes?undo=' in "".join(part.proto.body for part in app.get("html"))


def test_the_template_and_the_export_load_back(store):
    load_of = given("template.xlsx", template_file())
    assert not load_of.exception and not load_of.error
    given("looms.xlsx", book(("007", "Hall 1", "AJ-N", "190 cm", 640)))
    again = given("mill.xlsx", export_file(here(os.environ["BEAMSLOT_DB"])))
    assert not again.exception and not again.error
