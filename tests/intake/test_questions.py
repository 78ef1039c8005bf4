"""Where two readings stand the reader asks once per column, takes the answer, and says when it remembered one."""

from datetime import date, datetime
from pathlib import Path

import pytest
from mill_sheets import HEADINGS, inventory, read, typed_rows, workbook

from tracker.domain.tables import TABLES
from tracker.errors import UsageError

LOOMS = inventory()
HEAD = [*HEADINGS["en"][:7], "Reed width (cm)", "Frames", "Speed (picks/min)", "Efficiency (%)"]
ROWS = typed_rows(LOOMS)


def with_column(tmp_path: Path, heading, cells, at=None):
    """The list with one column more, or another one in place of the one at `at`."""
    if at is None:
        rows = [[*row, cell] for row, cell in zip(ROWS, cells, strict=True)]
        return workbook(tmp_path / "a.xlsx", [[*HEAD, heading], *rows])
    rows = [[*row[:at], cell, *row[at + 1 :]] for row, cell in zip(ROWS, cells, strict=True)]
    return workbook(tmp_path / "a.xlsx", [[*HEAD[:at], heading, *HEAD[at + 1 :]], *rows])


def only_doubt(got):
    (doubt,) = got.doubts
    return doubt.code, doubt.cell, doubt.heading


def test_width_without_a_unit_in_the_range_of_both(tmp_path: Path):
    """110 to 143 is a narrow hall in cm or a wide one in inch, and the types say nothing: 135 in = 342.9 cm."""
    rows = [[*row[:4], "T4", *row[5:7], 110 + 3 * i, *row[8:]] for i, row in enumerate(ROWS)]
    path = workbook(tmp_path / "a.xlsx", [[*HEAD[:7], "Reed width", *HEAD[8:]], *rows])
    assert only_doubt(read(path)) == ("unit-doubt", "H1", "Reed width")
    assert read(path, answers={"reed width": "in"}).looms[0]["reed_width_cm"] == pytest.approx(279.4)
    assert read(path, answers={"Reed width": "cm"}).looms[0]["reed_width_cm"] == 110


@pytest.mark.parametrize(
    ("cells", "unit", "first"),
    [
        ([190, 220, 280, 360] * 3, "cm", 190),
        ([1900, 2200, 2800, 3600] * 3, "mm", 190),
        ([1.9, 2.2, 2.8, 3.6] * 3, "m", 190),
    ],
)
def test_width_without_a_unit_in_the_range_of_one(tmp_path: Path, cells, unit, first):
    rows = [[*row[:4], "T4", *row[5:7], cell, *row[8:]] for row, cell in zip(ROWS, cells, strict=True)]
    got = read(workbook(tmp_path / "a.xlsx", [[*HEAD[:7], "Reed width", *HEAD[8:]], *rows]))
    assert not got.doubts and got.looms[0]["reed_width_cm"] == first
    assert [f.understood for f in got.findings(code="unit-understood")] == [unit]


def test_machine_types_prove_the_unit(tmp_path: Path):
    """75 beside AJ-190: 75 in are 190.5 cm."""
    cells = [round(loom["reed_width_cm"] / 2.54) for loom in LOOMS]
    got = read(with_column(tmp_path, "Reed width", cells, at=7))
    assert not got.doubts
    assert all(abs(x["reed_width_cm"] - w["reed_width_cm"]) < 1.3 for x, w in zip(got.looms, LOOMS, strict=True))


def test_a_heading_whose_unit_the_values_contradict(tmp_path: Path):
    path = with_column(tmp_path, "Reed width (cm)", [10 * loom["reed_width_cm"] for loom in LOOMS], at=7)
    assert only_doubt(read(path)) == ("unit-doubt", "H1", "Reed width (cm)")
    got = read(path, answers={"Reed width": "mm"})
    assert got.looms == LOOMS and not got.doubts and not got.refused


def test_picks_of_an_article_and_of_a_loom_list(tmp_path: Path):
    """61 picks: per inch are 24.0157 per cm."""
    articles = [["Style", "Picks", "Crimp %"], ["A1", 61, 6], ["A2", 72, 7]]
    path = workbook(tmp_path / "a.xlsx", {"Looms": [HEAD, *ROWS], "Articles": articles})
    assert only_doubt(read(path)) == ("unit-doubt", "B1", "Picks")
    got = read(path, Picks="per inch")
    assert got.rows("articles")[0].values["pick_density_per_cm"] == pytest.approx(24.015748)
    assert only_doubt(read(with_column(tmp_path, "Picks", [61] * 12))) == ("unit-doubt", "L1", "Picks")
    assert not read(with_column(tmp_path, "Picks/inch", [61] * 12)).doubts
    assert not read(with_column(tmp_path, "Picks", [61] * 12), Picks="per cm").doubts


def test_dates_in_an_open_order(tmp_path: Path):
    path = with_column(tmp_path, "Protected until", ["3/4/27", "5/6/2027", None, "1/2/2027"] * 3)
    assert only_doubt(read(path)) == ("order-doubt", "L1", "Protected until")
    day, month = read(path, answers={"Protected until": "day first"}), read(path, answers={"Protected until": "mdy"})
    assert [x["protected_until"] for x in day.looms[:2]] == [date(2027, 4, 3), date(2027, 6, 5)]
    assert [x["protected_until"] for x in month.looms[:2]] == [date(2027, 3, 4), date(2027, 5, 6)]


def test_one_cell_proves_the_order(tmp_path: Path):
    got = read(with_column(tmp_path, "Protected until", ["3/4/27", "5/26/2027", None, "1/2/2027"] * 3))
    assert not got.doubts and got.looms[0]["protected_until"] == date(2027, 3, 4)
    got = read(with_column(tmp_path, "Last overhaul", ["3/4/27", "26/5/2027", None, "1/2/2027"] * 3))
    assert not got.doubts and got.rows("looms")[0].kept["Last overhaul"] == date(2027, 4, 3)


def test_cells_in_both_orders_are_asked_about(tmp_path: Path):
    got = read(with_column(tmp_path, "Protected until", ["3/4/27", "5/26/2027", "26/5/2027", "1/2/2027"] * 3))
    assert only_doubt(got) == ("order-doubt", "L1", "Protected until")


def test_dates_that_a_spreadsheet_turned_round(tmp_path: Path):
    """Typed day first into a month-first spreadsheet: 1/2 became 2 January, 14/3 stayed text."""
    cells = [
        datetime(2027, 1, 2),
        datetime(2027, 5, 6),
        datetime(2027, 12, 11),
        "14/03/2027",
        "25/12/2027",
        *[None] * 7,
    ]
    path = with_column(tmp_path, "Protected until", cells)
    assert only_doubt(read(path)) == ("order-doubt", "L1", "Protected until")
    got = read(path, answers={"Protected until": "day first"})
    assert [x["protected_until"] for x in got.looms[:4]] == [
        date(2027, 2, 1), date(2027, 6, 5), date(2027, 11, 12), date(2027, 3, 14)]  # fmt: skip


def test_loom_numbers_turned_into_dates(tmp_path: Path):
    """The looms are 1/1 … 1/6 and 2/7 … 2/12; the spreadsheet made dates of three."""
    numbers = [f"{1 + i // 6}/{1 + i}" for i in range(12)]
    cells = [datetime(2026, 1, 3) if i == 2 else datetime(2026, 1, 4) if i == 3 else n for i, n in enumerate(numbers)]
    path = with_column(tmp_path, "Loom", cells, at=0)
    got = read(path)
    assert only_doubt(got) == ("order-doubt", "A1", "Loom")
    assert [f.cell for f in got.findings(code="number-turned-into-date")] == ["A4", "A5"]
    assert [x["loom"] for x in read(path, Loom="month first").looms] == numbers
    assert [x["loom"] for x in read(path, Loom="day first").looms][2:4] == ["3/1", "4/1"]


def test_turned_numbers_keep_the_mark_and_noughts_of_the_others(tmp_path: Path):
    cells = [f"{1 + i // 6:02d}-{13 + i:02d}" for i in range(12)]
    cells[4] = datetime(2026, 1, 9)
    got = read(with_column(tmp_path, "Loom", cells, at=0), Loom="month first")
    assert got.looms[4]["loom"] == "01-09"


def test_two_columns_that_may_be_the_speed(tmp_path: Path):
    rows = [[*row[:9], 777, *row[9:]] for row in ROWS]
    path = workbook(tmp_path / "a.xlsx", [[*HEAD[:9], "Speed set", "Speed actual", HEAD[10]], *rows])
    (doubt,) = read(path).doubts
    assert doubt.code == "which-column" and set(doubt.cell.split(", ")) == {"J1", "K1"}
    got = read(path, answers={"Speed actual": "speed"})
    assert got.looms == LOOMS and got.rows("looms")[0].kept == {"Speed set": 777}
    got = read(path, answers={"speed set": "Speed"})
    assert got.looms[0]["speed_ppm"] == 777


def test_two_columns_of_one_heading_are_told_apart_by_their_cells_and_remembered_by_their_order(tmp_path: Path):
    rows = [[*row[:9], row[9] + 40, *row[9:]] for row in ROWS]
    head = [*HEAD[:9], "Speed", "Speed", HEAD[10]]
    path = workbook(tmp_path / "a.xlsx", [head, *rows])
    (doubt,) = read(path).doubts
    assert doubt.hint == 'Answer --answer "J1=speed" or --answer "K1=speed".'
    first = read(path, answers={"K1": "speed"})
    assert first.looms == LOOMS and first.rows("looms")[0].kept == {"Speed": ROWS[0][9] + 40}
    moved = workbook(tmp_path / "b.xlsx", [["Nr", *head], *([i, *row] for i, row in enumerate(rows))])
    assert read(moved, remembered=first.result.answers_used).looms == LOOMS
    assert read(path, answers={"Speed": "speed"}).doubts, "both are called Speed"
    assert read(path, answers={"j1": "speed", "Sheet1!K1": "own column"}).looms[0]["speed_ppm"] == ROWS[0][9] + 40


def test_several_columns_that_say_more_than_the_name_of_a_field(tmp_path: Path):
    rows = [[*row[:10], row[10], row[10] - 2] for row in ROWS]
    path = workbook(tmp_path / "a.xlsx", [[*HEAD[:10], "Day shift efficiency", "Night shift efficiency"], *rows])
    assert only_doubt(read(path)) == ("which-column", "K1, L1", "Day shift efficiency")
    assert read(path, answers={"Day shift efficiency": "efficiency"}).looms == LOOMS
    none = read(path, answers={"K1": "own column", "L1": "own column"})
    assert not none.doubts and "efficiency" not in none.looms[0]


def test_an_answer_names_a_cell_that_is_there_and_of_one_sheet(tmp_path: Path):
    other = [HEAD, *[[f"X{row[0]}", *row[1:]] for row in ROWS]]
    other[0] = [*HEAD[:7], "Rail", *HEAD[8:]]
    path = workbook(tmp_path / "a.xlsx", {"North": [HEAD, *ROWS], "South": other})
    for cell, code in (
        ("H1", "answer-about-several"),
        ("H99", "answer-about-nothing"),
        ("ZZ1", "answer-about-nothing"),
    ):
        with pytest.raises(UsageError) as wrong:
            read(path, answers={cell: "own column"})
        assert wrong.value.message.code == code
    assert "Rail" not in read(path, answers={"South!H1": "ignore"}).rows("looms")[-1].kept


@pytest.mark.parametrize(
    ("heading", "loaded"), [("Max. speed", False), ("Vitesse maxi", False), ("Target speed", True)]
)
def test_a_qualified_speed_alone(tmp_path: Path, heading, loaded):
    """A greatest speed is never the speed; a target is better than none."""
    got = read(with_column(tmp_path, heading, [700 + i for i in range(12)], at=9))
    assert not got.doubts and ("speed_ppm" in got.looms[0]) is loaded


def test_a_hidden_sheet_is_asked_about(tmp_path: Path):
    old = [[f"X{row[0]}", *row[1:]] for row in ROWS]
    path = workbook(tmp_path / "a.xlsx", {"Looms": [HEAD, *ROWS], "Old": [HEAD, *old]}, hidden=["Old"])
    (doubt,) = read(path).doubts
    assert (doubt.code, doubt.sheet, doubt.heading) == ("hidden-sheet", "Old", "Old")
    assert read(path, Old="ignore").looms == LOOMS
    assert len(read(path, Old="read").looms) == 24


def test_sheets_that_may_be_halls(tmp_path: Path):
    head, rows = [h for h in HEAD if h != "Hall"], [[*row[:1], *row[2:]] for row in ROWS[:6]]
    path = workbook(tmp_path / "a.xlsx", {"North": [head, *rows], "South": [head, *rows]})
    assert [(d.code, d.heading) for d in read(path).doubts] == [("sheet-is-hall", "North"), ("sheet-is-hall", "South")]
    got = read(path, North="hall", South="hall")
    assert [x["hall"] for x in got.looms] == ["North"] * 6 + ["South"] * 6 and not got.doubts


def test_a_lone_fraction_among_percent(tmp_path: Path):
    path = with_column(tmp_path, "Efficiency (%)", [88] * 11 + [0.9], at=10)
    assert only_doubt(read(path)) == ("value-doubt", "K1", "Efficiency (%)")
    assert read(path, answers={"Efficiency (%)": "fraction"}).looms[11]["efficiency"] == 0.9


def test_one_decimal_mark_for_all_readings(tmp_path: Path):
    """1.234 m of warp may be 1,234 m; another column that says 2,5 settles it."""
    warps = [["Loom", "Hall", "Sequence", "Article", "Warp left (m)"], ["001", "Hall 1", 0, "A1", "1.234"]]
    path = workbook(tmp_path / "a.xlsx", {"Looms": [HEAD, *ROWS], "Warps": warps})
    assert only_doubt(read(path)) == ("decimals-doubt", "E1", "Warp left (m)")
    assert read(path, answers={"Warp left (m)": "decimal comma"}).rows("warps")[0].values["warp_left_m"] == 1234
    proven = [[*warps[0], "Tail (m)"], [*warps[1], "2,5"]]
    got = read(workbook(tmp_path / "b.xlsx", {"Looms": [HEAD, *ROWS], "Warps": proven}))
    assert not got.doubts and got.rows("warps")[0].values["warp_left_m"] == 1234


def test_answers_are_remembered_and_said_so(tmp_path: Path):
    path = with_column(tmp_path, "Protected until", ["3/4/27"] * 12)
    first = read(path, answers={"Protected until": "day first"}).result
    assert first.answers_used == {"order|protected until": "day first"}
    again = read(path, remembered=first.answers_used)
    assert not again.doubts and again.looms[0]["protected_until"] == date(2027, 4, 3)
    assert [f.heading for f in again.findings(code="answer-remembered")] == ["protected until"]
    other = read(path, remembered=first.answers_used, answers={"Protected until": "month first"})
    assert other.looms[0]["protected_until"] == date(2027, 3, 4)


@pytest.mark.parametrize("answers", [{"Reed width (cm)": "parsecs"}, {"Spped": "cm"}])
def test_an_answer_that_says_nothing_to_us(tmp_path: Path, answers):
    with pytest.raises(UsageError):
        read(workbook(tmp_path / "a.xlsx", [HEAD, *ROWS]), answers=answers)


def test_a_column_may_be_ignored_or_kept_as_the_mills_own(tmp_path: Path):
    path = with_column(tmp_path, "Rail", ["drilled"] * 12)
    assert read(path, Rail="ignore").rows("looms")[0].kept == {}
    got = read(path, Insertion="own column")
    assert "insertion" not in got.looms[0] and got.rows("looms")[0].kept["Insertion"] == LOOMS[0]["insertion"]
    got = read(path, Rail="notes")
    assert got.looms[0]["notes"] == "drilled"


def test_a_text_whose_letters_fit_several_code_pages_is_asked_about_and_read_as_answered(tmp_path: Path):
    """The byte 0x8D is ì in the code page of DOS, ı in the Turkish one, ç on a Mac; nothing else tells."""
    lines = ["Loom;Hall;Machine type;Speed (rpm);Notes", *(f"{n};Hall 1;AJ-190;60{n};così" for n in range(1, 4))]
    path = tmp_path / "list.csv"
    path.write_bytes("\n".join(lines).encode("cp850"))
    (doubt,) = read(path).doubts
    assert doubt.code == "code-page-doubt" and "così" in doubt.message and "list.csv=cp850" in doubt.hint
    got = read(path, answers={"list.csv": "cp850"})
    assert {loom["notes"] for loom in got.looms} == {"così"} and not got.doubts
    assert not read(path, remembered=got.result.answers_used).doubts


def test_a_byte_that_is_no_letter_is_named_by_its_cell(tmp_path: Path):
    path = tmp_path / "list.csv"
    path.write_bytes(
        "Loom;Hall;Machine type;Speed\n1;Hall 1;AJ-190;600\n2;Säle é ü;AJ-190;610\n3;caf".encode()
        + b"\xe9;AJ-190;620\n"
    )
    (note,) = read(path).findings(code="lost-letters")
    assert (note.cell, note.raw) == ("B4", "caf\ufffd")


def test_an_export_keeps_its_columns_whatever_the_mills_own_are_called(tmp_path: Path):
    """All headings of our template are there: `Speed` and `Actual speed` are attributes, no rivals of Speed (picks/min)."""
    titles = [column.title for column in TABLES["looms"].columns]
    at = {column.field: i for i, column in enumerate(TABLES["looms"].columns)}
    rows = []
    for loom in LOOMS:
        row: list[object] = [None] * len(titles)
        for name in ("loom", "hall", "machine_type", "speed_ppm"):
            row[at[name]] = loom[name]
        rows.append([*row, 777, 666])
    path = workbook(tmp_path / "a.xlsx", [[*titles, "Speed", "Actual speed"], *rows])
    got = read(path, remembered={"field|actual speed": "speed", "field|speed": "efficiency"})
    assert not got.doubts and got.looms[0]["speed_ppm"] == LOOMS[0]["speed_ppm"]
    assert got.rows("looms")[0].kept == {"Speed": 777, "Actual speed": 666}
    short = workbook(
        tmp_path / "b.xlsx", [["Loom", "Hall", "Machine type", "Speed", "Actual speed"], ["1", "H", "T", 600, 590]]
    )
    assert read(short).doubts, "in a list of the mill's own they are two speeds"
