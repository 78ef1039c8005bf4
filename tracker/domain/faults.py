"""What is wrong with a field of a row, and the finding that names its cell."""

from dataclasses import dataclass

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import SourceTable, TypedRow
from tracker.errors import Message


@dataclass(frozen=True, slots=True)
class Fault:
    """A finding before it is placed in its cell."""

    said: Message
    field: str
    severity: Severity = Severity.NOTE


def placed(fault: Fault, row: TypedRow, table: SourceTable) -> Finding:
    """The finding at the cell of its field; a refusal takes the row with it."""
    heading = next((column.heading for column in table.columns if column.field == fault.field), "")
    value = str(row.values.get(fault.field, ""))
    return Finding(
        fault.said.code, fault.severity, file=table.file, sheet=table.sheet, cell=table.cell_of(fault.field, row.number),
        heading=heading, raw=value, understood=value, params=fault.said.params,
        rows=((row.source, row.number),) if fault.severity is Severity.REFUSED else (),
    )  # fmt: skip
