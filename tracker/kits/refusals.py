"""What of a load's parts and receipts cannot be: judged row by row against the parts and order lines that there are."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from tracker.domain.findings import Finding, Severity
from tracker.domain.mill import Part, Receipt
from tracker.domain.quantities import fault
from tracker.domain.rows import SourceTable, TypedRow
from tracker.domain.stock import TOLERANCE, Movement, MovementKind
from tracker.domain.words import fold
from tracker.errors import Message, message


@dataclass
class KnownStock:
    """What the store holds, and what the rows before have brought."""

    parts: Mapping[str, str]
    """Part → unit, of the store and the load's own Parts sheet; `` where it has none."""
    lines: dict[str, str]
    """Order line → part."""
    open: Mapping[tuple[str, str], float]
    """Order line and part → quantity still open."""
    received: Mapping[tuple[str, str], float]
    """Order line and part → quantity received so far."""
    moved: Mapping[str, str] = field(default_factory=dict)
    """Parts with an entry in the stock ledger → unit as stored."""


def stock_findings(
    rows: Sequence[TypedRow],
    tables: Sequence[SourceTable],
    parts: Mapping[str, Part],
    receipts: Sequence[Receipt],
    movements: Sequence[Movement],
) -> tuple[Finding, ...]:
    """Refusals among the rows of a load, each with its cell: an unknown part, a unit that is not the part's, an order
    line that another part has, more open than is left after a receipt, a new unit for a part with stock entries, a
    quantity that the unit does not have.

    `parts`, `receipts` and `movements` are what the store holds before the load.
    """
    known = _known(rows, parts, receipts, movements)
    checks: dict[str, tuple[Check, ...]] = {
        "receipts": (_unknown_part, _other_unit, _line_twice, _received_already, _quantities),
        "parts": (_unit_changed, _quantities),
    }
    found = []
    for row in rows:
        for check in checks.get(row.table, ()):
            found += [_placed(finding, row, tables) for finding in check(row, known)]
    return tuple(found)


def _known(
    rows: Sequence[TypedRow], parts: Mapping[str, Part], receipts: Sequence[Receipt], movements: Sequence[Movement]
) -> KnownStock:
    stored = {name: part.unit or "" for name, part in parts.items()}
    loaded = {
        row.values["part"]: row.values.get("unit") or stored.get(row.values["part"], "")
        for row in rows
        if row.table == "parts"
    }
    received: dict[tuple[str, str], float] = {}
    for movement in movements:
        if movement.kind is MovementKind.RECEIPT and movement.order:
            line = (movement.order, movement.part)
            received[line] = received.get(line, 0.0) + movement.quantity
    return KnownStock(
        parts=stored | loaded,
        lines={receipt.order: receipt.part for receipt in receipts},
        open={(receipt.order, receipt.part): receipt.quantity for receipt in receipts},
        received=received,
        moved={movement.part: stored.get(movement.part, "") for movement in movements},
    )


@dataclass(frozen=True, slots=True)
class StockFault:
    """A finding before it is placed in its cell."""

    said: Message
    field: str


Check = Callable[[TypedRow, KnownStock], Iterator[StockFault]]


def _unknown_part(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    part = row.values["part"]
    if part not in known.parts:
        yield StockFault(message("part-not-listed", part=part, near=None), "part")


def _other_unit(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    part, unit = row.values["part"], row.values.get("unit")
    if unit and part in known.parts and fold(unit) != fold(known.parts[part]):
        said = message("unit-mismatch", how="receipt", part=part, kept=known.parts[part] or None, unit=unit)
        yield StockFault(said, "unit")


def _line_twice(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    order, part = row.values["order"], row.values["part"]
    other = known.lines.setdefault(order, part)
    if other != part:
        yield StockFault(message("order-line-twice", order=order, part=part, other=other), "order")


def _received_already(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    line = (row.values["order"], row.values["part"])
    came, left, quantity = known.received.get(line, 0.0), known.open.get(line, 0.0), row.values["quantity"]
    if came and quantity > left + TOLERANCE:
        said = message(
            "received-already", order=line[0], part=line[1], received=came, open_quantity=left, quantity=quantity
        )
        yield StockFault(said, "quantity")


def _unit_changed(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    part, unit = row.values["part"], row.values.get("unit")
    before = known.moved.get(part)
    if unit and before and fold(unit) != fold(before):
        yield StockFault(message("unit-mismatch", how="ledger", part=part, kept=before, unit=unit), "unit")


def _quantities(row: TypedRow, known: KnownStock) -> Iterator[StockFault]:
    part = row.values["part"]
    unit = known.parts.get(part)
    for name in ("on_hand", "safety_stock", "lot_size", "minimum_order", "quantity"):
        quantity = row.values.get(name)
        if isinstance(quantity, float | int) and (wrong := fault(quantity, unit)):
            said = message("quantity-impossible", part=part, quantity=quantity, wrong=wrong)
            yield StockFault(said, name)


def _placed(fault: StockFault, row: TypedRow, tables: Sequence[SourceTable]) -> Finding:
    table = tables[row.source]
    heading = next((column.heading for column in table.columns if column.field == fault.field), "")
    value = str(row.values.get(fault.field, ""))
    return Finding(
        fault.said.code,
        Severity.REFUSED,
        file=table.file,
        sheet=table.sheet,
        cell=table.cell_of(fault.field, row.number),
        heading=heading,
        raw=value,
        understood=value,
        params=fault.said.params,
        rows=((row.source, row.number),),
    )
