"""Breaks outside their shift; absences and overtime that do not fit the crews."""

from collections.abc import Iterator
from datetime import date, time

from rapidfuzz import process

from tracker.domain.breaks import outside_shift, read_breaks
from tracker.domain.findings import Severity
from tracker.domain.formats import count
from tracker.domain.mill import Crew
from tracker.domain.rows import TypedRow
from tracker.intake.rows.around import Around, Fault, Values


def breaks(row: TypedRow, _: Around) -> Iterator[Fault]:
    text, crew = row.values.get("breaks"), row.values["crew"]
    start, end = (row.values.get(name) or getattr(Crew(crew, "", 0), name) for name in ("shift_start", "shift_end"))
    try:
        found = outside_shift(read_breaks(text), start, end)
    except ValueError as piece:
        yield _refused("unreadable-break", "breaks", f"Crew {crew}: the break {str(piece)!r} cannot be read.",
                       "Write it as 10:00-10:15, 12:00-12:30.")  # fmt: skip
        return
    if found:
        yield _refused("break-outside-shift", "breaks", f"Crew {crew}: the break {_hours(*found)} does not lie inside the "
                       f"shift {_hours(start, end)}.", "Correct the break or the shift.")  # fmt: skip


def known_crew(row: TypedRow, around: Around) -> Iterator[Fault]:
    crew, names = row.values["crew"], {values["crew"] for values in around.crews}
    if names and crew not in names:
        near = process.extractOne(crew, sorted(names), score_cutoff=60)
        nearest = f"; the nearest is {near[0]}" if near else ""
        yield _refused("unknown-crew", "crew", f"There is no crew {crew}{nearest}.",
                       "Correct the cell, or load the sheet Crews with it.")  # fmt: skip


def within_its_dates(row: TypedRow, around: Around) -> Iterator[Fault]:
    """The crew is in the list on the first and on the last day of the row."""
    rows = _rows_of(row, around)
    for field in ("on", "from_on", "to_on"):
        day = row.values.get(field)
        if rows and day and not any(_valid(values, day) for values in rows):
            yield _refused("outside-crew-dates", field, f"Crew {row.values['crew']} is not there on {day} by the sheet "
                           f"Crews ({_dates(rows)}).", "Correct the day, or the dates of the crew.")  # fmt: skip
            return


def heads_away(row: TypedRow, around: Around) -> Iterator[Fault]:
    away, first, last = (row.values.get(name) for name in ("heads", "from_on", "to_on"))
    there = [v["heads"] for v in _rows_of(row, around) if _valid(v, first) or _valid(v, last)]
    if away and there and away > max(there):
        yield _refused("more-heads-than-crew", "heads", f"Crew {row.values['crew']} has {count(max(there), 'head')}, and "
                       f"{away} are to be away.", "Write fewer, or leave the cell empty for all of them.")  # fmt: skip


def overlapping(row: TypedRow, around: Around) -> Iterator[Fault]:
    crew, first, last = (row.values[name] for name in ("crew", "from_on", "to_on"))
    for other in around.absences:
        if other["crew"] == crew and other["from_on"] != first and other["from_on"] <= last and first <= other["to_on"]:
            yield _refused("absences-overlap", "from_on", f"Crew {crew} is away from {first} to {last}, and again from "
                           f"{other['from_on']} to {other['to_on']}.",
                           "Give each stretch of days one row, with the heads that are away together.")  # fmt: skip


def _rows_of(row: TypedRow, around: Around) -> list[Values]:
    return [values for values in around.crews if values["crew"] == row.values["crew"]]


def _valid(crew: Values, day: date) -> bool:
    return (crew.get("from_on") or day) <= day <= (crew.get("to_on") or day)


def _dates(rows: list[Values]) -> str:
    spans = ((row.get("from_on") or "always", row.get("to_on") or "open") for row in rows)
    return ", ".join(f"{first} to {last}" for first, last in spans)


def _hours(start: time, end: time) -> str:
    return f"{start:%H:%M}-{end:%H:%M}"


def _refused(code: str, field: str, message: str, hint: str) -> Fault:
    return Fault(code, field, message, hint, Severity.REFUSED)
