"""The command for who did what, and whether it still reads as it was written."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.options import Hall, Json, checked, moment
from tracker.errors import message

if TYPE_CHECKING:
    from tracker.services.people.audit import Deeds


def add_commands(app: typer.Typer) -> None:
    app.command()(audit)


def audit(
    context: typer.Context,
    known: Annotated[
        str | None, typer.Argument(metavar="HASH", help="With --check: the last hash as a backup has it.")
    ] = None,
    loom: Annotated[str | None, typer.Option(metavar="LOOM", help="Of one loom by its number.")] = None,
    hall: Hall = None,
    who: Annotated[str | None, typer.Option(metavar="NAME", help="Of one person.")] = None,
    since: Annotated[str | None, typer.Option(metavar="T", help="From this moment on, 2027-01-04.")] = None,
    check: Annotated[bool, typer.Option("--check", help="Does history read as it was written?")] = False,
    out: Annotated[
        Path | None, typer.Option(metavar="F.xlsx", callback=checked, help="Write it as a workbook.")
    ] = None,
    json_to: Json = None,
) -> None:
    """Who did what, and whether history is untouched.

    The newest first, with role and by what. Every row of history is sealed with a hash that rests on all before it. Each
    backup has the last one: with it --check says whether what stood then still does.

    Example: beamslot audit --loom 007 --since 2027-01-04
    """
    from tracker.services.people import audit as service
    from tracker.words import ENGLISH

    if check and (loom or who or since or out):
        raise typer.BadParameter("--check looks at all of history; give it no more than HASH")
    if known and not check:
        raise typer.BadParameter("HASH goes with --check")
    here = context.obj
    if check:
        done = service.check_history(here, known)
        show.emit(json_to, done.record(), lambda: show.say(ENGLISH.line(done.message)))
        return
    which = service.Which(loom, hall, who, moment(here, since))
    found = service.write_deeds(here, out, which) if out else service.deeds(here, which)
    show.emit(json_to, found.record(), lambda: show.say(f"Wrote {out}.") if out else _print(found))


def _print(found: "Deeds") -> None:
    from tracker.services.people.audit import roles_said
    from tracker.words import Speaker

    if not found.deeds:
        show.tell([message("deeds-none")])
        return
    speaker = Speaker(zone=found.zone)
    rows = [
        (
            "" if d.act is None else str(d.act),
            show.moment(d.at, found.zone),
            d.who,
            d.told,
            roles_said(d),
            d.through,
            speaker.say(d.what),
        )
        for d in found.deeds
    ]
    show.table(
        "Who did what, the newest first",
        ["?No.", "When", "Who", "?Told to have done it", "?Roles", "?By", "What"],
        rows,
    )
