"""What a finished conversion took, as the floor tells it, checked against the mill and the booking."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from math import inf

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Conversion
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices
from tracker.errors import DataError, UsageError


@dataclass(frozen=True, slots=True)
class Taken:
    """What a finished conversion took, as the floor tells it."""

    crew: str
    started_at: datetime | None = None
    operation_minutes: Mapping[str, float] = field(default_factory=dict)
    total_min: float | None = None
    """Elapsed minutes on the loom, for the whole; None = not taken."""
    kind: WindowKind | None = None
    """None = as booked; likewise a choice that is not named."""
    choices: Mapping[str, str] = field(default_factory=dict)
    worked_out: frozenset[str] = frozenset()
    """As `Conversion.worked_out`."""


def conversion_of(
    mill: Mill, key: LoomKey, taken: Taken, ended_at: datetime, earlier: Conversion | None, booking: Booking | None
) -> Conversion:
    """The conversion to record, as booked last unless said otherwise; `earlier` is one that is recorded already. UsageError and
    DataError for what cannot have been."""
    crews = {crew.crew for crew in mill.crews}
    if taken.crew not in crews:
        raise DataError("no-such-crew", crew=taken.crew, crews=sorted(crews))
    if taken.started_at is None or taken.started_at > ended_at:
        raise UsageError("conversion-without-start")
    if earlier:
        started = earlier.started_at.astimezone(mill.terms.zone)
        raise DataError("conversion-recorded", loom=key, crew=earlier.crew, at=started)
    return Conversion(
        key,
        mill.looms[key].machine_type,
        taken.crew,
        mill.method.version,
        taken.started_at,
        ended_at,
        _operation_minutes(mill, taken.operation_minutes),
        _total(taken, (ended_at - taken.started_at).total_seconds() / 60),
        taken.kind or (booking.kind if booking else None),
        _choices(mill, taken.choices, booking),
        taken.worked_out,
    )


def _operation_minutes(mill: Mill, given: Mapping[str, float]) -> dict[str, float]:
    known = {fold(operation.operation): operation.operation for operation in mill.method.operations}
    found = {}
    for operation, minutes in given.items():
        if fold(operation) not in known:
            raise DataError("no-such-operation", operation=operation)
        if not 0 <= minutes < inf:
            raise UsageError("operation-minutes", operation=operation, minutes=minutes)
        found[known[fold(operation)]] = minutes
    return found


def _total(taken: Taken, elapsed_min: float) -> float | None:
    total = taken.total_min
    if total is not None and not 0 < total <= elapsed_min:
        raise UsageError("total-minutes", total=total, elapsed=elapsed_min)
    return total


def _choices(mill: Mill, given: Mapping[str, str], booking: Booking | None) -> Choices:
    """As booked, with what was taken instead; in the order of the method. None where neither says all."""
    known = {
        (fold(row.choice), fold(row.alternative)): (row.choice, row.alternative) for row in mill.method.alternatives
    }
    taken = dict(booking.choices) if booking else {}
    for choice, alternative in given.items():
        if (fold(choice), fold(alternative)) not in known:
            offered = [f"{name}={one}" for name, one in known.values()]
            raise DataError("no-such-choice", choice=choice, alternative=alternative, offered=offered or None)
        name, one = known[fold(choice), fold(alternative)]
        taken[name] = one
    order = list(dict.fromkeys(row.choice for row in mill.method.alternatives))
    return tuple(sorted(taken.items(), key=lambda item: order.index(item[0]) if item[0] in order else len(order)))
