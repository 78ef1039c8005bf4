"""Text in columns of fixed width, as programs print lists."""

from pathlib import Path

import pytest
from mill_sheets import read

from tracker.office.opening.fixed_width import fixed_rows

RULER = "----   ------   ------------   ---------------   -----------   ------"
HEAD = "Loom   Hall     Machine type   Reed width (cm)   Speed (rpm)   Eff. %"
TITLE = "LOOM LIST OF THE WEAVING MILL       printed 12.11.2026       page"


def lines(first, last):
    for i in range(first, last):
        hall, kind = f"Hall {i // 110}", "AJ-190" if i % 2 else "RP-220"
        yield f"{i:<7}{hall:<9}{kind:<15}{190.5:>15}   {600 + i:>11}   {80.5 + i % 9:>6}"


@pytest.mark.parametrize("ruler", [[RULER], []])
def test_a_printed_list_with_pages_is_read(tmp_path: Path, ruler):
    """Loom 101 of 701 picks/min at 80.5 + 101 % 9 = 82.5 %; looms 101 to 109 are in hall 0, the others in hall 1."""
    text = [TITLE + " 1", "", HEAD, *ruler, *lines(101, 110), "\f" + TITLE + " 2", "", HEAD, *ruler, *lines(110, 120)]
    (tmp_path / "looms.txt").write_text("\n".join(text))
    got = read(tmp_path / "looms.txt")
    assert [loom["loom"] for loom in got.looms] == [str(i) for i in range(101, 120)] and not got.doubts
    first, last = got.looms[0], got.looms[-1]
    assert (first["hall"], first["machine_type"], first["reed_width_cm"], first["speed_ppm"]) == (
        "Hall 0",
        "AJ-190",
        190.5,
        701,
    )
    assert first["efficiency"] == pytest.approx(0.825) and last["hall"] == "Hall 1"


def test_a_text_over_a_border_stays_whole():
    rows = fixed_rows("AAA  BBB  CCC\n" * 20 + "A title over it all\n")
    assert rows[0] == ["AAA", "BBB", "CCC"] and rows[-1][0].startswith("A title") and len(rows) == 21
    assert "".join(rows[-1]).replace(" ", "") == "Atitleoveritall"


@pytest.mark.parametrize("text", ["one\ntwo\nthree\n", "a b c\nd e f\n", "Loom;Hall;Type\n1;  2;3\n"])
def test_what_has_no_such_columns_is_none(text):
    assert fixed_rows(text) is None
