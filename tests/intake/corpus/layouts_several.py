"""Lists of which the looms stand side by side, or on several sheets or files."""

from collections.abc import Sequence

from .draft import Draft, Question, headed
from .layouts import names_of, plain, table
from .sheets import Cell, Row, Sheet, beside, row_of


def groups_after_hall(draft: Draft) -> None:
    """`Hall | Loom | Type | Rail | Loom | Type | Rail`: two looms to a row, the hall shared by both."""
    _in_groups(draft, ["hall"], 2)


def groups_without_a_shared_column(draft: Draft) -> None:
    """`Loom | Type | Speed | Creel | Loom | Type | Speed | Creel | …`: three looms to a row."""
    draft.drop_column("hall")
    _in_groups(draft, [], 3)


def groups_after_row(draft: Draft) -> None:
    """`Hall | Row | Loom | … | Loom | …`: the looms of one row of the hall, hall and row shared."""
    for i, loom in enumerate(draft.looms):
        loom["row"] = str(1 + i // 2)
        loom["hall"] = draft.words["hall"].format(1)
        draft.cells[loom["key"], "row"] = 1 + i // 2
        draft.cells[loom["key"], "hall"] = loom["hall"]
    _in_groups(draft, ["hall", "row"], 2)


def _in_groups(draft: Draft, shared: Sequence[str], count: int) -> None:
    own = [name for name in names_of(draft) if name not in shared]
    heads = [*draft.head(shared), *(cell for _ in range(count) for cell in draft.head(own))]
    rows: list[Row] = [heads]
    for hall in dict.fromkeys(loom["hall"] for loom in draft.looms):
        keys = [loom["key"] for loom in draft.looms if loom["hall"] == hall]
        for i in range(0, len(keys), count):
            some = keys[i : i + count]
            first = [Cell(cell.value) if (cell := draft.cell(some[0], name)) else None for name in shared]
            rows.append([*first, *(cell for key in some for cell in draft.rows([key], own)[0])])
    plain(draft)
    draft.sheets[0] = Sheet(draft.sheets[0].name, rows)


def tables_with_a_gap(draft: Draft) -> None:
    """A table for each hall beside the other, the hall above, an empty column between."""
    names = [name for name in names_of(draft) if name != "hall"]
    parts = []
    for hall in dict.fromkeys(loom["hall"] for loom in draft.looms):
        keys = [loom["key"] for loom in draft.looms if loom["hall"] == hall]
        parts += [[row_of([hall]), *table(draft, keys, names)], [[None]]]
    plain(draft)
    draft.sheets[0] = Sheet(draft.sheets[0].name, beside(*parts))


def legend_beside(draft: Draft) -> None:
    """A legend of the machine types behind an empty column."""
    kinds = dict.fromkeys((loom["machine_type"], loom["insertion"]) for loom in draft.looms)
    legend = [row_of(draft.words["legend"]), *(row_of(kind) for kind in kinds)]
    plain(draft)
    draft.sheets[0].rows = beside(draft.sheets[0].rows, [[None]], legend)


def sheet_per_hall(draft: Draft) -> None:
    """A sheet for each hall, named after it."""
    names = [name for name in names_of(draft) if name != "hall"]
    draft.sheets = [
        Sheet(hall, table(draft, [loom["key"] for loom in draft.looms if loom["hall"] == hall], names))
        for hall in dict.fromkeys(loom["hall"] for loom in draft.looms)
    ]


def attributes_on_a_second_sheet(draft: Draft) -> None:
    """The list, and a second sheet that says of each loom what the method asks for."""
    own = [name for name in names_of(draft) if name in ("rail", "creel", "sides", "year", "frames")]
    names = [name for name in names_of(draft) if name not in own]
    keys = draft.rng.sample(draft.keys, len(draft.keys))
    loom: list[Row] = [[Cell(headed(draft.column("loom")))]]
    loom += [[Cell(draft.cells[key, "loom"])] for key in keys]
    plain(draft)
    name = draft.sheets[0].name
    draft.sheets = [
        Sheet(name, table(draft, names=names), columns=names),
        Sheet(f"{name} 2", beside(loom, table(draft, keys, own))),
    ]


def among_other_sheets(draft: Draft) -> None:
    """A cover, a list of telephones and a table of shifts around the list."""
    plain(draft)
    cover = Sheet("0", [row_of([draft.words["title"]]), [], row_of(["2026", "N. N."])])
    phones = Sheet("Tel.", [row_of(["N. N.", "Tel. 113"]), row_of(["M. M.", "Tel. 117"])])
    shifts = Sheet(
        "ABC", [row_of([None, *draft.words["shifts"]]), *(row_of([d, 1, 2, 3]) for d in ("06:00", "14:00", "22:00"))]
    )
    draft.sheets = [cover, phones, *draft.sheets, shifts]


def _older_list(draft: Draft) -> Sheet:
    """The list of last year: the same looms, some of them slower."""
    plain(draft)
    rows = [[cell and Cell(cell.value, None, cell.code) for cell in row] for row in draft.sheets[0].rows]
    at = names_of(draft).index("year")
    for row in rows[1::3]:
        row[at] = Cell(1990)
    return Sheet("2025", rows)


def last_years_list(draft: Draft) -> None:
    """A sheet for this year and one for the last, which says other things: never both, and none without a word."""
    older = _older_list(draft)
    draft.sheets = [Sheet("2026", draft.sheets[0].rows), older]
    draft.truth.may_stop = True
    draft.truth.questions = [Question("which of the two lists it is")]


def hidden_list(draft: Draft) -> None:
    """The list of last year on a hidden sheet."""
    older = _older_list(draft)
    older.hidden = True
    draft.sheets.append(older)
    draft.truth.questions.append(Question("is the hidden sheet to be read?", (), ((("2025", "ignore"),),)))


def groups_with_blank_between(draft: Draft) -> None:
    """Two looms to a row with an empty column between them, headed alike, no titles above."""
    draft.drop_column("hall")
    half = (len(draft.keys) + 1) // 2
    parts = [table(draft, draft.keys[:half]), [[None]], table(draft, draft.keys[half:])]
    plain(draft)
    draft.sheets[0] = Sheet(draft.sheets[0].name, beside(*parts))
