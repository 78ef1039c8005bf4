"""What a load found and would change, as the Load screen shows it."""

from collections import Counter

import streamlit as st

from dashboards.parts import Figure, heads, literal, table
from dashboards.speaking import SPEAKER, count, listed, number, say, share
from dashboards.tables import Cell, Head, RowsAsShown
from tracker.domain.account import HEADING, OWN, REFUSED, TAKEN, SheetAccount
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import RowKey
from tracker.domain.tables import TABLES
from tracker.services.loading.accounting import ColumnMeaning, asked_cells, mapping, set_aside
from tracker.services.loading.load import LoadReport
from tracker.services.loading.told_changes import ToldChange, row_named, told
from tracker.words.findings import in_words

SEVERITIES = [Severity.REFUSED, Severity.DOUBT, Severity.NOTE]
"""The gravest first."""
MOST_LOOMS = 30
"""New loom numbers that are listed."""


def load_figures(report: LoadReport) -> list[Figure]:
    rows = [found.rows for found in report.tables]
    added, changed, unchanged, refused, ignored = (
        sum(getattr(r, name) for r in rows) for name in ("added", "changed", "unchanged", "refused", "ignored")
    )
    asked, reasons = len(report.questions), len(report.refused)
    return [
        (say("load-recognised"), count(len(report.tables), "so-many-tables"), say("load-passed-over", rows=ignored)),
        (
            say("load-changes"),
            say("load-new-and-changed", added=added, changed=changed),
            say("load-unchanged", unchanged=unchanged),
        ),
        (say("load-to-answer"), count(asked, "so-many-questions"), say("load-not-before") if asked else ""),
        (say("load-refused"), count(refused, "so-many-rows"), count(reasons, "so-many-reasons") if reasons else ""),
    ]


def within_files(report: LoadReport) -> list[Finding]:
    """The findings about what is inside the files; that a file cannot be read is said once, above all."""
    return [f for f in report.findings if f.sheet or f.severity is not Severity.REFUSED]


def show_findings(report: LoadReport) -> None:
    findings = within_files(report)
    if report.findings and not findings:
        return
    st.header(say("load-findings"))
    if not findings:
        st.caption(say("load-no-findings"))
        return
    counts = Counter(finding.severity for finding in findings)
    chosen = st.pills(
        say("load-show"), SEVERITIES, default=[s for s in SEVERITIES if counts[s]], selection_mode="multi",
        format_func=lambda s: say("load-severity-count", severity=_severity(s), many=counts[s]),
    )  # fmt: skip
    headings = (
        "load-head-file", "load-head-sheet", "load-head-cell", "load-head-heading", "load-head-raw", "load-head-understood",
        "load-head-what", "load-head-to-do",
    )  # fmt: skip
    found = sorted((f for f in findings if f.severity in chosen), key=lambda f: SEVERITIES.index(f.severity))
    columns = [Head(say("load-head-severity"), whole=True), *(Head(say(code)) for code in headings)]
    table(columns, RowsAsShown(found, _finding))


def _severity(severity: Severity) -> str:
    """Its sign and its word."""
    return say("load-severity", severity=str(severity))


def _finding(finding: Finding) -> list[Cell | str]:
    said = in_words(finding, SPEAKER)
    return [
        Cell(_severity(finding.severity), SEVERITIES.index(finding.severity)),
        finding.file,
        finding.sheet,
        finding.cell,
        finding.heading,
        finding.raw,
        said.understood,
        said.message,
        say("load-answer-above") if finding.severity is Severity.DOUBT else said.hint,
    ]


def show_tables(report: LoadReport) -> None:
    st.header(say("load-tables"))
    for found in report.tables:
        source, rows = found.source, found.rows
        name = say("load-table-named", table=TABLES[source.table].named, file=source.file, sheet=source.sheet)
        parts = say("load-table-rows", added=rows.added, changed=rows.changed, unchanged=rows.unchanged)
        with st.expander(f"{literal(name)} {parts}", expanded=source.table == "looms"):
            way = "column" if source.transposed else "row"
            st.caption(say("load-headings-in", way=way, place=str(source.heading_row)))
            headings = ("load-head-heading", "load-head-cell", "load-head-is", "load-head-unit")
            columns = [*(Head(say(code)) for code in headings), Head(say("load-head-certainty"), right=True)]
            asked = set(asked_cells(report.findings, source))
            table(columns, [_column(one) for one in mapping(source, asked)], name=name)


def show_account(report: LoadReport) -> None:
    """How many filled cells of each sheet went where."""
    if not report.account:
        return
    st.header(say("load-account"))
    counts = (
        "load-head-cells",
        "load-head-in-headings",
        "load-head-taken",
        "load-head-own",
        "load-refused",
        "load-head-aside",
    )
    columns = [
        Head(say("load-head-file")),
        Head(say("load-head-sheet")),
        *(Head(say(code), right=True) for code in counts),
        Head(say("load-head-aside-why")),
    ]
    table(columns, [_account(one) for one in report.account])


def _account(one: SheetAccount) -> list[Cell | str]:
    numbers = [one.cells, *(one.counts.get(what, 0) for what in (HEADING, TAKEN, OWN, REFUSED)), one.set_aside]
    why = "; ".join(SPEAKER.say(set_aside(part)) for part in one.aside)
    return [one.file, one.sheet, *(Cell(number(many), many) for many in numbers), why]


def _column(meaning: ColumnMeaning) -> list[Cell | str]:
    column = meaning.column
    return [
        column.heading,
        column.cell,
        SPEAKER.say(meaning.understood),
        column.unit,
        Cell(share(column.certainty), column.certainty) if column.field else "",
    ]


def show_changes(report: LoadReport) -> None:
    st.header(say("load-would-change"))
    added = Counter(change.table for change in report.changes if not change.field)
    changed = [change for change in report.changes if change.field]
    if not added and not changed and not report.retired and report.method is None:
        st.caption(_nothing(report))
    if added:
        new = [say("load-rows-of", many=rows, sheet=TABLES[name].named) for name, rows in added.items()]
        st.write(literal(say("load-new-rows", rows=", ".join(new))))
        _new_looms(report)
    if changed:
        table(value_heads(), RowsAsShown(changed, lambda change: value_line(told(change))))
    if report.method:
        _method(report)
    for name, gone in report.retired.items():
        rows = ", ".join(_row(name, key) for key in gone)
        st.write(literal(say("load-would-end", sheet=TABLES[name].named, rows=rows)))
    for name, keys in report.missing.items():
        with st.expander(literal(say("rows-not-in-files", sheet=TABLES[name].named, many=len(keys)))):
            st.write(literal(", ".join(_row(name, key) for key in keys)))


def _nothing(report: LoadReport) -> str:
    """Why nothing would change."""
    refused, unchanged = (
        sum(getattr(found.rows, name) for found in report.tables) for name in ("refused", "unchanged")
    )
    if refused:
        return say("nothing-refused", rows=refused, others=bool(unchanged))
    return say("load-same-already") if unchanged else say("load-no-rows")


def _new_looms(report: LoadReport) -> None:
    """The numbers of the new looms, and a warning for each that looks like one of the database."""
    new = [_row("looms", change.key) for change in report.changes if change.table == "looms" and not change.field]
    if new:
        st.write(literal(say("load-new-looms", looms=listed(new, MOST_LOOMS))))
    for finding in report.alike:
        said = in_words(finding, SPEAKER)
        st.warning(literal(f"{said.file} {said.sheet} {said.cell}: {said.message} {said.hint}"))


def value_heads() -> list[Head]:
    """Of a table of values that are others then."""
    return [
        *heads("load-head-sheet", "load-head-row", whole=True),
        *heads("load-head-value-of", "load-head-old", "load-head-new"),
    ]


def value_line(says: ToldChange) -> list[Cell | str]:
    row, old, new = (SPEAKER.own(value) for value in (says.row, says.old, says.new))
    heading = says.heading if isinstance(says.heading, str) else SPEAKER.say(says.heading)
    return [SPEAKER.say(says.sheet), row, heading, old or say("empty-value"), new or say("empty-value")]


def _row(table: str, key: RowKey) -> str:
    return SPEAKER.own(row_named(table, key))


def _method(report: LoadReport) -> None:
    assert report.method
    st.write(say("load-new-method", version=report.method_version))
    for heading, found in (
        ("load-head-method-row", report.method.rows),
        ("load-head-method-looms", report.method.looms),
    ):
        table([Head(say(heading))], RowsAsShown(found, lambda one: [SPEAKER.say(one.says)]))
