"""Sheets that are declared the whole truth (`--replaces`): rows of the database that are gone from them have ended.

It holds for the looms, crews or suppliers that the sheet names; of others that the database has and the sheet has not, it is
asked whether theirs have ended, too. Nothing is retired where the sheet has refused rows: it is not whole then.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import RowKey, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import fold, natural_key
from tracker.errors import UsageError
from tracker.intake.answers import ENDED, STAY, of_sheet
from tracker.intake.report import answers_for
from tracker.intake.rows.compare import key_of

REPLACEABLE: Mapping[str, tuple[str, ...]] = {
    "warps": ("loom", "hall"), "standing": ("loom", "hall"), "absences": ("crew",), "overtime": ("crew",),
    "receipts": ("supplier",),
}  # fmt: skip
"""Table → whose rows a sheet of it can be the whole truth about. Readings are history, looms stay."""

Stored = Mapping[RowKey, Mapping[str, Any]]


@dataclass
class Retiring:
    rows: dict[str, dict[RowKey, Mapping[str, Any]]] = field(default_factory=dict)
    """Table → rows to be retired, with their values."""
    findings: list[Finding] = field(default_factory=list)


def replaceable(names: Iterable[str]) -> frozenset[str]:
    """The tables that are named, by name or sheet; UsageError for one that cannot be declared whole."""
    known = {fold(word): name for name in REPLACEABLE for word in (name, TABLES[name].sheet)}
    found = set()
    for name in names:
        if fold(name) not in known:
            sheets = [TABLES[one].sheet for one in REPLACEABLE]
            raise UsageError("cannot-replace", name=name, sheets=sheets)
        found.add(known[fold(name)])
    return frozenset(found)


def retiring(
    replaces: Collection[str], sources: Sequence[SourceTable], rows: Iterable[TypedRow], refused: Collection[str],
    current: Mapping[str, Stored], answers: Mapping[str, str],
) -> Retiring:  # fmt: skip
    """What has ended. `refused`: tables with refused rows; UsageError for a table that the files do not hold."""
    found = Retiring()
    of_table: dict[str, list[TypedRow]] = defaultdict(list)
    for row in rows:
        of_table[row.table].append(row)
    for name in sorted(replaces):
        source = next((one for one in sources if one.table == name), None)
        if source is None:
            raise UsageError("replaces-nothing", sheet=TABLES[name].named)
        if name in refused:
            found.findings.append(_finding(Severity.NOTE, "list-not-whole", source))
            continue
        _retire(name, source, of_table[name], current.get(name, {}), answers, found)
    return found


def _retire(
    name: str,
    source: SourceTable,
    rows: Sequence[TypedRow],
    stored: Stored,
    answers: Mapping[str, str],
    found: Retiring,
) -> None:
    there = {key_of(row) for row in rows}
    named = {_of(name, row.values) for row in rows}
    gone = {key: values for key, values in stored.items() if key not in there}
    ended = {key: values for key, values in gone.items() if _of(name, values) in named}
    others = {key: values for key, values in gone.items() if key not in ended}
    if others:
        said = of_sheet(answers, source.sheet)
        if said is None:
            found.findings.append(_asked(name, source, others))
        elif said == ENDED:
            ended |= others
    if ended:
        found.rows[name] = ended


def _of(name: str, values: Mapping[str, Any]) -> tuple[Any, ...]:
    """Whose row it is."""
    return tuple(values.get(field) for field in REPLACEABLE[name])


def _asked(name: str, source: SourceTable, others: Stored) -> Finding:
    who = {" ".join(str(part) for part in _of(name, values) if part) for values in others.values()}
    return _finding(
        Severity.DOUBT, "no-longer-listed", source, who=sorted(who, key=natural_key), rows=len(others),
        of=REPLACEABLE[name][0], choices=answers_for(source.sheet, ENDED, STAY),
    )  # fmt: skip


def _finding(severity: Severity, code: str, source: SourceTable, choices: tuple = (), **params: object) -> Finding:
    params = {"table": TABLES[source.table].sheet, **params}
    return Finding(code, severity, file=source.file, sheet=source.sheet, params=params, choices=choices)
