"""The command `beamslot`: parse, call a service, print, exit code. Commands stand in the files of this package by area.

Services are imported inside the commands, so that `beamslot --help` need not wait for the solver and the tables.
"""

import sys
from typing import Annotated

import typer

from tracker.cli import data, floor, forecasting, planning, scoping, show, stock, stores
from tracker.errors import TrackerError, UsageError

app = typer.Typer(
    name="beamslot",
    help="Plan and follow the conversion of a weaving hall, loom by loom, into the beam changes.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)
for area in (data, scoping, forecasting, planning, stores, stock, floor):
    area.add_commands(app)


@app.callback()
def options(
    context: typer.Context,
    db: Annotated[
        str, typer.Option(envvar="BEAMSLOT_DB", help="The database: an SQLite file or a SQLAlchemy URL.")
    ] = "beamslot.db",
) -> None:
    context.obj = db


def main() -> None:
    """Run the command; a refusal is one line on standard error and exit 1, a wrong use ends with 2."""
    try:
        app()
    except TrackerError as error:
        show.err.print(f"beamslot: {error}", soft_wrap=True, markup=False)
        sys.exit(2 if isinstance(error, UsageError) else 1)
    except KeyboardInterrupt:
        show.err.print("beamslot: stopped; nothing was written")
        sys.exit(1)
    except BrokenPipeError:
        sys.exit(0)
