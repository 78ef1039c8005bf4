"""Lines between the rows of a loom list of which no word says what they name: `North side`, `Weaving 2` (READING.md, 4).

They are asked about where they may decide which loom a row is, or what a field of it holds: where numbers start again below
them, where no hall is known, where no column is the machine type, where they say that looms are gone. Else they are told.
"""

from collections.abc import Sequence
from dataclasses import replace

from tracker.domain.findings import Severity
from tracker.intake.answers import HALL, IGNORE, READ, SECTION, Answers, Called
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort
from tracker.intake.layout.type_lines import lines_between
from tracker.intake.report import Report, answers_for, raw_text
from tracker.intake.vocabulary.dictionary import tokens, vocabulary
from tracker.intake.vocabulary.gone import says_gone
from tracker.intake.vocabulary.halls import hall_in
from tracker.intake.vocabulary.type_codes import named_type

_FIELDS = {HALL: "hall", "machine type": "machine_type", "row": "hall_row", "section": "section"}
"""Answer → what of the rows below a line it names."""
_WORDS = 4
"""Of the name of a place at most; more is a sentence."""


def settled(block: TableBlock, rows: Sequence[BodyRow], answers: Answers, report: Report) -> list[BodyRow]:
    """The rows of a loom list, those below such lines with what the answers say that they name; or a question."""
    lines = lines_between(block, rows)
    if not lines or (len(lines) > 1 and len(set(lines.values())) == 1):  # the title of each page
        return list(rows)
    said = {i: answers.section(_called(block, rows[i], text)) for i, text in lines.items() if not says_gone(text)}
    told = next((answer for answer in said.values() if answer), "")
    kept = _without_gone(block, rows, lines, answers, report)
    if told:
        return _filled_down(kept, lines, {i: answer or told for i, answer in said.items()})
    if how := _asked_since(block, kept, {i: lines[i] for i in said}, answers):
        _ask(block, rows, {i: lines[i] for i in said}, how, report)
        return [replace(row, sort=Sort.SECTION) if i in said else row for i, row in enumerate(kept)]
    names = {i for i in said if rows[i].sort is Sort.NOTE and _may_name_a_place(lines[i])}
    return [replace(row, heads_rows=True) if i in names else row for i, row in enumerate(kept)]


def _called(block: TableBlock, row: BodyRow, text: str) -> Called:
    return Called(text, block.sheet.name, (_cell(block, row),))


def _cell(block: TableBlock, row: BodyRow) -> str:
    column = next(c for c in block.columns if block.sheet.value(row.row, c) is not None)
    return block.sheet.name_of(row.row, column)


def _asked_since(block: TableBlock, rows: Sequence[BodyRow], lines: dict[int, str], answers: Answers) -> str:
    """Why the lines are to be asked about, `` where they need not be."""
    if not lines:
        return ""
    looms = [row for row in rows if row.sort is Sort.DATA]
    if block.recognised.column_of("machine_type") is None and not all(row.machine_type for row in looms):
        return "untyped"
    if _start_again(block, rows, lines):
        return "again"
    sheet = block.sheet.name
    known = (
        block.recognised.column_of("hall") is not None or any(row.hall for row in looms)
        or hall_in(sheet, alone=True) or answers.sheet(sheet) == HALL
    )  # fmt: skip
    return "" if known or not all(map(_may_name_a_place, lines.values())) else "hallless"


def _may_name_a_place(text: str) -> bool:
    """Is it short, and neither a remark (`Stand: Mai`) nor a sentence?"""
    words, notes = tokens(text), vocabulary().words["note"]
    if not 0 < len(words) <= _WORDS or any(" ".join(words[:size]) in notes for size in (1, 2)):
        return False
    return text[-1] not in ".!?" and not any(sign in text for sign in ":=")


def _ask(block: TableBlock, rows: Sequence[BodyRow], lines: dict[int, str], how: str, report: Report) -> None:
    first = min(lines)
    kinds = [HALL, "machine type"] if how == "untyped" else [HALL, IGNORE]
    if how == "untyped" and all(map(named_type, lines.values())):
        kinds.reverse()
    report.ask(
        SECTION, block.sheet, lines[first], ", ".join(_cell(block, rows[i]) for i in lines),
        answers_for(lines[first], *kinds), raw=" | ".join(lines.values()), code="section-lines", how=how,
    )  # fmt: skip


def _without_gone(
    block: TableBlock, rows: Sequence[BodyRow], lines: dict[int, str], answers: Answers, report: Report
) -> list[BodyRow]:
    """The rows; those below a line that says that they are gone asked about, left out where the answer says so."""
    found, below = [], ""
    for i, row in enumerate(rows):
        if i in lines:
            below = lines[i] if says_gone(lines[i]) else ""
            if below:
                row = replace(row, sort=Sort.SECTION, text=below)
                below = below if _left_out(block, row, answers, report) else ""
        elif row.sort is Sort.SECTION:
            below = ""
        elif below and row.sort is Sort.DATA:
            row = replace(row, sort=Sort.LEFT_OUT, text=below)
        found.append(row)
    return found


def _left_out(block: TableBlock, line: BodyRow, answers: Answers, report: Report) -> bool:
    """Are the rows below a line to be left out? Asked, or told."""
    cell = _cell(block, line)
    answer = answers.gone_below(_called(block, line, line.text))
    if answer is None:
        report.ask(
            SECTION, block.sheet, line.text, cell, answers_for(line.text, IGNORE, READ), raw=line.text, code="gone-line"
        )
    elif answer == IGNORE:
        report.whole(Severity.NOTE, "rows-left-out", block.sheet, cell, raw=line.text)
    return answer == IGNORE


def _filled_down(rows: Sequence[BodyRow], lines: dict[int, str], said: dict[int, str]) -> list[BodyRow]:
    found, below = [], {}
    for i, row in enumerate(rows):
        if i in said:
            name = _FIELDS.get(said[i])
            below = below | {name: lines[i]} if name else below
            found.append(replace(row, sort=Sort.SECTION if name else Sort.NOTE, text=lines[i]))
            continue
        if row.sort is Sort.SECTION and row.hall and not row.machine_type:
            below.pop("hall", None)  # a line that names the hall itself
        found.append(replace(row, **below) if row.sort is Sort.DATA else row)
    return found


def _start_again(block: TableBlock, rows: Sequence[BodyRow], lines: dict[int, str]) -> bool:
    """Does a loom number stand below two of the lines, in the same hall?"""
    loom, hall = (block.recognised.column_of(name) for name in ("loom", "hall"))
    seen: dict[tuple[str, str], int] = {}
    section = -1
    for i, row in enumerate(rows):
        section = i if i in lines else section
        value = block.sheet.value(row.row, loom) if loom is not None and row.sort is Sort.DATA else None
        if value is None or i in lines:
            continue
        place = raw_text(block.sheet.value(row.row, hall)) if hall is not None else row.hall or ""
        if seen.setdefault((raw_text(value), place), section) != section:
            return True
    return False
