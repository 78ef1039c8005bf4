"""A way to run the command, and a mill that was loaded once."""

import json
import shutil
from functools import cache
from pathlib import Path

import pytest
import typer.main
from opened import here
from typer.testing import CliRunner

from tracker.cli import app, main
from tracker.domain.clock import start_of_day
from tracker.planning.baseline import walk
from tracker.services.parts.reservations import reserve_plan
from tracker.services.plans.baseline import baseline
from tracker.store import open_store

SAMPLE = Path(__file__).parents[2] / "sample_data"
WORKBOOKS = [
    SAMPLE / f"{name}.xlsx" for name in ("loom_list", "weaving", "stores", "people_and_tools", "method", "terms")
]


ONE_LIMIT = ((24.0,),)
"""For `walk.baseline`, which tries ten by itself."""


class Ran:
    def __init__(self, code: int, out: str, err: str):
        self.code, self.out, self.err = code, out, err

    @property
    def json(self):
        return json.loads(self.out)

    @property
    def line(self):
        """The one line that tells why it was refused."""
        lines = [line for line in self.err.splitlines() if line.startswith("beamslot: ")]
        assert len(lines) == 1 and "Traceback" not in self.err, self.err
        return lines[0].removeprefix("beamslot: ")


@pytest.fixture(scope="session", autouse=True)
def _worked_out_once():
    """The command's options, which are worked out anew for each run: a tenth of the time of these tests."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(typer.main, "get_command", cache(typer.main.get_command))
        yield


@pytest.fixture
def beamslot(tmp_path, monkeypatch, capsys):
    """Run `beamslot` in an empty folder as the console script does."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("BEAMSLOT_DB", str(tmp_path / "mill.db"))

    def run(*arguments) -> Ran:
        monkeypatch.setattr("sys.argv", ["beamslot", *map(str, arguments)])
        capsys.readouterr()
        try:
            main()
            code = 0
        except SystemExit as stop:
            code = stop.code if isinstance(stop.code, int) else 1
        captured = capsys.readouterr()
        return Ran(code, captured.out, captured.err)

    return run


@pytest.fixture(scope="session")
def _loaded(tmp_path_factory):
    database = tmp_path_factory.mktemp("mill") / "mill.db"
    done = CliRunner().invoke(app, ["--db", str(database), "load", *map(str, WORKBOOKS)])
    assert done.exit_code == 0, done.output
    return database


@pytest.fixture(scope="session")
def _planned(_loaded, tmp_path_factory):
    """With a plan published: that of the baseline with one limit on waiting, which needs no solver and little time."""
    database = str(shutil.copy(_loaded, tmp_path_factory.mktemp("planned") / "mill.db"))
    with open_store(database).reading() as uow:
        terms = uow.terms()
    assert terms.start
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(walk.baseline, "__defaults__", ONE_LIMIT)
        plan = baseline(here(database), start_of_day(terms.start, terms)).baseline
    with open_store(database).unit_of_work() as uow:
        uow.save_plan(plan, published=True)
        reserve_plan(uow, plan)
        uow.commit()
    return database


@pytest.fixture
def planned(_planned, tmp_path, beamslot):
    """The same command on a copy of the sample mill with a plan published and its kits reserved."""
    shutil.copy(_planned, tmp_path / "mill.db")
    return beamslot


@pytest.fixture
def mill(_loaded, tmp_path, beamslot):
    """The same command on a copy of the loaded sample mill."""
    shutil.copy(_loaded, tmp_path / "mill.db")
    return beamslot
