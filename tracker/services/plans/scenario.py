"""Scenarios: a small TOML file that changes the mill before planning; the database stays as it is.

name = "A third crew from February"
[terms]                       # by the headings of the Terms sheet, percent as percent
"horizon (days)" = 98
[heads]                       # crew = heads
"Fitters 2" = 3
[tools]                       # tool = how many
hoist = 2
[[crew]]                      # a crew more, by the fields of the Crews sheet; what is left out is as in its trade
crew = "Fitters 3"
trade = "fitter"
heads = 2
weekdays = "Mon-Fri"
from = 2027-02-01
[[absent]]                    # a crew away, both days included; with `heads` only so many of it
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

Every value passes the checks of a cell of the workbook (`scenario_entries`), and so a day may stand in quotes.
"""

import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from tracker.domain.mill import Absence, Closure, Crew, Mill, Receipt
from tracker.domain.shifts import lead_heads
from tracker.domain.words import fold
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.looms import find_hall, find_loom
from tracker.services.plans.scenario_entries import Scenario, checked_items, checked_name, place


def read_scenario(path: Path) -> Scenario:
    """The scenario file as plain data; UsageError where it cannot be read."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        raise UsageError("scenario-missing", file=str(path)) from None
    except UnicodeDecodeError:
        raise UsageError("scenario-encoding", file=str(path)) from None
    except OSError as error:
        raise UsageError("scenario-unreadable", file=str(path), why=(error.strerror or str(error)).lower()) from error
    return scenario_of(text, str(path))


def scenario_of(text: str, file: str = "scenario.toml") -> Scenario:
    """The text of a scenario file as plain data; `file` is its name for messages. UsageError where it is no TOML."""
    try:
        scenario = Scenario(tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise UsageError("scenario-not-toml", file=file, why=str(error)) from error
    scenario.file = file
    return scenario


def apply_scenario(mill: Mill, scenario: Mapping[str, Any]) -> Mill:
    """The mill as the scenario changes it. UsageError names file, entry, field and value of what does not fit."""
    said = scenario if isinstance(scenario, Scenario) else Scenario(scenario)
    checked_name(said)
    for entry, content in said.items():
        if entry == "name":
            continue
        for item in checked_items(said.spot, entry, content):
            try:
                mill = _APPLY[entry](mill, item)
            except DataError as error:  # a name that the mill does not have, a loom of several halls
                raise replace(said.spot, place=place(entry)).refused(error.message) from error
    return mill


def changes_nothing(before: Mill, after: Mill) -> Iterator[Message]:
    """What of a scenario cannot change how many conversions can be done: more heads for a crew of the lead trade that could
    take one already, since a crew takes one at a time."""
    lead, asked = fold(before.terms.lead_trade), lead_heads(before)
    heads = {crew.crew: crew.heads for crew in before.crews if fold(crew.trade) == lead}
    for name in dict.fromkeys(crew.crew for crew in after.crews if asked <= heads.get(crew.crew, 0) < crew.heads):
        yield message("heads-change-nothing", crew=name, heads=heads[name], asked=asked)


def _terms(mill: Mill, given: Mapping[str, Any]) -> Mill:
    return replace(mill, terms=replace(mill.terms, **given))


def _heads(mill: Mill, given: Mapping[str, int]) -> Mill:
    heads = {_known(crew, {c.crew for c in mill.crews}, "crew"): count for crew, count in given.items()}
    crews = tuple(replace(crew, heads=heads.get(crew.crew, crew.heads)) for crew in mill.crews)
    return replace(mill, crews=crews)


def _tools(mill: Mill, given: Mapping[str, int]) -> Mill:
    there_are = {_known(tool, mill.tools, "tool"): count for tool, count in given.items()}
    return replace(mill, tools={n: replace(t, how_many=there_are.get(n, t.how_many)) for n, t in mill.tools.items()})


def _crew(mill: Mill, item: Mapping[str, Any]) -> Mill:
    asked = (
        {row.trade for row in mill.method.operations} | {crew.trade for crew in mill.crews} | {mill.terms.lead_trade}
    )
    trade = _known(item["trade"], asked, "trade")
    like = next((crew for crew in mill.crews if fold(crew.trade) == fold(trade)), Crew(item["crew"], trade, 1))
    fresh = {"from_on": None, "to_on": None}
    crew = replace(like, **(fresh | _in_its_hall(mill, item) | {"trade": trade}))
    if crew.shift_start == crew.shift_end:
        raise DataError("scenario-shift", crew=crew.crew, at=crew.shift_start)
    return replace(mill, crews=(*mill.crews, crew))


def _absent(mill: Mill, item: Mapping[str, Any]) -> Mill:
    away = _known(item["crew"], {crew.crew for crew in mill.crews}, "crew")
    return replace(mill, absences=(*mill.absences, Absence(**{**item, "crew": away})))


def _receipt(mill: Mill, item: Mapping[str, Any]) -> Mill:
    part = _known(item["part"], mill.parts, "part")
    item = {**item, "part": part}
    unit = mill.parts[part].unit
    if item.get("unit") and fold(item["unit"]) != fold(unit or ""):
        raise DataError("unit-differs", part=part, kept=unit or None, unit=item["unit"])
    same = [r for r in mill.receipts if (r.order, r.part) == (item["order"], part)]
    others = tuple(r for r in mill.receipts if r not in same)
    if not same and "quantity" not in item:
        raise DataError("scenario-new-order", order=item["order"], part=part)
    line = replace(same[0], **item) if same else Receipt(**item)
    return replace(mill, receipts=(*others, line))


def _closure(mill: Mill, item: Mapping[str, Any]) -> Mill:
    return replace(mill, closures=(*mill.closures, Closure(**_in_its_hall(mill, item))))


def _protect(mill: Mill, item: Mapping[str, Any]) -> Mill:
    key = find_loom(mill, item["loom"], _in_its_hall(mill, item).get("hall"))
    protected = replace(mill.looms[key], protected_until=item["protected_until"])
    return replace(mill, looms=dict(mill.looms) | {key: protected})


def _in_its_hall(mill: Mill, item: Mapping[str, Any]) -> dict[str, Any]:
    """The item with its hall, where it names one, as the mill writes it."""
    return dict(item) | ({"hall": find_hall(mill, item["hall"])} if "hall" in item else {})


def _known(name: str, names: Iterable[str], what: str) -> str:
    """The name as the mill writes it."""
    there = sorted(names)
    found = name if name in there else next((one for one in there if fold(one) == fold(name)), None)
    if found is None:
        raise DataError("scenario-nobody", kind=what, name=name, names=there or None)
    return found


_APPLY: dict[str, Callable[[Mill, Any], Mill]] = {
    "terms": _terms, "heads": _heads, "tools": _tools, "crew": _crew, "absent": _absent, "receipt": _receipt,
    "closure": _closure, "protect": _protect,
}  # fmt: skip
