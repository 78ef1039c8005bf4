"""Pick lists: shortages first, then the way through the stockroom."""

from datetime import date

from kit_samples import booking, key, mill, plan

from tracker.domain.mill import Part
from tracker.domain.stock import Reservation
from tracker.kits.picking import pick_lines
from tracker.kits.state import kit_states


def test_by_day_and_kit_shortages_first_then_location():
    hall = mill(
        Part("RAIL", 1, location="B-10", unit="pc"),
        Part("NUT", 9, location="B-2"),
        Part("CLIP", 9),
        Part("DRIVE", 0, location="Z-1"),
    )
    made = plan(
        booking("2", date(2027, 1, 12), RAIL=1, NUT=4, CLIP=2, DRIVE=1),
        booking("1", date(2027, 1, 11), NUT=5),
        booking("3", date(2027, 1, 13), NUT=1),
    )
    held = (("1", "NUT", 5), ("2", "RAIL", 1), ("2", "NUT", 3), ("2", "CLIP", 2))
    reserved = [Reservation(key(loom), part, quantity) for loom, part, quantity in held]
    lines = pick_lines(kit_states(made, hall, reserved, []), hall, date(2027, 1, 11), date(2027, 1, 12))
    assert [(line.day.day, line.key.loom, line.location, line.part, line.quantity, line.short) for line in lines] == [
        (11, "1", "B-2", "NUT", 5, 0),
        (12, "2", "B-2", "NUT", 3, 1),
        (12, "2", "Z-1", "DRIVE", 0, 1),
        (12, "2", "B-10", "RAIL", 1, 0),
        (12, "2", "", "CLIP", 2, 0),
    ]
