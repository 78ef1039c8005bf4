"""One heading from its lines: group headings spread over their columns, a last line alone where the group adds nothing."""

from dataclasses import dataclass

from tracker.intake.vocabulary.heading_forms import one_line, qualifies
from tracker.intake.vocabulary.headings import ENOUGH, match_heading
from tracker.office.sheet import Sheet


def join_headings(sheet: Sheet, top: int, bottom: int) -> dict[int, str]:
    """Column → heading text of the lines from top to bottom, group headings above several columns spread over them."""
    lines = [_spread(sheet, row, bottom) for row in range(top, bottom + 1)]
    found: dict[int, str] = {}
    for column in sorted({c for line in lines for c in line}):
        parts = [line[column] for line in lines if column in line]
        text = _joined(parts)
        if text:
            found[column] = text
    return found


@dataclass(frozen=True, slots=True)
class _Part:
    text: str
    group: bool
    """Stands above several columns."""
    merged: bool = False
    """Is one cell that reaches over them."""


def _spread(sheet: Sheet, row: int, bottom: int) -> dict[int, _Part]:
    """Column → what a heading line says there."""
    cells = {c: one_line(v) for c, v in enumerate(sheet.rows[row]) if isinstance(v, str)}
    if row == bottom:
        return {c: _Part(text, False) for c, text in cells.items()}
    wide = {(r1, c1): c2 for r1, c1, r2, c2 in sheet.merged if r1 <= row <= r2 and c2 > c1}
    below = {c for r in range(row + 1, bottom + 1) for c, v in enumerate(sheet.rows[r]) if v is not None}
    parts: dict[int, _Part] = {}
    starts = sorted(cells)
    for i, c in enumerate(starts):
        merged = until = next((c2 for (r1, c1), c2 in wide.items() if c1 == c and r1 <= row), None)
        if until is None:
            until = c
            limit = starts[i + 1] if i + 1 < len(starts) else sheet.width
            while not wide and until + 1 < limit and until + 1 in below:
                until += 1
        group = until > c
        for column in range(c, until + 1):
            parts[column] = _Part(cells[c], group, merged is not None)
    return parts


def _joined(parts: list[_Part]) -> str:
    """One heading from its lines: the last line alone where the line above is a group that adds no meaning."""
    texts = list(dict.fromkeys(part.text for part in parts))
    if len(texts) == 1:
        return texts[0]
    whole = " ".join(texts)
    if not any(part.group for part in parts[:-1]):
        return whole
    last = parts[-1].text
    if any(_divides(last, part) for part in parts[:-1]):
        return whole
    return whole if certainty(whole) > max(certainty(last) + 0.04, ENOUGH) else last


def _divides(text: str, above: _Part) -> bool:
    """Does a text below a heading that stands above several columns divide it: `nominal | actual`, `A | B | C`?"""
    if not above.group or certainty(above.text) < 0.9:
        return False
    return qualifies(text) or (certainty(text) < ENOUGH and (above.merged or len(text) <= 3))


def certainty(text: str) -> float:
    match = match_heading(text)
    return match.candidates[0].weight if match.candidates else 0.0
