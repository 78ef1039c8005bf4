"""What a screen says comes from the catalogue: no text for a person stands in its code."""

import ast
import re

from sources import CODE, nodes_of, sources

NO_SCREEN = "dashboards/take_pictures.py"
WORDS = re.compile(r"\b[^\W\d_]{2,}\b")
NO_TEXT = re.compile(r"^YYYY-|^DD\.MM\.|[{}<>;=]|::|\d+px|\bdatum\.|^document\.|^[a-z]+[A-Z]|^%|--|/[a-z]")
"""Styles, scripts, addresses, expressions of the chart library."""
CAPITAL = re.compile(r"[A-ZÄÖÜ][^\W\d_A-Z]{2,}")
MOST_WORDS_OF_A_KEY = 3
NAMES_OF_THE_LIBRARIES = {"Content-Security-Policy", "Accept-Language", "Source Sans, Source Sans Pro, sans-serif"}


KEYS = {"Form", "form", "pair", "button", "get", "pop", "setdefault", "container", "beside"}
"""Functions whose first argument is a key and not shown, unless it is a code said."""


def texts_of(path: str) -> list[tuple[int, str]]:
    """(line, text) of what begins with a capital or holds several words, and is no docstring, mark-up or key of a widget."""
    nodes = nodes_of(path)
    apart = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    keys = [node.value for node in nodes if isinstance(node, ast.keyword) and node.arg == "key"]
    keys += [node.slice for node in nodes if isinstance(node, ast.Subscript)]
    keys += [
        each
        for node in nodes
        if isinstance(node, ast.Call) and _name(node) in KEYS
        for each in node.args[: _many(node)]
    ]
    apart |= {id(inner) for key in keys for inner in ast.walk(key)}
    given = (node for node in nodes if isinstance(node, ast.Constant) and id(node) not in apart)
    return sorted(
        (node.lineno, node.value) for node in given if isinstance(node.value, str) and reads_as_text(node.value)
    )


def _many(call: ast.Call) -> int:
    """Of its arguments that are keys: `beside` names fields only."""
    return len(call.args) if _name(call) == "beside" else 1


def _name(call: ast.Call) -> str:
    return getattr(call.func, "id", getattr(call.func, "attr", ""))


def reads_as_text(text: str) -> bool:
    if text in NAMES_OF_THE_LIBRARIES or NO_TEXT.search(text) or CODE.fullmatch(text):
        return False
    return len(WORDS.findall(text)) >= MOST_WORDS_OF_A_KEY or bool(CAPITAL.match(text.strip()))


def test_no_screen_words_anything_itself():
    screens = (path for path in sources() if path.startswith("dashboards/") and path != NO_SCREEN)
    worded = {path for path in screens if texts_of(path)}
    assert sorted(worded) == [], "say it by a code of the catalogue"
