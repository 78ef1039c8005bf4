"""A small invented mill, its texts as hostile as a spreadsheet can bring them, and the workbooks it comes in."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

from openpyxl import Workbook

from tracker.domain.tables import TABLES

START = date(2026, 1, 5)
"""A Monday; every command that asks for a moment is given this one."""
AS_OF = "2026-01-05T06:00"
HALLS = ("Hall 1", "H<2>")
LOOMS = (
    ("Hall 1", "007"), ("Hall 1", "O'Brien \"2\""), ("Hall 1", "[red]9[/red]"), ("Hall 1", "%s {0} \\n"),
    ("H<2>", "007"), ("H<2>", "Ω 织机 \u202e21"), ("H<2>", "<b>8</b>"), ("H<2>", "x7'; DROP TABLE looms; --"),
)  # fmt: skip
"""Hall and number. The first six are planned; 007 stands twice."""
NASTY = (
    "=1+1", "<script>alert(1)</script>", "[link=file:///etc/passwd]here[/link]", "\u202eesrever\u202c", "🧵" * 40,
    "'; DELETE FROM parts; --", "%(x)s %n {0.__class__}", "a\tb", "x" * 2000,
)  # fmt: skip
PARTS = {"RAIL": 3.0, "NUT": 500.0, "LAST": 1.0, "COUNTED": 500.0, "GAUGE": 9.0, "P [b]&\"'": 7.0}
"""Part → on hand."""
ON_HAND, ORDERED = PARTS["RAIL"], 4.0
CREW = "F'1"


def rows_of(table: str, records: Sequence[Mapping[str, Any]], more: Sequence[str] = ()) -> list[list[Any]]:
    """A sheet: the headings that the records use, and their values."""
    fields = [c for c in TABLES[table].columns if any(c.field in record for record in records)]
    names = [c.field for c in fields] + list(more)
    return [[*(c.title for c in fields), *more], *([record.get(name) for name in names] for record in records)]


def write_book(path: Path, sheets: Mapping[str, Sequence[Sequence[Any]]]) -> Path:
    """Texts stay texts, also where they look like a formula."""
    book = Workbook()
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for i, row in enumerate(rows, 1):
            for j, value in enumerate(row, 1):
                cell = sheet.cell(i, j, value)
                if isinstance(value, str):
                    cell.data_type = "s"
    book.remove(book.worksheets[0])
    book.save(path)
    return path


def whole_mill() -> dict[str, list[list[Any]]]:
    """Every sheet that a plan needs. Loom 007 of hall 1 has 12 h of warp left: 600 picks/min at 20/cm weave 18 m/h."""
    looms = [
        {"loom": loom, "hall": hall, "machine_type": "AJ", "speed_ppm": 600, "efficiency": 100, "saving_per_day": 40,
         "notes": NASTY[i % len(NASTY)], "rail": "drilled" if i % 2 else "undrilled"}
        for i, (hall, loom) in enumerate(LOOMS)
    ]  # fmt: skip
    warps = [
        {"loom": loom, "hall": hall, "sequence": 0, "article": "A'1", "set_length_m": 3000, "warp_left_m": 216 + 450 * i,
         "read_at": datetime(2026, 1, 5, 6), "change": "style"}
        for i, (hall, loom) in enumerate(LOOMS[:6])
    ]  # fmt: skip
    parts = [
        {"part": part, "description": NASTY[i], "unit": "pc", "on_hand": quantity, "price": 10, "lead_time_days": 7,
         "supplier": f"S/{i}: <{NASTY[i][:20]}>"}
        for i, (part, quantity) in enumerate(PARTS.items())
    ]  # fmt: skip
    receipts = [
        {"order": "PO-1", "part": "RAIL", "quantity": ORDERED, "due": date(2026, 1, 19)},
        {"order": "PO'2", "part": "NUT", "quantity": 40, "due": date(2026, 1, 26)},
    ]
    crew = {"trade": "fitter", "heads": 2, "shift_start": time(6), "shift_end": time(14), "rate_per_head_h": 30}
    return {
        "Looms": rows_of("looms", looms, ["rail"]),
        "Warps": rows_of("warps", warps),
        "Articles": rows_of("articles", [{"article": "A'1", "pick_density_per_cm": 20, "take_up": 0}]),
        "Changes": rows_of("changes", [{"kind": kind, "hours_h": 2} for kind in ("repeat", "style")]),
        "Parts": rows_of("parts", parts),
        "Receipts": rows_of("receipts", receipts),
        "Crews": rows_of("crews", [crew | {"crew": CREW}]),
        "Terms": [["Term", "Value"], ["programme", NASTY[1]], ["time zone", "Europe/Vienna"], ["start", START],
                  ["horizon (days)", 42], ["soak (days)", 0]],
        **method(),
    }  # fmt: skip


def method(mount_min: float = 60) -> dict[str, list[list[Any]]]:
    operations = [
        {"step": 10, "operation": "mount", "minutes": mount_min, "trade": "fitter", "heads": 2, "caution": NASTY[0]},
        {"step": 20, "operation": "drill", "minutes": 90, "trade": "fitter", "heads": 2, "rail": "undrilled"},
    ]
    kit = [
        {"part": "RAIL", "quantity": 1},
        {"part": "NUT", "quantity": 8},
        {"part": "GAUGE", "quantity": 1, "comes_back": "yes"},
    ]
    return {"Operations": rows_of("operations", operations, ["rail"]), "Kit lines": rows_of("kit_lines", kit)}


def changed_mill() -> dict[str, list[list[Any]]]:
    """Touches many tables: new looms, a changed one, counts of parts, a new method version."""
    looms = [{"loom": f"N{i}", "hall": "Hall 1", "machine_type": "RP", "notes": NASTY[0]} for i in range(60)]
    looms.append({"loom": "007", "hall": "Hall 1", "machine_type": "AJ", "speed_ppm": 610})
    parts = [{"part": "COUNTED", "on_hand": 600}, {"part": "NEW", "on_hand": 5}]
    return {"Looms": rows_of("looms", looms), "Parts": rows_of("parts", parts), **method(mount_min=75)}
