"""A scenario put together on its screen, entry by entry: each is checked as that of a scenario file is, and written as one."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from tracker.errors import Message, UsageError
from tracker.services.context import Context
from tracker.services.plans.scenario import apply_scenario
from tracker.services.plans.scenario_entries import ENTRIES, ONE_TABLE, place

Value = str | bool | date


@dataclass(frozen=True, slots=True)
class DraftEntry:
    kind: str
    """One of `ENTRIES`."""
    values: Mapping[str, Value]
    """By the words of the file; of `terms`, `heads` and `tools` one name with its value."""


Draft = tuple[DraftEntry, ...]


def with_entry(context: Context, draft: Draft, entry: DraftEntry) -> Draft:
    """The draft with one entry more; a second value for a name takes the place of the first. UsageError for what does not fit
    this mill, with the field that it is about."""
    found = (*(one for one in draft if not _same_name(one, entry)), entry)
    with context.reading() as uow:
        mill = uow.mill()
    try:
        apply_scenario(mill, as_scenario(found))
    except UsageError as refusal:
        raise _beside_its_field(refusal) from refusal
    return found


def as_scenario(draft: Draft) -> dict[str, Any]:
    """As the file would give it, but for its name; in the order in which entries build on each other: a crew, then its absence."""
    scenario: dict[str, Any] = {}
    for kind in ENTRIES:
        items = [dict(one.values) for one in draft if one.kind == kind]
        if items:
            scenario[kind] = (
                {word: value for item in items for word, value in item.items()} if kind in ONE_TABLE else items
            )
    return scenario


def scenario_text(name: str, draft: Draft) -> str:
    """The scenario file (TOML), which `beamslot plan --scenario` takes as well."""
    lines = [f"name = {_toml(name)}"]
    for kind, content in as_scenario(draft).items():
        for item in [content] if kind in ONE_TABLE else content:
            lines += [place(kind), *(f"{_toml(word)} = {_toml(value)}" for word, value in item.items())]
    return "\n".join(lines) + "\n"


def _same_name(one: DraftEntry, other: DraftEntry) -> bool:
    return one.kind == other.kind and one.kind in ONE_TABLE and one.values.keys() == other.values.keys()


def _beside_its_field(refusal: UsageError) -> UsageError:
    """The refusal without the place in a file that nobody wrote, with the heading of its field."""
    at = refusal.message.params
    what = at["what"]
    assert isinstance(what, Message)
    field = what.params.get("field") or what.params.get("kind") or at["where"]
    return UsageError("scenario-entry-refused", how=at["how"], field=field, what=what)


def _toml(value: Value) -> str:
    """A day and a yes as they are; text as a basic string, whose escapes are those of JSON."""
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    return str(value).lower()
