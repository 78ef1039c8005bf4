"""Scope of every loom: what it needs in each kind of window, with each combination of choices, and what is unknown."""

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from tracker.domain.method import Operation
from tracker.domain.mill import Loom, LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import Choices, WorkContent
from tracker.errors import Message, message
from tracker.scope.judging import Consequence, Judge
from tracker.scope.loads import Load, Loader, part_quantities
from tracker.scope.rules import Rules, compile_method, require
from tracker.scope.sheets import Piece, Pieces


def scope_looms(mill: Mill, learning: Mapping[str, float] | None = None) -> dict[LoomKey, LoomScope]:
    """Scope of every loom by the method in force.

    `learning`: machine type → current learning factor (0 to 1; 1 where missing). Raises `DataError` where the mill has
    no method, or a condition cannot be read.
    """
    scoping = Scoping(compile_method(mill.method), mill.terms, learning, mill.left_done)
    require(scoping.rules)
    return {key: scoping.scope(loom) for key, loom in mill.looms.items()}


class Scoping:
    """One pass over the looms; looms with equal scopes share their work contents."""

    def __init__(
        self, rules: Rules, terms: Terms, learning: Mapping[str, float] | None = None,
        left_done: Mapping[LoomKey, frozenset[str]] | None = None,
    ):  # fmt: skip
        self.rules = rules
        self.left_done = left_done or {}
        self.judge = Judge(rules)
        self.allowance = terms.allowance
        self.learning = learning or {}
        self._variants: dict[tuple, int] = {}
        self._contents: dict[tuple, Mapping[WindowKind, tuple[WorkContent, ...]]] = {}
        self._loaders: dict[float, Loader] = {}
        self._loads: dict[tuple[int, float], Load] = {}
        self._quantities: dict[int, Mapping[str, float]] = {}

    def scope(self, loom: Loom) -> LoomScope:
        values = self.rules.values(loom)
        shape, unknown = self.judge.judge(self.judge.outcomes(values))
        if shape is None:
            return self._to_survey(loom, values, unknown)
        variant = self._variants.setdefault(shape.said, len(self._variants) + 1)
        learning = self.learning.get(loom.machine_type, 1.0)
        contents = self._built(shape, learning)
        if loom.key in self.left_done:
            contents = self._left(contents, self.left_done[loom.key], learning)
        obstacle = shape.obstacle or (None if contents else message("no-work-on-loom"))
        return LoomScope(loom.key, loom.machine_type, contents, (), obstacle, values, variant)

    def _to_survey(self, loom: Loom, values: Mapping[str, Any], unknown: tuple[int, ...]) -> LoomScope:
        names = tuple(self.rules.headings[a] for a in unknown)
        why = message("to-survey", unknown=tuple(_unknown(self.rules, values, a) for a in unknown))
        return LoomScope(loom.key, loom.machine_type, {}, names, why, values)

    def _built(self, shape: Consequence, learning: float) -> Mapping[WindowKind, tuple[WorkContent, ...]]:
        key = (shape.rows, learning)
        if key not in self._contents:
            made = {
                kind: tuple(self._content(kind, choices, pieces, learning) for choices, pieces in combinations)
                for kind, combinations in shape.taken.items()
            }
            self._contents[key] = made if any(content.steps for of in made.values() for content in of) else {}
        return self._contents[key]

    def _content(self, kind: WindowKind, choices: Choices, pieces: Pieces, learning: float) -> WorkContent:
        operations, kit, setpoints, checks = pieces
        return WorkContent(
            kind=kind,
            choices=choices,
            kit_lines=kit.rows,
            setpoints=setpoints.rows,
            checks=checks.rows,
            parts=self._parts(kit),
            **_work(self._load(operations, learning)),
        )

    def _left(
        self, contents: Mapping[WindowKind, tuple[WorkContent, ...]], done: frozenset[str], learning: float
    ) -> Mapping[WindowKind, tuple[WorkContent, ...]]:
        """The contents less what a stopped conversion left done. What isolates, waits, tests or is held is done again."""
        loader = Loader(self.allowance, learning)

        def less(content: WorkContent) -> WorkContent:
            rows = [row for row in content.operations if fold(row.operation) not in done or is_done_again(row)]
            return replace(content, **_work(loader.load(rows)))

        left = {kind: tuple(map(less, of)) for kind, of in contents.items()}
        return left if any(content.steps for of in left.values() for content in of) else {}

    def _load(self, piece: Piece, learning: float) -> Load:
        key = (id(piece), learning)
        if key not in self._loads:
            loader = self._loaders.setdefault(learning, Loader(self.allowance, learning))
            self._loads[key] = loader.load(piece.rows)
        return self._loads[key]

    def _parts(self, piece: Piece) -> Mapping[str, float]:
        if id(piece) not in self._quantities:
            self._quantities[id(piece)] = part_quantities(piece.rows)
        return self._quantities[id(piece)]


def _work(load: Load) -> dict[str, Any]:
    """What of a content follows from its operations."""
    return {field.name: getattr(load, field.name) for field in fields(load)}


def is_done_again(row: Operation) -> bool:
    """Whether an operation is done in every conversion, also one that goes on where another was stopped: what isolates, waits
    and tests does not learn, and what is held must be held each time."""
    return not row.learns or row.waivable is False


def _unknown(rules: Rules, values: Mapping[str, Any], attribute: int) -> Message:
    value, heading = values[rules.names[attribute]], rules.headings[attribute]
    if value is None or str(value).strip() == "":
        return message("attribute-unknown", heading=heading)
    return message("attribute-not-comparable", heading=heading, value=str(value))
