"""Options that several commands share, and the reading of what was typed."""

from collections.abc import Iterable
from datetime import date, datetime
from math import isfinite
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tracker.domain.clock import within_reach

if TYPE_CHECKING:
    from tracker.services.context import Context


def checked(target: Any) -> Any:
    """Refuse at once what could not be written in the end, when the database is changed already."""
    if target and target != "-":
        from tracker.services.outputs import check

        check(target)
    return target


def _permit(context: typer.Context, force: bool) -> bool:
    from tracker.services.outputs import permit

    context.call_on_close(permit(context.obj, force))
    return force


Json = Annotated[
    str | None,
    typer.Option("--json", metavar="FILE", callback=checked,
                 help="Write the result as JSON to FILE; - is standard output, alone."),
]  # fmt: skip
Force = Annotated[
    bool,
    typer.Option("--force", is_eager=True, callback=_permit, help="Replace a file that is there and not ours, too."),
]  # fmt: skip
AsOf = Annotated[
    str | None, typer.Option("--as-of", metavar="T", help="A moment, 2027-01-04 or 2027-01-04T06:00; default now.")
]
Loom = Annotated[str | None, typer.Argument(metavar="LOOM", help="One loom by its number; default all.")]
OneLoom = Annotated[str, typer.Argument(metavar="LOOM", help="The loom by its number.")]
Hall = Annotated[str | None, typer.Option(help="The hall, where a loom number stands in several.")]


def moment(here: "Context", text: str | None) -> datetime | None:
    """The moment typed, in the mill's local time unless it carries an offset."""
    if text is None:
        return None
    from tracker.services.terms import local_moment

    try:
        return local_moment(here, text)
    except ValueError:
        raise typer.BadParameter(f"{text!r} is no moment like 2027-01-04 or 2027-01-04T06:00") from None


def local_day(text: str | None) -> date | None:
    """The day typed."""
    if text is None:
        return None
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise typer.BadParameter(f"{text!r} is no day like 2027-01-04") from None
    return within_reach(day, text)


def pairs(given: Iterable[str] | None, form: str) -> list[tuple[str, str]]:
    """What was typed as `NAME=VALUE`; `form` says it in the words of the option: `ORDER=DAYS`."""
    found = []
    for text in given or ():
        name, equals, value = text.rpartition("=")
        if not equals or not name.strip() or not value.strip():
            raise typer.BadParameter(f"{text!r} is not of the form {form}")
        found.append((name.strip(), value.strip()))
    return found


def numbers(given: Iterable[str] | None, form: str) -> list[tuple[str, float]]:
    """Likewise, where the value is a number."""
    found = []
    for name, value in pairs(given, form):
        try:
            found.append((name, float(value)))
        except ValueError:
            raise typer.BadParameter(f"{value!r} in {name}={value} is no number; the form is {form}") from None
        if not isfinite(found[-1][1]):
            raise typer.BadParameter(f"{value!r} in {name}={value} is no number; the form is {form}")
    return found
