"""Processes of our own, started anew: they know nothing of the caller's program, and end when the caller does."""

import multiprocessing
import os
import signal
import sys
from multiprocessing.context import SpawnContext, SpawnProcess
from threading import Lock, Thread
from types import ModuleType

_STARTING = Lock()


class _Process(SpawnProcess):
    """Starts without running the caller's main program again, which may be a page of the screens."""

    def start(self) -> None:
        with _STARTING:
            main = sys.modules["__main__"]
            sys.modules["__main__"] = ModuleType("__main__")
            try:
                super().start()
            finally:
                sys.modules["__main__"] = main


class _Apart(SpawnContext):
    Process = _Process


APART = _Apart()


def settle_in() -> None:
    """First of all in a process that was started so: Ctrl-C, which reaches every process of a terminal, is left to who started
    it; once that is no more, this one ends, too."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent:
        parent.join()
        os._exit(1)
