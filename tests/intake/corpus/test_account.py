"""Every filled cell of every list is in the account exactly once."""

import csv
import io
import random
from pathlib import Path

import openpyxl
import pytest

from tracker.domain.addresses import areas_in
from tracker.domain.rows import ReadResult
from tracker.intake.reader import read_files

from .draft import Finished
from .files import write
from .lists import SEED, all_lists
from .verdict import TODAY

SAMPLE = 40


def filled_cells(path: Path, encoding: str, delimiter: str) -> dict[str, set[tuple[int, int]]]:
    """Sheet → (row, column) of its filled cells, read without our own code; empty for kinds it does not read."""
    if path.suffix == ".xlsx":
        book = openpyxl.load_workbook(path)
        return {
            sheet.title: {(c.row, c.column) for row in sheet.iter_rows() for c in row if not _blank(c.value)}
            for sheet in book
        }
    if path.suffix == ".csv":
        rows = csv.reader(io.StringIO(path.read_bytes().decode(encoding, errors="replace")), delimiter=delimiter)
        cells = {(r, c) for r, row in enumerate(rows, 1) for c, text in enumerate(row, 1) if not _blank(text)}
        return {path.stem: cells}
    return {}


def _blank(value: object) -> bool:
    return value is None or not str(value).strip()


def read(made: Finished, folder: Path) -> tuple[ReadResult, list[Path]]:
    folder.mkdir(exist_ok=True)
    paths = [write(file, folder) for file in made.files]
    return read_files(paths, {}, {}, TODAY), paths


def check(made: Finished, folder: Path) -> int:
    """How many cells were compared."""
    try:
        result, paths = read(made, folder)
    except Exception:  # a file that is refused as a whole has no account
        return 0
    compared = 0
    for file, path in zip(made.files, paths, strict=True):
        for name, cells in filled_cells(path, file.encoding, file.delimiter).items():
            (account,) = [one for one in result.account.sheets if (one.file, one.sheet) == (path.name, name)]
            assert account.cells == len(cells), (made.name, name, account.record())
            aside = [cell for one in account.aside for cell in _cells_in(one.where) & cells]
            assert (
                len(aside) == len(set(aside)) == account.set_aside or "sheet" in account.record()["aside"][0]["reason"]
            )
            compared += len(cells)
    return compared


def _cells_in(where: str) -> set[tuple[int, int]]:
    return {(r, c) for r1, c1, r2, c2 in areas_in(where) for r in range(r1, r2 + 1) for c in range(c1, c2 + 1)}


def test_every_cell_of_a_sample_is_in_the_account(tmp_path):
    lists = random.Random(SEED).sample(list(all_lists()), SAMPLE)
    assert sum(check(made, tmp_path / str(i)) for i, made in enumerate(lists)) > 100 * SAMPLE


@pytest.mark.corpus
def test_every_cell_of_every_list_is_in_the_account(tmp_path):
    assert sum(check(made, tmp_path / str(i)) for i, made in enumerate(all_lists())) > 100 * 400


def test_the_cells_of_a_list_with_all_kinds_of_lines(tmp_path):
    """By hand: 2 titles; 5 headings; rows 4, 5 and 8 read in 4 fields (12 cells less the dash) and an own column (3 less one
    empty); row 6 refused (4 cells); a total of 2 cells; a note; a cell without heading stands right of the table."""
    rows = [
        ["Loom list", None, None, None, None, None],
        ["as of May", None, None, None, None, None],
        ["Loom", "Hall", "Machine type", "Speed", "Rail", None],
        ["A-1", "H1", "AJ-190", 600, "drilled", "x"],
        ["A-2", "H1", "AJ-190", "-", "none", None],
        [None, "H1", "AJ-190", 605, "none", None],
        ["Total", None, None, 3, None, None],
        ["A-3", "H1", "AJ-190", 610, None, None],
        ["printed for the works manager by the office", None, None, None, None, None],
    ]
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    book.save(tmp_path / "a.xlsx")
    (account,) = read_files([tmp_path / "a.xlsx"], {}, {}, TODAY).account.sheets
    assert account.record() == {
        "file": "a.xlsx", "sheet": "Sheet", "cells": 29, "heading": 5, "taken": 11, "own": 2, "refused": 4,
        "aside": [
            {"reason": "title", "cells": 2, "where": "A1:A2"}, {"reason": "beside", "cells": 1, "where": "F4"},
            {"reason": "empty value", "cells": 1, "where": "D5"}, {"reason": "total", "cells": 2, "where": "A7, D7"},
            {"reason": "note", "cells": 1, "where": "A9"},
        ],
    }  # fmt: skip
