"""Lists of kinds that nobody had seen before, as they were tried last: each with what its mill meant, or what must be asked."""

import codecs
from pathlib import Path
from typing import Any

import pytest
from mill_sheets import Rows, read, workbook

TYPE, WIDTH, SPEED = "machine_type", "reed_width_cm", "speed_ppm"


def said(got, *fields: str) -> dict[str, tuple[Any, ...]]:
    """`number hall` of each loom → its values of some fields."""
    rows = [{**row.kept, **row.values} for row in got.rows("looms")]
    return {f"{loom['loom']} {loom['hall']}": tuple(loom.get(name) for name in fields) for loom in rows}


RIGHT: dict[str, tuple[Rows, list[str], tuple[str, ...], dict[str, tuple[Any, ...]]]] = {
    "de: two halls typed up side by side, widths in metres": (
        [["Websaal Alt", *[None] * 4, "Websaal Neu"], [*(head := ["Stuhl", "Fabrikat", "Blatt m", "Touren"]), None, *head],
         ["12", "SJ 4", "1,90", "620 U", None, "1", "RX", "3,60", "340 U"],
         ["13", "dto.", "1,90", "615 U", None, "2", "dto.", "3,40", "350 U"]], [], (TYPE, WIDTH, SPEED),
        {"12 Websaal Alt": ("SJ 4", 190, 620), "13 Websaal Alt": ("SJ 4", 190, 615), "1 Websaal Neu": ("RX", 360, 340),
         "2 Websaal Neu": ("RX", 340, 350)},
    ),
    "fr: looms as columns below merged halls": (
        [["Atelier", "Nord", None, None, "Sud"], ["N° métier", 101, 102, 103, 201], ["Type", "AJ", "AJ", "RP", "RP"],
         ["Laize peigne (cm)", 190, 190, 360, 360], ["Vitesse (cp/mn)", "620", "615", "néant", "345"],
         ["Rendement", "88,5", "87", "91", "90,5"]], ["B1:D1"], (TYPE, SPEED, "efficiency"),
        {"101 Nord": ("AJ", 620, 0.885), "102 Nord": ("AJ", 615, 0.87), "103 Nord": ("RP", None, 0.91),
         "201 Sud": ("RP", 345, 0.905)},
    ),
    "tr: a running number that is called like a row, years as days": (
        [["SIRA NO", "SALON", "TEZGAH NO", "MAKİNE TİPİ", "İMAL TARİHİ", "DEVİR"], [*[None] * 5, "(d/dk)"],
         [1, "A SALONU", "A1", "HJ", "12.03.2015", "620"], [2, "A SALONU", "A2", "HJ", "2009", "—"],
         [3, "B SALONU", "B1", "RP", "bilinmiyor", "345"]], [], ("row", "year", SPEED),
        {"A1 A SALONU": (None, 2015, 620), "A2 A SALONU": (None, 2009, None), "B1 B SALONU": (None, None, 345)},
    ),
    "zh: a second list below with its columns in another order": (
        [["老车间"], ["机台号", "机型", "筘幅(cm)", "车速"], ["L1", "喷气", 190, "约620"], ["L2", "同上", 190, "610转"], [],
         ["新车间"],
         ["车速", "机台号", "筘幅(cm)", "机型"], ["345", "N1", 360, "剑杆"], ["350", "N2", 360, "〃"]], [], (TYPE, SPEED),
        {"L1 老车间": ("喷气", 620), "L2 老车间": ("喷气", 610), "N1 新车间": ("剑杆", 345), "N2 新车间": ("剑杆", 350)},
    ),
    "tr: every number typed as text, thousands by three signs": (
        [["Salon", "Tezgah", "Tip", "Hız (d/dk)"], ["1", "'001", "AJ", "1\u00a0050"], ["1", "'002", "AJ", "1.050"],
         ["1", "'003", "AJ", "1'075"]], [], (SPEED,), {"001 1": (1050,), "002 1": (1050,), "003 1": (1075,)},
    ),
    "tr: a summary beside the list": (
        [["Salon", "Tezgah", "Tip", "Devir", None, None, "Tip", "Adet", "Ort. devir"],
         ["A", 1, "SJ", 620, None, None, "SJ", 3, 610],
         ["A", 2, "SJ", 610, None, None, "RX", 1, 350], ["A", 3, "SJ", 600, None, None, "Toplam", 4], ["A", 4, "RX", 350]], [],
        (TYPE, "insertion", SPEED),
        {"1 A": ("SJ", None, 620), "2 A": ("SJ", None, 610), "3 A": ("SJ", None, 600), "4 A": ("RX", None, 350)},
    ),
    "en: the same summary without a gap": (
        [["Hall", "Loom", "Type", "Speed", "Type", "Count"], ["1", 1, "AJ", 600, "AJ", 3], ["1", 2, "AJ", 605, "RP", 1],
         ["1", 3, "AJ", 610], ["1", 4, "RP", 340]], [], (TYPE, "insertion"),
        {"1 1": ("AJ", None), "2 1": ("AJ", None), "3 1": ("AJ", None), "4 1": ("RP", None)},
    ),
    "tr: the hall before its word in the title": (
        [["DOKUMA 1 SALONU TEZGAH LİSTESİ"], ["Tezgah", "Makine tipi", "Devir"], ["101", "SJ", "620 d/dk"],
         ["102", "SJ", "615 d/dk"], ["Ortalama", None, "618 d/dk"]], [], (SPEED,), {"101 1 SALONU": (620,), "102 1 SALONU": (615,)},
    ),
    "en: types with how many there are of each in lines above them": (
        [["Loom", "Reed width (cm)", "Speed (rpm)", "Eff %"], ["AJ-190 (2)"], ["  101", 190, 620, 88], ["  102", 190, 615, 87],
         ["RP-360 (1)"], ["  103", 360, 340, 90], ["Total 3"]], [],
        (TYPE,), {"101 ": ("AJ-190",), "102 ": ("AJ-190",), "103 ": ("RP-360",)},
    ),
    "en: sheds merged over their looms and sums": (
        [["Shed", "M/c No", "Make & Type", "RPM"], ["Shed A", 1, "AJ", 600], [None, 2, "AJ", 602], [None, "Total: 2"], [],
         ["Shed B", 1, "RP", 340], [None, "Total: 1"]], ["A2:A4", "A6:A7"], (TYPE, SPEED),
        {"1 Shed A": ("AJ", 600), "2 Shed A": ("AJ", 602), "1 Shed B": ("RP", 340)},
    ),
    "tr: the old hall beside the new one": (
        [["Eski salon", "Salon", "Tezgah", "Tip", "Devir"], ["A", "B", 1, "S", 600], ["A", "C", 1, "R", 340]], [], (SPEED,),
        {"1 B": (600,), "1 C": (340,)},
    ),
    "fr: the numbers of the looms to be converted beside the list": (
        [["Salle", "Métier", "Type", "Vitesse", None, "À convertir"], ["A", 1, "X", 600, None, 2], ["A", 2, "X", 605, None, 3],
         ["A", 3, "X", 610]], [], (SPEED, "À convertir"), {"1 A": (600, None), "2 A": (605, None), "3 A": (610, None)},
    ),
    "en: a second hall that begins beside the rows of the first": (
        [["Shed A"], ["Loom", "Type", "Speed", "Eff %"], [1, "AJ", 600, 88, None, "Shed B"],
         [2, "AJ", 605, 87, None, "Loom", "Type", "Speed", "Eff %"], [3, "AJ", 610, 86, None, 1, "RP", 340, 90]], [], (TYPE, SPEED),
        {"1 Shed A": ("AJ", 600), "2 Shed A": ("AJ", 605), "3 Shed A": ("AJ", 610), "1 Shed B": ("RP", 340)},
    ),
    "it: revolutions in a minute as 1'": (
        [["Telaio", "Sala", "Tipo", "Giri/1'"], ["T1", "A", "U", 600]], [], (SPEED,), {"T1 A": (600,)},
    ),
    "es: years of two figures": (
        [["Nave", "Telar", "Modelo", "Año", "Velocidad"], ["1", "T1", "A", 98, 600], ["1", "T2", "A", "'04", 605],
         ["1", "T3", "B", 5, 400]], [], ("year",), {"T1 1": (1998,), "T2 1": (2004,), "T3 1": (2005,)},
    ),
}  # fmt: skip
"""Kind → rows, merged cells, the fields compared, and what they are for each loom."""


@pytest.mark.parametrize("kind", RIGHT)
def test_what_a_mill_meant_is_read(tmp_path: Path, kind):
    rows, merged, fields, meant = RIGHT[kind]
    got = read(workbook(tmp_path / "a.xlsx", rows, merged=merged))
    assert said(got, *fields) == meant and not got.doubts and not got.refused


AGAINST: dict[str, tuple[Rows, list[tuple[str, str]]]] = {
    "es: a list of spares without halls below that of the halls": (
        [["Saal", "WM", "Typ", "Drehzahl"], ["A", 1, "S", 600], ["A", 2, "S", 605], [],
         ["Reserve (eingelagert)"], ["WM", "Typ", "Baujahr"],
         [17, "S", 1994], [18, "S", 1995]], [("missing-value", "A7"), ("missing-value", "A8")],
    ),
    "pt: looms below a line that says when they were sold": (
        [["Galpão", "Tear", "Modelo", "RPM"], ["1", 1, "A", 600], [], ["Vendidos em 2025"], ["1", 9, "A", 600]],
        [("gone-line", "A4")],
    ),
    "fr: looms from one to another, how many they are beside them": (
        [["Salle", "Métiers", "Nb", "Type", "Vitesse"], ["A", "1 à 3", 3, "X", 600], ["B", "7-8", 2, "X", 610]],
        [("number-of-several", "B2"), ("number-of-several", "B3")],
    ),
    "es: efficiencies by month": (
        [["Nave", "Telar", "Tipo", "Vel.", "ene", "feb", "mar"],
         *([1, i, "A", 600 + i, 30 + i, 31 + i, 32 + i] for i in range(1, 5))], [],
    ),
    "de: the efficiencies of three shifts, and speeds with a star": (
        [["Halle", "WM", "Typ", "Drehzahl", "NE Früh", "NE Spät"], ["1", 1, "S", "600*", 88, 87], ["1", 2, "S", 605, 88, 87],
         ["1", 3, "S", 605, 88, 87]], [("which-column", "E1, F1"), ("unit-unknown", "D2")],
    ),
}  # fmt: skip
"""Kind → rows, and the questions and refusals (code, cell) that must come, and no others."""


@pytest.mark.parametrize("kind", AGAINST)
def test_what_a_list_leaves_open_is_asked_or_refused(tmp_path: Path, kind):
    rows, wanted = AGAINST[kind]
    got = read(workbook(tmp_path / "a.xlsx", rows))
    assert {(f.code, f.cell) for f in (*got.doubts, *got.refused)} == set(wanted)


def test_months_are_columns_of_their_own(tmp_path: Path):
    rows = AGAINST["es: efficiencies by month"][0]
    (first, *_) = read(workbook(tmp_path / "a.xlsx", rows)).rows("looms")
    assert first.kept == {"ene": 31, "feb": 32, "mar": 33}


def test_hidden_columns_are_read_and_told(tmp_path: Path):
    rows = [
        ["Nave", "Telar", "Tipo", "Velocidad", "Estado"],
        *(["1", i, "A", 600, "de baja" if i == 2 else None] for i in range(1, 4)),
    ]
    got = read(workbook(tmp_path / "a.xlsx", rows, hidden_columns=["E"]))
    assert [f.cell for f in got.findings(code="hidden-columns")] == ["E1"]
    assert [f.cell for f in got.findings(code="says-gone")] == ["E3"]


def test_a_list_behind_an_empty_column_and_a_line_of_units_in_spanish(tmp_path: Path):
    path = tmp_path / "a.csv"
    lines = [";Inventario;;;;", ";Fecha: 12/03/2026;;;;", ";;;;;", ";Nave;Telar;Tipo;Peine;Velocidad", ";;;;cm;rpm",
             ";1;T1;A;190,5;600", ";1;T2;A;190,5;605", ";2;T3;B;220;500", ";Total;3;;;"]  # fmt: skip
    path.write_bytes(codecs.BOM_UTF8 + "\r\n".join(lines).encode())
    got = read(path)
    assert (
        said(got, WIDTH, SPEED) == {"T1 1": (190.5, 600), "T2 1": (190.5, 605), "T3 2": (220, 500)} and not got.doubts
    )


def test_a_letter_for_a_figure_is_told_where_the_numbers_have_as_many_signs(tmp_path: Path):
    rows = [
        ["Hall", "Loom", "Type", "Speed"],
        *(["1", number, "A", 600] for number in ("L01", "LO2", "L03", "L04", "L05")),
    ]
    assert [f.cell for f in read(workbook(tmp_path / "a.xlsx", rows)).findings(code="look-alike")] == ["B3"]


HALLS, NUMBERS = range(1, 5), range(1, 21)
NUMBERED = [[f"Hall {hall}", f"{number:03d}", f"AJ-{hall % 2}", 190, 600] for hall in HALLS for number in NUMBERS]
"""Four halls whose looms are numbered 001 to 020 each."""
BELOW_LINES = [
    row for hall in HALLS for row in ([f"Hall {hall}", *[None] * 3], *([f"{n:03d}", "AJ-0", 190, 600] for n in NUMBERS))
]


@pytest.mark.parametrize(
    "rows",
    [
        [["Hall", "Loom", "Machine type", "Reed width (cm)", "Speed (picks/min)"], *NUMBERED],
        [
            ["Hall", "Loom", "Machine type", "Reed width (cm)", "Speed (picks/min)"],
            *sorted(NUMBERED, key=lambda row: row[1]),
        ],
        [["Loom", "Machine type", "Reed width (cm)", "Speed (picks/min)"], *BELOW_LINES],
    ],
    ids=["hall after hall", "number after number", "halls in lines above"],
)
def test_numbers_that_begin_again_in_each_hall_are_looms(tmp_path: Path, rows: Rows):
    got = read(workbook(tmp_path / "list.xlsx", rows))
    assert {(row.values["hall"], row.values["loom"]) for row in got.rows("looms")} == {
        (f"Hall {hall}", f"{number:03d}") for hall in HALLS for number in NUMBERS
    }
