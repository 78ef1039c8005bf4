"""An old .xls with what its grid alone does not say: numbers by format, hidden rows and sheets, merged halls, dates.

The file was written by a library for .xls: six looms, numbers 1 to 6 shown as 001 to 006, row 3 hidden, halls merged,
efficiencies as fractions shown in percent, a hidden sheet of old looms.
"""

from datetime import date
from pathlib import Path

from mill_sheets import read

XLS = Path(__file__).parents[1] / "office" / "files" / "tezgahlar.xls"


def test_an_old_workbook_reads_like_a_new_one():
    got = read(XLS, Eski="ignore")
    assert [(x["loom"], x["hall"], x["frames"], x["speed_ppm"]) for x in got.looms] == [
        (f"00{i + 1}", "A Salonu" if i < 3 else "B Salonu", 8 + i, 600.0 + i) for i in range(6)
    ]
    assert [x["reed_width_cm"] for x in got.looms] == [220.0, 190.5] * 3
    assert [x["efficiency"] for x in got.looms] == [0.8, 0.81, 0.82, 0.83, 0.84, 0.85]
    assert [x["protected_until"] for x in got.looms] == [date(2027, 1, 5 + i) for i in range(6)]
    assert {row.kept["Travers"] for row in got.rows("looms")} == {"delinmiş"}
    assert [f.message for f in got.findings(code="hidden-rows")] == [
        "1 of 6 rows are hidden; they are read like any other."
    ]


def test_its_hidden_sheet_is_asked_about():
    (doubt,) = read(XLS).doubts
    assert (doubt.code, doubt.sheet) == ("hidden-sheet", "Eski")
