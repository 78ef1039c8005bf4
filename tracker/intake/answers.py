"""Answers to the reader's questions: from the command, the screen, or an earlier load of the same heading.

READING.md, section 7.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.errors import UsageError
from tracker.intake.vocabulary.dates import DAY_FIRST, MONTH_FIRST
from tracker.intake.vocabulary.dictionary import vocabulary
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.numbers import COMMA, POINT
from tracker.intake.vocabulary.units import FACTORS, WORDS, is_unit, unit_named

UNIT, ORDER, FIELD, SHEET, LETTER, DECIMALS, VALUE = "unit", "order", "field", "sheet", "letter", "decimals", "value"
"""Kinds of question. A remembered answer is kept under `kind|heading`."""

IGNORE, READ, AS_WRITTEN = "ignore", "read", "as written"

_WORDS: dict[str, dict[str, str]] = {
    ORDER: {
        DAY_FIRST: "day first,dayfirst,day-first,dmy,d/m/y,d/m,dd/mm,dd/mm/yyyy,dd.mm,dd.mm.yyyy,day/month,day month,day,european",
        MONTH_FIRST: "month first,monthfirst,month-first,mdy,m/d/y,m/d,mm/dd,mm/dd/yyyy,month/day,month day,month,us,american",
    },
    SHEET: {
        IGNORE: "ignore,skip,leave out,omit,drop,no,none,do not load,not",
        READ: "read,load,use,include,yes,keep,take",
    },
    LETTER: {AS_WRITTEN: "as written,keep,as is,letter,letter o,letter i,letter l,leave,as it is,yes,ok"},
    DECIMALS: {
        COMMA: "decimal comma,comma,comma decimals,1.234 is 1234",
        POINT: "decimal point,point,dot,decimal dot,point decimals,1.234 is 1.234",
    },
    VALUE: {"percent": "percent,%,per cent", "fraction": "fraction,share,ratio", "as written": "as written,as is,keep"},
}  # fmt: skip
_SPELLINGS = {
    kind: {fold(s): word for word, spellings in words.items() for s in spellings.split(",")}
    for kind, words in _WORDS.items()
}
OWN_COLUMN = "own column"
_OWN = ("attribute", "own", OWN_COLUMN, "no field", "not a field")
HALL = "hall"
"""Answer about a sheet: its name is the hall of its looms."""


@lru_cache(maxsize=20_000)
def bare(text: str) -> str:
    """A heading as answers name it: folded, without punctuation."""
    return " ".join(re.sub(r"[^\w%]+", " ", fold(text)).split())


@dataclass(slots=True)
class Answers:
    """The answers at hand; what was used is noted in `used` (and in `recalled`, where it came from an earlier load)."""

    given: Mapping[str, str] = field(default_factory=dict)
    remembered: Mapping[str, str] = field(default_factory=dict)
    used: dict[str, str] = field(default_factory=dict)
    """`kind|heading` → answer."""
    recalled: set[str] = field(default_factory=set)
    aliases: dict[str, set[str]] = field(default_factory=dict)
    """Bare heading → other ways to call it: each of its lines, all of them together."""
    _keys: dict[str, list[str]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for key, answer in self.given.items():
            parts = [part.strip() for part in str(answer).split(";") if part.strip()]
            for part in parts:
                if not _understood(part):
                    raise UsageError("answer-unknown", heading=key, answer=part, units=_units())
            self._keys[bare(key)] = parts

    def check_keys(self, known: Iterable[str]) -> None:
        """Raise UsageError for an answer that names neither a heading nor a sheet of the files."""
        names = dict.fromkeys(known)
        spellings = {form for name in names for form in self._names_of(name)}
        for key in self.given:
            if bare(key) not in spellings:
                raise UsageError("answer-about-nothing", heading=key, names=list(names))

    def order(self, heading: str) -> str | None:
        return self._look_up(ORDER, heading)

    def decimals(self, heading: str) -> str | None:
        return self._look_up(DECIMALS, heading)

    def letter(self, heading: str) -> str | None:
        return self._look_up(LETTER, heading)

    def value(self, heading: str) -> str | None:
        return self._look_up(VALUE, heading)

    def sheet(self, name: str) -> str | None:
        """`ignore`, `read`, or the name of the table that the sheet is."""
        return self._find(
            SHEET, name, lambda a: _SPELLINGS[SHEET].get(fold(a)) or (HALL if fold(a) == HALL else _table(a))
        )

    def unit(self, heading: str, dimension: str) -> str | None:
        """A unit of the dimension."""
        return self._find(UNIT, heading, lambda a: unit_named(dimension, a) or _by_word(dimension, a))

    def field(self, heading: str) -> str | None:
        """The field that a column is; `` where it is a column of the mill's own, `ignore` where it is to be left out."""
        return self._find(FIELD, heading, _field)

    def also_called(self, heading: str, lines: Iterable[str]) -> None:
        """The lines of a heading may be used for it, each alone or all together."""
        texts = [bare(line) for line in lines]
        self.aliases.setdefault(bare(heading), set()).update([*texts, " ".join(texts)])

    def _names_of(self, heading: str) -> list[str]:
        whole = bare(heading)
        return [whole, bare(_core(heading)), *sorted(self.aliases.get(whole, ()))]

    def _look_up(self, kind: str, heading: str) -> str | None:
        return self._find(kind, heading, lambda answer: _SPELLINGS[kind].get(fold(answer)))

    def _find(self, kind: str, heading: str, read: Callable[[str], str | None]) -> str | None:
        key = f"{kind}|{bare(heading)}"
        for name in self._names_of(heading):
            for answer in self._keys.get(name, ()):
                found = read(answer)
                if found is not None:
                    self.used[key] = answer
                    return found
        if key in self.remembered:
            found = read(self.remembered[key])
            if found is not None:
                self.used[key] = self.remembered[key]
                self.recalled.add(key)
                return found
        return None


def _core(heading: str) -> str:
    return re.sub(r"[(\[（].*?[)\]）]", " ", heading)


def _understood(answer: str) -> bool:
    return (
        any(fold(answer) in spellings for spellings in _SPELLINGS.values())
        or is_unit(answer) or fold(answer) in map(fold, WORDS.values())
        or _field(answer) is not None or _table(answer) is not None
    )  # fmt: skip


def _by_word(dimension: str, answer: str) -> str | None:
    return next((unit for unit in FACTORS[dimension] if fold(WORDS[unit]) == fold(answer)), None)


def _field(answer: str) -> str | None:
    word = fold(answer)
    if word in _OWN:
        return ""
    if _SPELLINGS[SHEET].get(word) == IGNORE and word not in ("no", "none", "not"):
        return IGNORE
    if is_unit(answer) or any(word in spellings for spellings in _SPELLINGS.values()):
        return None
    for table in TABLES.values():
        for column in table.columns:
            if fold(answer) in (fold(column.field), fold(column.heading), fold(column.field.replace("_", " "))):
                return column.field
    match = match_heading(answer)
    return match.candidates[0].field if match.candidates and match.candidates[0].weight > 0.9 else None


def _table(answer: str) -> str | None:
    return next((t for t, names in vocabulary().sheets.items() if fold(answer) in names | {fold(t), fold(t.replace("_", " "))}), None)  # fmt: skip  # noqa: E501


def _units() -> list[str]:
    return [WORDS[u] for u in ("cm", "inch", "mm", "per_inch", "per_cm", "per_10cm")]
