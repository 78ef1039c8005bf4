"""Rows that do not fit what else there is in the mill: an unknown article is refused, the rest is noted with its cell."""

from datetime import date

import pytest
from mill_sheets import delimited, read

from tracker.domain.findings import Severity
from tracker.intake.rows.cross_checks import cross_findings
from tracker.words.findings import in_words

TODAY = date(2026, 11, 25)
STORED = {
    "articles": {("A-1",): {"article": "A-1"}},
    "looms": {
        ("007", "Hall 1"): {"loom": "007", "hall": "Hall 1", "machine_type": "AJ"},
        ("R-04", "Hall 2"): {"loom": "R-04", "hall": "Hall 2", "machine_type": "RP"},
    },
    "terms": {("start",): {"term": "start", "value": "2027-01-04"}},
}


@pytest.fixture
def found(tmp_path):
    """What is found in a table, as (severity, code, cell, message)."""

    def find(*rows, stored=STORED):
        got = read(delimited(tmp_path / "a.csv", list(rows))).result
        assert got.rows and not [f for f in got.findings if f.severity is not Severity.NOTE]
        findings = cross_findings(got.rows, got.tables, stored, TODAY)
        return [(f.severity.value, f.code, f.cell, f.message) for f in map(in_words, findings)]

    return find


WARPS = ["Loom", "Hall", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"]


def warp(article, read_at="2027-01-04 06:00"):
    return ["007", "Hall 1", 0, article, 3000, 900, read_at]


def test_an_article_that_there_is_not(found):
    assert found(WARPS, warp("A-1")) == []
    assert found(WARPS, warp("A-1"), warp("A-2")) == [
        ("refused", "unknown-article", "D3", "Article A-2 is not in the list of articles; the nearest is A-1.")
    ]


def test_warps_may_be_loaded_before_any_article(found):
    assert found(WARPS, warp("A-2", "2026-11-24 06:00"), stored={}) == []


def test_articles_of_the_same_load_count(tmp_path):
    articles = [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A-2", 24, 6]]
    files = delimited(tmp_path / "a.csv", articles), delimited(tmp_path / "w.csv", [WARPS, warp("A-2"), warp("B-7")])
    got = read(*files).result
    assert [f.raw for f in cross_findings(got.rows, got.tables, STORED | {"articles": {}}, TODAY)] == ["B-7"]


def test_readings_of_days_to_come_are_one_note(found):
    assert found(WARPS, warp("A-1", "2027-01-04 23:00")) == []  # the day on which the programme begins
    (note,) = found(WARPS, warp("A-1", "2027-01-05 06:00"), warp("A-1", "2027-06-01 06:00"))
    assert note == (
        "note", "reading-to-come", "G3",
        "Loom 007: the warp was read at Tue 1 Jun 2027 06:00, and 1 more of this sheet, later than Mon 4 Jan 2027.",
    )  # fmt: skip
    (note,) = found(WARPS, warp("A-1", "2026-11-26 06:00"), stored={})
    assert note[3].endswith("later than Wed 25 Nov 2026.")


@pytest.mark.parametrize(
    ("rows", "cell"),
    [
        ([["Crew", "Trade", "Heads", "Hall"], ["A", "fitter", 2, None], ["B", "fitter", 2, "Hall 9"]], "D3"),
        ([["Hall", "Weekdays", "Start", "End"], ["Hall 1", "Mon-Fri", "06:00", "14:00"],
          ["Hall 9", "Mon-Fri", "06:00", "14:00"]], "A3"),
        ([["Date", "Hall", "Stops"], ["2027-02-01", None, "both"], ["2027-02-02", "Hall 9", "both"]], "B3"),
    ],
)  # fmt: skip
def test_a_hall_in_which_no_loom_stands(found, rows, cell):
    said = "No loom stands in Hall 9; the halls with looms are Hall 1, Hall 2. The row changes nothing."
    assert found(*rows) == [("note", "hall-without-looms", cell, said)]
    assert found(*rows, stored={}) == []


@pytest.mark.parametrize(
    ("term", "value", "code", "cell", "said"),
    [
        ("pilot of XX-9", "007", "pilot-of-no-type", "A3",
         "pilot of XX-9: no loom has the machine type XX-9; there are AJ, RP."),
        ("pilot of AJ", "9999", "pilot-unknown", "B3", "pilot of AJ: loom 9999 is not in the loom list."),
        ("pilot of AJ", "R-04", "pilot-of-other-type", "B3",
         "pilot of AJ: loom R-04 has the machine type RP, not AJ."),
        ("target finish", "2027-01-03", "finish-before-start", "B3",
         "The target finish Sun 3 Jan 2027 is before the start Mon 4 Jan 2027; no loom can be done by then."),
    ],
)  # fmt: skip
def test_terms_that_the_mill_cannot_follow(found, term, value, code, cell, said):
    assert found(["Term", "Value"], ["lead trade", "fitter"], [term, value]) == [("note", code, cell, said)]


def test_terms_that_fit_are_passed(found):
    assert found(["Term", "Value"], ["pilot of AJ", "007"], ["target finish", "2027-01-04"]) == []


# ---- crews: breaks, absences, overtime

CREWS = {"crews": {
    ("Fitters 1", None, None, None, None): {"crew": "Fitters 1", "trade": "fitter", "heads": 2, "to_on": date(2027, 3, 1)},
    ("Fitters 2", None, None, None, None): {"crew": "Fitters 2", "trade": "fitter", "heads": 3},
}, "absences": {
    ("Fitters 2", date(2027, 2, 1)): {"crew": "Fitters 2", "from_on": date(2027, 2, 1), "to_on": date(2027, 2, 5)},
}}  # fmt: skip
ABSENCES = ["Crew", "From", "To", "Heads", "Reason"]


def test_an_absence_that_does_not_fit_its_crew_is_refused_by_its_cell(found):
    rows = [
        ["Fitters 1", "2027-02-01", "2027-02-05", 2, "training"],  # all of them: possible
        ["Fitters 1", "2027-02-08", "2027-02-12", 3, "ill"],  # has 2
        ["Fitters 1", "2027-02-26", "2027-03-02", 1, "leave"],  # there to 1 March only
        ["Fitters 2", "2027-02-05", "2027-02-06", 1, "ill"],  # away already on the 5th
        ["Fitter 2", "2027-05-05", "2027-05-06", 1, "ill"],
    ]
    assert [(code, cell) for severity, code, cell, _ in found(ABSENCES, *rows, stored=CREWS)] == [
        ("more-heads-than-crew", "D3"), ("outside-crew-dates", "C4"), ("absences-overlap", "B5"), ("unknown-crew", "A6"),
    ]  # fmt: skip


def test_an_absence_told_again_with_another_end_is_no_overlap(found):
    assert found(ABSENCES, ["Fitters 2", "2027-02-01", "2027-02-03", None, "ill"], stored=CREWS) == []


def test_two_absences_of_one_sheet_that_overlap_name_each_other(found):
    rows = [["Fitters 1", "2027-02-01", "2027-02-05", 1, "a"], ["Fitters 1", "2027-02-05", "2027-02-05", 1, "b"]]
    assert [cell for _, _, cell, _ in found(ABSENCES, *rows, stored=CREWS)] == ["B2", "B3"]


def test_overtime_of_a_crew_that_there_is_not(found):
    head = ["Crew", "Date", "Start", "End"]
    got = found(
        head, ["Fitters 1", "2027-03-06", "06:00", "12:00"], ["F 9", "2027-03-06", "06:00", "12:00"], stored=CREWS
    )
    assert [(code, cell) for _, code, cell, _ in got] == [("outside-crew-dates", "B2"), ("unknown-crew", "A3")]


def test_a_break_outside_its_shift_is_refused(found):
    head = ["Crew", "Trade", "Heads", "Shift start", "Shift end", "Breaks"]
    got = found(
        head,
        ["A", "fitter", 2, "06:00", "14:00", "10:00-10:15, 12:00-12:30"],
        ["B", "fitter", 2, "06:00", "14:00", "10:00-10:15, 13:45-14:15"],
        ["C", "fitter", 2, "06:00", "14:00", "at noon"],
    )
    assert [(severity, code, cell) for severity, code, cell, _ in got] == [
        ("refused", "break-outside-shift", "F3"), ("refused", "unreadable-break", "F4"),
    ]  # fmt: skip
    assert "13:45-14:15 does not lie inside the shift 06:00-14:00" in got[0][3]
