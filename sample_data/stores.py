"""Invented parts, stock and open order lines of the stockroom. Prices are plausible, no supplier's."""

from dataclasses import replace
from datetime import date, timedelta
from math import ceil

from tracker.domain.mill import Part, Receipt

NORTH, SOUTH, ELECTRIC, OWN = "Supplier North", "Supplier South", "Supplier Electric", "own workshop"

STOCK = tuple(
    Part(part, on_hand, description, unit, safety, lead, lot, least, price, supplier, location)
    for part, description, unit, on_hand, safety, lead, lot, least, price, supplier, location in (
        ("DEV-L", "leno device, motor-driven, left", "pc", 16, 1, 42, 4, 8, 780, NORTH, "A-01"),
        ("DEV-R", "leno device, motor-driven, right", "pc", 16, 1, 42, 4, 8, 780, NORTH, "A-02"),
        ("SUP-12", "support for up to 12 frames", "pc", 30, 2, 28, 10, 10, 64, NORTH, "A-03"),
        ("SUP-20", "support for 13 to 20 frames, long arm", "pc", 18, 2, 28, 10, 10, 82, NORTH, "A-04"),
        ("TRANSPORT-LOCK", "transport lock of a device, goes back to stock", "pc", 220, 0, 14, 10, 10, 40, NORTH,
         "A-05"),
        ("RAIL-N", "cross rail, drilled, up to 230 cm", "pc", 4, 0, 56, 4, 4, 420, SOUTH, "R-01"),
        ("RAIL-M", "cross rail, drilled, 231 to 300 cm", "pc", 1, 0, 56, 2, 2, 760, SOUTH, "R-02"),
        ("RAIL-W", "cross rail, drilled, 301 to 360 cm", "pc", 0, 0, 70, 2, 2, 1350, SOUTH, "R-03"),
        ("SCREW-M10-30", "hexagon screw M10 × 30, property class 8.8", "pc", 900, 50, 7, 100, 100, 0.42, SOUTH, "C-01"),
        ("SCREW-M10-45", "hexagon screw M10 × 45, property class 8.8", "pc", 500, 50, 7, 100, 100, 0.55, SOUTH, "C-02"),
        ("WASHER-LOCK", "wedge-lock washer for M10", "pc", 1400, 100, 7, 200, 200, 0.35, SOUTH, "C-03"),
        ("TAPPING-OIL", "tapping oil", "ml", 2500, 200, 7, 500, 500, 0.03, SOUTH, "C-04"),
        ("SPACER-6", "spacer 6 mm for wide looms", "pc", 60, 4, 21, 10, 10, 4.8, OWN, "C-05"),
        ("PLATE-CREEL", "cover plate for creel openings", "pc", 180, 4, 14, 20, 20, 9, OWN, "C-06"),
        ("GUIDE-EXTRA", "guide for kept extra ends", "pc", 60, 4, 21, 10, 10, 12, OWN, "C-07"),
        ("WIRE-SET", "drop wires for waste detection with bar", "set", 12, 1, 28, 5, 5, 88, NORTH, "B-01"),
        ("CABLE-SUPPLY", "supply cable", "m", 750, 20, 14, 100, 100, 2.4, ELECTRIC, "E-01"),
        ("CABLE-MOTOR", "motor cable, screened", "m", 700, 20, 21, 100, 100, 3.1, ELECTRIC, "E-02"),
        ("DUCT-40", "cable duct 40 mm", "m", 150, 6, 10, 50, 50, 6.5, ELECTRIC, "E-03"),
        ("CABLE-TIE", "cable tie 200 mm", "pc", 2500, 100, 7, 500, 500, 0.05, ELECTRIC, "E-04"),
        ("GLAND-16", "cable gland 16 mm", "pc", 220, 10, 10, 50, 50, 1.9, ELECTRIC, "E-05"),
        ("TERMINAL-4", "terminal 4 mm²", "pc", 1300, 20, 10, 100, 100, 1.3, ELECTRIC, "E-06"),
        ("FERRULE", "wire-end ferrule", "pc", 4500, 200, 7, 500, 500, 0.04, ELECTRIC, "E-13"),
        ("DC-SUPPLY", "DC supply 24 V", "pc", 60, 2, 21, 5, 5, 64, ELECTRIC, "E-14"),
        ("DRIVER", "driver for controllers from generation 2 on", "pc", 50, 2, 28, 5, 5, 118, ELECTRIC, "E-15"),
        ("ANGLE-SENSOR", "shaft-angle sensor for generation 1", "pc", 16, 0, 35, 2, 2, 96, ELECTRIC, "E-16"),
        ("GUARD", "guard of a device", "pc", 200, 4, 21, 10, 10, 14, NORTH, "A-06"),
        ("SIGN", "warning sign: moves by itself", "pc", 220, 10, 7, 50, 50, 1.6, OWN, "D-05"),
        ("FUSE-6A", "fuse 6 A", "pc", 240, 10, 7, 50, 50, 1.1, ELECTRIC, "E-07"),
        ("SWITCH-LOCK", "interlock switch with plug", "pc", 30, 2, 28, 10, 10, 46, ELECTRIC, "E-08"),
        ("EARTH-STRAP", "earthing strap 300 mm", "pc", 320, 10, 10, 50, 50, 4.2, ELECTRIC, "E-09"),
        ("CONTROL-BOX", "add-on control box for generation 1", "pc", 2, 0, 49, 2, 2, 420, ELECTRIC, "E-10"),
        ("CARD", "software card, goes back to stock", "pc", 40, 0, 14, 5, 5, 3, ELECTRIC, "E-11"),
        ("NET-LEAD", "network lead 5 m", "pc", 80, 4, 7, 10, 10, 6.8, ELECTRIC, "E-12"),
        ("SPRING-SOFT-L", "spring, soft, left", "pc", 70, 4, 21, 20, 20, 3.4, NORTH, "B-02"),
        ("SPRING-SOFT-R", "spring, soft, right", "pc", 70, 4, 21, 20, 20, 3.4, NORTH, "B-05"),
        ("SPRING-FIRM-L", "spring, firm, left", "pc", 60, 4, 21, 20, 20, 3.9, NORTH, "B-03"),
        ("SPRING-FIRM-R", "spring, firm, right", "pc", 60, 4, 21, 20, 20, 3.9, NORTH, "B-06"),
        ("EYE-SET", "yarn eyes, set for one device", "set", 190, 8, 21, 20, 20, 7.5, NORTH, "B-04"),
        ("YARN-LENO", "leno yarn on bobbins", "kg", 170, 5, 14, 25, 25, 9.8, SOUTH, "Y-01"),
        ("COVER-SHEET", "cover sheet for warp and reed", "pc", 110, 5, 7, 25, 25, 3.2, SOUTH, "D-01"),
        ("LABEL-SET", "labels for cables and device", "set", 110, 5, 7, 25, 25, 2.2, OWN, "D-02"),
        ("LEASE-CORD", "lease cords, set for one warp", "set", 12, 1, 7, 5, 5, 4.5, OWN, "D-03"),
        ("WARP-CLAMP", "warp clamp, goes back to stock", "pc", 40, 0, 21, 2, 2, 36, OWN, "D-04"),
    )
)  # fmt: skip

DUE = (
    ("4100127-10", "RAIL-N", 8, 24, SOUTH), ("4100127-20", "RAIL-N", 8, 52, SOUTH),
    ("4100127-30", "RAIL-M", 2, 31, SOUTH), ("4100131-10", "RAIL-W", 3, 45, SOUTH),
    ("4100102-10", "DEV-L", 24, 15, NORTH), ("4100102-20", "DEV-L", 28, 38, NORTH),
    ("4100102-30", "DEV-L", 24, 60, NORTH),
    ("4100103-10", "DEV-R", 24, 15, NORTH), ("4100103-20", "DEV-R", 28, 38, NORTH),
    ("4100103-30", "DEV-R", 24, 60, NORTH),
    ("4100104-10", "SUP-12", 50, 22, NORTH), ("4100104-20", "SUP-12", 50, 50, NORTH),
    ("4100105-10", "SUP-20", 30, 22, NORTH), ("4100105-20", "SUP-20", 30, 50, NORTH),
    ("4100118-10", "WIRE-SET", 25, 29, NORTH), ("4100118-20", "WIRE-SET", 25, 57, NORTH),
    ("4100140-10", "CONTROL-BOX", 7, 36, ELECTRIC), ("4100140-20", "CONTROL-BOX", 2, 64, ELECTRIC),
    ("4100141-10", "SWITCH-LOCK", 40, 29, ELECTRIC), ("4100141-20", "SWITCH-LOCK", 30, 57, ELECTRIC),
    ("4100142-10", "CABLE-MOTOR", 400, 24, ELECTRIC), ("4100144-10", "DC-SUPPLY", 45, 25, ELECTRIC),
    ("4100145-10", "DRIVER", 45, 32, ELECTRIC), ("4100143-10", "DUCT-40", 150, 30, ELECTRIC),
    ("4100119-10", "GUIDE-EXTRA", 40, 40, OWN),
)  # fmt: skip
"""(order and line, part, quantity, days after the programme's start, supplier)"""


def parts(scale: float = 1.0) -> dict[str, Part]:
    """The parts with their stock on hand, times `scale` and rounded up."""
    return {part.part: replace(part, on_hand=float(ceil(part.on_hand * scale))) for part in STOCK}


def receipts(start: date, scale: float = 1.0, stretch: float = 1.0) -> tuple[Receipt, ...]:
    """The open order lines: quantities times `scale`, days after `start` times `stretch`."""
    return tuple(
        Receipt(order, part, float(ceil(quantity * scale)), start + timedelta(days=round(days * stretch)), supplier)
        for order, part, quantity, days, supplier in DUE
    )
