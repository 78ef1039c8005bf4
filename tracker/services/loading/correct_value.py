"""One value of one loom is set right on its screen: who and why stand with it where it is told where a value came from."""

from tracker.domain.mill import Mill
from tracker.domain.rows import ReadResult, SourceTable, TypedRow
from tracker.domain.tables import LOOMS, Column
from tracker.errors import UsageError
from tracker.intake.columns.single_values import possible, single_value
from tracker.services.context import Context
from tracker.services.loading.by_hand import TYPED
from tracker.services.loading.load import enter
from tracker.services.loading.load_report import LoadReport
from tracker.services.looms import find_loom
from tracker.services.people.permissions import May


def correct_value(context: Context, loom: str, hall: str | None, heading: str, given: str, why: str) -> LoadReport:
    """Write the value of a heading of the loom list, as a load of that one cell would; an empty text takes it away. UsageError
    without a reason and for what the column cannot hold."""
    context.require(May.LOAD)
    if not why.strip():
        raise UsageError("correct-without-why")
    with context.reading() as uow:
        mill = uow.mill()
    key, column = find_loom(mill, loom, hall), _column(mill, heading)
    value, named = _value(column, heading, given.strip()), {"loom": key.loom, "hall": key.hall}
    row = (
        TypedRow("looms", named, {heading: value})
        if column is None
        else TypedRow("looms", named | {column.field: value})
    )
    source = SourceTable("", f"{TYPED}: {why.strip()}", "looms", 0)
    return enter(context, ReadResult((source,), (row,), ()), records_only=False)


def _column(mill: Mill, heading: str) -> Column | None:
    """None for an attribute, which may hold any text."""
    column = next((one for one in LOOMS.columns if one.heading == heading and not one.key), None)
    if column is None and all(heading not in loom.attributes for loom in mill.looms.values()):
        raise UsageError("correct-no-heading", heading=heading)
    return column


def _value(column: Column | None, heading: str, given: str) -> object:
    if column is None or not given:
        if column is not None and column.needed:
            raise UsageError("typed-lacks", heading=heading, possible=column.possible)
        return given or None
    value = single_value(column, given)
    if value is None:
        raise UsageError("typed-impossible", heading=heading, given=given, possible=possible(column, given))
    return value
