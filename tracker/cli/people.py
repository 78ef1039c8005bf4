"""Commands for accounts: who may sign in to the screens, and what each may do there."""

import sys
from typing import TYPE_CHECKING, Annotated

import typer

from tracker.cli import show
from tracker.cli.commands import Commands
from tracker.cli.options import Json

if TYPE_CHECKING:
    from tracker.services.people.accounts import Changed

Name = Annotated[str, typer.Argument(metavar="NAME", help="The name to sign in with.")]
Roles = Annotated[
    list[str],
    typer.Option(
        "--role", metavar="ROLE",
        help="viewer, fitter, electrician, purchasing, planner or administrator; give it again for more than one.",
    ),
]  # fmt: skip

people = Commands(
    name="people",
    help="Accounts: who may sign in to the screens, in which roles.\n\nExample: beamslot people list",
    no_args_is_help=True,
    rich_markup_mode=None,
)


def add_commands(app: typer.Typer) -> None:
    app.add_typer(people)


@people.command()
def add(context: typer.Context, name: Name, role: Roles, json_to: Json = None) -> None:
    """Give somebody an account.

    The password is asked for twice; where nobody sits at a terminal it is the first line of standard input. Once there is an
    account, the screens ask everybody to sign in.

    Example: beamslot people add "M. Berg" --role planner --role administrator
    """
    from tracker.services.people.accounts import add_person

    _say(add_person(context.obj, name, _password(), role), json_to)


@people.command("list")
def listed(context: typer.Context, json_to: Json = None) -> None:
    """All accounts with their roles.

    Example: beamslot people list
    """
    from tracker.services.people.accounts import people as run

    found = run(context.obj)
    rows = [
        (
            p.name,
            ", ".join(p.roles),
            "provider" if p.by_provider else "password",
            *(show.moment(at, found.zone) if at else "" for at in (p.added_at, p.ended_at)),
        )
        for p in found.people
    ]
    show.emit(json_to, found.record(), lambda: show.table("People", ["Name", "Roles", "By", "Since", "?Ended"], rows))


@people.command()
def roles(context: typer.Context, name: Name, role: Roles, json_to: Json = None) -> None:
    """Give somebody other roles, in place of those before; open pages end.

    Example: beamslot people roles "M. Berg" --role purchasing
    """
    from tracker.services.people.accounts import change_roles

    _say(change_roles(context.obj, name, role), json_to)


@people.command()
def password(context: typer.Context, name: Name, json_to: Json = None) -> None:
    """Set a new password; open pages end.

    Asked for as by `people add`.

    Example: beamslot people password "M. Berg"
    """
    from tracker.services.people.accounts import change_password

    _say(change_password(context.obj, name, _password()), json_to)


@people.command()
def provider(context: typer.Context, name: Name, json_to: Json = None) -> None:
    """Leave somebody's sign-in to the mill's identity provider; open pages end.

    The password counts no more and the roles are those that the provider gives; an account that ended is open again. Who comes by
    the provider for the first time needs no command, but for a name that is an account's already.

    Example: beamslot people provider "M. Berg"
    """
    from tracker.services.people.accounts import leave_to_provider

    _say(leave_to_provider(context.obj, name), json_to)


@people.command()
def end(context: typer.Context, name: Name, json_to: Json = None) -> None:
    """End an account: nobody can sign in with it any more, and open pages end.

    What was done with it stays in the history; `people add` opens it again.

    Example: beamslot people end "M. Berg"
    """
    from tracker.services.people.accounts import end_person

    _say(end_person(context.obj, name), json_to)


@people.command()
def token(
    context: typer.Context,
    name: Annotated[
        str, typer.Argument(metavar="NAME", help="What it is for; who posts by it is told under this name.")
    ],
    may: Annotated[str, typer.Option("--may", metavar="WHAT", help="read, post or calendar.")] = "read",
    crew: Annotated[str | None, typer.Option(metavar="CREW", help="With --may calendar: whose bookings.")] = None,
    days: Annotated[int, typer.Option(metavar="N", help="How many days it lasts.")] = 365,
    json_to: Json = None,
) -> None:
    """Give a token to a program, or to the calendar of a crew's phones.

    It is shown this once; the database holds only its hash.

    Example: beamslot people token "phones of Fitters 1" --may calendar --crew "Fitters 1"
    """
    from tracker.services.people.tokens import give_token

    given = give_token(context.obj, name, may, crew, days)
    show.emit(json_to, given.record(), lambda: show.tell(given.messages()))


@people.command()
def tokens(context: typer.Context, json_to: Json = None) -> None:
    """All tokens: what each is for, and until when.

    Example: beamslot people tokens
    """
    from tracker.services.people.tokens import tokens as run
    from tracker.words import ENGLISH

    found = run(context.obj)
    rows = [
        (t.number, t.name, ENGLISH.word(t.may), t.crew, t.made_by,
         *(show.moment(at, found.zone) if at else "" for at in (t.made_at, t.expires_at, t.ended_at)))
        for t in found.tokens
    ]  # fmt: skip
    columns = [">Token", "Name", "May", "?Crew", "By", "Since", "Until", "?Withdrawn"]
    show.emit(json_to, found.record(), lambda: show.table("Tokens", columns, rows))


@people.command("withdraw-token")
def withdraw_token(
    context: typer.Context,
    number: Annotated[int, typer.Argument(metavar="TOKEN", help="Its number, as `people tokens` shows it.")],
    json_to: Json = None,
) -> None:
    """Withdraw a token: it opens nothing any more.

    Example: beamslot people withdraw-token 3
    """
    from tracker.services.people.tokens import says_withdrawn, token_record
    from tracker.services.people.tokens import withdraw_token as run
    from tracker.words import ENGLISH

    done = run(context.obj, number)
    show.emit(json_to, token_record(done), lambda: show.say(ENGLISH.line(says_withdrawn(done))))


def _say(done: "Changed", json_to: str | None) -> None:
    from tracker.words import ENGLISH

    show.emit(json_to, done.record(), lambda: show.say(ENGLISH.line(done.message)))


def _password() -> str:
    """Typed twice without being seen, or the first line that comes in."""
    if sys.stdin.isatty():
        return typer.prompt("Password", hide_input=True, confirmation_prompt="The same again", err=True)
    return sys.stdin.readline().rstrip("\r\n")
