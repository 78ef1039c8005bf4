"""The solver, set up so that it prints nothing, uses one thread and gives the same answer every time."""

import ctypes
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import cache

import highspy
import numpy as np
from scipy.sparse import csc_array, csr_array

from tracker.planning.model.programme import Control

INF = highspy.kHighsInf
STATUS = highspy.HighsModelStatus


def quiet(control: Control, seed: int = 0) -> highspy.Highs:
    """A silent solver that stops when the control says so."""
    _greeted()
    solver = highspy.Highs()
    for option, value in (("output_flag", False), ("threads", 1), ("random_seed", seed), ("parallel", "off")):
        solver.setOptionValue(option, value)
    solver.HandleUserInterrupt = True

    def ask(event: highspy.highs.HighsCallbackEvent) -> None:
        try:
            if control.over():
                event.interrupt()
        except KeyboardInterrupt:
            control.interrupt()
            event.interrupt()

    solver.cbSimplexInterrupt += ask
    solver.cbIpmInterrupt += ask
    solver.cbMipInterrupt += ask
    return solver


def small() -> highspy.Highs:
    """A silent solver of programmes so small that nobody would want to stop it."""
    _greeted()
    solver = highspy.Highs()
    for option, value in (("output_flag", False), ("threads", 1), ("parallel", "off"), ("presolve", "off")):
        solver.setOptionValue(option, value)
    return solver


def stop_at_bound(solver: highspy.Highs, target: float) -> None:
    """Stop an integer programme once its bound has reached the target."""

    def ask(event: highspy.highs.HighsCallbackEvent) -> None:
        if event.data_out.mip_dual_bound >= target:
            event.interrupt()

    if target < INF:
        solver.cbMipInterrupt += ask


def add_columns(solver: highspy.Highs, cost: np.ndarray, upper: np.ndarray, entries: csc_array) -> None:
    """Columns from 0 to `upper`."""
    n = cost.size
    solver.addCols(
        n, cost.astype(float), np.zeros(n), upper.astype(float), entries.nnz,
        entries.indptr[:-1].astype(np.int32), entries.indices.astype(np.int32), entries.data.astype(float),
    )  # fmt: skip


def add_rows(solver: highspy.Highs, lower: np.ndarray, upper: np.ndarray, entries: csr_array) -> None:
    """Rows; `entries` in CSR order."""
    n = upper.size
    solver.addRows(
        n, lower.astype(float), upper.astype(float), entries.nnz,
        entries.indptr[:-1].astype(np.int32), entries.indices.astype(np.int32), entries.data.astype(float),
    )  # fmt: skip


@cache
def _greeted() -> None:
    """The first solver of a process prints its licence line before it can be told not to; standard output belongs to
    what the user asked for (a plan as JSON)."""
    with _muted():
        highspy.Highs()


@contextmanager
def _muted() -> Iterator[None]:
    """Nothing that compiled code writes to standard output gets there."""
    sys.stdout.flush()
    try:
        kept, nowhere = os.dup(1), os.open(os.devnull, os.O_WRONLY)
    except OSError:
        yield
        return
    os.dup2(nowhere, 1)
    try:
        yield
    finally:
        with suppress(TypeError, OSError, AttributeError):
            ctypes.CDLL(None).fflush(None)
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)
