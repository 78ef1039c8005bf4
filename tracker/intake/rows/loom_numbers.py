"""Which loom a number means: marks that do not belong to it, several looms in one cell, one loom in two spellings.

READING.md, section 5. A loom is never merged with another, nor made of nothing, without a question.
"""

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from tracker.domain.findings import Choice, Severity
from tracker.domain.words import fold
from tracker.intake.answers import AS_WRITTEN, EACH, Answers
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.layout.body import shape
from tracker.intake.report import Report
from tracker.intake.rows.several_looms import each_of, less_those_of_several, stands_for_several

_MARKS = re.compile(r"^[\s'’‘`´\"*]+|[\s*†‡§°¹²³'’`´\"]+\)?$")
_TEXT_SIGN = re.compile(r"['’‘`´](?=\w+(?:\W\w+)*$)")
_BETWEEN = re.compile(
    r"\s*(?:[-–—~/,;+&]|\.{2,}|…|至|到|和|、)\s*|\s+(?:to|bis|à|a|al|au|até|hasta|ile|und|and|et|ve|e|y)\s+",
    re.IGNORECASE,
)
_WITH_WORDS = re.compile(r"(.*?\d\S*?)\s*(?:[(\[（].*[)\]）]|\s[^\W\d_]+\.?(?:\s.*)?)")
_WORDS_BEFORE = re.compile(r"(?:[^\W\d_]{2,}\.?\s+)+(\S*\d\S*)")
_USUAL = 0.3
"""Share of the numbers that have a shape, from which on it is one of the list's own."""


@dataclass(slots=True)
class _Column:
    """The loom numbers of one table."""

    reading: TableReading
    column: int
    answers: Answers
    report: Report

    @property
    def texts(self) -> dict[int, str]:
        """Index of the row → its loom number."""
        values = self.reading.values[self.column]
        return {i: v for i, v in enumerate(values) if isinstance(v, str) and v and i not in self.reading.refused}

    def text(self, i: int) -> Any:
        """The loom number of a row; looked up alone, for a list may have many thousands."""
        return self.reading.values[self.column][i]

    def cell(self, i: int) -> str:
        return self.reading.block.sheet.name_of(self.reading.rows[i].row, self.column)

    def ask(self, rows: list[int], subject: str, choices: Iterable[str], code: str, **params: Any) -> str | None:
        """The answer about the numbers of some rows; None where it is open still, and asked."""
        block, offered = self.reading.block, list(choices)
        cells = [self.cell(i) for i in rows]
        found = self.answers.number(block.called(self.column), cells, subject, offered)
        if found is None:
            options = [Choice(cells[-1], one) for one in (*offered, AS_WRITTEN)]
            self.report.whole(Severity.DOUBT, code, block.sheet, ", ".join(cells), choices=options, raw=subject,
                              heading=block.headings[self.column], **params)  # fmt: skip
        return found


def settle_numbers(
    readings: Iterable[TableReading], halls: Mapping[tuple[int, int], str], answers: Answers, report: Report
) -> None:
    """Settle the loom numbers of the loom lists. `halls`: (id of the reading, row index) → hall."""
    columns = [
        _Column(reading, c, answers, report)
        for reading in readings
        if (c := reading.column_of("loom")) is not None and c in reading.values
    ]
    for column in columns:
        usual = _usual_shapes(column.texts.values())
        _leave_out_marks(column, usual)
        texts = column.texts
        numbers = ((fold(halls.get((id(column.reading), i), "")), text) for i, text in texts.items())
        _ask_about_several(column, less_those_of_several(numbers, usual))
    _ask_about_spellings(columns, halls)


def _usual_shapes(texts: Iterable[str]) -> frozenset[str]:
    counts = Counter(map(shape, texts))
    return frozenset(one for one, count in counts.items() if count >= max(2, _USUAL * counts.total()))


def _leave_out_marks(column: _Column, usual: frozenset[str]) -> None:
    """`005*` and `'A019` are 005 and A019, where that is how the others are written, or where the sign by which a spreadsheet
    takes a number for text stands before all of them."""
    texts = column.texts
    as_text = all(_TEXT_SIGN.match(text) for text in texts.values())
    for i, text in texts.items():
        bare = text[1:] if as_text else _MARKS.sub("", text)
        if bare != text and (as_text or (shape(text) not in usual and shape(bare) in usual)):
            column.reading.values[column.column][i] = bare
            block = column.reading.block
            column.report.cell(Severity.NOTE, "number-mark", block.sheet, column.reading.rows[i].row, column.column,
                               heading=block.headings[column.column], raw=text, understood=bare)  # fmt: skip


def _ask_about_several(column: _Column, usual: frozenset[str]) -> None:
    """`101-108` and `101, 102` may be several looms, `A-07 (new)` may be A-07."""
    for i, text in column.texts.items():
        if shape(text) in usual:
            continue
        if stands_for_several(text) or _is_several(text, usual):
            looms = each_of(text)
            answer = column.ask(
                [i],
                text,
                [EACH] if looms else (),
                "number-of-several",
                first=looms[0] if looms else None,
                last=looms[-1] if looms else None,
                many=len(looms),
            )
            if answer == EACH:
                column.reading.several[i] = looms
        elif (bare := _without_words(text)) and shape(bare) in usual:
            answer = column.ask([i], text, [bare], "number-with-words", understood=bare)
            column.reading.values[column.column][i] = bare if answer == bare else text
        elif not any(map(str.isdigit, text)) and all(any(map(str.isdigit, one)) for one in usual):
            column.ask([i], text, (), "number-without-figure")


def _without_words(text: str) -> str:
    """`A-07 (new)` and `HS M02` → `A-07` and `M02`; `` where no words stand behind or before a number."""
    hit = _WITH_WORDS.fullmatch(text) or _WORDS_BEFORE.fullmatch(text)
    return hit[1] if hit else ""


def _is_several(text: str, usual: frozenset[str]) -> bool:
    """Does the text fall into numbers like those of the list, or into one and what is left of the next (`101-08`)?"""
    for joint in _BETWEEN.finditer(text):
        first, rest = text[: joint.start()], text[joint.end() :]
        if shape(first) in usual and (shape(rest) in usual or rest.isdigit() or _is_several(rest, usual)):
            return True
    return False


def _ask_about_spellings(columns: list[_Column], halls: Mapping[tuple[int, int], str]) -> None:
    """`A–02` beside `A-02`, `B 3` beside `B3`, `7` beside `007` in one hall: one loom or two?"""
    for places in _alike(columns, halls):
        first: dict[str, tuple[_Column, int]] = {}
        for column, i in places:
            first.setdefault(column.text(i), (column, i))
        (one, (here, at)), *others = first.items()
        for text, (column, i) in others:
            rows = [at, i] if column is here else [i]
            answer = column.ask(rows, f"{one} | {text}", [one], "number-spelt-twice", number=text, other=one)
            if answer == one:
                for other, row in places:
                    if other.text(row) == text:
                        other.reading.values[other.column][row] = one


def _alike(columns: list[_Column], halls: Mapping[tuple[int, int], str]) -> Iterator[list[tuple[_Column, int]]]:
    """The places of the numbers of one hall that differ only in signs between, in case, or in noughts."""
    found: dict[tuple[str, tuple[str, ...]], list[tuple[_Column, int]]] = defaultdict(list)
    for column in columns:
        for i, text in column.texts.items():
            found[fold(halls.get((id(column.reading), i), "")), signs_of(text)].append((column, i))
    for places in found.values():
        if len({column.text(i) for column, i in places}) > 1:
            yield places


@lru_cache(maxsize=50_000)
def signs_of(number: str) -> tuple[str, ...]:
    """What tells a loom number from others: `A-02`, `a 2` and `A–02` → `('a', '2')`."""
    return tuple(run.lstrip("0") or "0" for run in re.findall(r"[^\W\d_]+|\d+", fold(number)))
