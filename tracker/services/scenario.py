"""Scenarios: a small TOML file that changes the mill before planning; the database stays as it is.

name = "A third crew from February"
[terms]                       # by the headings of the Terms sheet, percent as percent
"horizon (days)" = 98
[heads]                       # crew = heads
"Fitters 2" = 3
[tools]                       # tool = how many
hoist = 2
[[crew]]                      # a crew more, by the fields of the Crews sheet
crew = "Fitters 3"
trade = "fitter"
heads = 2
from = 2027-02-01
[[absent]]                    # a crew away, both days included
crew = "Fitters 1"
from = 2027-01-11
to = 2027-01-15
[[receipt]]                   # an order line that comes otherwise, or a new one
order = "4500123-10"
part = "RAIL-190"
due = 2027-02-08
quantity = 8
[[closure]]
date = 2027-02-01
stops = "work"
[[protect]]                   # no conversion of this loom before or on a day
loom = "007"
until = 2027-02-14
"""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from tracker.domain.mill import Closure, Crew, Mill, Receipt
from tracker.domain.tables import TERM_HEADINGS
from tracker.errors import UsageError
from tracker.services.record import find_loom


def read_scenario(path: Path) -> dict[str, Any]:
    """The scenario file as plain data; UsageError where it cannot be read."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise UsageError(f"there is no scenario file {path}") from None
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise UsageError(f"scenario {path}: {error}") from error


def apply_scenario(mill: Mill, scenario: Mapping[str, Any]) -> Mill:
    """The mill as the scenario changes it. UsageError names the entry that does not fit."""
    for entry, content in scenario.items():
        if entry == "name":
            continue
        if entry not in ENTRIES:
            raise UsageError(f"scenario: {entry!r} is not one of name, {', '.join(ENTRIES)}")
        for item in [content] if isinstance(content, dict) else content:
            try:
                mill = ENTRIES[entry](mill, item)
            except (KeyError, TypeError, AttributeError) as error:
                raise UsageError(f"scenario: [{entry}] {item}: {error}") from error
    return mill


def _terms(mill: Mill, given: Mapping[str, Any]) -> Mill:
    values = {}
    for heading, value in given.items():
        if heading not in TERM_HEADINGS:
            raise UsageError(f"scenario: there is no term {heading!r}; the terms are {', '.join(TERM_HEADINGS)}")
        values[TERM_HEADINGS[heading]] = value / 100 if heading.endswith("(%)") else value
    return replace(mill, terms=replace(mill.terms, **values))


def _heads(mill: Mill, given: Mapping[str, int]) -> Mill:
    for crew in given:
        _known(crew, {c.crew for c in mill.crews}, "crew")
    crews = tuple(replace(crew, heads=given.get(crew.crew, crew.heads)) for crew in mill.crews)
    return replace(mill, crews=crews)


def _tools(mill: Mill, given: Mapping[str, int]) -> Mill:
    for tool in given:
        _known(tool, set(mill.tools), "tool")
    return replace(mill, tools={n: replace(t, how_many=given.get(n, t.how_many)) for n, t in mill.tools.items()})


def _crew(mill: Mill, item: Mapping[str, Any]) -> Mill:
    like = next((crew for crew in mill.crews if crew.trade == item["trade"]), Crew(item["crew"], item["trade"], 1))
    fields = {"from": "from_on", "to": "to_on"}
    given = {fields.get(name, name): value for name, value in item.items()}
    if "weekdays" in given:
        given["weekdays"] = frozenset(given["weekdays"])
    return replace(mill, crews=(*mill.crews, replace(like, **({"from_on": None, "to_on": None} | given))))


def _absent(mill: Mill, item: Mapping[str, Any]) -> Mill:
    _known(item["crew"], {crew.crew for crew in mill.crews}, "crew")
    rows: list[Crew] = []
    for crew in mill.crews:
        rows += _without(crew, item["from"], item["to"]) if crew.crew == item["crew"] else [crew]
    return replace(mill, crews=tuple(rows))


def _without(crew: Crew, first: date, last: date) -> list[Crew]:
    """The row of a crew, less the days from first to last: at most two rows."""
    before = replace(crew, to_on=min(crew.to_on or date.max, first - timedelta(days=1)))
    after = replace(crew, from_on=max(crew.from_on or date.min, last + timedelta(days=1)))
    return [row for row in (before, after) if (row.from_on or date.min) <= (row.to_on or date.max)]


def _receipt(mill: Mill, item: Mapping[str, Any]) -> Mill:
    _known(item["part"], set(mill.parts), "part")
    same = [r for r in mill.receipts if (r.order, r.part) == (item["order"], item["part"])]
    others = tuple(r for r in mill.receipts if r not in same)
    line = replace(same[0], **item) if same else Receipt(**item)
    return replace(mill, receipts=(*others, line))


def _closure(mill: Mill, item: Mapping[str, Any]) -> Mill:
    given = {("on" if name == "date" else name): value for name, value in item.items()}
    return replace(mill, closures=(*mill.closures, Closure(**given)))


def _protect(mill: Mill, item: Mapping[str, Any]) -> Mill:
    key = find_loom(mill, str(item["loom"]), item.get("hall"))
    return replace(mill, looms=dict(mill.looms) | {key: replace(mill.looms[key], protected_until=item["until"])})


def _known(name: str, names: set[str], what: str) -> None:
    if name not in names:
        raise UsageError(f"scenario: there is no {what} {name!r}; there are {', '.join(sorted(names)) or 'none'}")


ENTRIES: dict[str, Callable[[Mill, Any], Mill]] = {
    "terms": _terms, "heads": _heads, "tools": _tools, "crew": _crew, "absent": _absent, "receipt": _receipt,
    "closure": _closure, "protect": _protect,
}  # fmt: skip
