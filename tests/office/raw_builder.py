"""Builds small packages by hand, part by part, so that each test says exactly what the file holds."""

import zipfile
from pathlib import Path

from tracker.office.guarding.check_file import check_file
from tracker.office.sheet import Extras

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
TYPES = (
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Override PartName="/xl/workbook.xml" '
    'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
    "</Types>"
)
OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"


def sheet_xml(rows: str, before: str = "", after: str = "") -> str:
    return f'<worksheet xmlns="{MAIN}">{before}<sheetData>{rows}</sheetData>{after}</worksheet>'


def xlsx(path: Path, rows: str = "", *, before="", after="", styles="", strings="", state="", extra=()) -> Path:
    """A workbook with one sheet `Looms` whose row elements are `rows`; `extra`: further (name, content) parts."""
    state = f' state="{state}"' if state else ""
    parts = {
        "[Content_Types].xml": TYPES,
        "_rels/.rels": f'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<workbook xmlns="{MAIN}" xmlns:r="{OFFICE}"><sheets>'
        f'<sheet name="Looms" sheetId="1"{state} r:id="rId1"/></sheets></workbook>',
        "xl/_rels/workbook.xml.rels": '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{OFFICE}/worksheet" Target="worksheets/sheet1.xml"/>'
        f'<Relationship Id="rId2" Type="{OFFICE}/styles" Target="styles.xml"/>'
        f'<Relationship Id="rId3" Type="{OFFICE}/sharedStrings" Target="sharedStrings.xml"/></Relationships>',
        "xl/styles.xml": styles
        or f'<styleSheet xmlns="{MAIN}"><cellXfs count="1"><xf numFmtId="0"/></cellXfs></styleSheet>',
        "xl/sharedStrings.xml": strings or f'<sst xmlns="{MAIN}"/>',
        "xl/worksheets/sheet1.xml": sheet_xml(rows, before, after),
    } | dict(extra)
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return path


ODS_NAMES = " ".join(
    f'xmlns:{prefix}="urn:oasis:names:tc:opendocument:xmlns:{urn}:1.0"'
    for prefix, urn in (
        ("office", "office"),
        ("table", "table"),
        ("text", "text"),
        ("style", "style"),
        ("number", "datastyle"),
    )
)


def ods(path: Path, tables: str, styles: str = "", manifest: str = "<manifest/>") -> Path:
    """An OpenDocument spreadsheet with the given table elements and automatic styles."""
    content = (
        f"<office:document-content {ODS_NAMES}><office:automatic-styles>{styles}</office:automatic-styles>"
        f"<office:body><office:spreadsheet>{tables}</office:spreadsheet></office:body></office:document-content>"
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet", zipfile.ZIP_STORED)
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", manifest)
    return path


def extras(path: Path, sheet: str = "Looms") -> Extras:
    """What the walk through a workbook finds beside the values of a sheet."""
    return next(walked.extras for walked in check_file(path).sheets if walked.name == sheet)
