"""The settings of the looms as series, from what was recorded and the method in force."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any

from tracker.commissioning.settings.series import Limits, Occasion, Series, Value
from tracker.domain.method import Setpoint
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.progress import Conversion
from tracker.domain.scopes import LoomScope
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.services.work.method_then import MethodThen
from tracker.store import UnitOfWork

_Place = tuple[str, str]
"""Folded setting and side."""


def read_series(uow: UnitOfWork, mill: Mill, until: datetime) -> list[Series]:
    """Every series that has a value up to `until`, by loom, setting and side. Values that were waived are left out."""
    values = _values(uow, until)
    limits = _limits_then(uow, mill)
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


def _limits_then(uow: UnitOfWork, mill: Mill) -> Callable[[LoomKey, datetime], dict[_Place, Limits]]:
    """Loom and moment → its setpoints by the method version that was in force then; before the first one, by that."""
    then, done = MethodThen(uow, mill), {one.key: one for one in uow.conversions()}

    def limits(key: LoomKey, at: datetime) -> dict[_Place, Limits]:
        if not then.mill(at).method.setpoints:
            return {}
        return _of_loom(_taken(then.scope(key, at), done.get(key)))

    return limits


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
