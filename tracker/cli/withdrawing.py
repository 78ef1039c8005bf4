"""The command that withdraws what was recorded by mistake."""

from typing import Annotated, Any

import typer

from tracker.cli import show
from tracker.cli.options import Hall, Json, moment
from tracker.domain.record_tables import SIDES


def add_commands(app: typer.Typer) -> None:
    app.command()(withdraw)


def withdraw(
    context: typer.Context,
    loom: Annotated[str, typer.Argument(metavar="LOOM", help="A loom's number.")],
    why: Annotated[str, typer.Option(metavar="REASON", help="Why; it is kept with what is withdrawn.")],
    stage: Annotated[
        str | None, typer.Option(help="The loom's last recorded stage, to be sure that it is the one meant.")
    ] = None,
    hall: Hall = None,
    operation: Annotated[str | None, typer.Option(metavar="OPERATION", help="What was told of an operation.")] = None,
    setting: Annotated[str | None, typer.Option("--set", metavar="SETTING", help="A setting that was read.")] = None,
    check: Annotated[str | None, typer.Option(metavar="CHECK", help="The result of a check.")] = None,
    part: Annotated[str | None, typer.Option(metavar="PART", help="What became of a part.")] = None,
    bobbin: Annotated[str | None, typer.Option(metavar="SIDE", help="What was left on a bobbin.")] = None,
    stops: Annotated[bool, typer.Option("--stops", help="The stops of a period that begins --at.")] = False,
    waste: Annotated[bool, typer.Option("--waste", help="The waste width of a period that begins --at.")] = False,
    cause: Annotated[str | None, typer.Option(help="With --stops: their cause.")] = None,
    side: Annotated[str | None, typer.Option(help="With --set, --check, --waste: left or right.")] = None,
    at: Annotated[str | None, typer.Option(metavar="T", help="When it was read, or its period began.")] = None,
    card: Annotated[str | None, typer.Option(help="With --operation and --part: the number of the card.")] = None,
    json_to: Json = None,
) -> None:
    """Withdraw what was recorded of a loom by mistake.

    Its last stage with what hung on it, or one reading.

    What is withdrawn stays in the history with the reason; stages, hours, settings and stock are as if it had not been. In work
    takes the whole conversion with it. Stages go back one by one, the last first.

    Example: beamslot withdraw 007 --stage "in work" --why "it was loom 008"
    """  # fmt: skip
    if bobbin is not None and bobbin not in SIDES:
        raise typer.BadParameter(f"--bobbin {bobbin!r} is not one of {', '.join(SIDES)}")
    from tracker.services.work.withdrawing import RowMeant, withdraw_reading, withdraw_stage

    here: Any = context.obj
    when = moment(here, at)
    meant = [
        *([RowMeant("work_done", {"operation": operation, "card": card})] if operation else []),
        *([RowMeant("set_values", {"setting": setting, "side": side, "at": when})] if setting else []),
        *([RowMeant("check_results", {"check": check, "side": side, "at": when})] if check else []),
        *([RowMeant("parts_used", {"part": part, "card": card})] if part else []),
        *([RowMeant("bobbins", {"side": bobbin, "at": when})] if bobbin else []),
        *([RowMeant("stops", {"from_at": when, "cause": cause})] if stops else []),
        *([RowMeant("waste", {"from_at": when, "side": side})] if waste else []),
    ]
    if len(meant) + (stage is not None) > 1:
        raise typer.BadParameter("withdraw one thing at a time: a stage, or one reading")
    done = withdraw_reading(here, loom, why, meant[0], hall) if meant else withdraw_stage(here, loom, why, hall, stage)
    from tracker.words import ENGLISH

    show.emit(json_to, done.record(), lambda: show.say(ENGLISH.say(done.message)))
