"""Whoever looks is spoken to as chosen, else as the browser asks, else in English."""

import pytest

from tracker.words.choosing import SPOKEN, chosen


@pytest.mark.parametrize(("asked", "accepts", "spoken"), [
    ((), "", "en"),
    ((), "de-AT,de;q=0.9,en;q=0.8", "de"),
    ((), "tr,en;q=0.5,de;q=0.7", "de"),  # cards speak Turkish, screens do not
    ((), "de;q=0,fr", "en"),  # q=0: not this one
    ((), "de;q=much, en", "en"),
    (("de",), "en", "de"),
    (("xx", "de"), "en", "de"),
    ((None, None), "de", "de"),
])  # fmt: skip
def test_the_first_that_is_spoken(asked, accepts, spoken):
    assert chosen(*asked, accepts=accepts) == spoken


def test_languages_with_nothing_but_cards_are_not_offered():
    assert SPOKEN == ("de", "en")
