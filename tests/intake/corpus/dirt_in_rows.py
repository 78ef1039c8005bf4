"""Rows of a sheet that are no looms: sums, notes, counts by type, signatures; and rows that are hidden."""

from statistics import fmean
from typing import Any

from .draft import Draft, Question
from .sheets import Cell, Row, Sheet, row_of

NUMBERS = ("reed_width_cm", "frames", "speed_ppm", "efficiency")


def _list_sheet(draft: Draft) -> Sheet:
    """The sheet whose columns run straight down."""
    return next(sheet for sheet in draft.sheets if sheet.columns)


def _values(draft: Draft, name: str) -> list[float]:
    found = [draft.cells.get((key, name)) for key in draft.keys]
    return [value for value in found if isinstance(value, int | float)]


def _row(sheet: Sheet, word: Any, values: dict[str, Any]) -> Row:
    """A row with a word in its first column and a value in some others."""
    row: Row = [Cell(values[name]) if name in values and values[name] is not None else None for name in sheet.columns]
    first = next(i for i, name in enumerate(sheet.columns) if name)
    row[first] = Cell(word, ("below", word))
    return row


def total(draft: Draft) -> None:
    """How many looms, and the averages, directly below the list."""
    sheet = _list_sheet(draft)
    means = {name: round(fmean(values), 1) for name in NUMBERS if (values := _values(draft, name))}
    sheet.rows.append(_row(sheet, draft.words["total"], {sheet.columns[1]: len(draft.truth.looms), **means}))


def total_above(draft: Draft) -> None:
    """The sum directly below the headings."""
    total(draft)
    sheet = _list_sheet(draft)
    at = next(
        r for r, row in enumerate(sheet.rows) if any(cell and cell.tag == (draft.keys[0], "loom") for cell in row)
    )
    sheet.rows.insert(at, sheet.rows.pop())
    sheet.merged = [_moved(area, at - 1) for area in sheet.merged]


def low_high_count(draft: Draft) -> None:
    """`Min`, `Max` and `n` below the list."""
    sheet = _list_sheet(draft)
    for word, of in zip(draft.words["low_high_count"], (min, max, len), strict=True):
        sheet.rows.append(_row(sheet, word, {name: of(v) for name in NUMBERS if (v := _values(draft, name))}))


def averages_after_a_blank(draft: Draft) -> None:
    sheet = _list_sheet(draft)
    means = {name: round(fmean(values), 1) for name in NUMBERS if (values := _values(draft, name))}
    sheet.rows += [[], _row(sheet, draft.words["mean"], means)]


def count_by_type(draft: Draft) -> None:
    """`AJ-190 | Shed 1 | 12`: how many looms of a type, below the list; no looms."""
    sheet = _list_sheet(draft)
    kinds: dict[tuple[str, str], int] = {}
    for loom in draft.truth.looms:
        kind = (loom["machine_type"], draft.words["hall"].format(1))
        kinds[kind] = kinds.get(kind, 0) + 1
    sheet.rows.append([])
    tags = []
    for (kind, hall), count in kinds.items():
        tags.append(("count", kind))
        sheet.rows.append([Cell(kind, ("count", kind)), Cell(hall), Cell(count)])
    spelt = tuple(((tag, answer),) for tag in tags[:1] for answer in ("ignore", "leave out"))
    draft.truth.questions.append(Question("are these looms?", tuple(tags), spelt, required=False))


def notes_below(draft: Draft) -> None:
    """A footnote, who checked the list and the number of the page."""
    sheet = _list_sheet(draft)
    words = draft.words
    sheet.rows += [
        [],
        row_of([words["star"]]),
        row_of([words["checked"], None, "03.11.2026"]),
        row_of([words["page"].format(1, 1)]),
    ]


def sums_between(draft: Draft) -> None:
    """A sum after the first half of the looms."""
    sheet = _list_sheet(draft)
    half = draft.keys[: len(draft.keys) // 2]
    at = next(r for r, row in enumerate(sheet.rows) if any(cell and cell.tag == (half[-1], "loom") for cell in row))
    sheet.rows.insert(at + 1, _row(sheet, draft.words["total"], {sheet.columns[1]: len(half)}))
    sheet.merged = [_moved(area, at) for area in sheet.merged]


def _moved(area: tuple[int, int, int, int], at: int) -> tuple[int, int, int, int]:
    r1, c1, r2, c2 = area
    return (r1 + (r1 > at), c1, r2 + (r2 > at), c2)


def hidden_rows(draft: Draft) -> None:
    """A filter hides some looms; they are looms like any other."""
    sheet = _list_sheet(draft)
    hidden = set(draft.rng.sample(draft.keys[1:], 3))
    for r, row in enumerate(sheet.rows):
        if any(cell and isinstance(cell.tag, tuple) and cell.tag[0] in hidden for cell in row):
            sheet.hidden_rows.add(r)


IN_ROWS = {
    "a total": total,
    "a total above": total_above,
    "least, most and count": low_high_count,
    "averages after a blank line": averages_after_a_blank,
    "a count by type": count_by_type,
    "notes below": notes_below,
    "sums between": sums_between,
    "hidden rows": hidden_rows,
}
