"""Weeks, months and years as spans of days. Weeks by ISO 8601: week 1 is that of 4 January, from Monday to Sunday."""

from datetime import date

import pytest

from tracker.intake.vocabulary.spans import span_text

# 4 January 2027 is a Monday, so week 12 begins 11 weeks later, on 22 March
WEEK_12 = (date(2027, 3, 22), date(2027, 3, 28))
MARCH = (date(2027, 3, 1), date(2027, 3, 31))


@pytest.mark.parametrize(
    "text",
    ["KW 12/27", "KW12/2027", "12. KW 2027", "W12/27", "wk 12 2027", "CW 12-27", "2027-W12", "2027 W12", "sem. 12/27", "S12/2027",
     "semaine 12 2027", "sett. 12/27", "semana 12/2027", "12. hafta 2027", "2027年第12周", "Kalenderwoche 12/2027"],
)  # fmt: skip
def test_a_week(text):
    assert span_text(text) == WEEK_12


@pytest.mark.parametrize(
    "text", ["03/2027", "3.2027", "2027/03", "März 2027", "mars 2027", "Mart 2027", "marzo de 2027", "2027年3月"]
)
def test_a_month(text):
    assert span_text(text) == MARCH


def test_a_year_and_what_is_none_of_these():
    assert span_text("2027") == (date(2027, 1, 1), date(2027, 12, 31))
    assert [
        span_text(text) for text in ("KW 54/27", "13/2027", "KW 12", "12/27", "27", "wide 12/27", "2027-03-04")
    ] == [None] * 7
