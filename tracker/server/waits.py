"""How long somebody must wait who gave wrong passwords: for each name from each address, so that a stranger who tries a name
locks out nobody but himself."""

from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import ceil

from tracker.domain.words import fold

FREE, FIRST, LONGEST = 5, timedelta(seconds=15), timedelta(minutes=15)
"""Wrong passwords before there is a wait; the first wait, which doubles with each one more; the longest."""
FORGOTTEN = timedelta(days=1)
MOST = 10_000
"""Names from addresses that are kept in mind; the longest ago goes first."""


@dataclass(slots=True)
class _Wrong:
    many: int
    last: datetime


class Waits:
    """In the memory of the server: whoever can start it anew has no need to guess."""

    def __init__(self) -> None:
        self._wrong: OrderedDict[tuple[str, str], _Wrong] = OrderedDict()

    def left_s(self, name: str, address: str, at: datetime) -> int:
        """Seconds until this name may be tried again from this address; 0 where it may."""
        found = self._wrong.get(_key(name, address))
        if found is None or found.many < FREE or at - found.last > FORGOTTEN:
            return 0
        wait = min(LONGEST, FIRST * 2 ** min(found.many - FREE, 10))
        return max(0, ceil((found.last + wait - at).total_seconds()))

    def was_wrong(self, name: str, address: str, at: datetime) -> None:
        key = _key(name, address)
        found = self._wrong.pop(key, None)
        many = 0 if found is None or at - found.last > FORGOTTEN else found.many
        self._wrong[key] = _Wrong(many + 1, at)
        if len(self._wrong) > MOST:
            self._wrong.popitem(last=False)

    def was_right(self, name: str, address: str) -> None:
        self._wrong.pop(_key(name, address), None)


def _key(name: str, address: str) -> tuple[str, str]:
    return fold(name[:200]), address
