"""kill -9 at any moment of a command that writes: the database is exactly as before it or as after it, what it writes beside
is whole or not there, and the command can be given again."""

from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from random import Random
from zipfile import ZipFile

import pytest
from commands import Kill
from contents import Contents, anything_in, difference
from forked_commands import TYPED
from invented_mill import AS_OF, CREW
from mills import Mill, SQLiteMills

SEED = 10
WHEN = ("by the clock", "at a step", "at its end")
LAST_STEPS, AT_THE_END_S = 2, 0.01
"""There a command writes for good: it commits, and gives up the connection."""
BY_HAND = ("--at", "2026-01-12T12:00", "--why", "written up at noon")

ANN = ("people", "add", "Ann", "--role", "administrator")


@dataclass(frozen=True)
class Writing:
    """A command that writes."""

    argv: tuple[str, ...]
    makes: str = ""
    """The file that it writes beside the database."""
    empty: bool = False
    """Whether it makes the database."""
    after: tuple[str, ...] = ()
    """A command that goes before it."""


@dataclass(frozen=True)
class Known:
    """What the command makes of the mill when nobody kills it."""

    before: Contents
    after: Contents
    seconds: float
    steps: int


@dataclass(frozen=True)
class Killing:
    name: str
    when: str
    share: float
    """How far along, 0 to 1."""

    def moment(self, known: Known) -> Kill:
        if self.when == "by the clock":
            return 0, self.share * known.seconds
        if self.when == "at a step":
            return int(self.share * known.steps), 0.0
        back, wait = divmod(self.share * LAST_STEPS, 1)
        return known.steps - int(back), wait * AT_THE_END_S


WRITING = {
    "first load": Writing(("load", "mill.xlsx"), empty=True),
    "load": Writing(("load", "changed.xlsx")),
    "plan": Writing(("plan", "--publish", "--as-of", AS_OF)),
    "publish": Writing(("plan", "--publish", "--number", "2", "--as-of", AS_OF)),
    "rehearse": Writing(("rehearse", "--runs", "2", "--jobs", "1", "--no-worries", "--as-of", AS_OF)),
    "record": Writing(("record", "007", "--hall", "Hall 1", "--stage", "run-in", *BY_HAND, "--crew", CREW,
                       "--started", "2026-01-12T06:00", "--minutes", "mount=50")),
    "receive": Writing(("stock", "receive", "RAIL", "2", "--order", "PO-1", *BY_HAND)),
    "order": Writing(("stock", "order", "PO-9", "RAIL", "2", "--due", "2099-01-04")),
    "issue": Writing(("stock", "issue", "007", "--hall", "Hall 1", *BY_HAND)),
    "count": Writing(("stock", "count", "NUT", "470", *BY_HAND)),
    "withdraw": Writing(("withdraw", "007", "--hall", "Hall 1", "--why", "another loom"),
                        after=("record", "007", "--hall", "Hall 1", "--stage", "in work", *BY_HAND)),
    "undo": Writing(("undo", "4"), after=("stock", "receive", "RAIL", "2", "--order", "PO-1", *BY_HAND)),
    "people add": Writing(("people", "add", "Bob", "--role", "viewer"), after=ANN),
    "people end": Writing(("people", "end", "Ann"), after=ANN),
    "reserve": Writing(("stock", "reserve", "<b>8</b>", "LAST", "1")),
    "export": Writing(("export", "out.xlsx"), makes="out.xlsx"),
    "backup": Writing(("backup", "new.zip"), makes="new.zip"),
    "restore": Writing(("restore", "mill.zip"), empty=True),
}  # fmt: skip


@pytest.mark.parametrize("tries", [6, pytest.param(300, marks=pytest.mark.long)])
def test_a_killed_command_is_done_or_not_begun(mills, tries):
    names = list(WRITING) if tries > len(WRITING) else list(WRITING)[mills.half :: 2][:tries]
    ended = mills.commands.spread(lambda name: run_to_the_end(mills, WRITING[name]), names)
    known = dict(zip(names, ended, strict=True))
    chance = Random(SEED + tries)
    killings = [Killing(names[i % len(names)], chance.choice(WHEN), chance.random()) for i in range(tries)]
    found = Counter(mills.commands.spread(lambda one: kill(mills, one, known[one.name]), killings))
    print(f"{tries} killed: {found['before']} as before, {found['after']} as after")
    # of six, where the clock decides, all may lie at one end
    assert tries == found.total() and (tries <= len(names) or (found["before"] and found["after"])), "nothing was tried"


def run_to_the_end(mills: SQLiteMills, writing: Writing) -> Known:
    with mills.fresh(writing.empty) as mill:
        begin(mill, writing)
        before = mill.contents()
        ran = mill.done(*writing.argv)
        return Known(before, mill.contents(), ran.seconds, ran.steps)


def begin(mill: Mill, writing: Writing) -> None:
    """What goes before the command, and the password that a command asks for."""
    (mill.folder / TYPED).write_text("nine warps and a rail\n")
    if writing.after:
        mill.done(*writing.after)


def kill(mills: SQLiteMills, killing: Killing, known: Known) -> str:
    """Kill a command, look at what is left, and give it again; says on which side of its writing it was killed."""
    writing = WRITING[killing.name]
    with mills.fresh(writing.empty) as mill:
        begin(mill, writing)
        ran = mill.run(*writing.argv, kill=killing.moment(known))
        what = f"{killing} of {known.seconds:.3f} s and {known.steps} steps"
        assert ran.killed, f"{what} was not killed: {ran}"
        left = mill.contents()
        assert left in (known.before, known.after) or (not anything_in(left) and writing.empty), (
            f"{what} left this.\nAgainst before:\n{difference(known.before, left)}\n"
            f"Against after:\n{difference(known.after, left)}"
        )
        if writing.makes:
            take_away_whole(mill.folder / writing.makes)
        side = "after" if left == known.after != known.before else "before"
        if side == "before":
            mill.done(*writing.argv)
            assert mill.contents() == known.after, f"{what}, given again:\n{difference(known.after, mill.contents())}"
        mill.check_sound()
        return side


def take_away_whole(made: Path) -> None:
    """What a command writes beside the database lacks nothing, where it is there."""
    if made.exists():
        with ZipFile(made) as archive:
            assert archive.testzip() is None
        made.unlink()
