"""Rows with figures that are no looms though no word says so: least and most of a column, counts of looms by type."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from tracker.domain.words import fold
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort
from tracker.intake.report import raw_text
from tracker.intake.vocabulary.own_headings import is_own_name, own_fields

_FEW = 0.6
"""Share of the cells of a usual row that such a row fills at most."""


def without_sums(block: TableBlock, rows: Sequence[BodyRow]) -> list[BodyRow]:
    """The rows of a loom list; those that only sum up are totals."""
    kind, loom = (block.recognised.column_of(name) for name in ("machine_type", "loom"))
    if kind is None or loom is None or _is_ours(block):
        return list(rows)
    cells = {i: _cells(block, row) for i, row in enumerate(rows) if row.sort is Sort.DATA}
    usual = Counter(map(len, cells.values())).most_common(1)[0][0] if cells else 0
    full = [one for one in cells.values() if len(one) > _FEW * usual]
    types = Counter(fold(one[kind]) for one in full if isinstance(one.get(kind), str))
    seen = {c: Counter(fold(one[c]) for one in full if c in one) for c in block.columns}
    return [
        replace(row, sort=Sort.TOTAL, text=" | ".join(map(raw_text, cells[i].values()))[:120])
        if i in cells and (_counts(cells[i], kind, types, _FEW * usual) or _sums(cells[i], kind, loom, seen))
        else row
        for i, row in enumerate(rows)
    ]


def _is_ours(block: TableBlock) -> bool:
    """Is it a sheet of our own template or export? Its rows are what they are, whatever words they hold."""
    table = block.recognised.table
    ours = own_fields(table, block.headings)
    in_our_words = all(ours.get(c) == m.field for c, m in block.recognised.meanings.items())
    return in_our_words and is_own_name(table, block.sheet.name)


def _cells(block: TableBlock, row: BodyRow) -> dict[int, Any]:
    line = block.sheet.rows[row.row]
    return {c: line[c] for c in block.columns if c < len(line) and line[c] is not None}


def _counts(cells: dict[int, Any], kind: int, types: Counter[str], most: float) -> bool:
    """`AJ-190 | Shed 1 | 12`: a machine type of the list where another value belongs, and none where the type belongs (what
    stands there stands in no other row)."""
    elsewhere = any(c != kind and isinstance(v, str) and fold(v) in types for c, v in cells.items())
    return elsewhere and len(cells) <= max(most, 3) and types[fold(cells.get(kind, ""))] < 2


def _sums(cells: dict[int, Any], kind: int, loom: int, seen: dict[int, Counter[str]]) -> bool:
    """`Min | 150 | 340 | 82`: one word that stands nowhere else in its column, and figures; neither number nor type."""
    words = [(c, v) for c, v in cells.items() if isinstance(v, str) and not _is_figure(v)]
    if len(words) != 1 or len(cells) < 2:
        return False
    c, word = words[0]
    return (
        not any(sign.isdigit() for sign in word)
        and seen[c][fold(word)] < 2
        and (kind not in cells or kind == c)
        and (loom not in cells or loom == c)
        and not (c == loom and _are_words(seen[loom]))
    )


def _are_words(numbers: Counter[str]) -> bool:
    """Are the looms called by words?"""
    return sum(not any(sign.isdigit() for sign in one) for one in numbers) * 2 > len(numbers)


def _is_figure(text: str) -> bool:
    return any(sign.isdigit() for sign in text) and not any(sign.isalpha() for sign in text)
