"""The list of findings as the first sheet of a marked copy."""

import re
from collections.abc import Sequence

from tracker.domain.addresses import cell_name
from tracker.domain.findings import Severity
from tracker.export.wording import Wording
from tracker.office.patching.styles import MAIN, Styles
from tracker.office.patching.xml import attribute, element_text
from tracker.words.findings import FindingInWords
from tracker.words.formats import count

COLOURS = {Severity.REFUSED: "F3B8A8", Severity.DOUBT: "F8E08E", Severity.NOTE: "CFE2EE"}
HEADINGS = (
    "col-severity", "col-sheet", "col-cell", "col-heading", "col-in-the-cell", "col-understood-as", "col-what-was-found",
    "col-what-to-do", "col-code",
)  # fmt: skip
"""Their codes."""
_ADDRESS = re.compile(r"[A-Z]{1,3}\d+(:[A-Z]{1,3}\d+)?")
_COUNTED = {Severity.REFUSED: "so-many-refused", Severity.DOUBT: "so-many-doubts", Severity.NOTE: "so-many-notes"}
_WIDTHS = (11, 18, 12, 20, 22, 22, 60, 60, 20)


def title(write: Wording) -> str:
    """Name of the sheet."""
    return write.say("book-findings")


def headings(write: Wording) -> list[str]:
    return [write.say(code) for code in HEADINGS]


def summary(findings: Sequence[FindingInWords], write: Wording) -> list[str]:
    """Sentences above the list."""
    by = {severity: sum(finding.severity is severity for finding in findings) for severity in Severity}
    of_each = [count(number, _COUNTED[severity], write.language) for severity, number in reversed(by.items()) if number]
    many = count(len(findings), "so-many-findings", write.language)
    return [
        write.say("book-findings-title"),
        write.say("book-findings-counted", many=many, each=", ".join(of_each) or None),
        write.say("book-findings-mend"),
    ]


def severity(write: Wording, of: Severity) -> str:
    """Its word."""
    return write.say("finding-severity", severity=str(of))


def ordered(findings: Sequence[FindingInWords]) -> list[FindingInWords]:
    """Refused first, then doubts, then notes."""
    order = list(reversed(Severity))
    return sorted(findings, key=lambda finding: order.index(finding.severity))


def rows(findings: Sequence[FindingInWords], write: Wording) -> list[tuple[str, ...]]:
    """One row per finding, in order, of `HEADINGS`."""
    return [
        (severity(write, f.severity), f.sheet, f.cell, f.heading, f.raw, f.understood, f.message, f.hint, f.code)
        for f in ordered(findings)
    ]


def sheet_xml(
    findings: Sequence[FindingInWords], lines: Sequence[str], styles: Styles, sheets: frozenset[str], write: Wording
) -> bytes:
    """The worksheet part; cells of the sheets named in `sheets` are links to where they stand."""
    first = len(lines) + 2
    body = [_row(number, (line,), styles.plain(bold=number == 1, wrap=False)) for number, line in enumerate(lines, 1)]
    body.append(_row(first, headings(write), styles.plain(bold=True, colour="DDE5E8")))
    links = []
    told = zip(ordered(findings), rows(findings, write), strict=True)
    for number, (finding, row) in enumerate(told, first + 1):
        body.append(_row(number, row, styles.plain(), styles.plain(bold=True, colour=COLOURS[finding.severity])))
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
