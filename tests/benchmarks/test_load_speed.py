"""Loads of 5,000 and 50,000 looms × 40 columns through to commit beside what reading the same file alone costs in pandas.

The limits of the project are 1.5 and 2 times `pandas.read_excel(engine="openpyxl")` (compare the means of one run), and for
50,000 looms 512 MiB at the most in a process of its own.
"""

import os
import random
import subprocess
import sys
from datetime import date
from itertools import count
from pathlib import Path

import openpyxl
import pandas
import pytest
from opened import here

from tracker.services.loading.load import LoadRequest, load

HEADINGS = ["Loom", "Hall", "Row", "Place", "Machine type", "Insertion", "Year", "Reed width (cm)", "Frames",
            "Speed (picks/min)", "Efficiency (%)", "Protected until", "Notes"]  # fmt: skip


MOST_MIB = 512
_LOADED = """
import sys
from datetime import date
from pathlib import Path
from opened import here
from tracker.services.loading.load import LoadRequest, load
report = load(here(Path(sys.argv[1])), [Path(sys.argv[2])], LoadRequest(today=date(2026, 11, 25)))
assert report.written and report.tables[0].rows.added == 50_000
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""
"""A load in a process of its own, which says the most memory that it held, in KiB."""


@pytest.fixture(scope="module")
def workbook(tmp_path_factory) -> Path:
    return written(tmp_path_factory.mktemp("load") / "looms.xlsx", 5_000)


@pytest.fixture(scope="module")
def large(tmp_path_factory) -> Path:
    return written(tmp_path_factory.mktemp("load") / "many.xlsx", 50_000)


def written(path: Path, looms: int) -> Path:
    """Thirteen of our columns and 27 of the mill's own: words that come again, numbers, and words that never do."""
    chance = random.Random(1)
    book = openpyxl.Workbook(write_only=True)
    sheet = book.create_sheet("Looms")
    sheet.append([*HEADINGS, *(f"Own {i}" for i in range(27))])
    for i in range(looms):
        own = [
            chance.choice(("yes", "no", "left", "right", "both")) if k % 3 == 0
            else chance.randint(1, 10**6) if k % 3 == 1
            else f"serial {chance.randint(1, 10**7)}"
            for k in range(27)
        ]  # fmt: skip
        kind = chance.choice(("AJ-190", "RP-220"))
        sheet.append(
            [f"A-{i:05d}", f"Hall {i // 1000 + 1}", i // 40, i % 40, kind, "air-jet", 2000 + i % 20, 190, 8,
             600 + i % 100, 88.5, date(2027, 1, 1 + i % 28), f"note {i}", *own]
        )  # fmt: skip
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
        lambda: load(here(tmp_path / f"{next(numbers)}.db"), [workbook], LoadRequest(today=date(2026, 11, 25))),
        rounds=3,
    )
    assert report.written and report.tables[0].rows.added == 5000


@pytest.mark.benchmark(group="50,000 looms x 40 columns")
def test_baseline_pandas_reads_many(benchmark, large):
    frame = benchmark.pedantic(pandas.read_excel, (large,), {"engine": "openpyxl"}, rounds=1)
    assert frame.shape == (50_000, 40)


@pytest.mark.benchmark(group="50,000 looms x 40 columns")
def test_load_of_many_within_its_memory(benchmark, large, tmp_path):
    command = [sys.executable, "-c", _LOADED, str(tmp_path / "mill.db"), str(large)]
    asked = {
        "capture_output": True,
        "text": True,
        "check": True,
        "env": os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
    }
    done = benchmark.pedantic(subprocess.run, (command,), asked, rounds=1)
    peak_mib = int(done.stdout) / 1024
    benchmark.extra_info["peak_MiB"] = round(peak_mib)
    assert peak_mib < MOST_MIB
