"""Loom numbers in warps, readings, standing times and records: which loom of which hall they mean."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from rapidfuzz import process

from tracker.domain.findings import Finding, Severity
from tracker.domain.record_tables import RECORDS
from tracker.domain.rows import RowKey, SourceTable, TypedRow
from tracker.domain.words import fold, natural_key
from tracker.errors import Message, message

REFERRING = ("warps", "readings", "standing", *RECORDS)
"""Tables whose rows name a loom that must be known."""


@dataclass(slots=True)
class KnownLooms:
    """Loom number → halls."""

    halls: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))

    @classmethod
    def of(cls, rows: Iterable[TypedRow], stored: Iterable[RowKey]) -> "KnownLooms":
        known = cls()
        for row in rows:
            if row.table == "looms":
                known.halls[row.values["loom"]].add(row.values["hall"])
        for loom, hall in stored:
            known.halls[loom].add(hall)
        return known

    def hall_of(self, loom: str, hall: str | None) -> str | Message:
        """The hall where the loom is known, else why it is not."""
        halls = self.halls.get(loom, set())
        if hall is None:
            if len(halls) == 1:
                return next(iter(halls))
            if halls:
                return message("ambiguous-hall", loom=loom, halls=_listed(halls))
        elif hall in halls:
            return hall
        elif same := [one for one in halls if fold(one) == fold(hall)]:
            return same[0]
        elif halls:
            return message("unknown-loom", how="hall", loom=loom, halls=_listed(halls), hall=hall)
        near = process.extractOne(loom, list(self.halls), score_cutoff=60)
        return message("unknown-loom", how="number", loom=loom, near=near[0] if near else None)


def _listed(halls: Iterable[str]) -> list[str | Message]:
    return [hall or message("hall-without-name") for hall in sorted(halls, key=natural_key)]


def settle_hall(row: TypedRow, stored: Mapping[str, set[str]]) -> TypedRow:
    """A loom row without a hall is the loom of that number that the database has, where there is just one; a hall in
    another spelling is the stored one."""
    hall, loom = row.values["hall"], row.values["loom"]
    known = stored.get(loom, set())
    if hall == "" and len(known) == 1:
        return replace(row, values={**row.values, "hall": next(iter(known))})
    same = [one for one in {h for halls in stored.values() for h in halls} if fold(one) == fold(hall)] if hall else []
    if hall and hall not in same and same:
        return replace(row, values={**row.values, "hall": same[0]})
    return row


def resolved(row: TypedRow, known: KnownLooms, sources: tuple[SourceTable, ...]) -> TypedRow | Finding:
    """The row with its hall filled in, or the finding that refuses it."""
    loom, said = row.values["loom"], row.values.get("hall")
    hall = known.hall_of(loom, said)
    if not isinstance(hall, Message):
        return row if hall == said else replace(row, values={**row.values, "hall": hall})
    source = sources[row.source]
    return Finding(
        hall.code, Severity.REFUSED, file=source.file, sheet=source.sheet, cell=source.cell_of("loom", row.number),
        heading="Loom", raw=str(loom), params=hall.params, rows=((row.source, row.number),),
    )  # fmt: skip


def shown(value: Any) -> str | Message:
    """A value in a message."""
    return message("understood-empty") if value is None else f"{value:g}" if isinstance(value, float) else str(value)
