"""Who gets the parts that are there: reservations for named looms, first by booking date."""

from collections.abc import Iterable, Mapping

from tracker.domain.mill import LoomKey, Mill, Part
from tracker.domain.plan import Plan
from tracker.domain.stock import TOLERANCE, Movement, Reservation
from tracker.kits.state import in_booking_order, issued_to, missing


def reserve(
    plan: Plan, mill: Mill, movements: Iterable[Movement], kept: Iterable[Reservation] = ()
) -> tuple[Reservation, ...]:
    """Share out the usable stock to the booked kits, first by booking date: what publishing a plan reserves.

    Usable is the stock on hand less the safety stock and less what stays reserved (`kept`, of looms that the plan does
    not book: they are in work); issued parts need no reservation; a part that does not reach goes to the earlier
    booking as far as it goes.
    """
    issued, reservations = issued_to(movements), list(kept)
    free = {name: part.on_hand - part.safety_stock for name, part in mill.parts.items()}
    for reservation in reservations:
        free[reservation.part] -= reservation.quantity
    for booking in in_booking_order(plan):
        for part, quantity in missing(booking.parts, {}, issued.get(booking.key, {})).items():
            taken = min(quantity, free.get(part, 0.0))
            if taken > TOLERANCE:
                free[part] -= taken
                reservations.append(Reservation(booking.key, part, taken))
    return tuple(reservations)


def settle(
    part: Part,
    reserved: Mapping[LoomKey, float],
    needed: Mapping[LoomKey, float],
) -> dict[LoomKey, float]:
    """The reservations of one part after its stock has changed.

    `reserved` is what each loom has reserved now, `needed` what each booked kit needs beyond what was issued to it, in
    booking order. Where more is reserved than is on hand, looms without a booking give way first, then the latest
    booked; where usable stock (on hand less safety stock) is free, the earliest booked kits that lack it take it.
    """
    kept = {key: quantity for key, quantity in reserved.items() if quantity > TOLERANCE}
    last_first = [key for key in kept if key not in needed] + [key for key in reversed(list(needed)) if key in kept]
    over = sum(kept.values()) - part.on_hand
    for key in last_first:
        given_up = min(kept[key], max(0.0, over))
        kept[key] -= given_up
        over -= given_up
    free = part.on_hand - part.safety_stock - sum(kept.values())
    for key, quantity in needed.items():
        taken = min(quantity - kept.get(key, 0.0), free)
        if taken > TOLERANCE:
            kept[key] = kept.get(key, 0.0) + taken
            free -= taken
    return {key: quantity for key, quantity in kept.items() if quantity > TOLERANCE}
