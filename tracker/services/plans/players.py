"""Processes of this machine that play runs side by side."""

from concurrent.futures import Executor, ProcessPoolExecutor

from tracker.rehearsal.rehearsing import InThisProcess
from tracker.services.apart import APART, settle_in


def players(jobs: int) -> Executor:
    """So many processes; one plays here."""
    if jobs == 1:
        return InThisProcess()
    return ProcessPoolExecutor(jobs, mp_context=APART, initializer=settle_in)
