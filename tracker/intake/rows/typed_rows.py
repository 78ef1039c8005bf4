"""Typed rows, and where each value stood, from the values of the columns."""

from collections.abc import Iterable

from tracker.domain.findings import Severity
from tracker.domain.rows import ReadResult, SourceColumn, SourceTable, TypedRow
from tracker.domain.tables import LOOMS
from tracker.domain.words import fold
from tracker.intake.account import Files
from tracker.intake.answers import UNIT, Answers
from tracker.intake.columns.number_columns import NumberPlan
from tracker.intake.columns.pool import ColumnPart
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report, answers_for
from tracker.intake.rows.joining import joined
from tracker.intake.rows.term_rows import typed_term
from tracker.intake.vocabulary.headings import match_heading


def result_of(
    readings: list[TableReading], halls: dict[tuple[int, int], str], answers: Answers, report: Report, files: Files
) -> ReadResult:
    """What the tables say, with every finding so far. `halls`: (id of the reading, row index) → hall of a loom."""
    sources, rows, more = [], [], []
    refused: dict[int, int] = {}
    ignored: dict[int, int] = {}
    for source, reading in enumerate(readings):
        sources.append(_source(reading))
        found = list(_typed_rows(reading, source, halls, report))
        (more if reading.block.joins else rows).extend(found)
        refused[source], ignored[source] = len(reading.refused), reading.ignored
    _note_recalled(answers, readings, report)
    rows, against = joined(rows, more, sources) if more else (rows, [])
    for finding in against:
        refused[finding.rows[0][0]] += 1
    findings = (*report.findings(), *against)
    account = files.account(readings)
    return ReadResult(tuple(sources), tuple(rows), findings, refused, ignored, dict(answers.used), account)


def _typed_rows(
    reading: TableReading, source: int, halls: dict[tuple[int, int], str], report: Report
) -> Iterable[TypedRow]:
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
            if body.section:
                values["section"] = body.section
            if body.machine_type:
                values["machine_type"] = body.machine_type
        if table.name == "terms" and i not in reading.refused:
            values = typed_term(reading, i, values, report)
        if i not in reading.refused and i not in reading.unfilled:
            number = block.sheet.line_number(body.row)
            if i not in reading.several:
                yield TypedRow(table.name, values, kept, source, number)
            for loom in reading.several.get(i, ()):
                yield TypedRow(table.name, values | {"loom": loom}, kept, source, number)


def own_names(reading: TableReading) -> dict[int, str]:
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


def _source(reading: TableReading) -> SourceTable:
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
                ColumnPart(block, c, []).heading_cell,
                meaning.field if meaning else "",
                unit,
                meaning.certainty if meaning else match_certainty(block.headings[c]),
                c in reading.plans,
                meaning is not None
                and meaning.certainty >= 1
                and _certainty_of(block.headings[c], meaning.field) < 0.9,
            )
        )
    heading_row = sheet.place(block.bottom, block.columns[0])[1 if sheet.transposed else 0]
    return SourceTable(sheet.file, sheet.name, reading.table.name, heading_row, tuple(columns), sheet.transposed)


def _certainty_of(heading: str, field: str) -> float:
    return max((entry.weight for entry in match_heading(heading).candidates if entry.field == field), default=0.0)


def match_certainty(heading: str) -> float:
    """How surely a heading is none of our fields."""
    match = match_heading(heading)
    return round(1 - (match.candidates[0].weight if match.candidates else 0), 2)


def _note_recalled(answers: Answers, readings: list[TableReading], report: Report) -> None:
    for key in sorted(answers.recalled):
        kind, _, heading = key.partition("|")
        sheet = readings[0].block.sheet if readings else None
        if sheet is not None:
            choices = answers_for(heading, "…") if kind != UNIT else ()
            report.whole(
                Severity.NOTE,
                "answer-remembered",
                sheet,
                "",
                heading=heading,
                understood=answers.used[key],
                choices=choices,
            )
