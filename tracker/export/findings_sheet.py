"""The list of findings as the first sheet of a marked copy."""

import re
from collections.abc import Sequence

from tracker.domain.addresses import cell_name
from tracker.domain.findings import Severity
from tracker.domain.own_sheets import FINDINGS_TITLE
from tracker.office.patching.styles import MAIN, Styles
from tracker.office.patching.xml import attribute, element_text
from tracker.words.findings import FindingInWords
from tracker.words.formats import count

SHEET = "Findings"
COLOURS = {Severity.REFUSED: "F3B8A8", Severity.DOUBT: "F8E08E", Severity.NOTE: "CFE2EE"}
HEADINGS = (
    "Severity",
    "Sheet",
    "Cell",
    "Heading",
    "In the cell",
    "Understood as",
    "What was found",
    "What to do",
    "Code",
)
_ADDRESS = re.compile(r"[A-Z]{1,3}\d+(:[A-Z]{1,3}\d+)?")
_COUNTED = {Severity.REFUSED: "so-many-refused", Severity.DOUBT: "so-many-doubts", Severity.NOTE: "so-many-notes"}
_WIDTHS = (11, 18, 12, 20, 22, 22, 60, 60, 20)


def summary(findings: Sequence[FindingInWords]) -> list[str]:
    """Sentences above the list."""
    by = {severity: sum(finding.severity is severity for finding in findings) for severity in Severity}
    counts = ", ".join(count(number, _COUNTED[severity]) for severity, number in reversed(by.items()) if number)
    return [
        FINDINGS_TITLE,
        f"{count(len(findings), 'so-many-findings')}: {counts or 'nothing to mend'}. Marked cells are coloured and carry a comment "
        "that begins with the severity.",
        "Mend the cells in this copy and load it: this sheet is passed over, and everything else is as it was.",
    ]


def rows(findings: Sequence[FindingInWords]) -> list[tuple[str, ...]]:
    """One row per finding in the order of `HEADINGS`: refused first, then doubts, then notes."""
    order = list(reversed(Severity))
    ordered = sorted(findings, key=lambda finding: order.index(finding.severity))
    return [
        (str(f.severity), f.sheet, f.cell, f.heading, f.raw, f.understood, f.message, f.hint, f.code) for f in ordered
    ]


def sheet_xml(
    findings: Sequence[FindingInWords], lines: Sequence[str], styles: Styles, sheets: frozenset[str]
) -> bytes:
    """The worksheet part; cells of the sheets named in `sheets` are links to where they stand."""
    first = len(lines) + 2
    body = [_row(number, (line,), styles.plain(bold=number == 1, wrap=False)) for number, line in enumerate(lines, 1)]
    body.append(_row(first, HEADINGS, styles.plain(bold=True, colour="DDE5E8")))
    links = []
    for number, row in enumerate(rows(findings), first + 1):
        body.append(_row(number, row, styles.plain(), styles.plain(bold=True, colour=COLOURS[Severity(row[0])])))
        if row[1] in sheets and _ADDRESS.fullmatch(row[2]):
            place = "'" + row[1].replace("'", "''") + "'!" + row[2]
            links.append(f'<hyperlink ref="C{number}" location="{attribute(place)}"/>')
    columns = "".join(f'<col min="{i}" max="{i}" width="{w}" customWidth="1"/>' for i, w in enumerate(_WIDTHS, 1))
    last = cell_name((first + len(findings), len(HEADINGS)))
    return (
        f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="{MAIN}"><sheetPr><pageSetUpPr '
        f'fitToPage="1"/></sheetPr><sheetViews><sheetView tabSelected="1" workbookViewId="0"><pane ySplit="{first}" '
        f'topLeftCell="A{first + 1}" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>'
        f'<cols>{columns}</cols><sheetData>{"".join(body)}</sheetData><autoFilter ref="A{first}:{last}"/>'
        f"{'<hyperlinks>' + ''.join(links) + '</hyperlinks>' if links else ''}"
        '<pageSetup paperSize="9" orientation="landscape" fitToHeight="0"/></worksheet>'
    ).encode()


def _row(number: int, texts: Sequence[str], style: int, first_style: int | None = None) -> str:
    styles = [style if first_style is None else first_style] + [style] * (len(texts) - 1)
    cells = "".join(
        f'<c r="{cell_name((number, i))}" s="{s}" t="inlineStr"><is><t xml:space="preserve">{element_text(text)}</t>'
        "</is></c>"
        for i, (text, s) in enumerate(zip(texts, styles, strict=True), 1)
        if text or s != style
    )
    return f'<row r="{number}">{cells}</row>'
