"""Sheets of other shapes than any given one. What each says is worked out by hand from the invented inventory."""

from datetime import date, datetime, time
from pathlib import Path

import pytest
from mill_sheets import (
    FIELDS,
    HEADINGS,
    delimited,
    inventory,
    read,
    turned,
    typed_rows,
    workbook,
)

LOOMS = inventory()
HEAD = list(HEADINGS["en"])
ROWS = typed_rows(LOOMS)
NO_HALL = [i for i, field in enumerate(FIELDS) if field != "hall"]


def without_hall(row):
    return [row[i] for i in NO_HALL]


def with_units(headings):
    """The unit behind the headings of width, speed and efficiency."""
    units = {7: " (cm)", 9: " (1/min)", 10: " (%)"}
    return [text + units.get(i, "") for i, text in enumerate(headings)]


@pytest.mark.parametrize("language", HEADINGS)
def test_every_language_with_units_in_the_heading(tmp_path: Path, language):
    got = read(workbook(tmp_path / "a.xlsx", [with_units(HEADINGS[language]), *ROWS]))
    assert got.looms == LOOMS and not got.doubts and not got.refused


@pytest.mark.parametrize("language", HEADINGS)
def test_every_language_turned_on_its_side(tmp_path: Path, language):
    """Headings down the first column, a loom in each further one, a title above."""
    rows = [["Title"], *turned([with_units(HEADINGS[language]), *ROWS])]
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert got.looms == LOOMS and not got.doubts and not got.refused
    source = got.result.tables[0]
    assert source.transposed and source.heading_row == 1
    assert source.cell_of("loom", got.rows("looms")[0].number) == "B2"


def test_three_heading_lines_with_a_line_of_units(tmp_path: Path):
    head = [
        ["Loom", "Standing place", None, None, "Machine", "Weft", "Year", "Reed", "No. of", "Speed", "Effi-", "Rail"],
        ["no.", "Hall", "Row", "Place", "type", "insertion", "built", "width", "frames", None, "ciency", "drilled?"],
        [None, None, None, None, None, None, None, "cm", None, "picks/min", "%", None],
    ]
    rows = [["Weaving mill at the river"], [], *head, *([*row, "yes"] for row in ROWS)]
    got = read(workbook(tmp_path / "a.xlsx", rows, merged=["B3:D3"]))
    assert got.looms == LOOMS and not got.doubts
    assert {tuple(row.kept.items()) for row in got.rows("looms")} == {(("Rail drilled?", "yes"),)}


def test_two_halls_below_each_other_with_titles_and_sums(tmp_path: Path):
    """No hall column; loom numbers start again in each hall; the second heading stands at other columns."""
    head = with_units([HEAD[i] for i in NO_HALL])
    head = ["Loom", "Row", "Place", "Type", "Insertion", "Year", "Reed width (cm)", "Frames", "rpm", "Eff. %"]
    first = [without_hall(row) for row in ROWS[:6]]
    second = [[None, *row] for row in first]
    rows = [
        ["Shed A"], head, *first, ["Total", None, None, None, None, None, None, None, 512.5, 88.1],
        [], [None, "Shed B"], [None, *head], *second, [None, "Average", None, None, None, None, None, None, 500],
        [], ["Checked: ____"],
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert [loom["hall"] for loom in got.looms] == ["Shed A"] * 6 + ["Shed B"] * 6
    for loom, wanted in zip(got.looms, LOOMS[:6] * 2, strict=True):
        assert {**loom, "hall": wanted["hall"]} == wanted
    assert not got.doubts and not got.refused


def test_three_tables_beside_each_other_without_a_gap(tmp_path: Path):
    head = ["Telaio", "Tipo", "Altezza pettine cm", "Colpi/min", "Traversa"]
    looms = [[f"{h}{i:02d}", f"AJ-{w}", w, 500 + i, "forata"] for h in "ABC" for i, w in enumerate((190, 220, 280))]
    rows = [["Sala A", *[None] * 4, "Sala B", *[None] * 4, "Sala C"], head * 3]
    rows += [looms[i] + looms[3 + i] + looms[6 + i] for i in range(3)]
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert [(x["loom"], x["hall"], x["reed_width_cm"]) for x in got.looms] == [
        (f"{h}{i:02d}", f"Sala {h}", w) for h in "ABC" for i, w in enumerate((190.0, 220.0, 280.0))
    ]
    assert len(got.result.tables) == 3


def test_different_tables_on_one_sheet_and_a_legend_beside_them(tmp_path: Path):
    looms = [
        [*row, None, *legend]
        for row, legend in zip(ROWS, [["AJ", "air-jet"], ["RP", "rapier"], *[[]] * 10], strict=True)
    ]
    rows = [
        [*with_units(HEAD), None, "Code", "Meaning"], *looms,
        [], ["What is woven"], ["Article", "Pick density (picks/inch)", "Take-up (%)"], ["A1", 61, 6], ["A2", 48.26, 8],
        [], ["Part", "Description", "On hand", "Lead time (weeks)"], ["R1", "rail", 3, 4],
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert got.looms == LOOMS
    assert [dict(row.kept) for row in got.rows("looms")] == [{}] * 12
    # 61 / 2.54 = 24.01574803; 48.26 / 2.54 = 19
    assert [row.values["pick_density_per_cm"] for row in got.rows("articles")] == pytest.approx([24.01574803, 19.0])
    assert got.rows("parts")[0].values == {"part": "R1", "description": "rail", "on_hand": 3.0, "lead_time_days": 28.0}


def test_section_lines_for_halls_and_rows(tmp_path: Path):
    """Hall, row and counts only in lines between the rows."""
    head = ["Loom", "Type", "Reed width cm", "Frames", "RPM", "Eff %"]
    loom = ["AJ-190", 190, 8, 600, 88]
    rows = [["Loom list", None, None, "page 1 of 1"], head]
    for hall in ("Hall North", "Hall South"):
        rows += [
            [hall, None, "4 looms"],
            ["Row 1"],
            ["1", *loom],
            ["2", *loom],
            ["Row 2"],
            ["3", *loom],
            ["4", *loom],
            ["Sum", 4],
        ]
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert [(x["hall"], x["row"], x["loom"]) for x in got.looms] == [
        (hall, row, number)
        for hall in ("Hall North", "Hall South")
        for row, number in (("1", "1"), ("1", "2"), ("2", "3"), ("2", "4"))
    ]
    assert not got.refused


def test_twenty_sheets_of_which_one_matters(tmp_path: Path):
    daily = [[x["loom"], date(2026, 1, 5), "A", 400_000, 88, 600] for x in LOOMS for _ in range(2)]
    other = {
        "Cover": [["Weaving mill"], ["Prepared by", "K. L."], ["Date", "2026-03-01"]],
        "Shifts": [["Shift", "From", "To"], ["A", "06:00", "14:00"]],
        "Spares": [["Part no.", "Description", "Stock", "Shelf"], ["B-1", "bearing", "?", "R1"]],
        "Yarn": [["Yarn", "Ne", "Supplier", "kg"], ["CO 30", 30, "x", 1200]],
        "January": [["Loom", "Date", "Shift", "Picks", "Efficiency %", "Speed"], *daily],
        "Averages": [
            ["Loom", "Hall", "Efficiency %", "Speed (rpm)", "Frames"],
            *([x["loom"], x["hall"], 80, 500, 8] for x in LOOMS),
        ],
        "Repairs": [["Loom", "Machine type", "Date", "Work", "Hours"], ["001", "AJ-190", date(2025, 1, 3), "oil", 2]],
        "Summary": [["Machine type", "Count", "Average speed"], ["AJ-190", 3, 500]],
        "Holidays": [["Date", "Name"], [date(2026, 12, 25), "x"]],
        "Phones": [["Name", "Phone"], ["x", "123"]],
        "Orders": [
            ["Order no.", "Article", "Quantity", "Due date", "Customer"],
            ["4711", "A1", 3000, date(2026, 5, 1), "x"],
        ],
        "Staff": [["Name", "Crew", "Trade", "Shift"], ["x", "A", "fitter", "1"]],
        "Codes": [["Code", "Meaning"], ["AJ", "air jet"]],
        "Energy": [["Month", "kWh", "EUR"], ["Jan", 1000, 200]],
        "Chart": [["x", "y"], [1, 2]],
        "Empty": [],
        "Log": [["Date", "Loom", "Remark"], [date(2026, 1, 2), "003", "x"]],
        "Belts": [["Tool", "Location", "Checked"], ["jig", "R1", "yes"]],
        "Text": [["This sheet has only words."]],
    }
    sheets = dict(list(other.items())[:11]) | {"List 2026": [with_units(HEAD), *ROWS]} | dict(list(other.items())[11:])
    got = read(workbook(tmp_path / "a.xlsx", sheets))
    assert [source.sheet for source in got.result.tables] == ["List 2026"]
    assert got.looms == LOOMS and not got.doubts and not got.refused
    noted = {f.sheet for f in got.findings() if f.code in ("no-table", "not-the-loom-list", "foreign-table")}
    assert noted == set(other) - {"Empty"}


def test_a_list_per_hall_on_sheets_named_after_it(tmp_path: Path):
    head = with_units([HEAD[i] for i in NO_HALL])
    head = ["Webstuhl", "Reihe", "Platz", "Typ", "Eintrag", "Bj.", "Blattbr. cm", "Schäfte", "U/min", "NE %"]
    sheet = [head, *(without_hall(row) for row in ROWS[:3])]
    got = read(workbook(tmp_path / "a.xlsx", {"Halle 1": sheet, "Halle 2": sheet}))
    assert [x["hall"] for x in got.looms] == ["Halle 1"] * 3 + ["Halle 2"] * 3
    assert {f.understood for f in got.findings(code="hall-from-sheet")} == {"Halle 1", "Halle 2"}


def test_two_text_files_named_after_their_halls(tmp_path: Path):
    head = [with_units(HEAD)[i] for i in NO_HALL]
    rows = [head, *(without_hall(row) for row in ROWS[:2])]
    got = read(delimited(tmp_path / "Shed_1.csv", rows), delimited(tmp_path / "Shed_2.csv", rows))
    assert [(x["hall"], x["loom"]) for x in got.looms] == [
        ("Shed 1", "001"),
        ("Shed 1", "002"),
        ("Shed 2", "001"),
        ("Shed 2", "002"),
    ]


def test_hall_cells_merged_downwards_and_across(tmp_path: Path):
    rows = [[*row[:1], row[1] if i % 6 == 0 else None, *row[2:]] for i, row in enumerate(ROWS)]
    upright = workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows], merged=["B2:B7", "B8:B13"])
    assert read(upright).looms == LOOMS
    lying = workbook(tmp_path / "b.xlsx", turned([with_units(HEAD), *rows]), merged=["B2:G2", "H2:M2"])
    assert read(lying).looms == LOOMS


def test_a_hall_written_once_for_its_group_is_read_so_and_noted(tmp_path: Path):
    rows = [[*row[:1], row[1] if i % 6 == 0 else None, *row[2:]] for i, row in enumerate(ROWS)]
    got = read(workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows]))
    assert got.looms == LOOMS
    assert [f.cell for f in got.findings(code="hall-from-above")] == ["B3:B7", "B9:B13"]


def test_numbers_by_format_only(tmp_path: Path):
    """Cells that hold 1 to 12 and show 001, A-01, or 1.10."""
    rows = [[i + 1, *row[1:]] for i, row in enumerate(ROWS)]
    path = workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows], formats={f"A{i}": "000" for i in range(2, 14)})
    assert read(path).looms == LOOMS
    path = workbook(tmp_path / "b.xlsx", [with_units(HEAD), *rows], formats={f"A{i}": '"A-"00' for i in range(2, 14)})
    assert [x["loom"] for x in read(path).looms] == [f"A-{i:02d}" for i in range(1, 13)]
    rows = [[1 + i / 10, *row[1:]] for i, row in enumerate(ROWS[:3])]
    path = workbook(tmp_path / "c.xlsx", [with_units(HEAD), *rows], formats={f"A{i}": "0.00" for i in range(2, 5)})
    assert [x["loom"] for x in read(path).looms] == ["1.00", "1.10", "1.20"]


def test_what_is_struck_through_is_read_and_told(tmp_path: Path):
    path = workbook(tmp_path / "a.xlsx", [with_units(HEAD), *ROWS], struck=["A3", "B3", "C3", "J5", "A1"])
    got = read(path)
    (note,) = got.findings(code="struck-through")
    assert len(got.looms) == 12 and note.cell == "A3, B3, C3, J5"
    assert note.message.startswith("Cells of 2 of 12 rows are struck through;")


def test_hidden_rows_and_errors_and_dittos(tmp_path: Path):
    rows = [list(row) for row in ROWS]
    rows[1][4], rows[2][6], rows[3][8], rows[4][5] = "ditto", "#N/A", "k.A.", "unbekannt"
    got = read(workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows], hidden_rows=range(2, 9)))
    assert len(got.looms) == 12
    assert got.looms[1]["machine_type"] == LOOMS[0]["machine_type"]
    assert got.looms[2]["year"] is None and got.looms[3]["frames"] is None
    assert got.looms[4]["insertion"] == "unbekannt"
    assert {f.cell for f in got.findings() if f.code != "hidden-rows"} == {"E3", "G4", "I5"}
    assert got.findings(code="hidden-rows")[0].message.startswith("7 of 12 rows are hidden;")


def test_efficiency_in_every_spelling_in_one_column(tmp_path: Path):
    spellings = [0.88, 88, "88 %", "%88", "88%", "0,88", "88,0", "0.88", 88.0, 0.88, "88.0 %", "88 % "]
    got = read(
        workbook(
            tmp_path / "a.xlsx",
            [[*HEAD[:7], "Reed width cm", *HEAD[8:]], *([*r[:10], e] for r, e in zip(ROWS, spellings, strict=True))],
        )
    )
    assert [x["efficiency"] for x in got.looms] == [0.88] * 12 and not got.doubts


def test_widths_in_every_unit_in_one_column(tmp_path: Path):
    """1.900 mm is 190 cm, 75 in and 75" are 190.5 cm (1 in = 2.54 cm)."""
    cells = [
        "190 cm",
        "1.900 mm",
        "1,9 m",
        '75"',
        "75 in",
        "1900mm",
        "190cm",
        "75 inch",
        "1.90m",
        "190,0 cm",
        "75 Zoll",
        "1,90 m",
    ]
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *([*r[:7], c, *r[8:]] for r, c in zip(ROWS, cells, strict=True))]))
    assert [x["reed_width_cm"] for x in got.looms] == [
        190,
        190,
        190,
        190.5,
        190.5,
        190,
        190,
        190.5,
        190,
        190,
        190.5,
        190,
    ]


def test_years_in_every_spelling(tmp_path: Path):
    cells = [
        "2012年",
        "05/2012",
        "2012/05",
        "'12",
        "98",
        date(2012, 5, 1),
        2012.0,
        "Bj. 2010",
        "03.2015",
        "ca. 2012",
        "1998",
        "n/a",
    ]
    got = read(
        workbook(
            tmp_path / "a.xlsx", [with_units(HEAD), *([*r[:6], c, *r[7:]] for r, c in zip(ROWS, cells, strict=True))]
        )
    )
    assert [x["year"] for x in got.looms] == [2012, 2012, 2012, 2012, 1998, 2012, 2012, 2010, 2015, 2012, 1998, None]


def test_a_year_that_its_cell_shows_as_a_date(tmp_path: Path):
    """2012 formatted as a date shows 4 July 1905 (day 2012 of the spreadsheet's count)."""
    rows = [[*r[:6], datetime(1905, 7, 4), *r[7:]] for r in ROWS]
    got = read(workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows]))
    assert [x["year"] for x in got.looms] == [2012] * 12


def test_yarn_count_beside_efficiency_in_capitals(tmp_path: Path):
    """NE is the Nutzeffekt; a second NE of 20 to 40 is a yarn count whatever its capitals."""
    rows = [[*r, 20 + i] for i, r in enumerate(ROWS)]
    got = read(workbook(tmp_path / "a.xlsx", [[*with_units(HEADINGS["de"]), "NE"], *rows]))
    assert got.looms == LOOMS and got.rows("looms")[0].kept == {"NE": 20}


def test_make_and_kind_and_model(tmp_path: Path):
    """Type says how the weft goes in, Model is the machine type, Make stays an attribute."""
    head = ["Loom", "Hall", "Make", "Type", "Model", "Reed width (cm)", "Max. speed", "Speed"]
    rows = [
        [x["loom"], x["hall"], "own", x["insertion"], x["machine_type"], x["reed_width_cm"], 990, x["speed_ppm"]]
        for x in LOOMS
    ]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows]))
    for loom, wanted in zip(got.looms, LOOMS, strict=True):
        assert loom == {
            name: wanted[name] for name in ("loom", "hall", "insertion", "machine_type", "reed_width_cm", "speed_ppm")
        }
    assert got.rows("looms")[0].kept == {"Make": "own", "Max. speed": 990}
    assert not got.doubts


def test_misspelt_headings(tmp_path: Path):
    head = [
        "Lom",
        "Hal",
        "Row",
        "Place",
        "Machin type",
        "Insertoin",
        "Yeer",
        "Reed widht (cm)",
        "Frams",
        "Sped (rpm)",
        "Efficency (%)",
    ]
    got = read(workbook(tmp_path / "a.xlsx", [head, *ROWS]))
    assert got.looms == LOOMS
    assert {f.cell for f in got.findings(code="heading-understood")} == {f"{c}1" for c in "AEFGHIJK"}  # hal is Turkish


def test_numbers_that_a_spreadsheet_turned_into_times(tmp_path: Path):
    """3:10 and 3:11 typed as loom numbers become times of day; the cell shows them without a leading nought."""
    rows = [[time(3, 10 + i), *row[1:]] for i, row in enumerate(ROWS)]
    path = workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows], formats={f"A{i}": "h:mm" for i in range(2, 14)})
    assert [x["loom"] for x in read(path).looms] == [f"3:{10 + i}" for i in range(12)]


def test_formats_that_write_the_unit(tmp_path: Path):
    """75 shown as `75 in` are inches, 88 shown as `88%` by a literal are percent, 0.88 shown as 88% is a fraction."""
    rows = [[*row[:7], 75, *row[8:10], 88] for row in ROWS]
    formats = {f"H{i}": '0" in"' for i in range(2, 14)} | {f"K{i}": '0"%"' for i in range(2, 14)}
    got = read(workbook(tmp_path / "a.xlsx", [HEAD, *rows], formats=formats))
    assert {(x["reed_width_cm"], x["efficiency"]) for x in got.looms} == {(190.5, 0.88)}
    rows = [[*row[:10], 0.88] for row in ROWS]
    got = read(workbook(tmp_path / "b.xlsx", [with_units(HEAD), *rows], formats={f"K{i}": "0%" for i in range(2, 14)}))
    assert {x["efficiency"] for x in got.looms} == {0.88} and not got.findings()


def test_letters_that_look_like_figures_are_noted_and_kept(tmp_path: Path):
    rows = [
        [{3: "OO4", 7: "l08", 9: "０１０"}.get(i, row[0]), *row[1:4], "AJ-19O" if i == 0 else "AJ-190", *row[5:]]
        for i, row in enumerate(ROWS)
    ]
    got = read(workbook(tmp_path / "a.xlsx", [with_units(HEAD), *rows]))
    assert [got.looms[3]["loom"], got.looms[7]["loom"], got.looms[0]["machine_type"]] == ["OO4", "l08", "AJ-19O"]
    assert {f.cell for f in got.findings(code="look-alike")} == {"A5", "A9", "A11", "E2"}


def test_what_is_not_loaded_is_said(tmp_path: Path):
    """Cells under no heading, and a column that a table of ours has no room for."""
    looms = [with_units(HEAD), *([*row, "stray" if i == 3 else None] for i, row in enumerate(ROWS))]
    tools = [["Tool", "How many", "Colour"], ["jig", 1, "red"]]
    got = read(workbook(tmp_path / "a.xlsx", {"Looms": looms, "Tools": tools}))
    assert [(f.code, f.sheet, f.cell) for f in got.findings()] == [
        ("no-heading", "Looms", "L5"),
        ("column-not-loaded", "Tools", "C1"),
    ]


def test_headings_in_two_languages(tmp_path: Path):
    one_cell = [f"{zh} {en}" for zh, en in zip(HEADINGS["zh"], HEADINGS["en"], strict=True)]
    got = read(workbook(tmp_path / "a.xlsx", [with_units(one_cell), *ROWS]))
    assert got.looms == LOOMS and not got.doubts
    slash = [f"{tr} / {en}" for tr, en in zip(HEADINGS["tr"], HEADINGS["en"], strict=True)]
    got = read(workbook(tmp_path / "b.xlsx", [with_units(slash), *ROWS]))
    assert got.looms == LOOMS and not got.doubts
    got = read(workbook(tmp_path / "c.xlsx", [with_units(HEADINGS["zh"]), list(HEADINGS["en"]), *ROWS]))
    assert got.looms == LOOMS and not got.doubts and not got.refused


def test_halls_as_side_labels_without_a_heading(tmp_path: Path):
    """Column A has no heading: `Hall 1` merged over six looms, `Hall 2` over the others."""
    head = [None, *(with_units(HEAD)[i] for i in NO_HALL)]
    rows = [[f"Hall {1 + i // 6}" if i % 6 == 0 else None, *without_hall(row)] for i, row in enumerate(ROWS)]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows], merged=["A2:A7", "A8:A13"]))
    assert got.looms == LOOMS


def test_a_running_number_is_no_loom_number_and_no_place(tmp_path: Path):
    """Nr. and Pos. count the rows; the loom is the Maschine, its place the Platz."""
    head = ["Nr.", "Pos.", "Maschine", "Halle", "Platz", "Typ", "Blattbreite (cm)"]
    rows = [
        [i + 1, i + 1, f"W{x['loom']}", x["hall"], x["place"], x["machine_type"], x["reed_width_cm"]]
        for i, x in enumerate(LOOMS)
    ]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows]))
    assert [(x["loom"], x["place"]) for x in got.looms] == [
        (f"W{x['loom']}", x["place"]) for x in LOOMS
    ] and not got.doubts


def test_lines_of_dashes_between_the_rows(tmp_path: Path):
    rows = [with_units(HEAD), ["---"] * 11, *ROWS[:6], ["---"] * 11, *ROWS[6:]]
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert got.looms == LOOMS and not got.refused


@pytest.mark.parametrize("first", ["Property", None])
def test_a_turned_list_whose_looms_are_named_above_it_with_a_line_of_units(tmp_path: Path, first):
    rows = [
        [first, "Unit", *(f"Loom {i}" for i in range(101, 107))], ["Hall", None, *["1"] * 6],
        ["Machine type", None, *["AJ-190"] * 6], ["Reed width", "inch", *[75] * 6], ["Speed", "picks/min", *range(601, 607)],
        ["Efficiency", "%", *range(81, 87)],
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert [x["loom"] for x in got.looms] == [f"Loom {i}" for i in range(101, 107)]
    assert [(x["hall"], x["reed_width_cm"], x["speed_ppm"], x["efficiency"]) for x in got.looms] == [
        ("1", 190.5, 601.0 + i, (81 + i) / 100) for i in range(6)
    ]


def test_turned_lists_below_each_other_with_a_hall_above_each(tmp_path: Path):
    head = [with_units(HEAD)[i] for i in NO_HALL]
    first = turned([head, *(without_hall(row) for row in ROWS[:6])])
    second = turned([head, *(without_hall(row) for row in ROWS[6:])])
    got = read(workbook(tmp_path / "a.xlsx", [["Hall 1"], *first, [], ["Hall 2"], *second]))
    assert got.looms == LOOMS and not got.doubts


def test_a_legend_beside_the_list_is_no_part_of_it_and_is_told(tmp_path: Path):
    """A legend of four types beside eight looms reaches far down; a column filled for some looms goes with the list."""
    kinds = list(dict.fromkeys(loom["machine_type"] for loom in LOOMS))
    legend = [["Code", "Meaning"], *([kind, "x"] for kind in kinds)]
    rows = [with_units(HEAD), *ROWS[:8]]
    beside = [[*row, None, *(legend[i] if i < len(legend) else [])] for i, row in enumerate(rows)]
    got = read(workbook(tmp_path / "a.xlsx", beside))
    assert got.looms == LOOMS[:8] and [dict(row.kept) for row in got.rows("looms")] == [{}] * 8
    assert [f.cell for f in got.findings(code="beside-the-table")] == [f"M1:N{1 + len(kinds)}"]
    more = [[*row, None, "Seen on" if i == 0 else "x" if i in (2, 3, 5, 8) else None] for i, row in enumerate(rows)]
    got = read(workbook(tmp_path / "b.xlsx", more))
    assert [row.kept["Seen on"] for row in got.rows("looms")] == [None, "x", "x", None, "x", None, None, "x"]


def test_marks_of_footnotes_in_headings_are_no_part_of_them(tmp_path):
    head = ["Loom\nNo.¹", "Machine\ntype", "Reed width²\n(cm)", "Speed*\n(picks/min)", "Efficiency³\n(%)", "Cloth g/m²"]
    rows = [[f"{101 + i}", "AJ-190", 190, 640 + i, 86, 140] for i in range(6)]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows, [None], ["¹ as painted on the frame"]]))
    assert [(loom["loom"], loom["speed_ppm"], loom["efficiency"]) for loom in got.looms][:2] == [
        ("101", 640, 0.86), ("102", 641, 0.86)]  # fmt: skip
    assert not got.doubts and not got.refused


def test_two_fields_in_one_cell_are_named_not_passed_over_in_silence(tmp_path):
    rows = [[f"{101 + i}", "AJ-190", 190, f"{640 + i} / 86.5 %"] for i in range(6)]
    got = read(workbook(tmp_path / "a.xlsx", [["Loom", "Machine type", "Reed width (cm)", "Speed / Eff."], *rows]))
    (note,) = [found for found in got.result.findings if found.code == "several-in-one-cell"]
    assert (note.cell, note.params["fields"]) == ("D1", ["speed", "efficiency"])


def test_a_type_spelt_in_two_ways_is_said_once(tmp_path):
    types = ["AJ-190", "aj-190", "AJ 190", "RP-220", "AJ-190", "RP-220"]
    rows = [[f"{101 + i}", kind, 190, 640] for i, kind in enumerate(types)]
    got = read(workbook(tmp_path / "a.xlsx", [["Loom", "Machine type", "Reed width (cm)", "Speed (picks/min)"], *rows]))
    (note,) = [found for found in got.result.findings if found.code == "type-spellings"]
    assert note.params["types"] == ["AJ-190", "aj-190", "AJ 190"]
    assert [loom["machine_type"] for loom in got.looms] == types
