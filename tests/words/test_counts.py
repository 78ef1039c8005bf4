"""The catalogue knows what follows a number: one or many, and the verb behind it."""

import pytest

from tracker.errors import message
from tracker.words import ENGLISH
from tracker.words.formats import count


@pytest.mark.parametrize(("many", "said"), [(0, "0 looms"), (1, "1 loom"), (2, "2 looms"), (1204, "1,204 looms")])
def test_one_and_many(many, said):
    assert count(many, "so-many-looms") == said


def test_the_verb_follows_the_number():
    one, two = (ENGLISH.say(message("refusals-stand", refusals=n)) for n in (1, 2))
    assert one.startswith("1 refusal stands against it.") and two.startswith("2 refusals stand against it.")
    assert ENGLISH.say(message("picks-listed", kits=2, lines=9, short=1)) == "2 kits, 9 lines; 1 kit is short."
