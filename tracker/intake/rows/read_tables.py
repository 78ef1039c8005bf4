"""From recognised tables to typed rows: columns pooled and planned, cells read, rows put together."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date

from tracker.domain.rows import ReadResult
from tracker.domain.tables import LOOMS, Kind
from tracker.domain.words import fold
from tracker.intake.account import Files
from tracker.intake.answers import Answers
from tracker.intake.columns.cells import check_needed, find_unfilled, read_column
from tracker.intake.columns.counted_looms import ask_whether_counted
from tracker.intake.columns.date_columns import plan_dates
from tracker.intake.columns.leftovers import note_leftovers
from tracker.intake.columns.missing_fields import ask_missing
from tracker.intake.columns.number_units import plan_numbers, proven_decimals
from tracker.intake.columns.outliers import ask_outliers
from tracker.intake.columns.own_columns import ConditionPlan, plan_own
from tracker.intake.columns.pool import ColumnPart, ColumnPool
from tracker.intake.columns.simple_columns import (
    AnyPlan,
    ReadingPlan,
    TimePlan,
    WeekdaysPlan,
    WordPlan,
    YearPlan,
    YesNoPlan,
)
from tracker.intake.columns.table_reading import ColumnPlan, TableReading, ask_columns, reading_of
from tracker.intake.columns.text_columns import plan_texts
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.report import Report
from tracker.intake.rows.gone_looms import tell_gone
from tracker.intake.rows.loom_numbers import settle_numbers
from tracker.intake.rows.loom_rows import LoomRows, add_halls, note_lookalikes
from tracker.intake.rows.pairs import check_pairs
from tracker.intake.rows.type_spellings import note_spellings
from tracker.intake.rows.typed_rows import result_of
from tracker.intake.rows.types_above import add_types
from tracker.intake.rows.types_beside import cut_types, name_types_by_sheets
from tracker.intake.rows.whole_sheets import ask_whole_sheets


def read_tables(
    blocks: Iterable[TableBlock], answers: Answers, report: Report, today: date, files: Files
) -> ReadResult:
    """Read every block; the findings, also those met before, come with the result."""
    readings = [reading_of(block, answers, report) for block in blocks]
    asked = name_types_by_sheets(readings, answers, report)
    for reading in readings:
        ask_columns(reading, answers, report, type_asked=id(reading) in asked)
        ask_missing(reading, answers, report)
        ask_whether_counted(reading, answers, report)
    pools = _pools(readings, answers, report, today)
    _share_decimals(pools)
    for pool in pools:
        _plan(pool, readings)
        pool.forget()
    for reading in readings:
        for column, plan in reading.plans.items():
            reading.values[column] = read_column(reading, column, plan, report)
            reading.parts[column].forget()
        cut_types(reading, report)
    for pool in pools:
        ask_outliers(pool, readings)
    for reading in readings:
        add_types(reading, report)
        find_unfilled(reading)
        check_needed(reading, report)
        check_pairs(reading, report)
        note_leftovers(reading, report)
    lists = [reading for reading in readings if reading.table is LOOMS and not reading.block.joins]
    halls = add_halls(LoomRows(lists, answers, report))
    ask_whole_sheets(lists, halls, answers, report)
    note_spellings(lists, report)
    tell_gone(lists, report)
    settle_numbers(lists, halls, answers, report)
    note_lookalikes(readings, answers, report)
    return result_of(readings, halls, answers, report, files)


def _pools(readings: list[TableReading], answers: Answers, report: Report, today: date) -> list[ColumnPool]:
    pools: dict[tuple[str, str, str], ColumnPool] = {}
    for reading in readings:
        block = reading.block
        for c, heading in block.headings.items():
            meaning = block.recognised.meanings.get(c)
            if meaning is None and not _is_kept(reading, c, answers):
                continue
            column = reading.table.column(meaning.field) if meaning else None
            key = (block.sheet.file, reading.table.name, f"{column.field if column else ''}|{fold(heading)}")
            if key not in pools:
                pools[key] = ColumnPool(reading.table, column, [], answers, report, today, block.recognised.language)
            reading.parts[c] = ColumnPart(block, c, reading.rows)
            pools[key].parts.append(reading.parts[c])
            reading.pools[c] = pools[key]
    return list(pools.values())


def _is_kept(reading: TableReading, column: int, answers: Answers) -> bool:
    """A column that is no field stays where the table has room for the mill's own columns."""
    return bool(reading.table.open_columns) and not answers.ignored(reading.block.called(column))


def _share_decimals(pools: list[ColumnPool]) -> None:
    """The decimal mark that the columns of a file prove, for its columns that prove none."""
    proven: dict[str, set[str]] = defaultdict(set)
    for pool in pools:
        numeric = pool.column is None or pool.column.kind in (Kind.NUMBER, Kind.FRACTION, Kind.INTEGER)
        if numeric and pool.table.open_columns != "conditions":
            proven[pool.parts[0].sheet.file] |= proven_decimals(pool)
    for pool in pools:
        marks = proven[pool.parts[0].sheet.file]
        pool.sheet_decimals = next(iter(marks)) if len(marks) == 1 else ""


def _plan(pool: ColumnPool, readings: list[TableReading]) -> None:
    plan = _plan_of(pool)
    for reading in readings:
        for c, own in reading.pools.items():
            if own is pool:
                reading.plans[c] = plan


def _plan_of(pool: ColumnPool) -> ColumnPlan:
    column = pool.column
    if column is None:
        return ConditionPlan(pool) if pool.table.open_columns == "conditions" else plan_own(pool)
    if column.field == "year":
        return YearPlan(pool)
    if column.kind is Kind.ANY and pool.table.history:
        return ReadingPlan(pool)
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
