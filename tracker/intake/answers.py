"""Answers to the reader's questions: from the command, the screen, or an earlier load of the same heading.

READING.md, section 7.
"""

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache

from tracker.domain.addresses import cell_in
from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.errors import UsageError
from tracker.intake.vocabulary.dates import DAY_FIRST, MONTH_FIRST
from tracker.intake.vocabulary.dictionary import vocabulary
from tracker.intake.vocabulary.heading_forms import forms
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.numbers import COMMA, POINT
from tracker.intake.vocabulary.units import FACTORS, WORDS, is_unit, unit_named

UNIT, ORDER, FIELD, SHEET, DECIMALS, VALUE = "unit", "order", "field", "sheet", "decimals", "value"
NUMBER, ODD, PAGE, SECTION, SPAN = "number", "odd", "code page", "section", "span"
"""Kinds of question. A remembered answer is kept under `kind|heading`."""

MONTH_AND_YEAR, NEXT = "month and year", "next"
"""Answers about `01/27` and `KW 9`: which the text names, and that the next one is meant."""
IGNORE, READ, AS_WRITTEN = "ignore", "read", "as written"
EACH = "each"
"""Answer about a number that stands for several looms: the row holds for each of them."""
ENDED, STAY = "ended", "stay"
"""Answers about rows of the database that a sheet has no longer."""

_WORDS: dict[str, dict[str, str]] = {
    ORDER: {
        DAY_FIRST: "day first,dayfirst,day-first,dmy,d/m/y,d/m,dd/mm,dd/mm/yyyy,dd.mm,dd.mm.yyyy,day/month,day month,day,european",
        MONTH_FIRST: "month first,monthfirst,month-first,mdy,m/d/y,m/d,mm/dd,mm/dd/yyyy,month/day,month day,month,us,american",
    },
    SHEET: {
        IGNORE: "ignore,skip,leave out,omit,drop,no,none,do not load,not",
        READ: "read,load,use,include,yes,keep,take",
    },
    "several": {EACH: "each,each one,each of them,every one"},
    NUMBER: {AS_WRITTEN: "as written,keep,as is,letter,letter o,letter i,letter l,leave,as it is,yes,ok"},
    DECIMALS: {
        COMMA: "decimal comma,comma,comma decimals,1.234 is 1234",
        POINT: "decimal point,point,dot,decimal dot,point decimals,1.234 is 1.234",
    },
    PAGE: {
        "cp1252": "cp1252,cp 1252,windows-1252,windows 1252,ansi,western", "cp1250": "cp1250,cp 1250,windows-1250,windows 1250",
        "cp1254": "cp1254,cp 1254,windows-1254,windows 1254", "cp850": "cp850,cp 850,dos", "cp857": "cp857,cp 857",
        "mac_roman": "mac_roman,mac roman,mac,macintosh", "mac_turkish": "mac_turkish,mac turkish",
        "gb18030": "gb18030,gb 18030,gbk,gb2312", "big5": "big5,big 5", "utf-8": "utf-8,utf 8,utf8,unicode",
    },
    SPAN: {
        MONTH_AND_YEAR: "month and year,month/year,month year,mm/yy,mm/yyyy",
        NEXT: "next,the next,next one,the next one,coming,to come",
    },
    VALUE: {"percent": "percent,%,per cent", "fraction": "fraction,share,ratio", "as written": "as written,as is,keep"},
}  # fmt: skip
_WORDS["rows gone"] = {ENDED: "ended,end,gone,retire,retired", STAY: "stay,stays,still there,remain"}
_SPELLINGS = {
    kind: {fold(s): word for word, spellings in words.items() for s in spellings.split(",")}
    for kind, words in _WORDS.items()
}
OWN_COLUMN = "own column"
_OWN = ("attribute", "own", OWN_COLUMN, "no field", "not a field")
_NAMED_BY_LINES = {"hall": "hall", "machine_type": "machine type", "row": "row", "section": "section", IGNORE: IGNORE}
"""Field → what a line between the rows may name."""
HALL = "hall"
"""Answer about a sheet: its name is the hall of its looms."""
TYPE = "machine type"
"""Answer about a sheet: its name is the machine type of its looms, and so it is of the sheets of its file that are like it."""


@lru_cache(maxsize=20_000)
def bare(text: str) -> str:
    """A heading as answers name it: folded, without punctuation."""
    return " ".join(re.sub(r"[^\w%]+", " ", fold(text)).split())


@dataclass(frozen=True, slots=True)
class Called:
    """By what an answer may call a column."""

    heading: str
    sheet: str = ""
    cells: tuple[str, ...] = ()
    """Addresses of its heading: `H1`, and `H2` where it has two lines."""
    lines: tuple[str, ...] = ()
    """The texts of a heading of several lines."""
    twin: str = ""
    """Which one it is of several columns of a table with the same heading: `2 of 3`."""


@dataclass(slots=True)
class Answers:
    """The answers at hand; what was used is noted in `used` (and in `recalled`, where it came from an earlier load)."""

    given: Mapping[str, str] = field(default_factory=dict)
    remembered: Mapping[str, str] = field(default_factory=dict)
    used: dict[str, str] = field(default_factory=dict)
    """`kind|heading` → answer."""
    recalled: set[str] = field(default_factory=set)
    _keys: dict[str, list[str]] = field(default_factory=dict)
    _cells: dict[str, list[str]] = field(default_factory=dict)
    """`H1` or `sheet!H1`, the sheet's name folded → answers."""
    _taken: set[str] = field(default_factory=set)
    """Answers that settled something."""

    def __post_init__(self) -> None:
        for key, answer in self.given.items():
            parts = [part.strip() for part in str(answer).split(";") if part.strip()]
            for part in parts:
                if not cell_key(key) and not _understood(part):
                    raise UsageError("answer-unknown", heading=key, answer=part, units=_units())
            self._keys[bare(key)] = parts
            if cell := cell_key(key):
                self._cells[cell] = parts

    @property
    def tell_cells_apart(self) -> bool:
        """Does any answer depend on more than the words of a heading?"""
        return bool(self._cells) or any(key.count("|") > 1 for key in self.remembered)

    def check_keys(self, columns: Iterable[Called], names: Iterable[str], cells: Iterable[str]) -> None:
        """Raise UsageError for an answer that names neither a heading nor a sheet nor a filled cell of the files.

        `names`: sheets and files; `cells`: the keys (`cell_key`) of the cells that answers name.
        """
        known = list(columns)
        spellings = {bare(name) for name in names} | {form for column in known for form in _names_of(column)}
        there = set(cells)
        for key in self.given:
            if bare(key) not in spellings and cell_key(key) not in there:
                headings = dict.fromkeys([*(column.heading for column in known), *names])
                raise UsageError("answer-about-nothing", heading=key, names=list(headings))

    def check_taken(self) -> None:
        """Raise UsageError for an answer about a cell that is none of our words and settled nothing."""
        for key, parts in self._cells.items():
            for part in parts:
                if part not in self._taken and not _understood(part):
                    raise UsageError("answer-unknown", heading=key, answer=part, units=_units())

    def order(self, called: Called) -> str | None:
        return self._look_up(ORDER, called)

    def decimals(self, called: Called) -> str | None:
        return self._look_up(DECIMALS, called)

    def value(self, called: Called) -> str | None:
        return self._look_up(VALUE, called)

    def month_and_year(self, called: Called) -> bool:
        """Are `01/27` and the like months of a year?"""
        return (
            self._find(SPAN, called, lambda a: MONTH_AND_YEAR if _says(a, SPAN, MONTH_AND_YEAR) else None) is not None
        )

    def takes_next(self, called: Called) -> bool:
        """Is a day without a year the next one? It is answered anew each time, never remembered: in a year another one is next."""
        said = [answer for answer in self._about(called) if _says(answer, SPAN, NEXT)]
        self._taken.update(said)
        return bool(said)

    def section(self, called: Called) -> str | None:
        """What a line between the rows names: `hall`, `machine type`, `row`, `section`; `ignore` where it names none of them."""
        return self._find(SECTION, called, lambda a: _NAMED_BY_LINES.get(_field(a) or ""))

    def gone_below(self, called: Called) -> str | None:
        """What becomes of the looms below a line that says that they are gone: `ignore` or `read`."""
        return self._find("gone", called, lambda a: _SPELLINGS[SHEET].get(fold(a)))

    def code_page(self, file: str) -> str | None:
        """The code page of a text file, as the standard library calls it."""
        return self._look_up(PAGE, Called(file))

    def sheet(self, name: str) -> str | None:
        """`ignore`, `read`, or the name of the table that the sheet is."""
        return self._find(
            SHEET,
            Called(name),
            lambda a: _SPELLINGS[SHEET].get(fold(a)) or (fold(a) if fold(a) in (HALL, TYPE) else _table(a)),
        )

    def number(self, called: Called, cells: Iterable[str], text: str, offered: Collection[str]) -> str | None:
        """What an odd loom number means: one of the numbers offered, or `as written`; remembered for this text."""
        numbers = {fold(one): one for one in offered}
        return self._of_cells(
            NUMBER, called, cells, text, lambda a: numbers.get(fold(a)) or _SPELLINGS[NUMBER].get(fold(a))
        )

    def as_written(self, called: Called, cells: Iterable[str], subject: str) -> bool:
        """Is an unusual value so, as the answer says? Remembered for this `subject`."""
        read = _SPELLINGS[NUMBER].get
        return self._of_cells(ODD, called, cells, subject, lambda a: read(fold(a))) is not None

    def _of_cells(
        self, kind: str, called: Called, cells: Iterable[str], subject: str, read: Callable[[str], str | None]
    ) -> str | None:
        """What is answered about cells of a column, by their addresses or by the heading."""
        return self._find(kind, replace(called, cells=(*cells, *called.cells)), read, f"{kind}|{subject}")

    def unit(self, called: Called, dimension: str) -> str | None:
        """A unit of the dimension."""
        return self._find(UNIT, called, lambda a: unit_named(dimension, a) or _by_word(dimension, a))

    def field(self, called: Called) -> str | None:
        """The field that a column is; `` where it is a column of the mill's own, `ignore` where it is to be left out."""
        return self._find(FIELD, called, _field)

    def ignored(self, called: Called) -> bool:
        """Is a column to be left out?"""
        return self._find(FIELD, called, lambda a: IGNORE if _field(a) == IGNORE else None) is not None

    def cells_named(self) -> list[str]:
        """The keys of the cells that are named: `H1`, `sheet!H1`."""
        return list(self._cells)

    def _look_up(self, kind: str, called: Called) -> str | None:
        return self._find(kind, called, lambda answer: _SPELLINGS[kind].get(fold(answer)))

    def _find(self, kind: str, called: Called, read: Callable[[str], str | None], key: str = "") -> str | None:
        """`key`: under which the answer is remembered; by default the kind and the heading."""
        plain = key or f"{kind}|{bare(called.heading)}"
        key = f"{plain}|{called.twin}" if called.twin and not key else plain
        for answer in self._about(called):
            found = read(answer)
            if found is not None:
                self.used[key] = answer
                self._taken.add(answer)
                return found
        for earlier in (key,) if kind == FIELD else dict.fromkeys((key, plain)):
            if earlier in self.remembered:
                found = read(self.remembered[earlier])
                if found is not None:
                    self.used[earlier] = self.remembered[earlier]
                    self.recalled.add(earlier)
                    return found
        return None

    def _about(self, called: Called) -> Iterator[str]:
        """What is answered about a column: of its cells first, which tell equal headings apart."""
        if self._cells:
            for cell in called.cells:
                for name in (f"{fold(called.sheet)}!{cell}", cell):
                    yield from self._cells.get(name, ())
        for name in _names_of(called) if self._keys else ():
            yield from self._keys.get(name, ())


def _says(answer: str, kind: str, word: str) -> bool:
    return _SPELLINGS[kind].get(fold(answer)) == word


def of_sheet(answers: Mapping[str, str], sheet: str) -> str | None:
    """Have the rows that a sheet has no longer ended? It is answered anew each time, never remembered."""
    for key, answer in answers.items():
        for part in answer.split(";") if bare(key) == bare(sheet) else ():
            if found := _SPELLINGS["rows gone"].get(fold(part)):
                return found
    return None


def cell_key(name: str) -> str:
    """`h1` → `H1`, `Looms!$H$1` → `looms!H1`; `` for what is no cell."""
    sheet, mark, cell = name.strip().rpartition("!")
    address = cell.replace("$", "").upper().strip()
    quotes = " '"
    return f"{fold(sheet.strip(quotes))}{mark}{address}" if cell_in(address) else ""


@lru_cache(maxsize=20_000)
def _names_of(called: Called) -> tuple[str, ...]:
    """The ways in which answers may call a column: its heading with or without its unit and brackets, and its lines."""
    whole = called.heading
    lines = [bare(line) for line in called.lines]
    names = [bare(whole), bare(_core(whole)), *(bare(core) for core, _ in forms(whole)), *lines, " ".join(lines)]
    return tuple(dict.fromkeys(filter(None, names)))


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
