"""What a person reads is made in one place, by language, zone and edge."""

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest
from fluent.runtime import FluentBundle, FluentResource

from tracker.domain.mill import LoomKey
from tracker.errors import DataError, Message, message
from tracker.words import ENGLISH, Edge, Speaker, speaker
from tracker.words.fluent_values import FUNCTIONS
from tracker.words.values import number

TEXTS = """
lost = { $loom } is lost{ $hall ->
        [none] {""}
       *[other] {" in "}{ $hall }
    }
    .hint = Look again.
    .terminal = Run `beamslot scope`.
count = { $looms ->
        [one] one loom
       *[other] { $looms } looms
    }
cost = it costs { MONEY($amount, $currency) }
when = from { $start } on
which = { $names }
why = { $reason }
stay = { $loom } stays
    .hint = move another
taken = { QUANTITY($quantity, $unit) }
changed = { QUANTITY($quantity, signed: "yes") }
metres = { NUMBER($m, maximumFractionDigits: 1) } m
"""


@pytest.fixture(autouse=True)
def small_catalogue(monkeypatch):
    own = FluentBundle(["en"], functions=FUNCTIONS, use_isolating=False)
    own.add_resource(FluentResource(TEXTS))
    known = {
        "lost": "test",
        "count": "test",
        "cost": "test",
        "when": "test",
        "which": "test",
        "why": "test",
        "metres": "test",
        "stay": "test",
        "taken": "test",
        "changed": "test",
    }
    real_codes, real_bundle = speaker.codes, speaker.bundle
    monkeypatch.setattr(
        speaker, "codes", lambda language="en": {**real_codes("en"), **known} if language == "en" else {}
    )
    monkeypatch.setattr(
        speaker, "bundle", lambda language, kind: own if kind == "test" else real_bundle(language, kind)
    )


def said(code: str, **params: object) -> str:
    return Speaker("en", ZoneInfo("Europe/Berlin")).say(Message(code, params))


def test_a_missing_value_is_chosen_by_the_word_none():
    assert said("lost", loom="A-07", hall=None) == "A-07 is lost"
    assert said("lost", loom="A-07", hall="Hall 1") == "A-07 is lost in Hall 1"


def test_plurals_and_groups():
    assert said("count", looms=1) == "one loom"
    assert said("count", looms=1204) == "1,204 looms"


def test_money_has_no_cents_and_its_currency():
    assert said("cost", amount=12345.4, currency="EUR") == "it costs 12,345 EUR"
    assert said("cost", amount=12345.4, currency=None) == "it costs 12,345"


def test_moments_are_said_in_the_mills_zone_and_days_as_they_are():
    assert said("when", start=datetime(2027, 1, 4, 5, tzinfo=UTC)) == "from Mon 4 Jan 2027 06:00 on"
    assert said("when", start=date(2027, 1, 4)) == "from Mon 4 Jan 2027 on"
    assert said("when", start=time(6, 30)) == "from 06:30 on"


def test_a_long_list_names_ten():
    assert said("which", names=["001", "002"]) == "001, 002"
    assert said("which", names=range(1, 13)) == "1, 2, 3, 4, 5, 6, 7, 8, 9, 10 and 2 more"
    assert said("which", names=[date(2027, 1, 4)]) == "Mon 4 Jan 2027"


def test_a_message_inside_a_message_brings_its_own_words_and_advice():
    assert said("why", reason=message("lost", loom="A-07", hall=None)) == "A-07 is lost Run `beamslot scope`."


def test_advice_is_the_edges_own_or_else_the_hint():
    lost = DataError("lost", loom="A-07", hall=None)
    assert Speaker(edge=Edge.TERMINAL).line(lost) == "A-07 is lost Run `beamslot scope`."
    assert Speaker(edge=Edge.SCREEN).line(lost) == "A-07 is lost Look again."
    assert Speaker().advice(message("count", looms=1)) == ""


def test_a_language_that_lacks_a_code_falls_back_to_english():
    assert Speaker("de").say(message("lost", loom="A-07", hall=None)) == "A-07 is lost"


def test_a_parameter_that_is_missing_is_a_fault_of_the_code_not_a_hole_in_the_sentence():
    with pytest.raises(ValueError, match="lost"):
        said("lost", hall=None)


def test_advice_that_begins_small_goes_on_in_the_same_sentence():
    assert Speaker().line(message("stay", loom="A-07")) == "A-07 stays; move another"


def test_quantities_are_said_to_the_last_figure_and_with_their_unit():
    assert said("taken", quantity=12345.0004, unit="m") == "12,345.0004 m"
    assert said("taken", quantity=2.0, unit=None) == "2"
    assert said("taken", quantity=1e308, unit="pc") == "1e+308 pc"
    assert said("changed", quantity=2.5) == "+2.5"
    assert said("changed", quantity=-2.5) == "-2.5"


def test_a_loom_is_said_with_its_hall():
    assert said("which", names=[LoomKey("Hall 1", "007")]) == "007 (Hall 1)"
    assert said("lost", loom=LoomKey("Hall 1", "007"), hall=None) == "007 (Hall 1) is lost"


def test_decimals_by_the_texts_own_wish():
    assert said("metres", m=1234.56) == "1,234.6 m"


def test_numbers_follow_the_language():
    # German groups with a point and writes decimals with a comma (Unicode CLDR).
    assert number(12345.5, 1) == "12,345.5"
    assert number(12345.5, 1, "de") == "12.345,5"
    assert number(-0.2) == "0"
    assert number(3.0, 2) == "3"


def test_a_value_that_no_line_holds_is_said_without_its_middle():
    said = ENGLISH.say(message("ahead-of-now", at="a" * 600 + "b" * 600))
    assert said == "a" * 498 + " … " + "b" * 498 + " is still to come."
