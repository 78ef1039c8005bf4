"""The sample mill loaded from its workbooks, with the plan of the baseline published: it needs no solver."""

import shutil
from datetime import date
from functools import cache
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

from opened import here

from tracker.domain.clock import start_of_day
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan
from tracker.domain.rows import Change
from tracker.mill_state.planning import prepare
from tracker.planning.baseline import walk
from tracker.services.loading.load import load
from tracker.services.plans.planning_data import read_planning_data
from tracker.store import open_store


def published_sample(db: Path) -> tuple[Path, Plan]:
    """Make the database; gives it back with its plan. It is written once in a process, and copied for all who ask."""
    folder, plan = _written()
    shutil.copyfile(Path(folder.name) / "mill.db", db)
    return db, plan


@cache
def _written() -> tuple[TemporaryDirectory[str], Plan]:
    """The folder, which goes with the process, and the plan."""
    folder = TemporaryDirectory(prefix="published_sample_")
    db = Path(folder.name) / "mill.db"
    sample = Path(str(files("sample_data")))
    assert load(here(db), sorted(sample.glob("*.xlsx"))).written
    data = read_planning_data(here(db))
    plan = walk.baseline(prepare(data, start_of_day(date(2027, 1, 4), data.mill.terms)).problem, [12.0])
    with open_store(str(db)).unit_of_work("planner") as uow:
        uow.save_plan(plan, published=True)
        uow.commit()
    return folder, plan


def protect(db: str, key: LoomKey, until: date) -> None:
    """As a load would do that protects a loom for an order."""
    with open_store(db).unit_of_work("planner") as uow:
        writer = uow.load_writer()
        writer.write([Change("looms", (key.loom, key.hall), "protected_until", None, until)], {})
        uow.commit()
