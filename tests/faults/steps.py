"""What a command does to database and files, step by step, so that it can be killed at any of them.

A step is a statement sent to the database, a transaction or connection that begins or ends, or a file that is opened for
writing, renamed or removed.
"""

import os
import signal
import sys
import time
from contextlib import suppress
from typing import Any

FILE_EVENTS = ("os.rename", "os.remove", "os.link", "os.truncate", "sqlite3.connect", "sqlite3.connect/handle")


class Steps:
    """Counts what a command does to database and files, and has it killed after one of these steps."""

    def __init__(self, kill: tuple[int, float] | None, told: int):
        self.kill, self.told, self.count = kill, told, -1

    def watch(self) -> None:
        from sqlalchemy import Engine, Pool, event

        for name in ("before_cursor_execute", "after_cursor_execute", "begin", "commit", "rollback"):
            event.listen(Engine, name, self.step)
        for name in ("connect", "close"):
            event.listen(Pool, name, self.step)
        sys.addaudithook(self.heard)

    def heard(self, name: str, arguments: tuple[Any, ...]) -> None:
        for_writing = name == "open" and isinstance(arguments[2], int) and arguments[2] & (os.O_WRONLY | os.O_RDWR)
        if for_writing or name in FILE_EVENTS:
            self.step()

    def step(self, *_: Any) -> None:
        self.count += 1
        os.pwrite(self.told, str(self.count).encode(), 0)
        if self.kill and self.count == self.kill[0]:
            kill_after(self.kill[1])


def kill_after(wait_s: float) -> None:
    """Kill this process so much later, whatever it does then."""
    if not wait_s:
        kill_now()
    this = os.pidfd_open(os.getpid())
    if not os.fork():
        time.sleep(wait_s)
        with suppress(ProcessLookupError):
            signal.pidfd_send_signal(this, signal.SIGKILL)
        os._exit(0)


def kill_now() -> None:
    os.kill(os.getpid(), signal.SIGKILL)
