"""German says all that English says, of the same values: nobody at a screen is answered half in one language."""

from datetime import date

import pytest
from fluent.syntax import FluentParser
from fluent.syntax import ast as fluent

from tracker.errors import Message, message
from tracker.words import Speaker, codes
from tracker.words.catalogue import HERE

SAID = {"value", "hint", "screen"}
"""What a person at a screen reads; the command speaks English."""
KINDS = sorted(set(codes().values()))


def parts(language: str, kind: str) -> dict[str, fluent.Pattern]:
    """`code` and `code.hint` → the pattern."""
    found = {}
    for entry in FluentParser().parse((HERE / language / f"{kind}.ftl").read_text("utf-8")).body:
        assert not isinstance(entry, fluent.Junk), f"{language}/{kind}.ftl: {entry.content}"
        if isinstance(entry, fluent.Message):
            found |= {f"{entry.id.name}.value": entry.value} if entry.value else {}
            found |= {f"{entry.id.name}.{one.id.name}": one.value for one in entry.attributes}
    return {name: pattern for name, pattern in found.items() if name.rpartition(".")[2] in SAID}


def values_of(node: object) -> set[str]:
    """Variables and functions that a pattern writes or chooses by, with the options of the functions."""
    if isinstance(node, fluent.VariableReference):
        return {f"${node.id.name}"}
    found = {f"{node.id.name}()"} if isinstance(node, fluent.FunctionReference) else set()
    inner = vars(node).values() if isinstance(node, fluent.SyntaxNode) else node if isinstance(node, list) else ()
    return found.union(*(values_of(each) for each in inner))


def variants_of(node: object) -> set[str]:
    """The names by which a pattern chooses; plurals are each language's own."""
    found = {node.key.name} if isinstance(node, fluent.Variant) and isinstance(node.key, fluent.Identifier) else set()
    inner = vars(node).values() if isinstance(node, fluent.SyntaxNode) else node if isinstance(node, list) else ()
    return found.union(*(variants_of(each) for each in inner)) - {"one", "other"}


@pytest.mark.parametrize("kind", KINDS)
def test_no_message_lacks_its_german(kind):
    assert sorted(parts("en", kind).keys() ^ parts("de", kind).keys()) == []


@pytest.mark.parametrize("kind", KINDS)
def test_german_writes_the_same_values_and_chooses_by_the_same_names(kind):
    english, german = parts("en", kind), parts("de", kind)
    of = {name: (values_of(english[name]), variants_of(english[name])) for name in english}
    assert [name for name in of if (values_of(german[name]), variants_of(german[name])) != of[name]] == []


def test_a_sentence_chooses_by_the_name_in_the_code_and_not_by_its_german_word():
    assert Speaker("de").say(message("nothing-refused", rows=1, others=True)) == (
        "Nichts: 1 Zeile ist abgelehnt, und von den übrigen sagt die Datenbank schon dasselbe."
    )


def test_numbers_days_and_lists_follow_the_language():
    # German groups with a point and counts days with one; the short names are those of Unicode CLDR.
    german = Speaker("de")
    assert german.say(message("so-many-looms", n=1204)) == "1.204 Webmaschinen"
    assert german.say(Message("just", {"value": range(1, 13)})) == "1, 2, 3, 4, 5, 6, 7, 8, 9, 10 und 2 weitere"
    assert german.say(Message("just", {"value": date(2027, 1, 4)})) == "Mo. 4. Jan. 2027"
