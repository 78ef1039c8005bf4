"""By what answers may call the columns of a heading: its words, its lines, its cells."""

from collections import Counter
from collections.abc import Callable, Mapping

from tracker.intake.answers import Answers, Called, bare
from tracker.intake.layout.recognise import Said
from tracker.intake.vocabulary.heading_forms import one_line
from tracker.office.sheet import Sheet

SaidAt = Callable[[Sheet, int, int, Mapping[int, str]], Said]
"""(sheet, first and last heading line, column → heading) → what answers say of the columns."""


def called(sheet: Sheet, top: int, bottom: int, headings: Mapping[int, str], column: int) -> Called:
    """A column of a heading whose lines are the rows from `top` to `bottom`."""
    rows = range(top, bottom + 1)
    texts = [one_line(v) for r in rows if isinstance(v := sheet.value(r, column), str)]
    cells = tuple(sheet.name_of(r, column) for r in rows)
    return Called(headings[column], sheet.name, cells, tuple(texts), twins(headings).get(column, ""))


def twins(headings: Mapping[int, str]) -> dict[int, str]:
    """Column → `2 of 3`, of the columns whose heading another one has as well."""
    names = {column: bare(text) for column, text in sorted(headings.items())}
    many, seen, found = Counter(names.values()), Counter[str](), {}
    for column, name in names.items():
        seen[name] += 1
        if many[name] > 1:
            found[column] = f"{seen[name]} of {many[name]}"
    return found


def said_by(answers: Answers) -> SaidAt:
    """What the answers say of the columns under a heading."""

    def said_at(sheet: Sheet, top: int, bottom: int, headings: Mapping[int, str]) -> Said:
        if not answers.given and not answers.remembered:
            return lambda column, text: None
        if not answers.given and not answers.tell_cells_apart:
            return lambda column, text: answers.field(Called(text))
        return lambda column, text: answers.field(called(sheet, top, bottom, headings, column))

    return said_at
