"""Pick lists: what the stockroom brings together, day by day and kit by kit."""

from collections.abc import Iterable
from datetime import date

from tracker.domain.days import Days
from tracker.domain.mill import Mill, Part
from tracker.domain.needs import KitState, PickLine
from tracker.domain.words import natural_key


def pick_lines(states: Iterable[KitState], mill: Mill, first: date, last: date) -> tuple[PickLine, ...]:
    """What is to be picked for the kits whose conversions start on the local days from `first` to `last` (included).

    By day and kit in order of the starts; within a kit shortages first, then by store location. Issued parts are left
    out.
    """
    days = Days(mill)
    return tuple(
        line
        for state in sorted(states, key=lambda state: (state.start, state.key.sort_key))
        if first <= days.local(state.start) <= last
        for line in _kit(state, mill, days)
    )


def _kit(state: KitState, mill: Mill, days: Days) -> list[PickLine]:
    names = state.reserved.keys() | state.short.keys()
    lines = [_line(state, mill.parts.get(name, Part(name, 0)), days) for name in names]
    return sorted(
        lines, key=lambda line: (not line.short, not line.location, natural_key(line.location), natural_key(line.part))
    )


def _line(state: KitState, part: Part, days: Days) -> PickLine:
    return PickLine(
        day=days.local(state.start),
        key=state.key,
        start=state.start,
        location=part.location or "",
        part=part.part,
        description=part.description or "",
        unit=part.unit or "",
        quantity=state.reserved.get(part.part, 0.0),
        short=state.short.get(part.part, 0.0),
    )
