"""Passwords: which are taken, how they are kept, and whether one is right."""

from functools import cache
from unicodedata import normalize

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from tracker.domain.words import fold
from tracker.errors import DataError

HASHER = PasswordHasher()
"""Argon2id with the second profile that RFC 9106, section 4, recommends (three passes, 64 MiB)."""
SHORTEST, LONGEST = 12, 200
"""Characters. NIST SP 800-63B asks for length and against the commonest, and for no kinds of characters."""


def hashed(password: str, name: str) -> str:
    """What is kept of a password. DataError for one that is too short, too long, the name itself or among the commonest."""
    plain = _plain(password)
    if not SHORTEST <= len(plain) <= LONGEST:
        raise DataError("password-length", characters=len(plain), least=SHORTEST, most=LONGEST)
    if fold(plain) == fold(name) or plain.casefold() in _commonest():
        raise DataError("password-common")
    return HASHER.hash(plain)


def is_right(kept: str | None, password: str) -> bool:
    """Whether a password is the one kept. Where there is no account or no password (None) it takes as long to say no."""
    nobodys = _nobodys()
    try:
        return HASHER.verify(kept or nobodys, _plain(password)) and kept is not None
    except (VerificationError, InvalidHashError):
        return False


def _plain(password: str) -> str:
    """In one form, however a keyboard puts its accents together; no longer than any that is kept could be."""
    return normalize("NFKC", password[: 4 * LONGEST])


@cache
def _nobodys() -> str:
    return HASHER.hash("nobody")


@cache
def _commonest() -> frozenset[str]:
    """The 30,000 commonest passwords, as the library knows them; imported only when a password is set."""
    from zxcvbn.frequency_lists import FREQUENCY_LISTS

    return frozenset(FREQUENCY_LISTS["passwords"])
