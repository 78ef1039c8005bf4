"""Headings that are none of the words for a field and yet are about it: `Lom`, `Efficiency A`."""

from functools import cache, lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import is_cjk, numbered, shortened, tokens, vocabulary
from tracker.intake.vocabulary.heading_forms import forms, without_brackets
from tracker.intake.vocabulary.headings import is_other_thing, match_heading
from tracker.intake.vocabulary.phrases import look_up, solid_phrases


@lru_cache(maxsize=20_000)
def is_kind_of(text: str, field: str) -> bool:
    """Does a heading begin or end with the words of a field, and say more (`Efficiency A`, `Früh-Nutzeffekt`)? Not where the
    words make another thing of it (`Max. speed`)."""
    if match_heading(text).qualifier in ("maximum", "old") or is_other_thing(text, field):
        return False
    core = without_brackets(text)
    words, blank = [word for word in tokens(core) if word != "%"], " "
    if is_cjk(core):
        words, blank = list("".join(words)), ""
    pieces = [blank.join(part) for i in range(1, len(words)) for part in (words[:i], words[-i:])]
    return any(key[1] == field and weight >= 0.9 for piece in pieces for key, (weight, _) in look_up(piece).items())


def match_loosely(text: str, field: str) -> float:
    """How surely a short misspelt heading (`Lom`, `Sped (rpm)`) means a field, for lists in which that field is missing."""
    if match_heading(text).candidates or is_other_thing(text, field) or is_cjk(text) or any(c.isdigit() for c in text):
        return 0.0
    phrases = _phrases_of(field)
    if fold(text) in vocabulary().months or fold(text) in vocabulary().weekdays:
        return 0.0
    for core, _ in forms(text):
        word = "".join(shortened(vocabulary(), numbered(vocabulary(), tokens(core))))
        found = process.extractOne(word, phrases, scorer=OSA.distance, score_cutoff=1) if len(word) > 2 else None
        if found and found[0][0] == word[0]:
            return 0.65
    return 0.0


@cache
def _phrases_of(field: str) -> list[str]:
    """The phrases of a field of the loom list, in one word each."""
    short = vocabulary().short
    return [
        solid for solid, phrase in solid_phrases().items()
        if len(solid) > 2 and any(e.field == field and e.table in ("", "looms") and e.weight > 0.7 for e in short[phrase])
    ]  # fmt: skip
