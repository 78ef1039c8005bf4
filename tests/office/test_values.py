"""Values as workbook cells."""

from datetime import UTC, date, datetime, time

import pytest
from refusals import refused

from tracker.domain.tables import Kind
from tracker.errors import DataError
from tracker.office.writing.values import Share, csv_text, weekdays, workbook_value, xml_text


@pytest.mark.parametrize(
    ("kind", "value", "shown"),
    [
        (Kind.FRACTION, 0.88, 88),
        (Kind.FRACTION, 0.287, 28.7),
        (Kind.FRACTION, 0.575, 57.5),
        (Kind.FRACTION, 0.008, Share(0.008)),
        (Kind.FRACTION, 0.01, Share(0.01)),
        (Kind.FRACTION, 1.0, 100),
        (Kind.FRACTION, 0.0, 0),
        (Kind.NUMBER, 190.0, 190),
        (Kind.NUMBER, 5.25, 5.25),
        (Kind.YES_NO, False, "no"),
        (Kind.ANY, False, False),
        (Kind.IDENTIFIER, "007", "007"),
        (Kind.WEEKDAYS, frozenset(range(5)), "Mon-Fri"),
        (Kind.MOMENT, datetime(2027, 1, 4, 6, tzinfo=UTC), datetime(2027, 1, 4, 6)),
        (Kind.DATE, date(1900, 2, 28), "1900-02-28"),
        (Kind.DATE, date(1900, 3, 1), date(1900, 3, 1)),
        (Kind.TEXT, "", None),
        (Kind.TEXT, None, None),
    ],
)
def test_what_a_workbook_shows(kind, value, shown):
    found = workbook_value(kind, value)
    assert found == shown and type(found) is type(shown)


def test_no_cell_holds_infinity():
    with refused(DataError, "inf is no number"):
        workbook_value(Kind.NUMBER, float("inf"))


@pytest.mark.parametrize(
    ("days", "words"),
    [({0, 1, 2, 3, 4, 5}, "Mon-Sat"), ({5}, "Sat"), ({0, 1}, "Mon, Tue"), ({0, 2, 4}, "Mon, Wed, Fri")],
)
def test_weekdays(days, words):
    assert weekdays(days) == words


def test_csv_fields():
    """A negative number stays a number; text that begins with an apostrophe and a risky character gets one more."""
    assert csv_text(-3.5) == "-3.5" and csv_text(-3) == "-3"
    assert csv_text("'=x") == "''=x" and csv_text("'tis") == "'tis"
    assert csv_text(date(2027, 1, 4)) == "2027-01-04" and csv_text(time(6)) == "06:00"
    assert csv_text(datetime(2027, 1, 4, 6)) == "2027-01-04 06:00"
    assert csv_text(datetime(2027, 1, 4, 6, 0, 5)) == "2027-01-04 06:00:05"
    assert csv_text(Share(0.008)) == "0.8%"
    assert csv_text(None) == "" and csv_text(True) == "yes"


def test_characters_that_xml_cannot_hold():
    assert xml_text("a\x0bb\r\n\tc") == "a_x000B_b_x000D_\n\tc"
    assert xml_text("_x000D_ as written") == "_x005F_x000D_ as written"


def test_a_text_longer_than_a_cell():
    """32,767 characters are the format's published limit."""
    assert len(xml_text("x" * 32_767)) == 32_767
    with refused(DataError, "32,768 characters"):
        xml_text("x" * 32_768)
