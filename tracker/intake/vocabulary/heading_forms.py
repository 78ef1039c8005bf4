"""The forms of a heading: on one line, without its unit, brackets or qualifying word."""

import re
from collections.abc import Iterator

from tracker.intake.vocabulary.dictionary import is_cjk, tokens, vocabulary
from tracker.intake.vocabulary.units import is_unit

_BRACKETS = re.compile(r"[(\[{（［【](.*?)[)\]}）］】]")
_PIECES = re.compile(r"%|[^\s,;:|%]+")
_CJK_UNIT = re.compile(r"(.*[\u3400-\u9fff])([A-Za-z/]+)")
QUALIFIERS = (("maximum", 0.4), ("old", 0.35), ("target", 0.72), ("actual", 0.95), ("mean", 0.88))
"""Classes of qualifying words, and how sure a heading with one is."""


def one_line(text: object) -> str:
    """Heading text on one line with single blanks."""
    return " ".join(str(text).split())


def without_brackets(text: str) -> str:
    """`Reed (cm) width` → `Reed width`."""
    return one_line(_BRACKETS.sub(" ", text))


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


def qualifies(text: str) -> bool:
    """Does a text in brackets hold a word that makes another thing of the heading?"""
    classes = [vocabulary().words[name] for name, _ in QUALIFIERS]
    return any(without_words(f"x {text}", words) for words in classes)


def without_words(core: str, words: frozenset[str]) -> str:
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
