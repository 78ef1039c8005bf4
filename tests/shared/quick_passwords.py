"""Passwords for tests: kept by one pass over little memory, since what is tried is never how hard they are to guess."""

import pytest
from argon2 import PasswordHasher

from tracker.services.people import passwords

PASSWORD, OTHER = "nine warps and a rail", "three beams under one roof"


@pytest.fixture(scope="module")
def quick_passwords():
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(passwords, "HASHER", PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))
        passwords._nobodys.cache_clear()
        yield
    passwords._nobodys.cache_clear()
