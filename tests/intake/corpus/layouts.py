"""Where a list puts its looms on a sheet: one table, with titles, headings of several lines, lines between the rows."""

from collections.abc import Callable, Sequence
from itertools import groupby
from typing import Any

from .draft import Draft, Question, headed
from .sheets import Cell, Row, Sheet, row_of, turned


def names_of(draft: Draft) -> list[str]:
    return [column.name for column in draft.columns]


def table(draft: Draft, keys: Sequence[int] | None = None, names: Sequence[str] | None = None) -> list[Row]:
    """The heading and the rows of some looms and columns, all where none are named."""
    names = names_of(draft) if names is None else names
    return [draft.head(names), *draft.rows(draft.keys if keys is None else keys, names)]


def one_sheet(draft: Draft, rows: list[Row], **more: Any) -> None:
    name = {"zh": "台账", "de": "Liste", "tr": "Liste"}.get(draft.language, "Sheet1")
    draft.sheets = [Sheet(name, rows, **more)]


def plain(draft: Draft) -> None:
    if any(column.twins for column in draft.columns):
        _with_twins(draft)
    else:
        one_sheet(draft, table(draft), columns=names_of(draft))


def _with_twins(draft: Draft) -> None:
    """Two heading lines: what stands below one heading in the second, every other heading merged over both."""
    first, second, merged = [], [], []
    for at, column in enumerate(draft.columns):
        tag = ("head", column.name)
        if not column.twins:
            first.append(Cell(headed(column), tag))
            second.append(None)
            merged.append((0, at, 1, at))
            continue
        leads = column.name == column.twins[0]
        first.append(Cell(headed(column)) if leads else None)
        second.append(Cell(column.below, tag))
        merged += [(0, at, 0, at + len(column.twins) - 1)] * leads
    rows = draft.rows(draft.keys, names_of(draft))
    one_sheet(draft, [first, second, *rows], merged=merged, columns=names_of(draft))


def titled(draft: Draft) -> None:
    """A title, the day of issue and a blank line above."""
    above = [row_of([draft.words["title"]]), row_of([None, "03.11.2026"]), []]
    one_sheet(draft, [*above, *table(draft)], columns=names_of(draft))


def indented(draft: Draft) -> None:
    """A blank line and a blank column first, a blank column inside, a blank line between some rows."""
    names = names_of(draft)
    half = len(names) // 2
    rows = [[None, *row[:half], None, *row[half:]] for row in table(draft)]
    cut = 1 + len(draft.keys) // 2
    columns = ["", *names[:half], "", *names[half:]]
    one_sheet(draft, [[], [], *rows[:cut], [], *rows[cut:]], columns=columns)


def two_lines(draft: Draft) -> None:
    """Group headings merged over the columns they belong to, the headings below them."""
    draft.columns.sort(key=lambda column: (column.name != "loom", 9 if column.group is None else column.group))
    rows = table(draft)
    above: Row = [None] * len(draft.columns)
    merged = []
    for group, some in groupby(enumerate(draft.columns), key=lambda one: one[1].group):
        at = [i for i, _ in some]
        if group is not None:
            above[at[0]] = Cell(draft.words["groups"][group])
            merged += [(0, at[0], 0, at[-1])] * (len(at) > 1)
    one_sheet(draft, [above, *rows], merged=merged, columns=names_of(draft))


def broken_headings(draft: Draft) -> None:
    """Headings of several words are broken over two lines, and the units stand in a third."""
    first, second, third = [], [], []
    for column in draft.columns:
        start, _, rest = column.heading.partition(" ")
        first.append(Cell(start) if rest else None)
        second.append(Cell(rest or start, ("head", column.name)))
        third.append(Cell(column.unit) if column.unit else None)
    one_sheet(draft, [first, second, third, *draft.rows(draft.keys, names_of(draft))], columns=names_of(draft))


def units_below(draft: Draft) -> None:
    """The units stand in a line of their own below the headings."""
    heads: Row = [Cell(column.heading, ("head", column.name)) for column in draft.columns]
    units: Row = [Cell(column.unit) if column.unit else None for column in draft.columns]
    one_sheet(draft, [heads, units, *draft.rows(draft.keys, names_of(draft))], columns=names_of(draft))


def repeated_headings(draft: Draft) -> None:
    """A list as it was printed: title, heading, five rows and the number of the page, again and again."""
    pages = [draft.keys[i : i + 5] for i in range(0, len(draft.keys), 5)]
    rows: list[Row] = []
    for i, keys in enumerate(pages, 1):
        rows += [row_of([draft.words["title"]]), *table(draft, keys)]
        rows += [row_of([None, draft.words["page"].format(i, len(pages))]), []]
    one_sheet(draft, rows, columns=names_of(draft))


def headings_below(draft: Draft) -> None:
    """The headings stand below the rows: read so, asked or refused, but never passed over as if all were well."""
    head, *rows = table(draft)
    draft.truth.may_stop = True
    draft.truth.questions = []
    one_sheet(draft, [*rows, head])


def sideways(draft: Draft) -> None:
    """Headings down the first column, a loom in each further one."""
    one_sheet(draft, turned(table(draft)))


def hall_lines(draft: Draft) -> None:
    """The hall stands in a line above its looms."""
    _in_sections(draft, "hall", lambda hall, keys: hall)
    draft.drop_column("hall", truth=False)


def type_lines(draft: Draft) -> None:
    """The machine type stands only in a line above its looms, with how many there are."""
    form = draft.words["looms_of_type"]
    _in_sections(draft, "machine_type", lambda kind, keys: form.format(kind, len(keys)))


def bare_type_lines(draft: Draft) -> None:
    """The machine type stands alone in a line above its looms."""
    _in_sections(draft, "machine_type", lambda kind, keys: kind)


def _in_sections(draft: Draft, name: str, line: Callable[[str, list[int]], str]) -> None:
    names = [n for n in names_of(draft) if n != name]
    rows: list[Row] = [draft.head(names)]
    for value, keys in _grouped(draft, name):
        rows += [[Cell(line(value, keys), ("section", value))], *draft.rows(keys, names)]
    one_sheet(draft, rows, columns=names)
    draft.drop_column(name, truth=False)


def _grouped(draft: Draft, name: str) -> list[tuple[str, list[int]]]:
    """Value → looms, in the order in which the values first stand."""
    found: dict[str, list[int]] = {}
    for loom in draft.looms:
        found.setdefault(loom[name], []).append(loom["key"])
    return list(found.items())


def side_lines(draft: Draft) -> None:
    """`North side`, `South side` above the looms, whose numbers start again below each: are these halls?"""
    half = (len(draft.keys) + 1) // 2  # each loom of the second side has one of the first to share its number with
    for i, loom in enumerate(draft.looms):
        loom["hall"] = draft.words["sides"][i >= half]
        if i >= half:
            loom["loom"] = draft.looms[i - half]["loom"]
            draft.cells[loom["key"], "loom"] = draft.cells[draft.keys[i - half], "loom"]
    hall_lines(draft)
    first, second = draft.words["sides"]
    heading = headed(draft.column("loom"))
    spelt = (
        ((("section", first), "hall"), (("section", second), "hall")), ((first, "hall"), (second, "hall")),
        ((("section", first), "hall"),), ((heading, "hall"),),
    )  # fmt: skip
    at = (("section", first), ("section", second), ("head", "loom"), (draft.keys[half], "loom"))
    draft.truth.questions.append(Question("are the section lines halls?", at, spelt))


def side_lines_counting_on(draft: Draft) -> None:
    """`North side`, `South side` above looms whose numbers go on: no hall is named, and the lines are no looms."""
    half = len(draft.keys) // 2
    rows = [draft.words["sides"][i >= half] for i in range(len(draft.keys))]
    names = [name for name in names_of(draft) if name != "hall"]
    draft.drop_column("hall")
    grid = [draft.head(names)]
    for side in draft.words["sides"]:
        keys = [key for key, own in zip(draft.keys, rows, strict=True) if own == side]
        grid += [[Cell(side, ("section", side))], *draft.rows(keys, names)]
    first, second = draft.words["sides"]
    spelt = (((("section", first), "ignore"),), ((first, "ignore"), (second, "ignore")))
    at = (("section", first), ("section", second))
    draft.truth.questions.append(Question("are the section lines halls?", at, spelt, required=False))
    draft.truth.told += [("section", first), ("section", second)]
    one_sheet(draft, grid, columns=names)


def type_once(draft: Draft) -> None:
    """The machine type stands in the first row of its group."""
    _once(draft, "machine_type")


def hall_once(draft: Draft) -> None:
    """The hall stands in the first row of its group."""
    _once(draft, "hall")


def type_merged(draft: Draft) -> None:
    """The machine type is merged over its group."""
    _once(draft, "machine_type", merge=True)


def _once(draft: Draft, name: str, merge: bool = False) -> None:
    keys: list[int] = []
    spans: list[tuple[int, int]] = []
    for _, group in _grouped(draft, name):
        spans.append((len(keys) + 1, len(keys) + len(group)))
        keys += group
        for key in group[1:]:
            del draft.cells[key, name]
    at = names_of(draft).index(name)
    merged = [(first, at, last, at) for first, last in spans if merge and last > first]
    one_sheet(draft, table(draft, keys), merged=merged, columns=names_of(draft))
