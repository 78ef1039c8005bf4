"""Which loom is meant: a number, and a hall only where the number stands in several."""

from collections.abc import Iterable

from tracker.domain.formats import listed
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError


def find_loom(mill: Mill, loom: str, hall: str | None = None) -> LoomKey:
    """The loom of that number; DataError where there is none, or several and no hall says which.

    Of a hall a word that no other hall has is enough: `A` for `PAVILHÃO A`.
    """
    meant = None if hall is None else find_hall(mill, hall)
    found = [key for key in mill.looms if key.loom == loom and meant in (None, key.hall)]
    if len(found) == 1:
        return found[0]
    if found:
        raise DataError(f"loom {loom} stands in {_said(key.hall for key in found)}; say which with --hall")
    elsewhere = [key.hall for key in mill.looms if key.loom == loom]
    if elsewhere:
        raise DataError(f"loom {loom} stands in {_said(elsewhere)}, not in {meant}; leave the hall out, or correct it")
    raise DataError(
        f"there is no loom {loom}" + (f" in {meant}" if meant else "") + "; `beamslot scope` lists the looms"
    )


def find_hall(mill: Mill, said: str) -> str:
    """The hall as the mill writes it; DataError with the halls that there are where none or several are meant."""
    halls = sorted({key.hall for key in mill.looms}, key=natural_key)
    meant = [hall for hall in halls if fold(hall) == fold(said)] or _with_words(halls, said)
    if len(meant) == 1:
        return meant[0]
    many = f"{said!r} could be {_said(meant)}" if meant else f"there is no hall {said!r}"
    raise DataError(f"{many}; the halls are {_said(halls)}")


def _with_words(halls: Iterable[str], said: str) -> list[str]:
    words = set(fold(said).split())
    return [hall for hall in halls if words and words <= set(fold(hall).split())]


def _said(halls: Iterable[str]) -> str:
    return listed(hall or "a hall without a name" for hall in halls)
