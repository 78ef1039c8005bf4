"""Compare the looms that were read with those of the truth, and tell loud errors from silent ones."""

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any, NamedTuple

from tracker.words.findings import in_words

from .draft import Finished, Truth
from .mills import FIELDS
from .sheets import Tag
from .words import LANGUAGES, words

_CLOSE = 0.0005
"""How far a number may be from the true one, as a share of it."""
_ADDRESS = re.compile(r"(?<![\w.])\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?(?![\w(])")
_INSERTIONS = tuple({words(language)[kind].casefold() for language in LANGUAGES} for kind in ("air", "rapier"))


class Error(NamedTuple):
    """One value that is wrong, or a loom that is missing or too many."""

    key: int | None
    """The loom of the list, None where it is none."""
    text: str


class Box(NamedTuple):
    top: int
    left: int
    bottom: int
    right: int

    def meets(self, other: "Box") -> bool:
        return not (
            self.bottom < other.top or other.bottom < self.top or self.right < other.left or other.right < self.left
        )


def errors_of(truth: Truth, records: Sequence[Mapping[str, Any]]) -> list[Error]:
    """What is wrong in the records that were read."""
    wanted = {(_plain(loom["loom"]), _plain(loom["hall"])): loom for loom in truth.looms}
    optional = {(_plain(loom["loom"]), _plain(loom["hall"])): [] for loom in truth.optional}
    for loom in truth.optional:
        optional[_plain(loom["loom"]), _plain(loom["hall"])].append(loom)
    found: list[Error] = []
    for record in records:
        name = (_plain(record["loom"]), _plain(record["hall"]))
        if name in optional:
            candidates = optional[name]
        elif name in wanted:
            candidates = [wanted.pop(name)]
        elif (other := next((n for n in wanted if n[0] == name[0]), None)) is not None:
            candidates = [wanted.pop(other)]
        else:
            found.append(Error(None, f"{record['loom']} in {record['hall']} is no loom of the list"))
            continue
        found += min((differences(loom, record, truth) for loom in candidates), key=len)
    return found + [Error(loom["key"], f"{loom['loom']} is missing") for loom in wanted.values()]


def differences(loom: Mapping[str, Any], record: Mapping[str, Any], truth: Truth) -> list[Error]:
    """The fields and attributes of a loom that do not read as they should."""
    key, number = loom["key"], loom["loom"]
    found = [
        Error(key, f"{number}: {name} should be {loom[name]!r}, is {record.get(name)!r}")
        for name in FIELDS
        if not same(name, loom[name], record.get(name))
    ]
    kept = {_bare(heading): value for heading, value in record["attributes"].items()}
    for heading, value in loom["attributes"].items():
        names = [_bare(h) for h in (heading, *truth.headings_also.get(heading, ()))]
        got = next((kept.pop(name) for name in names if name in kept), None)
        if not same("", value, got):
            found.append(Error(key, f"{number}: {heading} should be {value!r}, is {got!r}"))
    return found + [
        Error(key, f"{number}: {heading} should not be there, is {value!r}") for heading, value in kept.items() if value
    ]


def same(name: str, want: Any, got: Any) -> bool:
    """Does a value read as it should?"""
    if type(want).__name__ == "Anything":
        return True
    if want is None or got is None:
        return want is None and got is None
    if isinstance(want, date):
        return str(got)[:10] == want.isoformat()
    if name == "insertion":
        both = {_plain(want).casefold(), _plain(got).casefold()}
        return len(both) == 1 or any(both <= kind for kind in _INSERTIONS)
    if isinstance(want, str) and name:
        return _plain(want) == _plain(got)
    if isinstance(want, str):
        return _plain(want) == _plain(str(got))
    return _close(want, got)


def _close(want: float, got: Any) -> bool:
    try:
        value = float(str(got).replace(",", "."))
    except ValueError:
        return False
    return abs(value - want) <= _CLOSE * abs(want)


def _plain(text: Any) -> str:
    return "" if text is None else unicodedata.normalize("NFC", str(text)).strip()


def _bare(heading: str) -> str:
    """A heading without case, punctuation and line breaks."""
    return " ".join(re.sub(r"[^\w%]+", " ", unicodedata.normalize("NFKC", heading).casefold()).split())


def boxes_in(text: str) -> list[Box]:
    """The addresses that a text names."""
    found = []
    for left, top, right, bottom in _ADDRESS.findall(text):
        found.append(Box(int(top), _column(left), int(bottom or top), _column(right or left)))
    return found


def _column(name: str) -> int:
    number = 0
    for letter in name:
        number = number * 26 + ord(letter) - 64
    return number


def names_one_of(finding: Any, tags: Iterable[Tag], made: Finished) -> bool:
    """Does a finding name the cell of one of the tags, in its cell or in its words?"""
    said = in_words(finding)
    named = boxes_in(f"{said.cell} {said.message} {said.hint}")
    for tag in tags:
        for sheet, address in made.places.get(tag, ()):
            if finding.sheet in ("", sheet) and any(box.meets(boxes_in(address)[0]) for box in named):
                return True
    return False


def is_loud(error: Error, findings: Iterable[Any], made: Finished) -> bool:
    """Does a finding name a cell of the loom that the error is about?"""
    if error.key is None:
        return any(
            re.search(rf"(?<!\w){re.escape(error.text.split(' in ')[0])}(?!\w)", f"{f.raw} {f.message}")
            for f in map(in_words, findings)
        )
    tags = [tag for tag in made.places if isinstance(tag, tuple) and tag[0] == error.key]
    return any(names_one_of(finding, tags, made) for finding in findings)
