"""Comments on the cells of a list: a value may be no more what it seems (`wrong, see Ali`), so what they say is told."""

from collections import defaultdict

from tracker.domain.addresses import Cell
from tracker.intake.account import Files, is_own
from tracker.intake.report import Report


def tell_comments(files: Files, report: Report) -> None:
    """Note what comments say on the sheets that have tables, once for a text of a sheet. Those on the headings of a workbook of
    ours are ours, whatever name a spreadsheet programme has put to them."""
    headings = _our_headings(files)
    for sheet in files.sheets:
        place = (sheet.file, sheet.name)
        cells: dict[str, list[Cell]] = defaultdict(list)
        for cell, text in sheet.extras.comments.items() if place in headings else ():
            if cell[0] not in headings[place]:
                cells[text].append(cell)
        for text, some in cells.items():
            report.commented(sheet, some, text)


def _our_headings(files: Files) -> dict[tuple[str, str], set[int]]:
    """(file, sheet) of each sheet with tables → the rows of its headings that we wrote."""
    ours = {sheet.file for sheet in files.sheets if is_own(sheet)}
    found: dict[tuple[str, str], set[int]] = defaultdict(set)
    for block in files.blocks:
        lines = range(block.top, block.bottom + 1) if block.sheet.file in ours else ()
        found[block.sheet.file, block.sheet.name].update(block.sheet.line_number(row) for row in lines)
    return found
