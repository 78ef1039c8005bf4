"""The lists of the corpus, drawn from a seed: each leads with one trait, every other one has company of others."""

import random
from collections.abc import Iterator
from functools import cache

from .conventions import write_columns
from .dirt_in_cells import IN_CELLS
from .dirt_in_rows import IN_ROWS
from .draft import Draft, Finished
from .files import can_be_written
from .mills import NUMBERINGS, make_mill
from .more_columns import MORE_COLUMNS
from .plans import AXES, LANGUAGES, LAYOUTS, NEEDS, WORKBOOKS, Plan, fits
from .sheets import LIST, File, Sheet

SEED = 14
IN_EVERY_LANGUAGE = ("file", "headings", "dates", "columns", "rows")
"""Axes whose values are words: each is tried in all languages, a value of the others in two."""
COMPANY = 0.15
"""How likely each further axis leaves its plainest value where a list has company."""

LEADS = [(axis, value) for axis, values in AXES.items() for value in values[1:]]


@cache
def all_lists(seed: int = SEED) -> tuple[Finished, ...]:
    """Every list, always the same ones for a seed."""
    return tuple(_drawn(seed))


def _drawn(seed: int) -> Iterator[Finished]:
    for lead, (axis, value) in enumerate(LEADS):
        alone = len(LANGUAGES) if axis in IN_EVERY_LANGUAGE else 2
        for turn in range(alone + 2):
            rng = random.Random(f"{seed} {axis} {value} {turn}")
            language = LANGUAGES[(lead + (turn if axis in IN_EVERY_LANGUAGE else 3 * turn)) % len(LANGUAGES)]
            yield _drawn_for(axis, value, f"{axis}: {value} {turn + 1}", language, turn >= alone, rng)


def _drawn_for(axis: str, value: str, name: str, language: str, company: bool, rng: random.Random) -> Finished:
    """A list that leads with a value, drawn until its code page has all its letters."""
    for _ in range(100):
        made = build(name, _plan(rng, axis, value, language, company), rng)
        if all(can_be_written(file) for file in made.files if file.name.endswith(".csv")):
            return made
    raise ValueError(f"no code page has the letters of {name}")


def _plan(rng: random.Random, axis: str, value: str, language: str, company: bool) -> Plan:
    for _ in range(1000):
        others = {name: rng.choice(values) for name, values in AXES.items() if company and rng.random() < COMPANY}
        plan = Plan(**{"language": language, **others, **NEEDS.get(f"{axis}: {value}", {}), axis: value})  # type: ignore[arg-type]
        if fits(plan):
            return plan
        language = rng.choice(LANGUAGES)
    raise ValueError(f"nothing goes with {axis}: {value}")


def build(name: str, plan: Plan, rng: random.Random) -> Finished:
    """Make the list that a plan asks for."""
    told = rng.random() < 0.6 and "inch" not in plan.cells
    number = NUMBERINGS.get(plan.numbering, NUMBERINGS["padded"])
    looms = make_mill(rng, plan.language, number, _widths(plan), told, fast=plan.speed == "thousands grouped")
    draft = Draft(rng, plan.language, looms)
    write_columns(draft, plan)
    for chosen, makers in ((plan.columns, MORE_COLUMNS), (plan.cells, IN_CELLS)):
        if chosen:
            makers[chosen](draft)
    LAYOUTS[plan.layout].lay(draft)
    if plan.rows:
        IN_ROWS[plan.rows](draft)
    draft.files = _files(draft, plan)
    return Finished.of(name, plan.traits, draft)


def _widths(plan: Plan) -> str:
    """Which widths the looms have, so that the list can write them in its unit."""
    if "nothing tells" in plan.width:
        return "inch, or narrow looms in cm"
    return "inch" if "inch" in plan.width else "cm"


def _files(draft: Draft, plan: Plan) -> list[File]:
    if plan.file in WORKBOOKS:
        return [File(f"{LIST}.{plan.file}", draft.sheets)]
    mark = {"csv by tabs": "\t", "csv by commas": ","}.get(plan.file, ";")
    odd = b"\xe9" if plan.file == "odd byte" else b""
    return [File(f"{name}.csv", [sheet], plan.encoding, mark, odd) for name, sheet in _named(draft.sheets)]


def _named(sheets: list[Sheet]) -> list[tuple[str, Sheet]]:
    """Text files are named after their sheet where there are several."""
    return [(LIST if len(sheets) == 1 else sheet.name, sheet) for sheet in sheets]
