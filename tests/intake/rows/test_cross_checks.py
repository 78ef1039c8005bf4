"""Rows that do not fit what else there is in the mill: an unknown article is refused, the rest is noted with its cell."""

from datetime import date

import pytest
from mill_sheets import delimited, read

from tracker.domain.findings import Severity
from tracker.intake.rows.cross_checks import cross_findings

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
        return [(f.severity.value, f.code, f.cell, f.message) for f in findings]

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
        "Loom 007: the warp was read at 2027-06-01 06:00, and 1 more of this sheet, later than 2027-01-04.",
    )  # fmt: skip
    (note,) = found(WARPS, warp("A-1", "2026-11-26 06:00"), stored={})
    assert note[3].endswith("later than 2026-11-25.")


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
         "The target finish 2027-01-03 is before the start 2027-01-04; no loom can be done by then."),
    ],
)  # fmt: skip
def test_terms_that_the_mill_cannot_follow(found, term, value, code, cell, said):
    assert found(["Term", "Value"], ["lead trade", "fitter"], [term, value]) == [("note", code, cell, said)]


def test_terms_that_fit_are_passed(found):
    assert found(["Term", "Value"], ["pilot of AJ", "007"], ["target finish", "2027-01-04"]) == []
