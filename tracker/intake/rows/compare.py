"""What a load would change: rows against what the database holds. Pure; nothing is written here."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time
from difflib import SequenceMatcher
from typing import Any

from tracker.domain.findings import Finding, Severity
from tracker.domain.record_tables import RECORDS
from tracker.domain.rows import Change, ReadResult, RowCounts, RowKey, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.errors import message
from tracker.intake.rows.new_looms import alike_stored
from tracker.intake.rows.references import REFERRING, KnownLooms, resolved, settle_hall, shown

Current = Mapping[str, Mapping[RowKey, Mapping[str, Any]]]
"""Table → key → field or kept heading → value, as the database holds it."""

_NEVER_MISSING = ("readings", "terms", *RECORDS)
"""Tables of which a file seldom brings all rows."""


@dataclass(slots=True)
class Comparison:
    rows: tuple[TypedRow, ...] = ()
    """Rows that would be loaded: halls filled in, doubles left out."""
    counts: list[RowCounts] = field(default_factory=list)
    """One per source table of the load."""
    changes: list[Change] = field(default_factory=list)
    """Of the keyed tables; a row to add has one Change with field `` and all its values."""
    places: dict[tuple[str, RowKey], tuple[int, int]] = field(default_factory=dict)
    """(table, key) of the rows that are added or changed → (source table index, row number)."""
    method: dict[str, list[TypedRow]] = field(default_factory=dict)
    """Rows of each method table that the load brings, in order."""
    method_changed: bool = False
    """Whether they differ from those in force."""
    missing: dict[str, list[RowKey]] = field(default_factory=dict)
    """Table → keys that the database has and the load has not; a load deletes nothing."""
    findings: tuple[Finding, ...] = ()
    """Besides those of the reading: doubles, unknown looms, and new looms that look like one of the database."""


def compare(result: ReadResult, current: Current, correct: str | None = None) -> Comparison:
    """Compare what was read with what is stored (`current` may leave out empty tables). `correct`: the reason for which records
    that say otherwise than before replace them; None refuses them."""
    found = Comparison(counts=[RowCounts(refused=result.refused.get(i, 0), ignored=result.ignored.get(i, 0))
                               for i in range(len(result.tables))])  # fmt: skip
    findings: list[Finding] = []
    rows = list(_with_halls(result, current, found, findings))
    rows = list(_without_doubles(result, rows, found, findings))
    for row in rows:
        if TABLES[row.table].whole:
            found.method.setdefault(row.table, []).append(row)
        elif TABLES[row.table].history:
            findings += _compare_record(row, current.get(row.table, {}), found, result.tables[row.source], correct)
        else:
            _compare_row(row, current.get(row.table, {}), found, result.tables[row.source])
    findings += alike_stored(found.changes, found.places, result.tables, current.get("looms", {}))
    _compare_method(found, current)
    findings += _empty_method_sheets(result, found, current)
    found.rows, found.findings = tuple(rows), tuple(findings)
    found.missing = _missing(result, rows, current)
    return found


_KEYS = {name: table.key for name, table in TABLES.items()}


def key_of(row: TypedRow) -> RowKey:
    return tuple(map(row.values.get, _KEYS[row.table]))


def _with_halls(result: ReadResult, current: Current, found: Comparison, findings: list[Finding]) -> Iterable[TypedRow]:
    """Rows with their hall: that of the database where a list names none, that of the loom list for what refers to it."""
    stored: dict[str, set[str]] = defaultdict(set)
    for loom, hall in current.get("looms", {}):
        stored[loom].add(hall)
    looms = [settle_hall(row, stored) if row.table == "looms" else row for row in result.rows]
    known = KnownLooms.of(looms, current.get("looms", {}))
    for row in looms:
        if row.table not in REFERRING:
            yield row
            continue
        one = resolved(row, known, result.tables)
        if isinstance(one, Finding):
            findings.append(one)
            found.counts[row.source].refused += 1
        else:
            yield one


def _without_doubles(
    result: ReadResult, rows: list[TypedRow], found: Comparison, findings: list[Finding]
) -> Iterable[TypedRow]:
    """Rows of one key: once where they say the same, none where they differ."""
    by_key: dict[tuple[str, RowKey], list[TypedRow]] = defaultdict(list)
    for row in rows:
        if not TABLES[row.table].whole:
            by_key[(row.table, key_of(row))].append(row)
    for row in rows:
        same_key = by_key.get((row.table, key_of(row)), [row])
        if len(same_key) == 1 or TABLES[row.table].whole:
            yield row
        elif row is same_key[0]:
            differing = _differences(same_key)
            findings += [_double(result, one, same_key, differing) for one in same_key[0 if differing else 1 :]]
            if differing:
                for one in same_key:
                    found.counts[one.source].refused += 1
            else:
                for one in same_key[1:]:
                    found.counts[one.source].ignored += 1
                yield row


def _differences(rows: list[TypedRow]) -> list[str]:
    """Fields and kept headings in which rows of one key differ."""
    first = {**rows[0].values, **rows[0].kept}
    names: dict[str, None] = {}
    for other in rows[1:]:
        said = {**other.values, **other.kept}
        names |= {name: None for name in {**first, **said} if not same(first.get(name), said.get(name))}
    return list(names)


def _double(result: ReadResult, row: TypedRow, rows: list[TypedRow], differing: list[str]) -> Finding:
    source = result.tables[row.source]
    table = TABLES[row.table]
    name = " ".join(str(part) for part in key_of(row) if part not in (None, ""))
    others = [one for one in rows if one is not row]
    here, there = ({**one.values, **one.kept} for one in (row, others[0]))
    values = [
        message("value-differs", heading=_heading(row.table, n), here=shown(here.get(n)), there=shown(there.get(n)))
        for n in differing[:4]
    ]
    return Finding(
        "double-differs" if differing else "double-same", Severity.REFUSED if differing else Severity.NOTE,
        file=source.file, sheet=source.sheet, cell=source.row_cells(row.number),
        heading=next((c.heading for c in source.columns if c.field == table.key[0]), ""), raw=name,
        rows=((row.source, row.number),) if differing else (),
        params={"table": table.sheet, "places": [_place(result, row, one) for one in others], "values": values},
    )  # fmt: skip


def _place(result: ReadResult, here: TypedRow, other: TypedRow) -> str:
    source = result.tables[other.source]
    near = source.file == result.tables[here.source].file and source.sheet == result.tables[here.source].sheet
    where = source.row_cells(other.number)
    return where if near else f"{source.file} {source.sheet} {where}"


def _heading(table: str, name: str) -> str:
    return next((column.heading for column in TABLES[table].columns if column.field == name), name)


def _compare_record(
    row: TypedRow,
    stored: Mapping[RowKey, Mapping[str, Any]],
    found: Comparison,
    source: SourceTable,
    correct: str | None,
) -> Iterable[Finding]:
    """A row of history: new, the same, or completing what is empty; one that says otherwise than before is refused, or with the
    reason to `correct` it replaces what was recorded."""
    old = stored.get(key_of(row))
    said = {
        name: value for name, value in row.values.items() if value not in (None, "") or name in TABLES[row.table].key
    }
    against = [name for name, value in said.items() if old and old[name] is not None and not same(old[name], value)]
    if correct or not against:
        _compare_row(replace(row, values=said), stored, found, source)
    else:
        found.counts[row.source].refused += 1
    for name in against:
        assert old
        yield Finding(
            "record-corrected" if correct else "record-differs", Severity.NOTE if correct else Severity.REFUSED,
            file=source.file, sheet=source.sheet, cell=source.cell_of(name, row.number),
            heading=next((c.heading for c in source.columns if c.field == name), ""), raw=str(said[name]),
            understood=shown(said[name]), rows=() if correct else ((row.source, row.number),),
            params={"table": TABLES[row.table].sheet, "row": " ".join(str(part) for part in key_of(row) if part),
                    "heading": _heading(row.table, name), "stored": shown(old[name]), "why": correct},
        )  # fmt: skip


def _compare_row(
    row: TypedRow, stored: Mapping[RowKey, Mapping[str, Any]], found: Comparison, source: SourceTable
) -> None:
    key, counts = key_of(row), found.counts[row.source]
    said = {**row.values, **row.kept}
    old = stored.get(key)
    if old is None:
        counts.added += 1
        new = {name: value for name, value in said.items() if name not in row.kept or value is not None}
        found.changes.append(Change(row.table, key, "", None, new))
        found.places[(row.table, key)] = (row.source, row.number)
        return
    changed = [
        Change(row.table, key, name, old.get(name), new) for name, new in said.items() if not same(old.get(name), new)
    ]
    changed += [Change(row.table, key, name, old[name], None) for name in _old_places(row, old, source)]
    counts.changed += bool(changed)
    counts.unchanged += not changed
    if changed:
        found.changes += changed
        found.places[(row.table, key)] = (row.source, row.number)


def _old_places(row: TypedRow, old: Mapping[str, Any], source: SourceTable) -> Iterable[str]:
    """Attributes of a loom under the heading of a column that is read as a field now: told to be it, or of the same value."""
    if TABLES[row.table].open_columns != "attributes":
        return
    fields = {column.field for column in TABLES[row.table].columns}
    headed = {fold(column.heading): column for column in source.columns if column.field}
    kept = {fold(name) for name in row.kept}
    for name, value in old.items():
        column = headed.get(fold(name)) if name not in fields and value is not None else None
        if column and fold(name) not in kept and (column.told or same(value, row.values.get(column.field))):
            yield name


def same(old: Any, new: Any) -> bool:
    """Equal, where 0.1 + 0.2 is 0.3, a date equals its ISO text, and nothing equals an empty text."""
    old, new = _plain(old), _plain(new)
    if (
        isinstance(old, float | int)
        and isinstance(new, float | int)
        and not isinstance(old, bool) ^ isinstance(new, bool)
    ):
        return abs(old - new) <= 1e-9 * max(1.0, abs(old), abs(new))
    return old == new and isinstance(old, bool) == isinstance(new, bool)


def _plain(value: Any) -> Any:
    if value == "":
        return None
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    return frozenset(value) if isinstance(value, list | set | tuple) else value


def _compare_method(found: Comparison, current: Current) -> None:
    """Rows of the method by their content, in order; a row said otherwise counts as changed."""
    for name, rows in found.method.items():
        old = [_content(values) for values in current.get(name, {}).values()]
        new = [_content({**row.values, **row.kept}) for row in rows]
        found.method_changed = found.method_changed or old != new
        for tag, i1, i2, j1, j2 in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
            for j in range(j1, j2):
                counts = found.counts[rows[j].source]
                if tag == "equal":
                    counts.unchanged += 1
                elif tag == "replace" and j - j1 < i2 - i1:
                    counts.changed += 1
                else:
                    counts.added += 1


def _empty_method_sheets(result: ReadResult, found: Comparison, current: Current) -> Iterable[Finding]:
    """A method sheet with headings only, as a template has it, takes nothing away; but a method cannot lack operations."""
    for i, source in enumerate(result.tables):
        empty = TABLES[source.table].whole and source.table not in found.method and not result.refused.get(i)
        if empty and source.table == "operations" and found.method:
            yield Finding(
                "method-without-operation",
                Severity.REFUSED,
                file=source.file,
                sheet=source.sheet,
                params={"how": "sheet"},
            )
        elif empty and current.get(source.table):
            yield Finding("empty-table", Severity.NOTE, file=source.file, sheet=source.sheet)


def _content(values: Mapping[str, Any]) -> tuple[tuple[str, str], ...]:
    """Comparable content of a method row: what is not empty, as text."""
    return tuple(sorted((name, _said(value)) for name, value in values.items() if value not in (None, "")))


def _said(value: Any) -> str:
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{value:.10g}"
    return str(_plain(value))


def _missing(result: ReadResult, rows: list[TypedRow], current: Current) -> dict[str, list[RowKey]]:
    present = {(row.table, key_of(row)) for row in rows}
    tables = {source.table for source in result.tables if not TABLES[source.table].whole} - set(_NEVER_MISSING)
    missing = {name: [key for key in current.get(name, {}) if (name, key) not in present] for name in sorted(tables)}
    return {name: keys for name, keys in missing.items() if keys}
