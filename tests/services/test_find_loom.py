"""Which loom a number and a hall mean: the hall is needed only where the number is not unique."""

import re

import pytest
from refusals import refused

from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.errors import DataError
from tracker.services.looms import find_loom

MILL = Mill(
    looms={
        LoomKey(hall, loom): Loom(hall, loom, "AJ")
        for hall, loom in (("PAVILHÃO A", "1"), ("PAVILHÃO A", "2"), ("PAVILHÃO B", "1"), ("Anexo B", "3"))
    }
)


@pytest.mark.parametrize(
    ("loom", "hall", "found"),
    [
        ("2", None, "PAVILHÃO A"),
        ("1", "PAVILHÃO A", "PAVILHÃO A"),
        ("1", "pavilhao  a", "PAVILHÃO A"),
        ("1", "A", "PAVILHÃO A"),
        ("1", "a", "PAVILHÃO A"),
        ("1", "pavilhão b", "PAVILHÃO B"),
        ("3", "Anexo", "Anexo B"),
    ],
)
def test_a_hall_is_typed_only_where_it_must_be_and_no_longer_than_it_must(loom, hall, found):
    assert find_loom(MILL, loom, hall) == LoomKey(found, loom)


@pytest.mark.parametrize(
    ("loom", "hall", "says"),
    [
        ("1", None, "loom 1 stands in PAVILHÃO A, PAVILHÃO B; say which with --hall"),
        ("1", "C", "there is no hall 'C'; the halls are Anexo B, PAVILHÃO A, PAVILHÃO B"),
        ("1", "", "there is no hall ''; the halls are Anexo B, PAVILHÃO A, PAVILHÃO B"),
        ("1", "B", "'B' could be Anexo B, PAVILHÃO B; the halls are Anexo B, PAVILHÃO A, PAVILHÃO B"),
        ("2", "PAVILHÃO B", "loom 2 stands in PAVILHÃO A, not in PAVILHÃO B; leave the hall out, or correct it"),
        ("9", None, "there is no loom 9; `beamslot scope` lists the looms"),
        ("9", "A", "there is no loom 9 in PAVILHÃO A; `beamslot scope` lists the looms"),
    ],
)
def test_what_is_not_clear_is_refused_with_the_halls_that_there_are(loom, hall, says):
    with refused(DataError, f"^{re.escape(says)}$"):
        find_loom(MILL, loom, hall)
