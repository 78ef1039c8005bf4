"""From recognised tables to typed rows: columns pooled and planned, cells read, rows put together."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from typing import Any, Protocol

from tracker.domain.findings import Severity
from tracker.domain.rows import ReadResult, SourceColumn, SourceTable, TypedRow
from tracker.domain.tables import LOOMS, Column, Kind, Table
from tracker.domain.words import fold
from tracker.intake.answers import FIELD, IGNORE, UNIT, Answers
from tracker.intake.body import BodyRow, Sort, body_rows
from tracker.intake.columns import CellProblem, Part, Pool
from tracker.intake.date_columns import plan_dates
from tracker.intake.headings import match_heading
from tracker.intake.layout import Block
from tracker.intake.loom_rows import LoomRows, add_halls, note_lookalikes
from tracker.intake.number_columns import NumberPlan, plan_numbers, proven_decimals
from tracker.intake.own_columns import ConditionPlan, plan_own
from tracker.intake.placeholders import emptiness, is_ditto, says_unknown
from tracker.intake.report import Report
from tracker.intake.sheets import Mark
from tracker.intake.simple_columns import AnyPlan, TimePlan, WeekdaysPlan, WordPlan, YearPlan, YesNoPlan
from tracker.intake.term_rows import typed_term
from tracker.intake.text_columns import plan_texts


class Plan(Protocol):
    """How the cells of a column are read."""

    def read(self, value: Any, code: str) -> Any: ...


@dataclass(slots=True)
class Reading:
    """A block on its way to typed rows."""

    block: Block
    rows: list[BodyRow]
    ignored: int
    pools: dict[int, Pool] = field(default_factory=dict)
    """Column → its pool; columns that are left out have none."""
    parts: dict[int, Part] = field(default_factory=dict)
    plans: dict[int, Plan] = field(default_factory=dict)
    values: dict[int, list[Any]] = field(default_factory=dict)
    """Column → value of each row."""
    refused: set[int] = field(default_factory=set)
    """Indexes into `rows`."""
    faults: set[tuple[int, int]] = field(default_factory=set)
    """(index into `rows`, column) of the cells that cannot be read."""

    @property
    def table(self) -> Table:
        return self.block.recognised.table

    def refuse(self, i: int, column: int) -> None:
        """A row is refused for a cell."""
        self.refused.add(i)
        self.faults.add((i, column))

    def column_of(self, name: str) -> int | None:
        return self.block.recognised.column_of(name)


def read_tables(blocks: Iterable[Block], answers: Answers, report: Report, today: date) -> ReadResult:
    """Read every block; the findings, also those met before, come with the result."""
    readings = [_reading(block, report) for block in blocks]
    for reading in readings:
        _ask_rivals(reading, answers, report)
    pools = _pools(readings, answers, report, today)
    _share_decimals(pools)
    for pool in pools:
        _plan(pool, readings)
    for reading in readings:
        for column, plan in reading.plans.items():
            reading.values[column] = _read_column(reading, column, plan, report)
        _check_needed(reading, report)
    loom_rows = LoomRows(
        [r for r in readings if r.table is LOOMS], answers, report
    )  # fmt: skip
    halls = add_halls(loom_rows)
    note_lookalikes(readings, answers, report)
    return _result(readings, halls, answers, report)


def _reading(block: Block, report: Report) -> Reading:
    rows, ignored = [], 0
    for body in body_rows(block):
        if body.sort is Sort.DATA:
            rows.append(body)
        elif body.sort is not Sort.EMPTY:
            ignored += 1
            if body.sort in (Sort.NOTE, Sort.TOTAL):
                words = "sums up rows" if body.sort is Sort.TOTAL else "is no row of the table"
                report.whole(
                    Severity.NOTE, "row-passed-over", block.sheet, block.sheet.row_range(body.row, block.columns),
                    f"The line {body.text!r} {words}; it is passed over.", raw=body.text,
                )  # fmt: skip
    return Reading(block, rows, ignored)


def _ask_rivals(reading: Reading, answers: Answers, report: Report) -> None:
    """Two columns that may be the same field: ask which, unless they say the same in every row."""
    block = reading.block
    for name, columns in block.recognised.rivals.items():
        texts = [block.headings[c] for c in columns]
        if any(answers.field(text) is not None for text in texts) or _all_same(reading, columns):
            continue
        heading = reading.table.column(name).heading
        cells = ", ".join(Part(block, c, []).heading_cell for c in columns)
        report.ask(
            FIELD, block.sheet, texts[0], cells,
            f"{heading} can be {' or '.join(texts)}.",
            "Answer " + " or ".join(f'--answer "{text}={heading.lower()}"' for text in texts) + ".",
            raw=" | ".join(texts), code="which-column",
        )  # fmt: skip
    if reading.table is LOOMS and reading.column_of("machine_type") is None:
        first = Part(block, block.columns[0], [])
        report.ask(
            FIELD, block.sheet, first.heading, first.heading_cell, "No column is the machine type, which every loom needs.",
            'Say which it is: --answer "HEADING=machine type".', code="no-machine-type",
        )  # fmt: skip


def _all_same(reading: Reading, columns: list[int]) -> bool:
    sheet = reading.block.sheet
    return all(len({str(sheet.value(body.row, c)) for c in columns}) == 1 for body in reading.rows)


def _pools(readings: list[Reading], answers: Answers, report: Report, today: date) -> list[Pool]:
    pools: dict[tuple[str, str, str], Pool] = {}
    for reading in readings:
        block = reading.block
        for c, heading in block.headings.items():
            meaning = block.recognised.meanings.get(c)
            if meaning is None and not _is_kept(reading, c, answers):
                continue
            column = reading.table.column(meaning.field) if meaning else None
            key = (block.sheet.file, reading.table.name, f"{column.field if column else ''}|{fold(heading)}")
            if key not in pools:
                pools[key] = Pool(reading.table, column, [], answers, report, today, block.recognised.language)
            reading.parts[c] = Part(block, c, reading.rows)
            pools[key].parts.append(reading.parts[c])
            reading.pools[c] = pools[key]
    return list(pools.values())


def _is_kept(reading: Reading, column: int, answers: Answers) -> bool:
    """A column that is no field stays where the table has room for the mill's own columns."""
    return bool(reading.table.open_columns) and answers.field(reading.block.headings[column]) != IGNORE


def _share_decimals(pools: list[Pool]) -> None:
    """The decimal mark that the columns of a file prove, for its columns that prove none."""
    proven: dict[str, set[str]] = defaultdict(set)
    for pool in pools:
        numeric = pool.column is None or pool.column.kind in (Kind.NUMBER, Kind.FRACTION, Kind.INTEGER)
        if numeric and pool.table.open_columns != "conditions":
            proven[pool.parts[0].sheet.file] |= proven_decimals(pool)
    for pool in pools:
        marks = proven[pool.parts[0].sheet.file]
        pool.sheet_decimals = next(iter(marks)) if len(marks) == 1 else ""


def _plan(pool: Pool, readings: list[Reading]) -> None:
    plan = _plan_of(pool)
    for reading in readings:
        for c, own in reading.pools.items():
            if own is pool:
                reading.plans[c] = plan


def _plan_of(pool: Pool) -> Plan:
    column = pool.column
    if column is None:
        return ConditionPlan(pool) if pool.table.open_columns == "conditions" else plan_own(pool)
    if column.field == "year":
        return YearPlan(pool)
    match column.kind:
        case Kind.NUMBER | Kind.INTEGER | Kind.FRACTION:
            return plan_numbers(pool)
        case Kind.DATE | Kind.MOMENT:
            return plan_dates(pool)
        case Kind.WORD:
            return WordPlan(pool)
        case Kind.YES_NO:
            return YesNoPlan(pool)
        case Kind.TIME:
            return TimePlan(pool)
        case Kind.WEEKDAYS:
            return WeekdaysPlan(pool)
        case Kind.ANY:
            return AnyPlan(pool)
    return plan_texts(pool)


def _read_column(reading: Reading, column: int, plan: Plan, report: Report) -> list[Any]:
    """The values of a column row by row; rows with a cell that cannot be read are refused."""
    part, pool = reading.parts[column], reading.pools[column]
    known: dict[tuple[type, Any, str], Any] = {}
    codes = part.sheet.extras.format.codes
    values: list[Any] = []
    for i, value in enumerate(part.values):
        if value is None:
            values.append(None)
            continue
        row = reading.rows[i].row
        code = part.code(row) if codes else ""
        key = (type(value), value, code)
        if key not in known:
            known[key] = _SPECIAL if _is_special(value) else _attempt(pool, plan, value, code)
        found = known[key]
        if found is _SPECIAL:
            found = _special(reading, part, pool, i, value, values, report)
        elif type(found) is CellProblem:
            reading.refuse(i, column)
            report.cell(Severity.REFUSED, found.code, part.sheet, row, column, found.message + ".",
                        heading=pool.heading, raw=value, understood=found.understood, hint=found.hint)  # fmt: skip
            found = None
        elif type(found) is _Unknown:
            report.cell(Severity.NOTE, "read-as-empty", part.sheet, row, column,
                        f"{value!r} says that nothing is known; read as empty.", heading=pool.heading, raw=value)  # fmt: skip
            found = None
        values.append(found)
    return values


_SPECIAL = object()
"""Stands for a cell that is judged where it stands: a mark, a placeholder, a ditto."""


def _is_special(value: Any) -> bool:
    return type(value) is Mark or (type(value) is str and bool(emptiness(value) or is_ditto(value)))


class _Unknown:
    """A word that says that the value is not known."""


def _attempt(pool: Pool, plan: Plan, value: Any, code: str) -> Any:
    """The value, or the problem that stands against it."""
    try:
        return plan.read(value, code)
    except CellProblem as problem:
        if isinstance(value, str) and pool.column is not None and says_unknown(value):
            return _Unknown()
        return problem


def _special(reading: Reading, part: Part, pool: Pool, i: int, value: Any, values: list[Any], report: Report) -> Any:
    """A mark, a placeholder or a ditto: None, or the value of the row above."""
    row = reading.rows[i].row

    def say(severity: Severity, code: str, message: str, hint: str = "") -> None:
        report.cell(severity, code, part.sheet, row, part.column, message, heading=pool.heading, raw=value,
                    understood="" if severity is Severity.REFUSED else "empty", hint=hint)  # fmt: skip

    if type(value) is Mark and value.kind == "formula":
        reading.refuse(i, part.column)
        say(Severity.REFUSED, "formula-without-value", f"{pool.name}: the formula in this cell has no stored value.",
            "Open the file in a spreadsheet, let it calculate, and save it.")  # fmt: skip
        return None
    if type(value) is str and is_ditto(value) and values:
        report.cell(Severity.NOTE, "ditto", part.sheet, row, part.column, f"{value!r} repeats the cell above.",
                    heading=pool.heading, raw=value, understood=str(values[-1]))  # fmt: skip
        return values[-1]
    if pool.column is None and pool.table.open_columns == "conditions" and value == "-":
        return None
    if type(value) is Mark and value.kind == "empty text":
        say(Severity.NOTE, "empty-text", "The formula in this cell gives nothing; read as empty.")
    elif type(value) is Mark or emptiness(value) == "error":
        text = value.text if type(value) is Mark else value
        say(
            Severity.NOTE,
            "error-cell",
            f"The error {text} is read as empty.",
            "Mend the formula if the value is needed.",
        )
    else:
        say(Severity.NOTE, "placeholder", f"{value!r} is read as empty.")
    return None


def _check_needed(reading: Reading, report: Report) -> None:
    """Refuse rows without a value that the table needs (the hall of a loom is looked for elsewhere, too)."""
    for column in reading.table.columns:
        if not column.needed or (reading.table is LOOMS and column.field == "hall"):
            continue
        c = reading.column_of(column.field)
        if c is None:
            continue
        for i, value in enumerate(reading.values[c]):
            if (value is None or value == "") and (i, c) not in reading.faults:
                _refuse_missing(reading, i, c, column, report)


def _refuse_missing(reading: Reading, i: int, c: int, column: Column, report: Report) -> None:
    reading.refused.add(i)
    sheet, row = reading.block.sheet, reading.rows[i].row
    name = {"loom": "loom number", "machine_type": "machine type"}.get(column.field, column.heading.lower())
    report.cell(Severity.REFUSED, "missing-value", sheet, row, c,
                f"{sheet.row_range(row, reading.block.columns)} has no {name}.",
                heading=reading.block.headings[c], raw=sheet.value(row, c) or "",
                hint="Fill in the cell, or delete the row.")  # fmt: skip


def _result(readings: list[Reading], halls: dict[tuple[int, int], str], answers: Answers, report: Report) -> ReadResult:
    sources, rows = [], []
    refused: dict[int, int] = {}
    ignored: dict[int, int] = {}
    for source, reading in enumerate(readings):
        sources.append(_source(reading, answers))
        found = list(_typed_rows(reading, source, halls, report))
        rows += found
        refused[source], ignored[source] = len(reading.refused), reading.ignored
    _note_recalled(answers, readings, report)
    return ReadResult(tuple(sources), tuple(rows), report.findings(), refused, ignored, dict(answers.used))


def _typed_rows(reading: Reading, source: int, halls: dict[tuple[int, int], str], report: Report) -> Iterable[TypedRow]:
    table, block = reading.table, reading.block
    meanings = block.recognised.meanings
    fields = {c: meanings[c].field for c in block.columns if c in meanings and c in reading.values}
    names = own_names(reading)
    for i, body in enumerate(reading.rows):
        values = {name: reading.values[c][i] for c, name in fields.items()}
        kept = {name: reading.values[c][i] for c, name in names.items()}
        if table is LOOMS:
            values["hall"] = halls.get((id(reading), i), values.get("hall") or "")
            if body.hall_row and "row" not in values:
                values["row"] = body.hall_row
        if table.name == "terms" and i not in reading.refused:
            values = typed_term(reading, i, values, report)
        if i not in reading.refused:
            yield TypedRow(table.name, values, kept, source, block.sheet.line_number(body.row))


def own_names(reading: Reading) -> dict[int, str]:
    """Column → heading under which the mill's own columns are kept; repeated headings are told apart by a number."""
    fields = {column.field for column in reading.table.columns}
    taken: set[str] = set()
    names: dict[int, str] = {}
    for c in reading.block.columns:
        if c in reading.values and c not in reading.block.recognised.meanings:
            name, n = reading.block.headings[c], 1
            while fold(name) in taken or name in fields:
                n += 1
                name = f"{reading.block.headings[c]} ({n})"
            taken.add(fold(name))
            names[c] = name
    return names


def _source(reading: Reading, answers: Answers) -> SourceTable:
    block, sheet = reading.block, reading.block.sheet
    names = own_names(reading)
    columns = []
    for c in block.columns:
        meaning = block.recognised.meanings.get(c)
        plan = reading.plans.get(c)
        unit = plan.unit_words if isinstance(plan, NumberPlan) else ""
        columns.append(
            SourceColumn(
                names.get(c, block.headings[c]),
                Part(block, c, []).heading_cell,
                meaning.field if meaning else "",
                unit,
                meaning.certainty if meaning else match_certainty(block.headings[c]),
                c in reading.plans,
            )
        )
    heading_row = sheet.place(block.bottom, block.columns[0])[1 if sheet.transposed else 0]
    return SourceTable(sheet.file, sheet.name, reading.table.name, heading_row, tuple(columns), sheet.transposed)


def match_certainty(heading: str) -> float:
    """How surely a heading is none of our fields."""
    match = match_heading(heading)
    return round(1 - (match.candidates[0].weight if match.candidates else 0), 2)


def _note_recalled(answers: Answers, readings: list[Reading], report: Report) -> None:
    for key in sorted(answers.recalled):
        kind, _, heading = key.partition("|")
        sheet = readings[0].block.sheet if readings else None
        if sheet is not None:
            report.whole(
                Severity.NOTE, "answer-remembered", sheet, "",
                f"{heading}: the answer of an earlier load was used: {answers.used[key]}.",
                heading=heading, understood=answers.used[key],
                hint=f'Say otherwise with --answer "{heading}=…".' if kind != UNIT else "",
            )  # fmt: skip
