"""The command `beamslot`: parse, call a service, print, exit code. Commands stand in the files of this package by area.

Services are imported inside the commands, so that `beamslot --help` need not wait for the solver and the tables.
"""

import os
import re
import sys
from contextlib import suppress
from io import TextIOWrapper
from typing import Annotated, Any, NoReturn

import typer

from tracker.cli import (
    audit,
    cards,
    data,
    floor,
    forecasting,
    keeping,
    notes,
    orders,
    people,
    planning,
    recording,
    rehearsing,
    scoping,
    settings,
    show,
    stock,
    stores,
    undoing,
    watching,
    withdrawing,
    worth,
)
from tracker.cli.commands import Commands
from tracker.errors import ChangedSince, NotTold, PlanRefused, TrackerError, UsageError

EXIT_CODES = ((UsageError, 2), (NotTold, 3))
"""What does not end with 1."""

CONTROL = re.compile("[\x00-\x1f\x7f-\x9f]")
"""A line break or a terminal's command in what was typed or loaded: a refusal stays one line of words."""

app = Commands(
    name="beamslot",
    help="Plan and follow the conversion of a weaving hall, loom by loom, into the beam changes.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)
for area in (
    data, watching, scoping, forecasting, planning, rehearsing, stores, stock, orders, cards, recording, withdrawing, undoing,
    floor, settings, worth, people, audit, keeping,
):  # fmt: skip
    area.add_commands(app)


@app.callback()
def options(
    context: typer.Context,
    db: Annotated[
        str, typer.Option(envvar="BEAMSLOT_DB", help="The database: an SQLite file or a SQLAlchemy URL.")
    ] = "beamslot.db",
    language: Annotated[
        str, typer.Option(metavar="L", help="Of the files that are written for a person to read: en or de.")
    ] = "en",
) -> None:
    from tracker.services.context import Context
    from tracker.words.choosing import SPOKEN

    if language not in SPOKEN:
        raise typer.BadParameter(f"{language!r} is none of {', '.join(SPOKEN)}")
    context.obj = Context(db, language=language)


def main() -> None:
    """Run the command. A refusal is one line on standard error and exit 1, a wrong use ends with 2; 3 says that all was
    done and only the telling failed."""
    sys.unraisablehook = _without_echo
    _show_by_code(sys.stdout, sys.stderr)
    notes.tell()
    try:
        try:
            app()
        finally:
            with show.told():
                sys.stdout.flush()
    except TrackerError as error:
        _end(next((code for kind, code in EXIT_CODES if isinstance(error, kind)), 1), *_refusal(error))
    except OSError as error:
        if isinstance(error, BrokenPipeError):
            _end(0)
        _end(1, f"beamslot: {error.filename or 'this machine'}: {(error.strerror or str(error)).lower()}")
    except KeyboardInterrupt:
        _end(1, "beamslot: stopped; nothing was written")


def _refusal(error: TrackerError) -> list[str]:
    """In one line; where several bookings or values are refused, one more for each."""
    from tracker.words import ENGLISH

    findings = error.findings if isinstance(error, PlanRefused | ChangedSince) and len(error.findings) > 1 else ()
    return [f"beamslot: {ENGLISH.line(error)}", *(f"  {ENGLISH.line(each)}" for each in findings)]


def _show_by_code(*streams: Any) -> None:
    """A letter that a terminal does not have, or a byte of a file name that is none, is shown by its code: `\\u7e54`."""
    for stream in streams:
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _end(code: int, *lines: str) -> NoReturn:
    for line in lines:
        show.err.print(CONTROL.sub(_code, line), soft_wrap=True, markup=False)
    with suppress(
        OSError, ValueError
    ):  # what standard output did not take would be tried, and told, once more at the end
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(code)


def _code(control: re.Match[str]) -> str:
    return control[0].encode("unicode_escape").decode()


def _without_echo(ignored: Any) -> None:
    """A file that a full disk left half-written fails once more when it is dropped: that was told already."""
    if not isinstance(ignored.exc_value, OSError):
        sys.__unraisablehook__(ignored)
