"""What a load takes of who gives it: by the tables that it holds, and by what stands in their rows."""

from collections.abc import Iterable, Iterator, Sequence

from tracker.domain.rows import Change, SourceTable
from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store import UnitOfWork

OPERATION = TABLES["work_done"].key.index("operation")
"""Where the key of a row of Work done names its operation."""


def needed(tables: Sequence[SourceTable]) -> May:
    """Records may be loaded by who records, receipts by the stockroom, all else by who loads lists."""
    names = {source.table for source in tables}
    if names and all(TABLES[name].history for name in names):
        return May.RECORD
    return May.STOCK if names == {"receipts"} else May.LOAD


def refuse_names(context: Context, uow: UnitOfWork, changes: Iterable[Change]) -> None:
    """NotAllowed where records waive a point, or put a name to an electrical hold point, and the actor may not do that."""
    told = list(_told(changes))
    if any(field == "waived_because" for _, field in told):
        context.require(May.WAIVE)
    signed = {fold(operation) for operation, field in told if field == "done_by"}
    if signed and not context.actor.may(May.SIGN_ELECTRICAL) and signed & _electrical(uow):
        context.require(May.SIGN_ELECTRICAL)


def _told(changes: Iterable[Change]) -> Iterator[tuple[str, str]]:
    """(operation, field) of every waiver and name that the records bring."""
    for change in changes:
        brought = {change.field: change.new} if change.field else change.new
        if brought.get("waived_because"):
            yield "", "waived_because"
        if change.table == "work_done" and brought.get("done_by"):
            yield str(change.key[OPERATION] or ""), "done_by"


def _electrical(uow: UnitOfWork) -> set[str]:
    """Hold points of a trade beside that of the fitters who convert: nothing waives them, and they are not the fitters' own."""
    lead = fold(uow.terms().lead_trade)
    return {fold(o.operation) for o in uow.method().operations if o.waivable is False and fold(o.trade) != lead}
