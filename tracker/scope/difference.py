"""What a changed method changes: row by row, and for which looms."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from typing import Any

from tracker.domain.method import Alternative, Method, Row
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import MethodRow, WorkContent
from tracker.errors import DataError, Message, message
from tracker.scope.content import scope_looms
from tracker.scope.rules import as_cell

AnyRow = MethodRow | Alternative
MOST_NAMED = 3
"""Looms of a change that are named."""
NAMED_BY = {
    "Operation": ("step", "operation"), "KitLine": ("part",), "Alternative": ("choice", "alternative"),
    "Setpoint": ("setting", "side"), "Check": ("check", "side"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class RowChange:
    what: str
    """`added`, `removed` or `changed`."""
    name: str
    """`step 30 Fit left`."""
    fields: Mapping[str, tuple[Any, Any]]
    """Field or condition heading → (old, new), of a changed row."""
    row: Row
    """Where it stands in the new sheet; for a removed row in the old one."""

    @property
    def says(self) -> Message:
        changes = [
            message("field-changed", field=name, old=_shown(old), new=_shown(new))
            for name, (old, new) in self.fields.items()
        ]
        return message("method-row-changed", name=self.name, what=self.what, changes=changes or None)


@dataclass(frozen=True, slots=True)
class LoomsChange:
    """Looms for which the new method changes the same."""

    looms: tuple[LoomKey, ...]
    kind: WindowKind | None
    """The first kind of window that changes; None where looms come to or from being surveyed."""
    added: tuple[str, ...] = ()
    """Operations."""
    removed: tuple[str, ...] = ()
    parts: tuple[tuple[str, float, float], ...] = ()
    """(part, old quantity, new quantity)."""
    extra_h: float = 0.0
    """Labour hours more (or less) for each loom, allowance included, with the choices that take the least."""
    now: Message | None = None
    """What else there is to say: why they cannot be planned any more, that they now can."""

    @property
    def says(self) -> Message:
        found = [message("operation-added", name=name) for name in self.added]
        found += [message("operation-removed", name=name) for name in self.removed]
        found += [message("part-changed", part=part, old=old, new=new) for part, old, new in self.parts]
        found += [message("labour-changed", hours=round(self.extra_h, 2))] if self.extra_h else []
        return message(
            "looms-changed", many=len(self.looms), looms=self._named, cut="yes" if len(self.looms) > MOST_NAMED else "no",
            changes=[*found, *([self.now] if self.now else [])],
        )  # fmt: skip

    @property
    def _named(self) -> list[str]:
        return (
            [str(key) for key in self.looms] if len(self.looms) == 1 else [key.loom for key in self.looms[:MOST_NAMED]]
        )


@dataclass(frozen=True, slots=True)
class MethodDifference:
    rows: tuple[RowChange, ...]
    looms: tuple[LoomsChange, ...]
    """Most looms first. Looms for which nothing changes are left out."""

    def __bool__(self) -> bool:
        return bool(self.rows)

    def messages(self, most: int = 10) -> list[Message]:
        """For a person: the rows, then for how many looms what changes; at most `most` of each."""
        rows, looms = ([change.says for change in changes] for changes in (self.rows, self.looms))
        return [*_cut(rows, most, "rows"), *_cut(looms, most, "changes")]


def same_rows(old: Method, new: Method) -> bool:
    """Whether two methods say the same in the same order, wherever their rows stand."""
    return [_plain(row) for row in _rows(old)] == [_plain(row) for row in _rows(new)]


def method_difference(old: Method, new: Method, mill: Mill) -> MethodDifference:
    """What `new` changes against `old` for the looms of the mill. Raises `DataError` where `new` cannot be read."""
    return MethodDifference(tuple(_row_changes(old, new)), tuple(_loom_changes(old, new, mill)))


def _rows(method: Method) -> tuple[AnyRow, ...]:
    return (*method.operations, *method.kit_lines, *method.alternatives, *method.setpoints, *method.checks)


def _plain(row: AnyRow) -> AnyRow:
    """The row without its place, conditions in one writing."""
    conditions = {fold(heading): as_cell(cell).strip() for heading, cell in sorted(row.conditions.items())}
    return replace(row, row=Row(), conditions={h: c for h, c in conditions.items() if c not in ("", "-")})


def _row_changes(old: Method, new: Method) -> Iterator[RowChange]:
    before, after = _left(_rows(old), _rows(new)), _left(_rows(new), _rows(old))
    waiting: dict[tuple, list[AnyRow]] = defaultdict(list)
    for row in before:
        waiting[_key(row)].append(row)
    for row in after:
        same = waiting[_key(row)]
        yield _changed(same.pop(0), row) if same else RowChange("added", _name(row), {}, row.row)
    for rows in waiting.values():
        yield from (RowChange("removed", _name(row), {}, row.row) for row in rows)


def _left(rows: Iterable[AnyRow], others: Iterable[AnyRow]) -> list[AnyRow]:
    """Rows that the others do not have."""
    there = Counter(repr(_plain(row)) for row in others)
    left = []
    for row in rows:
        said = repr(_plain(row))
        if there[said]:
            there[said] -= 1
        else:
            left.append(row)
    return left


def _key(row: AnyRow) -> tuple:
    return type(row).__name__, *(fold(getattr(row, field) or "") for field in NAMED_BY[type(row).__name__])


def _name(row: AnyRow) -> str:
    words = [str(getattr(row, field)) for field in NAMED_BY[type(row).__name__] if getattr(row, field) is not None]
    return ("step " if type(row).__name__ == "Operation" else "") + " ".join(words)


def _changed(old: AnyRow, new: AnyRow) -> RowChange:
    before, after = _plain(old), _plain(new)
    changes = {}
    for field in fields(before):
        was, becomes = getattr(before, field.name), getattr(after, field.name)
        if field.name == "conditions":
            changes |= {h: (was.get(h), becomes.get(h)) for h in {**was, **becomes} if was.get(h) != becomes.get(h)}
        elif was != becomes:
            changes[field.name] = (was, becomes)
    return RowChange("changed", _name(new), changes, new.row)


def _loom_changes(old: Method, new: Method, mill: Mill) -> list[LoomsChange]:
    after = scope_looms(replace(mill, method=new))
    try:
        before = scope_looms(replace(mill, method=old))
    except DataError:
        before = {}
    groups: dict[tuple, list[LoomKey]] = defaultdict(list)
    for key, scope in after.items():
        groups[_state(before.get(key)), _state(scope)].append(key)
    same: dict[LoomsChange, list[LoomKey]] = defaultdict(list)
    for keys in groups.values():
        if change := _looms_change(before.get(keys[0]), after[keys[0]]):
            same[change] += keys
    changes = [
        replace(change, looms=tuple(sorted(keys, key=lambda key: key.sort_key))) for change, keys in same.items()
    ]
    return sorted(changes, key=lambda change: -len(change.looms))


def _state(scope: LoomScope | None) -> tuple:
    return (scope.variant, scope.obstacle, id(scope.contents) if scope.contents else 0) if scope else ()


def _looms_change(old: LoomScope | None, new: LoomScope) -> LoomsChange | None:
    """What changes for looms with these scopes; None where nothing does."""
    had = old.contents if old else {}
    if not had or not new.contents:
        same = bool(old) and not had and not new.contents and old.obstacle == new.obstacle
        return None if same else LoomsChange((), None, now=new.obstacle or message("looms-can-be-planned"))
    for kind in WindowKind:
        before, after = had[kind], new.contents[kind]
        if [_said(content) for content in before] != [_said(content) for content in after]:
            return _content_change(kind, before, after)
    return None


def _content_change(kind: WindowKind, before: Sequence[WorkContent], after: Sequence[WorkContent]) -> LoomsChange:
    names_before, names_after = _operations(before), _operations(after)
    parts_before, parts_after = _parts(before), _parts(after)
    quantities = ((p, parts_before.get(p, 0.0), parts_after.get(p, 0.0)) for p in {**parts_before, **parts_after})
    change = LoomsChange(
        (),
        kind,
        added=tuple(name for name in names_after if name not in names_before),
        removed=tuple(name for name in names_before if name not in names_after),
        parts=tuple((part, old, new) for part, old, new in quantities if old != new),
        extra_h=round(_least(after) - _least(before), 6),
    )
    return change if change != LoomsChange((), kind) else replace(change, now=message("method-details-change"))


def _said(content: WorkContent) -> str:
    rows = [replace(row, conditions={}, row=Row()) for row in content.rows]
    return repr((content.choices, rows))


def _operations(contents: Sequence[WorkContent]) -> dict[str, None]:
    """Operations with any choice, in order."""
    return {_name(row): None for content in contents for row in content.operations}


def _parts(contents: Sequence[WorkContent]) -> dict[str, float]:
    """Part → quantity with the choices that take most of it."""
    most: dict[str, float] = {}
    for content in contents:
        for part, quantity in content.parts.items():
            most[part] = max(most.get(part, 0.0), quantity)
    return most


def _least(contents: Sequence[WorkContent]) -> float:
    return min((content.labour_h for content in contents), default=0.0)


def _cut(said: list[Message], most: int, what: str) -> list[Message]:
    more = len(said) - most
    return said[:most] + ([message("more-of-the-method", many=more, what=what)] if more > 0 else [])


def _shown(value: Any) -> Any:
    return message("own-value", value=value) if isinstance(value, float) else None if value is None else str(value)
