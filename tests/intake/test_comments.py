"""What comments say on the cells of a list is told with its cells, and kept with the origin of the values."""

from pathlib import Path

import openpyxl
import pytest
from mill_sheets import TODAY, read, workbook
from opened import here
from openpyxl.comments import Comment

from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.origins import origins

HEAD = ["Loom", "Hall", "Machine type", "Speed (rpm)"]
ROWS = [HEAD, *([f"{i:03d}", "H1", "AJ-190", 600 + i] for i in range(1, 4))]


def commented(tmp_path: Path, comments: dict[str, tuple[str, str]], rows=ROWS) -> Path:
    """The list with comments: cell → text and author."""
    path = workbook(tmp_path / "a.xlsx", rows)
    book = openpyxl.load_workbook(path)
    for cell, (text, author) in comments.items():
        book.active[cell].comment = Comment(text, author)
    book.save(path)
    return path


def told(path: Path) -> list[tuple[str, str]]:
    return [(f.cell, f.raw) for f in read(path).findings(code="cell-comment")]


def test_a_comment_is_told_once_with_all_its_cells_and_the_value_is_read_as_it_stands(tmp_path):
    path = commented(tmp_path, {"D2": ("wrong,\nsee Ali", "K."), "D3": ("wrong,\nsee Ali", "L."), "B9": ("stray", "")})
    assert told(path) == [("D2:D3", "wrong, see Ali"), ("B9", "stray")]
    got = read(path)
    assert [loom["speed_ppm"] for loom in got.looms] == [601, 602, 603] and not got.doubts and not got.refused
    assert got.findings(code="cell-comment")[0].message.startswith("A comment says: 'wrong, see Ali'.")


def test_a_long_comment_is_not_cut(tmp_path):
    text = "measured anew " * 40
    assert told(commented(tmp_path, {"D2": (text, "K.")})) == [("D2", text.strip())]


def test_our_own_comments_are_none_of_the_mill(tmp_path):
    path = commented(tmp_path, {"D2": ("NOTE: read so", "beamslot"), "D3": ("seen\nbeamslot: NOTE: read so", "K.")})
    assert told(path) == [("D3", "seen")]


def test_the_notes_on_our_own_headings_stay_ours_where_another_programme_saved_them(tmp_path):
    guide = {"Guide": [["How to fill in this workbook of beamslot"]], "Looms": ROWS}
    path = workbook(tmp_path / "a.xlsx", guide)
    book = openpyxl.load_workbook(path)
    book["Looms"]["D1"].comment, book["Looms"]["D2"].comment = Comment("Number.", "Unknown"), Comment("old", "Unknown")
    book.save(path)
    assert told(path) == [("D2", "old")]


def test_a_sheet_without_tables_has_its_one_note_and_no_comments(tmp_path):
    path = workbook(tmp_path / "a.xlsx", {"List": ROWS, "Plan": [["lunch", "who"], ["soup", "all"]]})
    book = openpyxl.load_workbook(path)
    book["Plan"]["A2"].comment = Comment("hot", "K.")
    book.save(path)
    assert told(path) == []


@pytest.mark.parametrize(("loom", "said"), [("001", "wrong, see Ali"), ("002", "")])
def test_a_comment_is_kept_with_the_origin_of_the_value(tmp_path, loom, said):
    mill = here(tmp_path / "a.db")
    load(mill, [commented(tmp_path, {"D2": ("wrong, see Ali", "K.")})], LoadRequest(today=TODAY))
    (origin,) = origins(mill, loom, "speed")
    assert (origin.cell, origin.comment) == (f"D{int(loom) + 1}", said)
