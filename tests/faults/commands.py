"""Run `beamslot` many times: one at a time, several at once, or killed on the way (`forked_commands`)."""

import json
import os
import socket
import subprocess
import sys
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue
from typing import Any, TextIO

FORKS = Path(__file__).with_name("forked_commands.py")
WORKERS = 2
TIMEOUT_S = 120
MOST_FAILURES = 12

Kill = tuple[int, float]
"""A step, and the seconds after it: see `forked_commands`."""


@dataclass(frozen=True)
class Ran:
    argv: tuple[str, ...]
    code: int
    """Below 0 where a signal ended it."""
    out: str
    err: str
    seconds: float
    steps: int

    @property
    def killed(self) -> bool:
        return self.code == -9

    @property
    def command(self) -> tuple[str, ...]:
        """Its name: `stock issue`."""
        words = self.argv[2:] if self.argv[:1] == ("--db",) else self.argv
        return words[: 2 if words[:1] in (("stock",), ("people",)) else 1]

    @property
    def lines(self) -> list[str]:
        """What it says of a refusal."""
        return [line for line in self.err.splitlines() if line.startswith("beamslot: ")]

    def __str__(self) -> str:
        typed = " ".join(repr(word) if len(word) < 200 else f"{word[:200]!r}… ({len(word)})" for word in self.argv)
        return f"beamslot {typed} ended with {self.code}\n{self.out[-1500:]}{self.err[-3000:]}"


@dataclass(frozen=True)
class Command:
    argv: tuple[str, ...]
    folder: Path
    db: str
    kill: Kill | None = None
    room_bytes: int | None = None

    def asked(self) -> dict[str, Any]:
        env = {"BEAMSLOT_DB": self.db, "BEAMSLOT_USER": "planner"}
        return {"argv": list(self.argv), "folder": str(self.folder), "env": env, "kill": self.kill,
                "room_bytes": self.room_bytes}  # fmt: skip


class Commands:
    """The process that runs commands in forks of itself, by several workers; a thread that asks is given one of them."""

    def __init__(self, first: Sequence[Sequence[str]], folder: Path) -> None:
        """`first` is run in the folder before all others."""
        self.folder = folder
        ours, theirs = zip(*(socket.socketpair() for _ in range(WORKERS)), strict=True)
        sockets = [end.fileno() for end in theirs]
        env = os.environ | {
            "PYTHONPATH": os.pathsep.join(sys.path), "PYTHONHASHSEED": "0",
            "COLUMNS": "160", "OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1",
        }  # fmt: skip
        command = [sys.executable, str(FORKS), json.dumps(sockets), json.dumps(first)]
        self.process = subprocess.Popen(command, pass_fds=sockets, env=env, cwd=folder)
        self.lines = [end.makefile("rw") for end in ours]
        self.idle: SimpleQueue[TextIO] = SimpleQueue()
        for line in self.lines:
            self.idle.put(line)
        for end in (*ours, *theirs):
            end.close()

    def run(self, *argv: object, folder: Path, db: str, kill: Kill | None = None) -> Ran:
        return self.at_once([Command(tuple(map(str, argv)), folder, db, kill)])[0]

    def at_once(self, commands: Sequence[Command]) -> list[Ran]:
        """All of them, started together."""
        asked = {"commands": [command.asked() for command in commands], "timeout_s": TIMEOUT_S}
        line = self.idle.get()
        try:
            line.write(json.dumps(asked) + "\n")
            line.flush()
            answered = line.readline()
        finally:
            self.idle.put(line)
        assert answered, "the process that runs commands has ended; above is why"
        answers = json.loads(answered)
        return [Ran(command.argv, **answer) for command, answer in zip(commands, answers, strict=True)]

    def spread(self, act: Callable[[Any], Any], over: Sequence[Any]) -> list[Any]:
        """`act` for each, as many at a time as there are workers."""
        with ThreadPoolExecutor(WORKERS) as threads:
            tried = [threads.submit(act, one) for one in over]
        failed = [(error, one) for done, one in zip(tried, over, strict=True) if (error := done.exception())]
        for error, one in failed:
            error.add_note(f"tried with {one}")
        if failed:
            raise ExceptionGroup(
                f"{len(failed)} of {len(tried)} failed", [error for error, _ in failed[:MOST_FAILURES]]
            )
        return [one.result() for one in tried]

    def close(self) -> None:
        for line in self.lines:
            line.close()
        self.process.wait(60)
