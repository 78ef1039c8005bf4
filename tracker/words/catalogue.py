"""The catalogue's files: which codes there are, and the texts of one of them. Files are parsed when first needed, and the
library that reads them is imported then: a command or a worker process that says nothing need not wait for it."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fluent.runtime import FluentBundle

HERE = Path(__file__).parent
DECLARED = re.compile(r"^([a-z][a-z0-9-]*) =", re.MULTILINE)


def _languages() -> tuple[str, ...]:
    return tuple(sorted(place.name for place in HERE.iterdir() if len(place.name) == 2 and place.is_dir()))


LANGUAGES = _languages()


@cache
def codes(language: str = "en") -> dict[str, str]:
    """Every code of a language and the kind (file name without its ending) in which it is declared."""
    found: dict[str, str] = {}
    for file in sorted(_files(language), key=lambda place: place.name):
        for code in DECLARED.findall(file.read_text("utf-8")):
            if code in found:
                raise ValueError(f"{code} is declared in {found[code]} and in {file.name}")
            found[code] = file.name.removesuffix(".ftl")
    return found


@cache
def bundle(language: str, kind: str) -> FluentBundle:
    """The parsed texts of one kind."""
    from fluent.runtime import FluentBundle, FluentResource

    from tracker.words.fluent_values import FUNCTIONS

    made = FluentBundle([language], functions=FUNCTIONS, use_isolating=False)
    made.add_resource(FluentResource((HERE / language / f"{kind}.ftl").read_text("utf-8")))
    return made


def _files(language: str) -> list[Path]:
    return list((HERE / language).glob("*.ftl"))
