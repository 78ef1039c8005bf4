"""Commands about the database itself: backup, restore, and the clock that a programme may have of its own."""

from datetime import datetime
from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json, checked, moment


def add_commands(app: typer.Typer) -> None:
    app.command()(backup)
    app.command()(restore)
    app.command()(clock)


def backup(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(metavar="F", callback=checked, help="The file to write (.zip).")],
    json_to: Json = None,
) -> None:
    """Put everything that the database holds into one file.

    While others work: the file holds one moment. A copy of the .db file alone may lack what was entered last.

    Example: beamslot backup mill-2027-01-04.zip
    """
    from tracker.services.backup import backup as run
    from tracker.words import ENGLISH

    done = run(context.obj, target)
    show.emit(json_to, done.record(), lambda: show.say(f"Wrote {target}: {ENGLISH.say(done.holds)}."))


def restore(
    context: typer.Context,
    source: Annotated[Path, typer.Argument(metavar="F", help="A file that `beamslot backup` wrote.")],
    json_to: Json = None,
) -> None:
    """Bring a backup back, into a new database.

    All of the file is checked first. --db before the command names the new database; from SQLite to PostgreSQL and back
    will do, too.

    Example: beamslot restore mill-2027-01-04.zip
    """
    from tracker.services.backup import restore as run
    from tracker.words import ENGLISH

    done = run(context.obj, source)
    made = f"{datetime.fromisoformat(done.manifest.made_at).astimezone():%Y-%m-%d %H:%M}"
    show.emit(json_to, done.record(), lambda: show.say(f"Restored {source}, made {made}: {ENGLISH.say(done.holds)}."))


def clock(
    context: typer.Context,
    to: Annotated[str | None, typer.Argument(metavar="T", help="The moment to set it forward to.")] = None,
    json_to: Json = None,
) -> None:
    """By which clock the programme goes, and what it says.

    A programme of the demo has its own, which stands where it was set, so that its weeks can be lived through. A mill goes by
    the computer's.

    Example: beamslot clock 2027-01-05T15:00
    """
    from tracker.services.own_clock import clock_says, set_clock
    from tracker.words import ENGLISH

    here = context.obj
    if (at := moment(here, to)) is not None:
        set_clock(here, at)
    said = clock_says(here, was_set=at is not None)
    show.emit(json_to, said.record(), lambda: show.say(ENGLISH.line(said.message)))
