"""What every command prints with: tables for a person, JSON for a program, progress on long work."""

import json
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime, tzinfo
from typing import Any

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn
from rich.table import Table
from rich.text import Text

from tracker.domain.formats import day, moment, money
from tracker.errors import Message, NotTold, TrackerError, message

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
    text = json.dumps(record, ensure_ascii=False, indent=1, default=_plain, allow_nan=False) if json_to else ""
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


def _plain(value: Any) -> Any:
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, frozenset | set):
        return sorted(value)
    if hasattr(value, "isoformat"):
        return value.isoformat()
    return str(value)


GAP = 2
SHORT = 24
"""Characters of a cell that is never broken: a moment, a loom number, a short name."""


def table(title: str, columns: Sequence[str], rows: Iterable[Sequence[Any]], most: int = MOST_ROWS) -> None:
    """A short table; what is cut is said.

    A column whose heading starts with `>` is set right. One that starts with `?` is left out where the terminal is too
    narrow for all, the last of them first.
    """
    rows = list(rows)
    cells = [["" if cell is None else str(cell) for cell in row] for row in rows[:most]]
    kept = _fitting(columns, cells)
    names = [column.lstrip("?>") for column in columns]
    grid = Table(header_style="", box=None, pad_edge=False)
    for i, width in kept.items():
        grid.add_column(
            Text(names[i]), justify="right" if ">" in columns[i][:2] else "left", overflow="fold", width=width
        )
    for row in cells:
        grid.add_row(*(Text(row[i]) for i in kept))
    with told():
        out.print(Text(title, style="bold"), soft_wrap=True)
        out.print(grid)
    if len(rows) > most:
        say(f"… and {len(rows) - most} more; all of them with --json FILE")
    if left_out := [name for i, name in enumerate(names) if i not in kept]:
        say(f"Left out for want of room: {', '.join(left_out)}. A wider terminal and --json FILE have them.")


def _fitting(columns: Sequence[str], cells: Sequence[Sequence[str]]) -> dict[int, int]:
    """Column → its width. Texts longer than `SHORT` are broken between words, the longest most."""
    natural = [max([len(column.lstrip("?>")), *(len(row[i]) for row in cells)]) for i, column in enumerate(columns)]
    words = [_longest_word(column.lstrip("?>"), [row[i] for row in cells]) for i, column in enumerate(columns)]
    least = [max([words[i], *(min(len(row[i]), SHORT) for row in cells)]) for i in range(len(columns))]
    kept = list(range(len(columns)))
    optional = [i for i in kept if columns[i].startswith("?")]
    while _room(kept, least) < 0 and optional:
        kept.remove(optional.pop())
    _shrink(kept, least, [max(1, width // 2) for width in least], words)
    _shrink(kept, least, [1] * len(least), words)
    room, wish = max(0, _room(kept, least)), sum(natural[i] - least[i] for i in kept)
    share = min(1.0, room / wish) if wish else 0.0
    return {i: least[i] + int((natural[i] - least[i]) * share) for i in kept}


def _shrink(kept: Sequence[int], widths: list[int], floors: Sequence[int], words: Sequence[int]) -> None:
    """Make columns narrower until all fit, those first that have most to give; no column below its floor or its longest
    word."""
    give = {i: max(0, widths[i] - max(floors[i], words[i])) for i in kept}
    for i in sorted(kept, key=lambda i: -give[i]):
        widths[i] -= min(give[i], max(0, -_room(kept, widths)))


def _room(kept: Sequence[int], widths: Sequence[int]) -> int:
    return out.width - sum(widths[i] for i in kept) - GAP * (len(kept) - 1)


def _longest_word(heading: str, texts: Sequence[str]) -> int:
    return max((len(word) for text in (heading, *texts) for word in text.split()), default=1)


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
