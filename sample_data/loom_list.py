"""The mill's own loom list, as untidy as a real one: titles, a two-line heading, hall headings, comma decimals."""

from collections.abc import Iterable
from typing import Any

from openpyxl import Workbook
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter

from sample_data.book import new_book, print_wide
from sample_data.hall import ATTRIBUTES
from tracker.domain.mill import Loom, LoomKey

HEADINGS = (
    ("Loom", "no.", 8), ("Row", "", 6), ("Place", "", 7), ("Section", "", 8), ("Machine", "type", 10), ("Insertion", "", 10),
    ("Year", "built", 7), ("Reed width", "(cm)", 12), ("Frames", "", 8), ("Speed", "(picks/min)", 15),
    ("Efficiency", "(%)", 11), ("Saving", "per day", 9), ("Capacity", "unsold", 9), ("Protected", "until", 12),
    ("Rail", "", 11), ("Leno", "side", 8), ("Creel", "", 16), ("Extra", "ends", 10), ("Waste", "drop wires", 11),
    ("Controller", "generation", 11), ("Cable", "duct", 8), ("Notes", "", 44),
)  # fmt: skip
UNIT_IN_CELL = {LoomKey("Hall 1", "009"), LoomKey("Hall 1", "027"), LoomKey("Hall 2", "R-12")}
TWICE = LoomKey("Hall 1", "018")
"""Listed again at the foot of its hall, with the same values."""
QUESTION_MARK = LoomKey("Hall 1", "031")
"""What is not known of this loom stands as `?`; of the other one the cell is empty."""
BIG, BOLD, GREY = Font(bold=True, size=14), Font(bold=True), Font(italic=True, color="666666")
SHADE, BAND = PatternFill("solid", fgColor="DDE3E0"), PatternFill("solid", fgColor="F1EFE8")
LINE = Border(bottom=Side(style="thin", color="888888"))
LEFT = Alignment(horizontal="left", indent=1)
CENTRE = Alignment(horizontal="center", vertical="center", wrap_text=True)


def loom_list(looms: Iterable[Loom]) -> Workbook:
    looms = list(looms)
    book = new_book("Loom list")
    sheet = book.create_sheet("Weaving halls")
    sheet.append(["Loom list of the weaving mill (invented sample)"])
    sheet.append(["As of Saturday 2 January 2027, kept by the maintenance office; the next walk is in spring"])
    sheet.append([])
    sheet["A1"].font, sheet["A2"].font = BIG, GREY
    _heading(sheet)
    for hall in dict.fromkeys(loom.hall for loom in looms):
        _hall(sheet, hall, [loom for loom in looms if loom.hall == hall])
    sheet.append([])
    sheet.append(
        ["Widths are reed widths. Speeds are those set on the loom, efficiencies the mean of the last quarter."]
    )
    sheet.freeze_panes = "B6"
    print_wide(sheet)
    return book


def _heading(sheet: Any) -> None:
    for line in (0, 1):
        sheet.append([heading[line] or None for heading in HEADINGS])
    for i, (_, _, width) in enumerate(HEADINGS, start=1):
        sheet.column_dimensions[get_column_letter(i)].width = width
    for cells in sheet.iter_rows(min_row=4, max_row=5):
        for cell in cells:
            cell.font, cell.fill, cell.alignment = BOLD, SHADE, CENTRE
            if cell.row == 5:
                cell.border = LINE


def _hall(sheet: Any, hall: str, looms: list[Loom]) -> None:
    sheet.append([hall])
    at = sheet.max_row
    sheet.merge_cells(start_row=at, end_row=at, start_column=1, end_column=len(HEADINGS))
    sheet.cell(at, 1).font, sheet.cell(at, 1).fill = BOLD, BAND
    for loom in [*looms, *(loom for loom in looms if loom.key == TWICE)]:
        sheet.append(_line(loom))
        for cell in sheet[sheet.max_row]:
            cell.alignment = LEFT
        sheet.cell(sheet.max_row, 1).number_format = "@"
        sheet.cell(sheet.max_row, 14).number_format = "dd.mm.yyyy"


def _line(loom: Loom) -> list[Any]:
    """The cells of one loom; widths, efficiencies and savings with a decimal comma where they have decimals."""
    odd = loom.key in UNIT_IN_CELL
    return [
        loom.loom, int(loom.row or 0), int(loom.place or 0), loom.section, loom.machine_type, loom.insertion, loom.year,
        f"{comma(loom.reed_width_cm, 1)} cm" if odd else comma(loom.reed_width_cm, 1),
        loom.frames,
        f"{loom.speed_ppm:.0f} picks/min" if odd else int(loom.speed_ppm or 0),
        comma((loom.efficiency or 0) * 100, 1),
        comma(loom.saving_per_day, 2),
        "yes" if loom.capacity_unsold else None,
        loom.protected_until,
        *(_attribute(loom, name) for name in ATTRIBUTES),
        loom.notes,
    ]  # fmt: skip


def _attribute(loom: Loom, name: str) -> Any:
    value = loom.attributes[name]
    return "?" if value is None and loom.key == QUESTION_MARK else value


def comma(value: float | None, decimals: int) -> str | None:
    return None if value is None else f"{value:.{decimals}f}".replace(".", ",")
