"""What every command prints with: tables for a person, JSON for a program, progress on long work."""

import json
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from pathlib import Path
from typing import Annotated, Any

import typer
from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn
from rich.table import Table

from tracker.domain.formats import day, moment, money
from tracker.errors import TrackerError

Json = Annotated[
    str | None,
    typer.Option("--json", metavar="FILE", help="Write the result as JSON to FILE; - is standard output, alone."),
]
MOST_ROWS = 40

__all__ = ["MOST_ROWS", "Json", "day", "emit", "err", "interrupt", "moment", "money", "out", "progress", "say", "table"]

PIPED_WIDTH = 160
"""Columns where no terminal says its width: wide enough that no path or loom number is broken."""

out = Console(highlight=False, width=None if sys.stdout.isatty() or "COLUMNS" in os.environ else PIPED_WIDTH)
err = Console(stderr=True, highlight=False)


def say(text: str) -> None:
    """A plain line, never wrapped in the middle of a path or number."""
    out.print(text, soft_wrap=True, markup=False)


def emit(json_to: str | None, record: Any, person: Callable[[], None]) -> None:
    """JSON where it is asked for; the person's view unless JSON takes standard output."""
    if json_to:
        text = json.dumps(record, ensure_ascii=False, indent=1, default=_plain)
        if json_to == "-":
            sys.stdout.write(text + "\n")
            return
        try:
            Path(json_to).write_text(text, encoding="utf-8")
        except OSError as error:
            raise TrackerError(f"cannot write {json_to}: {error.strerror}") from error
    person()


def _plain(value: Any) -> Any:
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, frozenset | set):
        return sorted(value)
    if hasattr(value, "isoformat"):
        return value.isoformat()
    return str(value)


def table(title: str, columns: Sequence[str], rows: Iterable[Sequence[Any]], most: int = MOST_ROWS) -> None:
    """A short table; a column whose heading starts with `>` is set right. What is cut is said."""
    rows = list(rows)
    grid = Table(title=title, title_justify="left", title_style="bold", header_style="", box=None, pad_edge=False)
    for column in columns:
        grid.add_column(column.lstrip(">"), justify="right" if column.startswith(">") else "left", overflow="fold")
    for row in rows[:most]:
        grid.add_row(*("" if cell is None else str(cell) for cell in row))
    out.print(grid)
    if len(rows) > most:
        say(f"… and {len(rows) - most} more; all of them with --json FILE")


@contextmanager
def progress() -> Iterator[Callable[[str, float], None]]:
    """A progress line on standard error while the work runs; a plain line per stage where nobody watches."""
    if not err.is_terminal:
        yield lambda _text, _fraction: None
        return
    with Progress(TextColumn("{task.description}"), BarColumn(bar_width=24), TimeElapsedColumn(), console=err,
                  transient=True) as bar:  # fmt: skip
        task = bar.add_task("starting", total=1.0)
        yield lambda text, fraction: bar.update(task, description=text, completed=fraction)


@contextmanager
def interrupt(stopped: threading.Event) -> Iterator[None]:
    """Ctrl-C asks the work to stop with what it has; a second Ctrl-C ends the command at once."""

    def ask(_signal: int, _frame: Any) -> None:
        if stopped.is_set():
            raise KeyboardInterrupt
        stopped.set()
        err.print("stopping with the best found so far …")

    before = signal.signal(signal.SIGINT, ask)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
