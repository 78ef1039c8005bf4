"""What a refusal says to a person: the words of its code, and the advice of a terminal."""

import re
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from tracker.errors import TrackerError
from tracker.words import ENGLISH


@contextmanager
def refused(kind: type[TrackerError], says: str) -> Iterator[pytest.ExceptionInfo]:
    """The block raises `kind`, and its line at a terminal holds what the pattern `says`."""
    with pytest.raises(kind) as caught:
        yield caught
    line = ENGLISH.line(caught.value)
    assert re.search(says, line), line
