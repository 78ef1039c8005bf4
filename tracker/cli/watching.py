"""The command that loads what is dropped into a folder."""

import time
from contextlib import suppress
from pathlib import Path
from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json
from tracker.errors import DataError, Message, TrackerError, UsageError, message

LOOK_EVERY_S = 2


def add_commands(app: typer.Typer) -> None:
    app.command()(watch)


def watch(
    context: typer.Context,
    watched: Annotated[Path, typer.Argument(metavar="FOLDER", help="Where files are dropped.")],
    once: Annotated[bool, typer.Option("--once", help="Load what is there, and end.")] = False,
    json_to: Json = None,
) -> None:
    """Load what is dropped into a folder, until Ctrl-C.

    Each file by itself, as `load` does, once it has not changed for five seconds. It moves to loaded/ then, or to refused/ with its
    marked copy and a text that says why; nothing of a refused file is written. With --once the command ends with 1 where a file was
    refused, and --json is for it.

    Example: beamslot watch /srv/beamslot/inbox
    """
    if json_to and not once:
        raise typer.BadParameter("--json goes with --once")
    from tracker.services.loading.watching import SETTLED_S, Watch, load_dropped
    from tracker.words import ENGLISH

    here, folder = context.obj, Watch(watched)
    if once:
        folder.whole()
        time.sleep(SETTLED_S)
        done = list(load_dropped(here, folder))
        show.emit(json_to, [one.record() for one in done], lambda: show.tell([one.says for one in done]))
        raise typer.Exit(0 if all(one.written for one in done) else 1)
    show.say(ENGLISH.line(message("watch-began", folder=str(watched))))
    told: Message | None = None
    with suppress(KeyboardInterrupt):
        while True:
            try:
                for one in load_dropped(here, folder):
                    show.say(ENGLISH.line(one.says))
                told = None
            except (DataError, UsageError):
                raise
            except TrackerError as error:
                if told != error.message:
                    show.say(ENGLISH.line(message("watch-waits", why=error.message)))
                told = error.message
            time.sleep(LOOK_EVERY_S)
