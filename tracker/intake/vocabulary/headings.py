"""Which field a heading means, and how surely: from the dictionary, abbreviations, near misses and qualifying words.

READING.md, section 3.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from tracker.domain.tables import TABLES, Kind
from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import HeadingEntry, Tokens, is_cjk, numbered, shortened, tokens, vocabulary
from tracker.intake.vocabulary.units import FACTORS, dimension_of, is_unit, unit_named

ENOUGH = 0.6
"""A heading that matches less surely than this stays a column of the mill's own."""

_BRACKETS = re.compile(r"[(\[{（［【](.*?)[)\]}）］】]")
_PIECES = re.compile(r"%|[^\s,;:|%]+")
_DOTTED = re.compile(r"([^\W_]+|[%#])(\.?)")
_YARN_COUNT = re.compile(r"\W*Ne\W*")
_MAY_BE_HEADING = re.compile(r"[^\W\d_]|[#%№°]")
_FIGURE = re.compile(r"\d")
_UNIT_WITH_FIGURE = re.compile(r"1\s*/|10\s*cm|(?:min|cm|dk|分)\s*[-^⁻]\s*1|1'", re.IGNORECASE)
_CJK_RUN = re.compile(r"[\u3400-\u9fff]+")
_CJK_UNIT = re.compile(r"(.*[\u3400-\u9fff])([A-Za-z/]+)")
_FOOTNOTE = re.compile(r"(?<=[^\W\d_]|[.)\]])(?<!\b[cmd]m)(?<!\bm)[¹²³⁴⁵⁶⁷⁸⁹⁰*†‡]+(?=\W|$)")
"""The mark of a footnote behind a word; `m²` and `cm²` are units."""
_JOINT = re.compile(r"\s*[/|+&(\[（]\s*|\s+[-–]\s+")
_NAMELESS = re.compile(r"[\W_]*")

_NEVER_NUMBERED = frozenset(
    {"reed_width_cm", "speed_ppm", "efficiency", "warp_left_m", "set_length_m", "tail_m", "notes", "capacity_unsold"}
)
"""Fields that a number word excludes: a reed number is no reed width."""

Found = dict[tuple[str, str], tuple[float, str]]
"""(table, field) → certainty and language."""


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


def one_line(text: object) -> str:
    """Heading text on one line with single blanks."""
    return " ".join(str(text).split())


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
        found = _best(found, _with_unit(look_up(core), unit))
        if found and max(v for v, _ in found.values()) > 0.92:
            break
    units.append(text)
    qualifier = ""
    if not found or max(v for v, _ in found.values()) < 0.93:
        qualified, qualifier = _qualified(text)
        found = _best(found, qualified)
    if not found or max(v for v, _ in found.values()) < ENOUGH:
        found = _best(found, *(_with_unit(_in_two_languages(core), unit) for core, unit in forms(text)))
    found = _best(found, _loom_beside_type(text))
    if _YARN_COUNT.fullmatch(text):
        found = {}
    found = {key: value for key, value in found.items() if not is_of_cloth(text, key[1])}
    entries = [HeadingEntry(table, name, round(v, 3), lang) for (table, name), (v, lang) in found.items()]
    return Match(text, tuple(sorted(entries, key=lambda e: -e.weight)), tuple(dict.fromkeys(units)), qualifier)


def is_of_cloth(text: str, field: str) -> bool:
    """The width of the cloth is not that of the reed."""
    return field == "reed_width_cm" and bool(vocabulary().words["cloth"].intersection(tokens(text)))


def without_brackets(text: str) -> str:
    """`Reed (cm) width` → `Reed width`."""
    return one_line(_BRACKETS.sub(" ", text))


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
    text = _BRACKETS.sub(" ", text)
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
    return {key: (v * 0.93, lang) for key, (v, lang) in _best(*sure).items()}


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


def forms(text: str) -> Iterator[tuple[str, str]]:
    """(heading without unit, unit): the whole text first, then with brackets and trailing or leading units taken off."""
    inside = [one_line(part) for part in _BRACKETS.findall(text)]
    outside = without_brackets(text)
    named = [part for part in inside if is_unit(part)]
    rest = one_line(" ".join([outside, *(part for part in inside if not is_unit(part))]))
    unit = named[0] if named else ""
    yield rest or text, unit
    if (hit := _CJK_UNIT.fullmatch(rest)) and is_unit(hit[2]):
        yield hit[1], hit[2]
    pieces = _PIECES.findall(rest)
    for size in (3, 2, 1):
        tail = " ".join(pieces[-size:])
        if len(pieces) > size and is_unit(tail):
            yield " ".join(pieces[:-size]), tail
    for i, piece in enumerate(pieces[1:-1], 1):
        if (piece == "%" or "/" in piece) and is_unit(piece):
            yield " ".join(pieces[:i] + pieces[i + 1 :]), piece
    if len(pieces) > 1 and pieces[0] == "%":
        yield " ".join(pieces[1:]), "%"
    if inside and not named and not qualifies(" ".join(inside)):
        yield outside, ""
    stem, slash, tail = rest.rpartition("/")
    if slash and stem.strip() and is_unit(tail):
        yield stem, tail


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
    if exact:
        return exact
    for form, factor in ((short, 0.97), (bare, 0.93)):
        found = _entries(vocab.short.get(form, ()), factor) if form else {}
        if "#" in words:
            found = {key: value for key, value in found.items() if key[1] not in _NEVER_NUMBERED}
        if found:
            return found
    near = _best(_abbreviated(core), _near(short))
    return {key: value for key, value in near.items() if "#" not in words or key[1] not in _NEVER_NUMBERED}


def _with_unit(found: Found, unit: str) -> Found:
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


def _best(*several: Found) -> Found:
    found: Found = {}
    for one in several:
        for key, value in one.items():
            found[key] = max(found.get(key, (0.0, "")), value)
    return found


def _abbreviated(core: str) -> Found:
    """`Blattbr.` → Blattbreite, `Qdr.` → quadros: each word the beginning (dotted: also the bones) of a phrase's word."""
    vocab = vocabulary()
    pieces = [(word, bool(dot)) for word, dot in _DOTTED.findall(fold(core))]
    pieces = [(w, dot) for w, dot in pieces if w not in vocab.number_words and w not in vocab.fillers and w != "#"]
    found: Found = {}
    for form in (pieces, [piece for piece in pieces if piece[0] not in vocab.contexts]):
        if not form or sum(len(word) for word, _ in form) < 2:
            continue
        for phrase in vocab.by_letter.get(form[0][0][0], ()):
            if len(phrase) == len(form):
                factor = min(_shortens(word, dot, full) for (word, dot), full in zip(form, phrase, strict=True))
                if factor:
                    found = _best(found, _entries(vocab.short[phrase], factor))
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
            found = _best(found, _entries(vocab.short[phrases[phrase]], 0.88 - 0.06 * distance))
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
            found = _best(found, _entries(entries, len(phrase[0]) / len(solid)))
    return found


_QUALIFIERS = (("maximum", 0.4), ("old", 0.35), ("target", 0.72), ("actual", 0.95), ("mean", 0.88))
_AVERAGED = frozenset({"speed_ppm", "efficiency"})
"""Fields whose average, or whose value of a year, is still the field; `Average speed` beside `Speed` is not."""
_IN_A_YEAR = re.compile(r"(?<!\d)(?:19|20)\d\d(?!\d)")


def _qualified(text: str) -> tuple[Found, str]:
    """Meanings of a heading with a qualifying word (`Vitesse maxi`, `Drehzahl Soll`), less sure by the kind of word."""
    vocab = vocabulary()
    for name, factor in _QUALIFIERS:
        found: Found = {}
        for core, unit in forms(text):
            rest = _IN_A_YEAR.sub(" ", core) if name == "mean" else core
            rest = _without(rest, vocab.words[name]) or (rest.strip() if rest != core else "")
            inner = _with_unit(look_up(rest), unit) if rest else {}
            if inner and max(v for v, _ in inner.values()) >= ENOUGH:
                found = _best(found, inner)
        if found:
            return {key: (v * _factor(key[1], name, factor), lang) for key, (v, lang) in found.items()}, name
    return {}, ""


def _factor(field: str, qualifier: str, factor: float) -> float:
    """The greatest reed width of a machine is its reed width where no other is named; there is no average loom."""
    if qualifier == "mean":
        return factor if field in _AVERAGED else 0.0
    return 0.75 if field == "reed_width_cm" and qualifier == "maximum" else factor


def qualifies(text: str) -> bool:
    """Does a text in brackets hold a word that makes another thing of the heading?"""
    classes = [vocabulary().words[name] for name, _ in _QUALIFIERS]
    return any(_without(f"x {text}", words) for words in classes)


def _without(core: str, words: frozenset[str]) -> str:
    """The heading without the words of a class; empty where it has none of them."""
    if is_cjk(core):
        solid = "".join(tokens(core))
        for word in words:
            if is_cjk(word) and solid != word and (solid.startswith(word) or solid.endswith(word)):
                return solid.removeprefix(word).removesuffix(word)
        return ""
    left, cut = [], False
    for piece in re.split(r"[\s\-/,]+", core):
        rest = _cut_qualifier(piece, words)
        cut = cut or rest != piece
        left.append(rest)
    return " ".join(filter(None, left)) if cut else ""


def _cut_qualifier(piece: str, words: frozenset[str]) -> str:
    """`` for a qualifying word, the head word of a compound with one (`Solldrehzahl` → `drehzahl`), else the piece."""
    word = " ".join(tokens(piece))
    if word in words:
        return ""
    heads = (word.removeprefix(first) for first in words if len(first) > 2 and word.startswith(first))
    return next((head for head in heads if len(head) > 4 and (head,) in vocabulary().short), piece)
