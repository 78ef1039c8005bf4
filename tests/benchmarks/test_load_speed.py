"""A load of 5,000 looms × 40 columns through to commit beside what reading the same file alone costs through pandas.

The limit of the project is 1.5 times `pandas.read_excel(engine="openpyxl")`; compare the two means of one run.
"""

import random
from datetime import date
from itertools import count
from pathlib import Path

import openpyxl
import pandas
import pytest
from opened import here

from tracker.services.loading.load import load

HEADINGS = ["Loom", "Hall", "Row", "Place", "Machine type", "Insertion", "Year", "Reed width (cm)", "Frames",
            "Speed (picks/min)", "Efficiency (%)", "Protected until", "Notes"]  # fmt: skip


@pytest.fixture(scope="module")
def workbook(tmp_path_factory) -> Path:
    """5,000 looms, thirteen of our columns and 27 of the mill's own, two in three of them words."""
    chance = random.Random(1)
    book = openpyxl.Workbook(write_only=True)
    sheet = book.create_sheet("Looms")
    sheet.append([*HEADINGS, *(f"Own {i}" for i in range(27))])
    for i in range(5000):
        own = [
            chance.choice(("yes", "no", "left", "right", "both")) if k % 3 else chance.randint(1, 5000)
            for k in range(27)
        ]
        kind = chance.choice(("AJ-190", "RP-220"))
        sheet.append(
            [f"A-{i:04d}", f"Hall {i // 1000 + 1}", i // 40, i % 40, kind, "air-jet", 2000 + i % 20, 190, 8,
             600 + i % 100, 88.5, date(2027, 1, 1 + i % 28), f"note {i}", *own]
        )  # fmt: skip
    path = tmp_path_factory.mktemp("load") / "looms.xlsx"
    book.save(path)
    return path


@pytest.mark.benchmark(group="5,000 looms x 40 columns")
def test_baseline_pandas_reads(benchmark, workbook):
    frame = benchmark.pedantic(pandas.read_excel, (workbook,), {"engine": "openpyxl"}, rounds=3)
    assert frame.shape == (5000, 40)


@pytest.mark.benchmark(group="5,000 looms x 40 columns")
def test_load_through_to_commit(benchmark, workbook, tmp_path):
    numbers = count()
    report = benchmark.pedantic(
        lambda: load(here(tmp_path / f"{next(numbers)}.db"), [workbook], today=date(2026, 11, 25)), rounds=3
    )
    assert report.written and report.tables[0].rows.added == 5000
