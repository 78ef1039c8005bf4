"""The rules of the house hold: import directions, style, types, and names that a newcomer finds."""

import ast
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest
from sources import nodes_of, sources

ROOT = Path(__file__).parent.parent
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "tracker", "dashboards", "tests", "sample_data"}


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_imports_go_one_way():
    done = subprocess.run(
        [Path(sys.executable).with_name("lint-imports")], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_linter_has_nothing_to_say():
    run("ruff", "check", ".")


def test_every_file_is_formatted():
    run("ruff", "format", "--check", ".")


@pytest.mark.long  # a tenth of the default run: CI looks at the types beside it
def test_the_types_fit():
    run("basedpyright", "--pythonpath", sys.executable)


def test_the_top_level_is_what_the_readme_says():
    tracked = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False)
    if tracked.returncode:
        pytest.skip("not a git checkout, so there is no list of the project's own files")
    top = {name.split("/")[0] for name in tracked.stdout.splitlines()}
    assert {name for name in top if not name.startswith(".")} == TOP_LEVEL


@pytest.mark.parametrize("package", ["tracker", "dashboards", "sample_data"])
def test_no_module_grows_past_400_lines(package):
    long = [str(p) for p in (ROOT / package).rglob("*.py")
            if "migrations" not in p.parts and len(p.read_text().splitlines()) > 400]  # fmt: skip
    assert long == []


MOST_PARAMETERS = 6
"""What goes together is one object with a name (`LoadRequest`, `OnTheFloor`)."""
SAYS_MORE = {"tracker/intake/report.py"}
"""What a finding holds, each by its name: beside where it is, heading, raw, understood, choices and the code's own."""


def test_no_function_takes_more_than_six_parameters():
    """The commands have theirs from what may be typed."""
    many = [
        f"{name}:{node.lineno} {node.name}"
        for name in sources()
        if name not in SAYS_MORE and not name.startswith("tracker/cli/")
        for node in nodes_of(name)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and len(_parameters(node)) > MOST_PARAMETERS
    ]
    assert many == []


def _parameters(of: ast.FunctionDef | ast.AsyncFunctionDef) -> list[str]:
    given = of.args
    named = [one.arg for one in (*given.posonlyargs, *given.args, *given.kwonlyargs)]
    return [name for name in named if name not in ("self", "cls")]


def test_no_two_classes_have_one_name():
    """One thing one name, so that a name says which. A class of one module alone (`_Name`) may share its."""
    names = Counter(
        node.name
        for name in sources()
        for node in nodes_of(name)
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_")
    )
    assert [name for name, many in names.items() if many > 1] == []


def test_no_two_test_files_have_one_name():
    """pytest imports them by their bare names."""
    names = Counter(path.name for path in (ROOT / "tests").rglob("test_*.py"))
    assert [name for name, many in names.items() if many > 1] == []
