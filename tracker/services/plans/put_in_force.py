"""A scenario put in force: what it has otherwise becomes the mill's own data, by one load that one undo takes back.

Of an order line the mill's data have only what its supplier has said: one that was supposed to come otherwise stays out, and is
named, unless it is told that the supplier said so.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from typing import Any

from tracker.domain.rows import Change, ReadResult, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.errors import DataError, InputRefused, Message, UsageError, message
from tracker.intake.rows.compare import compare
from tracker.services.context import Context
from tracker.services.ground import OnTheForm
from tracker.services.loading.by_hand import or_refused
from tracker.services.loading.load import enter
from tracker.services.loading.told_changes import ToldChange, row_named, told
from tracker.services.people.permissions import May
from tracker.services.plans.plan_record import in_json
from tracker.services.plans.scenario import apply_scenario
from tracker.services.plans.scenario_changes import CHANGED
from tracker.services.plans.scenario_entries import Scenario
from tracker.services.plans.scenario_rows import rows_otherwise
from tracker.store import UnitOfWork
from tracker.store.loads import OF_SCENARIO
from tracker.store.plans import entries_of
from tracker.store.rows import plain


@dataclass(frozen=True, slots=True)
class InForce:
    """What putting a scenario in force writes, or would."""

    scenario: str
    rows: tuple[TypedRow, ...]
    changes: tuple[Change, ...]
    """Value by value; of a row that is new, each of its values."""
    orders: tuple[tuple[str, str], ...]
    """Order and part of each order line that comes otherwise."""
    unsaid: tuple[tuple[str, str], ...]
    """Of them those of which the supplier has not said so: they are left out."""
    number: int | None = None
    """Under which the account of who did what has it, once it is written."""

    @property
    def lines(self) -> list[ToldChange]:
        return [told(change) for change in self.changes]

    @property
    def message(self) -> Message:
        return message(
            "scenario-put-in-force", scenario=self.scenario, values=len(self.changes), number=self.number or 0
        )

    def messages(self) -> list[Message]:
        """For a person: each value, what is left out, and the sum of it."""
        left = [message("scenario-order-left", order=order, part=part) for order, part in self.unsaid]
        return [*(line.says for line in self.lines), *left, self.message]

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        changes = [
            {"table": c.table, "key": plain(c.key), "field": c.field, "old": plain(c.old), "new": plain(c.new)}
            for c in self.changes
        ]
        left = [in_json(message("scenario-order-left", order=order, part=part)) for order, part in self.unsaid]
        return {"scenario": self.scenario, "change": self.number, "changes": changes, "left_out": left}


def made_scenario(context: Context, name: str) -> Scenario | None:
    """What a scenario that was planned has otherwise; None where its plan was made before that was kept."""
    with context.reading() as uow:
        entries = entries_of(uow.session, name)
    return None if entries is None else Scenario(entries)


def made_in_force(context: Context, name: str, said: Collection[str] = ()) -> InForce | None:
    """What putting that scenario in force would write, as `would_put_in_force`; None as `made_scenario`."""
    scenario = made_scenario(context, name)
    return None if scenario is None else would_put_in_force(context, scenario, name, said)


def would_put_in_force(context: Context, scenario: Scenario, name: str, said: Collection[str] = ()) -> InForce:
    """What it would write by the data as they stand. `said`: orders of which the supplier has said what the scenario supposed;
    UsageError for one that the scenario does not have."""
    with context.reading() as uow:
        before, stored = uow.mill(), {table: uow.rows(table) for table in (*CHANGED, "looms")}
    rows = list(rows_otherwise(before, apply_scenario(before, scenario), stored))
    orders = tuple((row.values["order"], row.values["part"]) for row in rows if row.table == "receipts")
    for order in said:
        if order not in {one for one, _ in orders}:
            raise UsageError("scenario-no-order", order=order, orders=sorted({one for one, _ in orders}) or None)
    unsaid = tuple(line for line in orders if line[0] not in said)
    kept = [row for row in rows if row.table != "receipts" or row.values["order"] in said]
    sources = list(dict.fromkeys(row.table for row in kept))
    placed = tuple(replace(row, source=sources.index(row.table), number=at) for at, row in enumerate(kept, 1))
    found = compare(_as_read(placed, name), stored).changes
    return InForce(name, placed, tuple(one for change in found for one in _each_value(change)), orders, unsaid)


def put_in_force(context: Context, found: InForce, leave_out: bool = False) -> InForce:
    """Write it. Nothing is written where some of it would stay out and that was not accepted (`leave_out`), where a value does not
    fit, where the data have it all already, or where somebody changed meanwhile what was looked at."""
    context.require(May.PLAN)
    if not found.changes:
        raise DataError("scenario-in-force-already", scenario=found.scenario, left=_named(found.unsaid) or None)
    if found.unsaid and not leave_out:
        lines = tuple(message("scenario-order-left", order=order, part=part) for order, part in found.unsaid)
        raise InputRefused("scenario-leaves-out", lines, scenario=found.scenario, orders=_named(found.unsaid))
    numbers: list[UnitOfWork] = []
    report = enter(
        context.having_shown(*_shown(found.changes)), _as_read(found.rows, found.scenario), records_only=False,
        also=lambda uow, _: numbers.append(uow),
    )  # fmt: skip
    or_refused(report, [" ".join(map(str, row_named(row.table, _key(row)))) for row in found.rows])
    return replace(found, number=numbers[0].act_number)


def _named(orders: Sequence[tuple[str, str]]) -> list[str]:
    return [order for order, _ in orders]


def _as_read(rows: Sequence[TypedRow], name: str) -> ReadResult:
    """As if a workbook had these rows, a sheet for each table; the account of changes names the scenario as their place."""
    tables = dict.fromkeys(row.table for row in rows)
    return ReadResult(tuple(SourceTable("", f"{OF_SCENARIO}{name}", table, 0) for table in tables), tuple(rows), ())


def _each_value(change: Change) -> list[Change]:
    """Of a row that is new, the values beside its key."""
    if change.field:
        return [change]
    fields = [field for field in change.new if field not in TABLES[change.table].key]
    return [Change(change.table, change.key, field, None, change.new[field]) for field in fields]


def _shown(changes: Sequence[Change]) -> list[OnTheForm]:
    rows: dict[tuple[str, Any], dict[str, Any]] = {}
    for change in changes:
        rows.setdefault((change.table, change.key), {})[change.field] = change.old
    return [OnTheForm(table, key, values) for (table, key), values in rows.items()]


def _key(row: TypedRow) -> tuple[Any, ...]:
    return tuple(map(row.values.get, TABLES[row.table].key))
