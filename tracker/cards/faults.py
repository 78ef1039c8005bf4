"""What of a record cannot be: judged against the mill, its method and its cards, row by row. Pure."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from difflib import get_close_matches
from typing import Any

from tracker.cards.sign_off import is_number
from tracker.domain.card_numbers import read_card_number
from tracker.domain.cards import is_held
from tracker.domain.faults import Fault
from tracker.domain.findings import Severity
from tracker.domain.method import Method
from tracker.domain.mill import LoomKey
from tracker.domain.words import fold, natural_key
from tracker.errors import Message, message

Row = Mapping[str, Any]
BOLT_BEARS = 4 / 3
"""A bolt is tightened to three quarters of what it bears; what was read above this share of the method's torque stretched it."""
NOT_IN_WORK = "record-not-in-work"
"""What every row of a loom would say whose first line is missing or wrong; a load says it once."""
_NAMES = {"operations": "operation", "setpoints": "setting", "checks": "check"}
"""Part of the method → the field that names its rows."""


@dataclass(frozen=True)
class Known:
    """What records are judged by. Moments of rows are the mill's local time."""

    methods: Callable[[LoomKey], tuple[Method, ...]]
    """The versions by whose names a loom's records may go: that under which its conversion began, then that in force."""
    crews: frozenset[str]
    parts: frozenset[str]
    now: datetime
    card_of: Callable[[int, int], LoomKey | None]
    """Plan and place of a card → its loom; None where there is no such card."""
    holds: Callable[[LoomKey], Mapping[str, float]]
    """Part → what was issued to a loom."""
    begun: frozenset[LoomKey]
    """Looms whose conversion has begun, by what is stored."""
    work: Mapping[LoomKey, tuple[Row, ...]] = field(default_factory=dict)
    """Rows of Work done of each loom, stored and told now; likewise the next two."""
    stops: Mapping[LoomKey, tuple[Row, ...]] = field(default_factory=dict)
    waste: Mapping[LoomKey, tuple[Row, ...]] = field(default_factory=dict)
    _by_name: dict[tuple[int, str], dict[str, list[Any]]] = field(default_factory=dict)

    def of_name(self, key: LoomKey, part: str, name: str) -> list[Any]:
        """Rows of a name in a part of the loom's method: its operations, setpoints or checks; of the first version that has it."""
        found = (self._named(method, part).get(fold(name)) for method in self.methods(key))
        return next((rows for rows in found if rows), [])

    def names(self, key: LoomKey, part: str) -> Iterator[str]:
        """All names in a part of the loom's method."""
        return (getattr(row, _NAMES[part]) for method in self.methods(key) for row in getattr(method, part))

    def _named(self, method: Method, part: str) -> dict[str, list[Any]]:
        place = method.version, part
        if place not in self._by_name:
            rows = self._by_name[place] = {}
            for row in getattr(method, part):
                rows.setdefault(fold(getattr(row, _NAMES[part])), []).append(row)
        return self._by_name[place]


def faults(table: str, row: Row, known: Known) -> Iterator[Fault]:
    """What cannot be of a row, each with its field."""
    for check in _CHECKS.get(table, ()):
        yield from check(row, known)
    yield from _ahead(row, known)


def _refused(said: Message, name: str) -> Fault:
    return Fault(said, name, Severity.REFUSED)


def key_of_loom(row: Row) -> LoomKey:
    return LoomKey(row["hall"], row["loom"])


def whole_rows(rows: Iterable[Row]) -> list[Row]:
    """The rows of Work done that are about whole conversions, by start."""
    return sorted((row for row in rows if not row.get("operation")), key=lambda row: row["started_at"])


def _ahead(row: Row, known: Known) -> Iterator[Fault]:
    for name, value in row.items():
        if isinstance(value, datetime) and value > known.now:
            yield _refused(message("record-ahead", at=value, now=known.now), name)


def _card(row: Row, known: Known) -> Iterator[Fault]:
    if not (card := row.get("card")):
        return
    try:
        plan, place = read_card_number(card)
    except ValueError:
        yield _refused(message("card-mistyped", card=card), "card")
        return
    loom = known.card_of(plan, place)
    if loom is None:
        yield _refused(message("card-never-given", card=card, plan=str(plan)), "card")
    elif loom != key_of_loom(row):
        yield _refused(message("card-of-another", card=card, of=loom, loom=key_of_loom(row)), "card")


def _operation(row: Row, known: Known) -> Iterator[Fault]:
    name = row.get("operation")
    if not name:
        return
    key = key_of_loom(row)
    of_name = known.of_name(key, "operations", name)
    if not of_name:
        near, version = _near(name, known.names(key, "operations")), known.methods(key)[0].version
        yield _refused(message("operation-not-known", operation=name, version=version, near=near), "operation")
        return
    if not _is_begun(row, known):
        yield _waits(row)
    yield from _torque(row, max((one.torque_nm or 0.0 for one in of_name), default=0.0))


def _torque(row: Row, target_nm: float) -> Iterator[Fault]:
    torque = row.get("torque_nm")
    if torque is None:
        return
    if torque <= 0 or (target_nm and torque > target_nm * BOLT_BEARS):
        most = target_nm * BOLT_BEARS or None
        yield _refused(message("torque-impossible", torque=torque, target=target_nm or None, most=most), "torque_nm")


def _times(row: Row, known: Known) -> Iterator[Fault]:
    if row.get("operation"):
        stop_min = max((_span_min(one) for one in _same_card(row, known)), default=0.0)
    else:
        stop_min = _span_min(row)
        if row.get("stage") != "in work" and not row.get("ended_at"):
            yield _refused(message("record-without-end", stage=row["stage"]), "ended_at")
        if row.get("stage") == "stopped" and not (row.get("remark") or "").strip():
            yield _refused(message("stopped-without-reason"), "remark")
    minutes = row.get("minutes")
    if minutes is not None and (minutes <= 0 or (stop_min and minutes > stop_min)):
        yield _refused(message("minutes-longer", minutes=minutes, stop=stop_min or None), "minutes")


def _span_min(row: Row) -> float:
    """Minutes from start to end, 0 where one is missing."""
    start, end = row.get("started_at"), row.get("ended_at")
    return (end - start) / timedelta(minutes=1) if start and end else 0.0


def _same_card(row: Row, known: Known) -> list[Row]:
    return [one for one in whole_rows(known.work.get(key_of_loom(row), ())) if one.get("card") == row.get("card")]


def _crew(row: Row, known: Known) -> Iterator[Fault]:
    crew = row.get("crew")
    if crew and crew not in known.crews:
        listed = sorted(known.crews, key=natural_key)
        yield _refused(message("crew-not-known", crew=crew, crews=listed), "crew")
    if row.get("operation") or not crew:
        return
    for other in whole_rows(known.work.get(key_of_loom(row), ())):
        if other.get("crew") not in (None, crew) and _overlap(row, other, known.now):
            yield _refused(message("two-crews", loom=key_of_loom(row), crew=crew, other=other["crew"]), "crew")


def _overlap(row: Row, other: Row, now: datetime) -> bool:
    return row["started_at"] < (other.get("ended_at") or now) and other["started_at"] < (row.get("ended_at") or now)


def _setting(row: Row, known: Known) -> Iterator[Fault]:
    of_name = known.of_name(key_of_loom(row), "setpoints", row["setting"])
    if not of_name:
        near = _near(row["setting"], known.names(key_of_loom(row), "setpoints"))
        yield _refused(message("setting-not-known", setting=row["setting"], near=near), "setting")
        return
    yield from _side(row, {fold(one.side or "") for one in of_name}, row["setting"])
    if row.get("why") in ("set", "adjusted") and not _is_begun(row, known):
        yield _waits(row)
    value, point = row.get("value"), of_name[0]
    numeric = any(limit is not None for one in of_name for limit in (one.low, one.high))
    if value is None:
        return
    if numeric and not is_number(value):
        yield _refused(message("value-no-number", setting=row["setting"], value=str(value), unit=point.unit), "value")
    elif is_number(value) and not _physical(value, point.unit):
        yield _refused(message("value-impossible", setting=row["setting"], value=value, unit=point.unit), "value")


def _physical(value: float, unit: str | None) -> bool:
    """An angle lies on the circle; a force, a current or a torque is not below nothing."""
    name = fold(unit or "")
    return 0 <= value <= 360 if name == "deg" else value >= 0 if name in ("cn", "n", "a", "n*m", "n·m", "%") else True


def _waits(row: Row) -> Fault:
    return _refused(message(NOT_IN_WORK, loom=key_of_loom(row), more=None), "loom")


def _is_begun(row: Row, known: Known) -> bool:
    return key_of_loom(row) in known.begun or bool(whole_rows(known.work.get(key_of_loom(row), ())))


def _check(row: Row, known: Known) -> Iterator[Fault]:
    of_name = known.of_name(key_of_loom(row), "checks", row["check"])
    if not of_name:
        near = _near(row["check"], known.names(key_of_loom(row), "checks"))
        yield _refused(message("check-not-known", check=row["check"], near=near), "check")
        return
    yield from _side(row, {fold(one.side or "") for one in of_name}, row["check"])
    result, kind = row.get("result"), of_name[0].kind
    if result is not None and (kind == "number") != is_number(result):
        yield _refused(
            message("result-of-other-kind", check=row["check"], kind="number" if kind == "number" else "yes"), "result"
        )
    if row.get("waived_because") and is_held(of_name[0]):
        yield _refused(message("never-waived", check=row["check"]), "waived_because")


def _side(row: Row, sides: set[str], name: str) -> Iterator[Fault]:
    if fold(row.get("side") or "") not in sides:
        offered = sorted(sides - {""}) or None
        yield _refused(message("side-not-known", name=name, side=row.get("side"), sides=offered), "side")


def _waiver(row: Row, known: Known) -> Iterator[Fault]:
    given = [name for name in ("waived_because", "waived_by", "waived_at") if row.get(name)]
    if given and len(given) < 3:
        yield _refused(message("waiver-incomplete"), given[0])


def _part(row: Row, known: Known) -> Iterator[Fault]:
    part = row["part"]
    if part not in known.parts:
        yield _refused(message("part-unknown", part=part), "part")
        return
    issued, told = known.holds(key_of_loom(row)).get(part, 0.0), _told_of(row)
    if told > issued + 1e-9:
        yield _refused(message("more-than-issued", part=part, told=told, issued=issued, loom=key_of_loom(row)), "used")


def _told_of(row: Row) -> float:
    return sum(row.get(name) or 0.0 for name in ("used", "left_over", "broken"))


def _stops(row: Row, known: Known) -> Iterator[Fault]:
    for other in known.stops.get(key_of_loom(row), ()):
        same_cause, same_period = _same(row, other, "cause"), _same(row, other, "from_at", "to_at")
        if same_cause and not _same(row, other, "from_at") and _periods_overlap(row, other):
            yield _refused(message("period-overlaps", begin=other["from_at"], end=other["to_at"]), "from_at")
        elif same_period and not same_cause and row["picks"] != other["picks"]:
            yield _refused(
                message("picks-differ", picks=row["picks"], other=other["picks"], cause=other["cause"]), "picks"
            )


def _waste(row: Row, known: Known) -> Iterator[Fault]:
    for other in known.waste.get(key_of_loom(row), ()):
        if _same(row, other, "side") and not _same(row, other, "from_at") and _periods_overlap(row, other):
            yield _refused(message("period-overlaps", begin=other["from_at"], end=other["to_at"]), "from_at")


def _same(row: Row, other: Row, *names: str) -> bool:
    return all(row.get(name) == other.get(name) for name in names)


def _periods_overlap(row: Row, other: Row) -> bool:
    return row["from_at"] < other["to_at"] and other["from_at"] < row["to_at"]


def _near(name: str, known: Iterable[str]) -> str | None:
    return next(iter(get_close_matches(name, list(dict.fromkeys(known)), n=1, cutoff=0.6)), None)


Check = Callable[[Row, Known], Iterator[Fault]]
_CHECKS: dict[str, tuple[Check, ...]] = {
    "work_done": (_card, _operation, _times, _crew), "set_values": (_setting, _waiver), "check_results": (_check, _waiver),
    "parts_used": (_card, _part), "stops": (_stops,), "waste": (_waste,),
}  # fmt: skip
