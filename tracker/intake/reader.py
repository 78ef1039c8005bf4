"""Read a mill's files: recognised tables, typed rows, and findings about everything that was not plain (READING.md)."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from pathlib import Path

from tracker.domain.addresses import range_name, ranges
from tracker.domain.findings import Choice, Severity
from tracker.domain.rows import ReadResult
from tracker.domain.tables import LOOMS
from tracker.domain.words import fold
from tracker.errors import InputRefused, Message, UsageError, message
from tracker.intake.account import Files, is_own
from tracker.intake.answers import FIELD, HALL, IGNORE, OWN_COLUMN, PAGE, READ, SHEET, TYPE, Answers
from tracker.intake.columns.leftovers import note_beside
from tracker.intake.columns.pool import ColumnPart
from tracker.intake.comments import tell_comments
from tracker.intake.layout.attribute_sheets import attributes_on
from tracker.intake.layout.blocks import MAX_COLUMNS, TableBlock, find_blocks
from tracker.intake.layout.called import said_by
from tracker.intake.layout.evidence import evidence_of
from tracker.intake.layout.likely_headings import likely_headings
from tracker.intake.layout.loom_lists import choose_loom_lists
from tracker.intake.layout.recognise import Said, recognise
from tracker.intake.layout.rows_above import rows_above, with_headings_first
from tracker.intake.layout.unit_columns import join_units
from tracker.intake.report import Report, answers_for, raw_text
from tracker.intake.rows.read_tables import read_tables
from tracker.intake.vocabulary.gone import says_gone
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.known_words import KNOWN
from tracker.intake.vocabulary.own_headings import own_fields
from tracker.office.opening.book import open_book
from tracker.office.sheet import Sheet

_COMMON_LISTS = frozenset({"parts", "receipts", "crews", "running", "closures", "tools", "changes"})
"""Tables that any workbook may hold for purposes of its own."""

Progress = Callable[[Message, float], None]


def read_files(
    paths: Sequence[Path],
    answers: Mapping[str, str],
    remembered: Mapping[str, str],
    today: date,
    progress: Progress | None = None,
) -> ReadResult:
    """What a set of files says: every table we know, row by row; doubts and refused rows are findings in the result.

    `answers`: heading or sheet → answer; `remembered`: what `ReadResult.answers_used` of earlier loads held.
    Raises InputRefused for a hostile, broken or foreign file (one clear line) and UsageError for an answer that is not
    understood or names no heading.
    """
    report = Report()
    asked = Answers(answers, remembered)
    files = Files()
    blocks: list[TableBlock] = []
    names: list[str] = []
    unknown: list[Sheet] = []
    opened: dict[Path, list[Sheet]] = {}
    for i, path in enumerate(map(Path, paths)):
        if progress:
            progress(message("reading-file", file=path.name), i / len(paths) / 2)
        sheets = opened[path] = open_book(path, KNOWN, asked.code_page(path.name))
        for sheet in sheets:
            _tell_letters(sheet, report)
            blocks += _blocks_of(sheet, asked, report, unknown)
        names += [sheet.name for sheet in sheets] + [path.name]
        names += [text for sheet in sheets for text in sheet.lone_texts()] if answers else []
        files.sheets += sheets
        files.left_out += [sheet for sheet in sheets if asked.sheet(sheet.name) == IGNORE]
    blocks += _joining(unknown, blocks, asked, report)
    for path, sheets in opened.items():
        none = all(block.sheet.file != path.name for block in blocks)
        if none and not any(asked.sheet(sheet.name) == IGNORE for sheet in sheets):
            raise _nothing_known(path, sheets, report)
    asked.check_keys(
        (block.called(c) for block in blocks for c in block.columns), names, _cells_there(asked.cells_named(), blocks)
    )
    files.blocks = list(blocks)
    tell_comments(files, report)
    blocks = choose_loom_lists(blocks, asked, report)
    if progress:
        progress(message("reading-tables"), 0.5)
    result = _read(blocks, asked, report, today, files)
    asked.check_taken()
    return result


def _joining(sheets: list[Sheet], blocks: list[TableBlock], answers: Answers, report: Report) -> list[TableBlock]:
    """The tables of sheets without any of ours that say more of the looms of a list; the other sheets are noted."""
    lists = [block for block in blocks if block.recognised.table is LOOMS]
    found = []
    for sheet in sheets:
        more = attributes_on(sheet, lists, said_by(answers)) if answers.sheet(sheet.name) is None else []
        more = [block for block in more if _confirmed(block, answers, LOOMS.name, report)]
        for block in more:
            block.joins = True
        if not more:
            _note_foreign(sheet, report)
        found += more
    return found


def _tell_letters(sheet: Sheet, report: Report) -> None:
    """Ask for the code page of a text that may be in several, and name the cells with letters that are none."""
    if readings := sheet.extras.code_pages:
        choices = [Choice(sheet.file, page, word) for page, word in readings]
        report.ask(PAGE, sheet, sheet.file, "", choices, raw=readings[0][1], code="code-page-doubt")
    if lost := sheet.extras.lost_letters:
        report.whole(Severity.NOTE, "lost-letters", sheet, ranges(lost), raw=sheet.rows[lost[0][0] - 1][lost[0][1] - 1])


def _read(blocks: list[TableBlock], answers: Answers, report: Report, today: date, files: Files) -> ReadResult:
    """Read the tables; one beside a loom list that is in other words than ours and does not read well is passed over."""
    first = report.copy()
    result = read_tables(blocks, answers, first, today, files)
    troubled = [block for block in blocks if _may_be_foreign(block, blocks, answers) and _has_trouble(block, result)]
    if not troubled:
        return result
    for block in troubled:
        name, table = block.sheet.name, block.recognised.table
        trouble = next(f for f in result.findings if f.sheet == name and f.severity is not Severity.NOTE)
        report.whole(
            Severity.NOTE, "foreign-table", block.sheet, trouble.cell, table=table.named,
            choices=answers_for(name, table.name),
        )  # fmt: skip
    return read_tables([block for block in blocks if block not in troubled], answers, report, today, files)


def _may_be_foreign(block: TableBlock, blocks: list[TableBlock], answers: Answers) -> bool:
    """Is the table on a sheet of its own, headed in other words than ours, in a workbook with a loom list elsewhere?"""
    table, sheet = block.recognised.table, block.sheet
    if (
        table.name not in _COMMON_LISTS
        or fold(sheet.name) == fold(table.sheet)
        or answers.sheet(sheet.name) is not None
    ):
        return False
    ours = {column.field: {fold(column.heading), fold(column.title)} for column in table.columns}
    meanings, whole = block.recognised.meanings, own_fields(table, block.headings)
    in_our_words = all(fold(block.headings[c]) in ours[m.field] or whole.get(c) == m.field for c, m in meanings.items())
    alone = all(
        other.sheet.name != sheet.name for other in blocks if other is not block and other.sheet.file == sheet.file
    )
    looms = any(other.recognised.table is LOOMS and other.sheet.file == sheet.file for other in blocks)
    return alone and looms and not in_our_words


def _has_trouble(block: TableBlock, result: ReadResult) -> bool:
    where = (block.sheet.file, block.sheet.name)
    return any((f.file, f.sheet) == where and f.severity is not Severity.NOTE for f in result.findings)


def _blocks_of(sheet: Sheet, answers: Answers, report: Report, unknown: list[Sheet]) -> list[TableBlock]:
    """The tables of a sheet, which comes to the unknown ones where it has none; a hidden one is asked about."""
    if is_own(sheet):
        return []
    said = answers.sheet(sheet.name)
    if said == IGNORE:
        report.whole(Severity.NOTE, "sheet-ignored", sheet, "")
        return []
    only = said if said not in (None, READ, HALL, TYPE) else ""
    blocks = _below_their_headings(find_blocks(sheet, said_by(answers), only), answers, only, report)
    if not blocks and len(sheet.rows) <= MAX_COLUMNS:  # turned, every row would be a heading
        blocks = find_blocks(sheet.turned(), said_by(answers), only)
    blocks = [block for block in blocks if _confirmed(block, answers, only, report)]
    _note_shared(blocks, report)
    note_beside(blocks, report)
    if not blocks:
        unknown.append(sheet)
    elif sheet.hidden and said is None:
        _ask_hidden(sheet, blocks, report)
    elif said is None and says_gone(sheet.name) and any(block.recognised.table is LOOMS for block in blocks):
        report.ask(SHEET, sheet, sheet.name, "", answers_for(sheet.name, IGNORE, READ), code="gone-sheet")
    return blocks


def _below_their_headings(blocks: list[TableBlock], answers: Answers, only: str, report: Report) -> list[TableBlock]:
    """The tables of the sheet, the rows that stand above the first headings put below them and noted."""
    above = rows_above(blocks[0], 0) if blocks else []
    if not above:
        return blocks
    sheet, columns = blocks[0].sheet, blocks[0].columns
    cells = range_name(sheet.place(above[0], columns[0]), sheet.place(above[-1], columns[-1]))
    report.whole(Severity.NOTE, "rows-above-headings", sheet, cells, rows=len(above))
    return find_blocks(with_headings_first(sheet, blocks[0], above), said_by(answers), only)


def _said(block: TableBlock, answers: Answers) -> Said:
    return said_by(answers)(block.sheet, block.top, block.bottom, block.headings)


def _cells_there(cells: Sequence[str], blocks: Sequence[TableBlock]) -> Iterator[str]:
    """Which of the cells that answers name hold something in a table. Raises UsageError for one that, without its sheet,
    may be in several."""
    for key in cells:
        name, _, address = key.rpartition("!")
        texts = {
            raw_text(value)
            for block in blocks
            if name in ("", fold(block.sheet.name)) and (value := block.sheet.value_at(address)) is not None
        }
        if not name and len(texts) > 1:
            sheets = list(dict.fromkeys(block.sheet.name for block in blocks))
            raise UsageError("answer-about-several", heading=key, names=[f"{sheet}!{address}" for sheet in sheets])
        if texts:
            yield key


def _confirmed(block: TableBlock, answers: Answers, only: str, report: Report) -> bool:
    """Do the values bear out the headings? They decide which column is which field."""
    by_heading = block.recognised
    join_units(block, report)
    found = recognise(
        block.headings, block.sheet.name, evidence_of(block), _said(block, answers), only, among=by_heading.table.name
    )
    if found is None:
        return False
    block.recognised = found
    _note_unsure(block, report)
    for column, meaning in by_heading.meanings.items():
        if column not in found.meanings and found.column_of(meaning.field) is None and meaning.certainty >= 0.9:
            if not found.table.open_columns:  # it would be lost; its cells are refused one by one instead
                found.meanings[column] = meaning
                continue
            part, name = ColumnPart(block, column, []), found.table.column(meaning.field).heading
            report.ask(
                FIELD, block.sheet, part.heading, part.heading_cell,
                answers_for(part.heading, name.lower(), OWN_COLUMN, IGNORE), code="values-do-not-fit", field=name,
            )  # fmt: skip
    return True


def _note_unsure(block: TableBlock, report: Report) -> None:
    """Say how a heading was understood that is not one of the words we know."""
    for column, meaning in block.recognised.meanings.items():
        part = ColumnPart(block, column, [])
        rival = any(column in columns for columns in block.recognised.rivals.values())
        surest = max(
            (e.weight for e in match_heading(part.heading).candidates if e.field == meaning.field), default=0.0
        )
        if surest < 0.9 and not rival and meaning.certainty < 1:  # not asked, nor answered
            field = block.recognised.table.column(meaning.field).heading
            report.whole(
                Severity.NOTE, "heading-understood", block.sheet, part.heading_cell, heading=part.heading,
                understood=field, choices=answers_for(part.heading, OWN_COLUMN),
            )  # fmt: skip


def _note_shared(blocks: list[TableBlock], report: Report) -> None:
    """Say once for a heading which columns count for every loom of a row."""
    for block in blocks:
        beside = [other for other in blocks if other.top == block.top]
        if block.shared and block is beside[0]:
            parts = [ColumnPart(block, c, []) for c in sorted(block.shared)]
            report.whole(
                Severity.NOTE, "several-to-a-row", block.sheet, ", ".join(part.heading_cell for part in parts),
                heading=parts[0].heading, groups=len(beside), headings=[part.heading for part in parts],
            )  # fmt: skip


def _note_foreign(sheet: Sheet, report: Report) -> None:
    if any(value is not None for row in sheet.rows for value in row):
        headings = likely_headings(sheet)
        choices = answers_for(headings[0], "loom") if headings else answers_for(sheet.name, LOOMS.name)
        report.whole(Severity.NOTE, "no-table", sheet, "", choices=choices, headings=headings or None)


def _ask_hidden(sheet: Sheet, blocks: list[TableBlock], report: Report) -> None:
    if not any(block.recognised.table is LOOMS or block.recognised.table.name != "terms" for block in blocks):
        return
    tables = list(dict.fromkeys(block.recognised.table.sheet for block in blocks))
    report.ask(SHEET, sheet, sheet.name, "", answers_for(sheet.name, IGNORE, READ), code="hidden-sheet", tables=tables)


def _nothing_known(path: Path, sheets: list[Sheet], report: Report) -> InputRefused:
    return InputRefused(
        "no-table-known", report.findings(), file=path.name, sheets=[sheet.name for sheet in sheets],
        headings=next(filter(None, map(likely_headings, sheets)), None),
        how="unknown" if any(sheet.rows for sheet in sheets) else "empty",
    )  # fmt: skip
