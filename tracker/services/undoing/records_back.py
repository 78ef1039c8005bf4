"""What was recorded of looms: which rows count no more, and which that were withdrawn count again."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import Any

from tracker.domain.mill import LoomKey
from tracker.domain.progress import CONVERTED, Stage
from tracker.domain.record_tables import RECORDS
from tracker.domain.tables import TABLES
from tracker.errors import message
from tracker.services.moved import Moved, Tie, value_of
from tracker.store import UnitOfWork
from tracker.store.deeds import Acts
from tracker.store.models import ConversionRow, PhotoRow, SeenAlarmRow, StageRow, WithdrawalRow
from tracker.store.rows import MODELS, plain
from tracker.store.undoing import Written, added_rows, counts, later_rows, withdrawal_of
from tracker.store.withdrawals import withdraw_rows

OF_LOOMS: Mapping[str, Any] = {
    PhotoRow.__tablename__: PhotoRow,  # before its remark, by which it is named
    **{name: MODELS[name] for name in RECORDS},
    **{model.__tablename__: model for model in (StageRow, ConversionRow, SeenAlarmRow)},
}
"""Tables of history whose rows can be withdrawn."""
WITHDRAWALS = WithdrawalRow.__tablename__
OF_A_CONVERSION = ("work_done", "set_values", "check_results", "parts_used")
"""What hangs on a conversion that began."""
BUILT_ON: Mapping[str, tuple[Stage, ...]] = {
    "work_done": CONVERTED, "set_values": (Stage.SIGNED_OFF,), "check_results": (Stage.SIGNED_OFF,),
}  # fmt: skip
"""Table → stages that rest on its rows."""


class RecordsBack:
    """Looked at once; `apply` writes what is left of it."""

    def __init__(self, uow: UnitOfWork, written: Written):
        self.uow, self.written = uow, written
        self.out: dict[LoomKey, dict[str, list[int]]] = {}
        """Loom → table → rows that are to count no more."""
        self.back: dict[LoomKey, list[int]] = {}
        """Loom → withdrawals that are to count no more."""
        self.rows: dict[LoomKey, list[Any]] = defaultdict(list)
        """Loom → all rows that this is about."""
        self.added = {name: model for name, model in OF_LOOMS.items() if name in written.first}
        """Tables to which it added rows."""
        for model in self.added.values():
            for row in added_rows(uow.session, written, model):
                self._take_out(row)
        for row in added_rows(uow.session, written, WithdrawalRow) if WITHDRAWALS in written.first else ():
            self._bring_back(row)
        self.moved = [moved for key, rows in self.rows.items() for moved in self._against(key, rows)]
        self.moved += self._withdrawn()

    def _take_out(self, row: Any) -> None:
        key = LoomKey(row.hall, row.loom)
        self.out.setdefault(key, {}).setdefault(row.__tablename__, []).append(row.id)
        self.rows[key].append(row)

    def _bring_back(self, withdrawal: WithdrawalRow) -> None:
        """Where it withdrew a withdrawal, what that had withdrawn is withdrawn anew."""
        key = LoomKey(withdrawal.hall, withdrawal.loom)
        if withdrawal.table != WITHDRAWALS:
            self.back.setdefault(key, []).append(withdrawal.id)
            self.rows[key].append(self.uow.session.get(OF_LOOMS[withdrawal.table], withdrawal.row_id))
            return
        first = self.uow.session.get_one(WithdrawalRow, withdrawal.row_id)
        model = OF_LOOMS[first.table]
        if counts(self.uow.session, model, first.row_id):
            self._take_out(self.uow.session.get_one(model, first.row_id))

    # ---- what came since

    @cached_property
    def _since(self) -> dict[tuple[LoomKey, str], list[Any]]:
        """(loom, table) → rows recorded since that count."""
        found: dict[tuple[LoomKey, str], list[Any]] = defaultdict(list)
        for name, model in OF_LOOMS.items():
            for row in later_rows(self.uow.session, self.written, model):
                found[LoomKey(row.hall, row.loom), name].append(row)
        return found

    @cached_property
    def _acts(self) -> Acts:
        return Acts(self.uow.session)

    def _against(self, key: LoomKey, rows: Sequence[Any]) -> Iterator[Moved]:
        of = {row.__tablename__ for row in rows}
        stages = [row.stage for row in rows if isinstance(row, StageRow)]
        later = self._since[key, StageRow.__tablename__]
        builds = {stage for name in of for stage in BUILT_ON.get(name, ())}
        for row in [row for row in later if stages or row.stage in builds][-1:]:
            then = message("just", value=Stage(stages[-1])) if stages else None
            yield self._moved(key, row, message("undo-stage", loom=key), then, message("just", value=Stage(row.stage)))
        if Stage.IN_WORK in stages and key in self.out:
            for name in OF_A_CONVERSION:
                for row in self._since[key, name][-1:]:
                    now = message("undo-recorded-since")
                    yield self._moved(key, row, value_of(name, _key(row)), None, now)
            return
        for row in rows:
            yield from self._told_anew(key, row)

    def _told_anew(self, key: LoomKey, row: Any) -> Iterator[Moved]:
        name = row.__tablename__
        same = [other for other in self._since[key, name] if _key(other) == _key(row)] if name in RECORDS else []
        for other in same[-1:]:
            fields = [column.field for column in TABLES[name].columns]
            field = next((one for one in fields if getattr(row, one) != getattr(other, one)), "")
            then, now = (plain(getattr(one, field)) if field else None for one in (row, other))
            yield self._moved(key, other, value_of(name, _key(row), field), then, now)

    def _withdrawn(self) -> Iterator[Moved]:
        """Rows that somebody has withdrawn since; one of each loom."""
        gone = [
            row
            for model in self.added.values()
            for row in added_rows(self.uow.session, self.written, model, standing=False)
        ]
        for key, row in {LoomKey(row.hall, row.loom): row for row in gone}.items():
            by = withdrawal_of(self.uow.session, row.__tablename__, row.id)
            of_a_sheet = row.__tablename__ in RECORDS
            what = value_of(row.__tablename__, _key(row)) if of_a_sheet else message("undo-stage", loom=key)
            yield Moved(what, by.who, by.at, None, message("undo-withdrawn"), ("loom", key))

    def _moved(self, key: LoomKey, row: Any, what: Any, then: Any, now: Any) -> Moved:
        act = self._acts.of(row.__tablename__, row.id)
        return Moved(
            what, act.who if act else getattr(row, "who", None), act.at if act else None, then, now, ("loom", key)
        )

    def leave(self, ties: frozenset[Tie]) -> None:
        for kind, key in ties:
            if kind == "loom" and isinstance(key, LoomKey):
                self.out.pop(key, None)
                self.back.pop(key, None)

    @property
    def looms(self) -> set[LoomKey]:
        return {*self.out, *self.back}

    def apply(self, why: str) -> None:
        for key in self.looms:
            gone = self.out.get(key, {}) | ({WITHDRAWALS: self.back[key]} if key in self.back else {})
            withdraw_rows(self.uow.session, key, gone, self.uow.now(), self.uow.who, why)
        self.uow.session.flush()


def _key(row: Any) -> tuple[Any, ...]:
    return tuple(getattr(row, field) for field in TABLES[row.__tablename__].key)
