"""What a screen says comes from the catalogue: no text for a person stands in its code."""

import ast
import re

from sources import nodes_of, sources

NOT_YET: set[str] = set()
"""Files whose texts have not moved yet; shrinks to nothing."""
WORDS = re.compile(r"\b[^\W\d_]{2,}\b")
NO_TEXT = re.compile(r"[{}<>;=]|::|\d+px|^datum\.|^[a-z]+[A-Z]|^%|--|/[a-z]")
"""Styles, scripts, addresses, expressions of the chart library."""
NAMES_OF_THE_LIBRARIES = {"Content-Security-Policy", "Accept-Language", "Source Sans, Source Sans Pro, sans-serif"}


def texts_of(path: str) -> list[tuple[int, str]]:
    """(line, text) of what begins with a capital or holds several words, and is no docstring, mark-up or key of a widget."""
    nodes = nodes_of(path)
    apart = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    apart |= {
        id(word.value) for node in nodes if isinstance(node, ast.keyword) and node.arg == "key" for word in [node]
    }
    found = []
    for node in nodes:
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in apart
            and reads_as_text(node.value)
        ):
            found.append((node.lineno, node.value))
    return sorted(found)


def reads_as_text(text: str) -> bool:
    if text in NAMES_OF_THE_LIBRARIES or NO_TEXT.search(text):
        return False
    words = WORDS.findall(text)
    return (len(words) > 1 and " " in text.strip()) or bool(re.match(r"[^\W\d_a-z][a-z]{2,}", text.strip()))


def test_no_screen_words_anything_itself():
    worded = {path for path in sources() if path.startswith("dashboards/") and texts_of(path)}
    assert sorted(worded - NOT_YET) == [], "say it by a code of the catalogue"
    assert sorted(NOT_YET - worded) == [], "they may be taken off the list"
