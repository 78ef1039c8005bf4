"""The settings of the looms as series, from what was recorded and the method in force."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from tracker.commissioning.settings.series import Limits, Occasion, Series, Value
from tracker.domain.method import Setpoint
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import Conversion
from tracker.domain.scopes import LoomScope
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.scope.content import scope_looms
from tracker.store import UnitOfWork

_Place = tuple[str, str]
"""Folded setting and side."""


def read_series(uow: UnitOfWork, mill: Mill, until: datetime) -> list[Series]:
    """Every series that has a value up to `until`, by loom, setting and side. Values that were waived are left out."""
    values = _values(uow, until)
    limits = _limits_then(uow, mill, values)
    known = _by_setting(mill.method.setpoints)
    found = [_series(mill, key, rows, limits(key, rows[-1]["at"]), known) for (key, *_), rows in values.items()]
    return sorted(found, key=lambda one: (one.key.sort_key, fold(one.setting), one.side or ""))


def _values(uow: UnitOfWork, until: datetime) -> dict[tuple[LoomKey, str, str], list[dict[str, Any]]]:
    """Loom, folded setting, folded side → rows in order of time; moments with their zone."""
    zone = uow.zone
    found: dict[tuple[LoomKey, str, str], list[dict[str, Any]]] = defaultdict(list)
    for row in uow.rows("set_values").values():
        at = row["at"].replace(tzinfo=zone)
        if row["value"] is not None and at <= until:
            place = LoomKey(row["hall"], row["loom"]), fold(row["setting"]), fold(row["side"] or "")
            found[place].append(row | {"at": at})
    return {place: sorted(rows, key=lambda row: row["at"]) for place, rows in found.items()}


def _series(
    mill: Mill, key: LoomKey, rows: Sequence[Mapping[str, Any]], limits: Mapping[_Place, Limits],
    known: Mapping[str, Sequence[Setpoint]],
) -> Series:  # fmt: skip
    last = rows[-1]
    setting, side = fold(last["setting"]), fold(last["side"] or "")
    same = known.get(setting, ())
    return Series(
        key, last["setting"], last["side"], tuple(map(_value, rows)),
        unit=next((row.unit for row in same if row.unit), None),
        limits=limits.get((setting, side)) or limits.get((setting, ""), Limits()),
        repeatability=next((row.repeatability for row in same if row.repeatability), None),
        machine_type=mill.looms[key].machine_type, family=_family(mill, key, rows),
    )  # fmt: skip


def _value(row: Mapping[str, Any]) -> Value:
    value = row["value"]
    if isinstance(value, bool):
        value = "yes" if value else "no"
    return Value(value, row["at"], Occasion(row["why"] or Occasion.READ_OUT), row["article"])


def _family(mill: Mill, key: LoomKey, rows: Iterable[Mapping[str, Any]]) -> str | None:
    """Of the article woven at the last value that names one, else of what is on the loom."""
    warps = mill.warps.get(key, ())
    woven = [row["article"] for row in rows if row["article"]] or [warp.article for warp in warps[:1]]
    article = mill.articles.get(woven[-1]) if woven else None
    return article.family if article else None


def _by_setting(setpoints: Iterable[Setpoint]) -> dict[str, list[Setpoint]]:
    found: dict[str, list[Setpoint]] = defaultdict(list)
    for row in setpoints:
        found[fold(row.setting)].append(row)
    return found


def _limits_then(
    uow: UnitOfWork, mill: Mill, values: Mapping[tuple[LoomKey, str, str], Sequence[Mapping[str, Any]]]
) -> Callable[[LoomKey, datetime], dict[_Place, Limits]]:
    """Loom and moment → its setpoints by the method version that was in force then; before the first one, by that."""
    versions, done = uow.method_versions(), {one.key: one for one in uow.conversions()}

    def version_at(at: datetime) -> int | None:
        return next((v for v, since in reversed(versions) if since <= at), versions[0][0] if versions else None)

    looms: dict[int | None, set[LoomKey]] = defaultdict(set)
    for (key, *_), rows in values.items():
        looms[version_at(rows[-1]["at"])].add(key)
    found: dict[int | None, dict[LoomKey, dict[_Place, Limits]]] = {
        version: _limits(replace(mill, method=uow.method(version)), done, keys) for version, keys in looms.items()
    }
    return lambda key, at: found.get(version_at(at), {}).get(key, {})


def _limits(
    mill: Mill, done: Mapping[LoomKey, Conversion], looms: Iterable[LoomKey]
) -> dict[LoomKey, dict[_Place, Limits]]:
    """The setpoints of each loom; none where the method has none or the loom is not to be scoped by it."""
    if not mill.method.setpoints:
        return {}
    scopes = scope_looms(mill)
    return {key: _of_loom(_taken(scopes[key], done.get(key))) for key in looms}


def _taken(scope: LoomScope, done: Conversion | None) -> list[WorkContent]:
    """The work as it was done, where its window and choices are recorded; else all that it can have been."""
    contents = [content for many in scope.contents.values() for content in many]
    if done is None or done.kind is None:
        return contents
    as_done = [one for one in contents if one.kind is done.kind and set(one.choices) == set(done.choices)]
    return as_done or contents


def _of_loom(contents: Iterable[WorkContent]) -> dict[_Place, Limits]:
    """Where several setpoints could be meant, none is: nothing is guessed."""
    found: dict[_Place, set[Limits]] = defaultdict(set)
    for content in contents:
        for row in content.setpoints:
            found[fold(row.setting), fold(row.side or "")].add(Limits(row.target, row.low, row.high))
    return {place: next(iter(many)) for place, many in found.items() if len(many) == 1}
