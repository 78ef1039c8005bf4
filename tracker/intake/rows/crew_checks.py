"""Breaks outside their shift; absences and overtime that do not fit the crews."""

from collections.abc import Iterator
from datetime import date

from rapidfuzz import process

from tracker.domain.breaks import outside_shift, read_breaks
from tracker.domain.faults import Fault
from tracker.domain.findings import Severity
from tracker.domain.mill import Crew
from tracker.domain.rows import TypedRow
from tracker.errors import Message, message
from tracker.intake.rows.around import Around, Values


def breaks(row: TypedRow, _: Around) -> Iterator[Fault]:
    text, crew = row.values.get("breaks"), row.values["crew"]
    start, end = (row.values.get(name) or getattr(Crew(crew, "", 0), name) for name in ("shift_start", "shift_end"))
    try:
        found = outside_shift(read_breaks(text), start, end)
    except ValueError as piece:
        yield _refused("breaks", message("unreadable-break", crew=crew, text=str(piece)))
        return
    if found:
        said = message("break-outside-shift", crew=crew, begin=found[0], until=found[1], start=start, end=end)
        yield _refused("breaks", said)


def known_crew(row: TypedRow, around: Around) -> Iterator[Fault]:
    crew, names = row.values["crew"], {values["crew"] for values in around.crews}
    if names and crew not in names:
        near = process.extractOne(crew, sorted(names), score_cutoff=60)
        yield _refused("crew", message("unknown-crew", crew=crew, near=near[0] if near else None))


def within_its_dates(row: TypedRow, around: Around) -> Iterator[Fault]:
    """The crew is in the list on the first and on the last day of the row."""
    rows = _rows_of(row, around)
    for field in ("on", "from_on", "to_on"):
        day = row.values.get(field)
        if rows and day and not any(_valid(values, day) for values in rows):
            yield _refused(field, message("outside-crew-dates", crew=row.values["crew"], day=day, dates=_dates(rows)))
            return


def heads_away(row: TypedRow, around: Around) -> Iterator[Fault]:
    away, first, last = row.values.get("heads"), row.values["from_on"], row.values["to_on"]
    there = [v["heads"] for v in _rows_of(row, around) if _valid(v, first) or _valid(v, last)]
    if away and there and away > max(there):
        yield _refused("heads", message("more-heads-than-crew", crew=row.values["crew"], heads=max(there), away=away))


def overlapping(row: TypedRow, around: Around) -> Iterator[Fault]:
    """Two absences of one crew on one day, neither taken back."""
    if row.values.get("heads") == 0:
        return
    crew, first, last = (row.values[name] for name in ("crew", "from_on", "to_on"))
    for other in around.absences:
        if other.get("heads") == 0 or other["crew"] != crew or other["from_on"] == first:
            continue
        if other["from_on"] <= last and first <= other["to_on"]:
            said = message(
                "absences-overlap", crew=crew, first=first, last=last, again=other["from_on"], until=other["to_on"]
            )
            yield _refused("from_on", said)


def _rows_of(row: TypedRow, around: Around) -> list[Values]:
    return [values for values in around.crews if values["crew"] == row.values["crew"]]


def _valid(crew: Values, day: date) -> bool:
    return (crew.get("from_on") or day) <= day <= (crew.get("to_on") or day)


def _dates(rows: list[Values]) -> list[Message]:
    return [message("crew-dates", first=row.get("from_on"), last=row.get("to_on")) for row in rows]


def _refused(field: str, said: Message) -> Fault:
    return Fault(said, field, Severity.REFUSED)
