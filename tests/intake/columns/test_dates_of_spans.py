"""Protected until is never dropped: read to its last day, asked, or refused. Days by hand: see test_spans."""

from datetime import date, datetime

import pytest
from mill_sheets import HEADINGS, delimited, inventory, read, typed_rows, workbook

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)


def protected(tmp_path, cells, write=workbook, name="a.xlsx", **answers):
    padded = [*cells, *[None] * (len(ROWS) - len(cells))]
    rows = [[*HEAD, "Protected until"], *([*row, cell] for row, cell in zip(ROWS, padded, strict=True))]
    return read(write(tmp_path / name, rows), **answers)


@pytest.mark.parametrize(
    ("cell", "day"),
    [
        ("KW 12/27", date(2027, 3, 28)),
        ("03/2027", date(2027, 3, 31)),
        (2027, date(2027, 12, 31)),
        (46_388, date(2027, 1, 1)),
    ],
)
def test_a_span_protects_to_its_last_day(tmp_path, cell, day):
    got = protected(tmp_path, [cell, datetime(2027, 5, 4), cell])
    assert [loom["protected_until"] for loom in got.looms[:3]] == [day, date(2027, 5, 4), day]
    assert not got.doubts and got.findings(code="serial-date") + got.findings(code="date-of-span")


def test_serial_numbers_in_a_text_file(tmp_path):
    """46,388 days after 30 December 1899 is 1 January 2027: 127 years of 365 days, 32 leap days, and one."""
    got = protected(tmp_path, ["46388", "46389"], delimited, "a.csv")
    assert [loom["protected_until"] for loom in got.looms[:2]] == [date(2027, 1, 1), date(2027, 1, 2)]


def test_what_cannot_be_read_as_a_day_is_asked_or_refused(tmp_path):
    assert [d.code for d in protected(tmp_path, ["when sold"] * 12).doubts] == ["values-do-not-fit"]
    got = protected(tmp_path, [*[datetime(2027, 5, 4)] * 5, "5/6"])
    assert [(f.code, f.cell) for f in got.refused] == [("not-a-date", "L7")]


def asked(got) -> list[tuple[str, str, list[str]]]:
    doubts = [f for f in got.result.findings if f.severity == "doubt"]
    return [(f.code, f.cell, [choice.answer for choice in f.choices]) for f in doubts]


def days(got, many: int) -> list[date | None]:
    return [loom["protected_until"] for loom in got.looms[:many]]


def test_a_month_with_two_figures_of_its_year_may_be_a_day(tmp_path):
    """Today is 25 November 2026: the next 27 January is that of 2027."""
    cells = ["01/27", "12/27"]
    assert asked(protected(tmp_path, cells)) == [("month-or-day", "L1", ["month and year", "next"])]
    months = protected(tmp_path, cells, answers={"Protected until": "month and year"})
    assert days(months, 2) == [date(2027, 1, 31), date(2027, 12, 31)] and not months.doubts
    assert days(protected(tmp_path, cells, answers={"Protected until": "next"}), 1) == [date(2027, 1, 27)]
    assert not protected(tmp_path, cells, remembered=months.result.answers_used).doubts


@pytest.mark.parametrize(
    ("cells", "day"),
    [(["01/35"], date(2035, 1, 31)), (["01/27", "03/2027"], date(2027, 1, 31)), (["Mrz 27"], date(2027, 3, 31)),
     (["until 31/03/2027"], date(2027, 3, 31)), (["bis 31.3.2027"], date(2027, 3, 31)), (["Ende KW 12/27"], date(2027, 3, 28)),
     (["fin mars 2027"], date(2027, 3, 31)), (["31.03.2027'ye kadar"], date(2027, 3, 31)), (["2027年3月底"], date(2027, 3, 31))],
)  # fmt: skip
def test_what_can_be_no_other_day_is_read(tmp_path, cells, day):
    got = protected(tmp_path, cells)
    assert days(got, 1) == [day] and not got.doubts and not got.refused


def test_a_month_before_two_figures_is_a_day_in_english_alone(tmp_path):
    assert asked(protected(tmp_path, ["Mar 27"])) == [("month-or-day", "L1", ["month and year", "next"])]


def test_what_names_no_year_is_asked_and_never_remembered(tmp_path):
    """Week 9 of 2027 ends 8 weeks after Sunday, 10 January; week 50 of 2026 on 13 December, 40 weeks after week 10 (8 March)."""
    cells = ["Ende KW 9", "KW 50", "15.3.", "March"]
    assert asked(protected(tmp_path, cells)) == [("day-without-year", "L1", ["next"])]
    got = protected(tmp_path, cells, answers={"Protected until": "next"})
    assert days(got, 4) == [date(2027, 3, 7), date(2026, 12, 13), date(2027, 3, 15), date(2027, 3, 31)]
    assert protected(tmp_path, cells, remembered=got.result.answers_used).doubts


def test_both_questions_about_one_column_take_their_answers_together(tmp_path):
    cells = ["01/27", "KW 9"]
    assert [code for code, _, _ in asked(protected(tmp_path, cells))] == ["month-or-day", "day-without-year"]
    got = protected(tmp_path, cells, answers={"Protected until": "month and year; next"})
    assert days(got, 2) == [date(2027, 1, 31), date(2027, 3, 7)] and not got.doubts


def test_a_week_from_when_on_begins_on_monday(tmp_path):
    head = ["Crew", "From", "To", "Reason"]
    got = read(workbook(tmp_path / "a.xlsx", {"Absences": [head, ["A", "KW 12/27", "KW 12/27", "course"]]}))
    (row,) = got.rows("absences")
    assert (row.values["from_on"], row.values["to_on"]) == (date(2027, 3, 22), date(2027, 3, 28))
