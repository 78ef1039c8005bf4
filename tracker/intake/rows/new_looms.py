"""New looms whose number looks like that of a loom in the database."""

from collections.abc import Iterable, Iterator, Mapping

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import Change, RowKey, SourceTable
from tracker.intake.rows.loom_numbers import signs_of
from tracker.intake.rows.loom_rows import figures_for_letters

LOOKS_LIKE_KNOWN = "looks-like-known-loom"


def alike_stored(
    changes: Iterable[Change],
    places: Mapping[tuple[str, RowKey], tuple[int, int]],
    sources: tuple[SourceTable, ...],
    stored: Iterable[RowKey],
) -> Iterator[Finding]:
    """A note for each loom to add that differs from a stored one of its hall only by signs that look alike: a slip would
    make a second loom of it."""
    added = [change.key for change in changes if change.table == "looms" and not change.field]
    known = _by_looks(stored) if added else {}
    for loom, hall in added:
        twin = next((known[hall, like] for like in _looks(loom) if known.get((hall, like), loom) != loom), "")
        if twin:
            source, row = places["looms", (loom, hall)]
            yield _note(sources[source], row, loom, f"{twin} ({hall})" if hall else twin)


def _by_looks(looms: Iterable[RowKey]) -> dict[tuple[str, str], str]:
    return {(hall, like): loom for loom, hall in looms for like in _looks(loom)}


def _looks(loom: str) -> list[str]:
    """The number as it is, with figures for the letters that look like them, and without the signs between."""
    return [loom, *figures_for_letters(loom), "|".join(signs_of(loom))]


def _note(source: SourceTable, row: int, loom: str, twin: str) -> Finding:
    heading = next((column.heading for column in source.columns if column.field == "loom"), "")
    return Finding(
        LOOKS_LIKE_KNOWN, Severity.NOTE, file=source.file, sheet=source.sheet, cell=source.cell_of("loom", row),
        heading=heading, raw=loom, understood=loom, params={"twin": twin},
    )  # fmt: skip
