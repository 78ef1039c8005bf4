"""Processes of this machine that play runs side by side."""

import signal
import sys
from concurrent.futures import Executor, ProcessPoolExecutor
from multiprocessing.context import SpawnContext, SpawnProcess
from types import ModuleType

from tracker.rehearsal.rehearsing import InThisProcess


def players(jobs: int) -> Executor:
    """So many processes; one plays here."""
    if jobs == 1:
        return InThisProcess()
    return ProcessPoolExecutor(jobs, mp_context=_Apart(), initializer=_leave_the_stop_to_the_command)


class _Player(SpawnProcess):
    """Starts without running the caller's main program again, which may be a page of the screens."""

    def start(self) -> None:
        main = sys.modules["__main__"]
        sys.modules["__main__"] = ModuleType("__main__")
        try:
            super().start()
        finally:
            sys.modules["__main__"] = main


class _Apart(SpawnContext):
    Process = _Player


def _leave_the_stop_to_the_command() -> None:
    """Ctrl-C reaches every process of a terminal; the command asks for the end and keeps what is done."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
