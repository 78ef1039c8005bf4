"""What a load found and would change, as the Load screen shows it."""

from collections import Counter
from collections.abc import Sequence

import streamlit as st

from dashboards.parts import Figure, literal, table
from dashboards.speaking import SPEAKER, count
from dashboards.tables import Cell, Head
from tracker.domain.account import HEADING, OWN, REFUSED, TAKEN, SheetAccount
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import Change, RowKey
from tracker.domain.tables import TABLES
from tracker.errors import message
from tracker.services.loading.accounting import ColumnMeaning, asked_cells, mapping, set_aside
from tracker.services.loading.load import LoadReport
from tracker.services.loading.told_changes import row_named, told
from tracker.words.findings import in_words

SEVERITIES = {Severity.REFUSED: "✕ refused", Severity.DOUBT: "? doubt", Severity.NOTE: "i note"}
MOST_ROWS = 500
"""Rows of a table that are shown; the number of the others is said."""
MOST_LOOMS = 30
"""New loom numbers that are listed."""


def load_figures(report: LoadReport) -> list[Figure]:
    rows = [found.rows for found in report.tables]
    added, changed, unchanged, refused, ignored = (
        sum(getattr(r, name) for r in rows) for name in ("added", "changed", "unchanged", "refused", "ignored")
    )
    asked, reasons = len(report.questions), len(report.refused)
    return [
        (
            "Recognised",
            count(len(report.tables), "so-many-tables"),
            f"{ignored:,} rows passed over: titles, sums, notes",
        ),
        ("Would change", f"{added:,} new, {changed:,} changed", f"{unchanged:,} unchanged"),
        ("To answer", count(asked, "so-many-questions"), "nothing is written before" if asked else ""),
        ("Refused", count(refused, "so-many-rows"), count(reasons, "so-many-reasons") if reasons else ""),
    ]


def within_files(report: LoadReport) -> list[Finding]:
    """The findings about what is inside the files; that a file cannot be read is said once, above all."""
    return [f for f in report.findings if f.sheet or f.severity is not Severity.REFUSED]


def show_findings(report: LoadReport) -> None:
    findings = within_files(report)
    if report.findings and not findings:
        return
    st.header("Findings")
    if not findings:
        st.caption("None: every cell could be read without doubt.")
        return
    counts = Counter(finding.severity for finding in findings)
    chosen = st.pills(
        "Show", list(SEVERITIES), default=[s for s in SEVERITIES if counts[s]], selection_mode="multi",
        format_func=lambda s: f"{SEVERITIES[s]} ({counts[s]:,})",
    )  # fmt: skip
    headings = ("File", "Sheet", "Cell", "Heading", "Raw", "Understood", "What", "What to do")
    order = list(SEVERITIES)
    found = sorted((f for f in findings if f.severity in chosen), key=lambda f: order.index(f.severity))
    _first_rows([Head("Severity", whole=True), *map(Head, headings)], [_finding(finding) for finding in found])


def _finding(finding: Finding) -> list[Cell | str]:
    said = in_words(finding, SPEAKER)
    return [
        Cell(SEVERITIES[finding.severity], list(SEVERITIES).index(finding.severity)),
        finding.file,
        finding.sheet,
        finding.cell,
        finding.heading,
        finding.raw,
        said.understood,
        said.message,
        "Answer it above." if finding.severity is Severity.DOUBT else said.hint,
    ]


def show_tables(report: LoadReport) -> None:
    st.header("Recognised tables")
    for found in report.tables:
        source, rows = found.source, found.rows
        name = literal(f"{TABLES[source.table].sheet}: {source.file}, sheet {source.sheet}")
        with st.expander(
            f"{name} ({rows.added:,} new, {rows.changed:,} changed, {rows.unchanged:,} unchanged)",
            expanded=source.table == "looms",
        ):
            st.caption(f"Headings in {'column' if source.transposed else 'row'} {source.heading_row}.")
            columns = [*map(Head, ("Heading", "Cell", "Is", "Unit")), Head("Certainty", right=True)]
            asked = set(asked_cells(report.findings, source))
            _first_rows(columns, [_column(one) for one in mapping(source, asked)])


def show_account(report: LoadReport) -> None:
    """How many filled cells of each sheet went where."""
    if not report.account:
        return
    st.header("Every cell accounted for")
    counts = ("Cells", "In headings", "Taken", "Own headings", "Refused", "Set aside")
    columns = [
        Head("File"),
        Head("Sheet"),
        *(Head(name, right=True) for name in counts),
        Head("Set aside, why and where"),
    ]
    _first_rows(columns, [_account(one) for one in report.account])


def _account(one: SheetAccount) -> list[Cell | str]:
    numbers = [one.cells, *(one.counts.get(what, 0) for what in (HEADING, TAKEN, OWN, REFUSED)), one.set_aside]
    why = "; ".join(SPEAKER.say(set_aside(part)) for part in one.aside)
    return [one.file, one.sheet, *(Cell(f"{number:,}", number) for number in numbers), why]


def _column(meaning: ColumnMeaning) -> list[Cell | str]:
    column = meaning.column
    return [
        column.heading,
        column.cell,
        SPEAKER.say(meaning.understood),
        column.unit,
        Cell(f"{column.certainty:.0%}", column.certainty) if column.field else "",
    ]


def show_changes(report: LoadReport) -> None:
    st.header("What would change")
    added = Counter(change.table for change in report.changes if not change.field)
    changed = [change for change in report.changes if change.field]
    if not added and not changed and not report.retired and report.method is None:
        st.caption(_nothing(report))
    if added:
        st.write("New rows: " + ", ".join(f"{rows:,} × {TABLES[name].sheet}" for name, rows in added.items()) + ".")
        _new_looms(report)
    if changed:
        headings = [
            Head("Sheet", whole=True),
            Head("Row", whole=True),
            *map(Head, ("Value of", "Old", "New")),
        ]
        _first_rows(headings, [_change(change) for change in changed])
    if report.method:
        _method(report)
    for name, gone in report.retired.items():
        st.write(literal(f"{TABLES[name].sheet}: would end: " + ", ".join(_row(name, key) for key in gone) + "."))
    for name, keys in report.missing.items():
        with st.expander(
            f"{TABLES[name].sheet}: {count(len(keys), 'so-many-rows')} of the database not in these files; they stay"
        ):
            st.write(literal(", ".join(_row(name, key) for key in keys)))


def _nothing(report: LoadReport) -> str:
    """Why nothing would change."""
    refused, unchanged = (
        sum(getattr(found.rows, name) for found in report.tables) for name in ("refused", "unchanged")
    )
    if refused:
        return SPEAKER.say(message("nothing-refused", rows=refused, others="yes" if unchanged else "no"))
    return "Nothing: the database says the same already." if unchanged else "Nothing: there are no rows."


def _new_looms(report: LoadReport) -> None:
    """The numbers of the new looms, and a warning for each that looks like one of the database."""
    new = [_row("looms", change.key) for change in report.changes if change.table == "looms" and not change.field]
    if new:
        more = f" and {len(new) - MOST_LOOMS:,} more" if len(new) > MOST_LOOMS else ""
        st.write(literal("New looms: " + ", ".join(new[:MOST_LOOMS]) + more + "."))
    for finding in report.alike:
        said = in_words(finding, SPEAKER)
        st.warning(literal(f"{said.file} {said.sheet} {said.cell}: {said.message} {said.hint}"))


def _change(change: Change) -> list[Cell | str]:
    says = told(change)
    row, old, new = (SPEAKER.own(value) for value in (says.row, says.old, says.new))
    return [says.sheet, row, says.heading, old or "empty", new or "empty"]


def _row(table: str, key: RowKey) -> str:
    return SPEAKER.own(row_named(table, key))


def _method(report: LoadReport) -> None:
    assert report.method
    st.write(f"A new method version {report.method_version or ''}:")
    table([Head("Row of the method")], [[SPEAKER.say(row.says)] for row in report.method.rows[:MOST_ROWS]])
    table(
        [Head("What it changes for which looms")],
        [[SPEAKER.say(looms.says)] for looms in report.method.looms[:MOST_ROWS]],
    )


def _first_rows(columns: Sequence[Head], rows: Sequence[Sequence[Cell | str]]) -> None:
    table(columns, rows[:MOST_ROWS])
    if len(rows) > MOST_ROWS:
        st.caption(f"and {len(rows) - MOST_ROWS:,} more")
