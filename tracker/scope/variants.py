"""Groups of looms with equal scopes, and names for them made from what sets them apart."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any

from tracker.domain.mill import LoomKey, Mill, Part
from tracker.domain.scopes import LoomScope
from tracker.domain.windows import WindowKind
from tracker.domain.words import natural_key
from tracker.domain.work import WorkContent, parts_cost
from tracker.errors import Message, message
from tracker.scope.cells import scalar
from tracker.scope.classes import Classes
from tracker.scope.rules import Outcome, Rules, compile_method

MOST_TELLING = 4
"""Attributes by which the commonest variant is named."""


@dataclass(frozen=True, slots=True)
class Variant:
    """Looms that get the same rows of the method. Hours and cost are those of the cheapest choices in `kind`."""

    number: int
    """As the looms' scopes number it; 0 = to survey."""
    name: str
    """In what it differs from the commonest: `rail undrilled, vertical creel`; `to survey` for the looms that are."""
    looms: tuple[LoomKey, ...]
    machine_types: tuple[str, ...] = ()
    kind: WindowKind | None = None
    """The kind of window that hours, cost and differences are told for; None for looms without content."""
    labour_h: float = 0.0
    """Person-hours for one loom, allowance included, no learning."""
    on_loom_h: float = 0.0
    bench_h: float = 0.0
    after_restart_h: float = 0.0
    parts_cost: float = 0.0
    """Currency."""
    more: tuple[str, ...] = ()
    """What the commonest variant does not have: `step 40 Drill`, `RAIL 0 → 1`, and the alternatives that it may not
    take: `cable route: old duct`."""
    less: tuple[str, ...] = ()
    obstacle: Message | None = None
    values: Mapping[str, tuple[Any, ...]] = field(default_factory=dict)
    """Attribute heading (folded) → the values that its looms have."""


def variants(
    mill: Mill, scopes: Mapping[LoomKey, LoomScope], kind: WindowKind = WindowKind.REPEAT
) -> tuple[Variant, ...]:
    """The commonest first; looms to survey last. `scopes` without learning give hours that can be compared."""
    groups: dict[int, list[LoomScope]] = defaultdict(list)
    for scope in scopes.values():
        groups[scope.variant].append(scope)
    survey = groups.pop(0, [])
    order = sorted(groups.values(), key=lambda of: (-len(of), min(scope.key.sort_key for scope in of)))
    names = variant_names(compile_method(mill.method), order)
    commonest = order[0][0].contents.get(kind, ()) if order else ()
    found = [_variant(name, of, kind, mill.parts, commonest) for name, of in zip(names, order, strict=True)]
    return (*found, *([_to_survey(survey)] if survey else []))


def variant_names(rules: Rules, groups: Sequence[Sequence[LoomScope]]) -> list[str]:
    """Names for groups of scopes, the commonest group first.

    The commonest is named by the (at most four) attributes in which most looms differ from it, every other by those in
    which it differs from the commonest: `rail undrilled, frames > 12`. Equal names get what tells them apart, or a
    number.
    """
    if len(groups) <= 1:
        return ["every loom"] * len(groups)
    classes = [Classes(heading, tests) for heading, tests in zip(rules.headings, rules.tests, strict=True)]
    known = list(zip(rules.names, classes, strict=True))
    outcomes = [[{c.outcome(s.values[name]) for s in of} for name, c in known] for of in groups]
    apart = [[a for a, c in enumerate(of) if c.isdisjoint(outcomes[0][a])] for of in outcomes]
    weight = Counter({a: sum(len(groups[g]) for g, of in enumerate(apart) if a in of) for a in range(len(classes))})
    apart[0] = [a for a, looms in weight.most_common(MOST_TELLING) if looms]
    _part(apart, outcomes)
    names = [
        ", ".join(classes[a].words(of[a]) for a in told) or "every loom"
        for told, of in zip(apart, outcomes, strict=True)
    ]
    return [
        name if names.count(name) == 1 else f"{name} ({names[: i + 1].count(name)})" for i, name in enumerate(names)
    ]


def _part(apart: list[list[int]], outcomes: Sequence[Sequence[set[Outcome]]]) -> None:
    """Give groups that would have the same name every attribute in which they are disjoint."""
    same: dict[tuple, list[int]] = defaultdict(list)
    for group, told in enumerate(apart):
        same[tuple((a, frozenset(outcomes[group][a])) for a in told)].append(group)
    for groups in same.values():
        for i, j in combinations(groups, 2):
            more = [a for a, of in enumerate(outcomes[i]) if of.isdisjoint(outcomes[j][a])]
            for group in (i, j):
                apart[group] += [a for a in more if a not in apart[group]]


def _variant(
    name: str,
    scopes: Sequence[LoomScope],
    kind: WindowKind,
    parts: Mapping[str, Part],
    commonest: Sequence[WorkContent],
) -> Variant:
    looms = tuple(sorted((scope.key for scope in scopes), key=lambda key: key.sort_key))
    types = tuple(sorted({scope.machine_type for scope in scopes}, key=natural_key))
    values = {
        name: tuple({scalar(s.values[name]): s.values[name] for s in scopes}.values()) for name in scopes[0].values
    }
    contents = scopes[0].contents.get(kind, ())
    content = cheapest(contents, parts)
    if content is None:
        return Variant(scopes[0].variant, name, looms, types, obstacle=scopes[0].obstacle, values=values)
    more, less = _against(commonest, contents, parts)
    return Variant(
        number=scopes[0].variant,
        name=name,
        looms=looms,
        machine_types=types,
        kind=kind,
        labour_h=content.labour_h,
        on_loom_h=content.on_loom_min / 60,
        bench_h=content.bench_min / 60,
        after_restart_h=content.after_restart_min / 60,
        parts_cost=parts_cost(content, parts),
        more=more,
        less=less,
        obstacle=scopes[0].obstacle,
        values=values,
    )


def _to_survey(scopes: Sequence[LoomScope]) -> Variant:
    looms = tuple(sorted((scope.key for scope in scopes), key=lambda key: key.sort_key))
    asked = sorted({name for scope in scopes for name in scope.unknown}, key=natural_key)
    types = tuple(sorted({scope.machine_type for scope in scopes}, key=natural_key))
    return Variant(0, "to survey", looms, types, obstacle=message("attributes-unknown", headings=asked))


def cheapest(contents: Sequence[WorkContent], parts: Mapping[str, Part]) -> WorkContent | None:
    """The content with the least labour, then the cheapest parts; None where there is none."""
    return min(contents, key=lambda content: (content.labour_h, parts_cost(content, parts)), default=None)


def _against(
    commonest: Sequence[WorkContent], contents: Sequence[WorkContent], parts: Mapping[str, Part]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What the contents have more and less than those of the commonest variant."""
    theirs, ours = cheapest(commonest, parts), cheapest(contents, parts)
    if theirs is None or ours is None:
        return (), ()
    before, after = _operations(theirs) | _alternatives(commonest), _operations(ours) | _alternatives(contents)
    more = [name for name in after if name not in before]
    less = [name for name in before if name not in after]
    for part in {**theirs.parts, **ours.parts}:
        old, new = theirs.parts.get(part, 0.0), ours.parts.get(part, 0.0)
        if old != new:
            (more if new > old else less).append(f"{part} {old:g} → {new:g}")
    return tuple(more), tuple(less)


def _alternatives(contents: Sequence[WorkContent]) -> dict[str, None]:
    return {f"{choice}: {alternative}": None for content in contents for choice, alternative in content.choices}


def _operations(content: WorkContent) -> dict[str, None]:
    return {f"step {row.step} {row.operation}": None for row in content.operations}
