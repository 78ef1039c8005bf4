"""A field that no column is, and a column of the mill's own that may be it: asked, once, with the answers that settle it."""

from pathlib import Path

import pytest
from mill_sheets import read, workbook

HEAD = ["Loom", "Hall", "Machine type", "Reed width (cm)", "Speed (rpm)", "Efficiency (%)"]
ROWS = [[f"{n:03d}", "Hall 1", "AJ-190", 190, 600 + n, 80 + n] for n in range(1, 7)]


def asked(tmp_path: Path, instead_of: str, heading: str, write):
    """The questions where a column is headed otherwise, and holds what `write` makes of the row's count."""
    at = HEAD.index(instead_of)
    head = [*HEAD[:at], heading, *HEAD[at + 1 :]]
    rows = [[*row[:at], write(n), *row[at + 1 :]] for n, row in enumerate(ROWS)]
    return read(workbook(tmp_path / "a.xlsx", [head, *rows]))


@pytest.mark.parametrize(
    ("instead_of", "heading", "write"),
    [
        ("Speed (rpm)", "Obroty 1/min", lambda n: 600 + n),  # a unit speaks for it
        ("Speed (rpm)", "Obroty", lambda n: 600 + n),  # its values do
        ("Efficiency (%)", "Wydajność", lambda n: f"{80 + n} %"),
        ("Efficiency (%)", "Efficiency loss", lambda n: 4 + n),  # a word does
        ("Reed width (cm)", "Cloth width cm", lambda n: 180),
    ],
)
def test_what_looks_like_the_field_is_asked_about(tmp_path, instead_of, heading, write):
    (doubt,) = asked(tmp_path, instead_of, heading, write).doubts
    assert doubt.code == "may-be-field" and heading in doubt.message and "own column" in doubt.hint


@pytest.mark.parametrize(
    ("heading", "write"),
    [
        ("Card no.", lambda n: 600 + n),  # a number of something
        ("Cards", lambda n: 4 + n),  # no speed that a loom has
        ("Oil temperature °C", lambda n: f"{60 + n} °C"),
        ("Seen by", lambda n: "K. L."),
        ("Gatter", lambda n: f"C{600 + n}"),  # names with figures
        ("Motor kW", lambda n: 5.5),
    ],
)
def test_other_columns_are_not(tmp_path, heading, write):
    got = asked(tmp_path, "Speed (rpm)", heading, write)
    assert not got.doubts and heading in got.rows("looms")[0].kept


def test_either_answer_settles_it(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [[*HEAD[:4], "Obroty", *HEAD[5:]], *ROWS])
    assert [loom["speed_ppm"] for loom in read(path, Obroty="speed").looms] == [
        601.0,
        602.0,
        603.0,
        604.0,
        605.0,
        606.0,
    ]
    got = read(path, Obroty="own column")
    assert got.rows("looms")[0].kept == {"Obroty": 601} and not got.doubts
    assert not read(path, remembered=got.result.answers_used).doubts


def test_nothing_is_asked_where_the_field_is_there(tmp_path):
    path = workbook(tmp_path / "a.xlsx", [[*HEAD, "Obroty"], *([*row, 700] for row in ROWS)])
    assert not read(path).doubts
