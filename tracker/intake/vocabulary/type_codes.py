"""What a machine type looks like where no heading says that it is one: `AJ-190`, never `H1`, `H2`."""

import re
from collections import Counter
from collections.abc import Sequence

from tracker.intake.vocabulary.halls import hall_in
from tracker.intake.vocabulary.headings import match_heading

_COUNT = re.compile(r"\s*(?:[:：,;(（–—-]|\s)\s*\d+\s*[^\W\d][^\d]*$|\s*[(（]\s*\d+\s*[)）]$")
"""How many looms follow: `AJ-190: 12 looms`, `AJ-190 (12 Maschinen)`, `AJ-190 (12)`."""
_CODE = re.compile(r"(?=.*\d)(?=.*[^\W\d_])[^\W_][\w./+-]*")
"""One word of letters and figures."""
_USUAL = re.compile(r"[^\W\d_]{1,4}[-.]?\d{2,4}[\w./+-]*")
"""A few letters and some figures, as most types are called."""


def named_type(text: str) -> str:
    """The code of a machine type that a line names, `` where it may as well be the name of a place."""
    name = _COUNT.sub("", text).strip(" :：") if _COUNT.search(text) else text.strip(" :：")
    word, _, rest = name.rpartition(" ")
    if any(
        entry.field == "machine_type" and entry.weight >= 0.9 for entry in match_heading(word.strip(" :：")).candidates
    ):
        name = rest
    return name if _CODE.fullmatch(name) else ""


def are_places(names: Sequence[str]) -> bool:
    """`Z1`, `Z2`, `Z3`: counted through from one on, as places are, not types."""
    letters = Counter(re.sub(r"\d+$", "", name) for name in names)
    figures = [int(hit[0]) for name in names if (hit := re.search(r"\d+$", name))]
    return len(letters) == 1 and len(names) > 1 and figures == list(range(1, len(names) + 1))


def usual_type(text: str) -> str:
    """The code, where it looks like most types do and like no hall."""
    name = named_type(text)
    return name if _USUAL.fullmatch(name) and not hall_in(text, alone=True) else ""
