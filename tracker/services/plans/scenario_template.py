"""A scenario file to begin with: every entry with its fields, what each means and what it may hold, all of it commented out."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

from tracker.domain.tables import TERM_COLUMNS, Column, Kind
from tracker.domain.terms import Terms
from tracker.office import files
from tracker.services.plans.scenario_entries import ENTRIES, EntryKind, place
from tracker.words import ENGLISH

ABOUT = {
    "terms": "Terms by their headings, percent as percent.",
    "heads": "Crew = heads.",
    "tools": "Tool = how many there are.",
    "crew": "A crew more; what is left out is as in its trade. Write the entry again for another one, as in all that follow.",
    "absent": "A crew away, both days included; with heads only so many of it.",
    "receipt": "An order line that comes otherwise, or a new one.",
    "closure": "A day on which a hall, or all of them, does not weave or work.",
    "protect": "No conversion of a loom before or on a day.",
}
HEAD = """# A scenario: the mill with a few things otherwise. The database stays as it is.
# Take the # off the lines that you want; what has one changes nothing.
# name = "A third crew from February"
"""
EXAMPLES = {Kind.NUMBER: "1.5", Kind.INTEGER: "2", Kind.FRACTION: "15", Kind.DATE: "2027-02-01", Kind.TIME: "06:00",
            Kind.YES_NO: "yes", Kind.WEEKDAYS: "Mon-Fri", Kind.MOMENT: "2027-02-01 06:00"}  # fmt: skip
BARE = (Kind.NUMBER, Kind.INTEGER, Kind.FRACTION, Kind.DATE)


def write_scenario_template(target: Path) -> None:
    """Write the file. Raises as every output does where it stands in the way of another file."""
    files.write(target, scenario_template().encode())


def scenario_template() -> str:
    """The text of the file (TOML)."""
    blocks = ["\n".join(_block(name, entry)) for name, entry in ENTRIES.items()]
    return HEAD + "\n" + "\n\n".join(blocks) + "\n"


def _block(name: str, entry: EntryKind) -> Iterator[str]:
    yield f"## {ABOUT[name]}"
    yield f"# {place(name)}"
    if entry.values:
        yield f'# "name" = {_value(entry.values)}  # {ENGLISH.say(entry.values.possible)}'
    for column in entry.fields:
        said = ENGLISH.say(column.possible)
        about = "; ".join(filter(None, (_means(column), said, "needed" if column.needed else "")))
        yield f"# {_key(column)} = {_value(column)}  # {about}"


def _means(column: Column) -> str:
    return ENGLISH.say(column.meaning).rstrip(".") if column.meaning else ""


def _key(column: Column) -> str:
    return f'"{column.title}"' if column in TERM_COLUMNS else column.heading.lower().replace(" ", "_")


def _value(column: Column) -> str:
    said = (
        column.example or _default(column) or (column.words[0] if column.words else EXAMPLES.get(column.kind, "text"))
    )
    if column.kind in BARE and _is_bare(column, said):
        return said
    return f'"{said}"'


def _default(column: Column) -> str:
    """Of a term, as the sheet would have it; `` where it has none."""
    value = getattr(Terms(), column.field, None) if column in TERM_COLUMNS else None
    if value is None or isinstance(value, bool):
        return ""
    return (
        f"{value * 100 if column.kind is Kind.FRACTION else value:g}" if isinstance(value, int | float) else str(value)
    )


def _is_bare(column: Column, said: str) -> bool:
    try:
        date.fromisoformat(said) if column.kind is Kind.DATE else float(said)
    except ValueError:
        return False
    return True
