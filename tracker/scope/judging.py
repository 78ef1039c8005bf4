"""Which rows of the method hold for a loom, judged once for each combination of test outcomes.

A hall of thousands of looms has few such combinations. Where an attribute is missing, every outcome that some value
could bring about is tried; only where the conversions would differ must it be surveyed.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Any, cast

from tracker.domain.method import Alternative
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices
from tracker.errors import Message, message
from tracker.scope.rules import Outcome, Rule, Rules
from tracker.scope.sheets import MethodSheet, Pieces

MOST_TRIALS = 512
"""Combinations of other missing values that are tried for a missing attribute; beyond them it counts as needed."""

Outcomes = tuple[Outcome, ...]
"""For each attribute of the method, how its tests turn out."""


@dataclass(frozen=True)
class Consequence:
    """What a combination of outcomes leads to."""

    taken: Mapping[WindowKind, tuple[tuple[Choices, Pieces], ...]]
    stuck: Mapping[str, tuple[WindowKind, ...]]
    """Folded choice that must be made and has no alternative left → in which windows."""

    @property
    def obstacle(self) -> Message | None:
        """What stands in the way; None where nothing does."""
        stuck = [_stuck(name, kinds) for name, kinds in self.stuck.items()]
        return message("no-alternative-left", choices=stuck) if stuck else None

    @cached_property
    def said(self) -> tuple:
        """Equal where the conversions are, whatever the reasons, and whatever the choices are called."""
        return tuple(
            tuple(tuple(piece.said for piece in pieces) for _, pieces in taken) for taken in self.taken.values()
        )

    @cached_property
    def rows(self) -> tuple:
        """Equal where the very same rows are taken."""
        return tuple((choices, *map(id, pieces)) for taken in self.taken.values() for choices, pieces in taken)


class Judge:
    def __init__(self, rules: Rules):
        self.rules = rules
        self.sheets = tuple(map(MethodSheet, (rules.operations, rules.kit_lines, rules.setpoints, rules.checks)))
        self.choices = {name: MethodSheet(alternatives) for name, alternatives in rules.choices.items()}
        self._same_kind = _alike(rules)
        said = Counter(rule.content for rule in rules.rows)
        self._alone = [rule for rule in rules.rows if said[rule.content] == 1 and rule.kinds and not rule.choices]
        self._outcomes: list[dict[tuple[type, Any], Outcome]] = [{} for _ in rules.names]
        self._shapes: dict[Outcomes, Consequence] = {}
        self._judged: dict[Outcomes, tuple[Consequence | None, tuple[int, ...]]] = {}

    def outcomes(self, values: Mapping[str, Any]) -> Outcomes:
        """How the tests turn out for a loom's values (folded attribute → value)."""
        return tuple(self._outcome(i, values[name]) for i, name in enumerate(self.rules.names))

    def judge(self, outcomes: Outcomes) -> tuple[Consequence | None, tuple[int, ...]]:
        """The shape of a combination of outcomes, or the attributes (numbers) that must be known first."""
        if outcomes not in self._judged:
            self._judged[outcomes] = self._judge(outcomes)
        return self._judged[outcomes]

    def shape(self, outcomes: Outcomes) -> Consequence:
        """The shape where every outcome is known."""
        if outcomes not in self._shapes:
            self._shapes[outcomes] = self._shape(outcomes)
        return self._shapes[outcomes]

    def _outcome(self, attribute: int, value: Any) -> Outcome:
        known = self._outcomes[attribute]
        key = (type(value), value)
        if key not in known:
            known[key] = self.rules.outcome(attribute, value)
        return known[key]

    def _judge(self, outcomes: Outcomes) -> tuple[Consequence | None, tuple[int, ...]]:
        missing = [a for a, outcome in enumerate(outcomes) if None in outcome]
        if not missing:
            return self.shape(outcomes), ()
        asked = set(self._asked(outcomes))
        possible = self.rules.possible
        trials = {a: possible[a] if a in asked else possible[a][:1] for a in missing}
        sure = set(self._decided_by(outcomes))
        unknown = tuple(a for a in missing if a in sure or (a in asked and self._matters(a, outcomes, trials)))
        if unknown:
            return None, unknown
        return self.shape(_filled(outcomes, {a: of[0] for a, of in trials.items()})), ()

    def _decided_by(self, outcomes: Outcomes) -> Iterator[int]:
        """Attributes that must be known because a row which no other says again depends on them alone."""
        for rule in self._alone:
            open_ = {a for a, t in rule.attributes if outcomes[a][t] is None}
            if len(open_) == 1 and rule.asked_of(outcomes):
                (attribute,) = open_
                tests = [t for a, t in rule.attributes if a == attribute]
                if len({all(one[t] for t in tests) for one in self.rules.possible[attribute]}) == 2:
                    yield attribute

    def _matters(self, attribute: int, outcomes: Outcomes, trials: Mapping[int, tuple[Outcome, ...]]) -> bool:
        """Whether two values of one missing attribute lead to different conversions, with some values of the others."""
        others = [a for a in trials if a != attribute]
        for tried, chosen in enumerate(product(*(trials[a] for a in others))):
            given = dict(zip(others, chosen, strict=True))
            shapes = (self.shape(_filled(outcomes, {**given, attribute: one})) for one in trials[attribute])
            if tried >= MOST_TRIALS or len({shape.said for shape in shapes}) > 1:
                return True
        return False

    def _asked(self, outcomes: Outcomes) -> Iterator[int]:
        """Attributes with an open test in a row that may still hold."""
        for rule in self.rules.everything:
            if rule.asked_of(outcomes):
                yield from (a for a, t in rule.attributes if outcomes[a][t] is None)

    def _shape(self, outcomes: Outcomes) -> Consequence:
        taken: dict[WindowKind, tuple[tuple[Choices, Pieces], ...]] = {}
        stuck: dict[str, tuple[WindowKind, ...]] = {}
        for kind, same in self._same_kind.items():
            if same is not kind:
                taken[kind] = taken[same]
                stuck = {name: (*kinds, kind) if same in kinds else kinds for name, kinds in stuck.items()}
                continue
            asked = tuple(sheet.asked(outcomes, kind) for sheet in self.sheets)
            left = {name: sheet.asked(outcomes, kind) for name, sheet in self.choices.items()}
            relevant = _relevant(asked, left, self.rules)
            stuck |= {name: (*stuck.get(name, ()), kind) for name in relevant if not left[name]}
            combinations = _combinations({name: left[name] for name in relevant})
            taken[kind] = self._different(asked, combinations)
        return Consequence(taken, stuck)

    def _different(
        self, asked: tuple[tuple[Rule, ...], ...], combinations: Iterable[Choices]
    ) -> tuple[tuple[Choices, Pieces], ...]:
        """Of combinations that come to the same rows, the first."""
        found: dict[Pieces, Choices] = {}
        for choices in combinations:
            found.setdefault(self._pieces(asked, choices), choices)
        return tuple((choices, pieces) for pieces, choices in found.items())

    def _pieces(self, asked: tuple[tuple[Rule, ...], ...], choices: Choices) -> Pieces:
        chosen = {fold(choice): alternative for choice, alternative in choices}
        pieces = (sheet.piece(rows, chosen) for sheet, rows in zip(self.sheets, asked, strict=True))
        return cast(Pieces, tuple(pieces))


def _alike(rules: Rules) -> dict[WindowKind, WindowKind]:
    """Each kind of window → the first one that no row tells from it."""
    told = {kind: tuple(kind in rule.kinds for rule in rules.everything) for kind in WindowKind}
    return {kind: next(first for first in WindowKind if told[first] == told[kind]) for kind in WindowKind}


def _stuck(choice: str, kinds: tuple[WindowKind, ...]) -> Message:
    return message("choice-in-windows", choice=choice, windows=kinds if len(kinds) < len(WindowKind) else None)


def _relevant(
    asked: tuple[tuple[Rule, ...], ...], alternatives: Mapping[str, tuple[Rule, ...]], rules: Rules
) -> list[str]:
    """Choices on which a row that this loom may get depends, directly or through another choice."""
    named = {name for rows in asked for rule in rows for name, _ in rule.choices}
    while True:
        more = {other for name in named for rule in alternatives[name] for other, _ in rule.choices} - named
        if not more:
            return [name for name in rules.choices if name in named]
        named |= more


def _combinations(alternatives: Mapping[str, tuple[Rule, ...]]) -> Iterator[Choices]:
    """Combinations of alternatives that go together, each once though an alternative may stand in several rows."""
    seen = set()
    for rules in product(*alternatives.values()):
        rows = [cast(Alternative, rule.row) for rule in rules]
        chosen = {fold(row.choice): row.alternative for row in rows}
        choices = tuple((row.choice, row.alternative) for row in rows)
        if choices not in seen and all(rule.chosen(chosen) for rule in rules):
            seen.add(choices)
            yield choices


def _filled(outcomes: Outcomes, given: Mapping[int, Outcome]) -> Outcomes:
    return tuple(given.get(a, outcome) for a, outcome in enumerate(outcomes))
