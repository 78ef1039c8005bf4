"""Which fields the dictionary has for a heading's words: as they are, shortened, abbreviated or misspelt."""

import re
from functools import cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from tracker.domain.tables import TABLES, Kind
from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import Tokens, is_cjk, numbered, shortened, tokens, vocabulary
from tracker.intake.vocabulary.units import FACTORS, dimension_of, unit_named

_DOTTED = re.compile(r"([^\W_]+|[%‰#])(\.?)")
_NEVER_NUMBERED = frozenset(
    {"reed_width_cm", "speed_ppm", "efficiency", "warp_left_m", "set_length_m", "tail_m", "notes", "capacity_unsold"}
)
"""Fields that a number word excludes: a reed number is no reed width."""

Found = dict[tuple[str, str], tuple[float, str]]
"""(table, field) → certainty and language."""


@cache
def look_up(core: str) -> Found:
    """Meanings of a heading without its unit, by the surest way that finds any."""
    vocab = vocabulary()
    words = numbered(vocab, tokens(core))
    if not words:
        return {}
    if is_cjk(core):
        return _look_up_cjk("".join(words))
    short = shortened(vocab, words)
    bare = tuple(word for word in short if word not in vocab.contexts)
    exact = _entries(vocab.phrases.get(words, ()), 1.0)
    letters = tokens(core)
    if not exact and len(letters) > 1 and all(len(word) == 1 for word in letters):  # `N.E.`, `R. P. M.`
        exact = _entries(vocab.phrases.get(("".join(letters),), ()), 0.97)
    if (
        exact and "." in core and all(table for table, _ in exact)
    ):  # `At.` is a column of records, and short for atelier
        return best(exact, _abbreviated(core))
    if exact:
        return exact
    for form, factor in ((short, 0.97), (bare, 0.93)):
        found = _entries(vocab.short.get(form, ()), factor) if form else {}
        if "#" in words:
            found = {key: value for key, value in found.items() if key[1] not in _NEVER_NUMBERED}
        if found:
            return found
    near = best(_abbreviated(core), _near(short))
    return {key: value for key, value in near.items() if "#" not in words or key[1] not in _NEVER_NUMBERED}


def with_unit(found: Found, unit: str) -> Found:
    """Half as sure where the unit in the heading measures something else: `Speed min` is no speed."""
    if not unit:
        return found
    dimensions = _field_dimensions()
    return {
        key: (v if any(unit_named(d, unit) for d in dimensions.get(key[1], ())) else v / 2, lang)
        for key, (v, lang) in found.items()
    }


@cache
def _field_dimensions() -> dict[str, frozenset[str]]:
    """Field → what it measures, over all tables; fields that take any unit (prices, settings) count as all."""
    found: dict[str, set[str]] = {}
    for table in TABLES.values():
        for column in table.columns:
            dimension = dimension_of(column)
            plain = dimension is None and column.kind in (Kind.NUMBER, Kind.ANY)
            found.setdefault(column.field, set()).update(FACTORS if plain else {dimension} if dimension else ())
    return {name: frozenset(dimensions) for name, dimensions in found.items()}


def _entries(entries: object, factor: float) -> Found:
    found: Found = {}
    for entry in entries:  # type: ignore[attr-defined]
        key = (entry.table, entry.field)
        found[key] = max(found.get(key, (0.0, "")), (entry.weight * factor, entry.language))
    return found


def best(*several: Found) -> Found:
    found: Found = {}
    for one in several:
        for key, value in one.items():
            found[key] = max(found.get(key, (0.0, "")), value)
    return found


def _abbreviated(core: str) -> Found:
    """`Blattbr.` → Blattbreite, `Qdr.` → quadros: each word the beginning (dotted: also the bones) of a phrase's word."""
    vocab = vocabulary()
    pieces = [(word, bool(dot)) for word, dot in _DOTTED.findall(fold(core))]
    plain = [(w, dot) for w, dot in pieces if w not in vocab.number_words and w not in vocab.fillers and w != "#"]
    pieces = plain or [(w, dot) for w, dot in pieces if dot and w not in vocab.number_words]  # `At.` is no `at`
    found: Found = {}
    for form in (pieces, [piece for piece in pieces if piece[0] not in vocab.contexts]):
        if not form or sum(len(word) for word, _ in form) < 2:
            continue
        for phrase in vocab.by_letter.get(form[0][0][0], ()):
            if len(phrase) == len(form):
                factor = min(_shortens(word, dot, full) for (word, dot), full in zip(form, phrase, strict=True))
                if factor:
                    found = best(found, _entries(vocab.short[phrase], factor))
    return found


def _shortens(word: str, dotted: bool, full: str) -> float:
    if word == full:
        return 0.97
    if full.startswith(word):
        if dotted:
            return 0.9 if len(word) > 1 else 0.75
        return 0.85 if len(word) > 3 else 0.7 if len(word) == 3 else 0.0
    if dotted and len(word) > 1 and word[0] == full[0] and _is_subsequence(word, full):
        return 0.72
    return 0.0


def _is_subsequence(word: str, full: str) -> bool:
    letters = iter(full)
    return all(letter in letters for letter in word)


@cache
def solid_phrases() -> dict[str, Tokens]:
    return {"".join(phrase): phrase for phrase in vocabulary().short if not is_cjk("".join(phrase))}


def _near(short: Tokens) -> Found:
    """Misspelt or run-together headings: one slip in six letters, two in ten; never where the word means something."""
    vocab = vocabulary()
    solid = "".join(short)
    phrases = solid_phrases()
    if solid in phrases:
        return _entries(vocab.short[phrases[solid]], 0.95)
    if len(solid) < 6:
        return {}
    found: Found = {}
    slips = 1 if len(solid) < 10 else 2
    for phrase, distance, _ in process.extract(solid, phrases.keys(), scorer=OSA.distance, score_cutoff=slips, limit=4):
        if phrase[0] == solid[0] and len(phrase) >= 5 and _slips_fit(short, phrases[phrase]):
            found = best(found, _entries(vocab.short[phrases[phrase]], 0.88 - 0.06 * distance))
    return found


def _slips_fit(short: Tokens, phrase: Tokens) -> bool:
    """`Loss efficiency` is no misspelt `loom efficiency`: a word of four letters with a slip is another word."""
    if len(short) != len(phrase) or len(short) == 1:
        return True
    return all(len(word) > 4 for word, known in zip(short, phrase, strict=True) if word != known)


def _look_up_cjk(solid: str) -> Found:
    vocab = vocabulary()
    for text in (solid, solid.rstrip("数的#"), *(solid.removeprefix(c) for c in vocab.contexts if is_cjk(c))):
        exact = _entries(vocab.phrases.get((text,), ()), 1.0 if text == solid else 0.93)
        if exact:
            return exact
    found: Found = {}
    for phrase, entries in vocab.phrases.items():
        if len(phrase) == 1 and len(phrase[0]) > 1 and is_cjk(phrase[0]) and phrase[0] in solid:
            found = best(found, _entries(entries, len(phrase[0]) / len(solid)))
    return found
