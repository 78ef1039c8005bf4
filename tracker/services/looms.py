"""Which loom is meant: a number, and a hall only where the number stands in several."""

from collections.abc import Iterable
from dataclasses import dataclass

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, Message, message


@dataclass(frozen=True, slots=True)
class LoomName:
    """A loom as a person names it."""

    loom: str
    hall: str | None = None

    def in_mill(self, mill: Mill) -> LoomKey:
        """The loom that is meant; DataError as of `find_loom`."""
        return find_loom(mill, self.loom, self.hall)


def find_loom(mill: Mill, loom: str, hall: str | None = None) -> LoomKey:
    """The loom of that number; DataError where there is none, or several and no hall says which.

    Of a hall a word that no other hall has is enough: `A` for `PAVILHÃO A`.
    """
    meant = None if hall is None else find_hall(mill, hall)
    found = [key for key in mill.looms if key.loom == loom and meant in (None, key.hall)]
    if len(found) == 1:
        return found[0]
    if found:
        raise DataError("loom-in-several-halls", loom=loom, halls=_said(key.hall for key in found))
    elsewhere = [key.hall for key in mill.looms if key.loom == loom]
    if elsewhere:
        raise DataError("loom-in-other-hall", loom=loom, halls=_said(elsewhere), hall=meant)
    raise DataError("no-such-loom", loom=loom, hall=meant or None)


def find_hall(mill: Mill, said: str) -> str:
    """The hall as the mill writes it; DataError with the halls that there are where none or several are meant."""
    halls = sorted({key.hall for key in mill.looms}, key=natural_key)
    meant = [hall for hall in halls if fold(hall) == fold(said)] or _with_words(halls, said)
    if len(meant) == 1:
        return meant[0]
    raise DataError("no-such-hall", hall=said, could_be=_said(meant) if meant else None, halls=_said(halls))


def _with_words(halls: Iterable[str], said: str) -> list[str]:
    words = set(fold(said).split())
    return [hall for hall in halls if words and words <= set(fold(hall).split())]


def _said(halls: Iterable[str]) -> list[str | Message]:
    return [hall or message("hall-without-name") for hall in halls]
