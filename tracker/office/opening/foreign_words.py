"""Would one of the languages that lists are written in spell a word like this? A wrong code page makes others of it."""

import re
from itertools import pairwise

ALPHABETS = {
    "de": "äöüßÄÖÜ", "fr": "àâçéèêëîïôùûüœæÀÂÇÉÈÊËÎÏÔÙÛÜŒÆ", "it": "àèéìòùÀÈÉÌÒÙ", "es": "áéíóúñüÁÉÍÓÚÑÜ",
    "pt": "ãõáéíóúâêôçàÃÕÁÉÍÓÚÂÊÔÇÀ", "tr": "çğıöşüâîûÇĞİÖŞÜÂÎÛ",
}  # fmt: skip
"""Letters beyond ASCII of each language that is not written in Chinese characters."""
_SIGNS = {
    "°": (r".*[\dNn]|", r"[CFK]?\W*"), "º": (r".*[\dNn]", r"\W*"), "ª": (r".*\d", r"\W*"), "№": (r"\W*", r"[\W\d]*"),
    "Ø": (r"\W*", r"[\W\d]*"), "½": (r"[\W\d]*", r"\W*"), "¼": (r"[\W\d]*", r"\W*"), "¾": (r"[\W\d]*", r"\W*"),
    "²": (r".*\w", r"\W*"), "³": (r".*\w", r"\W*"), "±": (r"[\W\d]*", r"[\W\d]*"), "×": (r".*\d", r"\d.*"),
    "µ": (r"[\W\d]*", r"m?\W*"), "€": (r"[\W\d]*", r"[\W\d]*"), "£": (r"[\W\d]*", r"[\W\d]+"), "§": (r"\W*", r"[\W\d]*"),
    "·": (r".*[\dA-Z]|", r"[\dA-Z].*|"), "…": (r".*[\W\d]|", r"\W*"), "•": (r"\W*", r"\W*"),
    "™": (r".*\w", r"\W*"), "®": (r".*\w", r"\W*"), "\xa0": (r"|.*\W|.*\d|.*\w\w", r"|\W.*|\d.*|\w\w.*"),
    "«": (r"\W*", r"\w.*"), "»": (r".*\w", r"\W*"), "“": (r"\W*", r"\w.*"), "”": (r".*\w", r"\W*"),
    "‘": (r"\W*", r"\w.*"), "’": (r".*[^\W\d]", r"\W*"), "–": (r"|.*[^a-zß-ÿ]", r".*"), "—": (r"|.*[^a-zß-ÿ]", r".*"),
}  # fmt: skip
"""Sign beyond ASCII → what stands before it in a word, and what behind it."""
_ALONE = frozenset("àèéêóáÀÈÉ")
"""Letters beyond ASCII that are words."""
_CJK = re.compile(r"[\u3000-\u303f\u3400-\u9fff\uff00-\uffef]")
_BESIDE_CJK = re.compile(r"[A-Z0-9\-–_+*%#°]*|\d*(?:cm|mm|m|kg|min|rpm|inch|nm)\d*")
_ELISION = re.compile(r"(?:[cdjlmnst]|qu|(?:d|n|s|a|qu|b)?[eua]l+|un|jusqu|lorsqu|puisqu)’.+", re.IGNORECASE)
_SHORT_FORM = re.compile(r".{4,}’(?:s|t|d|m|ll|re|ve)", re.IGNORECASE)


def has_letters(word: str) -> bool:
    """Does a word hold letters beyond ASCII?"""
    return any(c > "\x7f" and c.isalpha() and c not in _SIGNS for c in word)


def fits(word: str, languages: tuple[str, ...]) -> bool:
    """Would one of the languages write the word? Chinese characters always fit where no other words touch them."""
    if _CJK.search(word):
        return all(_BESIDE_CJK.fullmatch(part) for part in _CJK.sub(" ", word).split())
    letters = {c for c in word if c > "\x7f" and c.isalpha() and c not in _SIGNS}
    if not all(c in _SIGNS for c in word if c > "\x7f" and c not in letters):
        return False
    if not all(_sign_fits(word, i) for i, c in enumerate(word) if c in _SIGNS):
        return False
    if letters and not any(letters <= set(ALPHABETS[language]) for language in languages):
        return False
    return not letters or (_case_fits(word) and _letters_fit(word, letters))


def has_chinese(word: str) -> bool:
    """Two Chinese characters beside one another."""
    return bool(re.search(rf"{_CJK.pattern}{{2}}", word))


def _sign_fits(word: str, at: int) -> bool:
    """Does a sign stand where such a one does, or is it an apostrophe of the kind that a language has?"""
    before, behind = _SIGNS[word[at]]
    if word[at] == "’" and (_ELISION.fullmatch(word) or _SHORT_FORM.fullmatch(word)):
        return True
    return bool(re.fullmatch(before, word[:at]) and re.fullmatch(behind, word[at + 1 :]))


def _case_fits(word: str) -> bool:
    """Capitals do not follow small letters, where one of the two is beyond ASCII."""
    beyond = [(a, b) for a, b in pairwise(word) if a > "\x7f" or b > "\x7f"]
    return not any(a.islower() and b.isupper() and a not in "ßı" for a, b in beyond)


def _letters_fit(word: str, letters: set[str]) -> bool:
    """No letter beyond ASCII stands alone or beside a figure."""
    if len(word) == 1:
        return word in _ALONE
    beside = [(a, b) for a, b in pairwise(word) if a in letters or b in letters]
    return not any(a.isdigit() or b.isdigit() for a, b in beside)
