"""Every code that is used has its words, every code that has words is used, and English says what each means."""

import ast
import re
from pathlib import Path

import pytest

from tracker.words import LANGUAGES, codes
from tracker.words.catalogue import bundle

ROOT = Path(__file__).parents[2]
CARRIERS = {"message", "Message", "TrackerError", "DataError", "UsageError", "InputRefused", "PlanRefused"}
CODE = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
SPEAKERS_OWN = {"just", "and-more"}


def _sources() -> list[ast.Module]:
    return [
        ast.parse(path.read_text("utf-8"))
        for folder in ("tracker", "dashboards")
        for path in (ROOT / folder).rglob("*.py")
    ]


SOURCES = _sources()


def _texts() -> set[str]:
    return {
        node.value
        for tree in SOURCES
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def _carried() -> set[str]:
    """The codes written as the first argument of what carries one."""
    found = set()
    for tree in SOURCES:
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in CARRIERS
                and node.args
            ):
                first = node.args[0]
                if isinstance(first, ast.Constant) and isinstance(first.value, str) and CODE.fullmatch(first.value):
                    found.add(first.value)
    return found


def test_every_code_in_the_code_has_its_words():
    assert sorted(_carried() - set(codes())) == []


def test_every_code_with_words_is_used():
    written = {code for code in codes() if not code.startswith("word-")}
    assert sorted(written - _texts() - SPEAKERS_OWN) == []


@pytest.mark.parametrize("code", sorted(codes()))
def test_english_says_what_each_code_means(code):
    assert "means" in bundle("en", codes()[code]).get_message(code).attributes


def test_another_language_has_no_code_that_english_lacks():
    for language in LANGUAGES:
        assert sorted(set(codes(language)) - set(codes())) == []


def test_every_file_can_be_read():
    for language in LANGUAGES:
        for kind in set(codes(language).values()):
            assert bundle(language, kind) is not None
