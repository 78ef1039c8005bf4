"""Ten kinds of lists as mills keep them, each in its own language and layout: what they say is read, asked about or refused."""

from pathlib import Path

from mill_sheets import read, workbook


def looms(got, *fields: str) -> list[tuple]:
    return [tuple(loom[name] for name in fields) for loom in got.looms]


def test_an_inventory_with_sums_by_type_in_spanish(tmp_path: Path):
    rows = [
        ["Acta de inventario"], ["Nave", "Telar", "Marca y tipo", "Golpes/min", "Rendimiento (%)"],
        ["Norte", "T-01", "CH-190", "601,0", "81,0"], [None, "T-02", "CH-190", "602,0", "82,0"],
        ["Subtotal CH-190", "2 telares"], [None, "T-03", "LZ-220", "403,0", "83,0"], ["Subtotal LZ-220", "1 telar"],
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert looms(got, "loom", "hall", "machine_type", "speed_ppm", "efficiency") == [
        ("T-01", "Norte", "CH-190", 601, 0.81), ("T-02", "Norte", "CH-190", 602, 0.82), ("T-03", "Norte", "LZ-220", 403, 0.83),
    ]  # fmt: skip


def test_three_rows_a_loom_by_shift_in_german(tmp_path: Path):
    """Four looms stand three times each, with one efficiency for each shift: they are asked about, not merged."""
    shifts = [["1", i, "AJ", s, 600, 80 + k] for i in range(1, 5) for k, s in enumerate(("Früh", "Spät", "Nacht"))]
    got = read(workbook(tmp_path / "a.xlsx", [["Saal", "WM-Nr.", "Typ", "Schicht", "Drehzahl", "NE %"], *shifts]))
    assert [doubt.code for doubt in got.doubts] == ["looms-twice"]


def test_reed_widths_in_metres_in_french(tmp_path: Path):
    path = tmp_path / "a.csv"
    lines = [f"Écru;{i};AJ;1,{90 + i};{600 + i};0,8{i}" for i in range(1, 5)]
    path.write_bytes("\n".join(["Salle;N° métier;Type;Laize (m);Vitesse;Rdt", *lines]).encode("latin-1"))
    got = read(path)
    assert looms(got, "hall", "reed_width_cm", "efficiency") == [("Écru", 190 + i, (80 + i) / 100) for i in range(1, 5)]


def test_efficiencies_merged_over_looms_in_english(tmp_path: Path):
    """Three looms share 88 %, the fourth has none, the last two share 84 %."""
    said = [88, None, None, None, 84, None]
    rows = [["B", i, "AJ", 600 + i, eff] for i, eff in enumerate(said, 1)]
    head = ["Shed", "Loom No", "Make", "RPM", "Eff %"]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows], merged=["E2:E4", "E6:E7"]))
    assert looms(got, "efficiency") == [(0.88,)] * 3 + [(None,)] + [(0.84,)] * 2


def test_halls_side_by_side_in_another_order_in_portuguese(tmp_path: Path):
    rows = [
        ["Salão 1", *[None] * 4, "Salão 2"], ["Tear", "Modelo", "RPM", "Ef. %", None, "Tear", "RPM", "Ef. %", "Modelo"],
        *([i, "AJ", 600 + i, 88, None, i, 400 + i, 90, "RP"] for i in range(1, 4)),
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert sorted(looms(got, "hall", "loom", "machine_type", "speed_ppm", "efficiency")) == [
        (f"Salão {hall}", f"{i}", kind, speed + i, eff)
        for hall, kind, speed, eff in ((1, "AJ", 600, 0.88), (2, "RP", 400, 0.9))
        for i in range(1, 4)
    ]


def test_years_with_a_word_in_turkish(tmp_path: Path):
    head = ["Salon", "Tezgâh No", "Marka/Tip", "Model yılı", "Devir (d/dk)", "Verim %"]
    rows = [["A", i, "HJ 190", f"{1998 + i} model", 600 + i, f"8{i}.5"] for i in range(1, 5)]
    got = read(workbook(tmp_path / "a.xlsx", [head, *rows]))
    assert looms(got, "year", "efficiency") == [(1998 + i, (80.5 + i) / 100) for i in range(1, 5)]


def test_a_line_of_units_below_the_headings_in_chinese(tmp_path: Path):
    rows = [
        ["序号", "车间", "机台编号", "机型", "筘幅", "车速", "效率"], [*[None] * 4, "(mm)", "(rpm)", "(%)"],
        *([i, "三车间", f"C{i:02d}", "喷水", 1900 + 10 * i, 600 + i, 85.5 + i] for i in range(1, 5)),
    ]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert looms(got, "loom", "reed_width_cm", "efficiency") == [
        (f"C{i:02d}", 190 + i, (85.5 + i) / 100) for i in range(1, 5)
    ]


def test_a_speed_in_words_in_italian(tmp_path: Path):
    rows = [["R1", f"{i}.", "AJ", "ferma" if i == 3 else 600 + i, 88] for i in range(1, 6)]
    got = read(workbook(tmp_path / "a.xlsx", [["Reparto", "Tel.", "Tipo", "Vel. colpi/min", "Rend. %"], *rows]))
    assert [(f.code, f.cell) for f in got.refused] == [("not-a-number", "D4")]
    assert looms(got, "loom") == [("1.",), ("2.",), ("4.",), ("5.",)]


def test_reed_widths_in_inch_and_in_cm_beside_each_other(tmp_path: Path):
    rows = [["1", i, "AJ", 75, 190.5, 600 + i] for i in range(1, 5)]
    path = workbook(tmp_path / "a.xlsx", [["Hall", "Loom", "Type", "Reed in", "Reed cm", "Speed"], *rows])
    assert [doubt.code for doubt in read(path).doubts] == ["which-column"]
    assert looms(read(path, answers={"Reed in": "reed width"}), "reed_width_cm") == [(190.5,)] * 4


def test_a_value_that_is_struck_through_in_german(tmp_path: Path):
    rows = [["1", i, "AJ", 600 + i, 88] for i in range(1, 5)]
    got = read(workbook(tmp_path / "a.xlsx", [["Halle", "WM", "Typ", "Drehzahl", "NE %"], *rows], struck=["D5"]))
    assert looms(got, "speed_ppm") == [(601,), (602,), (603,), (604,)]
    assert [note.cell for note in got.findings(code="struck-through")] == ["D5"]
