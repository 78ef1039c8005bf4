"""Every command says what it does with an example that can be typed, and stands in the README with its options."""

import re
import shlex
from pathlib import Path
from typing import Any

import pytest
import typer
from served import free_port

from tracker.cli import app
from tracker.services.context import Context

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
ROOT: Any = typer.main.get_command(app)


def leaves(command, path=()):
    """(path of names, command) of every command that is no group."""
    if not hasattr(command, "commands"):
        yield path, command
        return
    for name, one in command.commands.items():
        yield from leaves(one, (*path, name))


def options_of(command):
    return {option for p in command.params for option in (*p.opts, *p.secondary_opts) if option.startswith("--")}


COMMANDS = {" ".join(path): command for path, command in leaves(ROOT)}
ROWS = dict(re.findall(r"^\| `((?:(?:stock|people) )?[a-z-]+)[^`]*` \|.*\|(.*)\|$", README, re.MULTILINE))
"""Command → the cell with its options."""


@pytest.mark.parametrize("name", COMMANDS)
def test_help_explains_every_argument_and_gives_an_example(beamslot, name):
    ran = beamslot(*name.split(), "--help")
    assert ran.code == 0
    assert f"Example: beamslot {name}" in " ".join(ran.out.split())
    assert [p.name for p in COMMANDS[name].params if not (getattr(p, "help", "") or "").strip()] == []


@pytest.mark.parametrize("name", COMMANDS)
def test_the_example_can_be_typed(name):
    text = re.search(r"Example: beamslot (.*)", COMMANDS[name].help)
    assert text
    command, arguments = ROOT, shlex.split(text[1])
    while hasattr(command, "commands"):
        command = command.commands[arguments.pop(0)]
    command.make_context(name, arguments, obj=Context("beamslot.db"))  # raises a usage error where it does not fit


def test_the_readme_has_exactly_the_commands_and_their_options():
    told = {name: set(re.findall(r"`(--[a-z-]+)`", options)) for name, options in ROWS.items()}
    assert told == {name: options_of(command) - {"--force"} for name, command in COMMANDS.items()}


def test_whatever_writes_a_file_can_be_forced():
    """`--force` is told once, above the table."""
    assert "`--force`" in README.split("## Every command")[1].split("|")[0]
    can, writes = (
        {name for name, c in COMMANDS.items() if option in options_of(c)} for option in ("--force", "--json")
    )
    assert can == writes | {"template"}


def test_the_first_sentence_fits_the_list_of_commands(beamslot):
    for arguments in (("--help",), ("stock", "--help")):
        commands = beamslot(*arguments).out.split("Commands:")[1]
        assert "..." not in commands and len(commands.splitlines()) > 10


SERVE = pytest.param(f"serve --port {free_port()}", id="serve")  # somebody may serve on the usual one


@pytest.mark.parametrize("command", ["status", "stock moves", "load --origin 001 Rail", SERVE])
def test_a_mistyped_database_is_not_made(beamslot, tmp_path, command):
    ran = beamslot("--db", "mil.db", *command.split())
    says = "there is no database mil.db; `beamslot load` or `beamslot serve --new` makes it, --db names another"
    assert (ran.code, ran.line) == (1, says)
    assert list(tmp_path.iterdir()) == []
