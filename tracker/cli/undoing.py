"""The command that undoes what was loaded or recorded."""

from typing import Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Json


def add_commands(app: typer.Typer) -> None:
    app.command()(undo)


def undo(
    context: typer.Context,
    number: Annotated[int, typer.Argument(metavar="N", help="The number of the load or record, as `audit` has it.")],
    rest: Annotated[
        bool, typer.Option("--rest", help="Leave what others changed since as it is, and undo what else there is.")
    ] = False,
    json_to: Json = None,
) -> None:
    """Undo a load or a record, by its number.

    What was there before comes back by a change of its own: nothing is removed from the history, and the undo can be undone.
    Where somebody changed some of it since, that is named and nothing is written. Plans and accounts are not undone.

    Example: beamslot undo 17
    """
    from tracker.services.undoing.undo import undo as run

    done = run(context.obj, number, rest)
    said = (done.message, *(one.says(done.zone) for one in done.left), *done.stays)
    show.emit(json_to, done.record(), lambda: show.tell(said))
