"""Which loom a number means: never another one, never two for one, without a word."""

from pathlib import Path

import pytest
from mill_sheets import HEADINGS, inventory, read, typed_rows, workbook

from tracker.errors import UsageError

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)


def numbered(tmp_path: Path, *numbers: object, **answers: str):
    """The list with these loom numbers, then 012, 013 …; keywords that are cells or headings are answers."""
    more = [f"{12 + i:03d}" for i in range(len(ROWS) - len(numbers))]
    rows = [[number, *row[1:]] for number, row in zip([*numbers, *more], ROWS, strict=True)]
    return read(workbook(tmp_path / "a.xlsx", [HEAD, *rows]), **answers)


def looms(got) -> list[str]:
    return [loom["loom"] for loom in got.looms]


@pytest.mark.parametrize(
    "number", ["101-108", "101 bis 108", "101, 102", "101/102/103", "101–8", "101 à 108", "101..108"]
)
def test_what_may_stand_for_several_looms_is_asked(tmp_path: Path, number):
    (doubt,) = numbered(tmp_path, number).doubts
    assert (doubt.code, doubt.cell, doubt.raw) == ("number-of-several", "A2", number)
    assert looms(numbered(tmp_path, number, A2="as written"))[0] == number


@pytest.mark.parametrize(
    ("number", "meant"),
    [
        ("101-103", ["101", "102", "103"]), ("A-08 to A-10, 12", ["A-08", "A-09", "A-10", "A-12"]), ("101/102", ["101", "102"]),
        ("101, 105", ["101", "105"]), ("98–101", ["98", "99", "100", "101"]),
    ],
)  # fmt: skip
def test_a_row_may_hold_for_each_of_several_looms(tmp_path: Path, number, meant):
    got = numbered(tmp_path, number, A2="each")
    assert looms(got)[: len(meant)] == meant and not got.doubts
    first = got.looms[: len(meant)]
    assert all({**loom, "loom": ""} == {**first[0], "loom": ""} for loom in first)
    assert looms(numbered(tmp_path, number, remembered=got.result.answers_used))[: len(meant)] == meant


@pytest.mark.parametrize("number", ["101–120 except 107", "101/108", "101/102/103"])
def test_what_is_not_plain_cannot_be_each(tmp_path: Path, number):
    (doubt,) = numbered(tmp_path, number).doubts
    assert "each=" not in doubt.hint and "=each" not in doubt.hint


def test_a_list_of_nothing_but_spans(tmp_path: Path):
    spans = [f"{1 + 8 * i}-{8 + 8 * i}" for i in range(12)]
    assert {doubt.code for doubt in numbered(tmp_path, *spans).doubts} == {"number-of-several"}
    assert not numbered(tmp_path, *(f"{1 + i // 6}-{1 + i % 6}" for i in range(12))).doubts, "row and place"


def test_spans_and_lists_of_several_kinds(tmp_path: Path):
    """The list says 33 looms in three rows: 101 to 120 without 107, 121 to 130, and five from 201 on."""
    rows = [
        ["1", "101–120 except 107", "AJ-190", 620],
        ["1", "121–130", "AJ-220", 580],
        ["2", "201-204, 206", "AJ-190", 640],
    ]
    got = read(workbook(tmp_path / "a.xlsx", [["Hall", "Looms", "Machine type", "Speed (picks/min)"], *rows]))
    assert [(d.code, d.cell) for d in got.doubts] == [("number-of-several", cell) for cell in ("B2", "B3", "B4")]


@pytest.mark.parametrize(
    "spans",
    [
        ("A101-104", "A105-108", "B101-104"), ("101 bis 108", "110 bis 116"), ("101, 102", "103, 104"),
        ("101/102", "103/104"), ("101-8", "111-8"), ("1-12", "14-20", "22-30"), ("von 1 bis 5", "von 6 bis 9"),
    ],
)  # fmt: skip
def test_rows_that_are_all_several_looms(tmp_path: Path, spans):
    rows = [["1", span, "AJ-190", 620] for span in spans]
    got = read(workbook(tmp_path / "a.xlsx", [["Hall", "Loom", "Machine type", "Speed (picks/min)"], *rows]))
    assert [d.code for d in got.doubts] == ["number-of-several"] * len(spans)


@pytest.mark.parametrize(
    "names",
    [
        ("1-2", "3-04", "1-3"), ("1-2", "2-3", "3-4"), ("3-04", "3-05", "4-05"), ("A-01", "A-02", "A-03"), ("H1-12", "H2-13"),
        ("3/12", "3/13", "4/12"), ("12-1", "12-2", "13-1"), ("101-1", "101-2", "102-2"), ("1, 2", "1, 3", "2, 3"),
    ],
)  # fmt: skip
def test_names_of_two_numbers_are_looms(tmp_path: Path, names):
    rows = [["1", name, "AJ-190", 620] for name in names]
    got = read(workbook(tmp_path / "a.xlsx", [["Hall", "Loom", "Machine type", "Speed (picks/min)"], *rows]))
    assert looms(got) == list(names) and not got.doubts


@pytest.mark.parametrize(("number", "base"), [("005 (neu)", "005"), ("005 alt", "005"), ("HS 005", "005")])
def test_words_behind_a_number(tmp_path: Path, number, base):
    (doubt,) = numbered(tmp_path, number).doubts
    assert (doubt.code, doubt.understood) == ("number-with-words", base)
    assert looms(numbered(tmp_path, number, A2=base))[0] == base
    assert looms(numbered(tmp_path, number, **{"Loom no.": "as written"}))[0] == number
    with pytest.raises(UsageError):
        numbered(tmp_path, number, A2="006")


def test_words_where_the_others_have_numbers_are_asked_about(tmp_path: Path):
    (doubt,) = numbered(tmp_path, "belt").doubts
    assert (doubt.code, doubt.cell) == ("number-without-figure", "A2")
    assert looms(numbered(tmp_path, "belt", A2="as written"))[0] == "belt"


@pytest.mark.parametrize("number", ["005*", "'005", "005 †", "*005", "005¹"])
def test_a_mark_at_a_number_is_left_out_and_told(tmp_path: Path, number):
    got = numbered(tmp_path, number)
    assert looms(got)[0] == "005" and not got.doubts
    assert [f.cell for f in got.findings(code="number-mark")] == ["A2"]


def test_marks_that_every_number_has_are_part_of_it(tmp_path: Path):
    got = numbered(tmp_path, *(f"*{i}*" for i in range(101, 113)))
    assert looms(got)[:2] == ["*101*", "*102*"]


@pytest.mark.parametrize(
    ("one", "other"), [("A-02", "A–02"), ("B3", "B 3"), ("A-02", "a-02"), ("7", "007"), ("A-2", "A/02")]
)
def test_one_number_in_two_spellings_is_asked(tmp_path: Path, one, other):
    got = numbered(tmp_path, one, other)
    (doubt,) = got.doubts
    assert (doubt.code, doubt.cell) == ("number-spelt-twice", "A2, A3")
    assert looms(numbered(tmp_path, one, other, A3="as written"))[:2] == [one, other]
    assert looms(numbered(tmp_path, one, other, A3=one))[:2] == [one, one]
    again = numbered(
        tmp_path, one, other, remembered=numbered(tmp_path, one, other, A3="as written").result.answers_used
    )
    assert not again.doubts


@pytest.mark.parametrize("numbers", [("1-11", "11-1"), ("32", "32a"), ("A-1", "B-1"), ("1.1", "1.10")])
def test_numbers_of_two_looms_are_not_asked_about(tmp_path: Path, numbers):
    assert not [d for d in numbered(tmp_path, *numbers).doubts if d.code == "number-spelt-twice"]


def test_rows_below_a_list_that_sum_up_are_no_looms(tmp_path: Path):
    kind = ROWS[0][4]
    below = [
        ["Min", *[None] * 6, 190, 8, 400, 80],
        [],
        [kind, "Hall 1", None, None, 7],
        ["Hall 2", None, None, kind, 5],
    ]
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *ROWS, *below]))
    assert got.looms == LOOMS and not got.doubts and not got.refused
    assert [f.cell for f in got.findings(code="row-passed-over")] == ["A14:K14", "A16:K16"]


def test_a_count_by_type_below_a_text_file_is_no_loom(tmp_path: Path):
    lines = ["Loom;Hall;Type;Speed", *(f"{i};Shed 1;AJ-190;{600 + i}" for i in range(1, 5)), "", "AJ-190;Shed 1;12;"]
    (tmp_path / "a.csv").write_text("\n".join(lines))
    got = read(tmp_path / "a.csv")
    assert looms(got) == ["1", "2", "3", "4"] and not got.doubts and not got.refused
    assert [f.cell for f in got.findings(code="row-passed-over")] == ["A7:D7"]


def test_rows_of_a_short_list_that_sum_up_fill_most_of_its_columns(tmp_path: Path):
    head, rows = (
        ["Hall", "Loom", "Machine type", "Speed", "Efficiency"],
        [["H", f"{i:03d}", "T", 600 + i, 88] for i in range(6)],
    )
    below = [[None, "Lowest", None, 600, 88], [None, "Std dev", None, 1.9, 0]]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows, *below]))
    assert len(got.looms) == 6 and not got.doubts and not got.refused


def test_a_loom_without_type_and_one_without_number_are_refused_still(tmp_path: Path):
    rows = [[*ROWS[0][:4], None, *ROWS[0][5:]], [None, *ROWS[1][1:]], *ROWS[2:]]
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *rows]))
    assert {(f.code, f.cell) for f in got.refused} == {("missing-value", "E2"), ("missing-value", "A3")}
