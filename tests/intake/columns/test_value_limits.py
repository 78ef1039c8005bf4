"""Values that contradict each other and terms out of their limits are refused with cell, value and what is possible."""

import pytest
from mill_sheets import delimited, read

from tracker.domain.columns import Kind
from tracker.domain.tables import TERM_COLUMNS
from tracker.domain.terms import Terms, nearest_zone
from tracker.intake.columns.single_values import single_value

CREW = ["Crew", "Trade", "Heads", "Weekdays", "Shift start", "Shift end", "From", "To"]
WARP = ["Loom", "Hall", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Tail (m)"]
SPAN = ["Loom", "Hall", "From", "To", "Reason"]


@pytest.mark.parametrize(
    ("heading", "sound", "wrong", "cell", "said"),
    [
        (WARP, ["1", "H", 0, "A", 4050, 4050, 5], ["2", "H", 0, "A", 4050, 5000, 5], "F3",
         "Warp left 5,000 m is more than Set length 4,050 m."),
        (WARP, ["1", "H", 0, "A", None, 4050, 5], ["2", "H", 0, "A", 100, 40, 101], "G3",
         "Tail 101 m is more than Set length 100 m."),
        (SPAN, ["1", "H", "2027-02-01 06:00", "2027-02-10 06:00", "x"],
         ["2", "H", "2027-02-10 06:00", "2027-02-01 06:00", "x"], "C3",
         "From Wed 10 Feb 2027 06:00 is later than To Mon 1 Feb 2027 06:00."),
        (CREW, ["A", "fitter", 2, "Mon-Fri", "22:00", "06:00", "2027-02-01", "2027-02-01"],
         ["B", "fitter", 2, "Mon-Fri", "06:00", "14:00", "2027-03-01", "2027-02-01"], "G3",
         "From Mon 1 Mar 2027 is later than To Mon 1 Feb 2027."),
        (CREW, ["A", "fitter", 2, "Mon-Fri", None, "06:00", None, "2027-02-01"],
         ["B", "fitter", 2, "Mon-Fri", "06:00", "06:00", None, None], "E3",
         "Shift start and Shift end are both 06:00."),
    ],
)  # fmt: skip
def test_what_contradicts_itself_is_refused_row_by_row(tmp_path, heading, sound, wrong, cell, said):
    got = read(delimited(tmp_path / "a.csv", [heading, sound, wrong]))
    assert [(f.code, f.cell, f.message) for f in got.refused] == [("contradiction", cell, said)]
    assert [row.number for row in got.result.rows] == [2]


@pytest.mark.parametrize(
    ("term", "value", "cell_hint"),
    [
        ("time zone", "Mars/Base", "an IANA name such as Europe/Vienna"),
        ("time zone", "america/new york", "an IANA name such as America/New_York"),
        ("currency", "12", "a code or sign without figures, such as EUR"),
        ("horizon (days)", "12,5", "a whole number from 1 to 1,000 days"),
        ("horizon (days)", "0", "a whole number from 1 to 1,000 days"),
        ("learning rate (%)", "0", "a share from 50 % to 100 %"),
        ("learning rate (%)", "150", "a share from 50 % to 100 %"),
        ("learning floor (%)", "150", "a share from 0 % to 100 %"),
        ("day-to-day variation (%)", "300", "a share from 0 % to 100 %"),
        ("move cost", "-1", "a number of at least 0"),
        ("looms stopped at once", "0", "a whole number of at least 1"),
        ("target finish", "someday", "a day of 1970 to 2099, such as 2027-01-31"),
        ("start", "9999-12-31", "a day of 1970 to 2099, such as 2027-01-31"),
    ],
)
def test_a_term_out_of_its_limits_says_what_is_possible(tmp_path, term, value, cell_hint):
    got = read(delimited(tmp_path / "a.csv", [["Term", "Value"], ["lead trade", "fitter"], [term, value]]))
    assert [(f.cell, f.message, f.hint) for f in got.refused] == [
        ("B3", f"{term}: {value!r} is not possible here.", f"Write {cell_hint}, or delete the row.")
    ]


def test_the_defaults_are_within_the_limits():
    terms = Terms()
    for column in TERM_COLUMNS:
        given = getattr(terms, column.field)
        written = 100 if column.kind is Kind.FRACTION and given == 1 else given  # a bare 1 is 1 %
        assert given is None or single_value(column, written) == given, column.title


def test_the_nearest_zone_is_found_by_its_name_or_its_city():
    names = ("europe-vienna", "Vienna", "europe/berln", "New York", "Mars/Base")
    assert [nearest_zone(name) for name in names] == [
        "Europe/Vienna", "Europe/Vienna", "Europe/Berlin", "America/New_York", ""
    ]  # fmt: skip


def test_a_column_of_ours_whose_only_value_does_not_fit_is_not_passed_over(tmp_path):
    """A shift start of 25:00 was left out with a note, and the crew began at 06:00."""
    row = ["A", "fitter", 2, "Mon-Fri", "25:00", "14:00", None, None]
    (refused,) = read(delimited(tmp_path / "a.csv", [CREW, row])).refused
    assert (refused.cell, refused.message) == ("E2", "Shift start '25:00' cannot be read as a time of day.")
