"""Tables as HTML: every cell whole, numbers with units, a click on a heading sorts naturally."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any
from urllib.parse import urlencode

from dashboards.speaking import SPEAKER, say
from tracker.domain.mill import LoomKey
from tracker.domain.progress import Stage
from tracker.domain.words import natural_key
from tracker.services.screens.status import STAGE_ORDER, TO_SURVEY

KIT_WORDS = {"issued": "kit-issued", "complete": "kit-complete", "reserved": "kit-reserved", "short": "kit-short"}

DAY = re.compile(r"\b[A-Z][a-z]{1,2}\.? \d{1,2}\.? [A-Z][a-zä]{2,3}\.? \d{4}\b")
"""A day, in English or German; where a column is narrow the text may break before and after it, not within."""


MOST_ROWS = 200
"""That a table sends to the browser at a time."""


REACH = ' tabindex="0"'
"""For the keyboard: a table that is wider than its place is moved by its arrows, once a heading or the table itself is reached."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What a cell shows, and what it is sorted by (the text, naturally, where nothing is given)."""

    text: str
    sort: Any = None
    href: str = ""


Row = Sequence[Cell | str]


@dataclass(frozen=True, slots=True)
class Head:
    heading: str
    right: bool = False
    """Numbers stand on the right."""
    whole: bool = False
    """Not broken into two lines, but between the day and the time on narrow screens."""


class RowsAsShown(Sequence[Row]):
    """Rows that are only written when they are shown: of a long table most are not."""

    def __init__(self, items: Sequence[Any], row: Callable[[Any], Row]):
        self._items, self._row = items, row

    def __len__(self) -> int:
        return len(self._items)

    def __getitem__(self, which: Any) -> Any:
        return [*map(self._row, self._items[which])] if isinstance(which, slice) else self._row(self._items[which])


def facts_html(facts: Iterable[tuple[str, str]]) -> str:
    """Names and their values, in the order given."""
    rows = "".join(f'<tr><td>{escape(name)}</td><td class="right">{escape(value)}</td></tr>' for name, value in facts)
    return f'<div class="sheet facts"{REACH}><table><tbody>{rows}</tbody></table></div>'


def table_html(columns: Sequence[Head], rows: Sequence[Row], sorts: bool = True) -> str:
    """The table. Texts are escaped; an empty cell sorts last. `sorts` False: the rows keep their order."""
    cells = [[cell if isinstance(cell, Cell) else Cell(cell) for cell in row] for row in rows]
    ranks = [_ranks([row[i] for row in cells]) for i in range(len(columns))]
    reach, apart = (REACH, "") if sorts else ("", REACH)
    head = "".join(f'<th{reach} scope="col"{_style(column)}>{escape(column.heading)}</th>' for column in columns)
    body = "".join(
        "<tr>" + "".join(_td(columns[i], cell, ranks[i][r]) for i, cell in enumerate(row)) + "</tr>"
        for r, row in enumerate(cells)
    )
    kind = "sheet" if sorts else "sheet facts"
    return f'<div class="{kind}"{apart}><table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table></div>'


def in_order(rows: Sequence[Row], column: int, down: bool) -> list[Row]:
    """The rows as a click on a heading orders them, for a table of which only a part is in the browser."""
    ranks = _ranks([cell if isinstance(cell, Cell) else Cell(cell) for cell in (row[column] for row in rows)])
    order = sorted(range(len(rows)), key=lambda i: -ranks[i] if down else ranks[i])
    return [rows[i] for i in order]


def part_of(rows: Sequence[Row], page: int) -> tuple[int, Sequence[Row]]:
    """The rows of a page, from 1 on, and how many stand before them; of the last page where there are fewer."""
    before = MOST_ROWS * min(max(page, 1) - 1, max(0, len(rows) - 1) // MOST_ROWS)
    return before, rows[before : before + MOST_ROWS]


def loom_cell(key: LoomKey) -> Cell:
    """The loom number, leading to the loom's own screen."""
    return Cell(key.loom, key.sort_key, "looms?" + urlencode({"loom": key.loom, "hall": key.hall}))


def stage_cell(stage: str) -> Cell:
    """The stage, sorted in the order of the programme."""
    return Cell(stage_word(stage), STAGE_ORDER.index(stage))


STAGE_SIGNS = {
    TO_SURVEY: "?", Stage.SURVEYED.value: "·", Stage.SCOPED.value: "○", Stage.BOOKED.value: "◔", Stage.KITTED.value: "◑",
    Stage.IN_WORK.value: "▶", Stage.RUN_IN.value: "◕", Stage.SIGNED_OFF.value: "●", Stage.STOPPED.value: "■",
    Stage.PUT_OFF.value: "‖", Stage.LEFT_OUT.value: "×",
}  # fmt: skip
"""A shape beside the word of each stage."""


def stage_word(stage: str) -> str:
    """The word of a stage, or that the loom is still to be surveyed."""
    return say("stage-to-survey") if stage == TO_SURVEY else SPEAKER.word(Stage(stage))


def _style(column: Head) -> str:
    names = [name for name in ("right", "whole") if getattr(column, name)]
    return f' class="{" ".join(names)}"' if names else ""


def _td(column: Head, cell: Cell, rank: int) -> str:
    text = DAY.sub(r"<span>\g<0></span>", escape(cell.text))
    if cell.href:
        text = f'<a href="{escape(cell.href)}" target="_self">{text}</a>'
    return f'<td{_style(column)} data-rank="{rank}">{text}</td>'


def _ranks(cells: Sequence[Cell]) -> list[int]:
    """Place of each cell in its column's order; equals share one."""
    keys = [(not cell.text, natural_key(cell.text) if cell.sort is None else cell.sort) for cell in cells]
    filled = sorted({key for key in keys if not key[0]})
    place = {key: i for i, key in enumerate(filled)}
    return [place.get(key, len(filled)) for key in keys]


SORTING = """
<script>
if (!window.sortsSheets) {
  window.sortsSheets = true;
  const sort = th => {
    const table = th.closest("table"), body = table.tBodies[0], i = th.cellIndex;
    const down = th.getAttribute("aria-sort") === "ascending";
    for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
    th.setAttribute("aria-sort", down ? "descending" : "ascending");
    const rank = row => Number(row.cells[i].dataset.rank);
    [...body.rows].sort((a, b) => down ? rank(b) - rank(a) : rank(a) - rank(b)).forEach(row => body.append(row));
  };
  const heading = event => event.target.closest && event.target.closest(".sheet:not(.facts) th");
  document.addEventListener("click", event => { if (heading(event)) sort(heading(event)); });
  document.addEventListener("keydown", event => { if (event.key === "Enter" && heading(event)) sort(heading(event)); });
}
</script>
"""
"""Once a page: lets the headings of all tables sort by the ranks that were worked out here."""
