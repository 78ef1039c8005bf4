"""The fixed words of a card stand in every language, and say as much in each."""

import re

import pytest

from tracker.domain.tables import CARD_LANGUAGES
from tracker.errors import Message
from tracker.words import Speaker
from tracker.words.catalogue import LANGUAGES, bundle, codes

CARD = {code for code, kind in codes().items() if kind == "cards"}


def test_the_languages_of_the_reader_are_those_of_the_cards():
    from tracker.intake.vocabulary.dictionary import LANGUAGES as READ

    assert set(CARD_LANGUAGES) == set(READ) == set(LANGUAGES)


@pytest.mark.parametrize("language", CARD_LANGUAGES)
def test_no_word_is_missing(language):
    assert len(CARD) > 100
    assert {code for code, kind in codes(language).items() if kind == "cards"} == CARD


@pytest.mark.parametrize("language", CARD_LANGUAGES)
def test_the_same_parameters_in_every_language(language):
    def parameters(of: str, code: str) -> set[str]:
        made = {name: f"<{name}>" for name in ("page", "pages", "week", "crew", "parts", "quantity", "trade")}
        text, errors = bundle(of, "cards").format_pattern(bundle(of, "cards").get_message(code).value, made)
        assert not errors and text.strip()
        return set(re.findall(r"<(\w+)>", text))

    assert [code for code in sorted(CARD) if parameters(language, code) != parameters("en", code)] == []


@pytest.mark.parametrize("language", sorted(set(CARD_LANGUAGES) - {"en"}))
def test_the_cautions_are_translated(language):
    for code in sorted(
        code for code in CARD if code.startswith(("card-caution", "card-holds", "card-defers", "card-note"))
    ):
        said, english = (Speaker(of).say(Message(code)) for of in (language, "en"))
        assert said != english, code
