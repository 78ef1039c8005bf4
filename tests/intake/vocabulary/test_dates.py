"""Dates, moments and times as texts."""

from datetime import date, datetime, time

import pytest

from tracker.intake.vocabulary.dates import date_text, from_serial, time_text

D = date(2026, 3, 14)


@pytest.mark.parametrize(
    "text",
    ["14.03.2026", "14.3.26", "2026-03-14", "2026/3/14", "20260314", "14 Mar 2026", "14. März 2026", "14 mars 2026",
     "March 14, 2026", "14-MAR-26", "14 de marzo de 2026", "14 mart 2026", "2026年3月14日", "14/3/2026", "3/14/2026",
     "Sa, 14.03.2026", "14 marzo 2026", "14 março 2026", "14th March 2026"],
)  # fmt: skip
def test_one_reading(text):
    found = date_text(text)
    assert found is not None and set(found.readings.values()) == {D}


def test_two_readings_and_proofs():
    found = date_text("3/4/26")
    assert found is not None and found.readings == {"day first": date(2026, 4, 3), "month first": date(2026, 3, 4)}
    assert [date_text(t).proves for t in ("14/3/2026", "3/14/2026", "3/4/26")] == ["day first", "month first", ""]


def test_before_a_point_stands_the_day():
    found = date_text("03.04.2026")
    assert found is not None and set(found.readings.values()) == {date(2026, 4, 3)}


@pytest.mark.parametrize(
    "text",
    ["14.03.26 06:30", "2026-03-14T06:30:00", "14/3/2026 6:30 AM", "14. März 2026 um 6:30", "2026年3月14日 6:30"],
)
def test_moments(text):
    found = date_text(text)
    assert found is not None and set(found.readings.values()) == {D} and found.clock == time(6, 30)


@pytest.mark.parametrize("text", ["31.02.2026", "2026-13-01", "14.3.", "12-Mar", "soon", "3/12", "32/1/2026", ""])
def test_no_date(text):
    assert date_text(text) is None


@pytest.mark.parametrize(
    ("text", "wanted"),
    [("06:00", time(6)), ("6h30", time(6, 30)), ("6 pm", time(18)), ("12 am", time(0)),
     ("24:00", time(0)),
     ("22 Uhr", time(22)), ("14.30", time(14, 30))],
)  # fmt: skip
def test_times(text, wanted):
    assert time_text(text) == wanted


@pytest.mark.parametrize("text", ["25:00", "6:61", "6", "noon"])
def test_no_time(text):
    assert time_text(text) is None


def test_serial_numbers():
    """Day 46115 of the spreadsheet's count is 3 April 2026 (computed: 1899-12-30 + 46115 days)."""
    assert from_serial(46115.25) == datetime(2026, 4, 3, 6) and from_serial(600) is None
