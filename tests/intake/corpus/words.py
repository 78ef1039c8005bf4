"""What mills write in their lists, by language; the words stand in words.toml."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

LANGUAGES = ("en", "de", "fr", "it", "es", "pt", "tr", "zh")
DECIMAL_MARKS = {"en": ".", "zh": "."}
"""The others write a decimal comma."""


@cache
def words(language: str) -> dict[str, Any]:
    """The words of one language."""
    return tomllib.loads(Path(__file__).with_name("words.toml").read_text(encoding="utf-8"))[language]


def decimal_mark(language: str) -> str:
    return DECIMAL_MARKS.get(language, ",")
