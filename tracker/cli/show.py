"""What every command prints with: tables for a person, JSON for a program, progress on long work."""

import os
import signal
import sys
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import tzinfo
from functools import partial
from typing import Any

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn
from rich.table import Table
from rich.text import Text

from tracker.errors import Message, NotTold, TrackerError, message
from tracker.words.formats import day, moment, money

MOST_ROWS = 40

__all__ = [
    "MOST_ROWS",
    "day",
    "emit",
    "err",
    "interrupt",
    "moment",
    "money",
    "out",
    "progress",
    "say",
    "table",
    "tell",
    "told",
]

PIPED_WIDTH = 160
"""Columns where no terminal says its width: wide enough that no path or loom number is broken."""

out = Console(highlight=False, width=None if sys.stdout.isatty() or "COLUMNS" in os.environ else PIPED_WIDTH)
err = Console(stderr=True, highlight=False)


def say(text: str) -> None:
    """A plain line, never wrapped in the middle of a path or number."""
    with told():
        out.print(text, soft_wrap=True, markup=False)


def tell(messages: Iterable[Message], zone: tzinfo | None = None) -> None:
    """A line each, with the advice of a terminal; moments in `zone`, without one as they stand."""
    from tracker.words import Speaker

    speaker = Speaker(zone=zone)
    for each in messages:
        say(speaker.line(each))


@contextmanager
def told() -> Iterator[None]:
    """Standard output that takes nothing more, as on a full disk, is NotTold; a reader that is gone stays what it is."""
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        raise NotTold("not-told", what=message("output-refused", why=error.strerror)) from error


def emit(json_to: str | None, record: Any, person: Callable[[], None]) -> None:
    """JSON where it is asked for; the person's view unless JSON takes standard output. NotTold where it cannot be written."""
    from tracker.services.json_text import json_text

    text = json_text(record) if json_to else ""
    if json_to and json_to != "-":
        from tracker.services.outputs import write_text

        try:
            write_text(json_to, text)
        except TrackerError as error:
            raise NotTold("not-told", what=error.message) from error
    if json_to == "-":
        with told():
            sys.stdout.write(text + "\n")
    else:
        person()


ANY_WIDTH = 10_000
SHORT = 24
"""Characters of a cell that is never broken: a moment, a loom number, a short name."""


def table(title: str, columns: Sequence[str], rows: Iterable[Sequence[Any]], most: int = MOST_ROWS) -> None:
    """A short table; what is cut is said.

    A column whose heading starts with `>` is set right. One that starts with `?` is left out where the terminal is too
    narrow for all, the last of them first.
    """
    rows = list(rows)
    cells = [["" if cell is None else str(cell) for cell in row] for row in rows[:most]]
    names = [column.lstrip("?>") for column in columns]
    kept = list(range(len(columns)))
    optional = [i for i in kept if columns[i].startswith("?")]
    grid = partial(_grid, columns, cells)
    while not (fits := _least(grid(kept, whole=True)) <= out.width) and optional:
        kept.remove(optional.pop())
    with told():
        out.print(Text(title, style="bold"), soft_wrap=True)
        out.print(grid(kept, whole=fits))
    if len(rows) > most:
        say(f"… and {len(rows) - most} more; all of them with --json FILE")
    if left_out := [name for i, name in enumerate(names) if i not in kept]:
        say(f"Left out for want of room: {', '.join(left_out)}. A wider terminal and --json FILE have them.")


def _least(grid: Table) -> int:
    """How narrow it can be, be there room or not."""
    return out.measure(grid, options=out.options.update(max_width=ANY_WIDTH)).minimum


def _grid(columns: Sequence[str], cells: Sequence[Sequence[str]], kept: Sequence[int], whole: bool) -> Table:
    """The columns `kept`; `whole`: none narrower than its longest word and its short cells, where there is room for that."""
    grid = Table(header_style="", box=None, pad_edge=False)
    for i in kept:
        name = columns[i].lstrip("?>")
        texts = [name, *(row[i] for row in cells)]
        least = max(
            [*(len(word) for text in texts for word in text.split()), *(min(len(row[i]), SHORT) for row in cells)]
        )
        grid.add_column(
            Text(name),
            justify="right" if ">" in columns[i][:2] else "left",
            overflow="fold",
            min_width=least if whole else None,
        )
    for row in cells:
        grid.add_row(*(Text(row[i]) for i in kept))
    return grid


@contextmanager
def progress() -> Iterator[Callable[[str | Message, float], None]]:
    """A progress line on standard error while the work runs; a plain line per stage where nobody watches."""
    if not err.is_terminal:
        yield lambda _text, _fraction: None
        return
    from tracker.words import ENGLISH

    with Progress(TextColumn("{task.description}"), BarColumn(bar_width=24), TimeElapsedColumn(), console=err,
                  transient=True) as bar:  # fmt: skip
        task = bar.add_task("starting", total=1.0)
        furthest = 0.0

        def tell(what: str | Message, fraction: float) -> None:
            nonlocal furthest
            furthest = max(furthest, fraction)  # a search may find that it is not as far as it thought
            text = ENGLISH.say(what) if isinstance(what, Message) else what
            bar.update(task, description=text, completed=furthest)

        yield tell


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


def late(found, zone) -> None:
    """What is late, where something is."""
    from tracker.domain.late import shortened
    from tracker.words import ENGLISH

    if found:
        shown, more = shortened(found)
        rows = [(moment(one.due, zone), one.days, ENGLISH.say(one.what), ENGLISH.say(one.follows)) for one in shown]
        table("Late", ["Since", ">Days", "What", "What follows"], rows)
        tell([more] if more else [])
