"""Odd command lines end in one line of words, with an exit code of ours; refused, they change nothing, and what is not ours
to write is never written."""

import shutil
import sqlite3
from collections import Counter
from contextlib import closing
from hashlib import sha256
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from commands import Command, Ran
from contents import Contents, contents, difference
from invented_mill import rows_of, write_book
from mills import DATABASE, Mill, SQLiteMills
from odd_lines import SECRET, commands, odd_line

SEED = 12
ENTRIES = (
    "receive", "order", "expect", "issue", "return", "scrap", "recover", "adjust", "count", "reserve", "release", "take",
)  # fmt: skip
WRITES = {
    ("demo",),
    ("load",),
    ("plan",),
    ("record",),
    ("rehearse",),
    ("restore",),
    ("settings",),
    *(("people", change) for change in ("add", "roles", "password", "provider", "end", "token", "withdraw-token")),
    ("undo",),
    ("withdraw",),
    *(("stock", entry) for entry in ENTRIES),
}
"""Commands that may change the mill."""
OURS = {DATABASE, "out.xlsx", "mill.zip"}
"""Of the files that are there, those that a command without --force may write."""
DONE = (0, 3)
"""3 says that it was done and could not be told."""
ROOM_BYTES = (1_000, 5_000, 20_000, 60_000)

Tree = dict[str, str]
"""Path in the folder → what is there."""


@pytest.fixture(scope="module")
def odd_mills(sqlite, tmp_path_factory):
    """The mill in a folder with all that a command might trip over."""
    folder = tmp_path_factory.mktemp("odd")
    shutil.copytree(sqlite.folder, folder, dirs_exist_ok=True)
    write_book(folder / "filled.xlsx", {"Looms": rows_of("looms", [{"loom": "1", "hall": "A", "machine_type": "AJ"}])})
    (folder / "broken.xlsx").write_bytes((folder / "filled.xlsx").read_bytes()[:-200])
    (folder / "list.csv").write_text("Loom;Hall;Machine type\n1;A;AJ\n")
    (folder / "as-if.toml").write_text('[heads]\n"F\'1" = 3\n')
    (folder / "sub").mkdir()
    (folder / "sub/kept.txt").write_text("kept")
    with closing(sqlite3.connect(folder / "foreign.db")) as connection:
        connection.execute("CREATE TABLE looms (loom TEXT)")
    (folder / "empty.db").touch()
    (folder / "one.db").write_bytes(b"\n")
    for name, to in (("link.xlsx", "filled.xlsx"), ("link.db", "foreign.db"), ("dangling.xlsx", "nowhere.xlsx")):
        (folder / name).symlink_to(to)
    return SQLiteMills(sqlite.commands, folder)


@pytest.mark.parametrize("tries", [25, pytest.param(1500, marks=pytest.mark.long)])
def test_odd_command_lines_are_answered_and_refused_ones_change_nothing(odd_mills, tries):
    known = commands()
    with odd_mills.fresh() as mill:
        before, held = tree(mill.folder), mill.contents()

    def answer(number: int) -> int:
        chance = Random(SEED * tries + number)
        room_bytes = chance.choice(ROOM_BYTES) if chance.random() < 0.06 else None
        argv = odd_line(known, chance)
        with odd_mills.fresh() as mill:
            ran = odd_mills.commands.at_once([Command(argv, mill.folder, DATABASE, room_bytes=room_bytes)])[0]
            try:
                check_words(ran)
                check_written(ran, mill, before, held)
            except Exception as error:
                error.add_note(f"room for {room_bytes} bytes: {ran}")
                raise
        return ran.code

    codes = Counter(odd_mills.commands.spread(answer, range(tries)))
    print(f"{tries} lines: {codes[0]} done, {codes[1]} refused, {codes[2]} wrong use")
    assert min(codes[code] for code in (0, 1, 2)) > tries / 20, "too few of one kind to say anything"


def tree(folder: Path) -> Tree:
    """What stands in a folder, but for the files that SQLite keeps beside a database: what they hold is its contents."""
    found = {}
    for path in sorted(folder.rglob("*")):
        name = str(path.relative_to(folder))
        if path.is_symlink():
            found[name] = f"-> {path.readlink()}"
        elif not name.endswith(("-wal", "-shm")):
            found[name] = "folder" if path.is_dir() else sha256(path.read_bytes()).hexdigest()
    return found


def check_words(ran: Ran) -> None:
    said = ran.out + ran.err
    assert ran.code in (*DONE, 1, 2), "no exit code of ours"
    assert "Traceback" not in said and SECRET not in said
    if ran.code == 1 and ran.command != ("verify",):
        assert len(ran.lines) == 1 and ran.err.count("\n") == 1, "a refusal is one line"
    if ran.code == 2:
        assert ran.err.strip(), "wrong use is told"


def check_written(ran: Ran, mill: Mill, before: Tree, held: Contents) -> None:
    after = tree(mill.folder)
    changed = {name for name in before | after if before.get(name) != after.get(name)}
    if ran.code in DONE and ran.command in WRITES:
        assert mill.contents()  # the file is sound
        mill.check_sound()
    elif DATABASE in changed or Path(f"{mill.db}-wal").exists():
        assert mill.contents() == held, f"the mill was changed:\n{difference(held, mill.contents())}"
        changed.discard(DATABASE)
    if ran.code in DONE:
        assert "--force" in ran.argv or not changed & before.keys() - OURS, f"written over: {changed & before.keys()}"
    else:
        made = {name for name in changed - before.keys() if name in told(ran) or is_empty_database(mill.folder / name)}
        assert not changed - made, f"refused, and yet written: {changed}"


def told(ran: Ran) -> set[str]:
    """Files in which a load or a check tells why it refuses: they were asked for."""
    if ran.command not in (("load",), ("verify",)):
        return set()
    return {name for option, name in pairwise(ran.argv) if option in ("--json", "--marked")}


def is_empty_database(path: Path) -> bool:
    """A first load that finds the disk full leaves a database without a table: whoever took it away again could take away
    what another has begun in it meanwhile."""
    return path.suffix == ".db" and contents(str(path)) == {}
