"""Loom numbers in warps, readings and standing times: which loom of which hall they mean."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from rapidfuzz import process

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import RowKey, SourceTable, TypedRow
from tracker.domain.words import fold, natural_key

REFERRING = ("warps", "readings", "standing")
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

    def hall_of(self, loom: str, hall: str | None) -> tuple[str | None, str]:
        """(hall, ``) where the loom is known, else (None, why not)."""
        halls = self.halls.get(loom, set())
        if hall is None:
            if len(halls) == 1:
                return next(iter(halls)), ""
            if halls:
                return None, f"loom {loom} stands in {_listed(halls)}; which hall is not said"
        elif hall in halls:
            return hall, ""
        elif same := [one for one in halls if fold(one) == fold(hall)]:
            return same[0], ""
        elif halls:
            return None, f"loom {loom} stands in {_listed(halls)}, not in {hall}"
        return None, f"loom {loom} is not in the loom list{self._nearest(loom)}"

    def _nearest(self, loom: str) -> str:
        found = process.extractOne(loom, list(self.halls), score_cutoff=60)
        return f"; the nearest is {found[0]}" if found else ""


def _listed(halls: Iterable[str]) -> str:
    return " and ".join(hall or "a hall without a name" for hall in sorted(halls, key=natural_key))


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
    hall, why = known.hall_of(loom, said)
    if hall is not None:
        return row if hall == said else replace(row, values={**row.values, "hall": hall})
    source = sources[row.source]
    if "which hall" in why:
        code, hint = "ambiguous-hall", "Write the hall beside it."
    elif said and loom in known.halls:
        code, hint = "unknown-loom", "Write the hall as the loom list does; a number of one hall only needs none."
    else:
        code, hint = "unknown-loom", "Correct the number, or load the loom list with it."
    cell = source.cell_of("loom", row.number)
    return Finding(
        code, Severity.REFUSED, f"{why[:1].upper()}{why[1:]}.", hint, source.file, source.sheet, cell, "Loom", str(loom)
    )


def shown(value: Any) -> str:
    """A value in a message."""
    return "empty" if value is None else f"{value:g}" if isinstance(value, float) else str(value)
