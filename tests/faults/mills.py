"""Fresh copies of the invented mill on either database, in milliseconds."""

import shutil
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import count
from math import inf
from pathlib import Path
from time import monotonic, sleep
from typing import Any

from commands import Command, Commands, Kill, Ran
from contents import Contents, contents, engine_of
from invented_mill import AS_OF, changed_mill, whole_mill, write_book
from sqlalchemy import create_engine, text
from sqlalchemy.pool import NullPool

from tracker.store.history import touched

DATABASE = "beamslot.db"
FIRST = (
    ("load", "mill.xlsx"), ("plan", "--publish", "--as-of", AS_OF), ("plan", "--as-of", AS_OF), ("status",),
    ("kits",), ("export", "out.xlsx"), ("backup", "mill.zip"),
)  # fmt: skip
"""Loaded; plan 1 is published, plan 2 is not."""


@dataclass
class Mill:
    folder: Path
    db: str
    """Path or URL."""
    commands: Commands

    def run(self, *argv: object, kill: Kill | None = None) -> Ran:
        return self.commands.run(*argv, folder=self.folder, db=self.db, kill=kill)

    def done(self, *argv: object) -> Ran:
        ran = self.run(*argv)
        assert ran.code == 0, ran
        return ran

    def at_once(self, *commands: tuple[object, ...], kill_first: Kill | None = None) -> list[Ran]:
        """`kill_first`: when the first of them is killed."""
        kills = [kill_first, *[None] * len(commands)]
        return self.commands.at_once(
            [Command(tuple(map(str, argv)), self.folder, self.db, k) for argv, k in zip(commands, kills, strict=False)]
        )

    def wait_until_left(self) -> None:
        """A file is left when the process has ended."""

    def contents(self) -> Contents:
        self.wait_until_left()
        return contents(self.db)

    def rows(self, query: str) -> list[tuple[Any, ...]]:
        self.wait_until_left()
        with engine_of(self.db).connect() as connection:
            return [tuple(row) for row in connection.execute(text(query))]

    def in_stock(self) -> dict[str, float]:
        """Part → what the stockroom's book comes to."""
        return dict(self.rows("SELECT part, sum(quantity) FROM stock_movements GROUP BY part"))

    def check_sound(self) -> None:
        """History reads as it was written; nothing below 0 is on hand, and no more is reserved than is there."""
        self.wait_until_left()
        with engine_of(self.db).connect() as connection:
            assert touched(connection) == []
        on_hand, held = self.in_stock(), Counter[str]()
        for part, quantity in self.rows("SELECT part, quantity FROM reservations"):
            held[part] += quantity
        assert all(0 <= quantity < inf for quantity in on_hand.values()), on_hand
        assert all(on_hand[part] >= quantity > 0 for part, quantity in held.items()), (on_hand, held)


def write_books(folder: Path) -> None:
    write_book(folder / "mill.xlsx", whole_mill())
    write_book(folder / "changed.xlsx", changed_mill())


class SQLiteMills:
    """Files: copied."""

    half = 0
    """Of what is tried in turn, the default run tries one half on each kind of database, the long run all on both."""

    def __init__(self, commands: Commands, folder: Path | None = None):
        self.commands, self.folder = commands, folder or commands.folder

    @contextmanager
    def fresh(self, empty: bool = False) -> Iterator[Mill]:
        """The mill with its plan, or no database at all."""
        folder = Path(tempfile.mkdtemp(prefix="beamslot-mill-"))
        shutil.copytree(self.folder, folder, symlinks=True, dirs_exist_ok=True)
        if empty:
            (folder / DATABASE).unlink()
        try:
            yield Mill(folder, str(folder / DATABASE), self.commands)
        finally:
            shutil.rmtree(folder)


class PostgresMills(SQLiteMills):
    """Databases on one server, made by its own copying."""

    half = 1

    def __init__(self, commands: Commands, server: str):
        super().__init__(commands)
        self.server, self.numbers = server, count()
        self.engine = create_engine(server, isolation_level="AUTOCOMMIT", poolclass=NullPool)
        self._say("CREATE DATABASE mill")
        for argv in FIRST[:3]:
            Mill(self.folder, self._url("mill"), commands).done(*argv)
        self.wait_until_left("mill")

    def _url(self, name: str) -> str:
        return f"{self.server.rpartition('/')[0]}/{name}"

    def _say(self, sentence: str, **values: object) -> list[object]:
        with self.engine.connect() as connection:
            found = connection.execute(text(sentence), values)
            return list(found.scalars()) if found.returns_rows else []

    @contextmanager
    def fresh(self, empty: bool = False) -> Iterator[Mill]:
        name = f"mill_{next(self.numbers)}"
        self._say(f"CREATE DATABASE {name} TEMPLATE {'template0' if empty else 'mill'}")
        with super().fresh(empty=True) as mill:
            yield PostgresMill(mill.folder, self._url(name), self.commands, self)
        self._say(f"DROP DATABASE {name} WITH (FORCE)")

    def wait_until_left(self, name: str) -> None:
        """The server needs a moment to notice that a killed command is gone, and may yet finish what it was told."""
        until = monotonic() + 60
        while self._say("SELECT 1 FROM pg_stat_activity WHERE datname = :name", name=name):
            assert monotonic() < until, f"somebody is still connected to {name}"
            sleep(0.01)


@dataclass
class PostgresMill(Mill):
    mills: PostgresMills

    def wait_until_left(self) -> None:
        """Its contents are looked at when nobody works on it any more."""
        self.mills.wait_until_left(self.db.rpartition("/")[2])
