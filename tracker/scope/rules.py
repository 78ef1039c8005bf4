"""The method made ready for scoping: every decision cell read once, every row a short list of test numbers."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import cached_property
from itertools import pairwise
from typing import Any

from tracker.domain.method import Alternative, Method, Row
from tracker.domain.mill import Loom
from tracker.domain.tables import LOOMS, Kind
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.domain.work import MethodRow
from tracker.errors import DataError
from tracker.scope.cells import Equal, Limit, Scalar, UnaryTest, parse_cell, scalar

Outcome = tuple[bool | None, ...]
"""Results of all tests on one attribute for one value; None = the value is missing or cannot be compared."""

WINDOW = "window"
OTHER = "\x00other"
"""A text that no cell names, standing for any other word."""
_PERCENT = tuple(fold(column.heading) for column in LOOMS.columns if column.kind is Kind.FRACTION)
_CORE = {fold(column.title): fold(column.heading) for column in LOOMS.columns}


@dataclass(frozen=True, slots=True)
class Rule:
    """A row of the method and what it asks."""

    row: MethodRow | Alternative
    content: int
    """Rows that say the same (whatever their conditions) have the same number."""
    attributes: tuple[tuple[int, int], ...]
    """(attribute, test) numbers."""
    kinds: frozenset[WindowKind]
    choices: tuple[tuple[str, frozenset[str | None]], ...]
    """(folded choice, alternatives with which the row holds); None stands for a choice that is not asked."""

    def asked_of(self, outcomes: tuple[Outcome, ...]) -> bool:
        """Whether the loom's attributes alone let the row hold; a test that is unknown lets it."""
        for a, t in self.attributes:  # noqa: SIM110 - the innermost loop of scoping
            if outcomes[a][t] is False:
                return False
        return True

    def chosen(self, taken: Mapping[str, str]) -> bool:
        """Whether the row holds with these choices (folded choice → alternative)."""
        return all(taken.get(name) in allowed for name, allowed in self.choices)


@dataclass(frozen=True)
class Rules:
    """All rules of a method. Raises `DataError` from `compile_method` where a cell cannot be read."""

    operations: tuple[Rule, ...] = ()
    kit_lines: tuple[Rule, ...] = ()
    setpoints: tuple[Rule, ...] = ()
    checks: tuple[Rule, ...] = ()
    choices: Mapping[str, tuple[Rule, ...]] = field(default_factory=dict)
    """Folded choice → its alternatives, in the order of the method."""
    names: tuple[str, ...] = ()
    """Folded attribute names, in the order in which the method first asks for them."""
    headings: tuple[str, ...] = ()
    """The same as the method heads them."""
    tests: tuple[tuple[UnaryTest, ...], ...] = ()
    """For each attribute, its different tests."""

    @property
    def rows(self) -> tuple[Rule, ...]:
        return (*self.operations, *self.kit_lines, *self.setpoints, *self.checks)

    @property
    def everything(self) -> tuple[Rule, ...]:
        """The rows and the alternatives of the choices."""
        return (*self.rows, *(rule for rules in self.choices.values() for rule in rules))

    def values(self, loom: Loom) -> dict[str, Any]:
        known = known_values(loom)
        return {name: known.get(name) for name in self.names}

    def outcome(self, attribute: int, value: Any) -> Outcome:
        return tuple(test.holds(value) for test in self.tests[attribute])

    @cached_property
    def possible(self) -> tuple[tuple[Outcome, ...], ...]:
        """For each attribute, every outcome that some value can bring about."""
        return tuple(_possible(tests) for tests in self.tests)


def known_values(loom: Loom) -> dict[str, Any]:
    """Folded attribute → value as a workbook writes it, efficiency in percent: a condition says `> 85`, not `> 0.85`."""
    known = loom.known()
    for name in _PERCENT:
        if known.get(name) is not None:
            known[name] = round(known[name] * 100, 6)
    return known


def attribute_name(heading: str) -> str:
    """Folded name of the attribute that a condition column asks for: `Reed width (cm)` → `reed width`."""
    return _CORE.get(fold(heading), fold(heading))


def compile_method(method: Method) -> Rules:
    """Read every condition of the method. Raises `DataError`, naming sheet and cell, at the first that is none."""
    return _Compiler(method).rules()


class _Compiler:
    def __init__(self, method: Method):
        self.method = method
        self.choices: dict[str, list[str]] = {}
        for row in method.alternatives:
            self.choices.setdefault(fold(row.choice), []).append(row.alternative)
        self.names: dict[str, str] = {}
        self.tests: dict[str, dict[UnaryTest, int]] = {}
        self.contents: dict[Any, int] = {}

    def rules(self) -> Rules:
        method = self.method
        rows = (method.operations, method.kit_lines, method.setpoints, method.checks)
        operations, kit_lines, setpoints, checks = map(self._rules, rows)
        alternatives = self._rules(method.alternatives)
        choices = {
            choice: tuple(rule for rule in alternatives if fold(getattr(rule.row, "choice")) == choice)  # noqa: B009
            for choice in self.choices
        }
        tests = tuple(tuple(self.tests[name]) for name in self.names)
        names, headings = tuple(self.names), tuple(self.names.values())
        return Rules(operations, kit_lines, setpoints, checks, choices, names, headings, tests)

    def _rules(self, rows: Iterable[MethodRow | Alternative]) -> tuple[Rule, ...]:
        return tuple(self._rule(row) for row in rows)

    def _rule(self, row: MethodRow | Alternative) -> Rule:
        attributes, choices, kinds = [], [], frozenset(WindowKind)
        for heading, cell in row.conditions.items():
            test = read_condition(row, heading, cell)
            name = attribute_name(heading)
            if not test.tests:
                continue
            if name == WINDOW:
                kinds = frozenset(kind for kind in kinds if test.holds(kind.value))
            elif name in self.choices:
                choices.append((name, self._allowed(name, test)))
            else:
                attributes.append(self._number(name, heading, test))
        said = replace(row, conditions={}, row=Row())
        content = self.contents.setdefault((type(row), repr(said)), len(self.contents))
        return Rule(row, content, tuple(attributes), kinds, tuple(choices))

    def _allowed(self, choice: str, test: UnaryTest) -> frozenset[str | None]:
        allowed = {alternative for alternative in self.choices[choice] if test.holds(alternative)}
        return frozenset(allowed | ({None} if test.holds(OTHER) else set()))

    def _number(self, name: str, heading: str, test: UnaryTest) -> tuple[int, int]:
        self.names.setdefault(name, heading)
        tests = self.tests.setdefault(name, {})
        return list(self.names).index(name), tests.setdefault(test, len(tests))


def as_cell(value: Any) -> str:
    """The text of a condition cell that a spreadsheet may have kept as a number, a date or yes/no."""
    if isinstance(value, str):
        return value
    known = scalar(value)
    return "" if known is None else str(Equal(known))


def read_condition(row: MethodRow | Alternative, heading: str, cell: str) -> UnaryTest:
    try:
        return parse_cell(as_cell(cell))
    except DataError as fault:
        place = f"{row.row.sheet} {row.row.columns.get(heading, '')}{row.row.number or ''}".strip()
        raise DataError("condition-in-cell", place=place or None, heading=heading, why=fault.message) from None


def _possible(tests: Iterable[UnaryTest]) -> tuple[Outcome, ...]:
    tests = tuple(tests)
    outcomes = dict.fromkeys(tuple(test.holds(value) for test in tests) for value in sample_values(tests))
    known = tuple(outcome for outcome in outcomes if None not in outcome)
    # Where one test puts numbers in order and another texts, no value answers both (the review refuses that).
    return known or tuple(tuple(bool(one) for one in outcome) for outcome in outcomes)


def sample_values(tests: Iterable[UnaryTest]) -> list[Scalar]:
    """A value for every way in which a set of tests can turn out: each value named, each limit, what lies between,
    below and above, the other of yes and no, and a word that is not named."""
    named = {bound for test in tests for item in test.tests for bound in bounds(item)}
    values: list[Scalar] = [OTHER]
    for type_, between in _BETWEEN.items():
        values += between(sorted(value for value in named if type(value) is type_))
    return values


def bounds(item: Any) -> tuple[Scalar, ...]:
    """The values that an item of a test names."""
    return (item.value,) if isinstance(item, Equal | Limit) else (item.low, item.high)


def _numbers(limits: list[float]) -> list[Scalar]:
    return _spread(limits, lambda low, high: (low + high) / 2, 1.0)


def _days(limits: list[date]) -> list[Scalar]:
    return _spread(limits, lambda low, high: low + (high - low) / 2, timedelta(days=1))


def _spread(limits: list, middle: Callable, unit: Any) -> list:
    if not limits:
        return []
    between = [middle(low, high) for low, high in pairwise(limits)]
    return [limits[0] - unit, *limits, *between, limits[-1] + unit]


_BETWEEN: dict[type, Callable[[list], list]] = {
    float: _numbers,
    date: _days,
    bool: lambda limits: [True, False] if limits else [],
    str: lambda limits: [limit + end for limit in limits for end in ("", "\x00")],
}


def distinct(looms: Iterable[Loom], name: str) -> dict[Scalar, Any]:
    """Compared value → value as the list writes it, of an attribute over all looms."""
    found: dict[Scalar, Any] = {}
    for loom in looms:
        value = known_values(loom).get(name)
        compared = scalar(value)
        if compared is not None:
            found.setdefault(compared, value)
    return found


def require(rules: Rules) -> None:
    """Raises `DataError` where there is nothing to scope by."""
    if not rules.operations:
        raise DataError("no-method")
