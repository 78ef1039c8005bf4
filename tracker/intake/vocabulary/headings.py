"""Which field a heading means, and how surely; what its words are: `phrases.py`, its forms: `heading_forms.py`.

READING.md, section 3.
"""

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import HeadingEntry, is_cjk, numbered, tokens, vocabulary
from tracker.intake.vocabulary.heading_forms import (
    QUALIFIERS,
    forms,
    one_line,
    qualifies,
    without_brackets,
    without_words,
)
from tracker.intake.vocabulary.phrases import Found, best, look_up, with_unit
from tracker.intake.vocabulary.units import is_unit

ENOUGH = 0.6
"""A heading that matches less surely than this stays a column of the mill's own."""

_SURE = 0.95
"""Certainty of a heading's own words."""
_YARN_COUNT = re.compile(r"\W*Ne\W*")
_MAY_BE_HEADING = re.compile(r"[^\W\d_]|[#%№°]")
_FIGURE = re.compile(r"\d")
_UNIT_WITH_FIGURE = re.compile(r"1\s*/|10\s*cm|(?:min|cm|dk|分)\s*[-^⁻]\s*1|1'", re.IGNORECASE)
_CJK_RUN = re.compile(r"[\u3400-\u9fff]+")
_FOOTNOTE = re.compile(r"(?<=[^\W\d_]|[.)\]])(?<!\b[cmd]m)(?<!\bm)[¹²³⁴⁵⁶⁷⁸⁹⁰*†‡]+(?=\W|$)")
"""The mark of a footnote behind a word; `m²` and `cm²` are units."""
_JOINT = re.compile(r"\s*[/|+&(\[（]\s*|\s+[-–]\s+")
_NAMELESS = re.compile(r"[\W_]*")


@dataclass(frozen=True, slots=True)
class Match:
    """What a heading may mean."""

    text: str
    candidates: tuple[HeadingEntry, ...] = ()
    """Field meanings with their certainty as weight, the surest first."""
    units: tuple[str, ...] = ()
    """Texts of the heading that may name a unit."""
    qualifier: str = ""
    """`maximum`, `target`, `actual`, `mean` or `old` where such a word stands in the heading."""
    serial: bool = False
    """A running number of the list, never a loom number."""


@lru_cache(maxsize=20_000)
def match_heading(text: str) -> Match:
    """All that a heading may mean in any table; no candidates where it says nothing to us."""
    text = one_line(_FOOTNOTE.sub("", text))
    if not text or len(text) > 80 or (_NAMELESS.fullmatch(text) and text not in "#%"):
        return Match(text)
    if _is_serial(text):
        return Match(text, serial=True)
    found: Found = {}
    units: list[str] = []
    for core, unit in forms(text):
        if unit:
            units.append(unit)
        found = best(found, with_unit(look_up(core), unit))
        if found and max(v for v, _ in found.values()) > 0.92:
            break
    units.append(text)
    qualifier = ""
    if not found or max(v for v, _ in found.values()) < 0.93:
        qualified, qualifier = _qualified(text)
        found = best(found, qualified)
    if not found or max(v for v, _ in found.values()) < ENOUGH:
        found = best(found, *(with_unit(_in_two_languages(core), unit) for core, unit in forms(text)))
    found = best(found, _loom_beside_type(text))
    if _YARN_COUNT.fullmatch(text):
        found = {}
    if fold(text) in vocabulary().months or fold(text) in vocabulary().weekdays:  # `mar` is no shortened `marcos`
        found = {key: value for key, value in found.items() if value[0] >= _SURE}
    found = {key: value for key, value in found.items() if not is_other_thing(text, key[1])}
    entries = [HeadingEntry(table, name, round(v, 3), lang) for (table, name), (v, lang) in found.items()]
    return Match(text, tuple(sorted(entries, key=lambda e: -e.weight)), tuple(dict.fromkeys(units)), qualifier)


_MEASURED = frozenset({"reed_width_cm", "speed_ppm", "efficiency", "frames", "year"})


def is_other_thing(text: str, field: str) -> bool:
    """The width of the cloth is not that of the reed, and how many looms there are is the number of none of them."""
    words, has = tokens(text), vocabulary().words
    if field in _MEASURED and words and has["counting"].issuperset(words):  # `Nb`, `Anz.`
        return True
    if field == "loom":
        pairs = {" ".join(words[i : i + 2]) for i in range(len(words))}
        return not has["counting"].isdisjoint({*words, *pairs}) or (
            is_cjk(text) and any(w in text for w in has["counting"])
        )
    return field == "reed_width_cm" and not has["cloth"].isdisjoint(words)


def known_heading(text: str) -> Match | None:
    """The match of a cell that may be a heading, None where a quick look says that it is none."""
    text = _FOOTNOTE.sub("", text)
    if not 0 < len(text) <= 60 or not _MAY_BE_HEADING.search(text):
        return None
    if _FIGURE.search(text) and not _UNIT_WITH_FIGURE.search(text):
        return None
    if not _has_known_word(text):
        return None
    match = match_heading(text)
    return match if match.candidates and match.candidates[0].weight >= ENOUGH else None


def language_of_heading(text: str) -> str | None:
    """The language of a known heading, None for any other text: by it the reader of text files tells code pages apart."""
    match = known_heading(text)
    return match.candidates[0].language if match else None


def _has_known_word(text: str) -> bool:
    """Is a word of the text one of a heading, or shortened by a point? Misspelt headings stand beside others."""
    if is_cjk(text):
        return len(text) <= 24
    words = tokens(text)
    return len(words) <= 7 and ("." in text or any(word in _heading_words() for word in words))


@cache
def _heading_words() -> frozenset[str]:
    vocab = vocabulary()
    common = vocab.fillers | vocab.number_words
    phrases = vocab.phrases
    return frozenset(w for phrase in phrases for w in phrase if w not in common or len(phrase) == 1) | frozenset("#%")


def _in_two_languages(text: str) -> Found:
    """`机台号 Loom no.`, `Tezgah No / Loom no.`: what either part means, where the parts do not contradict each other."""
    text = without_brackets(text)
    parts = re.split(r"\s+[/|]\s+", text)
    parts = [one_line(part) for part in (parts if len(parts) == 2 else re.split(r"\s*[/|]\s*|\s[-–]\s", text))]
    if is_cjk(text):
        parts = [one_line(_CJK_RUN.sub(" ", text)), "".join(_CJK_RUN.findall(text))]
    parts = [part for part in parts if any(c.isalpha() for c in part)]
    if len(parts) != 2:
        return {}
    sure = [{k: v for k, v in look_up(part).items() if v[0] >= 0.9} for part in parts]
    fields = [{key[1] for key in one} for one in sure]
    if fields[0] and fields[1] and not fields[0] & fields[1]:
        return {}
    if not fields[0] & fields[1] and any(is_unit(part) or qualifies(part) for part in parts):
        return {}
    return {key: (v * 0.93, lang) for key, (v, lang) in best(*sure).items()}


def _loom_beside_type(text: str) -> Found:
    """`Loom / type`, `Webmaschine (Typ)`: the looms too, where no other column is them; a cell holds both."""
    parts = [one_line(part) for part in _JOINT.split(text.rstrip(")]）")) if part.strip()]
    if len(parts) != 2:
        return {}
    meant = [look_up(part) for part in parts]
    for loom, kind in (meant, meant[::-1]):
        if any(key[1] == "machine_type" and v >= ENOUGH for key, (v, _) in kind.items()):
            found = {key: (0.95, lang) for key, (v, lang) in loom.items() if key[1] == "loom" and v >= ENOUGH}
            if found:
                return found
    return {}


def _is_serial(text: str) -> bool:
    vocab = vocabulary()
    words = tokens(text)
    serial = vocab.words["serial"]
    return " ".join(words) in serial or " ".join(numbered(vocab, words)) in serial


_AVERAGED = frozenset({"speed_ppm", "efficiency"})
"""Fields whose average, or whose value of a year, is still the field; `Average speed` beside `Speed` is not."""
_IN_A_YEAR = re.compile(r"(?<!\d)(?:19|20)\d\d(?!\d)(?:\s*年度?)?")


def _qualified(text: str) -> tuple[Found, str]:
    """Meanings of a heading with a qualifying word (`Vitesse maxi`, `Drehzahl Soll`), less sure by the kind of word."""
    vocab = vocabulary()
    for name, factor in QUALIFIERS:
        found: Found = {}
        for core, unit in forms(text):
            rest = _IN_A_YEAR.sub(" ", core) if name == "mean" else core
            rest = without_words(rest, vocab.words[name]) or (rest.strip() if rest != core else "")
            inner = with_unit(look_up(rest), unit) if rest else {}
            if inner and max(v for v, _ in inner.values()) >= ENOUGH:
                found = best(found, inner)
        if found:
            return {key: (v * _factor(key[1], name, factor), lang) for key, (v, lang) in found.items()}, name
    return {}, ""


def _factor(field: str, qualifier: str, factor: float) -> float:
    """The greatest reed width of a machine is its reed width where no other is named; there is no average loom."""
    if qualifier == "mean":
        return factor if field in _AVERAGED else 0.0
    return 0.75 if field == "reed_width_cm" and qualifier == "maximum" else factor
