"""What the reader of text files is told of the words in mills' lists, so that it tells code pages apart."""

import re
from collections.abc import Iterator
from functools import cache

from tracker.intake.vocabulary.dictionary import LANGUAGES, read_data
from tracker.intake.vocabulary.headings import language_of_heading
from tracker.office.opening.code_pages import KnownWords

_WORD = re.compile(r"[^\W\d_]+")


@cache
def _words() -> frozenset[str]:
    """Every word of the dictionary as its language writes it."""
    return frozenset(
        word for language in LANGUAGES for text in _texts(read_data(language)) for word in _WORD.findall(text)
    )


def _texts(data: object) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for name, inner in data.items():
            yield from (name, *_texts(inner))
    elif isinstance(data, list):
        for inner in data:
            yield from _texts(inner)


KNOWN = KnownWords(language_of_heading, _words)
