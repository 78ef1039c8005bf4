"""Labour hours per machine type, variant, trade and kind of window, with their range and what learning does to them."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from tracker.domain.hours import Hours
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.scopes import LoomScope
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.domain.words import natural_key
from tracker.domain.work import WorkContent, parts_cost
from tracker.scope.experience import TypeLearning, standard_curve
from tracker.scope.loads import Load, Loader
from tracker.scope.pert import Estimate, operation_minutes, total
from tracker.scope.variants import cheapest

LOW, HIGH = 0.1, 0.9
"""The range of an estimate: shares of conversions that take no more."""


@dataclass(frozen=True, slots=True)
class _Factors:
    first: float
    following: float
    last: float
    last_number: int
    source: str


def labour_estimate(content: WorkContent, terms: Terms, learning: float = 1.0) -> Estimate:
    """Person-minutes of a conversion with their variance, allowance and the learning factor included."""
    taken = (operation_minutes(row) * (row.heads * (learning if row.learns else 1.0)) for row in content.operations)
    return total(taken) * (1 + terms.allowance)


def hours_table(
    mill: Mill,
    scopes: Mapping[LoomKey, LoomScope],
    names: Mapping[int, str],
    learned: Mapping[str, TypeLearning],
) -> tuple[Hours, ...]:
    """Rows by machine type: first all variants together, then each, the commonest first.

    `scopes` without learning; `names`: variant number → name. Looms without content are left out.
    """
    by_type: dict[str, list[LoomScope]] = defaultdict(list)
    for scope in scopes.values():
        by_type[scope.machine_type].append(scope)
    rows: list[Hours] = []
    for machine_type in sorted(by_type, key=natural_key):
        looms = by_type[machine_type]
        factors = _factors(mill, learned.get(machine_type), len(looms))
        planned = [scope for scope in looms if scope.contents]
        rows += _rows(mill, machine_type, "", planned, factors)
        variants: dict[int, list[LoomScope]] = defaultdict(list)
        for scope in planned:
            variants[scope.variant].append(scope)
        for variant, of in sorted(variants.items(), key=lambda item: -len(item[1])):
            rows += _rows(mill, machine_type, names[variant], of, factors)
    return tuple(rows)


def _factors(mill: Mill, learning: TypeLearning | None, looms: int) -> _Factors:
    curve = learning.curve if learning else standard_curve(mill.terms)
    following = learning.factor if learning else curve.factor(1)
    return _Factors(curve.factor(1), following, curve.factor(looms), looms, curve.source)


def _rows(
    mill: Mill, machine_type: str, variant: str, scopes: Sequence[LoomScope], factors: _Factors
) -> Iterable[Hours]:
    """One row for each set of window kinds with the same figures."""
    same: dict[tuple, list[WindowKind]] = defaultdict(list)
    for kind in WindowKind:
        contents = [cheapest(scope.contents[kind], mill.parts) for scope in scopes]
        same[tuple(content for content in _by_work(contents))].append(kind)
    for kinds in same.values():
        contents = [content for s in scopes if (content := cheapest(s.contents[kinds[0]], mill.parts))]
        if contents:
            yield _hours(mill, machine_type, variant, tuple(kinds), contents, factors)


def _by_work(contents: Iterable[WorkContent | None]) -> Iterable[tuple]:
    """What the figures depend on, so that kinds with the same figures fall together."""
    for content in contents:
        yield (id(content.labour_min), content.on_loom_min, id(content.parts)) if content else ()


def _hours(
    mill: Mill,
    machine_type: str,
    variant: str,
    kinds: tuple[WindowKind, ...],
    contents: Sequence[WorkContent],
    factors: _Factors,
) -> Hours:
    looms, following = len(contents), factors.following
    estimates = [labour_estimate(content, mill.terms, following) * (1 / 60) for content in contents]
    following_loads = _loads(contents, mill.terms, following)
    trades = sorted({trade for content in contents for trade in content.labour_min}, key=natural_key)
    return Hours(
        machine_type=machine_type,
        variant=variant,
        kinds=kinds,
        looms=looms,
        first_h=_labour_h(_loads(contents, mill.terms, factors.first)),
        next_h=_labour_h(following_loads),
        last_h=_labour_h(_loads(contents, mill.terms, factors.last)),
        last_number=factors.last_number,
        low_h=sum(estimate.quantile(LOW) for estimate in estimates) / looms,
        high_h=sum(estimate.quantile(HIGH) for estimate in estimates) / looms,
        on_loom_h=sum(load.on_loom_min for load in following_loads) / looms / 60,
        bench_h=sum(load.bench_min for load in following_loads) / looms / 60,
        after_restart_h=sum(load.after_restart_min for load in following_loads) / looms / 60,
        parts_cost=sum(parts_cost(content, mill.parts) for content in contents) / looms,
        source=factors.source,
        trades={t: sum(load.labour_min.get(t, 0.0) for load in following_loads) / looms / 60 for t in trades},
    )


def _loads(contents: Sequence[WorkContent], terms: Terms, learning: float) -> list[Load]:
    """What each content takes with a learning factor."""
    loader = Loader(terms.allowance, learning)
    by_rows: dict[int, Load] = {}
    for content in contents:
        if id(content.operations) not in by_rows:
            by_rows[id(content.operations)] = loader.load(content.operations)
    return [by_rows[id(content.operations)] for content in contents]


def _labour_h(loads: Sequence[Load]) -> float:
    """Person-hours, the mean."""
    return sum(sum(load.labour_min.values()) for load in loads) / len(loads) / 60
