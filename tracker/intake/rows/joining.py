"""What a second table says of the looms of a list, put into their rows."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import SourceTable, TypedRow
from tracker.errors import message
from tracker.intake.rows.compare import same
from tracker.intake.rows.references import KnownLooms, shown


def joined(
    rows: Sequence[TypedRow], more: Iterable[TypedRow], tables: Sequence[SourceTable]
) -> tuple[list[TypedRow], list[Finding]]:
    """The rows with what the others say of the same looms, and the findings that refuse those which fit no loom, or say
    otherwise than the list."""
    found, findings = list(rows), []
    known = KnownLooms.of(rows, ())
    places = {(row.values["loom"], row.values["hall"]): i for i, row in enumerate(found) if row.table == "looms"}
    for row in more:
        loom = _as_listed(row.values["loom"], known)
        hall = known.hall_of(loom, row.values.get("hall") or None)
        if not isinstance(hall, str):
            findings.append(_refused(row, tables, hall.code, dict(hall.params)))
            continue
        at = places[loom, hall]
        said = {name: value for name, value in row.values.items() if name not in ("loom", "hall")}
        if differing := _differing(found[at], said, row):
            findings.append(
                _refused(row, tables, "double-differs", {"places": [_place(found[at], tables)], **differing})
            )
            continue
        found[at] = replace(found[at], values={**said, **found[at].values}, kept={**row.kept, **found[at].kept})
    return found, findings


def _as_listed(loom: str, known: KnownLooms) -> str:
    """7 is loom 007 of the list, where it has no loom 7 and one that is the same number."""
    if loom in known.halls or not loom.isdigit():
        return loom
    alike = [other for other in known.halls if other.isdigit() and int(other) == int(loom)]
    return alike[0] if len(alike) == 1 else loom


def _differing(loom: TypedRow, said: dict[str, object], row: TypedRow) -> dict[str, object]:
    """What the two rows say otherwise, as the words need it; empty where nothing is."""
    first, second = {**loom.values, **loom.kept}, {**said, **row.kept}
    names = [n for n in second if n in first and second[n] is not None and not same(first[n], second[n])]
    values = [
        message("value-differs", heading=name, here=shown(second[name]), there=shown(first[name])) for name in names[:4]
    ]
    return {"table": "Looms", "values": values} if names else {}


def _place(row: TypedRow, tables: Sequence[SourceTable]) -> str:
    source = tables[row.source]
    return f"{source.sheet} {source.row_cells(row.number)}"


def _refused(row: TypedRow, tables: Sequence[SourceTable], code: str, params: dict[str, object]) -> Finding:
    source = tables[row.source]
    return Finding(
        code, Severity.REFUSED, file=source.file, sheet=source.sheet, cell=source.row_cells(row.number), heading="Loom",
        raw=str(row.values["loom"]), params=params, rows=((row.source, row.number),),
    )  # fmt: skip
