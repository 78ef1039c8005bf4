"""What the stockroom gets back of a kit, by the sheet Parts used."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.mill import LoomKey
from tracker.domain.stock import TOLERANCE, MovementKind
from tracker.services.parts.stock_entry import Entry, refusal
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class UsedRow:
    """A row of Parts used, and what of it was left over and broken by the row that it completes or corrects."""

    row: Mapping[str, Any]
    before: Mapping[str, float | None]

    def more(self, name: str) -> float:
        """By how much a quantity grew; below 0 where it was corrected downwards."""
        told = self.row.get(name)
        return 0.0 if told is None else told - (self.before.get(name) or 0.0)


def give_back(uow: UnitOfWork, used: Sequence[UsedRow]) -> None:
    """Book what is left over as returned and what is broken as scrapped; of a corrected row the difference. DataError where
    what is taken back from the stockroom by a correction is not there any more."""
    moved = [given for given in used if any(abs(given.more(name)) > TOLERANCE for name in ("left_over", "broken"))]
    if not moved:
        return
    entry = Entry(uow)
    for given in moved:
        _move(entry, given)
    entry.settle(sorted({given.row["part"] for given in moved}), "parts used")


def _move(entry: Entry, given: UsedRow) -> None:
    row = given.row
    key, part = LoomKey(row["hall"], row["loom"]), row["part"]
    why = f"card {row['card']}" if row.get("card") else "parts used"
    broken = given.more("broken")
    back = given.more("left_over") + broken
    stock = entry.room.part(part)
    if -back > stock.on_hand + TOLERANCE:
        raise refusal(stock, key, -back, stock.on_hand, entry.room.reserved(part))
    if abs(back) > TOLERANCE:
        entry.move(MovementKind.RETURN if back > 0 else MovementKind.ISSUE, {part: back}, why, key)
    if abs(broken) > TOLERANCE:
        entry.move(MovementKind.ADJUSTMENT, {part: -broken}, f"{why}: broken", key)
