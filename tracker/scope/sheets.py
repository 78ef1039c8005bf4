"""Which rows of one sheet of the method a loom gets, worked out once for all looms that turn out alike on it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tracker.domain.windows import WindowKind
from tracker.scope.rules import Outcome, Rule


@dataclass(frozen=True, slots=True, eq=False)
class Piece:
    """Rows of one sheet; the same rows are the same object."""

    rows: tuple[Any, ...]
    said: int
    """Equal where the rows say the same, whatever their conditions."""


Pieces = tuple[Piece, Piece, Piece, Piece]
"""Operations, kit lines, setpoints, checks."""


class MethodSheet:
    def __init__(self, rules: tuple[Rule, ...]):
        self.rules = rules
        self.attributes = sorted({attribute for rule in rules for attribute, _ in rule.attributes})
        self.choices = tuple(dict.fromkeys(name for rule in rules for name, _ in rule.choices))
        self._kinds = {kind: tuple(kind in rule.kinds for rule in rules) for kind in WindowKind}
        self._asked: dict[tuple, tuple[Rule, ...]] = {}
        self._pieces: dict[tuple, Piece] = {}
        self._same: dict[tuple[int, ...], Piece] = {}
        self._said: dict[tuple[int, ...], int] = {}

    def asked(self, outcomes: tuple[Outcome, ...], kind: WindowKind) -> tuple[Rule, ...]:
        """Rows that the loom gets in this kind of window, with some choices or whatever is chosen."""
        key = (tuple(outcomes[a] for a in self.attributes), self._kinds[kind])
        if key not in self._asked:
            self._asked[key] = tuple(rule for rule in self.rules if kind in rule.kinds and rule.asked_of(outcomes))
        return self._asked[key]

    def piece(self, asked: tuple[Rule, ...], chosen: Mapping[str, str]) -> Piece:
        """Of the rows asked, those that hold with the choices taken (folded choice → alternative)."""
        key = (id(asked), *(chosen.get(name) for name in self.choices))
        if key not in self._pieces:
            self._pieces[key] = self._intern(tuple(rule for rule in asked if not rule.choices or rule.chosen(chosen)))
        return self._pieces[key]

    def _intern(self, rules: tuple[Rule, ...]) -> Piece:
        ids = tuple(map(id, rules))
        if ids not in self._same:
            content = tuple(rule.content for rule in rules)
            said = self._said.setdefault(content, len(self._said))
            self._same[ids] = Piece(tuple(rule.row for rule in rules), said)
        return self._same[ids]
