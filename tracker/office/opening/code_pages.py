"""In which code page a text is written: proved by the words that its letters make, or left open (READING.md, section 1)."""

import codecs
import re
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from tracker.office.opening.foreign_words import ALPHABETS, fits, has_chinese, has_letters
from tracker.office.sheet import clean

PAGES = ("cp1252", "cp1254", "gb18030", "cp1250", "cp850", "cp857", "mac_roman", "mac_turkish", "big5")
"""Tried where the text is no Unicode, the commonest first."""
_CHINESE = ("gb18030", "big5")

_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF32_LE, "utf-32"), (codecs.BOM_UTF32_BE, "utf-32"),
          (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))  # fmt: skip
_LINES = 3000
"""Different lines beyond ASCII that are looked at."""
_FIRST = 40
"""Lines that tell the language of the headings."""
_WORD = re.compile(r"[^ \t\r\n;,|\"()\[\]/:.!?]*[^\x00-\x7f][^ \t\r\n;,|\"()\[\]/:.!?]*")
_MOST_ASKED = 3


@dataclass(frozen=True)
class KnownWords:
    """What one knows of the words in such files."""

    language_of: Callable[[str], str | None]
    """The language of a text that is a known heading; None for any other text."""
    words: Callable[[], Iterable[str]] = tuple
    """Words of the languages that lists are written in."""


@dataclass(frozen=True, slots=True)
class Decoded:
    text: str
    """A byte that is no text stands as U+FFFD."""
    readings: tuple[tuple[str, str], ...] = ()
    """(code page, how it reads the first word beyond ASCII) where several may be meant; the text is that of the first."""


def decoded(data: bytes, known: KnownWords, said: str | None = None) -> Decoded | None:
    """The text in Unicode or in the code page that fits it; None where none does. `said`: the page that an answer names."""
    if said:
        return Decoded(data.decode(said, "replace"))
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return Decoded(data.decode(encoding, "replace"))
    zeros = (data[:4096:2].count(0), data[1:4096:2].count(0))
    if max(zeros) > len(data[:4096]) / 5:
        return Decoded(data.decode("utf-16-be" if zeros[0] > zeros[1] else "utf-16-le", "replace"))
    text = data.decode("utf-8", "replace")
    odd = text.count("\ufffd") - data.count(b"\xef\xbf\xbd")
    if not odd or 2 * odd <= sum(c > "\x7f" for c in text) - odd:
        return Decoded(text)
    return _in_a_page(data, known)


def _in_a_page(data: bytes, known: KnownWords) -> Decoded | None:
    lines = data.splitlines()
    sample = b"\n".join(list(dict.fromkeys(line for line in lines if not line.isascii()))[:_LINES])
    ascii_lines = [line.decode() for line in lines[:_FIRST] if line.isascii()]
    pages = [page for page in PAGES if _reads(data, page)]
    read = [one for page in pages if (one := _Reading(page, sample.decode(page), known)).may_be]
    if not read:
        return None
    lines_read = [*ascii_lines, *(line for one in read for line in one.lines)]
    counts = Counter(max((list(_headings(line, known).values()) for line in lines_read), key=len, default=[]))
    languages = {language for language, count in counts.items() if count == max(counts.values())}
    likely = _likely(read, languages, known)
    by_text = {one.text: one for one in reversed(likely)}
    asked = [one for one in likely if by_text[one.text] is one]
    sure = len(asked) == 1 and 10 * asked[0].strange(None) <= len(asked[0].words)
    readings = () if sure else tuple((one.page, one.words[0]) for one in asked[:_MOST_ASKED])
    return Decoded(data.decode(likely[0].page), readings)


def _reads(data: bytes, page: str) -> bool:
    try:
        data.decode(page)
    except UnicodeDecodeError:
        return False
    return True


def _headings(line: str, known: KnownWords) -> dict[str, str]:
    """The known headings of a line → their language."""
    cells = {clean(cell).strip(' "') for cell in re.split(r"[;\t,|]", line)}
    return {cell: language for cell in cells if (language := known.language_of(cell)) is not None}


class _Reading:
    """How the lines beyond ASCII read in a code page."""

    def __init__(self, page: str, text: str, known: KnownWords):
        self.page, self.text = page, text
        self.words = list(dict.fromkeys(_WORD.findall(text)))
        self.lines = text.splitlines()[:_FIRST]
        found = {k: v for line in self.lines for k, v in _headings(line, known).items()}
        self.languages = set(found.values())
        self.headings = sum(not heading.isascii() and (len(heading) > 3 or self.page in _CHINESE) for heading in found)

    def strange(self, languages: set[str] | None) -> int:
        """Words that no one language of these (None: of all) would write."""
        alphabets = tuple(name for name in ALPHABETS if languages is None or name in languages)
        return sum(not fits(word, alphabets) for word in self.words)

    @property
    def may_be(self) -> bool:
        """Pages of Chinese characters read any text as some; theirs are lists with known headings or no other words."""
        return self.page not in _CHINESE or "zh" in self.languages or all(map(has_chinese, self.words))

    @property
    def only_signs(self) -> bool:
        return not any(map(has_letters, self.words))


def _likely(read: list[_Reading], languages: set[str], known: KnownWords) -> list[_Reading]:
    """The pages that the words speak for, the commonest first."""
    english = not languages or "en" in languages
    if english and (signs := [one for one in read if one.only_signs and not one.strange(None)]):
        if not all(word.isascii() for one in signs for text in one.words for word in text.split("\xa0")):
            return signs  # English needs no letters beyond ASCII
        others = [one for one in read if not one.only_signs and not one.strange(None)]
        return signs + _with_known_letters(others, known, 2)  # a blank of the one may be a letter of the other
    for asked in (languages, None):
        counts = [one.strange(asked) for one in read]
        if (min(counts) == 0 and not english) or asked is None:
            left = [one for one, count in zip(read, counts, strict=True) if count == min(counts)]
            most = max(one.headings for one in left)
            left = [one for one in left if one.headings == most]
            return _with_known_letters(left, known, 3 if english else 2) or left
    return read


def _with_known_letters(read: list[_Reading], known: KnownWords, least: int) -> list[_Reading]:
    """The pages in which at least so many pairs of letters are those of known words, where that speaks against all others."""
    pairs = _pairs_of(known)
    own = [{pair for word in one.words for pair in _pairs(word)} for one in read]
    if not all(own):
        return []
    shares = [len(found & pairs) / len(found) for found in own]
    sure = [
        one for one, found, share in zip(read, own, shares, strict=True)
        if share >= 0.75 and len(found & pairs) >= least
    ]  # fmt: skip
    return sure if sure and all(share <= 0.25 or share >= 0.75 for share in shares) else []


@cache
def _pairs_of(known: KnownWords) -> frozenset[str]:
    return frozenset(pair for word in known.words() for pair in _pairs(word))


def _pairs(word: str) -> list[str]:
    """The pairs of letters with one beyond ASCII."""
    return [a + b for a, b in pairwise(word.casefold()) if (a + b).isalpha() and not (a + b).isascii()]
