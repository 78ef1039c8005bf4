"""Tables for a person: nothing lost, nothing broken inside a word, what is left out is said."""

import pytest

from tracker.cli import show

ROWS = [
    (
        "Hall 1",
        "007",
        "Mon 4 Jan 2027 06:00",
        "[8..16] frames, since the rail is undrilled and the creel is vertical",
        "9.3",
    ),
    ("Hall 2", "R-15", "Tue 5 Jan 2027 06:00", "every loom", "12.5"),
]
COLUMNS = ["Hall", "Loom", "Start", "Why", "?>Hours (h)"]


@pytest.fixture
def printed(monkeypatch, capsys):
    def run(width, columns=COLUMNS, rows=ROWS, **options):
        monkeypatch.setattr(show.out, "width", width)
        show.table("The title, which is longer than the table itself is wide", columns, rows, **options)
        return capsys.readouterr().out.splitlines()

    return run


def test_wide_enough_for_one_line_each(printed):
    lines = printed(130)
    assert len(lines) == 4
    assert lines[0] == "The title, which is longer than the table itself is wide"
    assert lines[2].endswith("  " + ROWS[0][3] + "        9.3")  # brackets stand as they are; figures are set right
    assert lines[3].endswith("12.5")


def test_long_texts_break_between_words_and_short_ones_not_at_all(printed):
    lines = printed(80)
    assert all(len(line) <= 80 for line in lines)
    row = next(line for line in lines if "007" in line)
    assert "Mon 4 Jan 2027 06:00" in row and "[8..16] frames," in row
    assert " ".join(" ".join(line.split()) for line in lines).count("undrilled") == 1


def test_the_least_needed_column_goes_first_and_that_is_said(printed):
    lines = printed(62)
    assert "Hours" not in lines[1]
    assert lines[-1] == "Left out for want of room: Hours (h). A wider terminal and --json FILE have them."


def test_very_narrow_still_loses_nothing_that_is_needed(printed):
    said = "".join("".join(line.split()) for line in printed(30))
    assert "007" in said and "R-15" in said


def test_what_is_cut_is_counted(printed):
    lines = printed(130, rows=ROWS * 30, most=10)
    assert lines[-1] == "… and 50 more; all of them with --json FILE"


def test_no_row_and_an_empty_cell(printed):
    assert printed(80, rows=[]) == [
        "The title, which is longer than the table itself is wide",
        "Hall  Loom  Start  Why  Hours (h)",
    ]
    assert printed(80, ["A", "B"], [(None, 0)])[2].split() == ["0"]
