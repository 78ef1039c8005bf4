"""A way to run the command, and a mill that was loaded once."""

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from tracker.cli import app, main

SAMPLE = Path(__file__).parents[2] / "sample_data"
WORKBOOKS = [
    SAMPLE / f"{name}.xlsx" for name in ("loom_list", "weaving", "stores", "people_and_tools", "method", "terms")
]


class Ran:
    def __init__(self, code: int, out: str, err: str):
        self.code, self.out, self.err = code, out, err

    @property
    def json(self):
        return json.loads(self.out)


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


@pytest.fixture
def mill(_loaded, tmp_path, beamslot):
    """The same command on a copy of the loaded sample mill."""
    shutil.copy(_loaded, tmp_path / "mill.db")
    return beamslot
