"""Scope of every loom: which rows of the method it gets in each kind of window and with each combination of choices.

The rows are judged once for each combination of test outcomes, not once for each loom: a hall of thousands has few of
them. Where an attribute is missing, every outcome that it could have is tried; only where the scope would differ is the
loom to survey.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import product
from math import prod
from typing import Any, cast

from tracker.domain.method import Alternative, Check, KitLine, Operation, Setpoint
from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices, WorkContent
from tracker.errors import DataError
from tracker.scope.loads import work_content
from tracker.scope.rules import Outcome, Rule, Rules, compile_method, require

MOST_TRIALS = 512
"""Combinations of missing values that are tried; beyond it every missing attribute that a row asks for counts."""

Taken = tuple[tuple[Rule, ...], ...]
"""Rules of operations, kit lines, setpoints and checks."""


@dataclass(frozen=True)
class Shape:
    """What a combination of test outcomes leads to; `key` is equal where the conversions are."""

    taken: Mapping[WindowKind, tuple[tuple[Choices, Taken], ...]]
    key: tuple
    obstacle: str


def scope_looms(mill: Mill, learning: Mapping[str, float] | None = None) -> dict[LoomKey, LoomScope]:
    """Scope of every loom by the method in force.

    `learning`: machine type → current learning factor (0 to 1; 1 where missing). Raises `DataError` where the mill has
    no method, or a condition cannot be read.
    """
    scoping = Scoping(compile_method(mill.method), mill.terms, learning or {})
    require(scoping.rules)
    return {key: scoping.scope(loom) for key, loom in mill.looms.items()}


def scope_loom(mill: Mill, key: LoomKey, learning: Mapping[str, float] | None = None) -> LoomScope:
    """Scope of one loom. Raises `DataError` where the loom is not in the list."""
    if key not in mill.looms:
        raise DataError(f"There is no loom {key} in the list.")
    scoping = Scoping(compile_method(mill.method), mill.terms, learning or {})
    require(scoping.rules)
    return scoping.scope(mill.looms[key])


class Scoping:
    """One pass over the looms, with everything that was already worked out."""

    def __init__(self, rules: Rules, terms: Terms, learning: Mapping[str, float]):
        self.rules = rules
        self.allowance = terms.allowance
        self.learning = learning
        self._outcomes: list[dict[tuple[type, Any], Outcome]] = [{} for _ in rules.names]
        self._shapes: dict[tuple[Outcome, ...], Shape] = {}
        self._judged: dict[tuple[Outcome, ...], tuple[Shape | None, tuple[int, ...]]] = {}
        self._variants: dict[tuple, int] = {}
        self._contents: dict[tuple[int, float], Mapping[WindowKind, tuple[WorkContent, ...]]] = {}

    def scope(self, loom: Loom) -> LoomScope:
        values = self.rules.values(loom)
        shape, unknown = self.judge(tuple(self._outcome(i, values[name]) for i, name in enumerate(self.rules.names)))
        if shape is None:
            return self._to_survey(loom, values, unknown)
        variant = self._variants.setdefault(shape.key, len(self._variants) + 1)
        contents = self._built(shape, variant, self.learning.get(loom.machine_type, 1.0))
        return LoomScope(loom.key, loom.machine_type, contents, (), shape.obstacle, values, variant)

    def judge(self, outcomes: tuple[Outcome, ...]) -> tuple[Shape | None, tuple[int, ...]]:
        """The shape of a combination of outcomes, or the attributes (numbers) that must be known first."""
        if outcomes not in self._judged:
            self._judged[outcomes] = self._judge(outcomes)
        return self._judged[outcomes]

    def shape(self, outcomes: tuple[Outcome, ...]) -> Shape:
        """The shape where every outcome is known."""
        if outcomes not in self._shapes:
            self._shapes[outcomes] = _shape(self.rules, outcomes)
        return self._shapes[outcomes]

    def _outcome(self, attribute: int, value: Any) -> Outcome:
        known = self._outcomes[attribute]
        key = (type(value), value)
        if key not in known:
            known[key] = self.rules.outcome(attribute, value)
        return known[key]

    def _judge(self, outcomes: tuple[Outcome, ...]) -> tuple[Shape | None, tuple[int, ...]]:
        missing = [a for a, outcome in enumerate(outcomes) if None in outcome]
        if not missing:
            return self.shape(outcomes), ()
        asked = set(_asked(self.rules, outcomes))
        open_ = [a for a in missing if a in asked]
        trials = [self.rules.possible[a] if a in open_ else self.rules.possible[a][:1] for a in missing]
        if prod(map(len, trials)) > MOST_TRIALS:
            return None, tuple(open_)
        shapes = {chosen: self.shape(_filled(outcomes, missing, chosen)) for chosen in product(*trials)}
        unknown = tuple(a for i, a in enumerate(missing) if _differs(shapes, i))
        return (None, unknown) if unknown else (next(iter(shapes.values())), ())

    def _built(self, shape: Shape, variant: int, learning: float) -> Mapping[WindowKind, tuple[WorkContent, ...]]:
        key = (variant, learning)
        if key not in self._contents:
            factor = (1 + self.allowance) * learning
            self._contents[key] = {
                kind: tuple(_content(kind, choices, taken, factor) for choices, taken in combinations)
                for kind, combinations in shape.taken.items()
            }
        return self._contents[key]

    def _to_survey(self, loom: Loom, values: Mapping[str, Any], unknown: tuple[int, ...]) -> LoomScope:
        names = tuple(self.rules.headings[a] for a in unknown)
        words = [_unknown_words(self.rules, values, a) for a in unknown]
        return LoomScope(loom.key, loom.machine_type, {}, names, "to survey: " + ", ".join(words), values)


def _shape(rules: Rules, outcomes: tuple[Outcome, ...]) -> Shape:
    tables = tuple(
        tuple(rule for rule in rows if rule.asked_of(outcomes))
        for rows in (rules.operations, rules.kit_lines, rules.setpoints, rules.checks)
    )
    alternatives = {name: [r for r in rows if r.asked_of(outcomes)] for name, rows in rules.choices.items()}
    taken: dict[WindowKind, tuple[tuple[Choices, Taken], ...]] = {}
    obstacles = []
    for kind in WindowKind:
        asked = tuple(tuple(rule for rule in rows if kind in rule.kinds) for rows in tables)
        left = {name: [r for r in rows if kind in r.kinds] for name, rows in alternatives.items()}
        relevant = _relevant(asked, left)
        empty = [name for name in relevant if not left[name]]
        obstacles += [f"no alternative of {name} is left (window = {kind})" for name in empty]
        combinations = _combinations({name: left[name] for name in relevant})
        taken[kind] = tuple((choices, _taken(asked, choices)) for choices in combinations)
    return Shape(taken, _key(taken), "; ".join(obstacles))


def _relevant(asked: Taken, alternatives: Mapping[str, list[Rule]]) -> list[str]:
    """Choices on which a row that this loom may get depends, directly or through another choice."""
    named = {name for rows in asked for rule in rows for name, _ in rule.choices}
    while True:
        more = {other for name in named for rule in alternatives[name] for other, _ in rule.choices} - named
        if not more:
            return [name for name in alternatives if name in named]
        named |= more


def _combinations(alternatives: Mapping[str, list[Rule]]) -> Iterator[Choices]:
    for rules in product(*alternatives.values()):
        rows = [cast(Alternative, rule.row) for rule in rules]
        choices = tuple((row.choice, row.alternative) for row in rows)
        if all(_chosen(rule, choices) for rule in rules):
            yield choices


def _taken(asked: Taken, choices: Choices) -> Taken:
    return tuple(tuple(rule for rule in rows if _chosen(rule, choices)) for rows in asked)


def _chosen(rule: Rule, choices: Choices) -> bool:
    taken = {fold(choice): alternative for choice, alternative in choices}
    return all(test.holds(taken.get(name, "\x00none")) for name, test in rule.choices)


def _key(taken: Mapping[WindowKind, tuple[tuple[Choices, Taken], ...]]) -> tuple:
    return tuple(
        tuple((choices, *(tuple(rule.content for rule in rows) for rows in tables)) for choices, tables in combinations)
        for combinations in taken.values()
    )


def _content(kind: WindowKind, choices: Choices, taken: Taken, factor: float) -> WorkContent:
    operations, kit_lines, setpoints, checks = ([rule.row for rule in rows] for rows in taken)
    return work_content(
        kind,
        choices,
        cast(list[Operation], operations),
        cast(list[KitLine], kit_lines),
        cast(list[Setpoint], setpoints),
        cast(list[Check], checks),
        factor,
    )


def _asked(rules: Rules, outcomes: tuple[Outcome, ...]) -> Iterator[int]:
    """Attributes with an open test in a row that may still hold."""
    for rule in (*rules.rows, *(r for rows in rules.choices.values() for r in rows)):
        if rule.asked_of(outcomes):
            yield from (a for a, t in rule.attributes if outcomes[a][t] is None)


def _filled(outcomes: tuple[Outcome, ...], missing: list[int], chosen: tuple[Outcome, ...]) -> tuple[Outcome, ...]:
    given = dict(zip(missing, chosen, strict=True))
    return tuple(given.get(a, outcome) for a, outcome in enumerate(outcomes))


def _differs(shapes: Mapping[tuple[Outcome, ...], Shape], position: int) -> bool:
    """Whether two trials that differ at one position alone lead to different conversions."""
    seen: dict[tuple, tuple] = {}
    for chosen, shape in shapes.items():
        others = chosen[:position] + chosen[position + 1 :]
        if seen.setdefault(others, shape.key) != shape.key:
            return True
    return False


def _unknown_words(rules: Rules, values: Mapping[str, Any], attribute: int) -> str:
    value = values[rules.names[attribute]]
    heading = rules.headings[attribute]
    return f"{heading} unknown" if value is None or str(value).strip() == "" else f"{heading} = {value} not comparable"
