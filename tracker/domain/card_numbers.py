"""The number of a card: `C3-0042-7` is the plan, the loom's place among the bookings of that plan, and a check character."""

import re
from collections.abc import Iterable

from tracker.domain.mill import LoomKey

_FORM = re.compile(r"C([1-9]\d*)-?(\d{4})-?([\dX])")
MOST_LOOMS = 9999


def check_character(digits: str) -> str:
    """The check character of a string of digits by ISO/IEC 7064 MOD 11-2: `0`–`9` or `X`. It shows every single wrong
    digit and every two neighbours that changed places."""
    total = 0
    for digit in digits:
        total = (total + int(digit)) * 2 % 11
    return "0123456789X"[(12 - total) % 11]


def card_number(plan: int, place: int) -> str:
    """`place` is 1 to 9,999. It begins with a letter, so that no spreadsheet takes it for a date."""
    if plan < 1 or not 1 <= place <= MOST_LOOMS:
        raise ValueError(f"no card number for plan {plan}, place {place}")
    return f"C{plan}-{place:04d}-{check_character(f'{plan}{place:04d}')}"


def read_card_number(text: str) -> tuple[int, int]:
    """Plan and place of a number as typed; case, blanks and hyphens do not matter. ValueError where it is none, or was typed
    wrongly."""
    found = _FORM.fullmatch("".join(text.split()).upper())
    if not found or found[3] != check_character(found[1] + found[2]) or not int(found[2]):
        raise ValueError(f"{text!r} is no card number")
    return int(found[1]), int(found[2])


def card_place(keys: Iterable[LoomKey]) -> dict[int, LoomKey]:
    """Place on the cards of a plan → the booked loom, in natural order from 1."""
    return dict(enumerate(sorted(keys, key=lambda key: key.sort_key), 1))
