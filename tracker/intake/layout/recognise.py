"""Which table a set of headings is, and which column is which field (READING.md, sections 2 and 3)."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from tracker.domain.own_sheets import remarks_among
from tracker.domain.tables import LOOMS, TABLES, Kind, Table
from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import vocabulary
from tracker.intake.vocabulary.headings import ENOUGH, match_heading
from tracker.intake.vocabulary.like_a_field import is_kind_of, match_loosely
from tracker.intake.vocabulary.own_headings import own_fields
from tracker.intake.vocabulary.type_codes import usual_type

Evidence = Callable[[int, str, Table], float]
"""(column, field, table) → how well the values fit the field, about 0.3 to 1.05."""

TIE = 0.06
"""Two columns that differ less in certainty may both be the field."""
SAID = 2.0
"""Certainty of what an answer says."""
_NEVER_ASKED = frozenset({"notes", "reason", "description", "supplier", "insertion", "row", "place", "caution", "unit"})
_IN_FAMILIES = ("speed_ppm", "efficiency", "reed_width_cm")
"""Fields that a list may give several times, by shift or by style."""
_LOOM_FACTS = (
    "machine_type",
    "insertion",
    "year",
    "reed_width_cm",
    "frames",
    "speed_ppm",
    "efficiency",
    "row",
    "place",
)


@dataclass(frozen=True, slots=True)
class Meaning:
    field: str
    certainty: float
    language: str


@dataclass(slots=True)
class Recognised:
    table: Table
    meanings: dict[int, Meaning] = field(default_factory=dict)
    """Column → field."""
    rivals: dict[str, list[int]] = field(default_factory=dict)
    """Field → columns that may be it as well as the one taken, that one first."""
    score: float = 0.0

    @property
    def language(self) -> str:
        """The language of most headings, English where they do not tell."""
        counts: dict[str, int] = {}
        for meaning in self.meanings.values():
            counts[meaning.language] = counts.get(meaning.language, 0) + 1
        return max(counts, key=lambda language: (counts[language], language != "en"), default="en")

    def column_of(self, name: str) -> int | None:
        return next((column for column, meaning in self.meanings.items() if meaning.field == name), None)


Said = Callable[[int, str], str | None]
"""What answers say of a column and its heading: the field, `` for a column of the mill's own, None where nothing was said."""


def recognise(
    headings: Mapping[int, str],
    sheet: str = "",
    evidence: Evidence | None = None,
    said: Said | None = None,
    only: str = "",
    among: str = "",
) -> Recognised | None:
    """The table that fits the headings best, None where none fits.

    `only` names the table that the sheet is said to be, however badly it fits; `among` the one table to try.
    """
    tables = [TABLES[only or among]] if only or among else list(TABLES.values())
    tried = (_as_table(table, headings, sheet, evidence, said or _nothing_said, bool(only)) for table in tables)
    found = [one for one in tried if one is not None]
    return max(found, key=lambda one: one.score, default=None)


def _nothing_said(column: int, heading: str) -> str | None:
    return None


def _as_table(
    table: Table, headings: Mapping[int, str], sheet: str, evidence: Evidence | None, said: Said, forced: bool
) -> Recognised | None:
    remarks = remarks_among(table.name, headings)
    headings = {column: text for column, text in headings.items() if column not in remarks}
    said = _said_of_our_own(table, headings, said)
    scored = _scored(table, headings, evidence, said)
    one = Recognised(table)
    taken: set[str] = set()
    words: set[str] = set()
    for score, column, name, language in scored:
        again = fold(headings[column]) in words and score < SAID  # the same heading is no other field
        if column not in one.meanings and name not in taken and not again:
            one.meanings[column] = Meaning(name, round(min(1.0, score), 2), language)
            taken.add(name)
            words.add(fold(headings[column]))
    if not taken:
        return None
    if table is LOOMS:
        _name_the_looms(one, scored)
        _add_misspelt(one, headings, said, evidence)
    own_name = fold(sheet) in vocabulary().sheets[table.name]
    if not forced and not _fits(table, one, headings, own_name, sheet):
        return None
    one.rivals = _rivals(one, scored, headings)
    if table is LOOMS:
        one.rivals |= _families(one, headings, said, evidence)
    unknown = len(headings) - len(one.meanings)
    penalty = 0.05 if table.open_columns else 0.5
    one.score = sum(meaning.certainty for meaning in one.meanings.values()) - penalty * unknown + 0.4 * own_name
    return one


def _name_the_looms(one: Recognised, scored: list[tuple[float, int, str, str]]) -> None:
    """No list of looms is without their numbers: a column that is them nearly as surely as something else is them."""
    if one.column_of("loom") is not None:
        return
    for score, column, name, language in scored:
        if name == "loom" and one.meanings[column].certainty - score <= TIE:
            one.meanings[column] = Meaning(name, round(min(1.0, score), 2), language)
            return


def _said_of_our_own(table: Table, headings: Mapping[int, str], said: Said) -> Said:
    """In a loom list that has every heading of our template once, as exports have, all other columns are the mill's own: an
    attribute called `Speed` is none of two speeds."""
    ours = own_fields(table, headings) if table is LOOMS else {}
    if not len(ours) == len(set(ours.values())) == len(LOOMS.columns):
        return said

    def say(column: int, text: str) -> str | None:
        if column not in ours:
            return ""
        answer = said(column, text)
        return ours[column] if answer is None else answer

    return say


def _add_misspelt(one: Recognised, headings: Mapping[int, str], said: Said, evidence: Evidence | None) -> None:
    """In what is clearly a loom list, a short heading one letter off a missing field is that field, if its values fit."""
    fields = {meaning.field for meaning in one.meanings.values()}
    if sum(name in fields for name in _LOOM_FACTS) < 2:
        return
    for name in ("loom", "hall", *_LOOM_FACTS):
        free = [c for c, text in headings.items() if c not in one.meanings and said(c, text) is None]
        likely = [c for c in free if match_loosely(headings[c], name)]
        if (
            name not in fields
            and len(likely) == 1
            and (evidence is None or evidence(likely[0], name, one.table) >= 0.9)
        ):
            one.meanings[likely[0]] = Meaning(name, match_loosely(headings[likely[0]], name), "en")


def _scored(
    table: Table, headings: Mapping[int, str], evidence: Evidence | None, said: Said
) -> list[tuple[float, int, str, str]]:
    """(certainty, column, field, language) of every column that may be a field, the surest first, left before right."""
    fields = {column.field for column in table.columns}
    scored: list[tuple[float, int, str, str]] = []
    for column, text in headings.items():
        answer = said(column, text)
        if answer is not None:
            if answer in fields:
                scored.append((SAID, column, answer, "en"))
            continue
        best: dict[str, tuple[float, str]] = {}
        for entry in match_heading(text).candidates:
            if entry.table in ("", table.name) and entry.field in fields:
                weight = entry.weight + (0.01 if entry.table else 0.0)  # the table's own word before one of many tables
                best[entry.field] = max(best.get(entry.field, (0.0, "")), (weight, entry.language))
        for name, (weight, language) in best.items():
            factor = evidence(column, name, table) if evidence else 1.0
            if weight * factor >= ENOUGH or (weight >= ENOUGH and factor >= 0.7):
                scored.append((weight * factor, column, name, language))
    return sorted(scored, key=lambda item: (-item[0], item[1]))


def _fits(table: Table, one: Recognised, texts: Mapping[int, str], own_name: bool, sheet: str) -> bool:
    """Are there enough headings for this table? A sheet of another kind must not be taken for one of ours."""
    fields = {meaning.field for meaning in one.meanings.values()}
    if table is LOOMS:
        facts = sum(name in fields for name in _LOOM_FACTS)
        typed = "machine_type" in fields or bool(usual_type(sheet)) or _beside_type(one, texts)
        machines = facts >= 3 or (facts == 2 and {"hall", "reed_width_cm"} <= fields)  # no report gives the width
        return "loom" in fields and ((typed and (facts >= 2 or "hall" in fields)) or machines)
    sure = {meaning.field for meaning in one.meanings.values() if meaning.certainty >= (0.6 if own_name else 0.85)}
    if any(column.needed and column.field not in sure for column in table.columns):
        return False
    share = len(fields) / len(texts)
    if table.name == "receipts":  # a supplier's answer stands beside what he was asked for
        return share >= 0.5
    if own_name:
        return table.open_columns != "" or (share >= 0.6 and len(fields) > 1)
    if table.open_columns:
        return len(fields) >= min(3, len(table.columns)) or table.name == "choices"
    if table.name == "readings":
        return share >= 0.6 and "warp_left_m" in fields
    if table.name in ("closures", "tools", "terms", "changes"):
        return share >= 0.99 and len(fields) > 1
    return share >= 0.7 and len(fields) >= 3


def _beside_type(one: Recognised, headings: Mapping[int, str]) -> bool:
    """Is the column of the looms headed as one of machine types, too (`Loom / type`)?"""
    column = one.column_of("loom")
    found = match_heading(headings[column]).candidates if column is not None else ()
    return any(entry.field == "machine_type" for entry in found)


def _rivals(
    one: Recognised, scored: list[tuple[float, int, str, str]], headings: Mapping[int, str]
) -> dict[str, list[int]]:
    """Columns that may be a field as well as the one taken: as sure as it, or taken only for want of a plainer one."""
    sure = {(column, name): score for score, column, name, _ in scored}
    rivals: dict[str, list[int]] = {}
    for score, column, name, _ in scored:
        taken = one.column_of(name)
        if taken is None or column in one.meanings or name in _NEVER_ASKED or (score < SAID <= sure[taken, name]):
            continue
        qualified = bool(match_heading(headings[taken]).qualifier) and sure[taken, name] < SAID
        if sure[taken, name] - score <= TIE or qualified:
            rivals.setdefault(name, [taken]).append(column)
    return {
        name: columns for name, columns in rivals.items()
        if one.table.column(name).kind is not Kind.TEXT or name == "machine_type"
    }  # fmt: skip


def _families(
    one: Recognised, headings: Mapping[int, str], said: Said, evidence: Evidence | None
) -> dict[str, list[int]]:
    """Several columns that say more than a field's name (`Efficiency A`, `Efficiency B`), where no other is the field: the
    first is taken for it until it is asked which one is."""
    found: dict[str, list[int]] = {}
    for name in _IN_FAMILIES:
        if one.column_of(name) is not None:
            continue
        family = [
            column
            for column, text in sorted(headings.items())
            if column not in one.meanings and said(column, text) is None and is_kind_of(text, name)
            and (evidence is None or evidence(column, name, one.table) >= 0.9)
        ]  # fmt: skip
        if len(family) > 1:
            one.meanings[family[0]] = Meaning(name, ENOUGH, "en")
            found[name] = family
    return found
