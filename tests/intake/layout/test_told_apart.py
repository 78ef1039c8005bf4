"""Headings that a number or a word tells apart, by hand: what is left of them, and the lists that this makes readable."""

import pytest
from mill_sheets import read, workbook

from tracker.intake.layout.told_apart import alike


@pytest.mark.parametrize(
    ("line", "left"),
    [
        ("Hall, Loom 1, Type 1, Loom 2, Type 2", "Hall, Loom, Type, Loom, Type"),
        ("Loom1, Type1, Loom2, Type2", "Loom, Type, Loom, Type"),
        ("Telaio sinistro, Cantra sinistro, Telaio destro, Cantra destro", "Telaio, Cantra, Telaio, Cantra"),
        ("East loom, East speed, West loom, West speed", "loom, speed, loom, speed"),
        ("Hall, Left loom, Type, Speed, Right loom, Type, Speed", "Hall, loom, Type, Speed, loom, Type, Speed"),
        ("车间, 左机号, 机型, 右机号, 机型", "车间, 机号, 机型, 机号, 机型"),
        ("Loom no., Loom type, Beam no., Beam type", None),  # the type is no loom
        ("Speed nominal, Speed actual, Eff. nominal, Eff. actual", None),  # no looms told apart
        ("Loom 1, Type, Speed 2026", None),
    ],
)
def test_what_is_left_of_headings(line, left):
    headings = dict(enumerate(line.split(", ")))
    assert ", ".join(alike(headings).values()) == (left or line)


def test_each_loom_of_a_row_gets_its_own_values(tmp_path):
    rows = [["Hall 1", f"{n}", "AJ-190", 600 + n, f"{n + 10}", "RP-360", 300 + n] for n in range(1, 4)]
    path = workbook(
        tmp_path / "a.xlsx", [["Hall", "Loom 1", "Type 1", "Speed 1", "Loom 2", "Type 2", "Speed 2"], *rows]
    )
    got = {loom["loom"]: (loom["machine_type"], loom["speed_ppm"]) for loom in read(path).looms}
    assert got == {f"{n}": ("AJ-190", 600.0 + n) for n in range(1, 4)} | {
        f"{n + 10}": ("RP-360", 300.0 + n) for n in range(1, 4)
    }


def test_a_title_above_the_first_group_names_its_type_as_the_lines_below_do(tmp_path):
    head = ["Loom", "Hall", "Reed width (cm)", "Speed (rpm)", "Eff. %"]
    looms = [[f"{n}", "Hall 1", 190, 600, 88] for n in range(1, 5)]
    path = workbook(tmp_path / "a.xlsx", [["Type AJ-190"], head, *looms[:2], [], ["Type RP-360"], head, *looms[2:]])
    assert [loom["machine_type"] for loom in read(path).looms] == ["AJ-190"] * 2 + ["RP-360"] * 2
