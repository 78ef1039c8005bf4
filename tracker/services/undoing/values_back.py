"""The rows of the mill's tables that a load changed: which values are brought back, which rows taken out or put in again."""

from collections.abc import Iterator, Mapping
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.rows import Change, RowKey
from tracker.domain.tables import TABLES
from tracker.errors import Message, message
from tracker.intake.rows.compare import same
from tracker.intake.rows.pairs import fits
from tracker.services.moved import Moved, Tie, value_of
from tracker.store import UnitOfWork
from tracker.store.loads import ORDER
from tracker.store.rows import DERIVED, Record, key_text, typed_values
from tracker.store.undoing import ChangedBy, RowStory, Written, booked_parts, rests_on, row_stories

NOBODY = ChangedBy(None, None)


class ValuesBack:
    """Looked at once; `apply` writes what is left of it."""

    def __init__(self, uow: UnitOfWork, written: Written):
        self.uow, self.zone = uow, uow.zone
        self.stories = row_stories(uow.session, written)
        self.changes: list[Change] = []
        self.out: dict[str, dict[RowKey, Record]] = {}
        """Table → rows to be taken out."""
        self.moved: list[Moved] = []
        self.stays: list[Message] = []
        for name in reversed(ORDER):  # what refers to a row before the row
            if name in self.stories and not TABLES[name].history:
                self._table(name, self.stories[name])

    def _table(self, name: str, stories: Mapping[str, RowStory]) -> None:
        rows = {key_text(key): (key, row) for key, row in self.uow.rows(name).items()}
        for text, story in stories.items():
            before, after = (_stored(name, values) for values in (story.before, story.after))
            if before is None and after is not None:
                self._added(name, after, story.since, rows.get(text))
            elif after is None and before is not None:
                self._ended(name, before, story.since, rows.get(text))
            elif before is not None and after is not None:
                self._changed(name, before, after, story.since, rows.get(text))
        self._keep_what_is_rested_on(name)

    def _added(
        self, name: str, after: Record, since: Mapping[str, ChangedBy], row: tuple[RowKey, Record] | None
    ) -> None:
        if row is None:
            return
        key, now = row
        differ = [
            field for field in now if field not in DERIVED.get(name, ()) and not same(now[field], after.get(field))
        ]
        self.moved += (_moved(name, key, field, since, after.get(field), now[field]) for field in differ)
        if not differ:
            self.out.setdefault(name, {})[key] = now

    def _ended(
        self, name: str, before: Record, since: Mapping[str, ChangedBy], row: tuple[RowKey, Record] | None
    ) -> None:
        values = typed_values(TABLES[name], {field: value for field, value in before.items() if value is not None})
        key = tuple(values.get(field) for field in TABLES[name].key)
        if row is None:
            self.changes.append(Change(name, key, "", None, values))
        else:
            self.moved.append(_moved(name, key, "", since, None, message("undo-there-again")))

    def _changed(
        self,
        name: str,
        before: Record,
        after: Record,
        since: Mapping[str, ChangedBy],
        row: tuple[RowKey, Record] | None,
    ) -> None:
        fields = [field for field in after if not same(before.get(field), after[field])]
        if row is None:
            key = tuple(typed_values(TABLES[name], after).get(field) for field in TABLES[name].key)
            self.moved += [_moved(name, key, "", since, message("undo-there"), message("undo-gone"))] if fields else []
            return
        key, now = row
        back = []
        for field in fields:
            if same(now.get(field), after[field]):
                old = typed_values(TABLES[name], {field: before.get(field)})[field]
                back.append(Change(name, key, field, now.get(field), old))
            elif not same(now.get(field), before.get(field)):
                self.moved.append(_moved(name, key, field, since, after[field], now.get(field)))
        against = list(_against(name, key, now, back, since, after))
        self.moved += against
        self.changes += [] if against else back

    def _keep_what_is_rested_on(self, name: str) -> None:
        """A row stays as long as there is another that names it."""
        out = self.out.get(name)
        if not out:
            return
        if name == "parts":
            booked = booked_parts(self.uow.session)
            kept = [key for key in out if key[0] in booked]
            self.stays += [message("undo-parts-stay", parts=[key[0] for key in kept])] if kept else []
            self.out[name] = out = {key: row for key, row in out.items() if key not in kept}
        gone = {table: {key_text(key) for key in rows} for table, rows in self.out.items()}
        held = rests_on(self.uow.session, name, gone, self.zone)
        for key in [key for key in out if key in held]:
            del out[key]
            table = TABLES[held[key]].named if held[key] in TABLES else message("undo-history")
            self.moved.append(Moved(value_of(name, key), now=message("undo-rested-on", by=table)))

    def leave(self, ties: frozenset[Tie]) -> None:
        """Leave order lines as they are whose part is left."""
        parts = {name for kind, name in ties if kind == "part"}
        self.changes = [one for one in self.changes if one.table != "receipts" or one.key[1] not in parts]

    @property
    def parts(self) -> set[str]:
        """Parts of which more or less is to be kept back now."""
        return {str(one.key[0]) for one in self.changes if one.table == "parts" and one.field in ("", "safety_stock")}

    def apply(self) -> None:
        writer = self.uow.load_writer()
        for change in self.changes:
            if change.table == "terms" and change.key == ("time zone",) and isinstance(change.new, str):
                writer.change_zone(writer.zone, ZoneInfo(change.new))
        writer.write(self.changes, {})
        for name in sorted((name for name, rows in self.out.items() if rows), key=ORDER.index, reverse=True):
            writer.retire(name, self.out[name])
        self.uow.session.flush()


def _stored(name: str, values: Record | None) -> Record | None:
    """Without what is worked out from other tables."""
    return values and {field: value for field, value in values.items() if field not in DERIVED.get(name, ())}


def _moved(name: str, key: RowKey, field: str, since: Mapping[str, ChangedBy], then: Any, now: Any) -> Moved:
    by = since.get(field) or since.get("") or NOBODY
    tie = ("part", str(key[1])) if name == "receipts" else None
    if not isinstance(then, Message):
        then = typed_values(TABLES[name], {field: then})[field]
    return Moved(value_of(name, key, field), by.who, by.at, then, now, tie)


def _against(
    name: str, key: RowKey, now: Record, back: list[Change], since: Mapping[str, ChangedBy], after: Record
) -> Iterator[Moved]:
    """Values changed since that what is brought back would contradict: a warp left longer than its set."""
    new = now | {change.field: change.new for change in back}
    for pair in TABLES[name].pairs:
        if back and not fits(pair, new.get(pair.first), new.get(pair.second)):
            field = next(one for one in (pair.first, pair.second) if one not in {change.field for change in back})
            yield _moved(name, key, field, since, after.get(field), now.get(field))
