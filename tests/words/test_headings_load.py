"""What our sheets are headed with in another language, a load knows: the dictionary of headings has it as surely as ours."""

import pytest

from tracker.domain.columns import word_named
from tracker.domain.own_sheets import OWN_TITLES, REMARKS
from tracker.domain.tables import TABLES, TERM_COLUMNS
from tracker.domain.words import fold
from tracker.errors import message
from tracker.export.term_sheet import REMARKS as BESIDE_TERMS
from tracker.intake.vocabulary.dictionary import numbered, tokens, vocabulary
from tracker.words import Speaker
from tracker.words.choosing import SPOKEN

COLUMNS = [(table, column) for table in TABLES.values() for column in table.columns]
BESIDE_RECEIPTS = ("heading-description", "remark-asked-for", "remark-asked-by", "heading-price", "remark-total-price")


def is_known(table, column, heading):
    meanings = vocabulary().phrases[numbered(vocabulary(), tokens(heading))]
    return any(one.field == column.field and one.table in ("", table.name) and one.weight == 1 for one in meanings)


@pytest.mark.parametrize("language", SPOKEN)
def test_every_heading_sheet_and_word_is_in_the_dictionary(language):
    say, known = Speaker(language).say, vocabulary()
    assert [say(c.named) for table, c in COLUMNS if not is_known(table, c, say(c.named))] == []
    assert [t.name for t in TABLES.values() if fold(say(t.named)) not in known.sheets[t.name]] == []
    words = [(word, fold(say(word_named(word)))) for _, c in COLUMNS for word in c.words]
    assert [word for word, said in words if known.options[word].get(said) != word] == []


def test_every_german_name_of_a_term_is_in_the_dictionary():
    say = Speaker("de").say
    assert {fold(say(c.named)): c.field for c in TERM_COLUMNS}.items() <= vocabulary().terms.items()
    assert [c.field for c in TERM_COLUMNS if vocabulary().terms[fold(say(c.named))] != c.field] == []


@pytest.mark.parametrize(("language", "place"), [("en", 0), ("de", 1)])
def test_what_stands_beside_our_columns_is_passed_over(language, place):
    def say(code):
        return Speaker(language).say(message(code))

    assert tuple(map(say, BESIDE_TERMS)) == REMARKS["terms"][place]
    assert tuple(map(say, BESIDE_RECEIPTS)) == REMARKS["receipts"][place]
    assert {say("book-guide-title"), say("book-cards-title"), say("book-findings-title")} <= set(OWN_TITLES)
